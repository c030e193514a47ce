"""What inverters and chargers say of themselves alike."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part
from anchorwatt.units.fields import Mass, Power, Share, within


class Converter(Part):
    """A converter: loss = no load + linear P + quadratic P²/rated."""

    rated_power: Annotated[Power, within("50 W", "100 kW")] = Field(description="Output that it gives for long.")
    no_load_power: Annotated[Power, within("0 W", "2 kW")] = Field(description="Loss without load, switched on.")
    linear: Annotated[Share, within("0 %", "30 %")] = Field(description="Loss that grows with the output.")
    quadratic: Annotated[Share, within("0 %", "30 %")] = Field(
        description="Loss that grows with the square of the output, at rated output."
    )
    sleep_power: Annotated[Power, within("0 W", "500 W")] = Field(description="Taken when there is no load at all.")
    mass: Annotated[Mass, within("0.2 kg", "1000 kg")] = Field(description="Mass.")
