"""Outside colours."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Share, within


@kind("finish")
class Finish(Part):
    """How an outside face takes the sun and radiates."""

    absorptance: Annotated[Share, within("0 %", "100 %")] = Field(description="Share of the sun that the face takes.")
    emittance: Annotated[Share, within("0 %", "100 %")] = Field(description="Long-wave emittance.")


FinishSlot = Annotated[Finish, Slot("finish")]
"""A finish by name, by name with changes, or in full."""
