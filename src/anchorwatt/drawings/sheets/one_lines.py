"""One-line diagrams: direct current, alternating current, control and network, bonding."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from anchorwatt.drawings.sheets.body import AC, BONDING, CONTROL, DC, Body
from anchorwatt.drawings.sheets.circuit_trees import first, trees
from anchorwatt.drawings.sheets.paper import Paper
from anchorwatt.drawings.sheets.things import things
from anchorwatt.drawings.sheets.tree import InLine, Link, tree_bodies
from anchorwatt.sizing.ends import Ends
from anchorwatt.sizing.terminals import protection_tag
from anchorwatt.sizing.wiring import WiredCircuit
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

LAYER = {"dc": DC, "ac": AC, "control": CONTROL, "bonding": BONDING}

LITHIUM = "A battery bank melts a spanner laid across its posts: disconnect and cover it before work."
SHORE = "Shore power kills: unplug it ashore first, and leave alternating current to licensed people."
RUNNING = "Never disconnect the bank while an alternator charges it."

READ = (
    "Over each line: its tag and its length one way; under it: its conductors, all of one size. F1 is the fuse or "
    "breaker of W1. Symbols after IEC 60617, letters after IEC 81346-2, both from memory."
)


MAIN_SWITCH = "Q0"
"""Tag of the bank's switch: Q for a switch after IEC 81346-2, and a number that no circuit has."""


def link(wired: WiredCircuit, system: System, switched: bool = False) -> Link:
    """A circuit as a line of a one-line diagram.

    Parameters
    ----------
    switched : whether the bank's switch is in it, behind its fuse
    """
    circuit, size, guard = wired.circuit, wired.conductor.size, wired.protection
    length = show(circuit.length, "length", system)
    guards: tuple[InLine, ...] = ()
    if guard is not None:
        at = circuit.start if guard.at == "start" else circuit.end
        guards = (InLine(guard.kind.upper(), protection_tag(circuit.tag), guard.rated, at),)
    if switched:
        guards += (InLine("SWITCH", MAIN_SWITCH, "main", circuit.start),)
    return Link(
        key=f"circuit:{circuit.function}",
        tag=circuit.tag,
        layer=LAYER[circuit.system],
        above=f"{circuit.tag}  {length}",
        below=size,
        start=circuit.start,
        end=circuit.end,
        in_line=guards,
        told=f"{circuit.tag}, {circuit.function}: {size}, {length}",
    )


def dc_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """Direct current: what charges stands left of the bus, what it feeds right of it."""
    ends = Ends(assessment.specification)
    charging = [ends.bank_bus, ends.charger]
    for machine, regulator in zip(ends.alternators, ends.regulators, strict=True):
        charging += [machine, regulator]
    charging.append(ends.controller)
    return _sheets(
        assessment,
        paper,
        system,
        "dc",
        ends.dc_bus.tag,
        [end.tag for end in charging if end is not None],
        "Direct current, one-line diagram",
        (LITHIUM, RUNNING),
        notes=(_switch(assessment),),
    )


def _switch(assessment: Assessment) -> str:
    """What the design says of the bank's switch."""
    match assessment.specification.installation.battery_switch:
        case True:
            return f"{MAIN_SWITCH}: the bank's switch, within reach."
        case False:
            return "The bank has no switch in every ungrounded conductor: the checks say what that means."
        case _:
            return "Whether the bank has a switch, nobody has said: installation.battery_switch."


def ac_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """Alternating current: shore and inverter left of the transfer switch, what they feed right of it."""
    ends = Ends(assessment.specification)
    sources = [ends.breaker.tag, ends.inverters.tag]
    title = "Alternating current, one-line diagram"
    return _sheets(assessment, paper, system, "ac", ends.transfer.tag, sources, title, (SHORE, LITHIUM))


def control_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """Control and network: what may stop charging or discharging, sensors, displays."""
    ends = Ends(assessment.specification)
    left = [*(end.tag for end in ends.regulators), ends.controller.tag]
    sensors = [tag for tag, _ in assessment.wiring.ends if tag.startswith("B")]
    title = "Control and network"
    return _sheets(
        assessment,
        paper,
        system,
        "control",
        ends.management.tag,
        [*sensors, *left],
        title,
        (RUNNING,),
        notes=("A permit that fails, or whose wire breaks, must stop what it permits: prove it before hand-over.",),
    )


def bonding_sheets(assessment: Assessment, paper: Paper, system: System) -> tuple[Body, ...]:
    """Bonding: every metal case, and the negative bar, to the bonding bus."""
    ends = Ends(assessment.specification)
    alternators = [end.tag for end in ends.alternators]
    return _sheets(assessment, paper, system, "bonding", ends.bonding.tag, [], "Bonding", (LITHIUM,), last=alternators)


def _sheets(
    assessment: Assessment,
    paper: Paper,
    system: System,
    kind: str,
    root: str,
    left: list[str],
    title: str,
    cautions: tuple[str, ...],
    notes: tuple[str, ...] = (),
    last: Sequence[str] = (),
) -> tuple[Body, ...]:
    """Sheets of the circuits of one kind.

    Parameters
    ----------
    left : tags of what stands left of the middle, from the top down
    last : tags of what stands below all else: that of which a boat may get one more
    """
    wiring, main = assessment.wiring, Ends(assessment.specification).bank_bus.tag
    switch = assessment.specification.installation.battery_switch
    links = [
        link(wired, system, switched=bool(switch) and wired.circuit.start == main) for wired in wiring.of_system(kind)
    ]
    order = {tag: place for place, tag in enumerate(left)} | {tag: len(left) + 1 for tag in last}
    grown = [
        first(tree, lambda tag: order.get(tag, len(left)))
        for tree in trees(links, things(assessment, system), root, lambda tag: tag in left)
    ]
    name = {"dc": "dc-one-line", "ac": "ac-one-line"}.get(kind, kind)
    return tree_bodies(
        grown,
        paper,
        name=name,
        title=title,
        about=f"{len(links)} circuits, each with its tag, length and conductor.",
        notes=(READ, *notes),
        cautions=cautions,
    )
