"""The set-up sheet against the time kernel's own regulator, and its laws."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache
from itertools import pairwise
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.design.specification import Alternator, Engine, Specification
from anchorwatt.physics.alternator import shaft_power
from anchorwatt.physics.belt import belt_power_limit
from anchorwatt.simulation.electric import alternator_current, heated
from anchorwatt.simulation.network import boat_arrays
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.regulator import (
    BELT,
    CURVE,
    ENGINE,
    HEAT,
    RegulatorSheet,
    air_round,
    air_that_reaches_hold,
    bank_takes,
    regulator_sheets,
    row_speeds,
    settled,
    side_loads,
    spare_for_one,
    temperatures,
)
from tests.simulation import boats

AIR = 50.0


def sized(machine: Alternator, count: int = 1, **of_engine: Any) -> Specification:
    one = replace(boats.engine((machine,) * count), **of_engine)
    return replace(boats.boat(1), engines=(one,))


def sheet(machine: Alternator | None = None, air: float = AIR, **of_engine: Any) -> RegulatorSheet:
    return regulator_sheets(sized(machine or boats.alternator(), **of_engine), (air,))[0]


@cache
def usual() -> RegulatorSheet:
    return sheet()


def kernel_settles(specification: Specification, engine_speed: float, voltage: float) -> tuple[float, float, float]:
    """Current, winding and frame after ten hours of the kernel's own regulator with a bank that takes everything."""
    power = boat_arrays(specification).power
    machine, engine = power.alternator[0, 0], specification.engines[0]
    rotor = engine_speed * engine.alternators[0].pulley_ratio
    spare = spare_for_one(engine, engine_speed, True)
    winding = frame = AIR
    current = 0.0
    for _ in range(600):
        current, _ = alternator_current(
            1e9, voltage, rotor, spare, winding, frame, AIR, 60.0, machine, power.alternator_speeds[0, 0],
            power.alternator_currents[0, 0],
        )  # fmt: skip
        winding, frame = heated(current, voltage, rotor, winding, frame, AIR, 60.0, machine)
    return current, winding, frame


@pytest.mark.parametrize("rpm", [700, 1000, 1400, 1800, 2200, 2400])
@pytest.mark.parametrize("limit", [180.0, 60.0])
def test_it_settles_where_the_kernels_regulator_settles(rpm: float, limit: float) -> None:
    machine = replace(boats.alternator(), current_limit=limit)
    specification = sized(machine)
    engine, voltage = specification.engines[0], specification.bank.absorb_voltage
    rotor = rpm * boats.RPM * machine.pulley_ratio
    power = min(
        spare_for_one(engine, rpm * boats.RPM, True),
        belt_power_limit(machine.belt_power, machine.belt_speed, rotor),
    )
    ours = settled(machine, voltage, rotor, AIR, power, limit)
    current, winding, frame = kernel_settles(specification, rpm * boats.RPM, voltage)
    assert ours.current == pytest.approx(current, rel=2e-4)
    assert ours.winding == pytest.approx(winding, abs=0.05)
    assert ours.frame == pytest.approx(frame, abs=0.05)


def test_rows_go_from_idle_to_rated_in_about_twelve_steps() -> None:
    speeds = [row.engine_speed for row in usual().rows]
    assert speeds == sorted(speeds)
    assert speeds[0] == pytest.approx(700 * boats.RPM)
    assert speeds[-1] == pytest.approx(2600 * boats.RPM)
    assert 8 <= len(speeds) <= 15
    assert any(speed == pytest.approx(1200 * boats.RPM) for speed in speeds)


@given(st.floats(300.0, 1500.0), st.floats(1.2, 8.0), st.floats(0.0, 1.0))
def test_whatever_the_engine_the_rows_fit(idle: float, ratio: float, share: float) -> None:
    rated = idle * ratio
    engine = replace(
        boats.engine(),
        idle_speed=idle * boats.RPM,
        rated_speed=rated * boats.RPM,
        charging_speed=(idle + share * (rated - idle)) * boats.RPM,
    )
    speeds = row_speeds(engine)
    assert 2 <= len(speeds) <= 16
    assert all(b > a for a, b in pairwise(speeds))
    assert speeds[0] == pytest.approx(engine.idle_speed)
    assert speeds[-1] == pytest.approx(engine.rated_speed)


def test_what_is_set_is_the_lowest_of_the_limits() -> None:
    for row in usual().rows:
        lowest = min(row.cold, boats.alternator().current_limit, row.belt, row.under_way, row.bank)
        assert row.set_current == pytest.approx(lowest)
        assert row.lasting.current <= row.set_current * (1.0 + 1e-9)
        assert 0.0 <= row.field <= 1.0


def test_the_regulator_backs_off_at_both_ends() -> None:
    """Little at idle, most in mid-range, nothing at full throttle."""
    rows = usual().rows
    assert rows[0].set_current < 0.8 * usual().highest
    assert rows[-1].set_current == 0.0
    assert rows[-1].governs == ENGINE
    assert rows[0].governs in (BELT, CURVE)


