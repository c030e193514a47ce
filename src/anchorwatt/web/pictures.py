"""Pictures that pages show and that can be saved, by the name in their address."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING

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


def _night(assessment: Assessment, system: System, _: Mapping[str, str]) -> str:
    from anchorwatt.drawings.night_picture import night_picture

    return night_picture(assessment, system)


def _gains(assessment: Assessment, system: System, _: Mapping[str, str]) -> str:
    from anchorwatt.drawings.gains_picture import gains_picture

    return gains_picture(assessment, system)


def _plant(assessment: Assessment, system: System, _: Mapping[str, str]) -> str:
    from anchorwatt.drawings.plant_picture import plant_picture

    return plant_picture(assessment, system)


def _heel_trim(assessment: Assessment, system: System, _: Mapping[str, str]) -> str:
    from anchorwatt.drawings.heel_trim_picture import heel_trim_picture

    return heel_trim_picture(assessment, system)


def _places(assessment: Assessment, system: System, _: Mapping[str, str]) -> str:
    from anchorwatt.drawings.places_picture import places_picture

    return places_picture(assessment, system)


def _cabin_plan(assessment: Assessment, system: System, query: Mapping[str, str]) -> str:
    from anchorwatt.drawings.cabin_plan_picture import cabin_plan_picture

    return cabin_plan_picture(assessment, hour_row(assessment.night, query), system)


def _engine(assessment: Assessment, system: System, _: Mapping[str, str]) -> str:
    from anchorwatt.drawings.engine_picture import engine_picture

    return engine_picture(assessment, system)


PICTURES: dict[str, Draw] = {
    "night": _night,
    "gains": _gains,
    "plant": _plant,
    "heel-trim": _heel_trim,
    "places": _places,
    "cabin-plan": _cabin_plan,
    "engine": _engine,
}
