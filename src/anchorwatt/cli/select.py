"""Which rows and findings a reader sees, and in which order."""

from __future__ import annotations

from collections.abc import Iterable
from typing import TYPE_CHECKING

from anchorwatt.checks.finding import Finding, Verdict

if TYPE_CHECKING:
    from anchorwatt.assessment import Table

_WORST_FIRST = (Verdict.FAILS, Verdict.CANNOT_TELL, Verdict.NEAR, Verdict.HOLDS)


def worst_first(findings: Iterable[Finding]) -> list[Finding]:
    """Findings by how bad they are, otherwise in the order of the rules."""
    return sorted(findings, key=lambda finding: _WORST_FIRST.index(finding.verdict))


def rows_every(table: Table, minutes: int) -> list[int]:
    """Rows of a table at whole multiples of some minutes of the clock, and its last row."""
    last = len(table.clock) - 1
    return [row for row, time in enumerate(table.clock) if round(time) % (60 * minutes) == 0 or row == last]


def hourly(table: Table) -> list[int]:
    """Rows of a table at the full hours, and its last row."""
    return rows_every(table, 60)
