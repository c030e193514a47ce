"""A workbench that goes away in the middle of an edit: the browser keeps the edit, and nothing is lost."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import Page, expect
from tests.web.bench import WORKED_OUT, running, settled, type_in

from anchorwatt.design import read


def test_an_edit_made_while_the_workbench_is_away_is_sent_when_it_is_back(tmp_path: Path, page: Page) -> None:
    with running(tmp_path) as bench:
        path = bench.design("away", "cutter-12m")
        bench.show(page, "away", "boat")
        bench.stop()
        type_in(page, "brief.reserve", "31 %")
        bench.start()
        page.reload()
        settled(page)
        expect(page.locator('[name="brief.reserve"]')).to_have_value("31 %", timeout=WORKED_OUT)
        expect(page.locator(".state")).to_contain_text("31 %", timeout=WORKED_OUT)
        assert read(path).brief.reserve.text == "31 %"
