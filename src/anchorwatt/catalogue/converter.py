"""What inverters and chargers say of themselves alike."""

from __future__ import annotations

from itertools import pairwise
from typing import Annotated

from pydantic import Field, model_validator

from anchorwatt.catalogue.part import Part
from anchorwatt.units.fields import Mass, PerKelvin, Power, Share, Temperature, Time, within
from anchorwatt.units.refusal import Refused


class Converter(Part):
    """A converter: loss = no load + linear P + quadratic P²/rated."""

    rated_power: Annotated[Power, within("50 W", "100 kW")] = Field(description="Output that it gives for long.")
    no_load_power: Annotated[Power, within("0 W", "2 kW")] = Field(description="Loss without load, switched on.")
    linear: Annotated[Share, within("0 %", "30 %")] = Field(description="Loss that grows with the output.")
    quadratic: Annotated[Share, within("0 %", "30 %")] = Field(
        description="Loss that grows with the square of the output, at rated output."
    )
    sleep_power: Annotated[Power, within("0 W", "500 W")] = Field(description="Taken when there is no load at all.")
    overload_shares: tuple[Annotated[Share, within("100 %", "500 %")], ...] = Field(
        default=("120 %", "150 %", "200 %"),
        max_length=20,
        validate_default=True,
        description="Output that it gives for a while, share of the rating, rising; usual, from memory.",
    )
    overload_times: tuple[Annotated[Time, within("0.01 s", "4 h")], ...] = Field(
        default=("30 min", "60 s", "3 s"),
        max_length=20,
        validate_default=True,
        description="How long it gives those; falling; usual, from memory.",
    )
    full_to: Annotated[Temperature, within("0 °C", "80 °C")] = Field(
        default="40 °C", validate_default=True, description="Air up to which it gives its rating; usual, from memory."
    )
    derating: Annotated[PerKelvin, within("0 %/K", "20 %/K")] = Field(
        default="1.5 %/K",
        validate_default=True,
        description="Share of the rating lost for each kelvin above that; usual, 1 to 1.5 %/K, from memory.",
    )
    highest_air: Annotated[Temperature, within("20 °C", "100 °C")] = Field(
        default="65 °C", validate_default=True, description="Air at which it switches itself off; usual, from memory."
    )
    mass: Annotated[Mass, within("0.2 kg", "1000 kg")] = Field(description="Mass.")

    @model_validator(mode="after")
    def _overload_fits(self) -> Converter:
        shares, times = self.overload_shares, self.overload_times
        if len(shares) != len(times):
            raise Refused(f"{len(shares)} overload shares and {len(times)} times", "two lists of the same length")
        if any(b <= a for a, b in pairwise(shares)) or any(b >= a for a, b in pairwise(times)):
            raise Refused("overload shares that do not rise while their times fall", "more output for less time")
        if self.highest_air < self.full_to:
            raise Refused(
                f"full_to {self.full_to.text} and highest_air {self.highest_air.text}", "full_to below highest_air"
            )
        return self
