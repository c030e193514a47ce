"""Handlers that blow into more than one space."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from anchorwatt.design.specification import Handler, Outlet, Specification
from anchorwatt.simulation.runs import Simulation
from tests.simulation import boats


def with_outlets(*outlets: Outlet) -> Specification:
    """Three cabins; the first's handler has those outlets, the last has its own."""
    made = boats.boat(3)
    first, last = made.plant.handlers[0], made.plant.handlers[2]
    big: Handler = replace(first, rated_capacity=6000.0, airflow=0.3, fan_power=200.0, outlets=outlets)
    return replace(made, plant=replace(made.plant, handlers=(big, last)))


@cache
def shared(step: float = 60.0) -> Simulation:
    return Simulation(with_outlets(boats.outlet(0, 0.6), boats.outlet(1, 0.4)), step)


def test_both_spaces_are_cooled() -> None:
    alone = Simulation(with_outlets(boats.outlet(0))).night.series.air[0, 1, -1]
    assert shared().night.series.air[0, 1, -1] < alone - 0.5
    assert shared().night.series.air[0, 0, -1] < 25.5


def test_heat_balance_closes() -> None:
    s = shared().night.summary
    taken = float(s.sensible_energy[0].sum())
    assert float(s.heat_in[0] - s.heat_stored[0]) == pytest.approx(0.0, abs=1e-6 * taken)


def test_coil_and_cabins_agree() -> None:
    """What the cabins give up, sensible and latent, is what the plant takes, fans left out."""
    run = shared().night
    taken = (run.series.sensible[0] + run.series.latent[0]).sum(axis=0)
    assert taken == pytest.approx(run.series.plant_load[0], rel=0.01)


def test_heat_is_shared_as_the_air_is() -> None:
    run = shared().night
    assert run.series.sensible[0, 1] / run.series.sensible[0, 0] == pytest.approx(np.full(600, 0.4 / 0.6))


def test_ten_second_steps_give_the_same_night() -> None:
    coarse, fine = shared().night.series, shared(10.0).night.series
    assert np.abs(coarse.air[0] - fine.air[0, :, 5::6]).max() < 0.02
    assert np.abs(coarse.humidity[0] - fine.humidity[0, :, 5::6]).max() < 2e-5


def test_two_outlets_in_one_cabin_are_one() -> None:
    split = Simulation(with_outlets(boats.outlet(0, 0.5), boats.outlet(0, 0.5))).night
    whole = Simulation(with_outlets(boats.outlet(0))).night
    assert split.series.air == pytest.approx(whole.series.air, abs=1e-9)
    assert split.series.charge == pytest.approx(whole.series.charge, abs=1e-12)


def test_one_air_when_much_air_goes_round() -> None:
    """With ten times the air the two spaces come together, as any mixing must bring them."""

    def apart(airflow: float) -> float:
        made = with_outlets(boats.outlet(0, 0.5), boats.outlet(1, 0.5))
        first = replace(made.plant.handlers[0], airflow=airflow)
        night = Simulation(replace(made, plant=replace(made.plant, handlers=(first, made.plant.handlers[1])))).night
        return float(abs(night.series.air[0, 0, -1] - night.series.air[0, 1, -1]))

    assert apart(1.5) < apart(0.15)
