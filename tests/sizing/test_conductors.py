"""Sizes of the catalogue and what a circuit is given."""

from __future__ import annotations

from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.conductor import resistance_per_length
from anchorwatt.sizing.conductors import (
    SMALLEST_SINGLE,
    CableRun,
    ambient_share,
    ampacity,
    drop_area,
    permitted,
    resistance,
    series,
    sized,
    with_conductor,
)

GAUGES, METRIC = series(metric=False), series(metric=True)
both = pytest.mark.parametrize("sizes", [GAUGES, METRIC], ids=["gauges", "metric"])
circuits = st.builds(
    CableRun,
    st.just("any"),
    st.floats(0.5, 900.0),
    st.floats(0.2, 15.0),
    st.sampled_from([12.0, 24.0, 48.0]),
    st.sampled_from([0.03, 0.10]),
    st.sampled_from([60.0, 105.0]),
    st.floats(10.0, 55.0),
    st.integers(1, 30),
)
systems = st.sampled_from([GAUGES, METRIC])


@both
def test_a_larger_size_resists_less_and_carries_no_less(sizes: tuple[object, ...]) -> None:
    for thin, thick in pairwise(GAUGES if sizes is GAUGES else METRIC):
        assert resistance(thick) < resistance(thin)
        assert all(a <= b for a, b in zip(thin.ampacities, thick.ampacities, strict=True))


@pytest.mark.parametrize("size", METRIC, ids=lambda size: str(size.name))
def test_a_metric_size_is_what_its_name_says(size: object) -> None:
    """The standard's highest resistance allows an area up to a tenth below the nominal one."""
    row = next(one for one in METRIC if one is size)
    assert 1.0 < resistance(row) / resistance_per_length(row.area, lay=1.0) < 1.16
    assert 1.0 < resistance(row, tinned=True) / resistance(row) < 1.04


def test_metric_sizes_carry_what_gauges_of_their_area_do() -> None:
    """Two independent tables for cable of 105 °C: within a quarter."""
    for size in METRIC:
        around = sorted(GAUGES, key=lambda gauge: abs(gauge.area - size.area))[0]
        if abs(around.area / size.area - 1.0) < 0.1:
            assert ampacity(size) == pytest.approx(ampacity(around), rel=0.25)


@given(circuits, systems)
def test_a_sized_circuit_keeps_drop_and_ampacity(circuit: CableRun, sizes: tuple[object, ...]) -> None:
    found = sized(circuit, GAUGES if sizes is GAUGES else METRIC)
    assert found.drop_share <= circuit.highest_drop
    assert circuit.current <= found.ampacity
    assert circuit.ambient <= found.temperature <= circuit.insulation + 1e-9
    assert found.conductor.area >= SMALLEST_SINGLE[found.conductor.gauge is None]


@given(circuits, systems)
def test_nothing_smaller_would_do(circuit: CableRun, sizes: tuple[object, ...]) -> None:
    rows = GAUGES if sizes is GAUGES else METRIC
    found = sized(circuit, rows)
    for size in permitted(circuit, rows, found.parallel):
        if size.area < found.conductor.area:
            below = with_conductor(circuit, size, found.parallel)
            assert circuit.current > below.ampacity or below.drop_share > circuit.highest_drop


@given(st.sampled_from(GAUGES + METRIC), st.sampled_from([60.0, 105.0, 125.0, 200.0]), st.data())
def test_ampacity_never_rises_with_ambient_or_bundle(size: object, insulation: float, data: st.DataObject) -> None:
    row = next(one for one in GAUGES + METRIC if one is size)
    cool, warm = sorted(data.draw(st.tuples(st.floats(0.0, 190.0), st.floats(0.0, 190.0))))
    few, many = sorted(data.draw(st.tuples(st.integers(1, 40), st.integers(1, 40))))
    assert ampacity(row, insulation, warm) <= ampacity(row, insulation, cool)
    assert ampacity(row, insulation, cool, many, 120.0) <= ampacity(row, insulation, cool, few, 120.0)


@pytest.mark.parametrize("insulation", [60.0, 75.0, 105.0, 200.0])
def test_air_of_30_degrees_leaves_all_and_the_insulations_limit_nothing(insulation: float) -> None:
    assert ambient_share(insulation, 30.0) == 1.0
    assert ambient_share(insulation, 10.0) == 1.0
    assert ambient_share(insulation, insulation) == 0.0


@given(circuits)
def test_the_area_for_the_drop_alone_is_no_more_than_what_is_laid(circuit: CableRun) -> None:
    found = sized(circuit, GAUGES)
    assert drop_area(circuit, found.temperature) <= found.area * (1.0 + 1e-9)


def test_cables_side_by_side_when_the_largest_is_too_small() -> None:
    found = sized(CableRun("starter", 900.0, 1.0, 12.0, 0.03), GAUGES)
    assert found.parallel == 3
    assert found.copper == pytest.approx(3 * with_conductor(found.circuit, found.conductor, 1).copper)


def test_a_small_load_gets_the_smallest_that_may_be_run_singly() -> None:
    circuit = CableRun("lamp", 0.5, 0.5, 48.0, 0.10)
    assert [sized(circuit, rows).conductor.name for rows in (GAUGES, METRIC)] == ["16 AWG", "1 mm²"]
    assert sized(circuit, GAUGES).governed_by == "smallest size allowed"


def test_a_class_that_the_size_is_not_made_in_is_refused() -> None:
    with pytest.raises(OutOfRange, match="70"):
        ampacity(GAUGES[0], 70.0)


def test_no_drop_at_all_is_refused() -> None:
    with pytest.raises(OutOfRange):
        sized(CableRun("any", 1.0, 1.0, 12.0, 0.0), GAUGES)
