"""Laws of the propeller."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.propeller import engine_speed_for, propeller_demand

EXPONENT = st.floats(2.0, 3.2)
SHARE = st.floats(0.0, 1.0)


@given(EXPONENT)
def test_rated_speed_takes_rated_power(exponent: float) -> None:
    assert propeller_demand(250.0, 250.0, 60e3, exponent) == 60e3


@given(EXPONENT, SHARE, SHARE)
def test_faster_takes_more(exponent: float, one: float, other: float) -> None:
    slow, fast = sorted((one, other))
    assert propeller_demand(slow, 1.0, 1.0, exponent) <= propeller_demand(fast, 1.0, 1.0, exponent)


@given(EXPONENT, st.floats(0.1, 0.5))
def test_twice_the_speed_takes_two_to_the_exponent(exponent: float, share: float) -> None:
    ratio = propeller_demand(2.0 * share, 1.0, 1.0, exponent) / propeller_demand(share, 1.0, 1.0, exponent)
    assert ratio == pytest.approx(2.0**exponent, rel=1e-12)


@given(SHARE)
def test_engine_speed_is_in_proportion(share: float) -> None:
    assert engine_speed_for(share * 4.0, 4.0, 250.0) == pytest.approx(share * 250.0, rel=1e-12)


@pytest.mark.parametrize(
    "call",
    [
        lambda: propeller_demand(-1.0, 1.0, 1.0, 3.0),
        lambda: propeller_demand(1.0, 0.0, 1.0, 3.0),
        lambda: propeller_demand(1.0, 1.0, -1.0, 3.0),
        lambda: propeller_demand(1.0, 1.0, 1.0, 0.5),
        lambda: propeller_demand(1.0, 1.0, 1.0, 5.0),
        lambda: engine_speed_for(-1.0, 4.0, 250.0),
        lambda: engine_speed_for(4.3, 4.0, 250.0),
        lambda: engine_speed_for(1.0, 0.0, 250.0),
        lambda: engine_speed_for(1.0, 4.0, 0.0),
    ],
)
def test_nonsense_is_refused(call: Callable[[], object]) -> None:
    with pytest.raises(OutOfRange):
        call()
