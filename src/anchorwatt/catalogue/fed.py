"""What every part that takes alternating current says alike: the voltage and the frequency that it accepts."""

from __future__ import annotations

from typing import Annotated, Self

from pydantic import Field, model_validator

from anchorwatt.catalogue.part import Part
from anchorwatt.units.fields import Frequency, Voltage, within
from anchorwatt.units.refusal import Refused

Volts = Annotated[Voltage, within("50 V", "1000 V")]
Hertz = Annotated[Frequency, within("40 Hz", "70 Hz")]


class Fed(Part):
    """A part that takes alternating current; what it does not say of it cannot be told."""

    voltage_range: tuple[Volts, Volts] | None = Field(
        default=None, description="Alternating voltage that it accepts, lowest and highest; left out, unknown."
    )
    frequency_range: tuple[Hertz, Hertz] | None = Field(
        default=None, description="Frequency that it accepts, lowest and highest; left out, unknown."
    )

    @model_validator(mode="after")
    def _ranges_rise(self) -> Self:
        for name, given in (("voltage_range", self.voltage_range), ("frequency_range", self.frequency_range)):
            if given is not None and given[0] > given[1]:
                raise Refused(f"{name} from {given[0].text} to {given[1].text}", "the lowest first")
        return self
