"""The seawater circuit of a plant, every gap filled."""

from __future__ import annotations

import math

from anchorwatt.catalogue.condensing_unit import CondensingUnit
from anchorwatt.design.cooling import SeawaterEntry
from anchorwatt.design.document import Key
from anchorwatt.design.hull import Hull
from anchorwatt.design.ledger import MEMORY, PRACTICE, Ledger
from anchorwatt.design.specification import SeaCircuit

HOSES = (0.016, 0.019, 0.025, 0.032, 0.038, 0.051, 0.064)
"""m; usual inside diameters of hose and through-hulls. The last is taken for through-hulls only. From memory."""

HOSE_VELOCITY = 1.5  # m/s; the lower end of 1.5 to 2, for the small pumps that such plants come with
BENDS = 4.0  # seacock, strainer, condenser, outlet
LENGTH_SHARE = 0.5  # of the boat's length, there and overboard
LIFT, LIFT_SHARE = 0.5, 0.5  # m, and share of the freeboard


def fill_seawater(seawater: SeawaterEntry | None, unit: CondensingUnit, hull: Hull, ledger: Ledger) -> SeaCircuit:
    """Hose, lift and through-hull of a plant's seawater."""
    given = seawater or SeawaterEntry()
    key: Key = ("cooling", "plant", "seawater")
    flow = float(unit.sea_flow)
    diameter = ledger.fill(
        given.hose_diameter,
        (*key, "hose_diameter"),
        hose_for(flow),
        "length",
        f"smallest usual hose up to {HOSE_VELOCITY:g} m/s at {unit.sea_flow.text}",
        f"{MEMORY}: 1.5 to 2 m/s in hose",
    )
    return SeaCircuit(
        length=ledger.fill(
            given.hose_length,
            (*key, "hose_length"),
            LENGTH_SHARE * hull.length,
            "length",
            f"{LENGTH_SHARE:.0%} of the boat's length, there and overboard",
            PRACTICE,
        ),
        diameter=diameter,
        bends=ledger.fill(
            given.bends,
            (*key, "bends"),
            BENDS,
            "",
            "seacock, strainer, condenser, outlet",
            PRACTICE,
        ),
        lift=ledger.fill(
            given.lift,
            (*key, "lift"),
            LIFT + LIFT_SHARE * hull.freeboard,
            "length",
            f"{ledger.show(LIFT, 'length')} and half of the freeboard",
            PRACTICE,
        ),
        through_hull=ledger.fill(
            given.through_hull,
            (*key, "through_hull"),
            next((size for size in HOSES if size > diameter * (1.0 + 1e-9)), diameter),
            "length",
            "one size over the hose",
            PRACTICE,
        ),
        condenser_loss=float(unit.condenser_loss),
        strainer_loss=float(unit.strainer_loss),
        pump_head=float(unit.pump_head),
    )


def hose_for(flow: float) -> float:
    """m of the smallest usual hose that keeps a flow in m3/s slow; the largest where none does.

    Example
    -------
    >>> hose_for(4e-4)
    0.019
    """
    slow = (size for size in HOSES[:-1] if flow <= HOSE_VELOCITY * math.pi / 4.0 * size * size)
    return next(slow, HOSES[-2])
