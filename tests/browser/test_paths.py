"""The main paths of the job, walked in a real browser."""

from __future__ import annotations

import io
import re
import zipfile

import pytest
from playwright.sync_api import Browser, Page, expect
from tests.browser.bench import CHECKED, WORKED_OUT, Bench, answer, changed, settled, type_in

from anchorwatt.design import read

PARALLEL = "dc.bank.parallel"
DAWN = answer("charge_at_dawn_pct")
COMMENT = "# weighed at the last haul-out"


def test_a_larger_bank_is_in_the_headline_and_in_the_file_and_can_be_taken_back(bench: Bench, page: Page) -> None:
    path = bench.design("bank")
    before_bytes = path.read_bytes()
    bench.show(page, "bank", "bank")
    before = page.inner_text(DAWN)
    type_in(page, PARALLEL, "4")
    changed(page, DAWN, before)
    assert read(path).dc.bank.parallel == 4
    assert COMMENT in path.read_text(encoding="utf-8")
    page.click('[data-do="undo"]')
    page.wait_for_function("(id) => document.getElementsByName(id)[0].value === '2'", arg=PARALLEL)
    assert path.read_bytes() == before_bytes
    page.locator("h1").click()
    page.keyboard.press("Control+y")
    page.wait_for_function("(id) => document.getElementsByName(id)[0].value === '4'", arg=PARALLEL)
    page.keyboard.press("Control+z")
    page.wait_for_function("(id) => document.getElementsByName(id)[0].value === '2'", arg=PARALLEL)
    expect(page.locator(DAWN)).to_have_text(before, timeout=WORKED_OUT)


def test_a_wrong_word_is_told_beside_its_field_and_changes_nothing(bench: Bench, page: Page) -> None:
    path = bench.design("wrong", "cutter-12m")
    before = path.read_bytes()
    bench.show(page, "wrong", "boat")
    type_in(page, "brief.reserve", "a lot")
    field = page.locator('[name="brief.reserve"]')
    expect(field).to_have_attribute("aria-invalid", "true")
    told = page.locator(f"#{field.get_attribute('id')}-told")
    expect(told).to_contain_text("allowed: a share")
    assert path.read_bytes() == before
    type_in(page, "brief.reserve", "25 %")
    expect(page.locator(".state")).to_contain_text("25 %")
    expect(told).to_have_text("")
    assert read(path).brief.reserve.text == "25 %"


def test_a_check_that_fails_leads_to_the_field_that_cures_it(bench: Bench, page: Page) -> None:
    bench.design("cure")
    bench.show(page, "cure", "bank")
    whole = page.inner_text(DAWN)
    type_in(page, PARALLEL, "1")
    changed(page, DAWN, whole)
    page.goto(f"{bench.address}/design/cure/checks")
    settled(page)
    failing = int(page.inner_text(CHECKED))
    assert failing > 0
    page.locator("#check-bank-holds-night a").click()
    field = page.locator(f'[name="{PARALLEL}"]')
    expect(field).to_be_focused(timeout=WORKED_OUT)
    settled(page)
    before = page.inner_text(DAWN)
    field.fill("3")
    field.press("Enter")
    changed(page, DAWN, before)
    settled(page)
    assert int(page.inner_text(CHECKED)) < failing


def test_each_answer_says_why(bench: Bench, page: Page) -> None:
    bench.design("why", "cutter-12m")
    bench.show(page, "why", "boat")
    page.click('[data-with="hold_hours"]')
    expect(page.locator(".why")).to_contain_text("Source")
    page.locator(".why button").click()
    expect(page.locator(".why")).to_have_count(0)


