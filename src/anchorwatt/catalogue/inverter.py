"""Inverters from the bank to the AC bus."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.converter import Converter
from anchorwatt.catalogue.part import kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Voltage, within


@kind("inverter")
class Inverter(Converter):
    """An inverter: loss = no load + linear P + quadratic P²/rated."""

    input_voltage: Annotated[Voltage, within("10 V", "400 V")] = Field(description="Nominal voltage of its bank.")


InverterSlot = Annotated[Inverter, Slot("inverter")]
"""An inverter by name, by name with changes, or in full."""
