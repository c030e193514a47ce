"""Years of the bank, and its night when aged."""

from __future__ import annotations

import math
from dataclasses import replace

import numpy as np
import pytest

from anchorwatt.design.specification import Bank, Specification
from anchorwatt.physics.ageing import calendar_stress
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.bank_life import BankYear, after, bank_life, bank_year, life
from tests.simulation import boats

BOAT = boats.boat(1)
SIMULATION = Simulation(BOAT)
YEAR = BankYear(60.0, 0.4, 55.0, 0.05, 30.0, 0.6, 1.5, 26.0, 0.95, 1.4, 1.45)


def brief(**changes: float) -> Specification:
    return replace(BOAT, brief=replace(BOAT.brief, **changes))  # type: ignore[arg-type]


def bank(**changes: float) -> Bank:
    return replace(BOAT.bank, **changes)  # type: ignore[arg-type]


def test_the_years_run_from_new_to_the_end_of_the_warranty() -> None:
    found = bank_life(BOAT, SIMULATION)
    assert [one.years for one in found.aged] == [float(n) for n in range(9)]
    assert (found.aged[0].capacity, found.aged[0].resistance) == (1.0, 1.0)
    assert all(b.capacity < a.capacity for a, b in zip(found.aged, found.aged[1:], strict=False))
    assert all(b.resistance > a.resistance for a, b in zip(found.aged, found.aged[1:], strict=False))


def test_a_warranty_of_part_of_a_year_ends_there() -> None:
    boat = replace(BOAT, bank=bank(warranted_years=2.5))
    assert [one.years for one in bank_life(boat, SIMULATION).aged] == [0.0, 1.0, 2.0, 2.5]


def test_full_cycles_are_all_that_is_discharged_in_a_night_and_a_day() -> None:
    found = bank_year(BOAT, SIMULATION)
    out = sum(
        float(np.clip(run.series.current[0], 0.0, None).sum()) * run.step for run in (SIMULATION.night, SIMULATION.day)
    )
    assert found.full_cycles == pytest.approx(BOAT.brief.nights_per_year * out / BOAT.bank.capacity)
    assert found.full_cycles >= found.nights * found.depth * (1.0 - 1e-9)


def test_a_bank_that_is_never_used_ages_as_it_rests() -> None:
    found = bank_year(brief(nights_per_year=0.0), SIMULATION)
    assert found.full_cycles == 0.0
    assert found.stress == pytest.approx(calendar_stress(28.0, BOAT.brief.charge_at_start))
    assert after(BOAT.bank, found, 8.0).cycles == 0.0


def test_more_nights_a_year_lose_more() -> None:
    few, many = (after(BOAT.bank, bank_year(brief(nights_per_year=n), SIMULATION), 8.0) for n in (20.0, 200.0))
    assert many.cycles > few.cycles
    assert many.capacity < few.capacity


@pytest.mark.parametrize(
    ("changes", "dominant"), [({"cycle_life": 300.0}, "cycles"), ({"cycle_life": 50_000.0}, "calendar")]
)
def test_what_dominates_is_told(changes: dict[str, float], dominant: str) -> None:
    assert bank_life(replace(BOAT, bank=bank(**changes)), SIMULATION).dominant == dominant


def test_life_ends_where_the_warranted_share_is_left() -> None:
    years = life(BOAT.bank, YEAR)
    assert after(BOAT.bank, YEAR, years).capacity == pytest.approx(BOAT.bank.warranted_share, abs=1e-6)


def test_a_life_beyond_what_anybody_asks_is_endless() -> None:
    assert life(bank(cycle_life=1e9, calendar_loss=1e-6), YEAR) == math.inf


def test_an_aged_bank_holds_less_and_stands_lower_at_dawn() -> None:
    found = bank_life(BOAT, SIMULATION)
    assert found.new.hold > found.computed.hold > found.warranted.hold
    assert found.new.charge_at_dawn > found.computed.charge_at_dawn > found.warranted.charge_at_dawn
    assert found.new.lowest_voltage > found.warranted.lowest_voltage


def test_a_bank_that_has_not_aged_holds_as_long_as_a_new_one() -> None:
    """With no loss at all the aged runs are the new ones."""
    boat = replace(BOAT, bank=bank(calendar_loss=0.0, cycle_life=1e12, warranted_share=1.0, aged_resistance=1.0))
    found = bank_life(boat, Simulation(boat))
    for one in (found.computed, found.warranted):
        assert one.hold == pytest.approx(found.new.hold, rel=1e-3)
        assert one.charge_at_dawn == pytest.approx(found.new.charge_at_dawn, abs=1e-4)


def test_a_night_with_loads_unserved_is_not_held() -> None:
    boat = replace(BOAT, bank=boats.bank(8, 60.0, charge_current=30.0))
    found = bank_life(boat, Simulation(boat))
    assert found.warranted.unserved > 0.0
    assert not found.warranted.holds
