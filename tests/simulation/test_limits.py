"""What the bank's temperature, the inverter's rating and the compartment's heat take away."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from anchorwatt.design.specification import Bank, Specification
from anchorwatt.simulation.forcing import recharge_stretch
from anchorwatt.simulation.runs import Run, Simulation
from tests.simulation import boats

HOUR = 3600.0


def with_bank(**changes: object) -> Specification:
    made = boats.boat(2)
    return replace(made, bank=replace(made.bank, **changes))  # type: ignore[arg-type]


@cache
def plain() -> Simulation:
    return Simulation(boats.boat(2))


def recharge(simulation: Simulation) -> Run:
    run = simulation.recharge
    assert run is not None
    return run


def test_a_frozen_bank_is_not_charged() -> None:
    """At -5 °C the alternators carry the loads and nothing more; the night itself goes on."""
    frozen = Simulation(with_bank(temperature=-5.0, heat_capacity=1e9))
    assert (recharge(frozen).series.current[0] >= -1e-9).all()
    assert math.isnan(float(recharge(frozen).summary.full_at[0]))
    assert float(frozen.night.summary.unserved_energy[0]) == 0.0


def test_a_bank_above_its_limit_disconnects() -> None:
    hot = Simulation(with_bank(temperature=61.0, heat_capacity=1e9))
    assert float(hot.night.summary.unserved_energy[0]) > 0.0
    assert float(hot.night.series.inverter_output[0, 5]) == 0.0


def test_the_last_kelvins_bring_the_charging_current_down() -> None:
    cool, warm = (Simulation(with_bank(temperature=t, heat_capacity=1e9, charge_current=200.0)) for t in (30.0, 43.0))
    wanted = 0.4 * warm.specification.bank.charge_current
    assert -recharge(warm).series.current[0].min() == pytest.approx(
        wanted, rel=1e-3
    )  # the cells warm a little meanwhile
    assert -recharge(cool).series.current[0].min() > wanted


def test_what_the_bank_loses_warms_it_and_leaves_it() -> None:
    """J lost in the cells = J held by them + J given to what is round them, over night and recharge."""
    simulation = Simulation(with_bank(heat_capacity=60e3, heat_conductance=3.0))
    bank = simulation.specification.bank
    for run, before in ((simulation.night, simulation.before), (recharge(simulation), simulation.night)):
        cells = np.r_[float(before.end.cells[0]), run.series.bank_temperature[0]]
        held = bank.heat_capacity * (cells[-1] - cells[0])
        share = bank.heat_conductance * run.step / bank.heat_capacity
        # The mean of an exponential through a step lies at this share of the way from its start to its end.
        part = 1.0 / share - 1.0 / math.expm1(share)
        mean = cells[:-1] + (1.0 - part) * (cells[1:] - cells[:-1])
        given = float(bank.heat_conductance * (mean - bank.temperature).sum() * run.step)
        assert float(run.summary.bank_loss[0]) == pytest.approx(held + given, rel=1e-6)
    assert float(recharge(simulation).summary.hottest_bank[0]) > bank.temperature


def test_a_bank_in_a_compartment_follows_its_air() -> None:
    simulation = Simulation(with_bank(cabin=1, heat_conductance=50.0, heat_capacity=20e3))
    night = simulation.night
    apart = night.series.bank_temperature[0] - night.series.air[0, 1]
    assert np.abs(apart).max() < 3.0
    s = night.summary
    assert float(s.heat_in[0] - s.heat_stored[0]) == pytest.approx(0.0, abs=1e-6 * float(s.sensible_energy[0].sum()))


def test_warm_cells_resist_less_than_cold_ones() -> None:
    lost = [
        float(Simulation(with_bank(temperature=t, heat_capacity=1e9)).night.summary.bank_loss[0])
        for t in (5.0, 25.0, 40.0)
    ]
    assert lost[0] > 2.0 * lost[1] > 2.0 * lost[2]


def overloaded(rated: float, times: tuple[float, ...], **changes: object) -> Simulation:
    made = boats.boat(2)
    inverter = replace(
        made.inverter,
        rated_power=rated,
        overload_shares=(1.2, 1.5, 2.0)[: len(times)],
        overload_times=times,
        **changes,  # type: ignore[arg-type]
    )
    return Simulation(replace(made, inverter=inverter))


def test_an_inverter_bears_an_overload_for_its_time_and_then_trips() -> None:
    """The night begins between 100 and 120 % of this rating: the trip comes when that share's time is used."""
    first = plain().night.series.inverter_output[0, :25]
    rated = float(first.max()) / 1.19
    assert rated < first.min()
    bears = overloaded(rated, (20.0 * 60.0, 60.0, 3.0))
    lost_at = float(bears.night.summary.lost_at[0])
    assert lost_at == pytest.approx(19.0 * 60.0, abs=60.0)
    assert float(overloaded(rated, ()).night.summary.lost_at[0]) == 0.0
    assert float(bears.night.summary.unserved_energy[0]) > 0.0


