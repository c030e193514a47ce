"""The night put back over engine speeds."""

from __future__ import annotations

import math
from collections import Counter
from dataclasses import replace
from functools import cache
from itertools import pairwise

import pytest

from anchorwatt.physics.propeller import propeller_demand
from anchorwatt.simulation.runs import Run, Simulation
from anchorwatt.sizing.recharge import (
    LIGHT_LOAD,
    MOST_SPEEDS,
    SpeedPoint,
    Sweep,
    Sweeps,
    different,
    recharge_sweeps,
    shares,
    speeds_at,
)
from tests.simulation import boats

RPM = math.pi / 30.0
ONE = boats.boat(1)
TWINS = replace(
    ONE,
    engines=(
        boats.engine((boats.alternator("port alternator"),), 55e3, "port engine"),
        boats.engine((boats.alternator("starboard alternator", 120.0),), 55e3, "starboard engine"),
    ),
)


class Counting(Simulation):
    """A simulation that counts what it is asked for."""

    asked: Counter[tuple[object, ...]]

    def recharge_at(
        self, engine_speeds: tuple[float, ...] | None, propelling: bool, lost: tuple[int, ...] = ()
    ) -> Run | None:
        self.asked[engine_speeds, propelling, lost] += 1
        return super().recharge_at(engine_speeds, propelling, lost)


@cache
def made(twins: bool = False) -> tuple[Sweeps, Counter[tuple[object, ...]]]:
    specification = TWINS if twins else ONE
    simulation = Counting(specification)
    simulation.asked = Counter()
    sweeps = recharge_sweeps(specification, simulation)
    assert sweeps is not None
    return sweeps, simulation.asked


def test_speeds_go_from_idle_to_rated_by_round_steps() -> None:
    engine = ONE.engines[0]
    speeds = [share * engine.rated_speed / RPM for share in shares(ONE)]
    assert speeds[0] == pytest.approx(700.0)
    assert speeds[-1] == pytest.approx(2600.0)
    assert len(speeds) <= MOST_SPEEDS
    steps = [b - a for a, b in pairwise(speeds[1:-1])]
    assert steps == pytest.approx([steps[0]] * len(steps))
    assert steps[0] % 50.0 == pytest.approx(0.0, abs=1e-6)


