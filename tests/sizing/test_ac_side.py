"""Inverter, transformer, shore power and the small converters against the runs of a small boat."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from anchorwatt.design.fill_engine_battery import engine_battery_load
from anchorwatt.design.specification import Converter, EngineBattery, Period, Shore, Specification, Transformer
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.ac_side import AcSide, ac_side
from anchorwatt.sizing.converters import efficiency_of, given_for, hottest_air, rating_in, taken_by
from anchorwatt.sizing.shore import day_ashore, placed_on_legs
from tests.simulation import boats

HOUR = 3600.0
BOAT = boats.boat(1)
SPLIT = Shore("120/240 V 50 A", 120.0, 2, 60.0, 50.0, 50.0, 9600.0, 104.0)
SMALL_CONVERTER = Converter("dc-dc", 250.0, 5.0, 0.05, 0.04, 0.5, *boats.OVERLOAD, 1.0, -1)
BATTERY = EngineBattery(SMALL_CONVERTER, 4.0, 20e3, 2.0, 12.0)


@cache
def made(boat: Specification = BOAT) -> tuple[AcSide, Simulation]:
    simulation = Simulation(boat)
    return ac_side(boat, simulation), simulation


def figures(**changes: object) -> AcSide:
    return made(replace(BOAT, **changes))[0]  # type: ignore[arg-type]


def converter(**changes: object) -> Converter:
    return replace(BOAT.inverter, **changes)  # type: ignore[arg-type]


def shore(**changes: object) -> Shore:
    assert BOAT.shore is not None
    return replace(BOAT.shore, **changes)  # type: ignore[arg-type]


def transformer(**changes: object) -> Transformer:
    assert BOAT.transformer is not None
    return replace(BOAT.transformer, **changes)  # type: ignore[arg-type]


class TestConverters:
    def test_no_point_of_a_curve_is_better_than_its_best(self) -> None:
        found = efficiency_of(BOAT.inverter)
        assert all(point.efficiency <= found.best.efficiency for point in found.points)
        assert found.european < found.best.efficiency

    def test_in_no_compartment_it_keeps_its_rating(self) -> None:
        found = figures().inverter
        assert math.isnan(found.hottest_air)
        assert found.rating == found.rated_power

    def test_in_a_hot_compartment_it_gives_less(self) -> None:
        found = figures(inverter=converter(cabin=0, full_to=20.0)).inverter
        assert found.hottest_air > 20.0
        assert found.rating == pytest.approx(found.rated_power * (1.0 - 0.015 * (found.hottest_air - 20.0)))
        assert figures(inverter=converter(cabin=0, highest_air=21.0, full_to=20.0)).inverter.rating == 0.0

    def test_the_hottest_air_is_that_of_night_day_and_recharge(self) -> None:
        _, simulation = made()
        runs = [simulation.night, simulation.day, simulation.recharge]
        assert hottest_air(simulation, 0) == max(run.series.air[0, 0].max() for run in runs if run is not None)

    def test_an_inverter_gives_for_a_time_what_its_list_says(self) -> None:
        inverter = converter()
        given = {time: given_for(inverter, 1000.0, time) for time in (0.5, 3.0, 60.0, 1800.0, 7200.0)}
        assert given == {0.5: 2000.0, 3.0: 2000.0, 60.0: 1500.0, 1800.0: 1200.0, 7200.0: 1000.0}

    def test_a_step_within_the_rating_lasts_and_one_beyond_the_list_does_not(self) -> None:
        _, day = figures().inverter.steps
        assert math.isinf(day.lasts)
        _, over = figures(inverter=converter(rated_power=day.power / 1.3)).inverter.steps
        assert over.share == pytest.approx(1.3, rel=0.01)
        assert over.lasts == 60.0
        _, beyond = figures(inverter=converter(rated_power=day.power / 2.5)).inverter.steps
        assert beyond.lasts == 0.0

    def test_all_loads_at_once_are_more_than_their_mean(self) -> None:
        found = figures().inverter
        assert found.at_once.power > max(step.power for step in found.steps)

    def test_the_night_pays_the_no_load_loss_as_long_as_something_is_fed(self) -> None:
        found = figures().inverter
        assert found.no_load_energy == pytest.approx(BOAT.inverter.no_load_power * BOAT.brief.hold)
        assert found.no_load_energy < found.night_loss

    def test_with_loads_all_day_sleep_saves_nothing(self) -> None:
        """The galley's socket takes 50 W on average."""
        assert (figures().inverter.idle_time, figures().inverter.sleep_saving) == (0.0, 0.0)

    def test_without_loads_it_saves_what_it_takes_awake_when_the_plant_is_off(self) -> None:
        found = figures(loads=(BOAT.loads[0], replace(BOAT.loads[1], power=0.0))).inverter
        # Plant's controls, core loss and no-load loss, by day; the night is cooled.
        standby = BOAT.plant.standby_power + 35.0
        awake = taken_by(BOAT.inverter, standby)
        assert 9.0 * HOUR < found.idle_time < 15.0 * HOUR
        assert found.sleep_saving == pytest.approx((awake - BOAT.inverter.sleep_power) * found.idle_time, rel=0.02)

    def test_a_start_of_self_contained_units_asks_for_more(self) -> None:
        found = figures().inverter
        assert BOAT.alternative is not None
        unit = BOAT.alternative.units[0]
        assert found.alternative_start > (unit.starting_ratio - 1.0) * unit.circuit.rated_power
        assert math.isnan(figures(alternative=None).inverter.alternative_start)


