"""The wire schedule, and the whole calculation of each circuit."""

from __future__ import annotations

import math
from dataclasses import dataclass

from anchorwatt.assessment.records import Input
from anchorwatt.catalogue.part import nearest
from anchorwatt.design.design import Design
from anchorwatt.design.specification import Regime, Specification
from anchorwatt.errors import BadDesign
from anchorwatt.physics.conductor import resistance_ratio
from anchorwatt.sizing.conductors import ENGINE_SPACE, PARALLEL_FROM, ambient_share, bundle_share, resistance, said
from anchorwatt.sizing.terminations import COLOURS_SOURCE, Busbar
from anchorwatt.sizing.wiring import TERMINALS, WiredCircuit, Wiring

TABLE_5 = "33 CFR 183.425 table 5"
NOTE_1, NOTE_2 = f"{TABLE_5} note 1", f"{TABLE_5} note 2"
METRIC_TABLE = "ISO 13297, from memory: no copy was found"
DROP_SOURCE = "Ohm's law"
DROP_CLASS = "3 % and 10 %: ABYC E-11 and ISO 13297, from memory"

ASSUMPTIONS = (
    (
        "Lengths are distances between the ends along the boat's three axes, times a routing factor, plus slack. Ends "
        "that the file places nowhere stand in the middle of their compartment: type wiring.circuits.TAG.length once a "
        "tape has been along the run."
    ),
    (
        "Inverter, charger, transformer and alternators are wired for their ratings or set limits, shore power for "
        "what the service gives, loads for their power while they run, feeders for the highest minute of the runs."
    ),
    (
        f"{ENGINE_SPACE:g} °C round a run that touches a compartment with an engine, 30 °C round others, or what the "
        "compartment's air reached in the runs where that is more."
    ),
    (
        f"Conductors lie side by side for one pole only from {1e6 * PARALLEL_FROM:g} mm² or 1/0 AWG, of one length and "
        "one lug each, from memory. Colours, lugs, studs and bars are from memory."
    ),
)

CAUTIONS = (
    "A wire schedule is not an installation: a certified electrician checks each size, each fuse and each crimp.",
    (
        "A battery bank can melt a spanner and weld it to its posts. Disconnect and cover before work; torque every "
        "lug and look again after a season."
    ),
    "Shore power kills: alternating current is for licensed people, and earth and neutral follow the local code.",
)

BUNDLES = {
    Regime.CFR: "conductors of a bundle count from 50 V up",
    Regime.ISO: "conductors of a bundle count from 50 V up; ISO leaves direct current to the maker, from memory",
    Regime.ABYC: "conductors of a bundle count below 50 V too, the cautious reading; reprints disagree",
}


@dataclass(frozen=True)
class Step:
    """One step of a circuit's calculation."""

    name: str
    value: float  # SI, nan = it has none
    dimension: str  # of the units room, "ratio" or "money"
    limit: float  # what it is held against, nan = nothing
    formula: str  # in words
    source: str


@dataclass(frozen=True)
class CircuitWhy:
    """Everything behind one circuit."""

    wired: WiredCircuit
    inputs: tuple[Input, ...]
    steps: tuple[Step, ...]
    governed_by: str  # in words


@dataclass(frozen=True)
class WiringStory:
    """The wire schedule of a boat."""

    wiring: Wiring
    currency: str  # of the offer, in which costs over the years are told
    years: float
    ends: tuple[tuple[str, str], ...]  # tags and what they are, in the order in which circuits meet them
    assumptions: tuple[str, ...] = ASSUMPTIONS
    cautions: tuple[str, ...] = CAUTIONS

    @property
    def regime(self) -> str:
        """The rules, and what they say of bundles."""
        return f"{self.wiring.regime.value}: {BUNDLES[self.wiring.regime]}"

    @property
    def colours_source(self) -> str:
        """Where the colours are from."""
        return COLOURS_SOURCE[self.wiring.regime]

    @property
    def busbars(self) -> tuple[Busbar, ...]:
        """Bars where several circuits meet."""
        return self.wiring.busbars

    def of_system(self, system: str) -> tuple[WiredCircuit, ...]:
        """Circuits of one kind: "dc", "ac", "control" or "bonding"."""
        return tuple(one for one in self.wiring.circuits if one.circuit.system == system)

    def why(self, tag: str) -> CircuitWhy:
        """The whole calculation of a circuit.

        Raises
        ------
        KeyError
            no such circuit; the text says which there are.
        """
        return circuit_why(self.wiring.circuit(tag), self.years)


