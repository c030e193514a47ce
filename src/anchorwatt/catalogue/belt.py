"""Belt drives of alternators."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Mass, RotationalSpeed, ShaftPower, within


@kind("belt")
class Belt(Part):
    """What a belt carries."""

    power: Annotated[ShaftPower, within("50 W", "100 kW")] = Field(
        description="Power that it carries for long at the reference speed."
    )
    reference_speed: Annotated[RotationalSpeed, within("500 rpm", "20000 rpm")] = Field(
        description="Rotor speed for which that holds; below it torque limits."
    )
    tension_ratio: Annotated[float, Field(ge=1.5, le=10.0)] = Field(
        default=4.0, description="Tight over slack side at that power; 4 to 5 for V and rib belts, from memory."
    )
    mass: Annotated[Mass, within("0 kg", "50 kg")] = Field(description="Mass.")


BeltSlot = Annotated[Belt, Slot("belt")]
"""A belt by name, by name with changes, or in full."""
