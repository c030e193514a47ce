"""The designs of a folder in short: read and worked out one after the other, away from the event loop."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING

from anchorwatt.errors import AnchorwattError, BadDesign

if TYPE_CHECKING:
    from anchorwatt.assessment import Answer, Assessment

SHOWN = ("hold_hours", "required_hours", "charge_at_dawn_pct", "engine_hours_to_recharge")
"""Answers of the headline that are shown here; price and checks follow them."""

Mark = tuple[int, int]
"""When a file was changed, ns, and its size."""

Report = Callable[["Entry"], bool]
"""Told how far a design is; False when nobody looks any more."""


@dataclass(frozen=True)
class Entry:
    """A design of the folder, as far as it is worked out."""

    name: str  # of the file, without its ending
    boat: str = ""  # "" = not read yet
    answers: tuple[Answer, ...] = ()
    checked: bool = False  # whether the last of the answers is how many checks fail
    wrong: str = ""  # the first thing wrong with the file, or why it cannot be worked out
    problems: int = 0  # how many there are in a file that cannot be read


class Overview:
    """What is known of each version of each file; files that have changed are worked out again."""

    def __init__(self) -> None:
        self._known: dict[Path, tuple[Mark, Entry]] = {}
        self._unchecked: dict[Path, Assessment] = {}  # of entries whose answers are known, until they are checked

    def known(self, path: Path) -> Entry:
        """What is known of a file as it is now."""
        mark, entry = self._known.get(path, (None, Entry(path.stem)))
        return entry if mark is not None and mark == mark_of(path) else Entry(path.stem)

    def read(self, path: Path, report: Report) -> bool:
        """Read a file and work its answers out, without the checks; False when nobody looks any more."""
        entry = self.known(path)
        if entry.boat or entry.wrong:
            return report(entry)
        mark = mark_of(path)
        self._unchecked.pop(path, None)
        entry, assessment = _answered(path)
        if assessment is not None:
            self._unchecked[path] = assessment
        return report(self._keep(path, mark, entry))

    def check(self, path: Path, report: Report) -> bool:
        """Do the checks of a file whose answers are known; False when nobody looks any more."""
        entry = self.known(path)
        if entry.checked or entry.wrong or not entry.boat:
            return report(entry)
        mark = mark_of(path)
        checked = _checked(self._unchecked[path], entry, lambda: report(entry))
        if checked is None:
            return False
        del self._unchecked[path]
        return report(self._keep(path, mark, checked))

    def _keep(self, path: Path, mark: Mark | None, entry: Entry) -> Entry:
        if mark is not None:
            self._known[path] = (mark, entry)
        return entry


def mark_of(path: Path) -> Mark | None:
    """A file's version; None where there is no file any more."""
    try:
        stat = path.stat()
    except OSError:
        return None
    return stat.st_mtime_ns, stat.st_size


def _answered(path: Path) -> tuple[Entry, Assessment | None]:
    from anchorwatt.assessment import assess
    from anchorwatt.design import read

    try:
        design = read(path)
    except BadDesign as problem:
        first = problem.problems[0]
        words = f"Line {first.line or 1}: {first.key and f'{first.key}: '}found {first.found}; allowed: {first.allowed}"
        return Entry(path.stem, wrong=words, problems=len(problem.problems)), None
    except AnchorwattError as problem:
        return Entry(path.stem, wrong=str(problem), problems=1), None
    assessment = assess(design)
    try:
        answers = assessment.answers
    except AnchorwattError as problem:
        return Entry(path.stem, design.name, wrong=str(problem)), None
    price = tuple(one for one in answers if one.dimension == "money")
    return Entry(path.stem, design.name, tuple(one for one in answers if one.key in SHOWN) + price), assessment


def _checked(assessment: Assessment, entry: Entry, wanted: Callable[[], bool]) -> Entry | None:
    try:
        for _ in assessment.check_in_turn():
            if not wanted():
                return None
        failed = assessment.answer("checks_failed")
    except AnchorwattError as problem:
        return replace(entry, wrong=str(problem))
    return replace(entry, answers=(*entry.answers, failed), checked=True)
