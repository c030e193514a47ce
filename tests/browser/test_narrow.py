"""Unusual boats, and narrow screens: nothing scrolls the page sideways, and no page is dead."""

from __future__ import annotations

import re
from collections.abc import Callable

import pytest
from playwright.sync_api import Browser, Page, expect
from tests.browser.bench import HELD, WORKED_OUT, Bench

from anchorwatt.design import parse, starter_text
from anchorwatt.design.intake import read_intake
from anchorwatt.design.intake_text import design_text, guessed
from anchorwatt.web.questions import QUESTIONS

WIDTHS = ((1024, 768), (390, 844))
LONG = ("days", "checks")  # pages that take long: what they show first must fit, too


def twelve_cabins() -> str:
    """A long boat with as many sleeping cabins as an intake takes, sized by no more than a guess."""
    said = {
        "name": "Twelve of Them",
        "form": "displacement trawler",
        "length": "29 m",
        "sleeping": 12,
        "heads": 6,
        "pilothouse": True,
        "engine": "slow diesel 90 kW",
    }
    intake = read_intake(said)
    return design_text(intake, guessed(intake))


def nothing_cooled() -> str:
    """A starter boat on which nobody asks for cooling."""
    text, taken = re.subn(r"\n    cool:(?: \{[^}]*\}|(?:\n      [^\n]*)+)", "", starter_text("cutter-12m"))
    assert taken
    assert not any(period.cool for period in parse(text).plan)
    return text


def wide(page: Page) -> list[str]:
    """What makes a page wider than its window."""
    found: list[str] = page.evaluate(
        """() => document.documentElement.scrollWidth <= innerWidth ? [] : [...document.querySelectorAll("body *")]
            .filter((one) => one.getBoundingClientRect().right > innerWidth + 1)
            .slice(0, 5).map((one) => one.outerHTML.slice(0, 120))"""
    )
    return found


@pytest.mark.parametrize("boat", [twelve_cabins, nothing_cooled])
def test_every_page_of_an_unusual_boat_is_there_and_fits(
    bench: Bench, browser: Browser, boat: Callable[[], str]
) -> None:
    name = boat.__name__
    (bench.folder / f"{name}.yaml").write_text(boat(), encoding="utf-8")
    page = browser.new_page(viewport={"width": 1024, "height": 768})
    for one in QUESTIONS:
        page.goto(f"{bench.address}/design/{name}/{one.path}")
        page.wait_for_selector(HELD, timeout=WORKED_OUT)
        if one.path not in LONG:
            expect(page.locator(".findings")).not_to_contain_text("Working it out", timeout=WORKED_OUT)
        assert page.locator(".form" if one.forms else ".findings > *").count() > 0, one.path
        expect(page.locator(".notice")).to_have_count(0)
        for width, height in WIDTHS:
            page.set_viewport_size({"width": width, "height": height})
            assert wide(page) == [], (one.path, width)
    page.close()


def test_every_part_of_a_page_fits_when_it_is_unfolded(bench: Bench, browser: Browser) -> None:
    bench.design("unfolded", "catamaran-13m")
    page = browser.new_page(viewport={"width": 390, "height": 844})
    for path in ("plant", "bank", "cabins"):
        page.goto(f"{bench.address}/design/unfolded/{path}")
        page.wait_for_selector(".form details", state="attached", timeout=WORKED_OUT)
        page.evaluate("() => document.querySelectorAll('details').forEach((one) => { one.open = true })")
        assert wide(page) == [], path
    page.close()


def test_the_first_page_fits_on_a_phone(bench: Bench, browser: Browser) -> None:
    bench.design("a" * 60, "cutter-12m")
    (bench.folder / "broken with a long name.yaml").write_text(f"{'b' * 200}: 2\n", encoding="utf-8")
    page = browser.new_page(viewport={"width": 390, "height": 844})
    page.goto(bench.address)
    expect(page.locator(".design dl").first).to_be_visible(timeout=WORKED_OUT)
    expect(page.locator("#new-intake")).to_be_visible()
    assert wide(page) == []
    page.close()
