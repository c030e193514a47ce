"""The registry of rules, and how a value is held against a limit."""

from __future__ import annotations

import math

import pytest

from anchorwatt.checks import Verdict
from anchorwatt.checks.registry import at_least, at_most, rule


def test_registering_twice_is_an_error() -> None:
    with pytest.raises(ValueError, match="twice"):
        rule("mass-limit", "again?", "mass", "none", "none")(lambda _: None)


@pytest.mark.parametrize(
    ("value", "limit", "expected"),
    [
        (1.0, 2.0, Verdict.HOLDS),
        (1.9, 2.0, Verdict.NEAR),
        (2.0, 2.0, Verdict.NEAR),
        (2.1, 2.0, Verdict.FAILS),
        (math.nan, 2.0, Verdict.CANNOT_TELL),
        (1.0, math.nan, Verdict.CANNOT_TELL),
    ],
)
def test_at_most(value: float, limit: float, expected: Verdict) -> None:
    assert at_most(value, limit).verdict is expected
    mirrored = at_least(-value, -limit).verdict
    assert mirrored is expected
