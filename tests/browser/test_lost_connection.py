"""A workbench that goes away in the middle of an edit: the browser keeps the edit, and nothing is lost."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Page, expect
from tests.browser.bench import WORKED_OUT, Bench, running, type_in

from anchorwatt.design import read

pytestmark = pytest.mark.xdist_group("away")  # one worker's, with the workbench that they share

RESERVE = '[name="brief.reserve"]'


@pytest.fixture(scope="module")
def away(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Bench]:
    """A workbench of its own, which these tests stop and start."""
    with running(tmp_path_factory.mktemp("away")) as bench:
        yield bench


def opened(bench: Bench, page: Page, name: str) -> None:
    page.goto(f"{bench.address}/design/{name}/boat")
    page.wait_for_selector(RESERVE, timeout=WORKED_OUT)


def test_an_edit_made_meanwhile_is_sent_when_it_is_back(away: Bench, page: Page) -> None:
    path = away.design("edit", "cutter-12m")
    opened(away, page, "edit")
    away.stop()
    type_in(page, "brief.reserve", "31 %")
    away.start()
    expect(page.locator(".state")).to_contain_text("31 %", timeout=WORKED_OUT)
    expect(page.locator(RESERVE)).to_have_value("31 %", timeout=WORKED_OUT)
    assert read(path).brief.reserve.text == "31 %"


def test_words_half_typed_stand_in_their_field_again(away: Bench, page: Page) -> None:
    path = away.design("typing", "cutter-12m")
    before = path.read_bytes()
    opened(away, page, "typing")
    page.locator(RESERVE).fill("32")
    away.stop()
    with page.expect_navigation(timeout=WORKED_OUT):  # the page loads itself again
        away.start()
    field = page.locator(RESERVE)
    expect(field).to_have_value("32", timeout=WORKED_OUT)
    expect(field).to_be_focused()
    assert path.read_bytes() == before
    page.keyboard.type(" %")
    page.keyboard.press("Enter")
    expect(page.locator(".state")).to_contain_text("32 %", timeout=WORKED_OUT)


def test_an_edit_kept_meanwhile_does_not_write_over_a_later_one(away: Bench, page: Page) -> None:
    path = away.design("later", "cutter-12m")
    opened(away, page, "later")
    seen = page.locator(RESERVE).input_value()
    away.stop()
    type_in(page, "brief.reserve", "33 %")
    words = path.read_text(encoding="utf-8")
    assert words.count(f"reserve: {seen}") == 1
    path.write_text(words.replace(f"reserve: {seen}", "reserve: 34 %"), encoding="utf-8")
    away.start()
    expect(page.locator(".notice")).to_contain_text("33 %", timeout=WORKED_OUT)
    assert read(path).brief.reserve.text == "34 %"


def test_an_edit_kept_meanwhile_is_sent_from_another_page_too(away: Bench, page: Page) -> None:
    path = away.design("elsewhere", "cutter-12m")
    opened(away, page, "elsewhere")
    away.stop()
    type_in(page, "brief.reserve", "35 %")
    page.goto("about:blank")  # left before the workbench is back: else the page loads itself again at the same moment
    away.start()
    page.goto(f"{away.address}/design/elsewhere/price")
    expect(page.locator(".state")).to_contain_text("35 %", timeout=WORKED_OUT)
    assert read(path).brief.reserve.text == "35 %"
