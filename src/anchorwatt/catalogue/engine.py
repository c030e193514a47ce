"""Propulsion engines."""

from __future__ import annotations

from itertools import pairwise
from typing import Annotated

from pydantic import Field, model_validator

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import LiquidVolume, Pressure, RotationalSpeed, ShaftPower, Share, within
from anchorwatt.units.refusal import Refused


@kind("engine")
class Engine(Part):
    """A four-stroke diesel."""

    rated_power: Annotated[ShaftPower, within("1 kW", "2000 kW")] = Field(
        description="Power at the crankshaft at rated speed."
    )
    rated_speed: Annotated[RotationalSpeed, within("500 rpm", "6000 rpm")] = Field(description="Rated speed.")
    idle_speed: Annotated[RotationalSpeed, within("300 rpm", "2000 rpm")] = Field(description="Idle speed.")
    curve_speeds: tuple[Annotated[Share, within("1 %", "120 %")], ...] = Field(
        min_length=2, max_length=100, description="Shares of rated speed, rising."
    )
    curve_powers: tuple[Annotated[Share, within("0 %", "120 %")], ...] = Field(
        min_length=2, max_length=100, description="Full-load power at those speeds, share of the rated power."
    )
    displacement: Annotated[LiquidVolume, within("0.1 L", "200 L")] = Field(description="Swept volume.")
    volumetric_efficiency: Annotated[float, Field(ge=0.3, le=4.0)] = Field(
        default=0.9,
        description="Air drawn in over swept volume; 0.85 without, 1.2 to 2 with a turbocharger, from memory.",
    )
    indicated_efficiency: Annotated[Share, within("20 %", "60 %")] = Field(
        description="Of the Willans line: useful over added fuel."
    )
    friction_pressure: Annotated[Pressure, within("0.3 bar", "5 bar")] = Field(
        description="Of the Willans line: friction mean effective pressure."
    )

    @model_validator(mode="after")
    def _curve_fits(self) -> Engine:
        if self.idle_speed >= self.rated_speed:
            raise Refused(
                f"idle_speed {self.idle_speed.text} and rated_speed {self.rated_speed.text}",
                "idle below rated speed",
            )
        if len(self.curve_speeds) != len(self.curve_powers):
            raise Refused(
                f"{len(self.curve_speeds)} speeds and {len(self.curve_powers)} powers",
                "two lists of the same length",
            )
        if any(b <= a for a, b in pairwise(self.curve_speeds)):
            raise Refused("speeds that do not rise", "speeds that rise from point to point")
        return self


EngineSlot = Annotated[Engine, Slot("engine")]
"""A engine by name, by name with changes, or in full."""
