"""The drawings: a sheet is chosen, looked at closely, asked what stands behind it, and saved."""

from __future__ import annotations

import io
import re

import ezdxf.filemanagement
import pytest
from playwright.sync_api import Browser, Page, expect
from tests.browser.bench import WORKED_OUT, Bench
from tests.browser.test_accessibility import serious
from tests.browser.test_narrow import wide

pytestmark = pytest.mark.xdist_group("drawings")  # one worker's, with the design that they share


@pytest.fixture(scope="module")
def address(bench: Bench) -> str:
    bench.design("yard", "cutter-12m")
    return f"{bench.address}/design/yard/drawings"


@pytest.fixture
def sheet(page: Page, address: str) -> Page:
    page.goto(address)
    page.wait_for_selector(".viewer > svg", timeout=WORKED_OUT)
    return page


def box(page: Page) -> list[float]:
    """What of the sheet is seen: left, top, width and height in mm."""
    return [float(one) for one in str(page.locator(".viewer > svg").get_attribute("viewBox")).split()]


def test_another_sheet_on_other_paper_is_still_there_after_a_reload(sheet: Page) -> None:
    sheet.get_by_label("Sheet", exact=True).select_option(label="2. Alternating current, one-line diagram")
    expect(sheet.locator('[data-sheet="ac-one-line"]')).to_be_visible(timeout=WORKED_OUT)
    sheet.get_by_label("Paper").select_option("ANSI B")
    expect(sheet.locator('[data-sheet="ac-one-line"][viewBox="0 0 431.8 279.4"]')).to_be_visible(timeout=WORKED_OUT)
    sheet.reload()
    expect(sheet.locator('[data-sheet="ac-one-line"][viewBox="0 0 431.8 279.4"]')).to_be_visible(timeout=WORKED_OUT)


def test_buttons_and_keys_show_a_part_of_the_sheet_and_the_whole_again(sheet: Page) -> None:
    whole = box(sheet)
    sheet.get_by_role("button", name="Closer").click()
    closer = box(sheet)
    assert closer[2] < whole[2]
    sheet.locator(".viewer").focus()
    sheet.keyboard.press("+")
    assert box(sheet)[2] < closer[2]
    before = box(sheet)
    sheet.keyboard.press("ArrowRight")
    assert box(sheet)[0] > before[0]
    sheet.keyboard.press("0")
    assert box(sheet) == whole


def test_a_wheel_brings_closer_what_is_below_the_pointer_and_leaves_it_there(sheet: Page) -> None:
    part = sheet.locator('.viewer g[data-key="G1"]')
    at = part.bounding_box()
    assert at is not None
    corner = at["x"] + 1.0, at["y"] + 1.0
    sheet.mouse.move(*corner)
    sheet.mouse.wheel(0, -240)
    sheet.wait_for_function("document.querySelector('.viewer').classList.contains('near')")
    now = part.bounding_box()
    assert now is not None
    assert now["width"] > 1.3 * at["width"]
    assert abs(now["x"] + now["width"] / at["width"] - corner[0]) < 2.0
    assert abs(now["y"] + now["height"] / at["height"] - corner[1]) < 2.0


def test_a_drag_moves_the_sheet_and_presses_nothing(sheet: Page) -> None:
    sheet.get_by_role("button", name="Closer").click()
    part = sheet.locator('.viewer g[data-key="X2"]')
    at, before = part.bounding_box(), box(sheet)
    assert at is not None
    x, y = at["x"] + at["width"] / 2, at["y"] + at["height"] - 10.0
    sheet.mouse.move(x, y)
    sheet.mouse.down()
    sheet.mouse.move(x + 60.0, y, steps=4)
    sheet.mouse.up()
    now = part.bounding_box()
    assert now is not None
    assert now["x"] == pytest.approx(at["x"] + 60.0, abs=2.0)
    assert box(sheet)[2] == before[2]
    assert "about=" not in sheet.url


def test_a_conductor_that_is_pressed_shows_its_calculation_and_keeps_the_view(sheet: Page) -> None:
    sheet.get_by_role("button", name="Closer").click()
    before = box(sheet)
    sheet.locator('.viewer [role=button][data-circuit="W1"]').first.focus()
    sheet.keyboard.press("Enter")
    thing = sheet.locator(".thing")
    expect(thing).to_contain_text("Step by step", timeout=WORKED_OUT)
    expect(thing.get_by_role("heading", level=2).first).to_have_text(re.compile("^W1, "))
    assert box(sheet) == before
    expect(thing).to_be_focused()
    thing.get_by_role("button", name="Close").click()
    expect(thing).to_have_count(0, timeout=WORKED_OUT)