def test_at_anchor_the_engine_leaves_more() -> None:
    for row in usual().rows:
        assert row.at_anchor > row.under_way


def test_the_belts_amperes_take_the_belts_power() -> None:
    machine, row = boats.alternator(), usual().rows[2]
    taken = shaft_power(
        row.belt, usual().voltage, row.rotor_speed, row.hot_winding, machine.rated_current, machine.efficiency
    )
    assert taken == pytest.approx(belt_power_limit(machine.belt_power, machine.belt_speed, row.rotor_speed))


def test_two_machines_share_engine_and_bank() -> None:
    one, two = usual(), regulator_sheets(sized(boats.alternator(), 2), (AIR,))
    assert [found.place for found in two] == [0, 1]
    assert two[0].rows == two[1].rows
    assert two[0].bank_current == pytest.approx(0.5 * one.bank_current)
    spare_alone = one.at(1200 * boats.RPM).spare
    assert two[0].at(1200 * boats.RPM).spare == pytest.approx(0.5 * spare_alone)


def test_the_bank_is_shared_out_by_rated_current() -> None:
    small, large = boats.alternator("small", rated=60.0), boats.alternator("large", rated=120.0)
    boat = replace(boats.boat(1), engines=(boats.engine((small, large)),))
    found = regulator_sheets(boat, (AIR,))
    assert found[1].bank_current == pytest.approx(2.0 * found[0].bank_current)
    assert sum(one.bank_current for one in found) == pytest.approx(bank_takes(boat))


def test_a_warm_bank_half_full_takes_its_current_limit() -> None:
    assert bank_takes(boats.boat(1)) == pytest.approx(400.0)


@pytest.mark.parametrize("volts", [14.0, 28.0, 56.0])
def test_a_sheet_is_made_at_every_voltage(volts: float) -> None:
    cells = round(volts / 3.5)
    machine = boats.alternator(volts=volts, rated=2500.0 / volts)
    boat = replace(sized(machine), bank=boats.bank(cells=cells))
    (found,) = regulator_sheets(boat, (AIR,))
    assert found.voltage == pytest.approx(volts, rel=0.01)
    assert 0.0 < found.highest <= machine.current_limit


@given(st.floats(0.0, 80.0))
def test_hotter_air_never_gives_more(air: float) -> None:
    machine = boats.alternator()
    cool, warm = (settled(machine, 28.0, 400.0, one) for one in (air, air + 5.0))
    assert warm.current <= cool.current * (1.0 + 1e-9)


def test_heat_that_feeds_on_itself_settles_nowhere() -> None:
    starved = replace(boats.alternator(), winding_conductance=0.5, frame_conductance=0.5)
    assert temperatures(starved, 180.0, 28.0, 400.0, AIR) == (math.inf, math.inf)
    assert settled(starved, 28.0, 400.0, AIR).current < 60.0


def test_heat_governs_where_the_alternator_is_hot() -> None:
    row = sheet(air=75.0).at(1200 * boats.RPM)
    assert row.lasting_governs == HEAT
    assert row.lasting.frame > boats.alternator().hold_temperature - 1e-6


def test_above_that_air_it_folds_back_and_below_it_does_not() -> None:
    machine = boats.alternator()
    air = air_that_reaches_hold(machine, 28.0, 400.0, math.inf, 180.0)
    assert settled(machine, 28.0, 400.0, air - 1.0, setting=180.0).frame < machine.hold_temperature
    assert settled(machine, 28.0, 400.0, air + 1.0, setting=180.0).frame > machine.hold_temperature


def test_air_in_a_compartment_is_that_of_the_run_and_what_is_typed_stays() -> None:
    typed = boats.boat(1)
    assert air_round(typed, Simulation(typed)) == (50.0,)
    moved = replace(typed, engines=(replace(typed.engines[0], air_temperature=math.nan, cabin=0),))
    simulation = Simulation(moved)
    assert simulation.recharge is not None
    assert air_round(moved, simulation)[0] == pytest.approx(float(simulation.recharge.series.air[0, 0].max()))


def test_the_belts_of_an_engine_pull_together() -> None:
    boat = sized(boats.alternator(), 2, side_load_limit=1500.0)
    found = regulator_sheets(boat, (AIR,))
    (load,) = side_loads(boat, found)
    assert load.load == pytest.approx(sum(one.pull.load for one in found))
    assert load.limit == 1500.0
    pull = found[0].pull
    assert pull.effective <= pull.allowed * (1.0 + 1e-9)
    assert pull.load == pytest.approx(pull.tight + pull.slack)


def test_an_engine_without_alternators_has_no_sheet() -> None:
    bare: tuple[Engine, ...] = (boats.engine(()), boats.engine((boats.alternator(),)))
    boat = replace(boats.boat(1), engines=bare)
    found = regulator_sheets(boat, (AIR, AIR))
    assert [one.engine for one in found] == [1]
    assert [one.engine for one in side_loads(boat, found)] == [1]
