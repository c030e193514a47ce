"""Packages: variants of a design that are offered beside it, each worked out again from its own file."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from decimal import Decimal

from anchorwatt.design.design import Design
from anchorwatt.design.editing import edit_all
from anchorwatt.design.filling import specify
from anchorwatt.design.plain_value import read_back
from anchorwatt.design.specification import Package
from anchorwatt.errors import BadDesign
from anchorwatt.simulation.runs import LONGEST_HOLD, Simulation
from anchorwatt.sizing.offer import Priced, bought, priced
from anchorwatt.sizing.weight import Weight, cables_at, weight
from anchorwatt.sizing.wiring import wiring


@dataclass(frozen=True)
class Figures:
    """What a customer compares."""

    price: Priced
    hold: float  # s that the bank holds, at most LONGEST_HOLD
    mass: float  # kg brought aboard
    engine_time: float  # s of engine that put the night back; nan = not within the day, or no alternator

    @property
    def total(self) -> Decimal | None:
        """What the customer pays; None where something has no price."""
        return self.price.total if self.price.complete else None


@dataclass(frozen=True)
class Offered:
    """A package, and what it changes."""

    package: Package
    design: Design
    figures: Figures
    base: Figures

    @property
    def more_to_pay(self) -> Decimal | None:
        """None where one of both prices is unknown."""
        mine, other = self.figures.total, self.base.total
        return None if mine is None or other is None else mine - other

    @property
    def more_hold(self) -> float:
        return self.figures.hold - self.base.hold

    @property
    def more_mass(self) -> float:
        return self.figures.mass - self.base.mass

    @property
    def more_engine_time(self) -> float:
        return self.figures.engine_time - self.base.engine_time


def figures(simulation: Simulation, price: Priced, weighed: Weight) -> Figures:
    """What a customer compares of one design."""
    reached = float(simulation.hold.summary.reserve_at[0])
    recharge = simulation.recharge
    return Figures(
        price=price,
        hold=LONGEST_HOLD if math.isnan(reached) else reached,
        mass=weighed.added,
        engine_time=math.nan if recharge is None else float(recharge.summary.full_at[0]),
    )


def offered(design: Design, packages: Sequence[Package], base: Figures) -> tuple[Offered, ...]:
    """Every package of a design; the design itself stays as it is.

    Raises
    ------
    BadDesign
        A package does not pass; the message stands at its name in the design file.
    """
    return tuple(_offered(design, package, base) for package in packages)


def _offered(design: Design, package: Package, base: Figures) -> Offered:
    changed = changed_by(design, package)
    specification = specify(changed)
    simulation = Simulation(specification)
    wired = wiring(specification, simulation)
    price = priced(specification, bought(wired, specification.overlay))
    weighed = weight(specification, cables_at(specification, wired))
    return Offered(package, changed, figures(simulation, price, weighed), base)


def changed_by(design: Design, package: Package) -> Design:
    """The design with a package's changes."""
    changes = {key: read_back(written) for key, written in package.changes}
    try:
        return edit_all(design, changes)
    except BadDesign as error:
        key = ("offer", "packages", package.name)
        raise BadDesign(
            tuple(
                design.document.problem(key, f"a package that does not pass: {one.key}: {one.found}", one.allowed)
                for one in error.problems
            )
        ) from None
