"""The intake of the first page in a real browser: from a few answers to a whole design."""

from __future__ import annotations

from playwright.sync_api import Page, expect
from tests.browser.bench import HELD, WORKED_OUT, Bench

from anchorwatt.design import read


def answered(bench: Bench, page: Page, name: str) -> None:
    """A small boat that the intake is done with in a few seconds."""
    page.goto(bench.address)
    form = page.locator("#new-intake")
    form.get_by_label("Name of the boat").fill(name)
    form.get_by_label("Length").fill("36 ft")
    form.get_by_label("Sleeping cabins").fill("1")
    form.get_by_label("Galley").uncheck()
    form.get_by_label("Climate").select_option("Balearics")


def make(page: Page) -> None:
    page.locator("#new-intake").get_by_role("button", name="Make the design").click()


def test_a_few_answers_become_a_design_with_a_headline(bench: Bench, page: Page) -> None:
    answered(bench, page, "Tern")
    make(page)
    expect(page.locator(".going")).to_contain_text("…")
    page.wait_for_url("**/design/Tern/boat", timeout=WORKED_OUT)
    expect(page.locator(HELD)).to_contain_text("h", timeout=WORKED_OUT)
    made = read(bench.folder / "Tern.yaml")
    assert made.boat.length.text == "36 ft"
    assert set(made.cabins) == {"cabin 1", "saloon", "head 1", "engine room"}
    page.goto(bench.address)
    expect(page.get_by_label("Name of the boat")).to_have_value("")


def test_a_half_filled_intake_survives_a_reload(bench: Bench, page: Page) -> None:
    answered(bench, page, "Half <b>&\"'")
    page.reload()
    expect(page.get_by_label("Name of the boat")).to_have_value("Half <b>&\"'")
    expect(page.get_by_label("Length")).to_have_value("36 ft")
    expect(page.get_by_label("Galley")).not_to_be_checked()
    expect(page.get_by_label("Climate")).to_have_value("Balearics")


def test_an_intake_is_cancelled_and_its_answers_stay(bench: Bench, page: Page) -> None:
    answered(bench, page, "Cancelled")
    make(page)
    page.locator(".going").get_by_role("button", name="Cancel").click()
    expect(page.locator(".notice")).to_contain_text("Stopped. Nothing was made.")
    expect(page.get_by_label("Length")).to_have_value("36 ft")
    assert not (bench.folder / "Cancelled.yaml").exists()


def test_what_does_not_fit_is_told_beside_its_question(bench: Bench, page: Page) -> None:
    answered(bench, page, "Wrong")
    page.get_by_label("Length").fill("a lot")
    page.get_by_label("Sleeping cabins").fill("13")
    make(page)
    length = page.get_by_label("Length")
    expect(length).to_have_attribute("aria-invalid", "true")
    expect(length).to_be_focused()
    expect(page.locator("#i-sleeping-told")).to_contain_text("allowed:")
    assert not (bench.folder / "Wrong.yaml").exists()
