"""Rules and the one registry that holds them.

A rule is a function of the evidence that returns value, limit and verdict; the decorator carries its
identifier, question, source and remedy. Registering an identifier twice is an error.
"""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass
from functools import cached_property

from anchorwatt.checks.finding import Finding, Verdict
from anchorwatt.design.specification import Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.ac_safety import AcSafety, ac_safety
from anchorwatt.sizing.ac_side import AcSide, ac_side
from anchorwatt.sizing.air_quality import CabinAir, cabin_air
from anchorwatt.sizing.bank_life import BankLife, bank_life
from anchorwatt.sizing.bank_state import BankState, bank_state
from anchorwatt.sizing.comfort import ComfortHour, comfort
from anchorwatt.sizing.condensate import Condensate, condensed
from anchorwatt.sizing.dew import SurfaceDew, dew
from anchorwatt.sizing.ducts import HandlerAir, handlers_air
from anchorwatt.sizing.fault_current import BankFault, prospective
from anchorwatt.sizing.faults import Faults
from anchorwatt.sizing.fit import Fit, fit
from anchorwatt.sizing.load_dump import LoadDump, load_dump
from anchorwatt.sizing.offer import Priced, bought, priced
from anchorwatt.sizing.price import Prices, prices
from anchorwatt.sizing.redundancy import Redundancy, redundancy
from anchorwatt.sizing.refrigerant import RefrigerantLimits, refrigerant_limits
from anchorwatt.sizing.regulator import RegulatorSheet, SideLoad, air_round, regulator_sheets, side_loads
from anchorwatt.sizing.replaced_bank import ReplacedBank, replaced_bank
from anchorwatt.sizing.seawater import SeawaterFlow, seawater_flow
from anchorwatt.sizing.selectivity import Level, levels
from anchorwatt.sizing.week import Shortest, Week, planned_week, shortest_engine_time
from anchorwatt.sizing.weight import Weight, cables_at, weight
from anchorwatt.sizing.wiring import Wiring, wiring


@dataclass(frozen=True)
class Evidence:
    """What rules may look at; what several of them look at is worked out once."""

    specification: Specification
    simulation: Simulation

    @cached_property
    def ac_side(self) -> AcSide:
        """Inverter, transformer, shore power and the small converters."""
        return ac_side(self.specification, self.simulation)

    @cached_property
    def ac_safety(self) -> AcSafety:
        """Earth faults, neutral and earth, galvanic isolation and polarity on the AC side."""
        return ac_safety(self.specification)

    @cached_property
    def bank_fault(self) -> BankFault:
        """What a short circuit draws from the bank."""
        return prospective(self.specification)

    @cached_property
    def selectivity(self) -> tuple[Level, ...]:
        """Every step from one device to the next."""
        return levels(self.wiring.circuits)

    @cached_property
    def comfort(self) -> tuple[ComfortHour, ...]:
        """What people in each cabin feel, hour by hour of the night."""
        return comfort(self.specification, self.simulation)

    @cached_property
    def prices(self) -> Prices:
        """What the parts cost."""
        return prices(self.specification)

    @cached_property
    def offer(self) -> Priced:
        """The whole price: parts, labour, margins, commission and tax."""
        return priced(self.specification, bought(self.wiring, self.specification.overlay))

    @cached_property
    def wiring(self) -> Wiring:
        """Circuits, conductors, protection and bars."""
        return wiring(self.specification, self.simulation)

    @cached_property
    def cabin_air(self) -> tuple[CabinAir, ...]:
        """Carbon dioxide and outdoor air where people are by night."""
        return cabin_air(self.specification, self.simulation)

    @cached_property
    def condensate(self) -> Condensate:
        """Water out of the coils."""
        return condensed(self.specification, self.simulation)

    @cached_property
    def surface_dew(self) -> tuple[SurfaceDew, ...]:
        """How near the coldest inside surface of each cabin comes to dew."""
        return dew(self.specification, self.simulation)

    @cached_property
    def handlers_air(self) -> tuple[HandlerAir, ...]:
        """Ducts, grilles and fans of the shared plant."""
        return handlers_air(self.specification)

    @cached_property
    def refrigerant(self) -> RefrigerantLimits | None:
        """The charge against the limits of the smallest occupied cabin; None when the plant reaches none."""
        return refrigerant_limits(self.specification)

    @cached_property
    def week(self) -> Week:
        """The week as the design file plans it."""
        return planned_week(self.specification, self.simulation)

    @cached_property
    def shortest_engine_time(self) -> Shortest:
        """The shortest engine time a day at anchor that keeps the boat going."""
        return shortest_engine_time(self.specification, self.simulation)

    @cached_property
    def faults(self) -> Faults:
        """What happens when something fails."""
        return Faults(self.specification, self.simulation)

    @cached_property
    def redundancy(self) -> Redundancy:
        """What the loss of every single part leaves."""
        return redundancy(self.specification, self.simulation)

    @cached_property
    def seawater(self) -> SeawaterFlow:
        """The seawater circuit at full load."""
        return seawater_flow(self.specification)

    @cached_property
    def regulators(self) -> tuple[RegulatorSheet, ...]:
        """What each alternator's regulator is to be set to, by engine speed."""
        return regulator_sheets(self.specification, air_round(self.specification, self.simulation))

    @cached_property
    def side_loads(self) -> tuple[SideLoad, ...]:
        """What belts pull sideways at each engine's crankshaft."""
        return side_loads(self.specification, self.regulators)

    @cached_property
    def load_dump(self) -> LoadDump | None:
        """What the alternators do when the bank is taken off them; None without an alternator."""
        return load_dump(self.specification, self.simulation)

    @cached_property
    def weight(self) -> Weight:
        """All masses with their places, and how the boat floats with them."""
        return weight(self.specification, cables_at(self.specification, self.wiring))

    @cached_property
    def fit(self) -> Fit:
        """Whether parts go into the spaces where they are put."""
        return fit(self.specification, self.simulation)

    @cached_property
    def bank_state(self) -> BankState:
        """What night, day and recharge ask of the bank."""
        return bank_state(self.specification, self.simulation)

    @cached_property
    def bank_life(self) -> BankLife:
        """How the bank ages, and its night when new and at the end of its warranty."""
        return bank_life(self.specification, self.simulation)

    @cached_property
    def replaced_bank(self) -> ReplacedBank | None:
        """The lead-acid bank beside the lithium one; None where the design names none."""
        return replaced_bank(self.specification, self.simulation)


