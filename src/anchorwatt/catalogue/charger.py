"""Chargers from shore power."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.converter import Converter
from anchorwatt.catalogue.fed import Fed
from anchorwatt.catalogue.part import kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Voltage, within


@kind("charger")
class Charger(Converter, Fed):
    """A charger: loss = no load + linear P + quadratic P²/rated."""

    output_voltage: Annotated[Voltage, within("10 V", "400 V")] = Field(description="Nominal voltage of its bank.")


ChargerSlot = Annotated[Charger, Slot("charger")]
"""A charger by name, by name with changes, or in full."""