def wiring_story(design: Design, specification: Specification, found: Wiring) -> WiringStory:
    """The wire schedule.

    Raises
    ------
    BadDesign
        the file says something of a circuit that there is not.
    """
    tags = [one.tag for one in found.circuits]
    problems = tuple(
        design.document.problem(
            ("wiring", "circuits", tag),
            f"no circuit “{tag}”{nearest(tag, tags)}",
            f"a tag from {tags[0]} to {tags[-1]}",
        )
        for tag in found.unknown
    )
    if problems:
        raise BadDesign(problems)
    ends: dict[str, str] = {}
    for one in found.circuits:
        ends.setdefault(one.circuit.start, one.circuit.start_name.split(", string")[0])
        ends.setdefault(one.circuit.end, one.circuit.end_name)
    return WiringStory(found, specification.offer.currency, specification.wiring.years, tuple(ends.items()))


def circuit_why(wired: WiredCircuit, years: float) -> CircuitWhy:
    """Every step of a circuit's calculation."""
    steps = [*_current(wired), *_ampacity(wired), *_drop(wired), *_terminals(wired), *_protection(wired)]
    return CircuitWhy(
        wired=wired,
        inputs=wired.circuit.inputs,
        steps=(*steps, *_masses(wired), *_costs(wired, years)),
        governed_by=f"{wired.conductor.governed_by}: {wired.why}",
    )


def _current(wired: WiredCircuit) -> list[Step]:
    circuit = wired.circuit
    runs = "the design and its runs"
    return [
        Step("continuous current", circuit.continuous, "current", math.nan, circuit.current_formula, runs),
        Step("peak current", circuit.peak, "current", math.nan, "what it carries for seconds", runs),
        Step(
            "length, one way",
            circuit.length,
            "length",
            math.nan,
            "typed" if circuit.length_typed else "distance along the axes times routing factor, and slack",
            "the places of its ends",
        ),
    ]


def _ampacity(wired: WiredCircuit) -> list[Step]:
    circuit, conductor = wired.circuit, wired.conductor
    size, run = conductor.conductor, conductor.circuit
    warm = ambient_share(circuit.insulation, circuit.ambient)
    bundle = bundle_share(circuit.bundled, run.bundle_voltage)
    listed = conductor.ampacity / (warm * bundle * conductor.parallel)
    table = TABLE_5 if size.gauge is not None else METRIC_TABLE
    return [
        Step(
            f"{size.name} in the table",
            listed,
            "current",
            math.nan,
            f"insulation of {circuit.insulation:g} °C, singly in air of 30 °C",
            table,
        ),
        Step("left by the air round it", warm, "share", math.nan, f"air of {circuit.ambient:.3g} °C", NOTE_1),
        Step(
            "left by its bundle",
            bundle,
            "share",
            math.nan,
            f"{circuit.bundled} conductors that carry current, {circuit.voltage:.3g} V",
            NOTE_2,
        ),
        Step(
            "may carry",
            conductor.ampacity,
            "current",
            circuit.continuous,
            "the three together"
            + ("" if conductor.parallel == 1 else f", times {conductor.parallel} side by side")
            + "; not less than the continuous current",
            table,
        ),
        Step(
            "temperature it reaches",
            conductor.temperature,
            "temperature",
            circuit.insulation,
            "rise with the square of the current",
            "the law behind note 1",
        ),
    ]


