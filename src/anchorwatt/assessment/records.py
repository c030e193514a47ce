"""What an assessment holds: answers that can explain themselves, and tables of time.

Values are SI floats; `dimension` is a name of the units room, so that screens show them in the units that
the reader chose and JSON keys end in theirs.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from anchorwatt.checks.finding import Finding, Verdict
from anchorwatt.design.specification import Estimate
from anchorwatt.sizing.setting import Input

Floats = NDArray[np.float64]


@dataclass(frozen=True)
class Why:
    """How an answer was found."""

    formula: str  # in words
    inputs: tuple[Input, ...]
    source: str
    changes_it: str  # what would move the answer, in words


@dataclass(frozen=True)
class Answer:
    """A headline answer."""

    key: str  # JSON key, names its unit unless it is a count
    question: str
    value: float  # SI; nan = cannot tell
    dimension: str  # of the units room, or "count"
    unit: str  # of the JSON value, "" for a count
    note: str  # a few words beside the figure, may be empty
    why: Why


@dataclass(frozen=True)
class CabinAnswer:
    """What the day and the night come to in one cabin. nan where it is never cooled."""

    name: str
    use: str
    peak_sensible: float  # W, mean of the hottest hour
    peak_latent: float  # W, in that same hour
    peak_at: float  # s after midnight, end of that hour; nan = no load
    gains: tuple[tuple[str, float], ...]  # W by cause in that hour
    handler_capacity: float  # W nominal of the handlers that serve it
    set_point: float  # °C by night, nan = not cooled
    night_highest_temperature: float  # °C
    night_highest_humidity: float  # share


@dataclass(frozen=True)
class Column:
    key: str  # ends in its unit, as written to CSV
    label: str
    dimension: str
    values: Floats  # SI


@dataclass(frozen=True)
class Table:
    """A run as a table: `clock` is local standard time in s after the midnight before the night began."""

    name: str
    clock: Floats
    columns: tuple[Column, ...]

    def column(self, key: str) -> Column:
        """The column of that key.

        Raises
        ------
        KeyError
            no such column.
        """
        for column in self.columns:
            if column.key == key:
                return column
        raise KeyError(f"{key}; there are {', '.join(column.key for column in self.columns)}")


@dataclass(frozen=True)
class Recharge:
    """How the engines put the night back."""

    doing: str  # "motoring at 7.0 kn" or "at anchor, engine at 1200 rpm"
    engine_time: float  # s, nan = does not get there within a day
    fuel_added: float  # m3, for the alternators alone
    fuel_burnt: float  # m3, all that the engines burn in that time
    mean_alternator_current: float  # A, all alternators
    highest_winding: float  # °C
    held_by: tuple[tuple[str, float], ...]  # what held the alternators back, share of the time
    table: Table


@dataclass(frozen=True)
class Comparison:
    """One night on one kind of plant."""

    plant: str
    night_energy: float  # J from the bank
    peak_plant_power: float  # W
    starting_current_note: str
    charge_at_dawn: float  # share
    mass: float  # kg of the cooling plant
    warmest: float  # K that the cabin worst off is over its set point at worst
    dampest: float  # share, relative humidity of the dampest cooled cabin at worst


__all__ = [
    "Answer",
    "CabinAnswer",
    "Column",
    "Comparison",
    "Estimate",
    "Finding",
    "Input",
    "Recharge",
    "Table",
    "Verdict",
    "Why",
]
