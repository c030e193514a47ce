"""The wiring command: the wire schedule, and one circuit's whole calculation."""

from __future__ import annotations

import math
from difflib import get_close_matches
from typing import TYPE_CHECKING, Any

from anchorwatt.errors import AnchorwattError
from anchorwatt.papers import screens
from anchorwatt.papers.as_json import si_unit
from anchorwatt.papers.keys import in_unit
from anchorwatt.papers.page import Content, Gap, Paragraph, Side, Words, page, section, table, unbroken
from anchorwatt.papers.tabular import heading_unit
from anchorwatt.sizing.wiring import BONDING_RULE
from anchorwatt.units import System, convert, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.wiring import CircuitWhy, Step, WiringStory
    from anchorwatt.sizing.wiring import WiredCircuit

Plain = dict[str, Any]

SYSTEMS = {
    "dc": "Direct current",
    "ac": "Alternating current",
    "control": "Control and network",
    "bonding": "Bonding",
}
SHORT = {"voltage drop": "drop", "smallest size allowed": "smallest", BONDING_RULE: "one size"}


def screen(assessment: Assessment, system: System, cost: bool = True) -> Content:
    """The schedule, what its tags are, bars, totals, and what was assumed; what cable costs can be left out."""
    made = assessment.wiring
    parts: list[Content] = [screens.about(assessment), Paragraph(f"Rules: {made.regime}."), Gap()]
    parts += [section(title, _schedule(made, key, system)) for key, title in SYSTEMS.items() if made.of_system(key)]
    return page(*parts, *_around(assessment, system, cost))


def around(assessment: Assessment, system: System) -> Content:
    """All but the schedule itself: bars, totals, and what was assumed."""
    return page(screens.about(assessment), *_around(assessment, system, cost=True))


def schedule(assessment: Assessment, system: System) -> tuple[tuple[str, ...], list[tuple[str, ...]]]:
    """Heads and rows of the schedule in one table, tag first."""
    made, long = assessment.wiring, heading_unit("length", system)
    heads = ("tag", "circuit", "A", f"one way, {long}", "size", "drop, %", "governed by, fuse")
    rows = [_line(one, long) for key in SYSTEMS for one in made.of_system(key)]
    return heads, [tuple(cell.replace("\n", ", ") for cell in row) for row in rows]


def _around(assessment: Assessment, system: System, cost: bool) -> list[Content]:
    made = assessment.wiring
    return [
        section("Fuses and breakers", _devices(made), *_findings(made)),
        section("What the tags are", table(("", ""), ("<", "<"), made.ends)),
        section("Bars", _bars(made)),
        section("All cables", _totals(made, system, cost)),
        section("What was assumed", *(Paragraph(words) for words in made.assumptions)),
        section("Before you cut cable", *(Paragraph(words) for words in made.cautions)),
        screens.cautions(assessment),
    ]


def rows(assessment: Assessment, cost: bool = True) -> list[Plain]:
    """A mapping a circuit; what its cable costs, and what the least costly would be, can be left out."""
    found = [_row(one, assessment.wiring.currency) for one in assessment.wiring.wiring.circuits]
    return found if cost else [{key: cell for key, cell in row.items() if key not in COSTS} for row in found]


def why(assessment: Assessment, tag: str) -> CircuitWhy:
    """One circuit's calculation, or an error that names the nearest tag."""
    tags = [one.tag for one in assessment.wiring.wiring.circuits]
    if tag not in tags:
        near = get_close_matches(tag.upper(), tags, n=1)
        hint = f", perhaps “{near[0]}”" if near else ""
        raise AnchorwattError(f"--why: found no circuit “{tag}”{hint}; allowed: one of {tags[0]} to {tags[-1]}")
    return assessment.wiring.why(tag)


def why_screen(found: CircuitWhy, currency: str, system: System) -> Content:
    """One circuit's calculation, step by step."""
    wired, circuit = found.wired, found.wired.circuit
    name = f"{circuit.tag}, {circuit.function}: {circuit.start_name} to {circuit.end_name}"
    inputs = [(one.name, _figure(one.value, one.dimension, currency, system), one.basis) for one in found.inputs]
    steps = [_step(step, currency, system) for step in found.steps]
    return page(
        section(
            name,
            Words(f"{_size(wired)}, {wired.colour}; {wired.lug}; {_fuse(wired)}."),
            Words(f"Governed by {found.governed_by}."),
        ),
        section("What it rests on", table(("from", "", "which is"), ("<", ">", "<"), inputs)),
        section("Step by step", table(("", "", "against", "how, and source"), ("<", ">", ">", "<"), steps)),
    )


