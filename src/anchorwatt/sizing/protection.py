"""Fuses and breakers for circuits: family, rating, and how far from the source they may sit.

What cannot be met is told in the answer's `findings`; nothing is raised for it.
"""

from __future__ import annotations

import bisect
import functools
import math
from collections.abc import Sequence
from dataclasses import dataclass

from anchorwatt.catalogue import rows
from anchorwatt.catalogue.overlay import current
from anchorwatt.catalogue.protective_device import ProtectiveDevice
from anchorwatt.design.specification import CircuitWish, Regime
from anchorwatt.sizing.conductors import HIGH_VOLTAGE
from anchorwatt.sizing.setting import Input

CONTINUOUS_FACTOR = 1.25
"""Rating over a load that lasts three hours or more: NEC 215.3 and its neighbours, from memory."""

HIGHEST_SHARE = 1.5
"""Of a conductor's ampacity that a device may be rated: 33 CFR 183.455(c)."""

CHARGING_SHARE = 1.14
"""Highest charging voltage of an iron-phosphate bank over its nominal one: 3.65 V over 3.2 V a cell."""

NEC_STEPS = (
    *(15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200, 225, 250, 300, 350, 400),
    *(450, 500, 600),
)
"""A; standard ratings of NEC 240.6, from memory."""

IEC_STEPS = (6, 10, 13, 16, 20, 25, 32, 40, 50, 63)
"""A; standard ratings of IEC 60898, from memory."""

INCH = 0.0254

# m from the source, bare and sheathed all the way.
DISTANCES = {
    Regime.CFR: (7.0 * INCH, 40.0 * INCH),
    Regime.ABYC: (7.0 * INCH, 40.0 * INCH),
    Regime.ISO: (0.200, 0.500),
}
# m from a battery's post.
BATTERY_DISTANCES = {Regime.CFR: 72.0 * INCH, Regime.ABYC: 72.0 * INCH, Regime.ISO: 1.8}
SHORE_DISTANCE = 3.0  # m from the inlet to the main breaker, ABYC E-11 and ISO 13297, from memory

DISTANCE_SOURCES = {
    Regime.CFR: "33 CFR 183.455(b): 7 in, 40 in where sheathed",
    Regime.ABYC: "ABYC E-11: 7 in, 40 in where sheathed; from memory",
    Regime.ISO: "ISO 13297: 200 mm, from memory; 500 mm where sheathed from ISO 13590",
}
BATTERY_SOURCES = {
    Regime.CFR: "33 CFR 183.460: 72 in of the battery, from memory",
    Regime.ABYC: "ABYC E-11: 72 in, sheathed, straight at the battery's post; from memory",
    Regime.ISO: "ISO 13297: about 1.8 m of the battery, from memory",
}
RATING_SOURCES = {
    Regime.CFR: "33 CFR 183.455(c)",
    Regime.ABYC: "ABYC E-11 by trade notes: ampacity, or the next standard rating up to 150 % of it",
    Regime.ISO: "ISO 13297: the conductor's ampacity, from memory",
}


@dataclass(frozen=True)
class Need:
    """What a device is to guard."""

    voltage: float  # V nominal
    alternating: bool
    continuous: float  # A
    peak: float  # A for a second or two
    ampacity: float  # A of the conductors, where they run
    prospective: float  # A of a fault at the device, nan = unknown
    source: str  # as `sizing.circuits.Circuit` has it
    regime: Regime
    wish: CircuitWish | None = None
    fed_from_end: bool = False  # what its start gives is gentle; a fault is fed from the other end
    factor: float = CONTINUOUS_FACTOR  # on the continuous load: 1 for a shore service, whose rating is its breaker's


@dataclass(frozen=True)
class Protection:
    """A device for a circuit."""

    kind: str  # "fuse" or "breaker"
    family: str  # of the catalogue, "" = none will do
    rating: float  # A, nan = none
    interrupting: float  # A at the circuit's voltage
    highest_voltage: float  # V
    at_most: float  # A, the highest rating that the conductors allow
    at_least: float  # A, the lowest that carries the load and its peak
    distance: float  # m of the source, the farthest
    sheathed_distance: float  # m, the farthest where the conductor is sheathed all the way
    at: str  # the end of the circuit that it belongs to: "start" or "end"
    trips_by: float  # A at which it has opened within seconds
    price: float  # with its holder, nan = unknown
    currency: str
    governed_by: str  # what set its rating
    why: str
    findings: tuple[str, ...]  # what does not hold
    inputs: tuple[Input, ...]
    source: str  # of the rule on its rating
    distance_source: str

    @property
    def rated(self) -> str:
        """Its rating as it is written on it."""
        return "none fits" if math.isnan(self.rating) else f"{self.rating:g} A"

    @property
    def possible(self) -> bool:
        """Whether everything holds."""
        return not self.findings


