"""The week ahead, every gap filled."""

from __future__ import annotations

from collections.abc import Sequence

from anchorwatt.design import specification as spec
from anchorwatt.design.day import DAY
from anchorwatt.design.document import Key
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.week import DayEntry
from anchorwatt.units import show_clock

USUAL_WEEK = 7
"""Days."""

USUAL_START = 8.0 * 3600.0
"""s after midnight; after breakfast, and before the cabins are hot."""


def fill_week(week: Sequence[DayEntry] | None, brief: spec.Brief | None, ledger: Ledger) -> tuple[spec.PlannedDay, ...]:
    """The days of the week; seven by the plan when the file says nothing of it.

    Every engine of a design carries an alternator, so any day may charge.
    """
    if week is None:
        ledger.note(("week",), f"{USUAL_WEEK} days by the plan", "the file says nothing of the week", MEMORY)
        return (spec.PlannedDay(True, USUAL_START, 0.0),) * USUAL_WEEK
    return tuple(_day(entry, ("week", number), brief, ledger) for number, entry in enumerate(week))


def _day(entry: DayEntry, key: Key, brief: spec.Brief | None, ledger: Ledger) -> spec.PlannedDay:
    passage, charging = entry.doing == "by the plan", float(entry.charging or 0.0)
    if entry.charging is None and entry.start is not None:
        found = f"a start of charging at {entry.start.text} without its length"
        ledger.refuse((*key, "start"), found, "charging: such as 2 h; or no start")
    if charging <= 0.0:
        start = USUAL_START if entry.start is None else entry.start % DAY
        return spec.PlannedDay(passage, start, 0.0)
    start = ledger.fill(
        None if entry.start is None else entry.start % DAY,
        (*key, "start"),
        USUAL_START,
        "clock time",
        "after breakfast, before the cabins are hot",
        MEMORY,
    )
    if entry.charging is not None and brief is not None:
        left = (brief.night_start - start) % DAY or DAY
        if charging > left + 0.5:
            ledger.refuse(
                (*key, "charging"),
                f'"{entry.charging.text}" from {show_clock(start)}',
                f"at most the {ledger.show(left, 'time')} until the next night begins at "
                f"{show_clock(brief.night_start)}",
            )
    return spec.PlannedDay(passage, start, charging)
