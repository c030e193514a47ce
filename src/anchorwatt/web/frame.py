"""One frame for all pages of a design: its name, its headline, the list of questions, and what the page holds."""

from __future__ import annotations

import asyncio
import logging
from collections.abc import Awaitable, Callable
from typing import Any
from urllib.parse import urlencode

from nicegui import Client, background_tasks, ui

from anchorwatt.assessment import Assessment
from anchorwatt.design import edit
from anchorwatt.design.form import added, retyped
from anchorwatt.design.renaming import renamed
from anchorwatt.errors import AnchorwattError, BadDesign
from anchorwatt.simulation.watched import Progress
from anchorwatt.web.content import Asked, Block, Html, Picture, Question, Tables
from anchorwatt.web.desk import Desk, Overtaken, Stopped, Wait
from anchorwatt.web.escaped import part, text
from anchorwatt.web.form_html import facts, field_id, form_html, group_id, keys
from anchorwatt.web.headline_html import headline_html, why_html
from anchorwatt.web.open_design import ChangedMeanwhile, OutOfEdits, Unreadable
from anchorwatt.web.progress_html import STOPPED, progress_html
from anchorwatt.web.questions import QUESTIONS
from anchorwatt.web.shell import call_script, head, notice_html, page_top, picture_html

_log = logging.getLogger(__name__)

LONG = 0.7
"""s after which it is told that a page is still being worked out."""

HEAR = {
    "change": "(event) => anchorwatt.changed(event, emit)",
    "click": "(event) => anchorwatt.clicked(event, emit)",
    "input": "(event) => anchorwatt.slid(event, emit)",
    "pointerup": "(event) => anchorwatt.dropped(event, emit)",
}