def highest_rating(ampacity: float, voltage: float, regime: Regime) -> float:
    """A that a device for a conductor may be rated at most."""
    most = HIGHEST_SHARE * ampacity
    if regime is Regime.ISO:
        return ampacity
    if regime is Regime.CFR and voltage < HIGH_VOLTAGE:
        return most
    return max(ampacity, next_step(ampacity, most))


def next_step(ampacity: float, most: float, steps: Sequence[int] = NEC_STEPS) -> float:
    """The standard rating at or next above an ampacity, A, where it is no more than `most`; else the ampacity."""
    place = bisect.bisect_left(steps, ampacity * (1.0 - 1e-9))
    if place < len(steps) and steps[place] <= most * (1.0 + 1e-9):
        return float(steps[place])
    return ampacity


def distances(source: str, regime: Regime) -> tuple[float, float, str]:
    """m from the source that a device may sit, bare and sheathed, and whose rule it is."""
    if source == "shore":
        return SHORE_DISTANCE, SHORE_DISTANCE, "ABYC E-11 and ISO 13297: 3 m of the inlet, from memory"
    if source == "bank":
        far = BATTERY_DISTANCES[regime]
        bare = far if regime is not Regime.ABYC else DISTANCES[regime][0]
        return bare, far, BATTERY_SOURCES[regime]
    return *DISTANCES[regime], DISTANCE_SOURCES[regime]


def families(alternating: bool, regime: Regime) -> tuple[ProtectiveDevice, ...]:
    """Fuses and breakers for a kind of current, those of the regime's own land first, then by price."""
    return _families(alternating, regime) if current() else _generic_families(alternating, regime)


@functools.cache
def _generic_families(alternating: bool, regime: Regime) -> tuple[ProtectiveDevice, ...]:
    return _families(alternating, regime)


def _families(alternating: bool, regime: Regime) -> tuple[ProtectiveDevice, ...]:
    kind = "alternating" if alternating else "direct"
    foreign = "North American" if regime is Regime.ISO else "IEC"
    found = [
        row
        for row in rows("protective_device").values()
        if isinstance(row, ProtectiveDevice) and row.current_kind == kind and row.residual is None
    ]
    return tuple(sorted(found, key=lambda row: (row.steps == foreign, _price(row))))


def _price(row: ProtectiveDevice) -> float:
    return math.inf if row.price is None else float(row.price.amount)


def working_voltage(voltage: float, alternating: bool) -> float:
    """V that a device must bear: on the DC side, those of charging."""
    return voltage if alternating else CHARGING_SHARE * voltage


@dataclass(frozen=True)
class _Choice:
    family: ProtectiveDevice
    rating: float  # nan = it has none that is large enough
    at_least: float
    by_peak: bool
    interrupts: float


def _choice(family: ProtectiveDevice, need: Need) -> _Choice:
    """The lowest rating of a family that carries a load."""
    steady, brief = need.factor * need.continuous, need.peak / family.carries_peak
    least = max(steady, brief)
    rating = next((float(one) for one in family.ratings if one >= least * (1.0 - 1e-9)), math.nan)
    volts = working_voltage(need.voltage, need.alternating)
    return _Choice(family, rating, least, brief > steady, family.interrupts(volts))


def _interrupts(choice: _Choice, need: Need) -> bool:
    return choice.interrupts > 0.0 and not choice.interrupts < need.prospective


def protect(need: Need) -> Protection:
    """The least costly family that interrupts the fault, at its lowest rating that carries the load.

    A rating above `at_most` means that the conductors are too thin for any device that carries the load; a rating of
    nan, that no family goes so high. Both are among the findings.
    """
    most = highest_rating(need.ampacity, need.voltage, need.regime)
    choices = [_choice(family, need) for family in families(need.alternating, need.regime)]
    if need.wish is not None and (need.wish.family or not math.isnan(need.wish.fuse)):
        return _typed(need, need.wish, most, choices)
    best = _best(choices, need, most)
    words = "peak" if best.by_peak else "continuous load"
    if best.rating == best.family.ratings[0] and best.rating > best.at_least:
        words = "smallest rating of its family"
    return _protection(need, best, best.rating, most, words, ())


def _best(choices: Sequence[_Choice], need: Need, most: float) -> _Choice:
    able = [one for one in choices if _interrupts(one, need)]
    if not able:  # nothing interrupts that fault: what comes nearest is told, with its finding
        able = [max(choices, key=lambda one: (one.interrupts > 0.0, not math.isnan(one.rating), one.interrupts))]
    large = [one for one in able if not math.isnan(one.rating)]
    if not large:
        return max(able, key=lambda one: float(one.family.ratings[-1]))
    fitting = [one for one in large if one.rating <= most * (1.0 + 1e-9)]
    return fitting[0] if fitting else min(large, key=lambda one: one.rating)


