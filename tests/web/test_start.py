"""The first page: designs in short, and new ones."""

from __future__ import annotations

import asyncio
import gc
import os
import subprocess
import sys
import threading
from collections.abc import AsyncIterator, Callable
from pathlib import Path
from typing import Any

import pytest
from fastapi import Request
from nicegui import events, ui
from nicegui.testing import User
from nicegui.testing.user_simulation import user_simulation

from anchorwatt.design import read, starter_text
from anchorwatt.design.intake import Intake
from anchorwatt.errors import OutOfRange
from anchorwatt.web import start
from anchorwatt.web.file_name import LONGEST, refusal
from anchorwatt.web.overview import Entry, Overview
from anchorwatt.web.serve import build

LATE = 60.0  # s
INTAKE = {"name": "Sea Holly", "form": "displacement trawler", "length": "46 ft", "engine": "slow diesel 90 kW"}


@pytest.fixture(scope="module", autouse=True)
def _what_is_there_already() -> None:
    """NiceGUI collects garbage before and after each simulation: not among all that other tests have left."""
    gc.freeze()


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    made = tmp_path / "designs"
    made.mkdir()
    return made


@pytest.fixture
def nothing_worked_out(monkeypatch: pytest.MonkeyPatch) -> None:
    """Most of the page shows before anything is worked out; these tests are about that."""

    class Idle(Overview):
        def read(self, path: Path, report: Callable[[Entry], bool]) -> bool:
            return report(Entry(path.stem))

        def check(self, path: Path, report: Callable[[Entry], bool]) -> bool:
            return report(Entry(path.stem))

    monkeypatch.setattr(start, "_KNOWN", Idle())


@pytest.fixture
async def user(folder: Path) -> AsyncIterator[User]:
    async with user_simulation() as simulated:
        build(folder)
        yield simulated


@pytest.fixture
async def viewer(folder: Path) -> AsyncIterator[User]:
    def may_change(_: Request) -> bool:
        return False

    async with user_simulation() as simulated:
        build(folder, may_change)
        yield simulated


