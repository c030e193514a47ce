"""Where values come from: typed, estimated, or a figure of the catalogue that can be typed over and taken back."""

from __future__ import annotations

from playwright.sync_api import Page, expect
from tests.browser.bench import WORKED_OUT, Bench, type_in

from anchorwatt.design import read

CAPACITY = "dc.bank.module.capacity"
MODULE = "lithium 25.6 V 280 Ah"


def origin(page: Page, key: str) -> str:
    field = page.locator(f'[name="{key}"]')
    return page.locator(f"#{field.get_attribute('id')}-origin").inner_text()


def test_a_figure_of_the_catalogue_is_typed_over_and_taken_back(bench: Bench, page: Page) -> None:
    path = bench.design("figures")
    before = path.read_bytes()
    page.goto(f"{bench.address}/design/figures/bank")
    field = page.locator(f'[name="{CAPACITY}"]')
    field.wait_for(state="attached", timeout=WORKED_OUT)
    part = page.locator(".figures", has=field)
    expect(field).not_to_be_visible()  # folded until it is asked for
    part.locator("summary").click()
    expect(field).to_have_attribute("placeholder", "280 Ah")
    assert origin(page, CAPACITY).startswith("catalogue")
    back = page.locator(f'[data-do="back"][data-key="{CAPACITY}"]')
    expect(back).not_to_be_visible()
    type_in(page, CAPACITY, "300 Ah")
    expect(back).to_be_visible(timeout=WORKED_OUT)
    assert read(path).document.data["dc"]["bank"]["module"] == {"like": MODULE, "capacity": "300 Ah"}
    assert origin(page, CAPACITY) == "typed; the catalogue says 280 Ah"
    expect(part.locator("summary")).to_contain_text("typed over")
    expect(page.locator('[name="dc.bank.module"]')).to_have_value(MODULE)
    back.click()
    expect(field).to_have_value("", timeout=WORKED_OUT)
    assert origin(page, CAPACITY).startswith("catalogue")
    assert path.read_bytes() == before


def test_a_figure_that_does_not_fit_is_told_beside_it(bench: Bench, page: Page) -> None:
    path = bench.design("unfit")
    before = path.read_bytes()
    page.goto(f"{bench.address}/design/unfit/bank")
    page.locator(f'[name="{CAPACITY}"]').wait_for(state="attached", timeout=WORKED_OUT)
    type_in(page, CAPACITY, "<b>much</b>")
    name = page.locator(f'[name="{CAPACITY}"]').get_attribute("id")
    expect(page.locator(f"#{name}-told")).to_contain_text("allowed: an electric charge", timeout=WORKED_OUT)
    assert path.read_bytes() == before


def test_typed_and_estimated_values_say_so(bench: Bench, page: Page) -> None:
    bench.design("origins")
    page.goto(f"{bench.address}/design/origins/boat")
    page.locator('[name="boat.length"]').wait_for(timeout=WORKED_OUT)
    assert origin(page, "boat.length") == "typed"
    assert origin(page, "boat.draught").startswith("estimated: ")
