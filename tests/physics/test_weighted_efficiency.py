"""Laws of a weighted efficiency."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.inverter import converter_input, output_of_best_efficiency
from anchorwatt.physics.weighted_efficiency import european_efficiency

RATED = st.floats(500.0, 2e4)
NO_LOAD = st.floats(0.001, 0.02)  # of the rating
LOSS = st.floats(0.01, 0.1)


@given(RATED, LOSS)
def test_a_converter_that_only_loses_in_proportion_is_the_same_at_any_load(rated: float, linear: float) -> None:
    assert european_efficiency(rated, 0.0, linear, 0.0) == pytest.approx(1.0 / (1.0 + linear))


@given(RATED, NO_LOAD, LOSS, LOSS)
def test_the_weighted_efficiency_is_below_the_best(
    rated: float, no_load: float, linear: float, quadratic: float
) -> None:
    best = output_of_best_efficiency(rated, no_load * rated, quadratic)
    highest = best / converter_input(best, rated, no_load * rated, linear, quadratic)
    assert 0.0 < european_efficiency(rated, no_load * rated, linear, quadratic) <= highest


def test_nonsense_is_refused() -> None:
    with pytest.raises(OutOfRange):
        european_efficiency(0.0, 24.0, 0.03, 0.05)