class TestTransformer:
    def test_its_day_at_no_load_is_its_core_loss(self) -> None:
        found = figures().transformer
        assert found is not None
        assert found.no_load_energy == 35.0 * 24.0 * HOUR
        assert found.best.share == pytest.approx(math.sqrt(35.0 / 90.0))

    def test_a_soft_start_is_borne_and_a_hard_one_is_not(self) -> None:
        hard, soft = figures().transformer, figures(transformer=transformer(inrush=1.5)).transformer
        assert hard is not None
        assert soft is not None
        assert (hard.inrush_survived, soft.inrush_survived) == (False, True)
        assert hard.inrush == pytest.approx(10.0 * math.sqrt(2.0) * 4000.0 / 120.0)
        assert hard.inrush_on_breaker == pytest.approx(10.0 * 4000.0 / 120.0 / 30.0)

    def test_without_shore_there_is_no_breaker(self) -> None:
        found = figures(shore=None).transformer
        assert found is not None
        assert math.isnan(found.inrush_on_breaker)

    def test_an_autotransformer_transforms_a_part(self) -> None:
        found = figures(transformer=transformer(isolating=False, secondary_voltage=240.0)).transformer
        assert found is not None
        assert found.transformed_share == 0.5
        assert found.secondary_loaded < found.secondary_voltage == 240.0


class TestShore:
    def test_currents_times_voltage_are_the_power(self) -> None:
        for service in (shore(), SPLIT):
            found = figures(shore=service).shore
            assert found is not None
            assert sum(found.highest.legs) * service.voltage == pytest.approx(found.highest.power)

    def test_the_charger_takes_no_more_than_the_limit_leaves(self) -> None:
        limited = replace(BOAT, shore=shore(continuous_power=1200.0))
        run = day_ashore(limited, Simulation(limited))
        charging = run.series.charger[0] > 0.0
        assert charging.any()
        assert run.series.shore[0][charging].max() <= 1200.0 * (1.0 + 1e-9)
        found = figures(shore=limited.shore).shore
        assert found is not None
        assert found.held_by == "the shore limit"

    def test_a_transformer_of_both_legs_voltage_balances_them(self) -> None:
        found = figures(shore=SPLIT, charger=None, transformer=transformer(primary_voltage=240.0)).shore
        assert found is not None
        assert found.highest.legs[0] == found.highest.legs[1]
        assert found.highest.neutral == 0.0

    def test_a_transformer_on_one_leg_does_not(self) -> None:
        found = figures(shore=SPLIT, charger=None).shore
        assert found is not None
        assert found.highest.legs[1] == 0.0
        assert found.highest.neutral == found.highest.legs[0]

    def test_loads_go_largest_first_to_the_lighter_leg(self) -> None:
        items = [("kettle", 1500.0, False), ("hob", 2000.0, False), ("heater", 1000.0, False), ("plant", 900.0, True)]
        placed = {name: leg for name, _, leg in placed_on_legs(items, 2)}
        assert placed == {"hob": 0, "kettle": 1, "heater": 1, "plant": -1}

    def test_a_day_ashore_ends_fuller_than_its_reserve(self) -> None:
        simulation = made()[1]
        run = day_ashore(BOAT, simulation)
        assert run.series.charge[0, -1] > run.series.charge[0, 0]
        assert (run.series.inverter_output[0] == 0.0).all()

    def test_refill_takes_about_the_bank_over_the_charger(self) -> None:
        found = figures().shore
        assert found is not None
        assert BOAT.charger is not None
        missing = (BOAT.brief.charge_at_start - BOAT.brief.reserve) * BOAT.bank.capacity * BOAT.bank.nominal_voltage
        assert found.refill_time == pytest.approx(missing / BOAT.charger.rated_power, rel=0.15)
        assert found.held_by == "the charger"

    def test_less_limit_never_refills_sooner(self) -> None:
        times = []
        for power in (2880.0, 1200.0, 700.0):
            found = figures(shore=shore(continuous_power=power)).shore
            assert found is not None
            times.append(math.inf if math.isnan(found.refill_time) else found.refill_time)
        assert times == sorted(times)
        assert times[0] < times[-1]

    def test_what_is_left_and_what_loads_take_is_the_limit(self) -> None:
        found = figures().shore
        assert found is not None
        for period in found.periods:
            assert period.left + period.loads == pytest.approx(found.continuous_power)

    def test_in_a_sag_the_charger_gives_way_or_takes_longer(self) -> None:
        found = figures(shore=shore(lowest_voltage=110.0)).shore
        assert found is not None
        assert found.gives_way
        assert math.isnan(found.refill_time_in_sag)
        limited = figures(shore=shore(continuous_power=1200.0)).shore
        assert limited is not None
        assert not limited.gives_way
        assert limited.refill_time_in_sag > limited.refill_time

    def test_without_a_charger_it_never_refills(self) -> None:
        found = figures(charger=None).shore
        assert found is not None
        assert math.isnan(found.refill_time)
        assert found.held_by == ""


