"""The same boat at 12, 24 and 48 V, figure by figure, with how each was found."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from anchorwatt.design.specification import Specification
from anchorwatt.physics.alternator import RECTIFIER_DROP
from anchorwatt.physics.engine import fuel_volume
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.conductors import BOAT_CABLE, ENGINE_SPACE
from anchorwatt.sizing.voltages import (
    ALTERNATOR_RUN,
    CHARGER_RUN,
    DROP_TEMPERATURE,
    HIGHEST_DROP,
    INVERTER_RUN,
    AtVoltage,
    at_voltages,
    own_voltage,
)
from anchorwatt.units import show

KERNEL = "the time kernel on the boat so rebuilt, minute by minute; see docs/theory"
TABLE_5 = "33 CFR 183.425 table 5 and its notes; resistances by IEC 60028"


def _share(value: float) -> str:
    return show(value, "share", "si", 1 if value < 0.1 else 2)


ASSUMPTIONS = (
    (
        "Bank: the same cells, and so the same energy and mass, with another number of them in series. The part of "
        "its resistance that is links and cables goes with that of the cells."
    ),
    (
        "Alternators: the same machines wound for the other voltage. Frame, copper, belt and heat stay, so the "
        f"current goes with one over the voltage; the rectifier's drop of {RECTIFIER_DROP:g} V (from memory) does "
        "not, and costs most at 12 V. Such a machine may not be on the market."
    ),
    "Inverter and charger: of the catalogue, the same size or the next, several side by side where one is too small.",
    (
        f"Main runs: one way {_share(ALTERNATOR_RUN)} of the boat's length from alternator to bank (through an engine "
        f"space of {ENGINE_SPACE:g} °C), {_share(INVERTER_RUN)} from bank to inverter, {_share(CHARGER_RUN)} from "
        f"charger to bank: estimates, from memory. Insulation of {BOAT_CABLE:g} °C. At full current they lose at most "
        f"{_share(HIGHEST_DROP)} of the nominal voltage and stay within their ampacity."
    ),
    "DC loads stay as they are: what a converter to their voltage would lose is not counted.",
)

CAUTIONS = (
    (
        "A bank of 16 cells is called 48 V but has 51.2 V nominal and charges near 57 V: above the 50 V to which "
        "ISO 13297 and the 33 CFR 183 rules for direct current reach. It can hold an arc and shock a wet hand: fuses, "
        "switches and breakers must be made for that DC voltage."
    ),
    "Cables carry hundreds of amperes at 12 V: every one needs its fuse at the bank, and every lug its torque.",
)


@dataclass(frozen=True)
class VoltageRow:
    """One figure at each voltage."""

    key: str  # JSON key, names its unit
    label: str
    dimension: str  # of the units room, or "money"
    unit: str  # of the JSON value, "" for money
    values: tuple[float, ...]
    how: str  # formula in words, and source


@dataclass(frozen=True)
class VoltageStory:
    """The boat at each voltage."""

    options: tuple[AtVoltage, ...]
    own: float  # V, the design's
    rows: tuple[VoltageRow, ...]
    currency: str  # of the price, "" = unknown
    assumptions: tuple[str, ...] = ASSUMPTIONS
    cautions: tuple[str, ...] = CAUTIONS


def _rows(options: tuple[AtVoltage, ...]) -> tuple[VoltageRow, ...]:
    def row(
        key: str, label: str, dimension: str, unit: str, how: str, value: Callable[[AtVoltage], float]
    ) -> VoltageRow:
        return VoltageRow(key, label, dimension, unit, tuple(value(one) for one in options), how)

    return (
        row(
            "drop_copper_kg",
            "copper of the main runs, for the drop alone",
            "mass",
            "kg",
            f"area for {_share(HIGHEST_DROP)} of the nominal voltage at full current, conductors at "
            f"{DROP_TEMPERATURE:g} °C, no standard size; Ohm's law, IEC 60028",
            lambda one: one.drop_copper,
        ),
        row(
            "copper_kg",
            "in standard sizes that carry the current too",
            "mass",
            "kg",
            f"smallest standard size that keeps drop and ampacity, out and back; {TABLE_5}",
            lambda one: one.copper,
        ),
        row(
            "cable_mass_kg",
            "the same with insulation",
            "mass",
            "kg",
            "copper and a share for insulation, from memory",
            lambda one: one.cable_mass,
        ),
        row(
            "cable_loss_W",
            "lost in them at full current",
            "power",
            "W",
            "current squared times resistance at the temperature that the current brings; IEC 60028",
            lambda one: one.cable_loss,
        ),
        row(
            "same_copper_loss_W",
            "lost with the design's own copper",
            "power",
            "W",
            "as above with the sizes that the design's own voltage needs; conductors that it overloads are counted at "
            "the limit of their insulation",
            lambda one: one.same_copper_loss,
        ),
        row(
            "alternator_efficiency_pct",
            "alternators' efficiency, cold, half load",
            "share",
            "%",
            f"the loss model of docs/theory, rewound: all losses for each watt kept but the rectifier's, "
            f"{RECTIFIER_DROP:g} V for each ampere",
            lambda one: one.alternator_efficiency,
        ),
        row(
            "charging_efficiency_pct",
            "the same while they recharge",
            "share",
            "%",
            f"electrical energy over shaft energy through the recharge; {KERNEL}",
            lambda one: one.charging_efficiency,
        ),
        row(
            "charging_power_W",
            "charging power, mean",
            "power",
            "W",
            f"energy of all alternators over the time of the recharge; {KERNEL}",
            lambda one: one.charging_power,
        ),
        row(
            "peak_charging_power_W",
            "charging power, highest",
            "power",
            "W",
            f"highest minute of all alternators; {KERNEL}",
            lambda one: one.peak_charging_power,
        ),
        row(
            "recharge_hours",
            "time to put the night back",
            "time",
            "h",
            f"from dawn until full, engines as the plan has them; {KERNEL}",
            lambda one: one.recharge_time,
        ),
        row(
            "recharge_fuel_added_L",
            "fuel added for it",
            "liquid volume",
            "L",
            f"fuel with the alternators less fuel without them, by the Willans line; {KERNEL}",
            lambda one: fuel_volume(one.fuel_added),
        ),
        row(
            "night_energy_kWh",
            "energy of the night",
            "energy",
            "kWh",
            f"at the bank's terminals, out less in; {KERNEL}",
            lambda one: one.night_energy,
        ),
        row("charge_at_dawn_pct", "left at dawn", "share", "%", KERNEL, lambda one: one.charge_at_dawn),
        row(
            "price",
            "inverter, charger and main cables",
            "money",
            "",
            "prices of the catalogue, which are invented; bank and alternators taken to cost the same",
            lambda one: one.price.amount,
        ),
    )


def voltage_story(specification: Specification, simulation: Simulation) -> VoltageStory:
    """The boat at each voltage."""
    options = at_voltages(specification, simulation)
    known = {one.price.currency for one in options if not math.isnan(one.price.amount)}
    return VoltageStory(
        options=options,
        own=own_voltage(specification),
        rows=_rows(options),
        currency=known.pop() if len(known) == 1 else "",
    )
