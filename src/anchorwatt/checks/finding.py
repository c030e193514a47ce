"""The record that every check returns."""

from __future__ import annotations

import math
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
    subject: str = ""  # what it is about, in a word or two

    @property
    def margin(self) -> float:
        """What is left up to the limit, negative when the check fails; nan where that cannot be told.

        A share of the limit; of temperatures K.
        """
        if self.verdict is Verdict.CANNOT_TELL or math.isinf(self.value):
            return math.nan
        apart = abs(self.value - self.limit)
        if self.dimension != "temperature":
            apart = apart / abs(self.limit) if self.limit != 0.0 else math.nan
        return -apart if self.verdict is Verdict.FAILS else apart

    @property
    def margin_dimension(self) -> str:
        """The dimension of the margin."""
        return "temperature difference" if self.dimension == "temperature" else "share"
