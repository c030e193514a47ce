"""Safety of the AC side: earth faults, where neutral and earth are joined, galvanic isolation, polarity."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.design.specification import Specification
from anchorwatt.sizing.ends import Ends, along_axes

NEAR_INLET = 3.0
"""m of the inlet within which an isolation transformer takes the place of an earth-fault device: 10 ft, ABYC E-11
11.11.1 by a forum."""

TRIP_CURRENT = 0.030
"""A of leakage at which the device on shore power trips: ABYC E-11 and ISO 13297."""

TRIP_TIME = 0.1
"""s within which it trips. From memory."""


@dataclass(frozen=True)
class Bond:
    """Whether neutral and earth are joined aboard while a source feeds the boat, and where."""

    source: str
    joined: bool
    where: str
    why: str


@dataclass(frozen=True)
class AcSafety:
    """What the AC side needs, by what the design has."""

    shore: bool
    isolating: bool  # whether a transformer of two windings stands before the loads
    isolates_all: bool  # whether nothing that shore power feeds lies outside its secondary
    autotransformer: bool  # a transformer whose windings are one: it isolates nothing
    to_transformer: float  # m from the inlet along the boat's axes, nan = none
    earth_fault_needed: bool
    earth_fault_why: str
    galvanic_needed: bool
    galvanic_why: str
    polarity_needed: bool
    polarity_why: str
    bonds: tuple[Bond, ...]


def ac_safety(specification: Specification) -> AcSafety:
    """What the AC side of a design needs."""
    shore, transformer = specification.shore is not None, specification.transformer
    isolating = transformer is not None and transformer.isolating
    bypassed = shore and specification.charger is not None
    ends = Ends(specification)
    apart = float("nan") if ends.transformer is None else along_axes(ends.inlet.position, ends.transformer.position)
    isolates_all = isolating and not bypassed
    near = isolates_all and apart <= NEAR_INLET
    return AcSafety(
        shore=shore,
        isolating=isolating,
        isolates_all=isolates_all,
        autotransformer=transformer is not None and not transformer.isolating,
        to_transformer=apart,
        earth_fault_needed=shore and not near,
        earth_fault_why=_earth_fault_why(shore, isolating, bypassed, near, apart),
        galvanic_needed=shore and not isolates_all,
        galvanic_why=_galvanic_why(shore, isolating, bypassed),
        polarity_needed=shore and not isolates_all,
        polarity_why="an isolation transformer makes a polarity of its own"
        if isolates_all
        else "shore polarity reaches the loads or the charger",
        bonds=_bonds(specification, isolating),
    )


def _earth_fault_why(shore: bool, isolating: bool, bypassed: bool, near: bool, apart: float) -> str:
    if not shore:
        return "no shore power"
    if near:
        return f"an isolation transformer takes its place, {apart:.1f} m from the inlet"
    if not isolating:
        return "nothing isolates the boat from shore"
    if bypassed:
        return "the charger hangs on shore power before the isolation transformer"
    return f"the isolation transformer is {apart:.1f} m from the inlet, more than {NEAR_INLET:g} m"


def _galvanic_why(shore: bool, isolating: bool, bypassed: bool) -> str:
    if not shore:
        return "no shore power"
    if isolating and bypassed:
        return "the charger brings the shore's earth aboard, round the isolation transformer"
    return "an isolation transformer keeps the shore's earth ashore" if isolating else "the shore's earth comes aboard"


def _bonds(specification: Specification, isolating: bool) -> tuple[Bond, ...]:
    sources = ("inverter",) if specification.shore is None else ("shore power", "inverter")
    if isolating:
        own = "the secondary is a source of its own, always"
        return tuple(Bond(source, True, "the transformer's secondary", own) for source in sources)
    ashore = Bond("shore power", False, "ashore", "neutral is earthed at its source, which is ashore")
    relay = "the inverter, by a relay that opens on shore power"
    aboard = Bond("inverter", True, relay, "the inverter is the source then")
    return (ashore, aboard)[-len(sources) :]
