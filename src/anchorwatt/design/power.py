"""The AC side and the DC side."""

from __future__ import annotations

from typing import Annotated, ClassVar

from pydantic import Field

from anchorwatt.catalogue.appliance import ApplianceSlot
from anchorwatt.catalogue.battery_module import BatteryModuleSlot
from anchorwatt.catalogue.charger import ChargerSlot
from anchorwatt.catalogue.dc_dc import DirectConverterSlot
from anchorwatt.catalogue.inverter import InverterSlot
from anchorwatt.catalogue.lead_acid_battery import LeadAcidBatterySlot
from anchorwatt.catalogue.shore_service import ShoreServiceSlot
from anchorwatt.catalogue.solar_panel import SolarPanelSlot
from anchorwatt.catalogue.transformer import TransformerSlot
from anchorwatt.design.bearing import Face
from anchorwatt.design.in_short import InShort
from anchorwatt.design.section import Name, Section
from anchorwatt.units.fields import (
    Angle,
    Current,
    Energy,
    Frequency,
    HeatCapacity,
    Power,
    Resistance,
    Share,
    Temperature,
    ThermalConductance,
    Voltage,
    within,
)

LOSSES = "The compartment that takes the heat of its losses; left out, none."
Count = Annotated[int, Field(ge=1, le=100, strict=True)]


class LoadEntry(Section):
    """An electrical load and the cabin that takes its heat."""

    appliance: ApplianceSlot = Field(description="What it is.")
    cabin: Name | None = Field(default=None, description="The cabin that takes its heat; left out, none.")
    count: Count = Field(default=1, description="How many of them.")


class InverterEntry(Section):
    """Inverters that work together."""

    unit: InverterSlot = Field(description="Inverter.")
    count: Count = Field(default=1, description="How many side by side.")
    cabin: Name | None = Field(default=None, description=LOSSES)
    output_voltage: Annotated[Voltage, within("50 V", "1000 V")] | None = Field(
        default=None,
        description="Alternating voltage that it is ordered for; the checks hold it against what it feeds.",
    )
    output_frequency: Annotated[Frequency, within("40 Hz", "70 Hz")] | None = Field(
        default=None, description="Frequency that it is ordered for or set to."
    )


class ChargerEntry(Section):
    """Chargers that work together."""

    unit: ChargerSlot = Field(description="Charger.")
    count: Count = Field(default=1, description="How many side by side.")
    cabin: Name | None = Field(default=None, description=LOSSES)


class TransformerParts(Section):
    """An isolation transformer and where it stands."""

    unit: TransformerSlot = Field(description="Isolation transformer.")
    cabin: Name | None = Field(default=None, description=LOSSES)

    in_short: ClassVar[str] = "unit"


Transformer = Annotated[TransformerParts, InShort(TransformerParts)]
"""An isolation transformer by itself, or with its compartment."""


class AlternatingSide(Section):
    """Shore power, transformer, inverter and what runs on alternating current."""

    shore: ShoreServiceSlot | None = Field(default=None, description="Shore service.")
    shore_limit: Annotated[Current, within("1 A", "400 A")] | None = Field(
        default=None, description="Shore current of each leg that the boat is set to take, where less than the service."
    )
    charger: ChargerEntry | None = Field(default=None, description="Charger from shore power.")
    transformer: Transformer | None = Field(
        default=None, description="Isolation transformer; or a mapping of unit and cabin, which says where it stands."
    )
    inverter: InverterEntry = Field(description="Inverter from the bank.")
    loads: dict[Name, LoadEntry] = Field(default_factory=dict, max_length=200, description="AC loads.")


class BankEntry(Section):
    """Modules in series and parallel."""

    module: BatteryModuleSlot = Field(description="Battery module.")
    series: Count = Field(description="Modules in series.")
    parallel: Count = Field(description="Strings in parallel.")
    link_resistance: Annotated[Resistance, within("0 mohm", "100 mohm")] | None = Field(
        default=None, description="Links, fuses and main cables, for the whole bank."
    )
    temperature: Annotated[Temperature, within("-10 °C", "60 °C")] | None = Field(
        default=None, description="Of what is round it; in a compartment, of its cells at first."
    )
    heat_capacity: Annotated[HeatCapacity, within("1 kJ/K", "20 MJ/K")] | None = Field(
        default=None, description="Of all modules together."
    )
    heat_conductance: Annotated[ThermalConductance, within("0 W/K", "500 W/K")] | None = Field(
        default=None, description="From the cells to what is round them, all modules together."
    )
    cabin: Name | None = Field(default=None, description=LOSSES)


class ReplacedBankEntry(Section):
    """The lead-acid bank that the bank replaces, for comparison; none of it is aboard."""

    battery: LeadAcidBatterySlot = Field(description="Lead-acid battery.")
    series: Count = Field(description="Batteries in series.")
    parallel: Count = Field(description="Strings in parallel.")


class SolarEntry(Section):
    """Solar panels."""

    panel: SolarPanelSlot = Field(description="Solar panel.")
    count: Count = Field(description="How many panels.")
    delivered_share: Annotated[Share, within("1 %", "100 %")] | None = Field(
        default=None, description="What dirt, wiring and controller leave; shading too, where it has no key of its own."
    )
    shading: Annotated[Share, within("1 %", "100 %")] | None = Field(
        default=None, description="What rig, rails and bimini leave of the sun on the panels, through the day."
    )
    faces: Face | None = Field(default=None, description="Where the panels look, if they do not lie flat.")
    tilt: Annotated[Angle, within("0 deg", "120 deg")] | None = Field(
        default=None, description="From facing straight up."
    )


class EngineBatteryEntry(Section):
    """The engines' own battery, kept full from the bank by a DC-DC converter."""

    unit: DirectConverterSlot = Field(description="DC-DC converter.")
    cabin: Name | None = Field(default=None, description=LOSSES)
    voltage: Annotated[Voltage, within("10 V", "60 V")] = Field(
        default="12 V", validate_default=True, description="Nominal voltage of that battery."
    )
    standing_load: Annotated[Power, within("0 W", "2 kW")] | None = Field(
        default=None, description="What hangs on it and draws all the time."
    )
    start_energy: Annotated[Energy, within("0 J", "1 MJ")] | None = Field(
        default=None, description="One start of all engines."
    )
    starts_per_day: Annotated[float, Field(ge=0.0, le=100.0)] | None = Field(
        default=None, description="Starts of all engines in a day."
    )


class DirectSide(Section):
    """Bank, sun and what runs on direct current."""

    nominal_voltage: Voltage = Field(description="12 V, 24 V or 48 V.")
    bank: BankEntry = Field(description="Battery bank.")
    replaced_bank: ReplacedBankEntry | None = Field(
        default=None, description="The lead-acid bank that the bank replaces, to compare with."
    )
    solar: SolarEntry | None = Field(default=None, description="Solar panels.")
    engine_battery: EngineBatteryEntry | None = Field(
        default=None, description="The engines' own battery, where the bank keeps it full."
    )
    loads: dict[Name, LoadEntry] = Field(default_factory=dict, max_length=200, description="DC loads.")