def test_heat_takes_from_the_inverter_s_rating() -> None:
    peak = float(plain().night.summary.peak_inverter_power[0])
    made = boats.boat(2)

    def lost(full_to: float) -> float:
        inverter = replace(
            made.inverter, rated_power=1.02 * peak, cabin=1, full_to=full_to, derating=0.02, overload_shares=(),
            overload_times=(),
        )  # fmt: skip
        return float(Simulation(replace(made, inverter=inverter)).night.summary.unserved_energy[0])

    assert lost(60.0) == 0.0
    assert lost(10.0) > 0.0


def test_an_inverter_too_hot_gives_nothing() -> None:
    made = boats.boat(2)
    inverter = replace(made.inverter, cabin=1, highest_air=15.0)
    night = Simulation(replace(made, inverter=inverter)).night
    assert float(night.summary.inverter_energy[0]) < 0.05 * float(plain().night.summary.inverter_energy[0])


def in_compartment(air_temperature: float, blower: float) -> Simulation:
    made = boats.boat(2)
    engine = replace(made.engines[0], cabin=1, air_temperature=air_temperature, blower=blower, block_conductance=40.0)
    return Simulation(replace(made, engines=(engine,)))


def test_alternators_breathe_their_compartment_s_air() -> None:
    """With no temperature typed a stuffy compartment holds the alternators down; a blower helps."""
    stuffy, aired = (recharge(in_compartment(math.nan, blower)) for blower in (0.0, 0.3))
    assert stuffy.series.air[0, 1].max() > aired.series.air[0, 1].max() + 5.0
    first = slice(0, 40)
    assert stuffy.series.alternator_frame[0, 0, first].max() > aired.series.alternator_frame[0, 0, first].max()


def test_a_running_engine_draws_its_air_through_its_compartment() -> None:
    simulation = in_compartment(50.0, 0.0)
    run = recharge(simulation)
    engine = simulation.specification.engines[0]
    speed = float(run.forcing.engine_speed[0, 0, 0])
    swept = 0.9 * engine.displacement * speed / (4.0 * math.pi)
    flows = run.forcing.outdoor_flow[0][run.forcing.film_row[0]]
    assert flows[1] - flows[0] == pytest.approx(1.16 * swept, rel=0.05)


def test_recharge_at_the_plan_s_own_speed_is_the_recharge() -> None:
    simulation = plain()
    speeds = tuple(float(s) for s in recharge(simulation).forcing.engine_speed[0, :, 0])
    same = simulation.recharge_at(speeds, propelling=True)
    assert same is not None
    assert float(same.summary.full_at[0]) == float(recharge(simulation).summary.full_at[0])
    assert float(same.summary.fuel[0]) == float(recharge(simulation).summary.fuel[0])


def test_a_lost_alternator_leaves_the_engine_to_the_other() -> None:
    made = boats.boat(2)
    pair = boats.engine((boats.alternator("port"), boats.alternator("starboard")))
    two = Simulation(replace(made, engines=(pair,)))
    both, one = two.recharge_at(None, True), two.recharge_at(None, True, lost=(1,))
    assert both is not None
    assert one is not None
    assert float(one.summary.full_at[0]) > 1.5 * float(both.summary.full_at[0])
    assert one.series.alternator_current[0, 1].max() == 0.0
    single = recharge(plain())
    assert float(one.summary.full_at[0]) == pytest.approx(float(single.summary.full_at[0]), rel=0.02)


