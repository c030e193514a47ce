"""Entries that are called otherwise in the browser, with all that names them."""

from __future__ import annotations

from playwright.sync_api import Page, expect
from tests.browser.bench import WORKED_OUT, Bench

from anchorwatt.design import read

CABIN = '[name="cabins.{}.floor_area"]'


def rename(page: Page, key: str, name: str) -> None:
    """Call an entry otherwise, and leave the rest to the page."""
    page.wait_for_selector(f'[data-do="rename"][data-key="{key}"]', state="attached", timeout=WORKED_OUT)
    page.evaluate("() => document.querySelectorAll('details').forEach((one) => { one.open = true })")
    button = page.locator(f'[data-do="rename"][data-key="{key}"]')
    page.locator(".add", has=button).locator("input").fill(name)
    button.click()


def test_a_cabin_is_renamed_everywhere_and_taken_back_in_one_step(bench: Bench, page: Page) -> None:
    path = bench.design("cabin")
    before = path.read_bytes()
    page.goto(f"{bench.address}/design/cabin/cabins?cabin=saloon")
    rename(page, "cabins.saloon", "great room")
    expect(page.locator(".state")).to_contain_text("now called great room", timeout=WORKED_OUT)
    expect(page.locator(CABIN.format("great room"))).to_have_count(1, timeout=WORKED_OUT)
    design = read(path)
    assert "great room" in design.plan[1].cool
    assert design.cooling.plant.handlers["saloon"].cabin == "great room"
    page.click('[data-do="undo"]')
    expect(page.locator('[data-do="rename"][data-key="cabins.saloon"]')).to_have_count(1, timeout=WORKED_OUT)
    assert path.read_bytes() == before


def test_an_alternator_is_renamed(bench: Bench, page: Page) -> None:
    path = bench.design("machine")
    page.goto(f"{bench.address}/design/machine/charge")
    rename(page, "charging.engines.main engine.alternators.port alternator", "<i>old</i>")
    expect(page.locator("summary", has_text="<i>old</i>")).to_have_count(1, timeout=WORKED_OUT)
    assert "alternator <i>old</i>" in read(path).places


def test_a_name_that_cannot_be_is_told_and_changes_nothing(bench: Bench, page: Page) -> None:
    path = bench.design("refused")
    before = path.read_bytes()
    page.goto(f"{bench.address}/design/refused/cabins")
    rename(page, "cabins.saloon", "galley")
    expect(page.locator(".notice")).to_contain_text("a second “galley”", timeout=WORKED_OUT)
    rename(page, "cabins.saloon", "no.stop")
    expect(page.locator(".notice")).to_contain_text("without a full stop", timeout=WORKED_OUT)
    assert path.read_bytes() == before
