"""The stories of faults: which are told, and that every figure in them is the run's."""

from __future__ import annotations

import math
import re
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from anchorwatt.assessment.faults import PARTS
from anchorwatt.design.specification import Specification
from anchorwatt.physics.engine import full_load_power
from anchorwatt.physics.propeller import propeller_demand
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.fault_story import Fault
from anchorwatt.sizing.faults import Faults
from anchorwatt.sizing.faults_by_night import hottest_moment
from anchorwatt.sizing.faults_while_charging import reached_speed
from tests.simulation import boats

KEYS = ["seawater-stops", "inverter-trips", "module-lost", "shore-sags", "alternator-1-lost", "alternator-2-lost",
        "contactor-opens", "full-throttle"]  # fmt: skip


def boat(**changes: object) -> Specification:
    machines = (boats.alternator("port"), boats.alternator("starboard"))
    made = boats.boat(2, engines=(boats.engine(machines),))
    made = replace(made, bank=replace(made.bank, parallel=3, charge_current=600.0))
    return replace(made, **changes)  # type: ignore[arg-type]


@cache
def told() -> dict[str, Fault]:
    made = boat()
    return {fault.key: fault for fault in Faults(made, Simulation(made)).every}


def keys(made: Specification) -> list[str]:
    return [fault.key for fault in Faults(made, Simulation(made)).every]


def test_every_fault_of_a_boat_that_has_all_parts() -> None:
    assert list(told()) == KEYS


def test_what_is_not_aboard_cannot_fail() -> None:
    assert "shore-sags" not in keys(boat(shore=None))
    bare = keys(boat(engines=(boats.engine(()),)))
    assert not [key for key in bare if key.startswith(("alternator", "contactor", "full"))]
    alone = keys(boat(engines=(boats.engine((boats.alternator(),)),)))
    assert "alternator-lost" in alone
    assert "alternator-1-lost" not in alone


@pytest.mark.parametrize("key", KEYS)
def test_every_part_of_the_story_is_told_and_its_figures_are_known(key: str) -> None:
    fault = told()[key]
    for part, _ in PARTS:
        words = getattr(fault, part)
        assert words
        shown = fault.told(words, "us")
        assert "{" not in shown
        assert "nan" not in shown
        for name in re.findall(r"\{([a-z_]+)\}", words):
            assert fault.figure(name).name


@pytest.mark.parametrize("key", KEYS)
def test_two_hours_minute_by_minute(key: str) -> None:
    minutes = told()[key].minutes
    assert np.allclose(np.diff(minutes.clock), 60.0)
    assert minutes.clock[-1] == told()[key].at + 7200.0
    assert minutes.clock[0] <= told()[key].at
    for trace in minutes.traces:
        assert trace.values.shape == minutes.clock.shape
        assert np.isfinite(trace.values).all()


def test_figures_are_those_of_the_runs() -> None:
    lost = told()["module-lost"]
    run = lost.runs.broken
    assert lost.figure("dawn_charge").value == float(run.end.charge[0])
    assert lost.figure("left").value == pytest.approx(2.0 / 3.0)
    assert lost.figure("hold").value < lost.figure("hold_without").value
    opens = told()["contactor-opens"]
    assert opens.figure("into").value == -float(opens.runs.before.series.current[0].min())
    machine = told()["alternator-1-lost"]
    assert machine.figure("full").value > machine.figure("full_without").value
    assert machine.figure("own").value <= machine.figure("all").value


def test_a_bank_of_one_string_is_all_lost() -> None:
    made = boat(bank=boats.bank())
    (fault,) = [one for one in Faults(made, Simulation(made)).every if one.key == "module-lost"]
    assert fault.figure("hold").value == 0.0
    assert float(fault.runs.broken.series.dc_load.max()) == 0.0
    assert "only string" in fault.happens


def test_a_small_engine_is_short_by_what_its_alternators_would_take() -> None:
    figures = {one.key: one.value for one in told()["full-throttle"].figures}
    assert figures["short"] == pytest.approx(max(0.0, figures["shaft"] - figures["spare"]))
    assert figures["spare"] == pytest.approx(figures["able"] - figures["propeller"])
    assert figures["short"] > 0.0
    engine = boat().engines[0]
    speed = figures["reached"]
    assert speed < engine.rated_speed
    able = full_load_power(speed, engine.rated_speed, engine.rated_power, engine.curve_speeds, engine.curve_powers)
    taken = propeller_demand(speed, engine.rated_speed, engine.propeller_power, engine.propeller_exponent)
    assert able - taken == pytest.approx(figures["shaft"], rel=1e-6)


def test_an_engine_with_enough_to_spare_reaches_its_speed() -> None:
    assert reached_speed(boat(), "main engine", 0.0) == boat().engines[0].rated_speed
    assert math.isnan(reached_speed(boat(), "main engine", 1e6))


def test_the_inverter_trips_within_the_night() -> None:
    made = boat()
    simulation = Simulation(made)
    assert 59 <= hottest_moment(made, simulation) < simulation.night.clock.size - 119


def test_at_48_v_the_standard_on_load_dumps_has_no_figure() -> None:
    machine = boats.alternator(volts=56.0)
    made = boat(bank=boats.bank(cells=16), engines=(boats.engine((machine,)),))
    (fault,) = [one for one in Faults(made, Simulation(made)).every if one.key == "contactor-opens"]
    assert "no figures" in fault.happens
