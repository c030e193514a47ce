"""Vapour-compression cycle against textbook and handbook results, part load against a rating standard."""

from __future__ import annotations

import pytest

from anchorwatt.physics.compressor import carnot_efficiency, cycle, part_load_factor, speed_shape


def test_ideal_r134a_cycle_of_a_textbook() -> None:
    """Undergraduate thermodynamics textbook, R-134a between 0.14 and 0.80 MPa, 0.05 kg/s; from memory.

    Printed: 7.18 kW of cooling, 1.81 kW of work, 8.99 kW rejected, coefficient of performance 3.97.
    """
    from CoolProp.CoolProp import PropsSI

    cold, warm = (PropsSI("T", "P", p, "Q", 1, "R134a") - 273.15 for p in (0.14e6, 0.80e6))
    found = cycle("R134a", cold, warm, 0.0, 0.0)
    assert found.evaporating_pressure == pytest.approx(0.14e6, rel=1e-6)
    assert found.condensing_pressure == pytest.approx(0.80e6, rel=1e-6)
    cooling, work = 0.05e-3 * found.refrigerating_effect, 0.05e-3 * found.isentropic_work
    assert cooling == pytest.approx(7.18, abs=0.01)
    assert work == pytest.approx(1.81, abs=0.005)
    assert cooling + work == pytest.approx(8.99, abs=0.01)
    assert cooling / work == pytest.approx(3.97, abs=0.01)


HANDBOOK = "ASHRAE Handbook - Fundamentals, comparative refrigerant performance at 258 and 303 K; from memory"

# Pressures MPa, ratio, refrigerating effect kJ/kg, coefficient of performance: saturated, no sub-cooling.
PERFORMANCE = [
    ("R22", 0.296, 1.192, 4.03, 162.67, 4.66),
    ("R134a", 0.164, 0.770, 4.69, 148.03, 4.60),
    ("R290", 0.291, 1.077, 3.71, 279.88, 4.55),
]


@pytest.mark.parametrize(
    ("refrigerant", "low", "high", "ratio", "effect", "performance"),
    PERFORMANCE,
    ids=[f"{HANDBOOK}, {row[0]}" for row in PERFORMANCE],
)
def test_standard_cycle_of_the_handbook(
    refrigerant: str, low: float, high: float, ratio: float, effect: float, performance: float
) -> None:
    """Within 0.5 %: the handbook's properties are of an older equation of state."""
    found = cycle(refrigerant, -15.0, 30.0, 0.0, 0.0)
    assert found.evaporating_pressure / 1e6 == pytest.approx(low, rel=0.005)
    assert found.condensing_pressure / 1e6 == pytest.approx(high, rel=0.005)
    assert found.pressure_ratio == pytest.approx(ratio, rel=0.005)
    assert found.refrigerating_effect / 1e3 == pytest.approx(effect, rel=0.005)
    assert found.refrigerating_effect / found.isentropic_work == pytest.approx(performance, rel=0.005)


def test_suction_density_is_coolprops() -> None:
    from CoolProp.CoolProp import PropsSI

    pressure = PropsSI("P", "T", 280.15, "Q", 1, "R32")
    expected = PropsSI("D", "T", 285.15, "P", pressure, "R32")
    assert cycle("R32", 7.0, 40.0, 5.0, 0.0).suction_density == pytest.approx(expected, rel=1e-9)


def test_work_is_coolprops_isentrope() -> None:
    from CoolProp.CoolProp import PropsSI

    low, high = (PropsSI("P", "T", t + 273.15, "Q", 1, "R410A") for t in (7.0, 40.0))
    entropy, before = (PropsSI(q, "T", 285.15, "P", low, "R410A") for q in ("S", "H"))
    after = PropsSI("H", "P", high, "S", entropy, "R410A")
    assert cycle("R410A", 7.0, 40.0, 5.0, 5.0).isentropic_work == pytest.approx(after - before, rel=1e-9)


PART_LOAD = "AHRI 210/240, PLF = 1 - Cd (1 - x), Cd 0.25; from memory"


@pytest.mark.parametrize(
    ("load", "factor"), [(0.5, 0.875), (0.25, 0.812)], ids=[f"{PART_LOAD}, x 0.5", f"{PART_LOAD}, x 0.25"]
)
def test_part_load_factor(load: float, factor: float) -> None:
    assert part_load_factor(load, 0.25) == pytest.approx(factor, abs=0.0006)


def test_carnot_of_a_textbook() -> None:
    """Second law at 0 and 27 °C by hand: 273.15 / 27 = 10.1."""
    assert carnot_efficiency(0.0, 27.0) == pytest.approx(10.1, abs=0.05)


def test_part_load_gain_is_like_that_of_open_data() -> None:
    """Open curve of a multi-evaporator unit that recurs in public building-energy repositories.

    At one outdoor temperature its efficiency at x = 0.5 is 1.21 times and at x = 0.25 0.76 times that at
    full load. There compressor, exchangers and fans act together; of the compressor alone we ask only that it
    gains at half speed and loses at a quarter.
    """
    assert 1.0 < speed_shape(0.5) < 1.21
    assert 0.76 < speed_shape(0.25) < 1.0
