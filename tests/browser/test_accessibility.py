"""What axe-core, an engine of checks for accessibility, finds on each page: nothing serious."""

from __future__ import annotations

import pytest
from axe_playwright_python.sync_playwright import Axe
from playwright.sync_api import Browser
from tests.browser.bench import Bench, settled

from anchorwatt.web.questions import QUESTIONS

pytestmark = pytest.mark.xdist_group("axe")  # one worker's, with the design that they share


def serious(page: object, contrast: bool = True) -> list[str]:
    """What is serious or critical; contrast, which is the same at any width, takes most of the time."""
    asked = {"resultTypes": ["violations"], "rules": {"color-contrast": {"enabled": contrast}}}
    found = Axe().run(page, options=asked).response["violations"]
    return [
        f"{one['id']}: {one['help']} ({len(one['nodes'])}: {one['nodes'][0]['html'][:160]})"
        for one in found
        if one["impact"] in ("serious", "critical")
    ]


@pytest.mark.parametrize("question", [one.path for one in QUESTIONS])
def test_a_page_of_a_design_at_a_desk_and_on_a_phone(bench: Bench, browser: Browser, question: str) -> None:
    """No serious finding, and on the phone nothing that scrolls the page sideways."""
    bench.design("axe", "cutter-12m")
    page = browser.new_page(viewport={"width": 1440, "height": 900})
    bench.show(page, "axe", question)
    assert serious(page) == []
    page.set_viewport_size({"width": 390, "height": 844})
    page.wait_for_function("document.documentElement.scrollWidth <= 390")
    page.close()


@pytest.mark.parametrize("path", ["/", "/compare", "/design/none/boat"])
def test_other_pages(bench: Bench, browser: Browser, path: str) -> None:
    bench.design("axe", "cutter-12m")
    page = browser.new_page(viewport={"width": 1024, "height": 768})
    page.goto(bench.address + path)
    page.wait_for_selector("h1")
    assert serious(page) == []
    page.close()


def test_the_why_of_an_answer(bench: Bench, browser: Browser) -> None:
    bench.design("axe", "cutter-12m")
    page = browser.new_page(viewport={"width": 1024, "height": 768})
    bench.show(page, "axe", "boat")
    page.click('[data-with="hold_hours"]')
    page.wait_for_selector(".why")
    settled(page)
    assert serious(page) == []
    page.close()
