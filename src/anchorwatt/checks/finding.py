"""The record that every check returns."""

from __future__ import annotations

from dataclasses import dataclass
from enum import Enum


class Verdict(Enum):
    HOLDS = "holds"
    NEAR = "near"  # holds with little to spare
    FAILS = "fails"
    CANNOT_TELL = "cannot tell"


@dataclass(frozen=True)
class Finding:
    """What a check found."""

    id: str  # of our own, e.g. "bank-holds-night"
    question: str
    value: float  # SI, nan = cannot tell
    limit: float  # SI, nan = none
    dimension: str
    verdict: Verdict
    source: str  # document and clause, "the brief", "common practice, no source" or "from memory"
    remedy: str  # what to do when it fails or is near
    note: str = ""  # what the figures do not say, such as a currency, or why it cannot tell