@pytest.fixture
def visited(monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Where the page sent the browser, which stays where it is."""
    found: list[str] = []
    monkeypatch.setattr(start, "_go", found.append)
    return found


def shown(user: User) -> str:
    """All HTML of the page."""
    assert user.client is not None
    return "\n".join(one.content for one in user.client.elements.values() if isinstance(one, ui.html))


def send(user: User, **said: Any) -> None:
    """What bench.js tells the page when a form is sent or a button pressed."""
    assert user.client is not None
    for element in tuple(user.client.elements.values()):
        for listener in element._event_listeners.values():
            if listener.type == "submit":
                told = events.GenericEventArguments(sender=element, client=user.client, args=said)
                with user.client:
                    events.handle_event(listener.handler, told)


async def until(holds: Callable[[], object]) -> None:
    async with asyncio.timeout(LATE):
        while not holds():
            await asyncio.sleep(0.02)


async def test_an_empty_folder_says_so_and_offers_a_beginning(user: User) -> None:
    await user.open("/")
    assert "no design in this folder yet" in shown(user)
    assert "New from a starter boat" in shown(user)


async def test_the_few_deciding_answers_follow(user: User, folder: Path) -> None:
    (folder / "one.yaml").write_text(starter_text("cutter-12m"), encoding="utf-8")
    await user.open("/")
    await until(lambda: "How many checks fail?</dt><dd class=" in shown(user) and "checking" not in shown(user))
    page = shown(user)
    assert "Ragged Kate" in page
    for question in ("How long does the bank hold the night?", "How long must it?", "What does the customer pay?"):
        assert question in page


async def test_an_unreadable_file_is_listed_with_its_first_problem(user: User, folder: Path) -> None:
    (folder / "broken.yaml").write_text("anchorwatt: 2\n", encoding="utf-8")
    await user.open("/")
    await until(lambda: "Cannot be read" in shown(user))
    assert "found the bare number 2" in shown(user)
    assert 'href="/design/broken"' in shown(user)


async def test_no_path_of_the_machine_is_shown(user: User, folder: Path) -> None:
    (folder / "broken.yaml").write_text("anchorwatt: 2\n", encoding="utf-8")
    await user.open("/")
    await until(lambda: "Cannot be read" in shown(user))
    assert str(folder) not in shown(user)


@pytest.mark.usefixtures("nothing_worked_out")
async def test_fifty_designs_are_listed_at_once(user: User, folder: Path) -> None:
    for number in range(50):
        (folder / f"boat {number}.yaml").write_text("anchorwatt: 1\n", encoding="utf-8")
    await user.open("/")
    assert shown(user).count("Working it out") == 50


@pytest.mark.usefixtures("nothing_worked_out")
@pytest.mark.parametrize("name", ['<img src=x onerror="x">', "a" * 200, "‮evil", "&amp; 'q'", "naïve 船"])
async def test_a_hostile_file_name_is_text(user: User, folder: Path, name: str) -> None:
    (folder / f"{name}.yaml").write_text("anchorwatt: 1\n", encoding="utf-8")
    await user.open("/")
    assert "<img" not in shown(user)
    assert "Working it out" in shown(user)


@pytest.mark.usefixtures("nothing_worked_out")
async def test_a_file_name_that_no_address_holds_is_told(user: User, folder: Path) -> None:
    (folder / os.fsdecode(b"\xff.yaml")).write_text("anchorwatt: 1\n", encoding="utf-8")
    await user.open("/")
    assert "rename the file" in shown(user)


@pytest.mark.usefixtures("nothing_worked_out")
async def test_a_starter_becomes_a_design(user: User, folder: Path, visited: list[str]) -> None:
    await user.open("/")
    send(user, do="starter", fields={"file": "grey & new", "starter": "cutter-12m"})
    await until(lambda: visited)
    assert visited == ["/design/grey%20%26%20new"]
    assert read(folder / "grey & new.yaml").name == "Ragged Kate"


@pytest.mark.usefixtures("nothing_worked_out")
@pytest.mark.parametrize("name", ["one", "ONE", "", "a/b", "../up", ".hidden", "a\x00b", "x" * 200, "con"])
async def test_a_refused_name_makes_nothing(user: User, folder: Path, name: str) -> None:
    (folder / "one.yaml").write_text("anchorwatt: 1\n", encoding="utf-8")
    await user.open("/")
    send(user, do="starter", fields={"file": name, "starter": "cutter-12m"})
    await until(lambda: "Nothing was made" in shown(user))
    assert [path.name for path in folder.parent.rglob("*.yaml")] == ["one.yaml"]
    assert (folder / "one.yaml").read_text("utf-8") == "anchorwatt: 1\n"


@pytest.mark.usefixtures("nothing_worked_out")
async def test_a_starter_that_there_is_not_makes_nothing(user: User, folder: Path) -> None:
    await user.open("/")
    send(user, do="starter", fields={"file": "new", "starter": "../../secret"})
    await until(lambda: "Nothing was made" in shown(user))
    assert not list(folder.glob("*.yaml"))


@pytest.mark.usefixtures("nothing_worked_out")
async def test_an_intake_becomes_a_design(
    user: User, folder: Path, visited: list[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    def text_of(intake: Intake, going: Callable[[str], bool]) -> str:
        assert going("Trying …")
        return starter_text("cutter-12m").replace("Ragged Kate", intake.name)

    monkeypatch.setattr(start, "_first_text", text_of)
    await user.open("/")
    send(user, do="intake", fields=INTAKE)
    await until(lambda: visited)
    assert read(folder / "Sea Holly.yaml").name == "Sea Holly"


@pytest.mark.usefixtures("nothing_worked_out")
async def test_an_intake_that_does_not_fit_makes_nothing(user: User, folder: Path) -> None:
    await user.open("/")
    send(user, do="intake", fields={**INTAKE, "length": "46"})
    await until(lambda: "Nothing was made" in shown(user))
    assert not list(folder.glob("*.yaml"))


@pytest.mark.usefixtures("nothing_worked_out")
async def test_progress_is_told_and_cancel_stops(user: User, folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    told = threading.Event()
    ended = threading.Event()

    def text_of(_: Intake, going: Callable[[str], bool]) -> str:
        while going("Trying bank: three modules …"):
            told.wait(0.02)
        ended.set()
        return ""

    monkeypatch.setattr(start, "_first_text", text_of)
    await user.open("/")
    send(user, do="intake", fields=INTAKE)
    await until(lambda: "three modules" in shown(user))
    send(user, do="cancel")
    await until(lambda: "Stopped. Nothing was made." in shown(user))
    await until(ended.is_set)
    assert not list(folder.glob("*.yaml"))


@pytest.mark.usefixtures("nothing_worked_out")
async def test_an_intake_beyond_the_equations_is_told(user: User, monkeypatch: pytest.MonkeyPatch) -> None:
    def text_of(_: Intake, __: Callable[[str], bool]) -> str:
        raise OutOfRange("a cabin grows too hot")

    monkeypatch.setattr(start, "_first_text", text_of)
    await user.open("/")
    send(user, do="intake", fields=INTAKE)
    await until(lambda: "a cabin grows too hot" in shown(user))


@pytest.mark.usefixtures("nothing_worked_out")
async def test_who_may_only_look_sees_no_form(viewer: User) -> None:
    await viewer.open("/")
    assert "<form" not in shown(viewer)
    assert "may look" in shown(viewer)


@pytest.mark.usefixtures("nothing_worked_out")
async def test_who_may_only_look_makes_nothing(viewer: User, folder: Path) -> None:
    await viewer.open("/")
    send(viewer, do="starter", fields={"file": "new", "starter": "cutter-12m"})
    await until(lambda: "notice" in shown(viewer))
    assert not list(folder.glob("*.yaml"))


@pytest.mark.usefixtures("nothing_worked_out")
async def test_a_folder_that_cannot_be_written_is_told(user: User, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(os, "access", lambda *_: False)
    await user.open("/")
    assert "cannot be written" in shown(user)
    assert "<form" not in shown(user)


@pytest.mark.parametrize("name", ["Grey Plover", "a.b", "naïve 船", "x" * LONGEST, "it's, here (2)"])
def test_usual_names_are_taken(name: str) -> None:
    assert refusal(name, ()) == ""


def test_another_version_of_a_file_is_worked_out_again(tmp_path: Path) -> None:
    path, overview, seen = tmp_path / "a.yaml", Overview(), list[Entry]()

    def report(entry: Entry) -> bool:
        seen.append(entry)
        return True

    path.write_text("anchorwatt: 2\n", encoding="utf-8")
    overview.read(path, report)
    path.write_text("anchorwatt: three\n", encoding="utf-8")
    overview.read(path, report)
    assert "2" in seen[0].wrong
    assert "three" in seen[1].wrong


def test_nobody_looking_ends_the_work(tmp_path: Path) -> None:
    path = tmp_path / "a.yaml"
    path.write_text("anchorwatt: 2\n", encoding="utf-8")
    assert not Overview().read(path, lambda _: False)


def test_the_first_page_needs_none_of_the_slow_libraries() -> None:
    code = (
        "import sys, anchorwatt.web.serve as s\n"
        "from anchorwatt.web.start_html import intake_form, starter_form\n"
        "starter_form(False), intake_form(False)\n"
        "print([name for name in ('numba', 'CoolProp', 'pvlib', 'scipy', 'pandas') if name in sys.modules])"
    )
    told = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert told.stdout.strip() == "[]"
