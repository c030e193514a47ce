"""Covers, blinds and awnings."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Share, within


@kind("cover")
class Cover(Part):
    """What shades a window, or stands over a deck."""

    factor: Annotated[Share, within("0 %", "100 %")] = Field(description="Share of the sun that is left.")
    sky: Annotated[Share, within("0 %", "100 %")] | None = Field(
        default=None, description="Share of the sky that a face under it still sees; left out, all of it."
    )


CoverSlot = Annotated[Cover, Slot("cover")]
"""A cover by name, by name with changes, or in full."""
