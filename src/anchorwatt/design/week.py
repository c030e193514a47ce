"""The week ahead: day after day by the plan, or at anchor with the engines on for a while."""

from __future__ import annotations

from typing import Annotated, ClassVar, Literal

from pydantic import Field

from anchorwatt.design.in_short import InShort
from anchorwatt.design.section import Section
from anchorwatt.units.fields import ClockTime, Time, within

LONGEST_WEEK = 14
"""Days."""


class DayEntry(Section):
    """One day of the week, from the start of its night to that of the next."""

    in_short: ClassVar[str] = "doing"

    doing: Literal["by the plan", "at anchor"] = Field(
        description="“by the plan” moves as the plan does; “at anchor” stays, whatever the plan says of motoring."
    )
    charging: Annotated[Time, within("0 h", "24 h")] | None = Field(
        default=None, description="Engines on at anchor, at their charging speed, for that long."
    )
    start: ClockTime | None = Field(default=None, description="When they are started, local standard time.")


PlannedDay = Annotated[DayEntry, InShort(DayEntry)]
