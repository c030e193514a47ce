"""Solar panels."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Mass, PerKelvin, Power, TemperatureDifference, within


@kind("solar_panel")
class SolarPanel(Part):
    """A solar panel."""

    peak_power: Annotated[Power, within("5 W", "1000 W")] = Field(description="Power at standard test conditions.")
    temperature_coefficient: Annotated[PerKelvin, within("-1 %/K", "0 %/K")] = Field(
        description="Change of power with cell temperature."
    )
    rise: Annotated[TemperatureDifference, within("5 K", "60 K")] = Field(
        description="Cells over the air at 1000 W/m2."
    )
    mass: Annotated[Mass, within("0.1 kg", "100 kg")] = Field(description="Mass.")


SolarPanelSlot = Annotated[SolarPanel, Slot("solar_panel")]
"""A solar panel by name, by name with changes, or in full."""
