"""A generating set beside the design: balances, and what must follow when either changes."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.design.specification import Doing, Generator, Item, Specification
from anchorwatt.physics.engine import DIESEL_DENSITY, DIESEL_HEATING_VALUE
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.generator import (
    SLEEPERS_SHARE,
    GeneratorComparison,
    Way,
    all_night,
    carried,
    charger_of,
    compare,
    flow,
    heat_burnt,
)
from tests.simulation import boats

HOUR = 3600.0
SET = Generator(
    name="test set",
    rated_power=4000.0,
    efficiency=0.84,
    speed=1500 * boats.RPM,
    displacement=0.8e-3,
    indicated_efficiency=0.40,
    friction_pressure=70e3,
    lowest_load=0.3,
    noise=62.0,
    service_interval=200 * HOUR,
    service_price=300.0,
    life=5000 * HOUR,
    price=12_000.0,
    mass=240.0,
)
LOADS = st.lists(st.floats(0.0, 6000.0), min_size=1, max_size=60)


def staying(boat: Specification) -> Specification:
    """The boat with a plan that never motors."""
    plan = tuple(
        replace(period, doing=Doing.AT_ANCHOR, boat_speed=0.0) if period.doing is Doing.MOTORING else period
        for period in boat.plan
    )
    return replace(boat, plan=plan)


def boat(generator: Generator | None = SET, stays: bool = False, **changes: object) -> Specification:
    made = boats.boat(2, generator=generator, **changes)
    return staying(made) if stays else made


@cache
def found(generator: Generator = SET, stays: bool = False) -> GeneratorComparison:
    made = boat(generator, stays)
    comparison = compare(made, Simulation(made))
    assert comparison is not None
    return comparison


@cache
def night() -> Simulation:
    return Simulation(boat())


def way(key: str, comparison: GeneratorComparison | None = None) -> Way:
    one = (comparison or found()).way(key)
    assert one is not None
    return one


def test_without_a_set_there_is_nothing_to_compare() -> None:
    made = boat(None)
    assert compare(made, Simulation(made)) is None


def test_the_night_at_the_sets_terminals_is_what_the_loads_take_and_the_charger_loses() -> None:
    simulation = night()
    charger = charger_of(simulation.specification, SET)
    loads = carried(simulation.night, charger)
    series = simulation.night.series
    lost = loads - series.inverter_output[0] - series.dc_load[0]
    assert (lost >= charger.no_load_power - 1e-6).all()
    assert (lost <= charger.no_load_power + (charger.linear + charger.quadratic) * charger.rated_power).all()


def test_all_night_the_energy_balance_closes() -> None:
    """Fuel's heat x indicated share = friction + shaft work, minute by minute and so in sum."""
    simulation = night()
    loads = carried(simulation.night, charger_of(simulation.specification, SET))
    one = all_night(SET, loads, simulation.step)
    friction = SET.friction_pressure * SET.displacement * SET.speed / (4.0 * math.pi)
    shaft = float(np.sum(loads)) * simulation.step / SET.efficiency + friction * one.running
    heat = one.fuel * DIESEL_DENSITY * DIESEL_HEATING_VALUE
    assert heat * SET.indicated_efficiency == pytest.approx(shaft, rel=1e-9)
    assert one.running == one.by_night == pytest.approx(simulation.dawn - simulation.night_start)


@given(LOADS)
def test_it_never_burns_less_than_without_load_nor_more_than_at_its_rating(loads: list[float]) -> None:
    one = all_night(SET, np.array(loads), 60.0)
    burnt = one.fuel * DIESEL_DENSITY / one.running
    assert flow(SET, 0.0) * (1 - 1e-9) <= burnt <= flow(SET, SET.rated_power) * (1 + 1e-9)


@given(LOADS)
def test_light_and_heavy_minutes_are_counted_apart(loads: list[float]) -> None:
    one = all_night(SET, np.array(loads), 60.0)
    assert one.light == pytest.approx(np.mean([load < 1200.0 for load in loads]))
    assert one.over == pytest.approx(np.mean([load > 4000.0 for load in loads]))
    assert one.light + one.over <= 1.0 + 1e-12
    assert one.peak == max(loads)


def test_a_larger_set_burns_more_for_the_same_night_and_is_loaded_more_lightly() -> None:
    larger = replace(SET, rated_power=8000.0, displacement=1.6e-3)
    small, large = way("all-night"), way("all-night", found(larger))
    assert large.fuel > small.fuel
    assert large.mean_load == pytest.approx(0.5 * small.mean_load)


