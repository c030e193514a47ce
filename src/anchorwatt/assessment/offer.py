"""The offer: the price as the customer and as the yard see it, and the packages beside the design."""

from __future__ import annotations

import datetime
from dataclasses import dataclass

from anchorwatt.design import Design
from anchorwatt.design.specification import Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.offer import NOT_COUNTED, SLACK, Cable, Late, Priced, bought, rate_told
from anchorwatt.sizing.packages import Figures, Offered, figures, offered
from anchorwatt.sizing.wiring import Wiring, wiring

NOT_SIZED = "Cables are not sized here and not counted."


@dataclass(frozen=True)
class OfferStory:
    """What the job costs, when its parts must be ordered, and what else is offered."""

    priced: Priced
    base: Figures
    packages: tuple[Offered, ...]
    rates: tuple[str, ...]  # exchange rates behind the prices, in words

    @property
    def slack(self) -> datetime.timedelta:
        """Kept between a part's delivery and the boat's arrival."""
        return SLACK

    @property
    def not_counted(self) -> tuple[str, ...]:
        """What the price leaves out, in words."""
        return (NOT_COUNTED,) if self.priced.cables_counted else (NOT_COUNTED, NOT_SIZED)

    def late(self, today: datetime.date) -> tuple[Late, ...]:
        """Parts that come too late when they are ordered today."""
        return self.priced.late(today)


def offer_story(
    design: Design, specification: Specification, simulation: Simulation, wired: Wiring | None
) -> OfferStory:
    """Price a design and its packages; `wired` is None where its cables are not to be counted."""
    base = figures(specification, simulation, None if wired is None else bought(wired, design.overlay))
    return OfferStory(
        priced=base.price,
        base=base,
        packages=offered(design, base, None if wired is None else _cables),
        rates=tuple(rate_told(rate, specification.offer) for rate in base.price.rates_used),
    )


def _cables(design: Design, specification: Specification, simulation: Simulation) -> tuple[Cable, ...]:
    return bought(wiring(specification, simulation), design.overlay)
