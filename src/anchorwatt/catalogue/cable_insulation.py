"""Classes of cable insulation."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.units.fields import Share, Temperature, within


@kind("cable_insulation")
class CableInsulation(Part):
    """A temperature class of cable insulation."""

    highest: Annotated[Temperature, within("40 °C", "400 °C")] = Field(description="Highest temperature.")
    engine_space_share: Annotated[Share, within("10 %", "100 %")] = Field(
        description="What is left of the ampacity in an engine space, 50 °C."
    )