def test_an_hour_run_hot_gives_more_and_cooks_the_winding() -> None:
    simulation = plain()
    held, hot = simulation.charging_hour(hold=True), simulation.charging_hour(hold=False)
    assert held is not None
    assert hot is not None
    assert float(hot.summary.alternator_energy[0]) > 1.05 * float(held.summary.alternator_energy[0])
    assert float(hot.summary.hottest_winding[0]) > float(held.summary.hottest_winding[0]) + 5.0
    assert np.ptp(held.series.charge[0]) < 1e-4
    # 60 s once more: the two agree until the held temperature is met.
    assert held.series.alternator_current[0, 0, 0] == pytest.approx(hot.series.alternator_current[0, 0, 0])


def test_a_bank_that_aged_holds_for_less() -> None:
    simulation = plain()
    night, hold = simulation.aged(0.75, 1.5)
    assert float(hold.summary.reserve_at[0]) < 0.78 * float(simulation.hold.summary.reserve_at[0])
    assert float(night.end.charge[0]) < float(simulation.night.end.charge[0])
    same, _ = simulation.aged(1.0, 1.0)
    assert float(same.end.charge[0]) == float(simulation.night.end.charge[0])


def test_the_week_begins_with_the_night_and_ends_with_an_evening() -> None:
    simulation = plain()
    week, night = simulation.week(), simulation.night
    assert week.clock[-1] - week.start == 7.0 * 24.0 * HOUR
    hours = night.series.charge.shape[1]
    assert week.series.charge[0, :hours] == pytest.approx(night.series.charge[0], abs=1e-9)


def test_at_anchor_only_the_charging_time_turns_the_engine() -> None:
    simulation = plain()
    idle, charged = simulation.week(0.0, at_anchor=True), simulation.week(1.5 * HOUR, at_anchor=True)
    assert float(idle.summary.fuel[0]) == 0.0
    turning = charged.forcing.engine_speed[0, 0] > 0.0
    assert turning.sum() * charged.step == pytest.approx(7.0 * 1.5 * HOUR)
    first = charged.clock[turning][0]
    assert first == pytest.approx(32.0 * HOUR + charged.step)  # eight in the morning after the first night
    assert float(charged.series.charge[0].mean()) > float(idle.series.charge[0].mean()) + 0.05


def test_full_is_where_only_the_tail_is_left() -> None:
    """The charger's voltage over the resting voltage, through the resistance, is the tail's current."""
    made = with_bank(absorb_voltage=8 * 3.40)
    simulation = Simulation(replace(made, brief=replace(made.brief, charge_at_start=1.0)))
    bank: Bank = made.bank
    full = simulation.full_charge
    resting = 8 * float(np.interp(full, bank.charge_points, bank.open_circuit_voltages))
    assert (bank.absorb_voltage - resting) / bank.resistance >= bank.tail_current
    beyond = 8 * float(np.interp(full + 0.002, bank.charge_points, bank.open_circuit_voltages))
    assert (bank.absorb_voltage - beyond) / bank.resistance < bank.tail_current
    assert recharge_stretch(made, simulation.dawn) is not None


def test_no_minute_lifts_the_bank_over_its_absorb_voltage() -> None:
    """On the steep end of the curve a whole minute at the full current would; the charger holds the voltage."""
    made = with_bank(absorb_voltage=8 * 3.45)
    simulation = Simulation(replace(made, bank=replace(made.bank, capacity=300.0 * HOUR)))
    run = simulation.recharge_at(None, propelling=True)
    assert run is not None
    bank = simulation.specification.bank
    assert run.series.voltage[0].max() <= bank.absorb_voltage + 1e-6
    end = simulation.run(
        "on", run.clock[-1], run.clock[-1] + 3.0 * HOUR, run.end, held=recharge_stretch(made, simulation.dawn)
    )
    assert end.series.voltage[0].max() <= bank.absorb_voltage + 1e-6
    assert end.series.charge[0, -1] > run.series.charge[0, -1] - 0.02
