"""What is worked out for an open design: the latest version only, away from the event loop.

Answers come first; the checks follow rule by rule, and are given up as soon as the design changes again.
"""

from __future__ import annotations

import asyncio
import contextlib
from collections.abc import Callable, Iterator
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any, TypeVar

from anchorwatt.errors import AnchorwattError
from anchorwatt.simulation.watched import GivenUp, Going, Progress, watched
from anchorwatt.web.yaml_files import designs

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.web.open_design import OpenDesign, Version

Made = TypeVar("Made")

_AT_ONCE = ThreadPoolExecutor(2, "anchorwatt")
_CHECKS = ThreadPoolExecutor(1, "anchorwatt-checks")


@dataclass(frozen=True)
class Checking:
    """How far the checks of a version are."""

    done: int = 0
    of: int = 0
    finished: bool = False
    stopped: bool = False
    refused: str = ""  # why they could not be done


class Overtaken(AnchorwattError):
    """The design changed while something was worked out for an older version of it."""


class Stopped(AnchorwattError):
    """Whoever waited for something asked for it to be given up."""


class Wait:
    """Somebody who waits for something to be worked out. Used from the event loop only."""

    def __init__(self, told: Callable[[Progress], None]) -> None:
        self.told = told
        self.stop = asyncio.Event()


class Desk:
    """An open design with what is worked out for it. Used from the event loop only."""

    def __init__(self, opened: OpenDesign) -> None:
        self.open = opened
        self.checking = Checking()
        self._assessment: Assessment | None = None
        self._of: Version | None = None
        self._task: asyncio.Task[None] | None = None
        self._watchers: list[Callable[[], None]] = []

    @property
    def version(self) -> Version:
        return self.open.version

    @property
    def assessment(self) -> Assessment:
        """The assessment of the version that is open now; what it holds is worked out when asked for."""
        if self._assessment is None or self._of is not self.open.version:
            from anchorwatt.assessment import assess

            self._of = self.open.version
            self._assessment = assess(self._of.design)
            self.checking = Checking()
        return self._assessment

    def watch(self, watcher: Callable[[], None]) -> Callable[[], None]:
        """Call a function whenever the checks get further; returns what ends that."""
        self._watchers.append(watcher)

        def end() -> None:
            if watcher in self._watchers:
                self._watchers.remove(watcher)

        return end

    async def work_out(self, make: Callable[[Assessment], Made], wait: Wait | None = None) -> Made:
        """Work something out for the version that is open now, in a thread of its own.

        Raises
        ------
        Overtaken
            The design has changed meanwhile: what was worked out is no longer of use.
        Stopped
            `wait` was told to stop; the thread gives up at its next run.
        """
        version, assessment, loop = self.version, self.assessment, asyncio.get_running_loop()
        stop = wait.stop if wait is not None else asyncio.Event()

        def going(progress: Progress | None) -> bool:
            if progress is not None and wait is not None:
                loop.call_soon_threadsafe(wait.told, progress)
            return self.version is version and not stop.is_set()

        making = loop.run_in_executor(_AT_ONCE, _watched, make, assessment, going)
        stopping = loop.create_task(stop.wait())
        either: set[asyncio.Future[Any]] = {making, stopping}
        await asyncio.wait(either, return_when=asyncio.FIRST_COMPLETED)
        stopping.cancel()
        if self.version is not version or stop.is_set():
            making.add_done_callback(_forget)
            if self.version is not version:
                raise Overtaken("the design has changed meanwhile")
            raise Stopped("stopped")
        return making.result()

    def check(self) -> None:
        """Begin the checks of the version that is open now, unless they are done or under way.

        They rest after the rule that is under way while nobody watches.
        """
        assessment = self.assessment
        if self.checking.finished or self.checking.stopped or (self._task is not None and not self._task.done()):
            return
        self._task = asyncio.get_running_loop().create_task(self._check(assessment, self.version))

    def stop_checking(self) -> None:
        """Give the checks up for this version."""
        if not self.checking.finished:
            self._now(Checking(self.checking.done, self.checking.of, stopped=True))

    def check_again(self) -> None:
        """Take up checks that were given up."""
        self.checking = Checking()
        self.check()

    async def _check(self, assessment: Assessment, version: Version) -> None:
        loop = asyncio.get_running_loop()
        going = assessment.check_in_turn()
        told = 0.0

        def wanted(_: Progress | None) -> bool:
            return self.version is version and not self.checking.stopped

        while True:
            try:
                step = await loop.run_in_executor(_CHECKS, _next, going, wanted)
            except GivenUp:
                self._task = None
                with contextlib.suppress(AnchorwattError):
                    self.check()
                return
            except AnchorwattError as problem:
                if self.version is version:
                    self._now(Checking(self.checking.done, self.checking.of, refused=str(problem)))
                return
            if self.version is not version:
                self._task = None
                with contextlib.suppress(AnchorwattError):
                    self.check()
                return
            if self.checking.stopped:
                return
            if step is None:
                self._now(Checking(self.checking.of, self.checking.of, finished=True))
                return
            if not self._watchers:  # whoever comes next has them taken up; what is found already is kept
                return
            self.checking = Checking(*step)
            if loop.time() - told > 0.25:
                told = loop.time()
                self._now(self.checking)

    def _now(self, checking: Checking) -> None:
        self.checking = checking
        for watcher in tuple(self._watchers):
            watcher()


def _watched(make: Callable[[Assessment], Made], assessment: Assessment, going: Going) -> Made:
    with watched(going):
        return make(assessment)


def _next(going: Iterator[tuple[int, int]], wanted: Going) -> tuple[int, int] | None:
    with watched(wanted):
        return next(going, None)


def _forget(making: asyncio.Future[Any]) -> None:
    """Take what nobody waits for any more, so that nobody is told what was wrong with it."""
    if not making.cancelled():
        making.exception()


class Desks:
    """All designs of a folder that are open."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._open: dict[str, Desk] = {}

    def names(self) -> tuple[str, ...]:
        """Names of the design files in the folder, without their ending."""
        return designs(self.folder)

    def path(self, name: str) -> Path | None:
        """The file of that name; None where the folder has no such file, whatever the name says."""
        return self.folder / f"{name}.yaml" if name in self.names() else None

    async def desk(self, name: str) -> Desk | None:
        """The desk of a design; None where there is no such file, and none is open.

        Raises
        ------
        BadDesign
            The file cannot be read.
        """
        if name in self._open:
            return self._open[name]
        path = self.path(name)
        if path is None:
            return None
        from anchorwatt.web.open_design import open_design

        opened = await asyncio.get_running_loop().run_in_executor(_AT_ONCE, open_design, path)
        return self._open.setdefault(name, Desk(opened))
