"""The lead-acid bank beside the lithium one."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from anchorwatt.design.specification import LeadAcidBank
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.replaced_bank import LeadAcidNight, ReplacedBank, charging_current, replaced_bank
from tests.simulation import boats

AH = 3600.0
LEAD = LeadAcidBank(
    battery="flooded 6 V 225 Ah",
    series=4,
    parallel=2,
    nominal_voltage=24.0,
    capacity=450.0 * AH,
    peukert=1.25,
    usable_share=0.5,
    resistance=0.0044,
    full_voltage=25.4,
    empty_voltage=23.6,
    absorb_voltage=29.2,
    charge_rate=0.18 / 3600.0,
    charge_efficiency=0.85,
    cycle_life=900.0,
    mass=232.0,
)
BOAT = boats.boat(1, replaced=LEAD)
SIMULATION = Simulation(BOAT)


def compared(**changes: float) -> ReplacedBank:
    found = replaced_bank(replace(BOAT, replaced=replace(LEAD, **changes)), SIMULATION)  # type: ignore[arg-type]
    assert found is not None
    return found


def lead(**changes: float) -> LeadAcidNight:
    return compared(**changes).lead_acid


def test_none_is_named_none_is_compared() -> None:
    assert replaced_bank(replace(BOAT, replaced=None), SIMULATION) is None


def test_the_night_is_that_of_the_lithium_bank() -> None:
    found, night = lead(), SIMULATION.night
    assert found.power == pytest.approx(float(night.summary.bank_out[0]) / (SIMULATION.dawn - SIMULATION.night_start))


def test_usable_share_at_the_nights_current_carries_the_power_for_the_hold() -> None:
    found = lead()
    assert found.usable_energy / found.power == pytest.approx(found.hold, rel=1e-9)
    assert found.holds == (found.hold >= BOAT.brief.hold)


def test_a_larger_exponent_gives_less_at_more_than_the_20_h_rate() -> None:
    small = {"capacity": 200.0 * AH}
    assert lead(peukert=1.35, **small).usable_energy < lead(peukert=1.1, **small).usable_energy


def test_twice_the_battery_holds_more_than_twice_as_long_by_peukert() -> None:
    one, two = (
        lead(capacity=n * 150.0 * AH, resistance=0.0044 / n, mass=n * 77.0, charge_rate=LEAD.charge_rate)
        for n in (1, 2)
    )
    assert two.hold >= 2.0 * one.hold * (1.0 - 1e-9)


def test_the_strings_needed_hold_the_night() -> None:
    found = lead()
    share = found.strings_needed / LEAD.parallel
    there = lead(capacity=share * LEAD.capacity, resistance=LEAD.resistance / share)
    assert there.hold == pytest.approx(BOAT.brief.hold, rel=1e-3)


def test_a_charge_that_stopped_early_holds_less() -> None:
    found = lead()
    assert found.hold_unfilled == pytest.approx(found.hold * (0.5 - 0.15) / 0.5)


def test_the_recharge_takes_ever_longer_and_longer_than_lithium() -> None:
    both = compared()
    times = [time for _, time in both.lead_acid.recharge]
    assert times == sorted(times)
    assert times[-1] > both.lithium.recharge_time


def test_alternators_too_small_for_the_bank_hold_its_recharge_back() -> None:
    one = replace(BOAT, engines=(boats.engine((replace(boats.alternator(), current_limit=30.0),)),))
    weak = replaced_bank(one, Simulation(one))
    assert weak is not None
    assert weak.lead_acid.available < 31.0
    assert weak.lead_acid.recharge[0][1] > lead().recharge[0][1]


def test_without_alternators_no_time_is_told() -> None:
    bare = replace(BOAT, engines=(boats.engine(),))
    found = replaced_bank(bare, Simulation(bare))
    assert found is not None
    assert math.isnan(charging_current(None))
    assert all(math.isnan(time) for _, time in found.lead_acid.recharge)
    assert math.isnan(found.lithium.recharge_time)


def test_lithium_gives_back_more_of_what_goes_in() -> None:
    both = compared()
    assert 0.6 < both.lead_acid.efficiency < 0.85
    assert 0.9 < both.lithium.efficiency < 1.0


def test_shallow_nights_are_more_cycles() -> None:
    found = lead()
    deep = lead(capacity=found.taken / 0.5)
    assert found.cycles > deep.cycles
    assert found.years == pytest.approx(found.cycles / BOAT.brief.nights_per_year)


def test_a_power_beyond_what_it_can_give_is_held_for_no_time() -> None:
    assert lead(resistance=2.0).hold == 0.0
