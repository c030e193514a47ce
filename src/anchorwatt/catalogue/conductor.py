"""Standard sizes of copper conductors."""

from __future__ import annotations

from itertools import pairwise
from typing import Annotated

from pydantic import Field, model_validator

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import CrossSection, Current, Gauge, LinearResistance, Share, Temperature, within
from anchorwatt.units.refusal import Refused


@kind("conductor")
class Conductor(Part):
    """A standard size of stranded copper conductor, and what it may carry by its insulation; priced by the metre."""

    gauge: Gauge | None = Field(default=None, description="American wire gauge, which sets its area.")
    section: Annotated[CrossSection, within("0.1 mm²", "1000 mm²")] | None = Field(
        default=None, description="Nominal cross-section of one that has no gauge."
    )
    resistance: Annotated[LinearResistance, within("0.001 ohm/km", "500 ohm/km")] | None = Field(
        default=None, description="Highest at 20 °C, plain copper; left out, that of its area."
    )
    tinned_resistance: Annotated[LinearResistance, within("0.001 ohm/km", "500 ohm/km")] | None = Field(
        default=None, description="Highest at 20 °C, tinned copper; left out, as plain."
    )
    insulations: tuple[Annotated[Temperature, within("40 °C", "400 °C")], ...] = Field(
        min_length=1, max_length=20, description="Highest temperatures of insulation, rising."
    )
    ampacities: tuple[Annotated[Current, within("0.5 A", "5000 A")], ...] = Field(
        min_length=1, max_length=20, description="What it carries with those, run singly in air of 30 °C."
    )
    insulation_share: Annotated[Share, within("0 %", "200 %")] = Field(
        default="15 %", validate_default=True, description="Mass of its insulation over its copper's; from memory."
    )

    @model_validator(mode="after")
    def _columns_fit(self) -> Conductor:
        if (self.gauge is None) == (self.section is None):
            raise Refused("a gauge and a section, or neither", "one of the two")
        if len(self.insulations) != len(self.ampacities):
            raise Refused(
                f"{len(self.insulations)} insulations and {len(self.ampacities)} ampacities",
                "two lists of the same length",
            )
        if any(b <= a for a, b in pairwise(self.insulations)):
            raise Refused("insulations that do not rise", "temperatures that rise from one to the next")
        if any(b < a for a, b in pairwise(self.ampacities)):
            raise Refused("ampacities that fall", "no less with insulation that bears more")
        return self

    @property
    def area(self) -> float:
        """Of the metal, m²; nominal where it has no gauge."""
        return self.gauge.area if self.gauge is not None else float(self.section or 0.0)


ConductorSlot = Annotated[Conductor, Slot("conductor")]
"""A conductor by name, by name with changes, or in full."""
