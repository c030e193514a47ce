"""Electrical loads and where their heat goes."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, model_validator

from anchorwatt.catalogue.fed import Fed
from anchorwatt.catalogue.part import kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Power, Share, within
from anchorwatt.units.refusal import Refused


@kind("appliance")
class Appliance(Fed):
    """An electrical load."""

    power: Annotated[Power, within("0 W", "50 kW")] = Field(description="Power while it runs.")
    duty: Annotated[Share, within("0 %", "100 %")] = Field(description="Share of the time that it usually runs.")
    sensible_share: Annotated[Share, within("0 %", "100 %")] = Field(
        description="Share of the power that ends as heat in its cabin."
    )
    latent_share: Annotated[Share, within("0 %", "100 %")] = Field(
        description="Share of the power that ends as moisture in its cabin."
    )
    radiant_share: Annotated[Share, within("0 %", "100 %")] = Field(
        description="Share of the sensible part that is radiant."
    )

    @model_validator(mode="after")
    def _heat_is_not_more_than_power(self) -> Appliance:
        if self.sensible_share + self.latent_share > 1.0 + 1e-9:
            raise Refused(
                f"sensible_share {self.sensible_share.text} and latent_share {self.latent_share.text}",
                "two shares that make no more than 100 % together",
            )
        return self


ApplianceSlot = Annotated[Appliance, Slot("appliance")]
"""A appliance by name, by name with changes, or in full."""
