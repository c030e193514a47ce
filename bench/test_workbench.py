"""The workbench as somebody at the browser meets it: the first page after the start, and an edit until its headline.

Beside the edit, in the same run: the program's answer to the same edit without a browser, `anchorwatt assess` in a
process of its own. Needs Chromium, at $CHROMIUM or on the path.
"""

from __future__ import annotations

import itertools
import subprocess
import sys
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, sync_playwright
from pytest_benchmark.fixture import BenchmarkFixture
from tests.browser.bench import CHECKED, WORKED_OUT, Bench, answer, running
from tools.chromium import found

from anchorwatt import design

FIELD = '[name="dc.bank.parallel"]'
DAWN = answer("charge_at_dawn_pct")


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("designs")
    design.new("trawler-14m", made / "trawler.yaml")
    return made


@pytest.fixture(scope="module")
def page(folder: Path) -> Iterator[Page]:
    with running(folder) as bench, sync_playwright() as play:
        browser = play.chromium.launch(executable_path=found(), args=["--no-sandbox"])
        shown = browser.new_page()
        shown.goto(f"{bench.address}/design/trawler/bank")
        checks_done(shown)
        yield shown
        browser.close()


def checks_done(page: Page) -> None:
    page.wait_for_selector(CHECKED, timeout=WORKED_OUT)


@pytest.mark.benchmark(group="an edit of the bank until its headline")
def test_in_the_browser(benchmark: BenchmarkFixture, page: Page) -> None:
    strings = itertools.cycle(("3", "4"))
    before: dict[str, str] = {}

    def settled() -> tuple[tuple[()], dict[str, str]]:
        checks_done(page)
        before["dawn"] = page.inner_text(DAWN)
        page.fill(FIELD, next(strings))
        return (), {}

    def edit() -> None:
        page.press(FIELD, "Enter")
        page.wait_for_function(
            "([where, old]) => document.querySelector(where)?.innerText !== old", arg=[DAWN, before["dawn"]]
        )

    benchmark.pedantic(edit, setup=settled, rounds=20)


@pytest.mark.benchmark(group="an edit of the bank until its headline")
def test_by_the_command_line(benchmark: BenchmarkFixture, folder: Path) -> None:
    command = [sys.executable, "-m", "anchorwatt", "assess", str(folder / "trawler.yaml")]
    benchmark.pedantic(lambda: subprocess.run(command, check=True, stdout=subprocess.DEVNULL), rounds=3)


@pytest.mark.benchmark(group="the first page after the start")
def test_first_page(benchmark: BenchmarkFixture, folder: Path) -> None:
    begun: list[Bench] = []

    def start() -> None:
        begun.append(Bench(folder))
        begun[-1].start()

    try:
        benchmark.pedantic(start, rounds=5)
    finally:
        for bench in begun:
            bench.stop()
