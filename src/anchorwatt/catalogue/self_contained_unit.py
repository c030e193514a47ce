"""Fixed-speed self-contained units."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.circuit import Circuit
from anchorwatt.catalogue.part import kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Mass, Power, Share, TemperatureDifference, VolumeFlow, within


@kind("self_contained_unit")
class SelfContainedUnit(Circuit):
    """A unit with its own fixed-speed compressor, in the cabin."""

    airflow: Annotated[VolumeFlow, within("1 L/s", "10 m3/s")] = Field(description="Air through the coil.")
    fan_power: Annotated[Power, within("0 W", "5 kW")] = Field(description="Fan.")
    bypass_factor: Annotated[Share, within("0 %", "80 %")] = Field(description="Share of the air that misses the coil.")
    approach: Annotated[TemperatureDifference, within("0 K", "20 K")] = Field(
        description="Apparatus dew point over the evaporating temperature."
    )
    hysteresis: Annotated[TemperatureDifference, within("0.1 K", "5 K")] = Field(
        description="Between switching on and off."
    )
    starting_ratio: float = Field(ge=1.0, le=10.0, description="Locked-rotor over running current.")
    mass: Annotated[Mass, within("1 kg", "500 kg")] = Field(description="Mass.")


SelfContainedUnitSlot = Annotated[SelfContainedUnit, Slot("self_contained_unit")]
"""A self contained unit by name, by name with changes, or in full."""
