"""What the loss of each single part leaves, as one table."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.simulation.runs import LONGEST_HOLD
from anchorwatt.sizing.redundancy import Loss, Redundancy
from anchorwatt.units import System, show

ASSUMPTIONS = (
    (
        "Each row loses that part alone, away from the dock. Cooling is a share of the night's; charging a share of "
        "what engines give in the recharge, the sun at its peak and the charger together, within what the bank takes."
    ),
    (
        "Hours on the bank scale those of the sound boat by what is left of the bank and by the mean of what still "
        "draws on it: a closed form, not a run."
    ),
    (
        "Bars, switches, cables, hoses and what stands in no design file are single parts too, and are not gone "
        "through; nor are sails."
    ),
)


@dataclass(frozen=True)
class LossRow:
    """One part lost, as it is shown; the first row of the table is the sound boat."""

    loss: Loss

    @property
    def stops(self) -> str:
        """What stops, in words."""
        return ", ".join(self.loss.stops) or "nothing at once"

    @property
    def goes_on(self) -> str:
        """What still works, in words."""
        return ", ".join(self.loss.goes_on) or "nothing"

    @property
    def longest(self) -> bool:
        """Whether the bank holds as long as is looked at, or longer."""
        return self.loss.hold >= LONGEST_HOLD

    def hold(self, system: System) -> str:
        """Hours that the bank holds, in words."""
        return show(self.loss.hold, "time", system) + (" or longer" if self.longest else "")


@dataclass(frozen=True)
class RedundancyStory:
    """The sound boat and every single loss."""

    sound: LossRow
    losses: tuple[LossRow, ...]
    assumptions: tuple[str, ...] = ASSUMPTIONS

    @property
    def rows(self) -> tuple[LossRow, ...]:
        """The sound boat first."""
        return (self.sound, *self.losses)


def redundancy_story(found: Redundancy) -> RedundancyStory:
    """The table."""
    return RedundancyStory(LossRow(found.sound), tuple(LossRow(loss) for loss in found.losses))
