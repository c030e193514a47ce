"""The first page: the designs of the folder, and new ones."""

from __future__ import annotations

import asyncio
import os
from collections.abc import Awaitable, Callable
from concurrent.futures import ThreadPoolExecutor
from pathlib import Path
from typing import Any

from nicegui import Client, background_tasks, ui
from nicegui.client import ClientConnectionTimeout

from anchorwatt.design.intake import Intake, read_intake
from anchorwatt.design.writing import begin, starter_text, starters
from anchorwatt.errors import AnchorwattError, BadDesign
from anchorwatt.units import System
from anchorwatt.web.desk import Desks
from anchorwatt.web.escaped import part, text
from anchorwatt.web.file_name import refusal
from anchorwatt.web.overview import Entry, Overview
from anchorwatt.web.shell import call_script, head, notice_html, plain_top
from anchorwatt.web.start_html import entry_html, intake_form, progress_html, starter_form

HEAR = {
    "click": "(event) => anchorwatt.clicked(event, emit)",
    "submit": "(event) => anchorwatt.submitted(event, emit)",
}
STARTER_FORM, INTAKE_FORM = "new-starter", "new-intake"
LOCKED = "Your role may look, but not make designs."
CANNOT_WRITE = (
    "This folder cannot be written: no design can be made here, and no change can be saved. "
    "Ask whoever looks after this machine for the right to write in it."
)

_READS = ThreadPoolExecutor(1, "anchorwatt-overview")
_INTAKES = ThreadPoolExecutor(1, "anchorwatt-intake")
_KNOWN = Overview()


async def start_page(desks: Desks, system: System, locked: bool) -> None:
    """Designs with their few deciding answers, and two ways to begin one."""
    Start(desks, system, locked).build()


