"""The seawater circuit: where near begins."""

from __future__ import annotations

import pytest

from anchorwatt.checks import Verdict
from tests.checks.found import sure
from tests.checks.holds_and_fails.seawater import flow


@pytest.mark.parametrize(("share", "expected"), [(1.0, Verdict.HOLDS), (0.85, Verdict.NEAR), (0.65, Verdict.FAILS)])
def test_a_rise_over_the_trades_is_near_before_it_fails(share: float, expected: Verdict) -> None:
    assert sure("seawater-rise", flow(share)).verdict is expected