class TestSmallParts:
    def test_shade_takes_its_share_of_the_sun(self) -> None:
        clear = figures(solar=replace(boats.SUNNY, delivered_share=0.8)).sun
        shaded = figures(solar=replace(boats.SUNNY, delivered_share=0.4)).sun
        assert clear is not None
        assert shaded is not None
        assert shaded.offered == pytest.approx(0.5 * clear.offered)
        assert clear.offered == pytest.approx(0.8 * (clear.without_losses - clear.lost_to_heat))
        assert clear.taken <= clear.offered * (1.0 + 1e-9)

    def test_full_sun_hours_are_the_suns_energy(self) -> None:
        found, simulation = made(replace(BOAT, solar=boats.SUNNY))
        assert found.sun is not None
        sums = sum(
            np.trapezoid(run.forcing.panel_irradiance[0], dx=run.step) for run in (simulation.night, simulation.day)
        )
        assert found.sun.full_sun * 1000.0 == pytest.approx(float(sums), rel=1e-9)

    def test_a_charger_in_the_heat_gives_less_current(self) -> None:
        assert BOAT.charger is not None
        cool, hot = figures().charger, figures(charger=replace(BOAT.charger, cabin=0, full_to=10.0)).charger
        assert cool is not None
        assert hot is not None
        assert hot.current < cool.current == 1500.0 / BOAT.bank.absorb_voltage

    def test_the_engines_battery_costs_its_converters_losses_too(self) -> None:
        found = figures(
            engine_battery=BATTERY, loads=(*BOAT.loads, engine_battery_load(BATTERY)), plan=_longer()
        ).engine_battery
        assert found is not None
        assert found.mean_output == pytest.approx(4.0 + 40e3 / 86_400.0)
        assert found.taken == pytest.approx(engine_battery_load(BATTERY).power)
        assert found.taken > found.mean_output + 5.0
        assert found.refilled_after == pytest.approx(20e3 / 246.0)

    def test_the_night_carries_it(self) -> None:
        with_it = made(replace(BOAT, loads=(*BOAT.loads, engine_battery_load(BATTERY)), plan=_longer()))[1].night
        without = made()[1].night
        more = float(with_it.summary.dc_load_energy[0] - without.summary.dc_load_energy[0])
        assert more == pytest.approx(engine_battery_load(BATTERY).power * BOAT.brief.hold)

    def test_a_converter_that_cannot_even_feed_what_stands_never_puts_a_start_back(self) -> None:
        found = figures(engine_battery=replace(BATTERY, standing_load=300.0)).engine_battery
        assert found is not None
        assert math.isinf(found.refilled_after)

    def test_what_a_design_does_not_have_is_none(self) -> None:
        bare = figures(transformer=None, shore=None, charger=None)
        assert (bare.transformer, bare.shore, bare.charger, bare.sun, bare.engine_battery) == (None,) * 5


def test_rating_is_kept_where_the_air_is_not_known() -> None:
    assert rating_in(BOAT.inverter, math.nan) == BOAT.inverter.rated_power


def _longer() -> tuple[Period, ...]:
    return tuple(replace(period, running=(*period.running, 1.0)) for period in BOAT.plan)
