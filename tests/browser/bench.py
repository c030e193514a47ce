"""A workbench that runs, and a browser that looks at it."""

from __future__ import annotations

import os
import socket
import subprocess
import sys
import time
import urllib.error
import urllib.request
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass, field
from pathlib import Path

from playwright.sync_api import Page

from anchorwatt.design import starter_text

SHOTS = Path("out/screenshots")
WORKED_OUT = 120_000
"""ms that anything may take on a slow machine; a test waits for what it needs and no longer."""


def answer(key: str) -> str:
    """Where the headline shows an answer."""
    return f'[data-with="{key}"] .value'


CHECKED = answer("checks_failed")
HELD = answer("hold_hours")


def outside_pytest() -> dict[str, str]:
    """The environment without what makes a program believe that it runs inside a test."""
    return {name: value for name, value in os.environ.items() if not name.startswith(("PYTEST_", "NICEGUI_"))}


@dataclass
class Bench:
    """A workbench in a process of its own."""

    folder: Path
    accounts: bool = False  # whether one must sign in
    port: int = 0
    process: subprocess.Popen[bytes] | None = field(default=None, repr=False)

    @property
    def address(self) -> str:
        return f"http://127.0.0.1:{self.port}"

    def start(self) -> None:
        """Begin it, and wait until it answers."""
        if not self.port:
            with socket.socket() as free:
                free.bind(("127.0.0.1", 0))
                self.port = free.getsockname()[1]
        command = [sys.executable, "-m", "anchorwatt", "serve", str(self.folder), "--port", str(self.port)]
        command += ["--origin", self.address] if self.accounts else []
        self.process = subprocess.Popen(command, stderr=subprocess.DEVNULL, env=outside_pytest())
        for _ in range(6000):
            try:
                urllib.request.urlopen(self.address, timeout=5).close()
            except urllib.error.HTTPError:
                return  # it wants to know first who asks
            except OSError:
                assert self.process.poll() is None, "the workbench ended"
                time.sleep(0.01)
            else:
                return
        raise AssertionError("the workbench does not answer")

    def stop(self) -> None:
        """End it."""
        if self.process is not None:
            self.process.terminate()
            self.process.wait(20)
            self.process = None

    def design(self, name: str, starter: str = "trawler-14m") -> Path:
        """A fresh file of a starter boat; one that is as fresh is left alone, and with it what is worked out for it."""
        path, text = self.folder / f"{name}.yaml", starter_text(starter)
        if not path.exists() or path.read_text(encoding="utf-8") != text:
            path.write_text(text, encoding="utf-8")
        return path

    def show(self, page: Page, name: str, question: str) -> None:
        """Open a page of a design and wait until it is worked out."""
        page.goto(f"{self.address}/design/{name}/{question}")
        shown(page)


def settled(page: Page) -> None:
    """Wait until headline, page and checks are there."""
    shown(page)
    page.wait_for_selector(CHECKED, timeout=WORKED_OUT)


def shown(page: Page) -> None:
    """Wait until headline and page are there; checks may still be under way, except on their own page."""
    page.wait_for_selector(HELD, timeout=WORKED_OUT)
    page.wait_for_function(
        "!/Working it out|being done/.test(document.querySelector('.findings')?.innerText || '')", timeout=WORKED_OUT
    )


def type_in(page: Page, key: str, words: str) -> None:
    """Type something into a field and leave it."""
    field = page.locator(f'[name="{key}"]')
    page.evaluate("(id) => anchorwatt.go(id)", field.get_attribute("id"))
    field.fill(words)
    field.press("Enter")


def changed(page: Page, where: str, before: str) -> None:
    """Wait until something on the page says something else."""
    page.wait_for_function(
        "([where, before]) => { const it = document.querySelector(where); return it && it.innerText !== before }",
        arg=[where, before],
        timeout=WORKED_OUT,
    )


@contextmanager
def running(folder: Path, accounts: bool = False) -> Iterator[Bench]:
    """A workbench on a folder, for a while."""
    bench = Bench(folder, accounts)
    bench.start()
    try:
        yield bench
    finally:
        bench.stop()
