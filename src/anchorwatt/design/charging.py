"""Engines and the alternators on them."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.alternator import AlternatorSlot
from anchorwatt.catalogue.belt import BeltSlot
from anchorwatt.catalogue.engine import EngineSlot
from anchorwatt.design.section import Name, Section
from anchorwatt.units.fields import (
    Current,
    Force,
    HeatCapacity,
    RotationalSpeed,
    ShaftPower,
    Share,
    Speed,
    Temperature,
    TemperatureDifference,
    ThermalConductance,
    Voltage,
    VolumeFlow,
    within,
)


class AlternatorEntry(Section):
    """An alternator, its belt and its regulator."""

    alternator: AlternatorSlot = Field(description="Alternator.")
    belt: BeltSlot = Field(description="Belt.")
    pulley_ratio: Annotated[float, Field(ge=0.5, le=8.0)] = Field(description="Rotor speed over engine speed.")
    current_limit: Annotated[Current, within("1 A", "1000 A")] | None = Field(
        default=None, description="Set in the regulator."
    )
    hold_temperature: Annotated[Temperature, within("60 °C", "180 °C")] | None = Field(
        default=None, description="Of the frame, where the regulator begins to fold back."
    )
    fold_band: Annotated[TemperatureDifference, within("1 K", "60 K")] | None = Field(
        default=None, description="Over which it folds back to nothing."
    )
    clamp_voltage: Annotated[Voltage, within("14 V", "500 V")] | None = Field(
        default=None, description="To which avalanche diodes or a clamp at its output post hold a load dump."
    )


class EngineEntry(Section):
    """An engine, its propeller and its alternators."""

    engine: EngineSlot = Field(description="Engine.")
    boat_speed: Annotated[Speed, within("1 kn", "60 kn")] | None = Field(
        default=None, description="Speed of the boat at rated engine speed."
    )
    propeller_power: Annotated[ShaftPower, within("0.5 kW", "2000 kW")] | None = Field(
        default=None, description="What the propeller takes at rated engine speed."
    )
    propeller_exponent: Annotated[float, Field(ge=1.5, le=4.0)] | None = Field(
        default=None, description="Of propeller power over engine speed."
    )
    margin: Annotated[Share, within("0 %", "60 %")] | None = Field(
        default=None, description="Share of full-load power that is never asked for."
    )
    charging_speed: Annotated[RotationalSpeed, within("400 rpm", "5000 rpm")] | None = Field(
        default=None, description="Engine speed when it charges at anchor."
    )
    air_temperature: Annotated[Temperature, within("0 °C", "90 °C")] | None = Field(
        default=None, description="Air round the alternators, engine running; left out, that of the compartment."
    )
    cabin: Name | None = Field(default=None, description="The compartment that it stands in; left out, it warms none.")
    block_heat_capacity: Annotated[HeatCapacity, within("1 kJ/K", "20 MJ/K")] | None = Field(
        default=None, description="Heat capacity of the engine with its gearbox, coolant and oil."
    )
    block_conductance: Annotated[ThermalConductance, within("0 W/K", "500 W/K")] | None = Field(
        default=None, description="From the engine to the air and surfaces of its compartment."
    )
    block_temperature: Annotated[Temperature, within("30 °C", "120 °C")] | None = Field(
        default=None, description="Of the engine while it runs."
    )
    side_load_limit: Annotated[Force, within("10 N", "100 kN")] | None = Field(
        default=None, description="What the engine maker allows belts to pull sideways at the front of the crankshaft."
    )
    blower: Annotated[VolumeFlow, within("0 L/s", "2 m3/s")] | None = Field(
        default=None, description="Outdoor air through its compartment while it runs."
    )
    alternators: dict[Name, AlternatorEntry] = Field(
        min_length=1, max_length=8, description="Alternators that charge the bank."
    )


class Charging(Section):
    """Engines."""

    engines: dict[Name, EngineEntry] = Field(min_length=1, max_length=4, description="Engines.")
