"""How a lithium bank is installed."""

from __future__ import annotations

from dataclasses import replace

from anchorwatt.design.installation import Installation
from anchorwatt.design.specification import Converter, CutOff, EngineBattery, Specification
from anchorwatt.units.fields import Length
from anchorwatt.units.reading import parse
from tests.checks.changed import ONE_CABIN as BOAT
from tests.checks.found import Told
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats

WHOLE = (
    CutOff("overvoltage", "voltage", 29.2, "voltage", "charge", "by itself"),
    CutOff("undervoltage", "voltage", 20.0, "voltage", "discharge", "by hand"),
    CutOff("current", "current", 400.0, "current", "both", "by hand"),
    CutOff("too hot", "temperature", 60.0, "temperature", "both", "by itself"),
)
ASKED = {
    "battery-tested": "tested_battery",
    "warning-before-shutdown": "warning",
    "charging-stops-before-disconnect": "charge_stop",
    "battery-switch": "battery_switch",
    "remote-switch-breaks-coil": "contactor_coil",
    "cell-gas-led-away": "vented",
    "battery-papers-aboard": "safety_papers",
}


def moved(text: str) -> Installation:
    length: Length = parse(text, "length")
    return Installation(battery_movement=length)


def managed(*limits: CutOff) -> Specification:
    return replace(BOAT, bank=replace(BOAT.bank, management=limits))


def alternator_at(volts: float) -> Specification:
    return replace(BOAT, engines=(boats.engine((boats.alternator(volts=volts),)),))


def bank_in(cabin: int) -> Specification:
    engine = replace(boats.engine((boats.alternator(),)), cabin=0)
    return replace(BOAT, bank=replace(BOAT.bank, cabin=cabin), engines=(engine,))


def with_engine_battery() -> Specification:
    converter = Converter("dc-dc", 500.0, 2.0, 0.04, 0.03, 0.0, *boats.OVERLOAD, 2.0, -1)
    return replace(BOAT, engine_battery=EngineBattery(converter, 10.0, 5000.0, 2.0, 12.0))


TWO = boats.boat(2)
APART = replace(
    TWO,
    bank=replace(TWO.bank, cabin=1),
    engines=(replace(boats.engine((boats.alternator(),)), cabin=0),),
)
CASES = {
    "management-envelope": Case(Told(managed(*WHOLE)), Told(managed(*WHOLE[:2]))),
    "charge-sources-suit-bank": Case(Told(alternator_at(28.2)), Told(alternator_at(29.4))),
    "bank-out-of-engine-space": Case(Told(APART), Told(bank_in(0)), Told()),
    "bank-restrained": Case(Told(said=moved("5 mm")), Told(said=moved("30 mm")), Told()),
    "vital-loads-second-source": Case(Told(with_engine_battery()), Told()),
    **{
        name: Case(Told(said=Installation(**{key: True})), Told(said=Installation(**{key: False})), Told())
        for name, key in ASKED.items()
    },
}
