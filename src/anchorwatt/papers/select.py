"""Which rows, findings and files a reader sees, and in which order."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from typing import TYPE_CHECKING

from anchorwatt.catalogue.part import nearest
from anchorwatt.checks.finding import Finding, Verdict
from anchorwatt.errors import AnchorwattError

if TYPE_CHECKING:
    from anchorwatt.assessment import Estimate, Table

# How many parts of a key name the thing; elsewhere it is all but the last.
_DEPTHS = {"boat": 1, "cabins": 2}
_SCREENFUL = 13
_WORST_FIRST = (Verdict.FAILS, Verdict.CANNOT_TELL, Verdict.NEAR, Verdict.HOLDS)


def worst_first(findings: Iterable[Finding]) -> list[Finding]:
    """Findings by how bad they are, otherwise in the order of the rules."""
    return sorted(findings, key=lambda finding: _WORST_FIRST.index(finding.verdict))


def rows_every(table: Table, minutes: int) -> list[int]:
    """Rows of a table at whole multiples of some minutes of the clock, and its last row."""
    last = len(table.clock) - 1
    return [row for row, time in enumerate(table.clock) if round(time) % (60 * minutes) == 0 or row == last]


def some_rows(table: Table) -> list[int]:
    """Rows of a table at the shortest of some round steps of the clock that leaves a screenful or less."""
    return next(
        (rows for minutes in (5, 10, 15, 20, 30) if len(rows := rows_every(table, minutes)) <= _SCREENFUL),
        rows_every(table, 60),
    )


def hourly(table: Table) -> list[int]:
    """Rows of a table at the full hours, and its last row."""
    return rows_every(table, 60)


def by_place(estimates: Iterable[Estimate]) -> dict[str, list[tuple[str, Estimate]]]:
    """Estimates by the thing of the design that they belong to, each with the rest of its key.

    Example
    -------
    >>> from anchorwatt.design.specification import Estimate
    >>> by_place([Estimate("cabins.saloon.surfaces.roof.area", "12 m²", "", "")])
    {'cabins.saloon': [('surfaces.roof.area', Estimate(...))]}
    """
    places: dict[str, list[tuple[str, Estimate]]] = {}
    for one in estimates:
        parts = one.key.split(".")
        depth = _DEPTHS.get(parts[0], max(1, len(parts) - 1))
        places.setdefault(".".join(parts[:depth]), []).append((".".join(parts[depth:]), one))
    return places


def named(option: str, kind: str, names: Iterable[str], known: Sequence[str]) -> tuple[str, ...]:
    """Names as an option gives them, all of them known.

    Parameters
    ----------
    kind : what they name, in a word

    Raises
    ------
    AnchorwattError
        one is not; the text tells the nearest.
    """
    asked = tuple(names)
    for name in asked:
        if name not in known:
            hint = nearest(name, known)
            raise AnchorwattError(f"{option}: found no {kind} “{name}”{hint}; allowed: one of: {', '.join(known)}")
    return asked