def test_common_practice_mid_range_fills_the_bank_sooner_than_idle() -> None:
    """Common practice, no source: with the same current limits, more speed in mid-range recharges faster than idle."""
    points = made()[0].at_anchor.points
    idle, middle = points[0], points[len(points) // 2]
    assert middle.full_at < idle.full_at
    assert middle.mean_current > idle.mean_current


def test_common_practice_nothing_is_left_for_the_alternators_at_full_throttle() -> None:
    """Common practice, no source: the engine has power to spare in mid-range, none when the propeller has it all."""
    points = made()[0].under_way.points
    assert points[-1].mean_current == 0.0
    assert not points[-1].fills
    assert max(points, key=lambda point: point.mean_current) not in (points[0], points[-1])


def test_at_anchor_the_boat_stands_and_under_way_it_moves_with_the_engine() -> None:
    sweeps, engine = made()[0], ONE.engines[0]
    assert {point.boat_speed for point in sweeps.at_anchor.points} == {0.0}
    for point in sweeps.under_way.points:
        assert point.boat_speed == pytest.approx(engine.boat_speed * point.engine_speeds[0] / engine.rated_speed)


def test_added_fuel_is_part_of_what_is_burnt() -> None:
    for sweep in (made()[0].at_anchor, made()[0].under_way):
        for point in sweep.points:
            if point.fills:
                assert 0.0 < point.fuel_added < point.fuel_burnt
                assert 0.0 <= point.mostly_filled_at <= point.full_at
                assert sum(point.held) == pytest.approx(1.0)
                assert point.peak_current >= point.mean_current


def test_the_load_under_way_is_the_propellers_where_nothing_is_charged() -> None:
    engine, last = ONE.engines[0], made()[0].under_way.points[-1]
    demand = propeller_demand(engine.rated_speed, engine.rated_speed, engine.propeller_power, engine.propeller_exponent)
    assert last.load_share == pytest.approx(demand / engine.rated_power)


def test_a_single_alternator_cannot_be_lost_and_still_charge() -> None:
    assert made()[0].at_anchor_one_lost is None
    assert made()[0].under_way_one_lost is None


def test_the_alternator_that_is_worst_to_lose_is_the_larger() -> None:
    """Which is then the slower of the two, at every speed that fills."""
    lost = made(twins=True)[0].at_anchor_one_lost
    assert lost is not None
    assert lost.lost == "port alternator"
    for point, with_both in zip(lost.points, made(twins=True)[0].at_anchor.points, strict=True):
        assert point.full_at > with_both.full_at


def test_at_anchor_an_engine_that_charges_nothing_stands_still_and_under_way_it_turns() -> None:
    share = 0.5
    assert speeds_at(TWINS.engines, share, False, (0,)) == (0.0, share * TWINS.engines[1].rated_speed)
    assert speeds_at(TWINS.engines, share, True, (0,)) == tuple(share * e.rated_speed for e in TWINS.engines)


def test_no_engine_turns_below_its_idle() -> None:
    slow = replace(TWINS.engines[1], idle_speed=900.0 * RPM)
    speeds = speeds_at((TWINS.engines[0], slow), 700.0 / 2600.0, True, ())
    assert speeds == pytest.approx((700.0 * RPM, 900.0 * RPM))


def test_the_engine_without_a_working_alternator_is_the_lightly_loaded_one() -> None:
    lost = made(twins=True)[0].under_way_one_lost
    assert lost is not None
    engine = TWINS.engines[0]
    first = lost.points[0]
    demand = propeller_demand(
        first.engine_speeds[0], engine.rated_speed, engine.propeller_power, engine.propeller_exponent
    )
    able = 0.15 * engine.rated_power + (700.0 / 2600.0 - 0.25) / 0.05 * 0.05 * engine.rated_power
    assert first.load_share == pytest.approx(demand / able)


@pytest.mark.parametrize("twins", [False, True])
def test_no_run_is_made_twice(twins: bool) -> None:
    asked = made(twins)[1]
    assert max(asked.values()) == 1


def test_of_alternators_alike_on_one_engine_one_is_lost() -> None:
    pair = boats.engine((boats.alternator("upper"), boats.alternator("lower"), boats.alternator("small", 90.0)))
    assert different((pair,)) == (0, 2)
    assert different(TWINS.engines) == (0, 1)


def test_a_boat_without_alternators_has_no_sweep() -> None:
    bare = replace(ONE, engines=(boats.engine(()),))
    assert recharge_sweeps(bare, Simulation(bare)) is None


def point(speed: float, full_at: float, fuel: float, load: float = 0.5) -> SpeedPoint:
    held = (0.0, 1.0, 0.0, 0.0, 0.0, 0.0)
    return SpeedPoint((speed,), 0.0, 100.0, 120.0, 0.8 * full_at, full_at, 0.5 * fuel, fuel, 100.0, held, load)


def sweep(*points: SpeedPoint, allowed: float = 4.0 * 3600.0) -> Sweep:
    return Sweep(False, "", points, allowed)


def test_the_recommended_is_in_time_well_loaded_and_near_the_least_fuel() -> None:
    late, light = point(70.0, 5.0 * 3600.0, 0.001), point(300.0, 1.0 * 3600.0, 0.002, LIGHT_LOAD - 0.01)
    frugal, quick, thirsty = point(90.0, 9000.0, 0.0040), point(120.0, 7000.0, 0.0041), point(200.0, 5000.0, 0.0060)
    found = sweep(late, frugal, quick, thirsty, light)
    assert found.recommended is quick
    assert found.quickest is light
    assert found.least_added is late


def test_where_all_are_light_or_late_that_is_said() -> None:
    light = point(100.0, 7000.0, 0.004, 0.1)
    assert sweep(light).recommended is light
    assert "lightly" in sweep(light).reason
    late = point(100.0, 5.0 * 3600.0, 0.004)
    assert sweep(late).recommended is late
    assert "no speed fills the bank in the time allowed" in sweep(late).reason


def test_where_none_fills_nothing_is_recommended() -> None:
    never = sweep(point(100.0, math.nan, math.nan))
    assert (never.quickest, never.least_added, never.recommended) == (None, None, None)
    assert never.reason == "no speed fills the bank within a day"
