"""A workbench and a browser that tests share; see `bench`. A browser that is not there fails, it never skips."""

from __future__ import annotations

from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page, sync_playwright
from tests.browser.bench import SHOTS, Bench, running
from tools.chromium import found


@pytest.fixture(scope="session")
def bench(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Bench]:
    with running(tmp_path_factory.mktemp("designs")) as bench:
        yield bench


@pytest.fixture(scope="session")
def browser() -> Iterator[Browser]:
    where = found()
    assert where is not None, "no Chromium: python tools/chromium.py says how to get one"
    with sync_playwright() as play:
        browser = play.chromium.launch(executable_path=where, args=["--no-sandbox"])
        yield browser
        browser.close()


@pytest.fixture
def page(browser: Browser, request: pytest.FixtureRequest) -> Iterator[Page]:
    """A page 1440 wide on which no script may fail; what it shows at the end is kept as a picture."""
    page = browser.new_page(viewport={"width": 1440, "height": 900})
    wrong: list[str] = []
    page.on("pageerror", lambda error: wrong.append(str(error)))
    yield page
    SHOTS.mkdir(parents=True, exist_ok=True)
    page.screenshot(path=SHOTS / f"{request.node.name.replace('/', '-')}.png")
    page.close()
    assert wrong == []
