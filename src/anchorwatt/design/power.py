"""The AC side and the DC side."""

from __future__ import annotations

from typing import Annotated, ClassVar

from pydantic import Field

from anchorwatt.catalogue.appliance import ApplianceSlot
from anchorwatt.catalogue.battery_module import BatteryModuleSlot
from anchorwatt.catalogue.charger import ChargerSlot
from anchorwatt.catalogue.inverter import InverterSlot
from anchorwatt.catalogue.shore_service import ShoreServiceSlot
from anchorwatt.catalogue.solar_panel import SolarPanelSlot
from anchorwatt.catalogue.transformer import TransformerSlot
from anchorwatt.design.bearing import Face
from anchorwatt.design.in_short import InShort
from anchorwatt.design.section import Name, Section
from anchorwatt.units.fields import Angle, Resistance, Share, Temperature, Voltage, within

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
        default=None, description="Temperature of the cells."
    )
    cabin: Name | None = Field(default=None, description=LOSSES)


class SolarEntry(Section):
    """Solar panels."""

    panel: SolarPanelSlot = Field(description="Solar panel.")
    count: Count = Field(description="How many panels.")
    delivered_share: Annotated[Share, within("1 %", "100 %")] | None = Field(
        default=None, description="What shading, dirt, wiring and controller leave."
    )
    faces: Face | None = Field(default=None, description="Where the panels look, if they do not lie flat.")
    tilt: Annotated[Angle, within("0 deg", "120 deg")] | None = Field(
        default=None, description="From facing straight up."
    )


class DirectSide(Section):
    """Bank, sun and what runs on direct current."""

    nominal_voltage: Voltage = Field(description="12 V, 24 V or 48 V.")
    bank: BankEntry = Field(description="Battery bank.")
    solar: SolarEntry | None = Field(default=None, description="Solar panels.")
    loads: dict[Name, LoadEntry] = Field(default_factory=dict, max_length=200, description="DC loads.")
