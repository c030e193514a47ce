"""What the runs ask of the bank."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.bank_state import bank_state, bank_window, charger_and_sun
from tests.simulation import boats

BOAT = boats.boat(1)
STATE = bank_state(BOAT, Simulation(BOAT))


def test_what_is_usable_lies_within_what_is_stored() -> None:
    window = bank_window(BOAT)
    assert 0.0 < window.usable_energy < window.stored_energy
    assert window.usable_energy == pytest.approx(0.75 * window.stored_energy, rel=0.03)
    assert BOAT.bank.cut_off_voltage < window.rest_at_reserve < window.rest_at_start < BOAT.bank.absorb_voltage


def test_the_bank_warms_itself_while_it_is_charged_more_than_by_night() -> None:
    assert STATE.recharge is not None
    assert STATE.recharge.lost > 0.0
    assert STATE.recharge.hottest - STATE.recharge.first > STATE.night.hottest - STATE.night.first
    assert STATE.recharge.highest_current <= BOAT.bank.charge_current * (1.0 + 1e-9)


def test_a_cold_bank_stands_lower_under_load() -> None:
    cold = replace(BOAT, bank=replace(BOAT.bank, temperature=5.0))
    assert bank_state(cold, Simulation(cold)).voltage_at_reserve < STATE.voltage_at_reserve


def test_a_peak_that_the_bank_cannot_give_leaves_no_voltage() -> None:
    weak = replace(BOAT, bank=replace(BOAT.bank, resistance=2.0, aged_resistance=3.0))
    assert bank_state(weak, Simulation(weak)).voltage_at_reserve == 0.0


def test_charger_and_sun_add() -> None:
    sunny = replace(BOAT, solar=boats.SUNNY)
    assert BOAT.charger is not None
    sun = boats.SUNNY.peak_power * boats.SUNNY.delivered_share
    assert charger_and_sun(sunny) == pytest.approx((BOAT.charger.rated_power + sun) / BOAT.bank.nominal_voltage)
    assert charger_and_sun(replace(sunny, shore=None)) == pytest.approx(sun / BOAT.bank.nominal_voltage)
    assert charger_and_sun(replace(BOAT, charger=None)) == 0.0


def test_without_alternators_nothing_is_said_of_a_recharge() -> None:
    bare = replace(BOAT, engines=(boats.engine(),))
    state = bank_state(bare, Simulation(bare))
    assert state.recharge is None
    assert state.alternators == 0.0
