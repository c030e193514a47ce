"""Rules about what only somebody aboard can say: he has said yes, no, or nothing."""

from __future__ import annotations

import math

from anchorwatt.checks.finding import Verdict
from anchorwatt.checks.registry import Measured


def vouched(said: bool | None, key: str, note: str = "") -> Measured:
    """Holds when somebody vouches for it, fails when he says that it is not so, cannot tell when nobody said."""
    if said is None:
        asks = f"nobody has said: installation.{key} in the design file"
        return Measured(math.nan, 1.0, Verdict.CANNOT_TELL, f"{note}; {asks}" if note else asks)
    return Measured(float(said), 1.0, Verdict.HOLDS if said else Verdict.FAILS, note)
