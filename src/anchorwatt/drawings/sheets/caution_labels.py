"""Caution labels that a boat's own circuits call for, and where each belongs. The words are ours."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from anchorwatt.sizing.circuits import Circuit
from anchorwatt.sizing.conductors import HIGH_VOLTAGE
from anchorwatt.units import System, show

WHO = "Local codes and certified people decide what is safe here."

FED_TWICE = ("AC panel", "transfer switch")
"""Ends that shore power and inverter both reach."""


@dataclass(frozen=True)
class Caution:
    """A caution on one part."""

    tag: str  # of the part that it sticks on
    title: str
    words: str


def cautions(circuits: Sequence[Circuit], names: Mapping[str, str], system: System) -> Iterator[Caution]:
    """All cautions of a boat, part by part in the schedule's order.

    Parameters
    ----------
    names : of the ends, by tag
    """
    sources = {one.source for one in circuits}
    if {"shore", "inverter"} <= sources:
        for tag, name in names.items():
            if name in FED_TWICE:
                yield Caution(
                    tag,
                    "TWO SOURCES FEED THIS PANEL",
                    "Shore power and inverter. Switch off both, lock them and measure before you touch.",
                )
    for tag in _where(one.start for one in circuits if one.source == "bank" and not one.start.startswith("X")):
        yield Caution(
            tag,
            "LITHIUM BATTERIES",
            "No flame, loose metal or stores in this space. On smoke or a hiss: leave, shut it, call for help.",
        )
    for tag in _where(one.end for one in circuits if one.source == "alternator"):
        yield Caution(
            tag,
            "STOP THE ENGINES FIRST",
            "Never disconnect the batteries while an alternator runs: the voltage it throws destroys what is on board.",
        )
    for tag, volts in _dangerous(circuits).items():
        yield Caution(
            tag,
            "SHOCK CAN KILL",
            f"{show(volts, 'voltage', system, 3)} behind this cover, above {HIGH_VOLTAGE:g} V. "
            "Qualified people only, with every source off.",
        )
    for one in [one for one in circuits if one.source == "shore"][:1]:
        yield Caution(
            one.start,
            "SWITCH OFF BEFORE YOU UNPLUG",
            "Do not open the shore inlet under load: main breaker off, then the plug ashore, then the one on board.",
        )
        yield Caution(
            one.end,
            "TEST EVERY MONTH",
            "Press the test button of the earth-fault device. If it does not trip, no shore power until it is mended.",
        )


def _where(tags: Iterator[str]) -> tuple[str, ...]:
    return tuple(dict.fromkeys(tags))


def _dangerous(circuits: Sequence[Circuit]) -> dict[str, float]:
    """Buses, panels and switches with a voltage that can kill, and the highest there, V."""
    found: dict[str, float] = {}
    for one in circuits:
        if one.system in ("dc", "ac") and one.voltage > HIGH_VOLTAGE:
            for tag in (one.start, one.end):
                if tag[:1] in ("X", "Q"):
                    found[tag] = max(found.get(tag, 0.0), one.voltage)
    return found
