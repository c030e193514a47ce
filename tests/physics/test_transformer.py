"""Laws of a transformer."""

from __future__ import annotations

from collections.abc import Callable

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.transformer import efficiency, load_of_best_efficiency, transformer_input

RATED = st.floats(500.0, 2e4)
CORE = st.floats(0.001, 0.02)  # of the rating
COPPER = st.floats(0.005, 0.05)  # of the rating


@given(RATED, CORE, COPPER, st.floats(0.0, 1.5))
def test_no_load_beats_the_load_of_best_efficiency(rated: float, core: float, copper: float, load: float) -> None:
    losses = (core * rated, copper * rated)
    best = efficiency(load_of_best_efficiency(*losses) * rated, rated, *losses)
    assert efficiency(load * rated, rated, *losses) <= best + 1e-12


@given(RATED, CORE, COPPER)
def test_at_no_load_it_takes_its_core_loss(rated: float, core: float, copper: float) -> None:
    assert transformer_input(0.0, rated, core * rated, copper * rated) == core * rated
    assert efficiency(0.0, rated, core * rated, copper * rated) == 0.0


@given(RATED, CORE, COPPER, st.floats(0.0, 1.0))
def test_copper_loss_quadruples_with_twice_the_load(rated: float, core: float, copper: float, load: float) -> None:
    def copper_loss(output: float) -> float:
        return transformer_input(output, rated, core * rated, copper * rated) - output - core * rated

    assert copper_loss(2.0 * load * rated) == pytest.approx(4.0 * copper_loss(load * rated), abs=1e-9 * rated)


@pytest.mark.parametrize(
    "call",
    [
        lambda: transformer_input(-1.0, 5000.0, 50.0, 120.0),
        lambda: transformer_input(1.0, 0.0, 50.0, 120.0),
        lambda: efficiency(-1.0, 5000.0, 50.0, 120.0),
        lambda: load_of_best_efficiency(-1.0, 120.0),
        lambda: load_of_best_efficiency(50.0, 0.0),
    ],
)
def test_nonsense_is_refused(call: Callable[[], object]) -> None:
    with pytest.raises(OutOfRange):
        call()
