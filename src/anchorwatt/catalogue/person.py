"""Heat of people by what they do."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Power, ThermalConductance, within


@kind("person")
class Person(Part):
    """One person's heat and moisture."""

    sensible: Annotated[Power, within("0 W", "1000 W")] = Field(description="Sensible heat at 24 °C.")
    latent: Annotated[Power, within("0 W", "1000 W")] = Field(description="Latent heat at 24 °C.")
    shift: Annotated[ThermalConductance, within("0 W/K", "50 W/K")] = Field(
        description="What moves from sensible to latent for each kelvin warmer."
    )
    metabolic_rate: float = Field(ge=0.5, le=10.0, description="Metabolic rate, met of 58.2 W/m2.")
    clothing: float = Field(ge=0.0, le=8.0, description="Clothing with bedding, clo of 0.155 m2K/W.")


PersonSlot = Annotated[Person, Slot("person")]
"""A person by name, by name with changes, or in full."""
