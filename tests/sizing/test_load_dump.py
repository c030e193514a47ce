from __future__ import annotations

import math
from dataclasses import replace

import pytest

from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.load_dump import LoadDump, load_dump
from tests.simulation import boats


def found(cells: int = 8, machines: int = 1, fridge: float = 60.0) -> LoadDump:
    boat = boats.boat(1)
    loads = (replace(boat.loads[0], power=fridge, cabin=-1), boat.loads[1])
    boat = replace(
        boat, bank=boats.bank(cells=cells), engines=(boats.engine((boats.alternator(),) * machines),), loads=loads
    )
    dump = load_dump(boat, Simulation(boat))
    assert dump is not None
    return dump


def test_two_machines_stand_behind_half_the_resistance() -> None:
    assert found(machines=2).resistance == pytest.approx(0.5 * found().resistance)


def test_loads_hold_it_down() -> None:
    light, heavy = found(), found(fridge=600.0)
    assert light.across < light.peak
    assert heavy.across < light.across
    assert heavy.loads == pytest.approx(300.0)  # half the time


def test_the_clamps_energy_is_told_for_the_machine_that_drives_it_hardest() -> None:
    assert found().energy == pytest.approx(found(machines=2).energy)
    assert found().energy > 0.0


def test_at_48_v_the_standard_has_no_figure() -> None:
    dump = found(cells=16)
    assert dump.resistance > 0.0
    assert math.isnan(dump.peak)
    assert math.isnan(dump.energy)


def test_no_alternator_no_load_dump() -> None:
    bare = replace(boats.boat(1), engines=(boats.engine(()),))
    assert load_dump(bare, Simulation(bare)) is None
