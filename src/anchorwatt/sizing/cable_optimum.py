"""The size of a cable that costs least over the years: its price, what its mass costs, and the energy lost in it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from anchorwatt.catalogue.conductor import Conductor
from anchorwatt.design.specification import Specification
from anchorwatt.physics.conductor import conductor_loss, copper_mass, resistance_ratio
from anchorwatt.sizing.circuits import Circuit
from anchorwatt.sizing.conductors import CableRun, resistance

DAY = 86_400.0
MOST_SIDE_BY_SIDE = 4


@dataclass(frozen=True)
class LifeCost:
    """What a cable costs over the years, in the offer's currency; nan = a price or a rate is unknown."""

    conductor: Conductor
    parallel: int
    cable: float  # its price
    mass: float  # what its mass costs
    energy: float  # what is lost in it

    @property
    def total(self) -> float:
        return self.cable + self.mass + self.energy


class LifeCosts:
    """Life costs of a boat's cables."""

    def __init__(self, specification: Specification, sizes: Sequence[Conductor]) -> None:
        self.wiring = specification.wiring
        self.days = self.wiring.years * specification.brief.nights_per_year
        self.rates = {rate.currency: rate.per_unit for rate in specification.offer.rates}
        self.rates[specification.offer.currency] = 1.0
        self.sizes = [(size, self._price(size), resistance(size), copper_mass(size.area, 1.0)) for size in sizes]

    def of(self, circuit: Circuit, run: CableRun, conductor: Conductor, parallel: int) -> LifeCost:
        """Of one choice."""
        row = next(row for row in self.sizes if row[0] is conductor or row[0].name == conductor.name)
        return self._cost(circuit, run, row, parallel)

    def least(self, circuit: Circuit, run: CableRun) -> LifeCost | None:
        """Of the choice that costs least, whatever the rules demand; None where prices are unknown."""
        found = [
            self._cost(circuit, run, row, parallel)
            for parallel in range(1, MOST_SIDE_BY_SIDE + 1)
            for row in (self.sizes if parallel == 1 else self.sizes[-1:])
        ]
        priced = [one for one in found if not math.isnan(one.total)]
        return min(priced, key=lambda one: one.total) if priced else None

    def _cost(
        self, circuit: Circuit, run: CableRun, row: tuple[Conductor, float, float, float], parallel: int
    ) -> LifeCost:
        size, price, ohms, copper = row
        laid = run.laid * parallel
        current = math.sqrt(circuit.mean_square) / parallel
        lost = parallel * conductor_loss(current, run.loop, ohms * resistance_ratio(run.ambient))
        return LifeCost(
            conductor=size,
            parallel=parallel,
            cable=price * laid,
            mass=copper * (1.0 + size.insulation_share) * laid * self.wiring.mass_price,
            energy=lost * DAY * self.days * self.wiring.energy_price,
        )

    def _price(self, size: Conductor) -> float:
        """Of one metre in the offer's currency."""
        if size.price is None or size.price.currency not in self.rates:
            return math.nan
        return float(size.price.amount) / self.rates[size.price.currency]
