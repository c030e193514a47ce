"""Pages in states that are not the usual one: taken back, locked, unreadable, unsaved."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Browser, Page, expect
from tests.browser.bench import WORKED_OUT, Bench, running, type_in

from anchorwatt.design import read
from anchorwatt.web.accounts import People, Role, beside

RESERVE = '[name="brief.reserve"]'
PASSWORD = "nine wet oilskins"


def opened(bench: Bench, page: Page, name: str) -> None:
    page.goto(f"{bench.address}/design/{name}/boat")
    page.wait_for_selector(RESERVE, timeout=WORKED_OUT)


def test_an_edit_is_taken_back_and_done_again_by_the_buttons(bench: Bench, page: Page) -> None:
    path = bench.design("redo", "cutter-12m")
    opened(bench, page, "redo")
    before = page.locator(RESERVE).input_value()
    undo, redo = (page.locator(f'[data-do="{one}"]') for one in ("undo", "redo"))
    expect(undo).to_be_disabled()
    expect(redo).to_be_disabled()
    type_in(page, "brief.reserve", "26 %")
    expect(page.locator(".state")).to_contain_text("26 %")
    undo.click()
    expect(page.locator(RESERVE)).to_have_value(before, timeout=WORKED_OUT)
    expect(undo).to_be_disabled()
    redo.click()
    expect(page.locator(RESERVE)).to_have_value("26 %", timeout=WORKED_OUT)
    expect(redo).to_be_disabled()
    assert read(path).brief.reserve.text == "26 %"


def test_who_may_only_look_finds_every_field_locked(browser: Browser, tmp_path: Path) -> None:
    folder = tmp_path / "designs"
    folder.mkdir()
    people = People(beside(folder))
    people.add("Mara", PASSWORD, Role.owner)
    people.add("Wren", PASSWORD, Role.viewer)
    with running(folder, accounts=True) as bench:
        path = bench.design("locked", "cutter-12m")
        before = path.read_bytes()
        page = browser.new_page()
        page.goto(f"{bench.address}/design/locked/bank")
        page.get_by_label("Name").fill("Wren")
        page.get_by_label("Password").fill(PASSWORD)
        page.get_by_role("button", name="Sign in").click()
        page.wait_for_selector(".form .field input", timeout=WORKED_OUT)
        assert page.locator(".form").locator("input:enabled, select:enabled, button:enabled").count() == 0
        # Whoever unlocks a field by hand is refused all the same.
        name = "dc.bank.parallel"
        page.evaluate("(name) => { document.getElementsByName(name)[0].disabled = false; }", name)
        type_in(page, name, "4")
        field = page.locator(f'[name="{name}"]').get_attribute("id")
        expect(page.locator(f"#{field}-told")).to_contain_text("may look, but not change", timeout=WORKED_OUT)
        assert path.read_bytes() == before
        page.close()


def test_a_file_that_cannot_be_read_is_told_line_by_line_until_it_is_mended(bench: Bench, page: Page) -> None:
    path = bench.design("unreadable", "cutter-12m")
    good = path.read_text(encoding="utf-8")
    path.write_text(good.replace("name: Ragged Kate", "name: <b>Kate</b>\nnoise: 3"), encoding="utf-8")
    page.goto(f"{bench.address}/design/unreadable/boat")
    expect(page.locator("h1")).to_have_text("unreadable cannot be read")
    expect(page.locator("li")).to_contain_text("noise")
    expect(page.locator("li")).to_contain_text("Line")
    path.write_text(good, encoding="utf-8")
    page.reload()
    page.wait_for_selector(RESERVE, timeout=WORKED_OUT)


def test_a_page_stays_as_it_was_while_its_file_is_broken_on_disk(bench: Bench, page: Page) -> None:
    path = bench.design("torn", "cutter-12m")
    opened(bench, page, "torn")
    good = path.read_text(encoding="utf-8")
    path.write_text(good + "noise: [", encoding="utf-8")
    page.reload()
    page.wait_for_selector(RESERVE, timeout=WORKED_OUT)
    type_in(page, "brief.reserve", "27 %")
    told = page.locator(".notice")
    expect(told).to_contain_text("cannot be used")
    expect(page.locator(RESERVE)).to_have_value("27 %")  # what was typed still stands there
    path.write_text(good, encoding="utf-8")
    type_in(page, "brief.reserve", "28 %")
    expect(page.locator(".state")).to_contain_text("28 %")
    expect(told).to_have_count(0)
    assert read(path).brief.reserve.text == "28 %"


def test_what_cannot_be_saved_is_told_and_saved_later(browser: Browser, tmp_path: Path) -> None:
    folder = tmp_path / "designs"
    folder.mkdir()
    with running(folder) as bench:
        path = bench.design("unsaved", "cutter-12m")
        page = browser.new_page()
        opened(bench, page, "unsaved")
        folder.rename(tmp_path / "elsewhere")
        type_in(page, "brief.reserve", "29 %")
        expect(page.locator(".state.bad")).to_contain_text("Not saved")
        (tmp_path / "elsewhere").rename(folder)
        type_in(page, "brief.hold", "7.5 h")
        expect(page.locator(".state:not(.bad)")).to_contain_text("7.5 h")
        design = read(path)
        assert (design.brief.reserve.text, design.brief.hold.text) == ("29 %", "7.5 h")
        page.close()
