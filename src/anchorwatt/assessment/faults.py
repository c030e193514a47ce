"""Faults as they are shown: each with its minutes as a table."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Literal

from anchorwatt.assessment.records import Column, Table
from anchorwatt.sizing.fault_story import Fault
from anchorwatt.units import System

Part = Literal["happens", "lost", "protects", "sees", "does"]

PARTS: tuple[tuple[Part, str], ...] = (
    ("happens", "What happens"),
    ("lost", "What is lost"),
    ("protects", "What protects"),
    ("sees", "What the crew sees"),
    ("does", "What the crew does"),
)


@dataclass(frozen=True)
class FaultAnswer:
    """A fault and its minutes."""

    fault: Fault
    minutes: Table

    def story(self, system: System, written: Callable[[str], str] = str) -> tuple[tuple[str, str, str], ...]:
        """Each part of the story: its key, its heading and its sentences, figures in a system of units.

        `written` sets each figure with its unit.
        """
        return tuple(
            (part, heading, self.fault.told(getattr(self.fault, part), system, written)) for part, heading in PARTS
        )


def fault_answers(faults: tuple[Fault, ...]) -> tuple[FaultAnswer, ...]:
    """Every fault with its minutes."""
    return tuple(
        FaultAnswer(
            fault,
            Table(
                fault.key,
                fault.minutes.clock,
                tuple(Column(one.key, one.label, one.dimension, one.values) for one in fault.minutes.traces),
            ),
        )
        for fault in faults
    )