def why_plain(found: CircuitWhy, currency: str) -> Plain:
    """What `--why` shows, as plain data."""
    return {
        **_row(found.wired, currency),
        "why": found.governed_by,
        "inputs": [
            {
                "name": one.name,
                "value": in_unit(one.value, si_unit(one.dimension), one.dimension),
                "unit": si_unit(one.dimension),
                "basis": one.basis,
            }
            for one in found.inputs
        ],
        "steps": [
            {
                "name": one.name,
                "value": in_unit(one.value, si_unit(one.dimension), one.dimension),
                "limit": in_unit(one.limit, si_unit(one.dimension), one.dimension),
                "unit": si_unit(one.dimension),
                "formula": one.formula,
                "source": one.source,
            }
            for one in found.steps
        ],
    }


def bars(assessment: Assessment) -> list[Plain]:
    """A mapping a bar."""
    return [
        {
            "tag": one.tag,
            "name": one.name,
            "current_A": in_unit(one.current, "A", "current"),
            "rating_A": in_unit(one.rating, "A", "current"),
            "section_mm2": in_unit(one.area, "mm²", "cross-section"),
        }
        for one in assessment.wiring.busbars
    ]


def totals(assessment: Assessment) -> Plain:
    """All cables together."""
    made = assessment.wiring.wiring
    return {
        "circuits": len(made.circuits),
        "conductor_m": in_unit(made.length, "m", "length"),
        "copper_kg": in_unit(made.copper_mass, "kg", "mass"),
        "mass_kg": in_unit(made.mass, "kg", "mass"),
        "price": in_unit(made.price, "", "money"),
        "currency": made.currency or None,
    }


def sheets(assessment: Assessment) -> dict[str, list[Plain]]:
    """The sheets of a workbook."""
    made = assessment.wiring
    words = [{"caution": one} for one in (*made.cautions, *assessment.cautions)]
    return {
        "circuits": rows(assessment),
        "bars": bars(assessment),
        "ends": [{"tag": tag, "name": name} for tag, name in made.ends],
        "totals": [totals(assessment)],
        "cautions": words,
    }


COSTS = (
    "price",
    "currency",
    "cost_over_years",
    "least_cost_conductor",
    "least_cost_side_by_side",
    "least_cost_over_years",
    "least_cost_allowed",
    "cost_currency",
)
"""Keys of a row that tell what cable costs."""


def _row(one: WiredCircuit, currency: str) -> Plain:
    circuit, conductor, guard, best = one.circuit, one.conductor, one.protection, one.optimum
    return {
        "tag": circuit.tag,
        "from": circuit.start,
        "from_name": circuit.start_name,
        "to": circuit.end,
        "to_name": circuit.end_name,
        "function": circuit.function,
        "system": circuit.system,
        "colour": one.colour,
        "nominal_V": in_unit(circuit.voltage, "V", "voltage"),
        "frequency_Hz": in_unit(circuit.frequency, "Hz", "frequency"),
        "current_A": in_unit(circuit.continuous, "A", "current"),
        "peak_A": in_unit(circuit.peak, "A", "current"),
        "one_way_m": in_unit(circuit.length, "m", "length"),
        "length_typed": circuit.length_typed,
        "conductor": conductor.conductor.name,
        "side_by_side": conductor.parallel,
        "cores": circuit.cores,
        "section_mm2": in_unit(conductor.area, "mm²", "cross-section"),
        "ambient_C": in_unit(circuit.ambient, "°C", "temperature"),
        "bundled": circuit.bundled,
        "insulation_C": in_unit(circuit.insulation, "°C", "temperature"),
        "ampacity_A": in_unit(conductor.ampacity, "A", "current"),
        "terminals_A": in_unit(one.terminal_ampacity, "A", "current"),
        "temperature_C": in_unit(conductor.temperature, "°C", "temperature"),
        "drop_V": in_unit(conductor.drop, "V", "voltage"),
        "drop_pct": in_unit(conductor.drop_share, "%", "share"),
        "highest_drop_pct": in_unit(circuit.highest_drop, "%", "share"),
        "loss_W": in_unit(conductor.loss, "W", "power"),
        "governed_by": conductor.governed_by,
        "fault_A": in_unit(one.prospective, "A", "current"),
        "fault_at_end_A": in_unit(one.fault_at_end, "A", "current"),
        "protection": None if guard is None else guard.kind,
        "protection_family": None if guard is None else guard.family,
        "protection_A": None if guard is None else in_unit(guard.rating, "A", "current"),
        "protection_at_most_A": None if guard is None else in_unit(guard.at_most, "A", "current"),
        "interrupting_A": None if guard is None else in_unit(guard.interrupting, "A", "current"),
        "protection_at": None if guard is None else guard.at,
        "protection_findings": None if guard is None else "; ".join(guard.findings),
        "protection_within_m": None if guard is None else in_unit(guard.distance, "m", "length"),
        "lugs": one.lug,
        "copper_kg": in_unit(conductor.copper, "kg", "mass"),
        "mass_kg": in_unit(conductor.mass, "kg", "mass"),
        "price": in_unit(conductor.price, "", "money"),
        "currency": conductor.currency or None,
        "cost_over_years": in_unit(one.cost.total, "", "money"),
        "least_cost_conductor": None if best is None else best.conductor.name,
        "least_cost_side_by_side": None if best is None else best.parallel,
        "least_cost_over_years": None if best is None else in_unit(best.total, "", "money"),
        "least_cost_allowed": None if best is None else one.optimum_allowed,
        "cost_currency": currency,
    }