def test_two_tabs_share_a_design_and_the_later_one_is_told(bench: Bench, browser: Browser, page: Page) -> None:
    path = bench.design("tabs", "cutter-12m")
    other = browser.new_page()
    for tab in (page, other):
        bench.show(tab, "tabs", "boat")
    type_in(page, "brief.reserve", "22 %")
    expect(other.locator('[name="brief.reserve"]')).to_have_value("22 %", timeout=WORKED_OUT)
    # Both now begin to change the same key: one is still typing while the other's is written.
    hold = other.locator('[name="brief.hold"]')
    hold.fill("8 h")
    type_in(page, "brief.hold", "9.5 h")
    expect(page.locator(".state")).to_contain_text("9.5 h")
    hold.press("Enter")
    told = other.locator(f"#{hold.get_attribute('id')}-told")
    expect(told).to_contain_text("changed meanwhile")
    assert read(path).brief.hold.text == "9.5 h"
    hold.fill("8.5 h")
    hold.press("Enter")
    expect(page.locator('[name="brief.hold"]')).to_have_value("8.5 h", timeout=WORKED_OUT)
    other.close()


def test_a_part_is_moved_by_hand(bench: Bench, page: Page) -> None:
    path = bench.design("move")
    bench.show(page, "move", "places")
    heel = page.inner_text(answer("heel_deg"))
    part = page.locator("svg[data-scale] [data-key='places.bank'][data-view='plan']").first
    part.scroll_into_view_if_needed()
    box = part.bounding_box()
    assert box is not None
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x, y + 40, steps=4)
    page.mouse.up()
    changed(page, answer("heel_deg"), heel)
    place = read(path).places["bank"]
    assert place.starboard is not None
    assert place.starboard > 0.0
    assert place.forward is not None
    assert float(place.forward) == pytest.approx(17 * 0.3048, abs=0.02)


def test_units_are_switched_everywhere_and_the_file_keeps_its_own(bench: Bench, page: Page) -> None:
    path = bench.design("units", "cutter-12m")
    before = path.read_bytes()
    bench.show(page, "units", "cabins")
    expect(page.locator(answer("mass_added_kg"))).to_contain_text("kg")
    page.click("a[data-units]")
    settled(page)
    assert page.url.endswith("/design/units/cabins")
    expect(page.locator(answer("mass_added_kg"))).to_contain_text("lb")
    page.locator(".questions a", has_text="The cooling plant").click()
    settled(page)
    expect(page.locator("main").first).to_contain_text("Btu/h")
    assert path.read_bytes() == before


HOSTILE = (
    '<img src=x onerror="window.__hit=1">',
    "\"'><script>window.__hit=1</script>",
    "javascript:window.__hit=1",
    "\u202egnp.\u202c " + 190 * "a",
    "{{7*7}} ${7*7} \U0001f6a4",
)


def test_hostile_words_are_words_in_every_field(bench: Bench, page: Page) -> None:
    path = bench.design("hostile", "cutter-12m")
    path.write_text(
        path.read_text(encoding="utf-8").replace("name: Ragged Kate", f"name: '{HOSTILE[0]}'"), encoding="utf-8"
    )
    bench.show(page, "hostile", "boat")
    fields = page.locator(".form input[type=text]")
    names = [fields.nth(place).get_attribute("name") or "" for place in range(fields.count())]
    for place, name in enumerate(names[:20]):
        type_in(page, name, HOSTILE[place % len(HOSTILE)])
    page.wait_for_function("!document.querySelector('.sending')", timeout=WORKED_OUT)
    assert read(path)
    for question in ("cabins", "checks"):
        bench.show(page, "hostile", question)
    page.goto(bench.address)
    expect(page.locator(".design", has_text="<img src=x")).to_have_count(1)
    assert page.evaluate("window.__hit") is None


def test_a_file_broken_on_disk_is_told_and_can_be_put_back(bench: Bench, page: Page) -> None:
    path = bench.design("broken", "cutter-12m")
    bench.show(page, "broken", "boat")
    good = path.read_bytes()
    path.write_text("boat: [", encoding="utf-8")
    type_in(page, "brief.hold", "7 h")
    expect(page.locator(".notice")).to_contain_text("cannot be used")
    assert path.read_text(encoding="utf-8") == "boat: ["
    page.click('[data-do="put-back"]')
    expect(page.locator(".notice")).to_contain_text("on disk again")
    assert path.read_bytes() == good
    assert path.with_name("broken.yaml.unusable").read_text(encoding="utf-8") == "boat: ["