@dataclass(frozen=True)
class Measured:
    """What a rule found, before it is told."""

    value: float
    limit: float
    verdict: Verdict
    note: str = ""


Measure = Callable[[Evidence], Measured | None]
"""A rule's own function; None when the design has nothing that the rule is about."""


@dataclass(frozen=True)
class Rule:
    id: str
    question: str
    dimension: str
    source: str
    remedy: str
    measure: Measure

    @property
    def subject(self) -> str:
        """What it is about: the name of the module that holds it, in words."""
        return self.measure.__module__.rsplit(".", 1)[-1].replace("_", " ")

    def find(self, evidence: Evidence) -> Finding | None:
        """Apply the rule; None when the design has nothing that it is about."""
        found = self.measure(evidence)
        if found is None:
            return None
        return Finding(
            self.id,
            self.question,
            found.value,
            found.limit,
            self.dimension,
            found.verdict,
            self.source,
            self.remedy,
            found.note,
            self.subject,
        )


_rules: dict[str, Rule] = {}


def rule(
    id: str,  # noqa: A002 - the field's own word
    question: str,
    dimension: str,
    source: str,
    remedy: str,
) -> Callable[[Measure], Measure]:
    """Register a rule."""

    def register(measure: Measure) -> Measure:
        if id in _rules:
            raise ValueError(f"rule {id} is registered twice")
        _rules[id] = Rule(id, question, dimension, source, remedy, measure)
        return measure

    return register


def rules() -> tuple[Rule, ...]:
    """All rules, in the order in which they were registered."""
    return tuple(_rules.values())


def at_most(value: float, limit: float, near: float = 0.1) -> Measured:
    """Holds when value ≤ limit; near within the share `near` below it; cannot tell when either is nan."""
    if math.isnan(value) or math.isnan(limit):
        return Measured(value, limit, Verdict.CANNOT_TELL)
    if value > limit:
        return Measured(value, limit, Verdict.FAILS)
    return Measured(value, limit, Verdict.NEAR if value > limit - near * abs(limit) else Verdict.HOLDS)


def at_least(value: float, limit: float, near: float = 0.1) -> Measured:
    """Holds when value ≥ limit; near within the share `near` above it; cannot tell when either is nan."""
    if math.isnan(value) or math.isnan(limit):
        return Measured(value, limit, Verdict.CANNOT_TELL)
    if value < limit:
        return Measured(value, limit, Verdict.FAILS)
    return Measured(value, limit, Verdict.NEAR if value < limit + near * abs(limit) else Verdict.HOLDS)
