"""Refrigerants that circuits may hold, what the safety standards say of them, and the order of a circuit's limits."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field, model_validator

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.units.fields import Density, within
from anchorwatt.units.refusal import Refused

Refrigerant = Literal["R410A", "R32", "R134a"]
"""Names as CoolProp knows them."""


@kind("refrigerant")
class RefrigerantSafety(Part):
    """What the safety standards say of a refrigerant. It goes with its name; a circuit cannot change it."""

    designation: str = Field(min_length=1, max_length=20, description="Its name as the trade writes it.")
    safety_class: Literal["A1", "A2L", "A2", "A3", "B1", "B2L", "B2", "B3"] = Field(
        description="Safety class of ISO 817 and ASHRAE 34: A or B by toxicity, 1 to 3 by how it burns."
    )
    flammable_limit: Annotated[Density, within("0.01 kg/m3", "2 kg/m3")] | None = Field(
        default=None, description="Lower flammable limit; left out, it does not burn."
    )
    practical_limit: Annotated[Density, within("0.001 kg/m3", "2 kg/m3")] = Field(
        description="Practical limit in an occupied space."
    )
    limit_with_ventilation: Annotated[Density, within("0.001 kg/m3", "2 kg/m3")] = Field(
        description="Limit with least ventilation, QLMV of EN 378."
    )
    limit_with_two_measures: Annotated[Density, within("0.001 kg/m3", "2 kg/m3")] = Field(
        description="Limit with additional ventilation, QLAV of EN 378: with two measures of safety."
    )
    warming_potential: float = Field(ge=0.0, le=20_000.0, description="Over 100 years, times that of carbon dioxide.")

    @model_validator(mode="after")
    def _limits_follow_each_other(self) -> RefrigerantSafety:
        if self.limit_with_two_measures < self.limit_with_ventilation:
            raise Refused(
                f"{self.limit_with_ventilation.text} with ventilation, "
                f"{self.limit_with_two_measures.text} with two measures",
                "a limit with two measures that is not lower",
            )
        return self


def check_limits(lowest: float, rated: float, highest: float, condensing: float) -> None:
    """Refuse temperatures of a circuit that are out of order, all in °C."""
    if not (lowest <= rated < condensing and lowest < highest < condensing):
        raise Refused(
            f"lowest {lowest:g}, rated {rated:g}, highest evaporating {highest:g} "
            f"and highest condensing {condensing:g} °C",
            "the lowest evaporating temperature under the rated and the highest, all under the highest condensing",
        )