def test_a_deleted_file_is_written_again(bench: Bench, page: Page) -> None:
    path = bench.design("gone", "cutter-12m")
    bench.show(page, "gone", "boat")
    path.unlink()
    type_in(page, "brief.hold", "7 h")
    expect(page.locator(".state")).to_contain_text("7 h")
    assert read(path).brief.hold.text == "7 h"


def test_pictures_and_tables_are_saved(bench: Bench, page: Page) -> None:
    bench.design("save", "cutter-12m")
    bench.show(page, "save", "bank")
    get = page.request.get
    here = f"{bench.address}/design/save"
    assert get(f"{here}/picture/night.svg").text().startswith("<svg")
    assert get(f"{here}/picture/night.png").body()[:8] == b"\x89PNG\r\n\x1a\n"
    assert get(f"{here}/tables/wiring.xlsx").body()[:2] == b"PK"
    packed = zipfile.ZipFile(io.BytesIO(get(f"{here}/tables/wiring.csv").body()))
    assert packed.namelist() == ["wiring.csv", "wiring_bars.csv"]
    for where in ("picture/no.svg", "picture/night.exe", "tables/no.csv", "no"):
        assert get(f"{here}/{where}").status == 404
    links = page.locator("a[download]")
    assert links.count() > 3
    for place in range(links.count()):
        assert get(bench.address + str(links.nth(place).get_attribute("href"))).status == 200


def test_designs_are_laid_side_by_side(bench: Bench, page: Page) -> None:
    bench.design("one")
    two = bench.design("two")
    two.write_text(re.sub(r"parallel: 2\b", "parallel: 3", two.read_text(encoding="utf-8"), count=1), encoding="utf-8")
    bench.design("a" * 60)  # a name without a gap is as much at home in the list of designs
    page.goto(f"{bench.address}/compare?d=one&d=two")
    row = page.locator("tr", has=page.locator("th", has_text=re.compile(r"^dc\.bank\.parallel$")))
    expect(row.locator(".differs")).to_have_text("3 ≠", timeout=WORKED_OUT)
    assert page.locator(".compared").first.locator(".differs").count() > 3
    expect(page.locator("svg").first).to_be_visible()
    page.set_viewport_size({"width": 390, "height": 844})
    page.wait_for_function("document.documentElement.scrollWidth <= 390")
    frame, drawn = page.locator(".picture").bounding_box(), page.locator(".picture .wide").bounding_box()
    assert frame is not None
    assert drawn is not None
    assert drawn["width"] <= frame["width"]


def test_an_entry_is_added_and_taken_out(bench: Bench, page: Page) -> None:
    path = bench.design("entry", "cutter-12m")
    bench.show(page, "entry", "places")
    add = page.locator(".add", has_text="One more in spaces")
    add.locator("input").fill("lazarette")
    add.locator("button").click()
    expect(page.locator("summary", has_text="lazarette")).to_have_count(1)
    assert "lazarette" in read(path).spaces
    page.evaluate("() => document.querySelectorAll('details').forEach((one) => { one.open = true })")
    page.locator('[data-do="remove"][data-key="spaces.lazarette"]').click()
    expect(page.locator("summary", has_text="lazarette")).to_have_count(0)
    assert "lazarette" not in read(path).spaces


def test_a_new_design_from_a_starter(bench: Bench, page: Page) -> None:
    page.goto(bench.address)
    page.locator("section, form, div", has_text="New from a starter boat").last.wait_for()
    page.get_by_label("File name").first.fill("fresh boat")
    page.get_by_role("button", name="Make the design").first.click()
    page.wait_for_url("**/design/fresh%20boat/**", timeout=WORKED_OUT)
    settled(page)
    assert read(bench.folder / "fresh boat.yaml").name
