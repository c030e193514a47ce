"""The seawater condenser: balances and limits."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.condenser import condensing_temperature, effectiveness, sea_out

seas = st.floats(0.0, 40.0)
heats = st.floats(0.0, 50_000.0)
flows = st.floats(1e-5, 0.01)
ntus = st.floats(0.05, 10.0)


@given(ntus, st.floats(0.01, 1.0))
def test_more_surface_is_more_effective(ntu: float, more: float) -> None:
    assert 0.0 < effectiveness(ntu) < effectiveness(ntu + more) <= 1.0


def test_a_small_condenser_is_as_effective_as_it_has_units() -> None:
    assert effectiveness(1e-9) == pytest.approx(1e-9, rel=1e-6)


@given(seas, st.floats(1.0, 50_000.0), flows, ntus)
def test_refrigerant_condenses_above_the_warmest_water(sea: float, heat: float, flow: float, ntu: float) -> None:
    assert condensing_temperature(sea, heat, flow, effectiveness(ntu)) >= sea_out(sea, heat, flow) >= sea


@given(seas, heats, flows, ntus)
def test_heat_is_conductance_times_mean_log_difference(sea: float, heat: float, flow: float, ntu: float) -> None:
    """The other classic form: heat = NTU x capacity flow x (rise / ln(first / last difference))."""
    condensing = condensing_temperature(sea, heat, flow, effectiveness(ntu))
    first, last = condensing - sea, condensing - sea_out(sea, heat, flow)
    if first > 1e-3 and last > 1e-3 * first:
        capacity_flow = heat / (first - last)
        mean = (first - last) / math.log(first / last)
        assert ntu * capacity_flow * mean == pytest.approx(heat, rel=1e-6)


def test_no_heat_no_difference() -> None:
    assert condensing_temperature(28.0, 0.0, 1e-4, 0.5) == 28.0
    assert sea_out(28.0, 0.0, 1e-4) == 28.0


def test_impossible_condensers_are_refused() -> None:
    with pytest.raises(OutOfRange, match="transfer units"):
        effectiveness(0.0)
    for values in (
        (28.0, -1.0, 1e-4, 0.5),
        (28.0, 1.0, 0.0, 0.5),
        (28.0, 1.0, 1e-4, 0.0),
        (28.0, 1.0, 1e-4, 1.1),
    ):
        with pytest.raises(OutOfRange):
            condensing_temperature(*values)
    for pair in ((-1.0, 1e-4), (1.0, 0.0)):
        with pytest.raises(OutOfRange):
            sea_out(28.0, *pair)
