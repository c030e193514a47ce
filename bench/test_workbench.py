"""The workbench as somebody at the browser meets it: the first page after the start, and an edit until its headline.

Beside the edit, in the same run: the program's answer to the same edit without a browser, `anchorwatt assess` in a
process of its own. Needs Chromium, at $CHROMIUM or on the path.
"""

from __future__ import annotations

import itertools
import os
import shutil
import socket
import subprocess
import sys
import time
import urllib.request
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Page, sync_playwright
from pytest_benchmark.fixture import BenchmarkFixture

from anchorwatt import design

FIELD = '[name="dc.bank.parallel"]'
DAWN = '[data-with="charge_at_dawn_pct"] .value'


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("designs")
    design.new("trawler-14m", made / "trawler.yaml")
    return made


def outside_pytest() -> dict[str, str]:
    """The environment without what makes a program believe that it runs inside a test."""
    return {name: value for name, value in os.environ.items() if not name.startswith(("PYTEST_", "NICEGUI_"))}


def begun(folder: Path) -> tuple[subprocess.Popen[bytes], str]:
    """A workbench that has answered its first page."""
    with socket.socket() as free:
        free.bind(("127.0.0.1", 0))
        port = free.getsockname()[1]
    command = [sys.executable, "-m", "anchorwatt", "serve", str(folder), "--port", str(port)]
    process = subprocess.Popen(command, stderr=subprocess.DEVNULL, env=outside_pytest())
    address = f"http://127.0.0.1:{port}"
    while process.poll() is None:
        try:
            with urllib.request.urlopen(address, timeout=5) as page:
                assert b"Anchorwatt" in page.read()
                return process, address
        except OSError:
            time.sleep(0.01)
    raise RuntimeError(f"the workbench ended with {process.returncode}")


@pytest.fixture(scope="module")
def page(folder: Path) -> Iterator[Page]:
    process, address = begun(folder)
    chromium = os.environ.get("CHROMIUM") or shutil.which("chromium")
    try:
        with sync_playwright() as play:
            browser = play.chromium.launch(executable_path=chromium, args=["--no-sandbox"])
            shown = browser.new_page()
            shown.goto(f"{address}/design/trawler/bank")
            shown.wait_for_selector(DAWN, timeout=180_000)
            checks_done(shown)
            yield shown
            browser.close()
    finally:
        process.terminate()
        process.wait(10)


def checks_done(page: Page) -> None:
    page.wait_for_selector('[data-with="checks_failed"]', timeout=120_000)


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
    running: list[subprocess.Popen[bytes]] = []

    def start() -> None:
        running.append(begun(folder)[0])

    try:
        benchmark.pedantic(start, rounds=5)
    finally:
        for process in running:
            process.terminate()
            process.wait(10)
