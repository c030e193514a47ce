"""Faults: nothing is made or lost in a faulty run either, and no fault makes a night better."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from functools import cache, partial

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from anchorwatt.simulation import faults
from anchorwatt.simulation.faults import FaultRuns
from anchorwatt.simulation.runs import Simulation
from tests.simulation import boats
from tests.simulation.test_balances import ENERGY, throughput


def two_machines() -> Simulation:
    machines = (boats.alternator("port"), boats.alternator("starboard"))
    made = boats.boat(2, solar=boats.SUNNY, engines=(boats.engine(machines),))
    return Simulation(replace(made, bank=replace(made.bank, parallel=3, charge_current=600.0)))


@cache
def boat() -> Simulation:
    return two_machines()


def charging(breaks: faults.Breaks | None = None, throttle: bool = False) -> FaultRuns:
    moment = faults.into_the_charge(boat())
    then = faults.full_throttle(boat()) if throttle else None
    runs = faults.while_charging(boat(), moment, breaks, then)
    assert runs is not None
    return runs


def by_night(breaks: faults.Breaks | None = None, off: float = 0.0) -> FaultRuns:
    return faults.by_night(boat(), faults.middle_of_the_night(boat()), breaks, off=off)


STRING = partial(faults.without_string, strings=3)
STRUCK: dict[str, Callable[[], FaultRuns]] = {
    "seawater": lambda: faults.seawater_stops(boat(), faults.middle_of_the_night(boat())),
    "inverter": lambda: by_night(off=7200.0),
    "string": lambda: by_night(STRING),
    "bank": lambda: by_night(faults.without_bank),
    "shore": lambda: faults.shore_sags(boat(), faults.middle_of_the_night(boat())),
    "alternator": lambda: charging(partial(faults.lost_alternators, lost=(0,))),
    "contactor": lambda: charging(faults.without_bank),
    "throttle": lambda: charging(throttle=True),
}


@cache
def struck(name: str) -> FaultRuns:
    return STRUCK[name]()


@pytest.fixture(params=STRUCK)
def runs(request: pytest.FixtureRequest) -> FaultRuns:
    return struck(request.param)


def test_both_boats_go_on_from_the_same_moment(runs: FaultRuns) -> None:
    assert runs.before.clock[-1] == runs.moment == runs.sound.start
    assert runs.broken.clock.size * runs.broken.step >= faults.SHOWN


def test_the_bus_closes_with_a_fault(runs: FaultRuns) -> None:
    s = runs.broken.summary
    supplied = s.bank_out + s.alternator_energy + s.solar_energy + s.charger_energy
    used = s.inverter_energy + s.dc_load_energy
    assert float(supplied[0] - used[0]) == pytest.approx(0.0, abs=ENERGY * throughput(s))


def test_the_store_of_the_bank_closes_with_a_fault(runs: FaultRuns) -> None:
    s = runs.broken.summary
    assert float(s.bank_out[0] + s.bank_loss[0] + s.bank_stored[0]) == pytest.approx(0.0, abs=ENERGY * throughput(s))


def test_heat_closes_with_a_fault(runs: FaultRuns) -> None:
    s = runs.broken.summary
    scale = abs(float(s.heat_in[0])) + float(s.sensible_energy[0].sum()) + 1.0
    assert float(s.heat_in[0] - s.heat_stored[0]) == pytest.approx(0.0, abs=ENERGY * scale)


def test_no_fault_serves_loads_better(runs: FaultRuns) -> None:
    assert float(runs.broken.summary.unserved_energy[0]) >= float(runs.sound.summary.unserved_energy[0])


@pytest.mark.parametrize("name", ["string", "shore", "alternator", "throttle"])
def test_no_fault_that_leaves_the_loads_on_leaves_more_in_the_bank(name: str) -> None:
    """Until both are full, that is: there the last tenths of a per cent depend on how they came there."""
    found = struck(name)
    full = float(found.sound.summary.full_at[0]) if name == "alternator" else faults.SHOWN
    part = slice(0, round(min(full, faults.SHOWN) / found.sound.step))
    assert (found.broken.series.charge[0, part] <= found.sound.series.charge[0, part] + 1e-9).all()


@pytest.mark.parametrize("name", ["seawater", "inverter", "bank"])
def test_cabins_are_never_cooler_without_their_plant(name: str) -> None:
    found = struck(name)
    assert (found.broken.series.air[0, :, 30:110] > found.sound.series.air[0, :, 30:110]).all()
    assert float(np.max(np.abs(found.broken.series.plant_power[0, :110]))) == 0.0


def test_an_open_contactor_stops_everything() -> None:
    run = struck("contactor").broken
    for name in ("current", "inverter_output", "dc_load", "solar"):
        assert float(np.max(np.abs(getattr(run.series, name)))) == 0.0, name
    assert float(run.series.alternator_current.max()) == 0.0
    assert float(run.summary.alternator_energy[0]) == 0.0


def test_the_inverter_leaves_direct_current_alone_and_comes_back() -> None:
    run = struck("inverter").broken
    assert np.array_equal(run.series.dc_load[0], run.forcing.dc_load[0])
    assert float(run.series.inverter_output[0, :119].max()) == 0.0
    assert float(run.series.inverter_output[0, 121]) > 0.0


def test_the_propeller_comes_first_at_full_throttle() -> None:
    """A propeller that takes 95 % and a margin of 15 % leave nothing to the alternators."""
    found = struck("throttle")
    assert float(found.before.series.alternator_current[0, :, -1].min()) > 0.0
    assert float(found.broken.series.alternator_current.max()) == 0.0
    idle = faults.full_throttle(boat(), propelling=False)
    free = faults.while_charging(boat(), faults.into_the_charge(boat()), then=idle)
    assert free is not None
    assert float(free.broken.series.alternator_current[0, :, 0].min()) > 0.0


def test_a_lost_alternator_lets_the_other_have_the_engine() -> None:
    found = struck("alternator")
    assert float(found.broken.series.alternator_current[0, 0].max()) == 0.0
    assert float(found.broken.series.alternator_current[0, 1].max()) > 0.0
    assert float(found.broken.summary.full_at[0]) > float(found.sound.summary.full_at[0])


def test_the_only_string_is_the_bank() -> None:
    alone, all_of_it = (faults.without_string(boat().boat, 1), faults.without_bank(boat().boat))
    for one, other in zip(alone.power, all_of_it.power, strict=True):
        assert np.array_equal(one, other)


def test_the_boat_itself_is_left_as_it_was() -> None:
    before = [part.copy() for part in boat().boat.power]
    faults.without_string(faults.without_bank(boat().boat), 3)
    for one, other in zip(before, boat().boat.power, strict=True):
        assert np.array_equal(one, other, equal_nan=True)


def test_without_alternators_there_is_no_fault_while_charging() -> None:
    made = Simulation(boats.boat(1, engines=(boats.engine(()),)))
    assert faults.while_charging(made, made.dawn + 600.0) is None
    assert faults.full_throttle(made) is None
    assert math.isnan(faults.into_the_charge(made))
    assert math.isnan(faults.of_full_charge(made))


@settings(max_examples=12)
@given(minute=st.integers(min_value=1, max_value=590), strings=st.integers(min_value=2, max_value=8))
def test_a_lost_string_never_holds_longer_whenever_it_goes(minute: int, strings: int) -> None:
    simulation = boat()
    moment = simulation.night_start + 60.0 * minute
    breaks = partial(faults.without_string, strings=strings)
    found = faults.by_night(simulation, moment, breaks, until=moment + 3600.0)
    assert float(found.broken.end.charge[0]) <= float(found.sound.end.charge[0]) + 1e-9
    sound, broken = (faults.hold_after(simulation, found, what) for what in (None, breaks))
    assert not broken > sound


@settings(max_examples=8)
@given(minute=st.integers(min_value=1, max_value=590), off=st.integers(min_value=1, max_value=120))
def test_a_tripped_inverter_never_serves_more(minute: int, off: int) -> None:
    simulation = boat()
    moment = simulation.night_start + 60.0 * minute
    found = faults.by_night(simulation, moment, off=60.0 * off, until=moment + 7200.0)
    sound, broken = found.sound.summary, found.broken.summary
    assert float(broken.ac_load_energy[0]) <= float(sound.ac_load_energy[0]) + 1e-6
    assert float(broken.dc_load_energy[0]) == pytest.approx(float(sound.dc_load_energy[0]), rel=1e-9)
