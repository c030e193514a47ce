"""Compressor and cycle: the second law, limits, shapes."""

from __future__ import annotations

import math

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.compressor import (
    BEST_PRESSURE_RATIO,
    carnot_efficiency,
    cycle,
    cycle_table,
    isentropic_efficiency,
    part_load_factor,
    speed_shape,
    volumetric_efficiency,
)

# Without glide, so that one temperature stands for a whole change of phase (R410A: 0.1 K).
refrigerants = st.sampled_from(["R410A", "R32", "R134a", "R290"])
GLIDE = 0.2
ratios = st.floats(1.0, 10.0)
speeds = st.floats(0.05, 1.0)

# The first call loads CoolProp, which takes over a second.
cycles = settings(max_examples=50, deadline=None)


@cycles
@given(refrigerants, st.floats(-5.0, 24.0), st.floats(0.5, 40.0), st.floats(0.0, 10.0), st.floats(0.0, 10.0))
def test_no_cycle_beats_carnot(
    refrigerant: str, evaporating: float, lift: float, superheat: float, subcooling: float
) -> None:
    """Between the warmest temperature at which it takes in heat and the coolest at which it gives it off."""
    found = cycle(refrigerant, evaporating, evaporating + lift, superheat, subcooling)
    source, sink = evaporating + superheat, evaporating + lift - subcooling - GLIDE
    if sink > source:
        assert found.refrigerating_effect / found.isentropic_work < carnot_efficiency(source, sink)


@cycles
@given(refrigerants, st.floats(-5.0, 20.0), st.floats(5.0, 40.0), speeds, st.floats(0.3, 0.85))
def test_the_plant_stays_below_carnot(
    refrigerant: str, evaporating: float, lift: float, speed: float, scale: float
) -> None:
    found = cycle(refrigerant, evaporating, evaporating + lift, 0.0, 0.0)
    ideal = found.refrigerating_effect / found.isentropic_work
    real = ideal * isentropic_efficiency(found.pressure_ratio, speed, scale)
    assert 0.0 < real < carnot_efficiency(evaporating, evaporating + lift)


@cycles
@given(refrigerants, st.floats(-5.0, 20.0), st.floats(5.0, 35.0), st.floats(0.5, 3.0))
def test_a_warmer_sea_costs_work_and_cooling(refrigerant: str, evaporating: float, lift: float, warmer: float) -> None:
    now = cycle(refrigerant, evaporating, evaporating + lift, 5.0, 4.0)
    then = cycle(refrigerant, evaporating, evaporating + lift + warmer, 5.0, 4.0)
    assert then.isentropic_work > now.isentropic_work
    assert then.refrigerating_effect < now.refrigerating_effect
    assert then.pressure_ratio > now.pressure_ratio
    assert then.suction_density == pytest.approx(now.suction_density)


def test_subcooling_adds_cooling_and_no_work() -> None:
    plain = cycle("R410A", 7.0, 40.0, 5.0, 0.0)
    cooled = cycle("R410A", 7.0, 40.0, 5.0, 5.0)
    assert cooled.refrigerating_effect > plain.refrigerating_effect
    assert cooled.isentropic_work == pytest.approx(plain.isentropic_work)


def test_superheat_thins_the_suction_vapour() -> None:
    assert cycle("R410A", 7.0, 40.0, 10.0, 0.0).suction_density < cycle("R410A", 7.0, 40.0, 0.0, 0.0).suction_density


@pytest.mark.parametrize("refrigerant", ["R410A", "R32", "R134a", "R290"])
def test_a_trace_of_superheat_is_no_trouble(refrigerant: str) -> None:
    """So near saturation CoolProp cannot tell the phase, and says so."""
    trace = cycle(refrigerant, 7.0, 40.0, 1e-6, 1e-6)
    none = cycle(refrigerant, 7.0, 40.0, 0.0, 0.0)
    assert trace.refrigerating_effect == pytest.approx(none.refrigerating_effect, rel=1e-6)


def test_table_holds_the_single_cycles() -> None:
    cold, warm = (2.0, 7.0, 12.0), (30.0, 40.0)
    table = cycle_table("R32", cold, warm, 5.0, 4.0)
    assert table == tuple(
        tuple(cycle("R32", evaporating, condensing, 5.0, 4.0) for condensing in warm) for evaporating in cold
    )


