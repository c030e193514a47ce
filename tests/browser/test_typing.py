"""Edits that follow each other faster than the workbench answers."""

from __future__ import annotations

from playwright.sync_api import Page, expect
from tests.browser.bench import WORKED_OUT, Bench

from anchorwatt.design import read

RESERVE = '[name="brief.reserve"]'


def test_one_who_types_twice_does_not_stand_in_his_own_way(bench: Bench, page: Page) -> None:
    path = bench.design("twice", "cutter-12m")
    page.goto(f"{bench.address}/design/twice/boat")
    page.wait_for_selector(RESERVE, timeout=WORKED_OUT)
    # Both in one go of the browser, so that no answer can come between them.
    page.evaluate(
        """(where) => {
            const field = document.querySelector(where);
            for (const words of ["26 %", "27 %"]) {
                field.value = words;
                field.dispatchEvent(new Event("change", { bubbles: true }));
            }
        }""",
        RESERVE,
    )
    expect(page.locator(".state")).to_contain_text("27 %", timeout=WORKED_OUT)
    expect(page.locator(f"{RESERVE}:not(.sending)")).to_have_value("27 %", timeout=WORKED_OUT)
    assert read(path).brief.reserve.text == "27 %"
