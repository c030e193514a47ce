"""Air handlers of a shared plant."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.fed import Fed
from anchorwatt.catalogue.part import kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import HeatFlow, Mass, Power, Pressure, Share, TemperatureDifference, VolumeFlow, within


@kind("air_handler")
class AirHandler(Fed):
    """A coil and its fan in a cabin."""

    rated_capacity: Annotated[HeatFlow, within("200 W", "50 kW")] = Field(description="Nominal total capacity.")
    airflow: Annotated[VolumeFlow, within("1 L/s", "10 m3/s")] = Field(description="Air at full fan.")
    fan_power: Annotated[Power, within("0 W", "5 kW")] = Field(description="Fan at full speed.")
    static_pressure: Annotated[Pressure, within("0 Pa", "2 kPa")] = Field(
        description="What the fan has to spare for ducts and grilles at full airflow."
    )
    lowest_fan: Annotated[Share, within("5 %", "100 %")] = Field(description="Lowest fan speed, share of full airflow.")
    bypass_factor: Annotated[Share, within("0 %", "80 %")] = Field(
        description="Share of the air that misses the coil, at full airflow."
    )
    approach: Annotated[TemperatureDifference, within("0 K", "20 K")] = Field(
        description="Apparatus dew point over the evaporating temperature."
    )
    mass: Annotated[Mass, within("0.5 kg", "500 kg")] = Field(description="Mass.")


AirHandlerSlot = Annotated[AirHandler, Slot("air_handler")]
"""A air handler by name, by name with changes, or in full."""