@pytest.mark.parametrize(
    ("refrigerant", "evaporating", "condensing", "superheat", "subcooling", "words"),
    [
        ("no such gas", 7.0, 40.0, 5.0, 5.0, "CoolProp knows; found no such gas"),
        ("R410A", 40.0, 40.0, 5.0, 5.0, "above the evaporating"),
        ("R410A", 40.0, 7.0, 5.0, 5.0, "above the evaporating"),
        ("R410A", 7.0, 75.0, 5.0, 5.0, "critical point"),
        ("R410A", 7.0, 40.0, -1.0, 5.0, "not negative"),
        ("R410A", 7.0, 40.0, 5.0, -1.0, "not negative"),
        ("R410A", -200.0, 40.0, 5.0, 5.0, "refrigerant's range"),
    ],
)
def test_impossible_cycles_are_refused(
    refrigerant: str, evaporating: float, condensing: float, superheat: float, subcooling: float, words: str
) -> None:
    with pytest.raises(OutOfRange, match=words):
        cycle(refrigerant, evaporating, condensing, superheat, subcooling)


@given(ratios, speeds, st.floats(0.05, 1.5))
def test_efficiency_is_a_share(ratio: float, speed: float, scale: float) -> None:
    assert 0.0 < isentropic_efficiency(ratio, speed, scale) <= 1.0


@given(ratios, st.floats(0.05, 0.5), st.floats(0.01, 0.5), st.floats(0.3, 0.8))
def test_efficiency_falls_toward_low_speed(ratio: float, speed: float, lower: float, scale: float) -> None:
    slow = isentropic_efficiency(ratio, speed * lower, scale)
    assert slow <= isentropic_efficiency(ratio, speed, scale)


@given(speeds, st.floats(0.3, 0.8), st.floats(1.0, 8.0))
def test_efficiency_is_best_near_the_built_in_ratio(speed: float, scale: float, ratio: float) -> None:
    best = isentropic_efficiency(BEST_PRESSURE_RATIO, speed, scale)
    assert isentropic_efficiency(ratio, speed, scale) <= best


def test_scale_is_the_efficiency_at_full_speed_and_best_ratio() -> None:
    assert isentropic_efficiency(BEST_PRESSURE_RATIO, 1.0, 0.62) == pytest.approx(0.62)


@given(st.floats(0.05, 1.15), st.floats(0.0, 0.001))
def test_speed_shape_has_no_jump(speed: float, step: float) -> None:
    assert speed_shape(speed + step) == pytest.approx(speed_shape(speed), abs=0.003)


@given(ratios, st.floats(0.001, 1.0))
def test_more_lift_draws_in_less(ratio: float, more: float) -> None:
    assert 0.0 < volumetric_efficiency(ratio + more) < volumetric_efficiency(ratio) <= 1.0


def test_without_lift_all_is_drawn_in() -> None:
    assert volumetric_efficiency(1.0) == 1.0


@given(st.floats(0.0, 1.0), st.floats(0.0, 0.5))
def test_cycling_never_helps(load: float, degradation: float) -> None:
    factor = part_load_factor(load, degradation)
    assert 1.0 - degradation <= factor <= 1.0
    # The share of the time that it must run stays below one.
    assert load / factor <= 1.0 + 1e-12


@given(st.floats(-20.0, 20.0), st.floats(1.0, 50.0), st.floats(0.1, 10.0))
def test_carnot_falls_with_lift(evaporating: float, lift: float, more: float) -> None:
    less = carnot_efficiency(evaporating, evaporating + lift + more)
    assert less < carnot_efficiency(evaporating, evaporating + lift)


def test_impossible_compressors_are_refused() -> None:
    for values in ((0.9, 1.0, 0.6), (21.0, 1.0, 0.6), (2.0, 0.0, 0.6), (2.0, 1.3, 0.6), (2.0, 1.0, 0.0)):
        with pytest.raises(OutOfRange):
            isentropic_efficiency(*values)
    with pytest.raises(OutOfRange):
        isentropic_efficiency(2.0, 1.0, 1.6)
    with pytest.raises(OutOfRange):
        isentropic_efficiency(math.nan, 1.0, 0.6)
    with pytest.raises(OutOfRange, match="pressure ratio"):
        volumetric_efficiency(0.99)
    for pair in ((-0.1, 0.2), (1.1, 0.2), (0.5, -0.1), (0.5, 1.0)):
        with pytest.raises(OutOfRange):
            part_load_factor(*pair)
    with pytest.raises(OutOfRange, match="above the evaporating"):
        carnot_efficiency(10.0, 10.0)
    with pytest.raises(OutOfRange, match="lies above"):
        carnot_efficiency(-274.0, 10.0)
