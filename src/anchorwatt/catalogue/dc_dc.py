"""DC-DC converters, which keep an engine's own battery from the bank."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.converter import Converter
from anchorwatt.catalogue.part import kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Voltage, within


@kind("dc_dc")
class DirectConverter(Converter):
    """A DC-DC converter that charges: loss = no load + linear P + quadratic P²/rated."""

    input_voltage: Annotated[Voltage, within("10 V", "400 V")] = Field(description="Nominal voltage of its bank.")
    output_voltage: Annotated[Voltage, within("10 V", "60 V")] = Field(
        description="Nominal voltage of the battery that it keeps."
    )


DirectConverterSlot = Annotated[DirectConverter, Slot("dc_dc")]
"""A DC-DC converter by name, by name with changes, or in full."""