def _schedule(made: WiringStory, key: str, system: System) -> Content:
    long = heading_unit("length", system)
    heads = ("", "from → to\ncolour", "A", f"one way\n{long}", "size", "drop\n%", "governed by\nfuse")
    sides: tuple[Side, ...] = ("<", "<", ">", ">", "<", ">", "<")
    lines = [_line(one, long) for one in made.of_system(key)]
    return table(heads, sides, lines, free=1, shares=(4, 22, 4, 5, 8, 4, 13))


def _line(one: WiredCircuit, long: str) -> tuple[str, ...]:
    circuit, conductor = one.circuit, one.conductor
    drop = "—" if circuit.system == "bonding" else f"{100.0 * conductor.drop_share:.1f}"
    fuse = "" if circuit.system in ("bonding", "control") else f"\n{_fuse(one)}"
    return (
        circuit.tag,
        f"{circuit.function}\n{circuit.start} → {circuit.end}, {one.colour}",
        "—"
        if circuit.system == "bonding"
        else show(circuit.continuous, "current", "si").split()[0]
        if circuit.continuous >= 1.0
        else f"{circuit.continuous:.2f}",
        f"{convert(circuit.length, long, 'length'):.1f}",
        _size(one),
        drop,
        f"{SHORT.get(conductor.governed_by, conductor.governed_by)}{fuse}",
    )


def _size(one: WiredCircuit) -> str:
    return unbroken(one.conductor.size)


def _fuse(one: WiredCircuit) -> str:
    guard = one.protection
    if guard is None:
        return "no fuse"
    return unbroken(f"{guard.rating:g} A {guard.kind}")


def _devices(made: WiringStory) -> Content:
    """A row a family and rating, with the circuits that have one."""
    alike: dict[tuple[str, float], list[str]] = {}
    for one in made.wiring.circuits:
        if one.protection is not None:
            alike.setdefault((one.protection.family, one.protection.rating), []).append(one.tag)
    lines = [(family, f"{rating:g}", " ".join(tags)) for (family, rating), tags in sorted(alike.items())]
    return table(("", "A", "circuits"), ("<", ">", "<"), lines, free=2)


def _findings(made: WiringStory) -> list[Content]:
    return [
        Paragraph(f"{one.tag} does not hold: {words}.")
        for one in made.wiring.circuits
        if one.protection is not None
        for words in one.protection.findings
    ]


def _bars(made: WiringStory) -> Content:
    heads = ("", "", "A", "bar of A", "copper mm²")
    lines = [
        (one.tag, one.name, f"{one.current:.0f}", f"{one.rating:.0f}", f"{1e6 * one.area:.0f}") for one in made.busbars
    ]
    return table(heads, ("<", "<", ">", ">", ">"), lines)


def _totals(made: WiringStory, system: System, cost: bool) -> Content:
    wiring = made.wiring
    lines = [
        (str(len(wiring.circuits)), "circuits"),
        (show(wiring.length, "length", system), "of conductor, earth counted"),
        (show(wiring.copper_mass, "mass", system), "of copper"),
        (show(wiring.mass, "mass", system), "with insulation"),
    ]
    if cost:
        price = "unknown" if math.isnan(wiring.price) else f"{wiring.price:.0f} {wiring.currency}"
        lines.append((price, "for the cable, at prices of the catalogue, which are invented"))
    return table(("", ""), (">", "<"), lines)


def _step(step: Step, currency: str, system: System) -> tuple[str, str, str, str]:
    limit = "" if math.isnan(step.limit) else _figure(step.limit, step.dimension, currency, system)
    return (
        step.name,
        _figure(step.value, step.dimension, currency, system),
        limit,
        f"{step.formula} ({step.source})",
    )


def _figure(value: float, dimension: str, currency: str, system: System) -> str:
    if dimension == "money":
        return "unknown" if math.isnan(value) else unbroken(f"{value:.0f} {currency}")
    if dimension == "ratio":
        return "" if math.isnan(value) else f"{value:g}"
    return unbroken(screens.figure(value, dimension, system))
