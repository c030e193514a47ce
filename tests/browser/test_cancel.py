"""Long work of a page: how far it is can be seen, and it can be given up, by hand or by an edit."""

from __future__ import annotations

from playwright.sync_api import Browser, Page, expect
from tests.browser.bench import HELD, WORKED_OUT, Bench, shown, type_in

GOING = ".progress-holder"
WHAT = "The shortest engine time a day at anchor"


def working(bench: Bench, page: Page, name: str, starter: str = "trawler-14m") -> None:
    """The page of the days, while it is being worked out."""
    bench.design(name, starter)
    page.goto(f"{bench.address}/design/{name}/days")
    expect(page.locator(GOING)).to_contain_text("engines started at", timeout=WORKED_OUT)


def test_the_week_tells_how_far_it_is_and_comes_to_its_end(bench: Bench, page: Page) -> None:
    working(bench, page, "days", "cutter-12m")  # the soonest at its end
    first = page.locator(f"{GOING} progress").get_attribute("value")
    page.wait_for_function(
        "(first) => document.querySelector('.progress-holder progress')?.value > Number(first)",
        arg=first,
        timeout=WORKED_OUT,
    )
    shown(page)
    expect(page.locator(".findings")).to_contain_text(WHAT)
    expect(page.locator(GOING)).to_have_text("")


def test_the_week_is_stopped_and_taken_up_again(bench: Bench, page: Page) -> None:
    working(bench, page, "stop")
    page.locator(GOING).get_by_role("button", name="Stop").click()
    expect(page.locator(".findings")).to_contain_text("Stopped")
    expect(page.locator(GOING)).to_have_text("")
    expect(page.locator(HELD)).to_contain_text("h")
    page.get_by_role("button", name="Work it out").click()
    expect(page.locator(GOING)).to_contain_text("engines started at", timeout=WORKED_OUT)


def test_an_edit_gives_up_what_is_under_way(bench: Bench, page: Page) -> None:
    working(bench, page, "edited")
    expect(page.locator(f"{GOING} progress")).not_to_have_attribute("value", "0", timeout=WORKED_OUT)
    type_in(page, "week.0.charging", "1.5 h")
    expect(page.locator(".state")).to_contain_text("1.5 h")
    expect(page.locator(f"{GOING} progress")).to_have_attribute("value", "0", timeout=WORKED_OUT)  # it begins again


def test_other_pages_answer_while_the_week_is_worked_out(bench: Bench, browser: Browser, page: Page) -> None:
    working(bench, page, "other")
    there = browser.new_page()
    bench.show(there, "other", "boat")
    expect(page.locator(GOING)).to_contain_text("engines started at")
    there.close()
