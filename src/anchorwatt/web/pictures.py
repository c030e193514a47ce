"""Pictures that pages show and that can be saved, by the name in their address."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

from anchorwatt.drawings.cabin_plan_picture import cabin_plan_picture
from anchorwatt.drawings.engine_picture import engine_picture
from anchorwatt.drawings.gains_picture import gains_picture
from anchorwatt.drawings.heel_trim_picture import heel_trim_picture
from anchorwatt.drawings.night_picture import night_picture
from anchorwatt.drawings.places_picture import places_picture
from anchorwatt.drawings.plant_picture import plant_picture
from anchorwatt.units import System, show_clock
from anchorwatt.web.content import Asked, Picture

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment, Table

Draw = Callable[["Assessment", System, Mapping[str, str]], str]


def hour_row(run: Table, query: Mapping[str, str]) -> int:
    """The row of a run that a page asks for: `row` of its address, the first where that says nothing.

    Example
    -------
    >>> import numpy as np
    >>> from anchorwatt.assessment.records import Table
    >>> run = Table("night", np.arange(0.0, 600.0, 60.0), ())
    >>> hour_row(run, {"row": "4"}), hour_row(run, {"row": "400"}), hour_row(run, {"row": "x"})
    (4, 9, 0)
    """
    row = query.get("row", "")
    return min(int(row), len(run.clock) - 1) if row.isascii() and row.isdigit() and len(row) < 9 else 0


def picture(name: str, assessment: Assessment, asked: Asked) -> Picture:
    """A picture for a page."""
    return Picture(name, PICTURES[name](assessment, asked.system, asked.query), asked.query)


def clock_of(run: Table, query: Mapping[str, str]) -> str:
    """The time of day of the row that a page asks for."""
    return show_clock(run.clock[hour_row(run, query)])


PICTURES: dict[str, Draw] = {
    "night": lambda found, system, _: night_picture(found, system),
    "gains": lambda found, system, _: gains_picture(found, system),
    "plant": lambda found, system, _: plant_picture(found, system),
    "heel-trim": lambda found, system, _: heel_trim_picture(found, system),
    "places": lambda found, system, _: places_picture(found, system),
    "cabin-plan": lambda found, system, query: cabin_plan_picture(found, hour_row(found.night, query), system),
    "engine": lambda found, system, _: engine_picture(found, system),
}
