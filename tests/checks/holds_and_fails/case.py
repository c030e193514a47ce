"""Boats that show what a rule is about."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.design.specification import Specification
from tests.checks.found import Told


@dataclass(frozen=True)
class Case:
    """A boat on which a rule holds, one on which it fails, and, where there is one, one of which it cannot tell."""

    holds: Specification | Told
    fails: Specification | Told
    cannot_tell: Specification | Told | None = None