def test_a_conductor_s_link_opens_its_fields_among_the_circuits(sheet: Page) -> None:
    sheet.locator('.viewer [role=button][data-circuit="W1"]').first.dispatch_event("click")
    sheet.locator(".thing").get_by_role("link", name="Type what you know of W1").click(timeout=WORKED_OUT)
    expect(sheet.locator(".form:focus")).to_contain_text("What you know of W1", timeout=WORKED_OUT)


def test_the_link_of_a_circuit_that_the_file_has_words_for_opens_them(sheet: Page) -> None:
    sheet.locator('.viewer [role=button][data-circuit="W4"]').first.dispatch_event("click")
    sheet.locator(".thing").get_by_role("link", name="Type what you know of W4").click(timeout=WORKED_OUT)
    expect(sheet.locator("summary:focus")).to_have_text("W4", timeout=WORKED_OUT)


def test_a_part_s_link_opens_its_field(sheet: Page) -> None:
    sheet.locator('.viewer g[data-key="G1"]').dispatch_event("click")
    sheet.locator(".thing").get_by_role("link", name="Change it: dc.bank.module").click(timeout=WORKED_OUT)
    expect(sheet.locator('[name="dc.bank.module"]')).to_be_focused(timeout=WORKED_OUT)


def test_a_field_of_the_title_block_changes_the_sheet_and_the_view_stays(sheet: Page) -> None:
    sheet.get_by_role("button", name="Closer").click()
    before = box(sheet)
    sheet.locator('[name="drawings.job"]').fill("<b>17</b>")
    sheet.locator('[name="drawings.job"]').press("Enter")
    expect(sheet.locator('[data-field="drawings.job"]')).to_have_text("<b>17</b>", timeout=WORKED_OUT)
    assert box(sheet) == before


def test_a_sheet_is_saved_as_dxf(sheet: Page) -> None:
    with sheet.expect_download(timeout=WORKED_OUT) as started:
        sheet.get_by_role("link", name="DXF", exact=True).click()
    saved = started.value
    assert saved.suggested_filename == "yard-dc-one-line.dxf"
    drawing = ezdxf.filemanagement.read(io.StringIO(saved.path().read_text(encoding="utf-8")))
    assert not drawing.audit().errors
    assert drawing.query("INSERT")
    assert drawing.query("LWPOLYLINE")


def test_nothing_serious_for_those_who_cannot_see_it_with_a_thing_open(sheet: Page) -> None:
    sheet.locator('.viewer g[data-key="G1"]').dispatch_event("click")
    expect(sheet.locator(".thing")).to_be_visible(timeout=WORKED_OUT)
    assert serious(sheet) == []


@pytest.mark.parametrize(("width", "height"), [(1024, 768), (390, 844)])
def test_two_fingers_bring_it_closer_on_a_tablet_and_a_phone(
    browser: Browser, address: str, width: int, height: int
) -> None:
    context = browser.new_context(viewport={"width": width, "height": height}, has_touch=True)
    page = context.new_page()
    page.goto(address)
    page.wait_for_selector(".viewer > svg", timeout=WORKED_OUT)
    assert wide(page) == []
    viewer = page.locator(".viewer")
    viewer.scroll_into_view_if_needed()
    at = viewer.bounding_box()
    assert at is not None
    x, y = at["x"] + at["width"] / 2, at["y"] + at["height"] / 2
    touch = context.new_cdp_session(page)

    def fingers(kind: str, apart: float) -> None:
        points = [{"x": x - apart, "y": y, "id": 0}, {"x": x + apart, "y": y, "id": 1}] if apart else []
        touch.send("Input.dispatchTouchEvent", {"type": kind, "touchPoints": points})

    whole = box(page)
    fingers("touchStart", 30.0)
    for apart in (40.0, 50.0, 60.0):
        fingers("touchMove", apart)
    fingers("touchEnd", 0.0)
    assert box(page)[2] == pytest.approx(whole[2] / 2, rel=0.15)
    context.close()


def test_a_design_that_cannot_be_worked_out_says_so_and_keeps_its_fields(page: Page, bench: Bench) -> None:
    path = bench.design("half typed", "cutter-12m")
    path.write_text(path.read_text(encoding="utf-8").replace("W4: {fuse", "W999: {fuse"), encoding="utf-8")
    page.goto(f"{bench.address}/design/half typed/drawings")
    expect(page.locator(".notice")).to_contain_text("cannot be worked out as it stands", timeout=WORKED_OUT)
    expect(page.locator(".notice")).to_contain_text("W999")
    expect(page.locator('[name="drawings.yard"]')).to_be_visible()


def test_the_words_of_a_sheet_are_found_by_the_browser(sheet: Page) -> None:
    assert sheet.evaluate("window.find('refrigerator')")