def _drop(wired: WiredCircuit) -> list[Step]:
    conductor, run = wired.conductor, wired.conductor.circuit
    if wired.circuit.system == "bonding":
        return []
    ohms = resistance(conductor.conductor) * resistance_ratio(conductor.temperature) * run.loop / conductor.parallel
    return [
        Step(
            "resistance out and back",
            ohms,
            "resistance",
            math.nan,
            "resistance a metre at the temperature that it reaches, times twice the length",
            "IEC 60028; IEC 60228 or ASTM B258",
        ),
        Step(
            "voltage that it loses",
            conductor.drop,
            "voltage",
            run.highest_drop * run.voltage,
            f"current times that; at most {100.0 * run.highest_drop:g} % of {run.voltage:.4g} V",
            DROP_SOURCE,
        ),
        Step("share that it loses", conductor.drop_share, "share", run.highest_drop, "of the voltage", DROP_CLASS),
        Step("power that it loses", conductor.loss, "power", math.nan, "at the continuous current", "Joule's law"),
    ]


def _terminals(wired: WiredCircuit) -> list[Step]:
    if math.isnan(wired.terminal_ampacity):
        return []
    column = TERMINALS[wired.conductor.conductor.gauge is None]
    return [
        Step(
            "its terminals leave",
            wired.terminal_ampacity,
            "current",
            wired.circuit.continuous,
            f"column of {column:g} °C: breakers and sockets bear no more",
            "the land code of the US, from memory",
        )
    ]


def _protection(wired: WiredCircuit) -> list[Step]:
    found = wired.protection
    steps: list[Step] = []
    if not math.isnan(wired.prospective):
        steps.append(
            Step(
                "fault where it begins",
                wired.prospective,
                "current",
                math.nan,
                "what its source gives through what lies before it",
                "Ohm's law",
            )
        )
    if not math.isnan(wired.fault_at_end):
        steps.append(
            Step(
                "fault at its far end",
                wired.fault_at_end,
                "current",
                math.nan,
                "the same with its own conductors in the loop",
                "Ohm's law",
            )
        )
    if found is not None:
        volts = f"bears {found.highest_voltage:g} V"
        steps += [
            Step(f"{found.kind}, {found.family}", found.rating, "current", found.at_most, found.why, found.source),
            Step("interrupts", found.interrupting, "current", wired.prospective, volts, "the catalogue"),
            Step(
                "within, of its source",
                found.distance,
                "length",
                math.nan,
                "along the conductor, run without a sheath",
                found.distance_source,
            ),
        ]
        steps += [Step("does not hold", math.nan, "ratio", math.nan, words, found.source) for words in found.findings]
    return steps


def _masses(wired: WiredCircuit) -> list[Step]:
    conductor = wired.conductor
    return [
        Step(
            "copper",
            conductor.copper,
            "mass",
            math.nan,
            f"{conductor.circuit.cores * conductor.parallel} conductors of that length",
            "IEC 60028: 8890 kg/m³; strands 2 % longer, from memory",
        ),
        Step("with insulation", conductor.mass, "mass", math.nan, "a share for insulation", "from memory"),
    ]


def _costs(wired: WiredCircuit, years: float) -> list[Step]:
    words = f"cable, carrying it and the energy lost in it over {years:g} years, at the mean square of the current"
    source = "prices of the catalogue, which are invented; energy and mass as under wiring"
    steps = [Step("cost as laid", wired.cost.total, "money", math.nan, words, source)]
    best = wired.optimum
    if best is not None:
        name = said(best.conductor, best.parallel)
        allowed = "" if wired.optimum_allowed else "; the rules demand more copper"
        steps.append(Step(f"least cost, with {name}", best.total, "money", math.nan, f"the same{allowed}", source))
    return steps
