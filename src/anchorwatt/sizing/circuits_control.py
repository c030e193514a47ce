"""Control and network cables, and bonding."""

from __future__ import annotations

from anchorwatt.sizing.circuit_list import CircuitList
from anchorwatt.sizing.circuits import FEEDER_DROP
from anchorwatt.sizing.ends import End
from anchorwatt.sizing.setting import Input

SIGNAL_VOLTAGE, SIGNAL_CURRENT = 12.0, 0.1
"""V and A of a signal or network cable with its supply. From memory."""

FIELD_POWER = 120.0
"""W of a large alternator's field at full excitation. From memory."""

SENSE_CURRENT = 0.5
"""A of a regulator's own supply and sensing. From memory."""


def control(made: CircuitList) -> None:
    """Put control and network cables on the list."""
    ends, nominal = made.ends, made.nominal
    estimated = Input("signal current", SIGNAL_CURRENT, "current", "estimated")
    for number, machine in enumerate(ends.alternators):
        regulator = ends.regulators[number]
        field = FIELD_POWER / nominal
        made.add(
            ends.dc_bus,
            regulator,
            f"regulator supply and sense, {machine.tag}",
            system="dc",
            voltage=nominal,
            continuous=SENSE_CURRENT + field,
            formula=f"field of {FIELD_POWER:g} W at full excitation over the voltage, and its own supply",
            inputs=(
                Input("field power", FIELD_POWER, "power", "estimated"),
                Input("own supply", SENSE_CURRENT, "current", "estimated"),
            ),
            highest_drop=FEEDER_DROP,
        )
        made.add(
            regulator,
            machine,
            f"field, {machine.tag}",
            system="dc",
            voltage=nominal,
            continuous=field,
            formula=f"field of {FIELD_POWER:g} W at full excitation over the voltage",
            inputs=(Input("field power", FIELD_POWER, "power", "estimated"),),
            highest_drop=FEEDER_DROP,
            source="none",
        )

    def signal(start: End, end: End, function: str) -> None:
        made.add(
            start,
            end,
            function,
            system="control",
            voltage=SIGNAL_VOLTAGE,
            continuous=SIGNAL_CURRENT,
            formula="a signal, or a network with its supply: from memory",
            inputs=(estimated,),
            source="none",
            bundled=1,
        )

    for thermostat in ends.thermostats:
        signal(thermostat, ends.plant, f"{thermostat.name} to plant")
    number = len(ends.thermostats)
    for regulator, machine in zip(ends.regulators, ends.alternators, strict=True):
        number += 1
        probe = ends.sensor(number, f"temperature probe, {machine.tag}", machine)
        signal(probe, regulator, f"temperature of {machine.tag}")
        signal(ends.management, regulator, f"charge permit to {regulator.name}")
    number += 1
    signal(ends.sensor(number, "temperature probe, bank", ends.bank), ends.management, "temperature of the bank")
    number += 1
    signal(ends.sensor(number, "current sensor, bank", ends.bank_bus), ends.monitor, "battery monitor")
    signal(ends.management, ends.monitor, "network, bank to monitor")
    signal(ends.management, ends.inverters, "discharge permit to inverter")
    if ends.charger is not None:
        signal(ends.management, ends.charger, "charge permit to charger")
    if made.specification.solar is not None:
        signal(ends.management, ends.controller, "charge permit to solar controller")
    signal(ends.monitor, ends.inverters, "remote panel of the inverter")
    signal(ends.monitor, ends.plant, "network, monitor to plant")


def bonding(made: CircuitList) -> None:
    """Put bonding conductors on the list: bus negative, and every metal case that could become live."""
    ends = made.ends
    for alternator in ends.alternators:
        _bond(made, alternator, f"case of {alternator.tag}")
    cases: list[tuple[End | None, str]] = [
        (ends.inverters, "inverter"),
        (ends.charger, "charger"),
        (ends.dc_dc, "DC-DC converter"),
        (ends.transformer, "transformer"),
        (ends.plant, "condensing unit"),
    ]
    for end, name in cases:
        if end is not None:
            _bond(made, end, f"case of {name}")
    _bond(made, ends.dc_bus, "DC negative")


def _bond(made: CircuitList, end: End, function: str) -> None:
    made.add(
        end,
        made.ends.bonding,
        f"bonding, {function}",
        system="bonding",
        voltage=made.nominal,
        continuous=0.0,
        formula="carries nothing but a fault: sized by the conductor that feeds the part",
        source="none",
        poles=1,
    )
