"""The papers: one is chosen, seen page by page, and saved."""

from __future__ import annotations

import io

import pypdf
import pytest
from playwright.sync_api import Page, expect
from tests.browser.bench import WORKED_OUT, Bench
from tests.browser.test_narrow import wide

pytestmark = pytest.mark.xdist_group("axe")  # one worker's, with the design that they share

YARD = "<img src=x onerror=alert(1)> #set text(red) & Sons"


def saved(page: Page) -> pypdf.PdfReader:
    with page.expect_download(timeout=WORKED_OUT) as started:
        page.get_by_role("link", name="PDF", exact=True).click()
    return pypdf.PdfReader(io.BytesIO(started.value.path().read_bytes()))


def words(file: pypdf.PdfReader) -> str:
    return " ".join(" ".join(one.extract_text() for one in file.pages).split())


def test_papers_are_chosen_seen_and_saved(page: Page, bench: Bench) -> None:
    bench.design("axe", "cutter-12m")
    house = bench.folder / "yard & <b>sons.yaml"
    house.write_text(f"name: '{YARD}'\n", encoding="utf-8")
    page.goto(f"{bench.address}/design/axe/papers")

    pictures = page.locator(".leaves img")
    expect(pictures.first).to_be_visible(timeout=WORKED_OUT)
    offer = saved(page)
    assert pictures.count() == len(offer.pages)
    assert "What it will feel like" in words(offer)
    page.get_by_label("Go to page").select_option(label=f"{pictures.count()} of {pictures.count()}")
    last = page.get_by_alt_text(f"Page {pictures.count()} of Offer")
    expect(last).to_be_in_viewport()
    page.wait_for_function("(one) => one.complete && one.naturalWidth > 0", arg=last.element_handle())

    page.get_by_label("Paper").select_option("commissioning")
    sea = page.get_by_label("Sea on the day")
    sea.fill("mild", timeout=WORKED_OUT)
    sea.press("Enter")
    expect(page.locator("#ask-sea-told")).to_contain_text("Found", timeout=WORKED_OUT)
    sea.fill("18 °C")
    page.get_by_label("Given out by").select_option("yard & <b>sons")
    expect(page.locator(".leaves img[src*='house=yard']").first).to_be_attached(timeout=WORKED_OUT)
    expect(page.locator("#ask-sea-told")).to_have_text("")
    file = words(saved(page))
    assert "18.0 °C typed in" in file
    assert YARD in file

    page.set_viewport_size({"width": 390, "height": 844})
    page.reload()
    expect(page.get_by_alt_text("Page 1 of Commissioning file")).to_be_visible(timeout=WORKED_OUT)
    expect(page.get_by_label("Sea on the day")).to_have_value("18 °C")
    assert wide(page) == []
    house.unlink()
