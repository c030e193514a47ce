from __future__ import annotations

import math

from anchorwatt.papers.tabular import reading


def test_a_minus_is_a_minus_sign_and_nought_has_none() -> None:
    assert reading(-12.0, "heat flow", "si") == "−12"
    assert reading(-0.2, "heat flow", "si") == "0"


def test_what_is_not_known_is_a_dash() -> None:
    assert reading(math.nan, "temperature", "si") == "—"