def test_recharging_runs_shorter_than_all_night_and_none_of_it_while_people_sleep() -> None:
    recharging = way("recharge")
    assert 0.0 < recharging.running < way("all-night").running
    assert recharging.by_night == 0.0
    assert recharging.mean_load > way("all-night").mean_load
    assert recharging.peak <= SET.rated_power * (1.0 + 1e-9)


def test_recharging_puts_back_what_the_engines_put_back() -> None:
    """Energy given is at least what came out of the bank, with the charger's losses on top."""
    recharging, simulation = way("recharge"), night()
    given_energy = recharging.mean_load * SET.rated_power * recharging.running
    assert given_energy > float(simulation.night.summary.bank_out[0])


def test_a_set_too_small_for_the_day_never_gets_there() -> None:
    tiny = way("recharge", found(replace(SET, rated_power=150.0)))
    assert math.isnan(tiny.running)
    assert math.isnan(tiny.fuel)


def test_under_way_only_what_the_alternators_add_counts() -> None:
    run = night().recharge
    assert run is not None
    under_way, at_anchor = way("under-way"), way("at-anchor")
    assert under_way.running == 0.0
    assert under_way.fuel * DIESEL_DENSITY == pytest.approx(float(run.summary.fuel_added[0]))
    assert at_anchor.running > 0.0
    assert at_anchor.fuel > under_way.fuel


def test_a_boat_that_never_motors_has_one_way_of_its_own_and_all_its_fuel_counts() -> None:
    comparison = found(stays=True)
    assert comparison.way("under-way") is None
    run = Simulation(boat(stays=True)).recharge
    assert run is not None
    assert way("at-anchor", comparison).fuel * DIESEL_DENSITY == pytest.approx(float(run.summary.fuel[0]))
    assert 0.0 < way("at-anchor", comparison).mean_load < 1.0


def test_a_boat_without_alternators_has_no_way_of_its_own() -> None:
    made = boat(engines=(boats.engine(()),))
    comparison = compare(made, Simulation(made))
    assert comparison is not None
    assert [one.key for one in comparison.ways] == ["all-night", "recharge"]


def test_a_year_is_its_nights() -> None:
    comparison, one = found(), way("all-night")
    assert comparison.fuel_per_year(one) == pytest.approx(comparison.nights * one.fuel)
    hours = comparison.nights * one.running / HOUR
    assert comparison.services_per_year(one) == pytest.approx(max(1.0, hours / 200.0))
    assert comparison.service_price_per_year(one) == pytest.approx(300.0 * comparison.services_per_year(one))
    assert comparison.years_of_life(one) == pytest.approx(5000.0 / hours)
    assert comparison.carbon_dioxide_per_year(one) == pytest.approx(2640.0 * comparison.fuel_per_year(one))


def test_a_set_that_hardly_runs_is_serviced_once_a_year_all_the_same() -> None:
    seldom = replace(found(), nights=1.0)
    assert seldom.services_per_year(way("recharge")) == 1.0


def test_the_engines_services_are_not_put_down_to_the_bank() -> None:
    assert math.isnan(found().services_per_year(way("at-anchor")))
    assert math.isnan(found().years_of_life(way("at-anchor")))


def test_noise_where_people_sleep_falls_with_distance_alone() -> None:
    comparison = found()
    assert comparison.distance == pytest.approx(SLEEPERS_SHARE * 14.0)
    assert comparison.level == pytest.approx(62.0 - 20.0 * math.log10(comparison.distance))


def test_a_boat_without_a_charger_gets_a_usual_one() -> None:
    made = boat(charger=None)
    usual = charger_of(made, SET)
    assert usual.rated_power == pytest.approx(0.5 * SET.rated_power)
    comparison = compare(made, Simulation(made))
    assert comparison is not None
    assert comparison.charger == usual.name
    assert not math.isnan(way("recharge", comparison).running)


def test_what_the_design_carries_for_it_is_told_with_its_price() -> None:
    def item(kind: str, mass: float, price: float, count: int = 1) -> Item:
        return boats.item(kind, kind, kind, count, mass, price, "EUR", -1)

    items = (item("battery_module", 40.0, 1000.0, 2), item("inverter", 25.0, 900.0), item("air_handler", 9.0, 700.0))
    made = boat(items=items)
    comparison = compare(made, Simulation(made))
    assert comparison is not None
    assert comparison.bank_mass == pytest.approx(105.0)
    assert comparison.bank_price == pytest.approx(2900.0)


def test_full_load_efficiency_is_output_over_heat() -> None:
    assert found().full_load_efficiency * heat_burnt(SET, 4000.0) == pytest.approx(4000.0)
    assert found().full_load_efficiency < SET.efficiency * SET.indicated_efficiency
