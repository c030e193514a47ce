"""What is worked out for an open design: the latest version only, away from the event loop.

Answers come first; the checks follow rule by rule, and are given up as soon as the design changes again.
"""

from __future__ import annotations

import asyncio
import contextlib
from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, TypeVar

from anchorwatt.errors import AnchorwattError
from anchorwatt.web.open_design import OpenDesign, Version, open_design

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

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

    async def work_out(self, make: Callable[[Assessment], Made]) -> Made:
        """Work something out for the version that is open now, in a thread of its own.

        Raises
        ------
        Overtaken
            The design has changed meanwhile: what was worked out is no longer of use.
        """
        version, assessment = self.version, self.assessment
        made = await asyncio.get_running_loop().run_in_executor(_AT_ONCE, make, assessment)
        if self.version is not version:
            raise Overtaken("the design has changed meanwhile")
        return made

    def check(self) -> None:
        """Begin the checks of the version that is open now, unless they are done or under way."""
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
        while True:
            try:
                step = await loop.run_in_executor(_CHECKS, next, going, None)
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
            self.checking = Checking(*step)
            if loop.time() - told > 0.25:
                told = loop.time()
                self._now(self.checking)

    def _now(self, checking: Checking) -> None:
        self.checking = checking
        for watcher in tuple(self._watchers):
            watcher()


class Desks:
    """All designs of a folder that are open."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self._open: dict[str, Desk] = {}

    def names(self) -> tuple[str, ...]:
        """Names of the design files in the folder, without their ending."""
        return tuple(sorted(path.stem for path in self.folder.glob("*.yaml") if path.is_file()))

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
        opened = await asyncio.get_running_loop().run_in_executor(_AT_ONCE, open_design, path)
        return self._open.setdefault(name, Desk(opened))
