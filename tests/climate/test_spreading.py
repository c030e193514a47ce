"""Hourly means to instants: the mean is kept, nothing is negative, the dark stays dark."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from anchorwatt.climate.spreading import HOUR, POINTS, points_within, spread

DAY = 24


def sine_of_day(time: np.ndarray, rise: float = 6.2, length: float = 11.6) -> np.ndarray:
    """A plain sun that rises off the hour."""
    hour = (time / HOUR) % 24.0
    return np.where((hour > rise) & (hour < rise + length), np.sin((hour - rise) / length * np.pi), 0.0).clip(0.0)


def setting(days: int, step: float = 60.0) -> tuple[np.ndarray, np.ndarray, np.ndarray]:
    within = sine_of_day(points_within(0.0, days * DAY))
    time = (np.arange(days * 86_400.0 / step) + 0.5) * step
    return within, time, sine_of_day(time)


@settings(max_examples=60, deadline=None)
@given(st.lists(st.floats(0.0, 900.0), min_size=DAY, max_size=DAY))
def test_each_lit_hour_keeps_its_mean(figures: list[float]) -> None:
    within, time, shape = setting(1)
    lit = within.mean(axis=1) > 0.05
    means = np.where(lit, figures, 0.0)
    result = spread(means, 0.0, within, time, shape)
    got = result.values.reshape(DAY, -1).mean(axis=1)
    assert got == pytest.approx(means, rel=0.02, abs=2.0)
    assert result.values.min() >= 0.0
    assert (result.values[shape == 0.0] == 0.0).all()


def test_means_that_follow_the_shape_give_the_shape_back() -> None:
    within, time, shape = setting(3)
    means = 800.0 * within.mean(axis=1)
    result = spread(means, 0.0, within, time, shape)
    assert result.values == pytest.approx(800.0 * shape, rel=0.01, abs=3.0)


def test_one_cloudy_hour_does_not_tear_the_curve() -> None:
    within, time, shape = setting(1)
    means = 800.0 * within.mean(axis=1)
    means[12] *= 0.3
    values = spread(means, 0.0, within, time, shape).values
    assert np.abs(np.diff(values)).max() < 60.0  # W/m2 a minute; a plain step would be some 500


def test_sun_in_the_dark_is_counted_as_lost() -> None:
    within, time, shape = setting(1)
    means = np.zeros(DAY)
    means[2], means[12] = 100.0, 300.0
    assert spread(means, 0.0, within, time, shape).lost == pytest.approx(0.25)


def test_a_polar_night_has_no_sun_to_place() -> None:
    within, time = np.zeros((DAY, POINTS)), np.arange(0.0, 86_400.0, 60.0)
    dark = spread(np.zeros(DAY), 0.0, within, time, np.zeros_like(time))
    assert dark.values.max() == 0.0
    assert dark.lost == 0.0
    assert spread(np.ones(DAY), 0.0, within, time, np.zeros_like(time)).lost == 1.0
