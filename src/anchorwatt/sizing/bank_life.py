"""How a lithium bank ages under the nights that it is bought for, and whether it still holds the night then.

A year is `brief.nights_per_year` days like the simulated ones, from the start of the night to the start of the next;
the rest of the year the bank rests at the charge with which nights begin, as warm as the year's mean sea.
"""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from anchorwatt.design.specification import Bank, Specification
from anchorwatt.physics.ageing import (
    YEAR,
    aged_resistance,
    calendar_loss,
    calendar_stress,
    capacity_left,
    cycle_loss,
    mixed_stress,
    throughput_loss,
)
from anchorwatt.simulation.arrays import Floats
from anchorwatt.simulation.runs import LONGEST_HOLD, Run, Simulation

DAYS_A_YEAR = 365.25
LONGEST_LIFE = 40.0
"""Years beyond which nobody asks."""


@dataclass(frozen=True)
class BankYear:
    """What a year of the brief does to the bank."""

    nights: float
    depth: float  # share of the rated capacity that the night takes, from its start to dawn
    full_cycles: float  # a year, all that is discharged over the rated capacity
    discharge_rate: float  # capacities an hour, mean while it discharges
    temperature: float  # °C of the cells, mean of a night and the day after it
    charge: float  # mean of that night and day
    used_stress: float  # over that of a cell at 25 °C half full
    rest_temperature: float  # °C on the other days
    rest_charge: float
    rest_stress: float
    stress: float  # of the whole year


@dataclass(frozen=True)
class AgedYear:
    """The bank after some years."""

    years: float
    calendar: float  # share of the capacity lost by standing
    cycles: float  # share lost by cycling, scaled to the module's cycle life
    published: float  # the same by the published throughput model of small cells, for comparison
    capacity: float  # share of the rated capacity that is left
    resistance: float  # over that when new


@dataclass(frozen=True)
class AgedNight:
    """The night with the bank as it is at some age."""

    name: str
    capacity: float  # share of the rated capacity
    resistance: float  # over that when new
    hold: float  # s until the reserve is reached
    or_longer: bool  # the reserve is not reached in the longest run
    charge_at_dawn: float
    lowest_voltage: float  # V of the bank by night
    unserved: float  # J that the night goes without
    holds: bool  # the hours asked for, with nothing left unserved


@dataclass(frozen=True)
class BankLife:
    """Ageing of the bank, and the night when new and when aged."""

    year: BankYear
    aged: tuple[AgedYear, ...]  # new, then the end of each year, the last that of the warranty
    life: float  # years until the warranted share is left; inf = not within `LONGEST_LIFE`
    dominant: str  # "calendar" or "cycles", at the end of the warranty
    new: AgedNight
    computed: AgedNight  # at the end of the warranty, with the loss computed here
    warranted: AgedNight  # at the end of the warranty, with no more left than is warranted

    @property
    def end(self) -> AgedYear:
        """The bank at the end of its warranty."""
        return self.aged[-1]


def bank_life(specification: Specification, simulation: Simulation) -> BankLife:
    """The bank's years, and its night when new and at the end of the warranty."""
    bank = specification.bank
    year = bank_year(specification, simulation)
    years = [float(n) for n in range(math.ceil(bank.warranted_years - 1e-9))] + [bank.warranted_years]
    aged = tuple(after(bank, year, n) for n in years)
    end = aged[-1]
    names = ("new", "end of warranty, as computed", "end of warranty, no more left than warranted")
    computed = simulation.aged(end.capacity, end.resistance)
    warranted = simulation.aged(bank.warranted_share, bank.aged_resistance)
    return BankLife(
        year=year,
        aged=aged,
        life=life(bank, year),
        dominant="calendar" if end.calendar >= end.cycles else "cycles",
        new=_aged_night(specification, names[0], 1.0, 1.0, (simulation.night, simulation.hold)),
        computed=_aged_night(specification, names[1], end.capacity, end.resistance, computed),
        warranted=_aged_night(specification, names[2], bank.warranted_share, bank.aged_resistance, warranted),
    )


def bank_year(specification: Specification, simulation: Simulation) -> BankYear:
    """What the simulated night and the day after it come to, repeated through a year."""
    bank, brief = specification.bank, specification.brief
    night, day = simulation.night, simulation.day
    current = np.concatenate([night.series.current[0], day.series.current[0]])
    charge = np.clip(np.concatenate([night.series.charge[0], day.series.charge[0]]), 0.0, 1.0)
    cells = np.concatenate([night.series.bank_temperature[0], day.series.bank_temperature[0]])
    out = np.clip(current, 0.0, None)
    discharged = float(out.sum()) * night.step
    flowing = int(np.count_nonzero(out))
    rest = float(np.mean(specification.place.sea_temperatures))
    used, resting = _root_mean_square(cells, charge), calendar_stress(rest, brief.charge_at_start)
    share = min(1.0, brief.nights_per_year / DAYS_A_YEAR)
    return BankYear(
        nights=brief.nights_per_year,
        depth=brief.charge_at_start - float(night.end.charge[0]),
        full_cycles=brief.nights_per_year * discharged / bank.capacity,
        discharge_rate=discharged / bank.capacity / (flowing * night.step) * 3600.0 if flowing else 0.0,
        temperature=float(cells.mean()),
        charge=float(charge.mean()),
        used_stress=used,
        rest_temperature=rest,
        rest_charge=brief.charge_at_start,
        rest_stress=resting,
        stress=mixed_stress(used, resting, share),
    )


def after(bank: Bank, year: BankYear, years: float) -> AgedYear:
    """The bank after that many such years."""
    calendar = calendar_loss(bank.calendar_loss, year.stress, years * YEAR)
    passed = years * year.full_cycles
    cycles = cycle_loss(passed, bank.cycle_life, bank.warranted_share, year.temperature)
    left = capacity_left(calendar, cycles)
    return AgedYear(
        years=years,
        calendar=calendar,
        cycles=cycles,
        published=throughput_loss(passed, year.temperature, year.discharge_rate),
        capacity=left,
        resistance=aged_resistance(left, bank.warranted_share, bank.aged_resistance),
    )


def life(bank: Bank, year: BankYear) -> float:
    """Years until the warranted share of the capacity is left; infinite when that takes longer than anybody asks."""
    if after(bank, year, LONGEST_LIFE).capacity > bank.warranted_share:
        return math.inf
    low, high = 0.0, LONGEST_LIFE
    for _ in range(60):
        middle = 0.5 * (low + high)
        if after(bank, year, middle).capacity > bank.warranted_share:
            low = middle
        else:
            high = middle
    return high


def _root_mean_square(cells: Floats, charge: Floats) -> float:
    """Of the calendar stress through a run: losses by the root law add by their squares."""
    stresses = [calendar_stress(float(t), float(z)) for t, z in zip(cells, charge, strict=True)]
    return math.sqrt(sum(stress * stress for stress in stresses) / len(stresses))


def _aged_night(
    specification: Specification, name: str, capacity: float, resistance: float, runs: tuple[Run, Run]
) -> AgedNight:
    night, hold = runs
    reached = float(hold.summary.reserve_at[0])
    longer = math.isnan(reached)
    held = LONGEST_HOLD if longer else reached
    unserved = float(night.summary.unserved_energy[0])
    return AgedNight(
        name=name,
        capacity=capacity,
        resistance=resistance,
        hold=held,
        or_longer=longer,
        charge_at_dawn=float(night.end.charge[0]),
        lowest_voltage=float(night.summary.lowest_voltage[0]),
        unserved=unserved,
        holds=held >= specification.brief.hold and unserved <= 0.0,
    )
