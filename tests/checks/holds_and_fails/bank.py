"""The bank."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from anchorwatt.design.specification import Specification
from tests.checks.changed import ONE_CABIN as BOAT
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats

CELLS = 8


def bank(**changes: Any) -> Specification:
    return replace(BOAT, bank=replace(BOAT.bank, **changes))


SMALL = replace(BOAT, bank=boats.bank(CELLS, 120.0, charge_current=60.0))

CASES = {
    "aged-bank-holds-night": Case(BOAT, SMALL),
    "warranted-bank-holds-night": Case(BOAT, SMALL),
    "bank-cycles-within-life": Case(BOAT, bank(cycle_life=60.0)),
    "bank-not-too-hot-to-charge": Case(BOAT, bank(temperature=50.0)),
    "bank-not-too-cold-to-charge": Case(BOAT, bank(temperature=-5.0)),
    "bank-not-too-hot-at-night": Case(BOAT, bank(temperature=65.0)),
    "bank-not-too-cold-at-night": Case(BOAT, bank(temperature=-25.0)),
    "bank-carries-peak": Case(BOAT, bank(discharge_current=20.0)),
    "voltage-at-reserve": Case(BOAT, bank(cut_off_voltage=CELLS * 3.16)),
    "reserve-above-cut-off": Case(BOAT, bank(cut_off_charge=0.3)),
    "charger-and-sun-within-bank": Case(BOAT, bank(charge_current=40.0)),
    "cells-have-room-to-differ": Case(BOAT, bank(absorb_voltage=CELLS * 3.62)),
    "float-rests-the-bank": Case(BOAT, bank(float_voltage=CELLS * 3.45)),
}
