"""Parts in the spaces of a boat: what fits, what it gives off, and where else it would go."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from anchorwatt.design.specification import Doing, Item, Space, Specification
from anchorwatt.physics.inverter import converter_input
from anchorwatt.physics.transformer import transformer_input
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.fit import Fit, PartFit, fit, more_room, places_for
from anchorwatt.sizing.space_heat import Heats
from tests.simulation import boats

SIZE = (0.30, 0.20, 0.40)


def part(kind: str, tag: str = "T1", count: int = 1, space: int = 0, **changes: object) -> Item:
    made = boats.item(f"key.{kind}", kind, f"an invented {kind}", count, 10.0, math.nan, "", cabin=0, tag=tag)
    sized = replace(made, space=space, size=SIZE, clearance=0.05, service="front", upright=True, highest_air=40.0)
    return replace(sized, **changes)  # type: ignore[arg-type]


INVERTER = part("inverter")
CHARGER = part("charger", "T2")


def boat(*items: Item, spaces: tuple[Space, ...] = (boats.space(),), **changes: object) -> Specification:
    return boats.boat(1, items=items, spaces=spaces, **changes)


@cache
def runs(it: Specification) -> Simulation:
    return Simulation(it)


def fitted(it: Specification) -> Fit:
    return fit(it, runs(it))


def only(it: Specification) -> PartFit:
    (found,) = fitted(it).parts
    return found


def test_a_part_that_fits() -> None:
    found = only(boat(INVERTER))
    assert found.through == pytest.approx(0.15)  # of the height; the width leaves 0.40 m
    assert found.alone == pytest.approx(0.15)  # of the height again
    assert found.good


def test_an_opening_that_is_too_small_says_by_how_much() -> None:
    found = only(boat(INVERTER, spaces=(boats.space(opening=(0.35, 0.38)),)))
    assert found.through == pytest.approx(-0.02)
    assert found.together
    assert not found.good


def test_neighbours_that_leave_no_room() -> None:
    narrow = boats.space(size=(0.60, 0.30, 0.60), opening=(0.5, 0.5))
    found = fitted(boat(INVERTER, CHARGER, spaces=(narrow,)))
    assert all(one.alone_found and one.alone_serviced and not one.together for one in found.parts)
    (space,) = found.spaces
    assert space.proved
    grown = more_room(space)
    assert grown is not None
    assert grown[0] == 1
    assert grown[1] == pytest.approx(0.10, abs=0.011)  # both turned, 0.30 and twice 0.05 across


def test_several_of_one_part_are_tried_together() -> None:
    bank = part("battery_module", "G1", 3)
    assert only(boat(bank, spaces=(boats.space(size=(1.10, 0.4, 0.6)),))).together
    assert not only(boat(bank, spaces=(boats.space(size=(0.75, 0.4, 0.5)),))).alone_found


def test_a_part_without_a_size_is_not_said_to_fit() -> None:
    found = only(boat(part("inverter", size=(math.nan,) * 3)))
    assert not found.sized
    assert not found.good
    assert math.isnan(found.through)


def test_the_heat_of_each_part_is_that_of_the_run() -> None:
    """The inverter's, the transformer's and the bank's losses of the night add up to what the night's summary says."""
    items = (INVERTER, part("transformer", "T3"), part("battery_module", "G1"))
    it = boat(*items)
    simulation = runs(it)
    heats, night = Heats(it, simulation), simulation.night
    inverter, transformer, bank = (float(heats.of(item)[0].sum()) * night.step for item in items)
    assert inverter == pytest.approx(float(night.summary.inverter_loss[0]), rel=1e-6)
    assert transformer == pytest.approx(float(night.summary.transformer_loss[0]), rel=0.01)
    cells = night.series.bank_temperature[0]
    stored = it.bank.heat_capacity * float(cells[-1] - it.bank.temperature)
    assert bank == pytest.approx(float(night.summary.bank_loss[0]) - stored, rel=0.05, abs=2e4)


def test_the_heat_of_a_charger_is_what_it_takes_less_what_it_gives() -> None:
    plan = boats.plan(1, 2)
    ashore = (replace(plan[0], doing=Doing.ON_SHORE_POWER), *plan[1:])
    it = boat(CHARGER, plan=ashore)
    heats = Heats(it, runs(it))
    charger, given = it.charger, runs(it).day.series.charger[0]
    assert charger is not None
    assert given.max() > 0.0
    k = int(np.argmax(given))
    out = float(given[k])
    taken = converter_input(out, charger.rated_power, charger.no_load_power, charger.linear, charger.quadratic)
    assert heats.of(CHARGER)[1][k] == pytest.approx(taken - out)
    assert heats.of(CHARGER)[1][int(np.argmin(given))] == 0.0


def test_the_air_of_a_space_by_hand() -> None:
    """The hottest hour, worked out from the series: mean heat over walls and airflow, on the mean air outside."""
    it = boat(INVERTER)
    found = fitted(it).spaces[0].heat
    best = -math.inf
    simulation = runs(it)
    for run in (simulation.night, simulation.day, simulation.recharge):
        assert run is not None
        lost = run.series.inverter_input[0] - run.series.inverter_output[0]
        for k in range(60, run.clock.size + 1):
            around, heat = float(run.series.air[0, 0, k - 60 : k].mean()), float(lost[k - 60 : k].mean())
            density = 101_325.0 / (287.042 * (around + 273.15))
            best = max(best, around + heat / (4.0 + density * 1006.0 * 0.03))
    assert found.air == pytest.approx(best, abs=0.01)


def test_a_shut_space_is_warmer() -> None:
    shut, open_ = boats.space(airflow=0.0), boats.space(airflow=0.1)
    assert only(boat(INVERTER, spaces=(shut,))).air > only(boat(INVERTER, spaces=(open_,))).air


def test_a_space_in_no_compartment_has_no_temperature() -> None:
    found = only(boat(INVERTER, spaces=(boats.space(cabin=-1),)))
    assert math.isnan(found.air)
    assert math.isnan(found.spare)
    assert found.good


def test_cells_are_warmer_than_the_air_round_them() -> None:
    bank = part("battery_module", "G1")
    found = only(boat(bank))
    assert found.limit <= boats.bank().highest_charge_temperature


def test_other_spaces_are_offered_the_coolest_first() -> None:
    spaces = (
        boats.space("too small", opening=(0.1, 0.1)),
        boats.space("airy", airflow=0.1),
        boats.space("still", airflow=0.01),
    )
    found = fitted(boat(INVERTER, spaces=spaces))
    offered = places_for(INVERTER, found)
    assert [place.space.name for place in offered] == ["airy", "still"]
    assert offered[0].spare > offered[1].spare


def test_a_space_that_is_taken_is_not_offered() -> None:
    spaces = (boats.space("a"), boats.space("b", size=(0.45, 0.35, 0.5)))
    other = part("charger", "T2", space=1)
    found = fitted(boat(INVERTER, other, spaces=spaces))
    assert places_for(INVERTER, found) == ()


def test_a_part_in_no_space_is_offered_some() -> None:
    loose = part("inverter", space=-1)
    found = fitted(boat(loose))
    assert found.loose == (loose,)
    assert [place.space.name for place in places_for(loose, found)] == ["locker"]


def test_the_transformer_without_a_supply_gives_off_nothing() -> None:
    it = boat(part("transformer", "T3"))
    lost = Heats(it, runs(it)).of(it.items[0])[0]
    unit = it.transformer
    assert unit is not None
    drawn = runs(it).night.series.plant_power[0] + runs(it).night.forcing.ac_load[0]
    k = int(np.argmax(drawn))
    figures = (unit.rated_power, unit.core_loss, unit.copper_loss)
    assert lost[k] == pytest.approx(transformer_input(float(drawn[k]), *figures) - float(drawn[k]))
