"""The cooling plant: a shared variable-speed plant, and self-contained units to compare it with."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.air_handler import AirHandlerSlot
from anchorwatt.catalogue.condensing_unit import CondensingUnitSlot
from anchorwatt.catalogue.self_contained_unit import SelfContainedUnitSlot
from anchorwatt.design.section import Name, Section
from anchorwatt.units.fields import Mass, Power, TemperatureDifference, within


class HandlerEntry(Section):
    """An air handler in a cabin."""

    unit: AirHandlerSlot = Field(description="Air handler.")
    cabin: Name = Field(description="The cabin that it cools.")
    band: Annotated[TemperatureDifference, within("0.2 K", "5 K")] | None = Field(
        default=None, description="Over the set point, where it is called for fully."
    )
    priority: Annotated[float, Field(ge=0.1, le=10.0)] | None = Field(
        default=None, description="Weight when the compressor cannot serve all; 1 is ordinary."
    )


class PlantEntry(Section):
    """One condensing unit that feeds several air handlers."""

    unit: CondensingUnitSlot = Field(description="Condensing unit.")
    handlers: dict[Name, HandlerEntry] = Field(min_length=1, max_length=60, description="Its air handlers.")


class UnitEntry(Section):
    """A self-contained unit in a cabin."""

    unit: SelfContainedUnitSlot = Field(description="Self-contained unit.")
    cabin: Name = Field(description="The cabin that it cools.")


class AlternativeEntry(Section):
    """Self-contained units with one seawater pump, to compare with."""

    units: dict[Name, UnitEntry] = Field(min_length=1, max_length=60, description="A unit a cabin.")
    pump_power: Annotated[Power, within("5 W", "5 kW")] | None = Field(
        default=None, description="Seawater pump, which runs while any unit runs."
    )
    mass: Annotated[Mass, within("0 kg", "500 kg")] | None = Field(
        default=None, description="Pump and pipes, without the units."
    )


class Cooling(Section):
    """The plant, and what it is compared with."""

    plant: PlantEntry = Field(description="The shared plant.")
    alternative: AlternativeEntry | None = Field(default=None, description="Self-contained units to compare with.")
