"""Carbon dioxide that people breathe out and what becomes of it, against a paper's tables and closed forms."""

from __future__ import annotations

import pytest

from anchorwatt.physics.carbon_dioxide import (
    concentration_after,
    fresh_air_for,
    generation_rate,
    steady_concentration,
)

PAPER = "Persily and de Jonge, Indoor Air 27(5) 2017, doi 10.1111/ina.12383"
MEGAJOULES_A_DAY = 1e6 / 86_400.0
HOUR = 3600.0
OUTDOOR = 420e-6
PRINTED = 1e-4
"""L/s, the last digit of the table, whose own rounding is up to one of it off (the paper's equations 8 and 10 differ by
0.2 %)."""

# Basal rate MJ/day, met, L/s at 273 K and 101 kPa.
TABLE_4 = [
    ("man 30 to 40", 7.83, 1.0, 0.0037),
    ("man 30 to 40", 7.83, 1.4, 0.0053),
    ("man 30 to 40", 7.83, 2.0, 0.0076),
    ("woman 30 to 40", 6.08, 1.0, 0.0029),
    ("woman 30 to 40", 6.08, 1.4, 0.0041),
    ("woman 30 to 40", 6.08, 2.0, 0.0059),
    ("man 60 to 70", 6.84, 1.0, 0.0033),
    ("woman 60 to 70", 5.67, 1.0, 0.0027),
    ("man 80 and older", 6.19, 1.2, 0.0036),
    ("woman 80 and older", 5.19, 4.0, 0.0101),
]


@pytest.mark.parametrize(
    ("basal", "met", "printed"),
    [row[1:] for row in TABLE_4],
    ids=[f"{PAPER}, table 4: {row[0]}, {row[2]:g} met" for row in TABLE_4],
)
def test_table_of_the_paper(basal: float, met: float, printed: float) -> None:
    found = generation_rate(basal * MEGAJOULES_A_DAY, met, 0.85, 273.0 - 273.15, 101_000.0)
    assert 1000.0 * found == pytest.approx(printed, abs=PRINTED)


# Page 874: an 85 kg man of 30 to 60 years, 7.73 MJ/day, at rest and in an office; 89.5 W on page 871.
EXAMPLES = [("at rest", 1.0, 0.0037), ("office work, 1.5 met", 1.5, 0.0056)]


@pytest.mark.parametrize(
    ("met", "printed"), [row[1:] for row in EXAMPLES], ids=[f"{PAPER}, page 874: {row[0]}" for row in EXAMPLES]
)
def test_example_of_the_paper(met: float, printed: float) -> None:
    found = generation_rate(89.5, met, 0.85, 273.0 - 273.15, 101_000.0)
    assert 1000.0 * found == pytest.approx(printed, abs=PRINTED)


def test_the_papers_short_form() -> None:
    """Equation 9 of the same paper: 0.000484 BMR M at 273 K and 101 kPa with a respiratory quotient of 0.85."""
    found = generation_rate(1.0 * 50.0, 1.0, 0.85, 273.0 - 273.15, 101_000.0)
    assert 1000.0 * found == pytest.approx(0.000484 * 50.0 / MEGAJOULES_A_DAY, rel=0.003)


def test_a_couple_asleep() -> None:
    """The paper's basal rates of a man of 85 kg and a woman of 75 kg, 0.95 met asleep (from memory), by hand:
    0.00635 L/s at 273 K and 101 kPa, 0.0069 L/s at 24 °C."""
    couple = (7.73 + 6.09) * MEGAJOULES_A_DAY
    cold = generation_rate(couple, 0.95, 0.85, 273.0 - 273.15, 101_000.0)
    warm = generation_rate(couple, 0.95, 0.85, 24.0, 101_325.0)
    assert 1000.0 * cold == pytest.approx(0.00635, rel=0.003)
    assert 1000.0 * warm == pytest.approx(0.0069, abs=5e-5)


# m³, air changes an hour, hours (0 = for ever), ppm.
SLEEPERS = [
    (12.0, 0.25, 0.0, 8340.0),
    (12.0, 0.25, 8.0, 7270.0),
    (12.0, 0.5, 0.0, 4380.0),
    (20.0, 0.5, 0.0, 2800.0),
    (20.0, 1.0, 0.0, 1610.0),
]
CLOSED_FORM = "closed form by hand, two sleepers of 0.0033 L/s, 420 ppm outdoors"


@pytest.mark.parametrize(
    ("volume", "changes", "hours", "expected"),
    SLEEPERS,
    ids=[f"{CLOSED_FORM}: {v:g} m3 {n:g} ach {h:g} h" for v, n, h, _ in SLEEPERS],
)
def test_two_sleepers(volume: float, changes: float, hours: float, expected: float) -> None:
    flow = volume * changes / HOUR
    if hours:
        found = concentration_after(hours * HOUR, OUTDOOR, 0.0066e-3, flow, volume, OUTDOOR)
    else:
        found = steady_concentration(0.0066e-3, flow, OUTDOOR)
    assert 1e6 * found == pytest.approx(expected, rel=0.003)


# ppm, L/s a sleeper.
FRESH = [(750.0, 10.0), (1000.0, 5.7), (1150.0, 4.5), (1500.0, 3.1), (2600.0, 1.5)]


@pytest.mark.parametrize(
    ("limit", "flow"), FRESH, ids=[f"balance by hand, a sleeper of 0.0033 L/s: {limit:g} ppm" for limit, _ in FRESH]
)
def test_fresh_air_for_a_sleeper(limit: float, flow: float) -> None:
    assert 1000.0 * fresh_air_for(0.0033e-3, limit * 1e-6, OUTDOOR) == pytest.approx(flow, abs=0.05)
