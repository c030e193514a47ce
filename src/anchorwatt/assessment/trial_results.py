"""What the trials of the finished installation came to, as whoever tested wrote it into the table of the trials."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final, Literal

from anchorwatt.assessment.commissioning import Reading, Trial
from anchorwatt.design.csv_table import Row, read_table
from anchorwatt.errors import BadResults, Problem
from anchorwatt.units.refusal import quoted

NEEDED: Final = ("trial", "reading", "found", "verdict")
WANTED: Final = ("system", "expected", "accept_from", "to", "unit", "date", "by")
"""Columns of the table."""

PASS, FAIL = "pass", "fail"
LONGEST: Final = {"found": 200, "date": 40, "by": 60}
"""Signs that a cell may have."""

WHAT: Final = "the table of the trials in CSV"

Verdict = Literal["pass", "fail", "written down", "no verdict", "not tested"]


@dataclass(frozen=True)
class Filled:
    """One row of the table; every cell as it was written."""

    trial: str
    reading: str
    expected: str
    accept_from: str
    to: str
    unit: str
    found: str
    verdict: str  # "pass", "fail" or ""
    date: str
    by: str

    @property
    def empty(self) -> bool:
        """Whether nobody wrote what was found."""
        return not self.found and not self.verdict


@dataclass(frozen=True)
class Outcome:
    """One reading of a trial and what it came to."""

    trial: Trial
    reading: Reading
    filled: Filled | None  # None = the table has no row for it

    @property
    def verdict(self) -> Verdict:
        """What whoever tested says; "not tested" where nothing was written."""
        if self.filled is None or self.filled.empty:
            return "not tested"
        if self.filled.verdict == FAIL:
            return "fail"
        if self.filled.verdict == PASS:
            return "pass"
        return "no verdict" if self.reading.judged else "written down"

    @property
    def doubt(self) -> str:
        """Why a pass is to be looked at again, "" = nothing speaks against it."""
        if self.filled is None or self.verdict != "pass":
            return ""
        low, found, high = (_number(cell, self.filled.unit) for cell in _bounds(self.filled))
        if found < low or found > high:
            return "outside what was to be accepted"
        figure = not math.isnan(low) or not math.isnan(high)
        return "no figure was written" if figure and math.isnan(found) else ""


@dataclass(frozen=True)
class TrialResults:
    """All readings of a design's trials in their order, and what belongs to none of them."""

    outcomes: tuple[Outcome, ...]
    foreign: tuple[Filled, ...]  # what was found in trials that the design has not

    def of(self, *verdicts: Verdict) -> tuple[Outcome, ...]:
        """Those with one of these verdicts."""
        return tuple(one for one in self.outcomes if one.verdict in verdicts)

    @property
    def doubtful(self) -> tuple[Outcome, ...]:
        """Those that passed though something speaks against it."""
        return tuple(one for one in self.outcomes if one.doubt)


def read_results(path: Path) -> tuple[Filled, ...]:
    """Rows of a table of trials that was filled in.

    Raises
    ------
    BadResults
        something is wrong in it; every problem is told with its line and column.
    """
    rows, problems = read_table(path, WHAT, NEEDED, WANTED)
    problems += [problem for row in rows for problem in _wrong(row, str(path))]
    lines: dict[tuple[str, str], int] = {}
    for row in rows:
        key = _key(row.cells["trial"], row.cells["reading"])
        if key in lines:
            found = f"a second row of {quoted(row.cells['reading'])}; the first is on line {lines[key]}"
            problems.append(Problem(str(path), row.line, "reading", found, "each reading of a trial once"))
        lines.setdefault(key, row.line)
    if problems:
        raise BadResults(tuple(problems))
    return tuple(_filled(row) for row in rows)


def trial_results(trials: Sequence[Trial], table: Sequence[Filled]) -> TrialResults:
    """What each reading of the trials came to.

    Raises
    ------
    BadResults
        not one row is of these trials: the table is of another boat.
    """
    rows = {_key(one.trial, one.reading): one for one in table}
    outcomes = tuple(
        Outcome(trial, reading, rows.pop(_key(trial.name, reading.what), None))
        for trial in trials
        for reading in trial.readings
    )
    if all(one.filled is None for one in outcomes):
        found = "no row of a trial that this design has"
        raise BadResults((Problem("--results", None, "", found, f"{WHAT} of this boat"),))
    return TrialResults(outcomes, tuple(one for one in rows.values() if not one.empty))


def _wrong(row: Row, file: str) -> list[Problem]:
    said = row.cells
    problems = [
        Problem(file, row.line, column, f"{len(said[column])} characters", f"at most {most}")
        for column, most in LONGEST.items()
        if len(said[column]) > most
    ]
    if not said["trial"] or not said["reading"]:
        lacking = "trial" if not said["trial"] else "reading"
        problems.append(Problem(file, row.line, lacking, "nothing", f"the {lacking}'s name as the table had it"))
    if said["verdict"].lower() not in (PASS, FAIL, ""):
        allowed = f"{PASS}, {FAIL}, or nothing where it was not tested"
        problems.append(Problem(file, row.line, "verdict", quoted(said["verdict"]), allowed))
    return problems


def _filled(row: Row) -> Filled:
    said = {column: _unmarked(cell) for column, cell in row.cells.items()} | {"verdict": row.cells["verdict"].lower()}
    columns = ("trial", "reading", "expected", "accept_from", "to", "unit", "found", "verdict", "date", "by")
    return Filled(**{column: said[column] for column in columns})


def _unmarked(cell: str) -> str:
    """A cell without the mark that keeps it from being a formula."""
    return cell[1:] if cell[:1] == "'" and cell[1:2] in ("=", "+", "-", "@") else cell


def _key(trial: str, reading: str) -> tuple[str, str]:
    """Names without what a spreadsheet changes: spaces, and the mark that keeps a name from being a formula."""
    plain = (" ".join(name.lstrip("'").split()) for name in (trial, reading))
    return (next(plain), next(plain))


def _bounds(filled: Filled) -> tuple[str, str, str]:
    return (filled.accept_from, filled.found, filled.to)


def _number(cell: str, unit: str) -> float:
    """The figure in a cell, nan where there is none; its unit may stand behind it, and its point may be a comma."""
    text = cell.removesuffix(unit).strip().replace("−", "-").replace(",", ".")
    try:
        return float(text)
    except ValueError:
        return math.nan
