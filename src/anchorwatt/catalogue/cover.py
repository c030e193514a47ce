"""Covers, blinds and awnings."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Share, within


@kind("cover")
class Cover(Part):
    """What shades a window."""

    factor: Annotated[Share, within("0 %", "100 %")] = Field(description="Share of the solar gain that is left.")


CoverSlot = Annotated[Cover, Slot("cover")]
"""A cover by name, by name with changes, or in full."""
