"""Dew, mould and the water out of the coils."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.specification import Specification
from tests.checks.changed import TWO_CABINS as BOAT
from tests.checks.changed import cabins, nobody
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats


def tropical_barn() -> Specification:
    """Plants of a hotel that dry a gale of outdoor air: hundreds of litres an hour."""
    handlers = tuple(boats.handler(f"handler {c}", c, 150e3) for c in range(2))
    return replace(
        cabins(BOAT, fresh_air=3.0),
        plant=boats.plant(boats.circuit(300e3, 80e3), handlers),
        plan=tuple(replace(period, set_points=(24.0, 24.0)) for period in BOAT.plan),
        bank=replace(boats.bank(capacity=2e5), discharge_current=1e5),
        inverter=replace(BOAT.inverter, rated_power=200e3),
        transformer=None,
    )


DRY = replace(nobody(BOAT), place=boats.place(replace(boats.DAY, dew_point=18.0)))
"""Nobody aboard and little dew outdoors."""
COLD_SEA = replace(BOAT, place=replace(BOAT.place, sea_temperatures=(17.0,) * 12))

CASES = {
    "condensate-drains": Case(BOAT, tropical_barn()),
    "surfaces-dry": Case(DRY, COLD_SEA),
    "surfaces-free-of-mould": Case(BOAT, COLD_SEA),
}
