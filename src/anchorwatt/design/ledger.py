"""The list of what nobody typed, kept while a design is filled in."""

from __future__ import annotations

from anchorwatt.design.document import Document, Key, dotted
from anchorwatt.design.specification import Estimate
from anchorwatt.errors import Problem
from anchorwatt.units import System, show

MEMORY = "from memory"
PRACTICE = "common practice, no source"


class Ledger:
    """Estimates made and problems met while a design is filled in."""

    def __init__(self, document: Document, system: System) -> None:
        self.document = document
        self.system = system
        self.estimates: list[Estimate] = []
        self.problems: list[Problem] = []

    def aside(self) -> Ledger:
        """Another ledger of the same file, for what is told in one line on this one."""
        return Ledger(self.document, self.system)

    def fill(self, typed: float | None, key: Key, estimate: float, dimension: str, rule: str, source: str) -> float:
        """What was typed; else the estimate, which goes on the list."""
        if typed is not None:
            return float(typed)
        self.note(key, self.show(estimate, dimension), rule, source)
        return float(estimate)

    def show(self, value: float, dimension: str) -> str:
        """A figure in the system of units that the file's writer uses; no dimension for a bare number."""
        return show(value, dimension, self.system) if dimension else f"{value:g}"

    def note(self, key: Key, value: str, rule: str, source: str) -> None:
        """Put an estimate on the list."""
        self.estimates.append(Estimate(dotted(key), value, rule, source))

    def refuse(self, key: Key, found: str, allowed: str) -> None:
        """Note a problem at a key."""
        self.problems.append(self.document.problem(key, found, allowed))