class View:
    """One tab that shows one page of one design."""

    def __init__(self, desk: Desk, question: Question, asked: Asked, locked: bool) -> None:
        self.desk = desk
        self.question = question
        self.asked = asked
        self.locked = locked
        self.why = ""  # key of the answer whose why is open
        self.loop = asyncio.get_running_loop()
        self.client: Client = ui.context.client
        self.blocks: dict[str, ui.html] = {}
        self.shown: dict[str, str] = {}
        self.forms: dict[str, tuple[str, ...]] = {}
        self.told: dict[str, dict[str, Any]] = {}  # what each field on the screen shows
        self.wait: Wait | None = None  # for what the page holds
        self.busy = False
        self.again = False
        self.closed = False

    def build(self) -> None:
        """Lay the page out; figures follow as soon as they are worked out."""
        head(f"{self.question.title} – {self.desk.version.design.name}")
        with ui.element("div").classes("bench locked" if self.locked else "bench") as self.root:
            self.top = ui.html("", sanitize=False).classes("top-holder")
            self.notice = ui.html("", sanitize=False).props('role="status" aria-live="polite"').classes("notice-holder")
            self.headline = ui.html("", sanitize=False).props('role="region" aria-label="Headline"').classes("headline")
            self.because = ui.html("", sanitize=False).classes("because")
            with ui.element("div").classes("below"):
                ui.html(self._questions(), sanitize=False).classes("questions-holder")
                with ui.element("div").props('id="main" tabindex="-1"').classes("page"):
                    ui.html(f"<h1>{text(self.question.title)}</h1>", sanitize=False)
                    self.progress = ui.html("", sanitize=False).props('role="status"').classes("progress-holder")
                    self.findings = ui.element("div").classes("findings")
                    self.fields = ui.element("div").classes("forms")
        for event, handler in HEAR.items():
            throttle = 0.15 if event == "input" else 0.0
            self.root.on(event, self._heard, throttle=throttle, leading_events=event != "input", js_handler=handler)
        self._tell_top()
        self._set(self.headline, '<p class="working">Working it out …</p>')
        self._show((Html("working", '<p class="empty">Working it out …</p>'),))
        ends = [self.desk.open.listen(self._from_any_thread), self.desk.watch(self._checks_moved)]

        def close() -> None:
            self.closed = True
            if self.wait is not None:
                self.wait.stop.set()
            for end in ends:
                end()

        self.client.on_delete(close)
        self._from_any_thread()

    def _from_any_thread(self) -> None:
        self.loop.call_soon_threadsafe(lambda: background_tasks.create(self.refresh()))

    async def refresh(self) -> None:
        """Show what follows from the design as it is now; of several calls at once the last one counts."""
        if self.busy:
            self.again = True
            if not self.closed:
                self._tell_top()  # that a change is saved is told before its figures are worked out
            return
        self.busy = True
        try:
            while not self.closed:
                self.again = False
                await self._refresh_once()
                if not self.again:
                    return
        except Exception:  # noqa: BLE001 - whatever went wrong is logged and told; the fields stay usable
            _log.exception("a page could not be shown")
            self._notice("This page cannot be shown: a fault of the program, not of your design. Its log says more.")
        finally:
            self.busy = False

    async def _refresh_once(self) -> None:
        if self.closed:
            return
        self._tell_top()
        if not self.forms:
            await self._show_forms()  # fields are there at once, figures follow
        asked, question = self.asked, self.question
        try:
            await self._headline()
            await self._show_forms()
            blocks = await self._worked_out(lambda assessment: question.prepare(assessment, asked))
        except Overtaken:
            self.again = True
            return
        except Stopped:
            if not self.closed:
                self._show((Html("stopped", STOPPED),))
            self.desk.check()
            return
        except AnchorwattError as problem:
            self._notice("This design cannot be worked out as it stands; the fields below can be changed.", problem)
            self._set(self.headline, "")
            self._show(())
            await self._show_forms()
            return
        if not self.closed:
            self._show(blocks)
        self.desk.check()

    async def _worked_out(self, make: Callable[[Assessment], tuple[Block, ...]]) -> tuple[Block, ...]:
        """What a page holds; what takes long tells how far it is, and can be stopped."""
        wait = self.wait = Wait(lambda progress: self._tell_progress(wait, progress))
        later = self.loop.call_later(LONG, self._tell_progress, wait, None)
        try:
            return await self.desk.work_out(make, wait)
        finally:
            self.wait = None
            later.cancel()
            if not self.closed:
                self._set(self.progress, "")

    def _tell_progress(self, wait: Wait, progress: Progress | None) -> None:
        if self.wait is wait and not self.closed and (progress is not None or not self.progress.content):
            self._set(self.progress, progress_html(progress))

    async def _headline(self) -> None:
        system, why = self.asked.system, self.why

        def make(assessment: Assessment) -> tuple[str, str]:
            shown = headline_html(assessment, self.desk.checking, system)
            return shown, why_html(assessment.answer(why), system) if why else ""

        headline, because = await self.desk.work_out(make)
        if self.closed:
            return
        self._set(self.headline, headline)
        self._set(self.because, because)

    def _checks_moved(self) -> None:
        async def show() -> None:
            if self.question.needs_checks and self.desk.checking.finished:
                await self.refresh()
            else:
                try:
                    await self._headline()
                except (Overtaken, AnchorwattError):
                    return

        background_tasks.create(show())

    def _show(self, blocks: tuple[Block, ...]) -> None:
        wanted = {f"{type(block).__name__} {block.name}": self._block_html(block) for block in blocks}
        if list(wanted) != list(self.blocks):
            self.findings.clear()
            self.blocks, self.shown = {}, {}
            with self.findings:
                for name in wanted:
                    self.blocks[name] = ui.html("", sanitize=False).props(f'id="{field_id("block " + name)}"')
        for name, content in wanted.items():
            if self.shown.get(name) != content:
                self.shown[name] = content
                self.blocks[name].set_content(content)

    def _block_html(self, block: Block) -> str:
        here = f"/design/{part(self.asked.design)}"
        if isinstance(block, Picture):
            asked = f"?{urlencode(block.query)}" if block.query else ""
            saved = tuple((kind, f"{here}/picture/{block.name}.{kind.lower()}{text(asked)}") for kind in ("SVG", "PNG"))
            return picture_html(block.svg, _save(saved))
        if isinstance(block, Tables):
            tables = "+".join(block.saved)
            saved = tuple((kind, f"{here}/tables/{tables}.{kind.lower()}") for kind in ("CSV", "XLSX") if tables)
            return f'<div class="tables">{block.content}{_save(saved)}</div>'
        return block.content

    async def _show_forms(self) -> None:
        """Fields as the design has them now; those on the screen are brought up to date where they stand."""
        question, asked, version = self.question, self.asked, self.desk.version
        if question.forms is None:
            return
        forms = await asyncio.to_thread(question.forms, version.design, asked)
        if self.closed or version is not self.desk.version:
            return
        now = {form.title: (*keys(form.group), str(form.choice)) for form in forms}
        told = {fact["id"]: fact for form in forms for fact in facts(form.group)}
        if now != self.forms:
            self.forms = now
            self.fields.clear()
            with self.fields:
                for form in forms:
                    ui.html(form_html(form, self.locked), sanitize=False)
        else:
            changed = [fact for name, fact in told.items() if fact != self.told.get(name)]
            if changed:
                self._js("anchorwatt.bring_up_to_date", changed)
        self.told = told

    def _tell_top(self) -> None:
        opened = self.desk.open
        self._set(
            self.top,
            page_top(
                opened.design.name,
                self.asked,
                undo=opened.can_undo and not self.locked,
                redo=opened.can_redo and not self.locked,
                unsaved=opened.unsaved,
                last=opened.version.what,
            ),
        )

    def _questions(self) -> str:
        here = part(self.asked.design)
        current = {self.question.path: ' aria-current="page"'}
        links = "".join(
            f'<li><a href="/design/{here}/{part(one.path)}"{current.get(one.path, "")}>{text(one.title)}</a></li>'
            for one in QUESTIONS
        )
        return f'<nav class="questions" aria-label="Questions"><ul>{links}</ul></nav>'

    async def _heard(self, event: Any) -> None:
        said: dict[str, Any] = event.args if isinstance(event.args, dict) else {}
        do = str(said.get("do", ""))
        doing: dict[str, Callable[[dict[str, Any]], Awaitable[None]]] = {
            "change": self._change,
            "undo": self._undo,
            "redo": self._redo,
            "put-back": self._put_back,
            "add": self._add,
            "remove": self._remove,
            "rename": self._rename,
            "back": self._back,
            "key": self._key,
            "why": self._why,
            "stop-working": self._stop_working,
            "work-again": self._work_again,
            "stop-checking": self._stop_checking,
            "check-again": self._check_again,
            "ask": self._ask,
            "do": self._do,
        }
        if do in doing:
            await doing[do](said)

    async def _change(self, said: dict[str, Any]) -> None:
        key, typed, seen = str(said.get("key", "")), _words(said.get("text")), _words(said.get("seen"))
        name = field_id(key)
        told = ""
        if self.locked:
            told = "Your role may look, but not change."
        else:
            try:
                await asyncio.to_thread(self.desk.open.change, key, typed, seen)
                self.told.pop(name, None)  # the field shows what was typed, not what it was told
                self._set(self.notice, "")
            except BadDesign as problem:
                told = "; ".join(f"Found {one.found}; allowed: {one.allowed}" for one in problem.problems)
            except ChangedMeanwhile as problem:
                told = str(problem)
                self._js("anchorwatt.show_theirs", name, problem.theirs)
            except Unreadable as problem:
                told = "Not written: the file on disk cannot be used at present."
                self._unreadable(problem)
            except AnchorwattError as problem:
                told = str(problem)
        if told and said.get("again"):  # its field may be on another page
            self._notice(f"An edit that a lost connection had kept here: {key} = “{typed}”.", AnchorwattError(told))
        self._js("anchorwatt.answered", name, told)

    async def change_all(self, make: Callable[[Any], Any], what: str) -> None:
        """Change several keys at once; tells what is wrong."""
        if self.locked:
            self._notice("Your role may look, but not change.")
            return
        try:
            await asyncio.to_thread(self.desk.open.change_all, make, what)
        except Unreadable as problem:
            self._unreadable(problem)
        except BadDesign as problem:
            told = "\n".join(f"{one.key}: found {one.found}; allowed: {one.allowed}" for one in problem.problems)
            self._notice("Nothing was changed.", AnchorwattError(told))
        except AnchorwattError as problem:
            self._notice("Nothing was changed.", problem)
        else:
            self._set(self.notice, "")

    async def _do(self, said: dict[str, Any]) -> None:
        """Something that only this page can be told to do."""
        if self.question.act is None:
            return
        action = self.question.act(self.desk.version.design, said)
        if action is not None:
            await self.change_all(*action)

    async def _add(self, said: dict[str, Any]) -> None:
        """One more entry in a mapping or list."""
        key, name = str(said.get("key", "")), str(said.get("value", "")).strip()
        if name or said.get("kind") == "list":
            await self.change_all(lambda design: added(design, key, name), f"{key}: one more, {name or 'at its end'}")

    async def _remove(self, said: dict[str, Any]) -> None:
        key = str(said.get("key", ""))
        await self.change_all(lambda design: edit(design, key, None), f"{key}: taken out")

    async def _rename(self, said: dict[str, Any]) -> None:
        key, name = str(said.get("key", "")), str(said.get("value", "")).strip()
        await self.change_all(lambda design: renamed(design, key, name), f"{key}: now called {name}")
        cabin, cabins = self.asked.query.get("cabin", ""), self.desk.version.design.cabins
        if key == f"cabins.{cabin}" and cabin not in cabins and name in cabins:
            self.asked = self.asked.also("cabin", name)
            await self.refresh()

    async def _back(self, said: dict[str, Any]) -> None:
        """The catalogue's figure of a part in place of the typed one."""
        key = str(said.get("key", ""))
        await self.change_all(lambda design: retyped(design, key, None), f"{key}: back to the catalogue")

    async def _key(self, said: dict[str, Any]) -> None:
        """Something in a picture was pressed: show its fields."""
        key = str(said.get("key", ""))
        above, _, name = key.partition(".")
        if above == "cabins" and name:
            self.asked = self.asked.also("cabin", name)
            await self.refresh()
        self._js("anchorwatt.go", group_id(key))

    async def _undo(self, _: dict[str, Any]) -> None:
        await self._step(self.desk.open.undo)

    async def _redo(self, _: dict[str, Any]) -> None:
        await self._step(self.desk.open.redo)

    async def _step(self, step: Callable[[], Any]) -> None:
        if self.locked:
            return
        try:
            await asyncio.to_thread(step)
        except OutOfEdits as problem:
            self._notice(f"{str(problem)[0].upper()}{str(problem)[1:]}.")
        except Unreadable as problem:
            self._unreadable(problem)
        except AnchorwattError as problem:
            self._notice("Nothing was changed.", problem)

    async def _put_back(self, _: dict[str, Any]) -> None:
        if self.locked:
            return
        try:
            await asyncio.to_thread(self.desk.open.put_back)
            self._notice("What was last good is on disk again; the unusable file is kept beside it.")
        except AnchorwattError as problem:
            self._notice("Nothing was changed.", problem)

    async def _why(self, said: dict[str, Any]) -> None:
        key = str(said.get("with", ""))
        self.why = "" if key == self.why else key
        try:
            await self._headline()
        except (Overtaken, KeyError, AnchorwattError):
            self.why = ""

    async def _stop_working(self, _: dict[str, Any]) -> None:
        if self.wait is not None:
            self.wait.stop.set()

    async def _work_again(self, _: dict[str, Any]) -> None:
        await self.refresh()

    async def _stop_checking(self, _: dict[str, Any]) -> None:
        self.desk.stop_checking()

    async def _check_again(self, _: dict[str, Any]) -> None:
        self.desk.check_again()

    async def _ask(self, said: dict[str, Any]) -> None:
        """The page is asked for something else: another hour, another row."""
        self.asked = self.asked.also(str(said.get("name", "")), str(said.get("value", "")))
        await self.refresh()

    def _unreadable(self, problem: Unreadable) -> None:
        lines = "".join(f"<li>{text(one)}</li>" for one in problem.problems)
        self._set(
            self.notice,
            '<div class="notice"><p>The file on disk cannot be used, so nothing was written. Mend it there, '
            f"or write what was last good over it; the unusable file is then kept beside it.</p><ul>{lines}</ul>"
            '<button type="button" data-do="put-back">Write what was last good</button></div>',
        )

    def _notice(self, words: str, problem: Exception | None = None) -> None:
        self._set(self.notice, notice_html(words, problem))

    def _set(self, element: ui.html, content: str) -> None:
        if element.content != content:
            element.set_content(content)

    def _js(self, function: str, *given: Any) -> None:
        call_script(self.client, function, *given)


def _words(said: Any) -> str | None:
    return None if said is None else str(said)


def _save(saved: tuple[tuple[str, str], ...]) -> str:
    links = ", ".join(f'<a href="{where}" download>{kind}</a>' for kind, where in saved)
    return f'<p class="save">Save as {links}</p>' if links else ""
