"""What somebody has looked at in the boat, and no design file could work out."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.design.section import Section
from anchorwatt.units.fields import Length, within

Said = Annotated[bool, Field(strict=True)]


class Installation(Section):
    """What is installed and how, as somebody vouches for it; what is left out, nobody has said."""

    earth_fault_device: Said | None = Field(
        default=None, description="A device of 30 mA or less trips shore power on leakage to earth, near the inlet."
    )
    galvanic_isolator: Said | None = Field(
        default=None, description="A fail-safe galvanic isolator sits in the shore's protective earth."
    )
    polarity_indicator: Said | None = Field(default=None, description="Reversed shore polarity is shown.")
    double_pole: Said | None = Field(default=None, description="Breakers of AC branches open both poles.")
    neutral_bond: Said | None = Field(
        default=None,
        description="Neutral and earth are joined at the source that feeds the boat, and nowhere else.",
    )
    transfer_breaks_neutral: Said | None = Field(
        default=None,
        description="The transfer opens all conductors of one source, neutral too, before it closes another.",
    )
    battery_switch: Said | None = Field(
        default=None, description="Every ungrounded conductor of the bank has a switch within reach."
    )
    contactor_coil: Said | None = Field(
        default=None, description="The remote switch of a contactor breaks the current of its coil itself."
    )
    tested_battery: Said | None = Field(
        default=None, description="Cells and battery have passed a safety standard for them, such as IEC 62619."
    )
    warning: Said | None = Field(
        default=None, description="The management system warns, seen or heard at the helm, before it disconnects."
    )
    charge_stop: Said | None = Field(
        default=None, description="The management system stops alternators and chargers before it opens."
    )
    battery_movement: Annotated[Length, within("0 mm", "500 mm")] | None = Field(
        default=None, description="How far the battery gives way when it is pulled as the rules have it."
    )
    vented: Said | None = Field(default=None, description="Gas from a failing cell is led where nobody breathes it.")
    safety_papers: Said | None = Field(
        default=None, description="Limits, shutdown and the safety of the battery's space are written down aboard."
    )


NOTHING_SAID = Installation()
"""Of a design that says nothing."""
