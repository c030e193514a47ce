"""Every conductor of every circuit with its marker, its colour and the two terminals that it is landed on.

All of it follows from the wire schedule. Buses and panels number their terminals by the circuits that meet there, in
the schedule's order; devices name them by what they do. Which letters that are is ours, in the manner of what makers
print; letters of parts (X a terminal or bus, F a protective device) are those of IEC 81346-2, from memory.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass

from anchorwatt.sizing.circuits import Circuit
from anchorwatt.sizing.wiring import WiredCircuit

PLUS, MINUS = "+", "−"

NUMBERED = "numbered"
"""Colour of a core that its number tells apart, not a colour."""

BUSES = ("bus", "panel")
"""Last word of the name of an end of letter X whose terminals are numbered."""


@dataclass(frozen=True)
class Terminal:
    """Where a conductor ends."""

    end: str  # tag of the part, bus or panel
    name: str  # on it, unique there

    @property
    def whole(self) -> str:
        """Both, as they are written on a label."""
        return f"{self.end}:{self.name}"


@dataclass(frozen=True)
class Core:
    """One conductor of a circuit."""

    circuit: str  # tag
    name: str  # "+", "−", "L", "L1", "L2", "N", "PE", or the number of a control core
    number: int  # of those side by side for one pole, from 1
    parallel: int  # how many of them there are
    colour: str
    start: Terminal
    end: Terminal

    @property
    def marker(self) -> str:
        """What is written on both its ends, unique on the boat."""
        return f"{self.circuit}{_after(self.name)}{_beside(self.number, self.parallel)}"

    @property
    def live(self) -> bool:
        """Whether a fuse or breaker of its circuit stands in it: the positive, and each line."""
        return self.name == PLUS or self.name.startswith("L")


def cores(wired: Iterable[WiredCircuit]) -> tuple[Core, ...]:
    """All conductors, circuit by circuit in the schedule's order, those side by side after one another.

    Parameters
    ----------
    wired : the whole schedule; a part of it would number terminals otherwise
    """
    met: Counter[tuple[str, str]] = Counter()
    return tuple(core for one in wired for core in _cores(one, met))


def core_names(circuit: Circuit) -> tuple[str, ...]:
    """What a circuit's conductors are called, those side by side once.

    Example
    -------
    >>> from types import SimpleNamespace
    >>> core_names(SimpleNamespace(system="ac", poles=3, cores=4))
    ('L1', 'L2', 'N', 'PE')
    """
    if circuit.system == "dc":
        return PLUS, MINUS
    if circuit.system == "ac":
        return ("L", "N", "PE") if circuit.poles < 3 else ("L1", "L2", "N", "PE")
    if circuit.system == "bonding":
        return ("PE",)
    return tuple(f"{number}" for number in range(1, circuit.cores + 1))


def protection_tag(circuit: str) -> str:
    """Tag of the fuse or breaker of a circuit.

    Example
    -------
    >>> protection_tag("W5")
    'F5'
    """
    return f"F{circuit.removeprefix('W')}"


def is_bus(tag: str, name: str) -> bool:
    """Whether circuits meet on this end rather than end there: a bus or a panel.

    Example
    -------
    >>> is_bus("X2", "DC bus"), is_bus("X6", "shore inlet"), is_bus("L3", "control panel")
    (True, False, False)
    """
    return tag.startswith("X") and name.split(" ")[-1] in BUSES


def begins_at_hub(circuit: Circuit, met: Mapping[str, int]) -> bool:
    """Whether a circuit's hub, where it is drawn, is its start.

    A bus or panel comes before a device; of two of them what feeds the other, so that one load more moves no feeder;
    of two devices the one where more circuits meet.

    Parameters
    ----------
    met : circuits by end, from `meeting`
    """
    start, end = is_bus(circuit.start, circuit.start_name), is_bus(circuit.end, circuit.end_name)
    if start or end:
        return start
    return met[circuit.start] >= met[circuit.end]


def meeting(wired: Iterable[WiredCircuit]) -> Counter[str]:
    """How many circuits meet at each end, in the order in which the schedule comes to them."""
    return Counter(end for one in wired for end in (one.circuit.start, one.circuit.end))


def _cores(wired: WiredCircuit, met: Counter[tuple[str, str]]) -> Iterator[Core]:
    circuit, parallel = wired.circuit, wired.conductor.parallel
    names = core_names(circuit)
    colours = [NUMBERED] * len(names) if circuit.system == "control" else wired.colour.split(", ")
    start = _names(circuit, circuit.start, circuit.start_name, met)
    end = _names(circuit, circuit.end, circuit.end_name, met)
    for name, colour, from_name, to_name in zip(names, colours, start, end, strict=True):
        for number in range(1, parallel + 1):
            beside = _beside(number, parallel)
            yield Core(
                circuit=circuit.tag,
                name=name,
                number=number,
                parallel=parallel,
                colour=colour,
                start=Terminal(circuit.start, f"{from_name}{beside}"),
                end=Terminal(circuit.end, f"{to_name}{beside}"),
            )


def _names(circuit: Circuit, end: str, name: str, met: Counter[tuple[str, str]]) -> tuple[str, ...]:
    """Names of a circuit's terminals at one of its ends; `met` counts what is taken there, and grows."""
    cores = core_names(circuit)
    if is_bus(end, name):
        met[end, ""] += 1
        place = met[end, ""]
        return tuple(f"{place}{_after(core)}" for core in cores)
    if circuit.system == "control":
        first = met[end, "S"] + 1
        met[end, "S"] += len(cores)
        return tuple(f"S{number}" for number in range(first, first + len(cores)))
    kind = _kind(circuit)
    met[end, kind] += 1
    before = "" if met[end, kind] == 1 else f"{met[end, kind]}"
    if circuit.system == "bonding":
        return (f"{before}{kind}",)
    return tuple(f"{before}{kind}{core}" for core in cores)


def _kind(circuit: Circuit) -> str:
    """What comes before a core's name on a device: for AC nothing."""
    if circuit.system == "bonding":
        return "case"
    if circuit.system == "ac":
        return ""
    if circuit.source == "solar":
        return "PV"
    return "F" if circuit.source == "none" else "DC"


def _after(core: str) -> str:
    """A core's name as it follows a number, so that the two do not read as one."""
    return f".{core}" if core[0].isdigit() else core


def _beside(number: int, parallel: int) -> str:
    return "" if parallel == 1 else f".{number}"
