"""Ageing of lithium iron phosphate against the published throughput model and figures from memory."""

from __future__ import annotations

import math

import pytest
from scipy.optimize import brentq

from anchorwatt.physics.ageing import calendar_loss, calendar_stress, throughput_loss

YEAR = 365.25 * 86_400.0


@pytest.mark.parametrize(
    ("temperature", "cycles"),
    [
        pytest.param(25.0, 8350.0, id="J-Power-Sources-196-2011-3942-from-memory-C-2-25-C"),
        pytest.param(35.0, 3940.0, id="J-Power-Sources-196-2011-3942-from-memory-C-2-35-C"),
        pytest.param(45.0, 1950.0, id="J-Power-Sources-196-2011-3942-from-memory-C-2-45-C"),
    ],
)
def test_full_cycles_until_a_fifth_is_lost(temperature: float, cycles: float) -> None:
    """Computed from the printed formula and coefficients, to three digits."""
    found = brentq(lambda n: throughput_loss(n, temperature, 0.5) - 0.20, 100.0, 50_000.0)
    assert found == pytest.approx(cycles, abs=5.0)


@pytest.mark.parametrize(
    ("rate", "factor"),
    [(0.5, 31630.0), (2.0, 21681.0), (6.0, 12934.0), (10.0, 15512.0)],
    ids=lambda value: f"J-Power-Sources-196-2011-3942-from-memory-{value}",
)
def test_factor_of_each_tested_rate(rate: float, factor: float) -> None:
    """Loss in % = B exp((-31700 + 370.3 C)/(R T)) Ah^0.55, turned round for B."""
    loss = 100.0 * throughput_loss(500.0, 30.0, rate)
    found = loss / (math.exp((-31700.0 + 370.3 * rate) / (8.314 * 303.15)) * 1000.0**0.55)
    assert found == pytest.approx(factor, abs=0.5)


@pytest.mark.parametrize(
    ("temperature", "charge", "low", "high"),
    [
        pytest.param(25.0, 0.5, 0.0199, 0.0201, id="from-memory-2-percent-a-year-at-25-C-half-full"),
        pytest.param(35.0, 0.9, 0.04, 0.06, id="from-memory-4-to-6-percent-a-year-at-35-C-near-full"),
        pytest.param(40.0, 0.9, 0.04, 0.06, id="from-memory-4-to-6-percent-a-year-at-40-C-near-full"),
    ],
)
def test_calendar_loss_of_the_first_year(temperature: float, charge: float, low: float, high: float) -> None:
    assert low <= calendar_loss(0.02, calendar_stress(temperature, charge), YEAR) <= high


def test_rsc_advances_2025_15_22576_most_is_lost_at_55_c_and_90_percent() -> None:
    """The abstract: temperature and charge compound, most is lost at 55 °C and 90 %. Other corners of 25 to 55 °C."""
    worst = calendar_stress(55.0, 0.9)
    assert all(
        calendar_stress(t, z) < worst for t in (25.0, 40.0, 55.0) for z in (0.1, 0.5, 0.9) if (t, z) != (55, 0.9)
    )
