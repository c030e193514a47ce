"""How the boat is wired, every gap filled."""

from __future__ import annotations

import math

from anchorwatt.catalogue.conductor import Conductor
from anchorwatt.catalogue.part import rows
from anchorwatt.design.document import Key
from anchorwatt.design.ledger import MEMORY, PRACTICE, Ledger
from anchorwatt.design.specification import CircuitWish, Regime, Wiring
from anchorwatt.design.wiring import CircuitEntry, WiringSection
from anchorwatt.units import Money

KEY: Key = ("wiring",)
KILOWATT_HOUR = 3.6e6  # J

INSULATION = 105.0  # °C, boat cable
ROUTING = 1.3  # over the distance along the axes, for frames and lockers that it goes round
SLACK = 0.5  # m
BUNDLED = 3
YEARS = 10.0
ENERGY_PRICE = 0.60  # of 1 kWh out of the bank: the fuel that puts it back at about 1.60 a litre
MASS_PRICE = 5.0  # of 1 kg carried


def fill_wiring(section: WiringSection | None, currency: str, ledger: Ledger) -> Wiring:
    """Rules, sizes, and what is laid down for single circuits."""
    given = section or WiringSection()
    regime = _regime(given, ledger)
    metric = regime is Regime.ISO if given.sizes is None else given.sizes == "metric"
    insulation = ledger.fill(given.insulation, (*KEY, "insulation"), INSULATION, "temperature", "boat cable", PRACTICE)
    sizes = [row for row in rows("conductor").values() if isinstance(row, Conductor) and (row.gauge is None) == metric]
    columns = sorted({float(one) for row in sizes for one in row.insulations})
    if not all(any(math.isclose(insulation, float(one)) for one in row.insulations) for row in sizes):
        ledger.refuse(
            (*KEY, "insulation"),
            f"insulation for {insulation:g} °C, which the sizes have no ampacity for",
            "one of: " + ", ".join(f"{one:g} °C" for one in columns),
        )
    return Wiring(
        regime=regime,
        metric=metric,
        insulation=insulation,
        routing_factor=ledger.fill(
            given.routing_factor,
            (*KEY, "routing_factor"),
            ROUTING,
            "",
            "round frames and lockers, over the distance along the axes",
            MEMORY,
        ),
        slack=ledger.fill(given.slack, (*KEY, "slack"), SLACK, "length", "both ends together", MEMORY),
        bundled=int(
            ledger.fill(given.bundled, (*KEY, "bundled"), BUNDLED, "", "two circuits that work at once", MEMORY)
        ),
        years=ledger.fill(given.years, (*KEY, "years"), YEARS, "", "until the next refit", PRACTICE),
        energy_price=_price(
            given.energy_price,
            "energy_price",
            ENERGY_PRICE,
            currency,
            "of 1 kWh: a third of a litre of fuel puts it back, at about 1.60 a litre",
            ledger,
        )
        / KILOWATT_HOUR,
        mass_price=_price(
            given.mass_price, "mass_price", MASS_PRICE, currency, "of 1 kg carried for those years", ledger
        ),
        wishes=tuple(_wish(tag, entry, metric, ledger) for tag, entry in given.circuits.items()),
    )


def _regime(given: WiringSection, ledger: Ledger) -> Regime:
    if given.regime is not None:
        return Regime(given.regime)
    regime = Regime.ABYC if ledger.system == "us" else Regime.ISO
    ledger.note(
        (*KEY, "regime"), regime.value, "by the units that the boat is measured in; ask insurer and surveyor", PRACTICE
    )
    return regime


def _price(typed: Money | None, name: str, estimate: float, currency: str, rule: str, ledger: Ledger) -> float:
    key: Key = (*KEY, name)
    if typed is None:
        ledger.note(key, f"{estimate:g} {currency}", rule, MEMORY)
        return estimate
    if typed.currency != currency:
        ledger.refuse(key, f"a price in {typed.currency}", f"one in the offer's {currency}")
    return float(typed.amount)


def _wish(tag: str, entry: CircuitEntry, metric: bool, ledger: Ledger) -> CircuitWish:
    if entry.conductor is not None and entry.conductor.endswith("mm²") != metric:
        ledger.refuse(
            (*KEY, "circuits", tag, "conductor"),
            f"{entry.conductor} where the boat is wired in {'mm²' if metric else 'gauges'}",
            "one system of sizes for a boat: see wiring.sizes",
        )
    return CircuitWish(
        tag=tag,
        length=math.nan if entry.length is None else float(entry.length),
        conductor=entry.conductor or "",
        parallel=entry.parallel or 0,
        fuse=math.nan if entry.fuse is None else float(entry.fuse),
        family=entry.family or "",
        bundled=entry.bundled or 0,
        highest_drop=math.nan if entry.highest_drop is None else float(entry.highest_drop),
        where=ledger.document.place((*KEY, "circuits", tag)),
    )
