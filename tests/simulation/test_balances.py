"""Laws that hold on every run: nothing is made, nothing is lost."""

from __future__ import annotations

from dataclasses import replace
from functools import cache
from typing import Any

import numpy as np
import pytest

from anchorwatt.design.specification import Doing
from anchorwatt.simulation.arrays import Summary
from anchorwatt.simulation.runs import Run, Simulation
from tests.simulation import boats

ENERGY = 1e-6
CHARGE = 1e-9


def harbour_plan() -> Simulation:
    """A plan with shore power, motoring and anchorage, solar on deck."""
    made = boats.boat(2)
    day, motoring, evening, night = made.plan
    ashore = replace(day, doing=Doing.ON_SHORE_POWER, set_points=night.set_points)
    return Simulation(replace(made, plan=(ashore, motoring, evening, night), solar=boats.SUNNY))


def flat_bank() -> Simulation:
    """A bank that is empty long before dawn."""
    return Simulation(replace(boats.boat(2), bank=boats.bank(capacity=60.0)))


@cache
def runs() -> list[Run]:
    made = []
    for simulation in (Simulation(boats.boat(3)), harbour_plan(), flat_bank()):
        made += [simulation.night, simulation.day, simulation.hold]
        assert simulation.recharge is not None
        made.append(simulation.recharge)
        other = simulation.alternative_night
        assert other is not None
        made.append(other)
    return made


@pytest.fixture(scope="module", params=range(15))
def run(request: Any) -> Run:
    index: int = request.param
    return runs()[index]


def throughput(summary: Summary) -> float:
    """J through the DC bus, a scale for its residual."""
    return float(summary.inverter_energy[0] + summary.dc_load_energy[0] + summary.alternator_energy[0]) + 1.0


def test_dc_bus_closes(run: Run) -> None:
    s = run.summary
    supplied = s.bank_out + s.alternator_energy + s.solar_energy + s.charger_energy
    used = s.inverter_energy + s.dc_load_energy
    assert float(supplied[0] - used[0]) == pytest.approx(0.0, abs=ENERGY * throughput(s))


def test_ac_side_closes(run: Run) -> None:
    s = run.summary
    shore_to_loads = run.series.shore[0].sum() * run.step
    charging = float(s.charger_energy[0])
    delivered = float(s.inverter_energy[0] - s.inverter_loss[0]) + shore_to_loads
    used = float(s.plant_energy[0] + s.ac_load_energy[0] + s.transformer_loss[0])
    if charging == 0.0:
        assert delivered == pytest.approx(used, rel=ENERGY)
    else:
        assert delivered > used  # the charger's input comes from shore too


def test_bank_store_closes(run: Run) -> None:
    s = run.summary
    assert float(s.bank_out[0] + s.bank_loss[0] + s.bank_stored[0]) == pytest.approx(0.0, abs=ENERGY * throughput(s))


def test_ampere_hours_are_the_change_of_charge(run: Run) -> None:
    passed = run.series.current[0, 1:].sum() * run.step
    change = run.series.charge[0, 0] - run.series.charge[0, -1]
    capacity = abs(passed / change) if change else 1.0
    named = {800.0 * 3600.0, 60.0 * 3600.0}
    assert change == 0.0 or min(abs(capacity / c - 1.0) for c in named) < CHARGE


def test_charge_stays_between_its_limits(run: Run) -> None:
    assert run.series.charge[0].min() >= 0.0
    assert run.series.charge[0].max() <= 1.0


def test_heat_into_the_boat_is_stored(run: Run) -> None:
    s = run.summary
    scale = abs(float(s.heat_in[0])) + float(s.sensible_energy[0].sum()) + 1.0
    assert float(s.heat_in[0] - s.heat_stored[0]) == pytest.approx(0.0, abs=ENERGY * scale)


def test_shaft_gives_more_than_the_alternator(run: Run) -> None:
    s = run.summary
    assert float(s.shaft_energy[0]) >= float(s.alternator_energy[0])
    assert float(s.fuel[0]) >= float(s.fuel_added[0]) >= 0.0


def test_everything_is_a_number(run: Run) -> None:
    for name in ("air", "humidity", "sensible", "latent", "plant_power", "charge", "voltage", "current"):
        assert np.isfinite(getattr(run.series, name)).all(), name
