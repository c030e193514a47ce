"""What a large lithium bank takes, as the trade has it."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
from tests.simulation import boats

from anchorwatt.design.specification import Specification
from anchorwatt.simulation.electric import HELD_BY_BANK
from anchorwatt.simulation.runs import Simulation

CAPACITY = 1200.0  # Ah at 12 V, charged at half of that an hour at most
RESERVE = 0.2


@cache
def simulation() -> Simulation:
    """The bank at its reserve at dawn, and two alternators of 250 A and 12 V on a large engine."""
    made: Specification = boats.boat(1)
    machine = replace(boats.alternator(rated=250.0, volts=14.2), current_limit=250.0, belt_power=9000.0)
    engine = boats.engine((replace(machine, name="port"), replace(machine, name="starboard")))
    bank = boats.bank(4, CAPACITY, charge_current=0.5 * CAPACITY)
    found = Simulation(replace(made, bank=bank, engines=(engine,)))
    found.night.end.charge[0] = RESERVE
    return found


def test_common_practice_no_source_a_large_lithium_bank_takes_all_of_two_250_a_alternators_for_most_of_the_charge() -> (
    None
):
    run = simulation().recharge
    assert run is not None
    assert not np.isnan(run.summary.full_at[0])
    held = run.held[0].sum(axis=0)
    assert held[HELD_BY_BANK] < 0.2 * held.sum()


def test_common_practice_no_source_while_a_bank_of_a_fifth_of_that_does_not() -> None:
    made = simulation().specification
    small = Simulation(replace(made, bank=boats.bank(4, CAPACITY / 5.0, charge_current=0.1 * CAPACITY)))
    small.night.end.charge[0] = RESERVE
    run = small.recharge
    assert run is not None
    held = run.held[0].sum(axis=0)
    assert held[HELD_BY_BANK] > 0.5 * held.sum()
