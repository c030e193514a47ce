"""Variable-speed condensing units for several air handlers."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.circuit import Circuit
from anchorwatt.catalogue.part import kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Mass, Power, Share, within


@kind("condensing_unit")
class CondensingUnit(Circuit):
    """A variable-speed compressor with its seawater condenser."""

    turn_down: Annotated[Share, within("5 %", "100 %")] = Field(
        description="Lowest continuous speed over the highest; 100 % is fixed speed."
    )
    pump_power: Annotated[Power, within("0 W", "5 kW")] = Field(description="Seawater pump, while the compressor runs.")
    standby_power: Annotated[Power, within("0 W", "500 W")] = Field(description="Controls, all the time.")
    mass: Annotated[Mass, within("1 kg", "2000 kg")] = Field(description="Mass with pump and pipes.")


CondensingUnitSlot = Annotated[CondensingUnit, Slot("condensing_unit")]
"""A condensing unit by name, by name with changes, or in full."""
