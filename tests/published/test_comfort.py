"""Comfort against the standard's own table and the library."""

from __future__ import annotations

from collections.abc import Callable
from functools import cache
from typing import Any
from unittest import mock

import numpy as np
import pytest

from anchorwatt.physics.comfort import dissatisfied_share, operative_temperature, predicted_mean_vote

ISO_7730 = "ISO 7730 annex D table D.1, from memory"

# Air, radiant °C, m/s, %, met, clo; vote, per cent dissatisfied.
ROWS = [
    (22.0, 22.0, 0.10, 60.0, 1.2, 0.5, -0.75, 17.0),
    (27.0, 27.0, 0.10, 60.0, 1.2, 0.5, 0.77, 17.0),
    (27.0, 27.0, 0.30, 60.0, 1.2, 0.5, 0.44, 9.0),
    (23.5, 25.5, 0.10, 60.0, 1.2, 0.5, -0.01, 5.0),
    (23.5, 25.5, 0.30, 60.0, 1.2, 0.5, -0.55, 11.0),
    (19.0, 19.0, 0.10, 40.0, 1.2, 1.0, -0.60, 13.0),
]
IDS = [f"{ISO_7730}: {row[0]:g} C {row[2]:.2f} m/s {row[5]:g} clo" for row in ROWS]


@pytest.mark.parametrize(("air", "radiant", "speed", "humidity", "met", "clo", "vote", "share"), ROWS, ids=IDS)
def test_table_of_the_standard(
    air: float, radiant: float, speed: float, humidity: float, met: float, clo: float, vote: float, share: float
) -> None:
    """The standard's own tolerance is 0.1; 0.05 and one point are asked here."""
    found = predicted_mean_vote(air, radiant, speed, humidity / 100.0, met, clo)
    assert found == pytest.approx(vote, abs=0.05)
    assert 100.0 * dissatisfied_share(found) == pytest.approx(share, abs=1.0)


CATEGORIES = [("A", 0.2, 6.0), ("B", 0.5, 10.0), ("C", 0.7, 15.0)]


@pytest.mark.parametrize(
    ("vote", "share"),
    [row[1:] for row in CATEGORIES],
    ids=[f"ISO 7730 table A.1, from memory: category {row[0]}" for row in CATEGORIES],
)
def test_categories_of_the_standard(vote: float, share: float) -> None:
    """A vote within 0.2, 0.5 and 0.7 goes with less than 6, 10 and 15 % dissatisfied (15.3 % at 0.7 itself)."""
    assert 100.0 * dissatisfied_share(vote) == pytest.approx(share, abs=0.5)


@pytest.mark.parametrize("speed", [0.1, 0.3, 0.8], ids=lambda speed: f"pythermalcomfort, ASHRAE 55: {speed:g} m/s")
def test_operative_temperature_is_the_librarys(speed: float) -> None:
    from pythermalcomfort.environment import operative_tmp

    expected = float(operative_tmp(24.0, 28.0, speed, standard="ashrae"))
    assert operative_temperature(24.0, 28.0, speed) == pytest.approx(expected, abs=0.01)


@cache
def votes() -> Callable[..., Any]:
    """The library's votes, in plain Python: to compile all that it has for this one takes a quarter of a minute."""

    def alone(function: Any) -> Any:
        function.py_func = function  # where the library looks for what was compiled
        return function

    def plain(*given: Any, **_: Any) -> Any:
        return alone(given[0]) if given and callable(given[0]) else alone

    def each(*_: Any, **__: Any) -> Any:
        return np.vectorize

    with mock.patch.multiple("numba", jit=plain, njit=plain, vectorize=each):
        from pythermalcomfort.models import pmv_ppd_iso

    found: Callable[..., Any] = pmv_ppd_iso
    return found


VOTED = [(22.0, 22.0, 0.10, 60.0, 1.2, 0.5), (26.0, 31.0, 0.35, 75.0, 1.6, 0.4), (25.0, 24.0, 0.05, 65.0, 0.7, 2.5)]


@pytest.mark.parametrize(
    ("air", "radiant", "speed", "humidity", "met", "clo"),
    VOTED,
    ids=[f"pythermalcomfort, ISO 7730: {row[0]:g} C {row[4]:g} met {row[5]:g} clo" for row in VOTED],
)
def test_vote_is_the_librarys(
    air: float, radiant: float, speed: float, humidity: float, met: float, clo: float
) -> None:
    found = votes()(air, radiant, speed, humidity, met, clo, limit_inputs=False, round_output=False)
    ours = predicted_mean_vote(air, radiant, speed, humidity / 100.0, met, clo)
    assert ours == pytest.approx(float(found.pmv), abs=1e-6)


@pytest.mark.parametrize("vote", [-2.0, -0.5, 0.0, 1.0], ids=lambda vote: f"pythermalcomfort, vote {vote:g}")
def test_dissatisfied_share_is_the_librarys(vote: float) -> None:
    """The library gives both at once: look for the air that gives the vote."""
    found = votes()(24.0 + 3.0 * vote, 24.0, 0.1, 50.0, 1.2, 0.7, limit_inputs=False, round_output=False)
    assert 100.0 * dissatisfied_share(float(found.pmv)) == pytest.approx(float(found.ppd), rel=1e-9)