def _typed(need: Need, wish: CircuitWish, most: float, choices: Sequence[_Choice]) -> Protection:
    """What the design asks for, and whether it holds."""
    wanted, notes = [one for one in choices if one.family.name == wish.family], []
    if wish.family and not wanted:
        known = ", ".join(one.family.name for one in choices)
        notes.append(f"the catalogue has no family “{wish.family}” for this current; there are: {known}")
    among = wanted or list(choices)
    if math.isnan(wish.fuse):
        best = _best(among, need, most)
        return _protection(need, best, best.rating, most, "typed family", notes)
    having = [one for one in among if any(math.isclose(rating, wish.fuse) for rating in one.family.ratings)]
    if not having and (wanted or among):
        title = wish.family if wanted else "family"
        notes.append(f"{wish.fuse:g} A is no standard rating of {title if wanted else 'any family'}")
    best = _best(having or among, need, most)
    return _protection(need, best, wish.fuse, most, "typed", notes)


def _protection(
    need: Need, choice: _Choice, rating: float, most: float, governed_by: str, notes: Sequence[str]
) -> Protection:
    family, volts = choice.family, working_voltage(need.voltage, need.alternating)
    bare, sheathed, distance_source = distances(need.source, need.regime)
    return Protection(
        kind=family.device,
        family=family.name,
        rating=rating,
        interrupting=choice.interrupts,
        highest_voltage=family.highest_voltage,
        at_most=most,
        at_least=choice.at_least,
        distance=bare,
        sheathed_distance=sheathed,
        at="end" if need.fed_from_end else "start",
        trips_by=family.trips_by * rating,
        price=math.nan if family.price is None else float(family.price.amount),
        currency="" if family.price is None else family.price.currency,
        governed_by=governed_by,
        why=_why(need, choice, rating, most, governed_by),
        findings=(*notes, *_findings(need, choice, rating, most)),
        inputs=(
            Input("continuous load", need.continuous, "current", "computed"),
            Input("rating over a continuous load", need.factor, "ratio", "NEC, from memory"),
            Input("peak", need.peak, "current", "computed"),
            Input("times its rating that the family carries for a second", family.carries_peak, "ratio", "catalogue"),
            Input("ampacity of the conductors", need.ampacity, "current", "computed"),
            Input("highest rating that they allow", most, "current", "computed"),
            Input("fault at the device", need.prospective, "current", "computed"),
            Input("interrupting capacity at that voltage", choice.interrupts, "current", "catalogue"),
            Input("voltage that it must bear", volts, "voltage", "computed"),
        ),
        source=RATING_SOURCES[need.regime],
        distance_source=distance_source,
    )


def _findings(need: Need, choice: _Choice, rating: float, most: float) -> tuple[str, ...]:
    family, volts = choice.family, working_voltage(need.voltage, need.alternating)
    found = []
    if math.isnan(rating):
        found.append(
            f"no family that interrupts the fault is rated {choice.at_least:.3g} A or more: split the circuit, or "
            "raise the voltage"
        )
    elif rating > most * (1.0 + 1e-9):
        found.append(f"{rating:g} A is more than the {most:.3g} A that the conductors allow: a larger conductor")
    if rating < choice.at_least * (1.0 - 1e-9):
        what = "peak" if choice.by_peak else "continuous load"
        found.append(f"{rating:g} A is less than the {choice.at_least:.3g} A that the {what} asks for")
    if volts > family.highest_voltage:
        found.append(f"{family.name} bears {family.highest_voltage:g} V, the circuit has up to {volts:.3g} V")
    elif choice.interrupts < need.prospective:
        found.append(
            f"{family.name} interrupts {choice.interrupts / 1e3:.3g} kA there, the fault is up to "
            f"{need.prospective / 1e3:.3g} kA: a family that interrupts more, a device for each string, or more cable "
            "before it"
        )
    return tuple(found)


def _why(need: Need, choice: _Choice, rating: float, most: float, governed_by: str) -> str:
    family = choice.family
    fault = (
        "the fault there is unknown, so its interrupting capacity is not checked"
        if math.isnan(need.prospective)
        else f"the least costly that interrupts {need.prospective / 1e3:.3g} kA at its voltage"
    )
    if need.wish is not None and need.wish.family == family.name:
        fault = "somebody typed it"
    load = (
        f"carries the peak of {need.peak:.3g} A, {family.carries_peak:g} times its rating"
        if choice.by_peak
        else f"is {need.factor:g} times {need.continuous:.3g} A or more"
    )
    where = "; it sits where the bank feeds the fault, at the far end" if need.fed_from_end else ""
    shown = "no rating" if math.isnan(rating) else f"{rating:g} A"
    if governed_by == "typed":
        load = f"somebody typed it; the load asks for {choice.at_least:.3g} A or more"
    else:
        load = f"the lowest that {load}"
    return f"{family.name}: {fault}. {shown}: {load}; at most {most:.3g} A by the conductors{where}."