class Start:
    """One tab that shows the first page. Used from the event loop only."""

    def __init__(self, desks: Desks, system: System, locked: bool) -> None:
        self.desks = desks
        self.system = system
        self.locked = locked
        self.writable = os.access(desks.folder, os.W_OK | os.X_OK)
        self.loop = asyncio.get_running_loop()
        self.client: Client = ui.context.client
        self.closed = False
        self.stop: asyncio.Event | None = None  # of the intake that is under way
        self.rows: dict[str, ui.html] = {}

    def build(self) -> None:
        """Lay the page out; the answers follow one design after the other."""
        head("Designs")
        plain_top(self.system)
        with ui.element("div").props('id="main" tabindex="-1"').classes("page plain start") as root:
            ui.html("<h1>Designs</h1>", sanitize=False)
            if not self.writable:
                ui.html(notice_html(CANNOT_WRITE), sanitize=False)
            paths = self._paths()
            if not paths:
                ui.html('<p class="empty">There is no design in this folder yet. Begin one below.</p>', sanitize=False)
            with ui.element("div").classes("designs"):
                for path in paths:
                    entry = _KNOWN.known(path)
                    row = ui.html(entry_html(entry, path, self.system), sanitize=False)
                    self.rows[path.stem] = row.classes("design")
            self.notice = ui.html("", sanitize=False).props('role="status" aria-live="polite"').classes("notice-holder")
            if self.locked:
                ui.html(f'<p class="empty">{text(LOCKED)}</p>', sanitize=False)
            elif self.writable:
                with ui.element("div").classes("begin"):
                    ui.html(starter_form(locked=False), sanitize=False)
                    ui.html(intake_form(locked=False), sanitize=False)
        for event, handler in HEAR.items():
            root.on(event, self._heard, js_handler=handler)

        def close() -> None:
            self.closed = True

        self.client.on_delete(close)
        background_tasks.create(self._fill(paths))

    def _paths(self) -> list[Path]:
        """The design files, the one that was changed last first."""
        found = [self.desks.folder / f"{name}.yaml" for name in self.desks.names()]
        return sorted(found, key=lambda path: path.stat().st_mtime if path.exists() else 0.0, reverse=True)

    async def _fill(self, paths: list[Path]) -> None:
        """First the answers of all, then the checks of all, which take longer."""
        try:
            await self.client.connected(timeout=60.0)
        except ClientConnectionTimeout:  # whoever asked for the page does not show it
            return
        for step in (_KNOWN.read, _KNOWN.check):
            for path in paths:
                if self.closed or not await self.loop.run_in_executor(_READS, step, path, self._reported):
                    return

    def _reported(self, entry: Entry) -> bool:
        """From a worker's thread: show what is known of a design."""
        if not self.closed:
            self.loop.call_soon_threadsafe(self._show, entry)
        return not self.closed

    def _show(self, entry: Entry) -> None:
        if self.closed:
            return
        row, path = self.rows[entry.name], self.desks.folder / f"{entry.name}.yaml"
        content = entry_html(entry, path, self.system)
        if row.content != content:
            row.set_content(content)

    async def _heard(self, event: Any) -> None:
        said: dict[str, Any] = event.args if isinstance(event.args, dict) else {}
        doing: dict[str, Callable[[dict[str, Any]], Awaitable[None]]] = {
            "starter": self._from_starter,
            "intake": self._from_intake,
            "cancel": self._cancel,
        }
        do = str(said.get("do", ""))
        if do not in doing:
            return
        if self.locked:
            self._notice(LOCKED)
            return
        fields = said.get("fields")
        await doing[do]({str(k): v for k, v in fields.items()} if isinstance(fields, dict) else {})

    async def _from_starter(self, fields: dict[str, Any]) -> None:
        name, starter = str(fields.get("file", "")).strip(), str(fields.get("starter", ""))
        told = {"file": refusal(name, self.desks.names())}
        if starter not in starters():
            told["starter"] = "Choose a starter boat."
        if any(self._tell(STARTER_FORM, told)):
            return
        await self._write(name, starter_text(starter), STARTER_FORM)

    async def _from_intake(self, fields: dict[str, Any]) -> None:
        if self.stop is not None:
            return
        name = str(fields.pop("file", "")).strip() or str(fields.get("name", "")).strip()
        told: dict[str, str] = {}
        intake = None
        for box in ("saloon", "galley", "pilothouse"):
            fields[box] = fields.get(box) == "on"
        try:
            intake = read_intake(fields)
        except BadDesign as problem:
            for one in problem.problems:
                told.setdefault(one.key.split(".")[0], f"Found {one.found}; allowed: {one.allowed}.")
        if "name" not in told:
            told["file"] = refusal(name, self.desks.names())
        if any(self._tell(INTAKE_FORM, told)) or intake is None:
            return
        await self._make(name, intake)

    async def _make(self, name: str, intake: Intake) -> None:
        stop = self.stop = asyncio.Event()

        def going(words: str) -> bool:  # from a worker's thread
            self.loop.call_soon_threadsafe(self._progress, words, stop)
            return not (stop.is_set() or self.closed)

        self._progress("Beginning …", stop)
        making = asyncio.ensure_future(self.loop.run_in_executor(_INTAKES, _first_text, intake, going))
        stopping = asyncio.ensure_future(stop.wait())
        either: set[asyncio.Future[Any]] = {making, stopping}
        await asyncio.wait(either, return_when=asyncio.FIRST_COMPLETED)
        self.stop = None
        stopping.cancel()
        if stop.is_set():  # what is under way ends at its next step; nobody waits for it
            making.add_done_callback(_forget)
            self._notice("Stopped. Nothing was made.")
            return
        try:
            made = making.result()
        except AnchorwattError as problem:
            self._notice("Nothing was made.", problem)
            return
        if not self.closed:
            await self._write(name, made, INTAKE_FORM)

    def _progress(self, words: str, stop: asyncio.Event) -> None:
        if self.stop is stop and not self.closed:
            self.notice.set_content(progress_html(words))

    async def _cancel(self, _: dict[str, Any]) -> None:
        if self.stop is not None:
            self.stop.set()

    async def _write(self, name: str, content: str, form: str) -> None:
        path = self.desks.folder / f"{name}.yaml"
        taken = refusal(name, self.desks.names())
        try:
            if taken:
                self._notice(taken)
                return
            await asyncio.to_thread(begin, content, path)
        except AnchorwattError as problem:
            self._notice("Nothing was made.", problem)
            return
        call_script(self.client, "anchorwatt.made", form)
        with self.client:
            _go(f"/design/{part(name)}")

    def _tell(self, form: str, told: dict[str, str]) -> list[str]:
        """Show beside the fields of a form what is wrong with them; returns what is wrong."""
        said = {name: words for name, words in told.items() if words}
        call_script(self.client, "anchorwatt.tell_form", form, said)
        self._notice("Nothing was made: see what is said beside the fields." if said else "")
        return list(said)

    def _notice(self, words: str, problem: Exception | None = None) -> None:
        self.notice.set_content(notice_html(words, problem) if words else "")


def _go(address: str) -> None:
    ui.navigate.to(address)


def _forget(making: asyncio.Future[str]) -> None:
    """Take what a stopped intake comes to, so that nobody is told of it."""
    if not making.cancelled():
        making.exception()


def _first_text(intake: Intake, going: Callable[[str], bool]) -> str:
    from anchorwatt.assessment.intake import first_design

    return first_design(intake, going).text
