"""The cabins at one moment of a run: how warm, how damp, cooled or not, and who is in them."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from anchorwatt.assessment.records import CabinAnswer, Floats, Table
from anchorwatt.design.specification import Point, Specification
from anchorwatt.errors import OutOfRange
from anchorwatt.simulation.forcing import period_at

WITHOUT_PEOPLE = ("machinery", "stowage")
"""Uses of compartments in which nobody lives: they are not counted among the warmest cabins."""


@dataclass(frozen=True)
class CabinMoment:
    """One cabin at one moment."""

    name: str
    use: str
    deck: str  # "below" or "main"
    centre: Point
    floor_area: float  # m2
    length: float  # m, fore and aft
    estimated: bool  # whether its place or its length is nobody's word
    air: float  # °C
    humidity: float  # share
    cooled_to: float  # °C, nan = not cooled at that time
    heated_to: float  # °C, nan = not heated at that time
    people: float

    @property
    def lived_in(self) -> bool:
        """Whether it is a cabin for people."""
        return self.use not in WITHOUT_PEOPLE


@dataclass(frozen=True)
class BoatMoment:
    """The boat at one moment."""

    clock: float  # s after the midnight before the night
    outdoors: float  # °C
    sea: float  # °C
    cabins: tuple[CabinMoment, ...]

    @property
    def warmest(self) -> CabinMoment | None:
        """The warmest cabin for people; of those for other uses where there is no other; None without cabins."""
        lived = [cabin for cabin in self.cabins if cabin.lived_in] or list(self.cabins)
        return max(lived, key=lambda cabin: cabin.air, default=None)

    @property
    def warmest_cooled(self) -> CabinMoment | None:
        """The warmest of those that are cooled at that time."""
        cooled = [cabin for cabin in self.cabins if not math.isnan(cabin.cooled_to)]
        return max(cooled, key=lambda cabin: cabin.air, default=None)


def boat_at(specification: Specification, table: Table, row: int) -> BoatMoment:
    """The boat at one row of a run.

    Parameters
    ----------
    table : of the night or the day
    row : from 0; each is the end of a minute

    Raises
    ------
    OutOfRange
        the run has no such row.
    """
    rows = len(table.clock)
    if not 0 <= row < rows:
        raise OutOfRange(f"a row of the {table.name} is from 0 to {rows - 1}; found", row)
    clock = float(table.clock[row])
    # A row tells the end of its minute: what held through that minute is the plan's at its middle.
    period = period_at(specification, clock - 30.0)
    guessed = {estimate.key for estimate in specification.estimates}
    people = dict.fromkeys(range(len(specification.cabins)), 0.0)
    for there in period.occupants:
        people[there.cabin] += there.count

    def read(key: str) -> float:
        return float(table.column(key).values[row])

    return BoatMoment(
        clock=clock,
        outdoors=read("outdoor_temperature_C"),
        sea=read("sea_temperature_C"),
        cabins=tuple(
            CabinMoment(
                name=cabin.name,
                use=cabin.use,
                deck=cabin.deck,
                centre=cabin.centre,
                floor_area=cabin.floor_area,
                length=cabin.length,
                estimated=any(
                    key in guessed or any(one.startswith(f"{key}.") for one in guessed)
                    for key in (f"cabins.{cabin.name}.at", f"cabins.{cabin.name}.length")
                ),
                air=read(f"air_temperature_C.{cabin.name}"),
                humidity=read(f"relative_humidity_pct.{cabin.name}"),
                cooled_to=period.set_points[number],
                heated_to=period.warm_points[number],
                people=people[number],
            )
            for number, cabin in enumerate(specification.cabins)
        ),
    )


def warmest_cooled_through(cabins: Sequence[CabinAnswer], table: Table) -> Floats:
    """°C of the warmest cabin that is cooled by night, row by row; nan where none is."""
    cooled = [cabin.name for cabin in cabins if not math.isnan(cabin.set_point)]
    if not cooled:
        return np.full(len(table.clock), math.nan)
    found: Floats = np.max([table.column(f"air_temperature_C.{name}").values for name in cooled], axis=0)
    return found
