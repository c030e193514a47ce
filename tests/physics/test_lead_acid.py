"""Laws of lead-acid batteries."""

from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from hypothesis import assume, given
from hypothesis import strategies as st
from scipy.integrate import quad

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.lead_acid import (
    RATED_TIME,
    full_charge,
    lead_acid_acceptance,
    lead_acid_charge_time,
    peukert_capacity,
    peukert_time,
    rest_voltage,
)

CAPACITY = st.floats(50.0 * 3600.0, 1000.0 * 3600.0)
EXPONENT = st.floats(1.0, 1.5)
CHARGE = st.floats(0.0, 0.98)


@given(CAPACITY, EXPONENT)
def test_the_20_h_rate_takes_20_h(capacity: float, exponent: float) -> None:
    assert peukert_time(capacity / RATED_TIME, capacity, exponent) == pytest.approx(RATED_TIME, rel=1e-12)


@given(CAPACITY, EXPONENT, st.floats(1.0, 20.0))
def test_more_current_gives_less_charge_and_less_never_more_than_the_capacity(
    capacity: float, exponent: float, times: float
) -> None:
    rated = capacity / RATED_TIME
    assert peukert_capacity(times * rated, capacity, exponent) <= capacity * (1.0 + 1e-12)
    assert peukert_capacity(rated / times, capacity, exponent) == pytest.approx(capacity, rel=1e-12)
    slower = peukert_capacity(times * rated, capacity, exponent)
    assert peukert_capacity(2.0 * times * rated, capacity, exponent) <= slower * (1.0 + 1e-12)


def test_voltage_at_rest_runs_from_empty_to_full() -> None:
    assert rest_voltage(0.0, 11.8, 12.7) == 11.8
    assert rest_voltage(1.0, 11.8, 12.7) == pytest.approx(12.7)


@given(CHARGE, CAPACITY, st.floats(0.05, 1.0), st.floats(0.0, 500.0))
def test_never_more_amperes_than_ampere_hours_are_missing(
    charge: float, capacity: float, rate: float, available: float
) -> None:
    taken = lead_acid_acceptance(charge, capacity, rate / 3600.0, available)
    assert 0.0 <= taken <= min(available, rate * capacity / 3600.0) + 1e-12
    assert taken <= (1.0 - charge) * capacity / 3600.0 + 1e-12


@given(CHARGE, CHARGE, CAPACITY, st.floats(0.05, 1.0), st.floats(10.0, 500.0), st.floats(0.6, 1.0))
def test_charge_time_is_the_integral_of_the_acceptance(
    first: float, last: float, capacity: float, rate: float, available: float, efficiency: float
) -> None:
    assume(last > first + 1e-3)
    steady = min(rate, available / capacity * 3600.0)
    corner = 1.0 - steady

    def slowness(charge: float) -> float:
        return capacity / (efficiency * lead_acid_acceptance(charge, capacity, rate / 3600.0, available))

    exact = quad(slowness, first, last, points=[corner] if first < corner < last else None)[0]
    found = lead_acid_charge_time(first, last, capacity, rate / 3600.0, available, efficiency)
    assert found == pytest.approx(exact, rel=1e-5)


def test_the_last_of_the_charge_takes_for_ever_and_none_takes_no_time() -> None:
    assert lead_acid_charge_time(0.5, 1.0, 360e3, 1e-4, 50.0, 0.9) == math.inf
    assert lead_acid_charge_time(0.5, 0.9, 360e3, 1e-4, 0.0, 0.9) == math.inf
    assert lead_acid_charge_time(0.9, 0.5, 360e3, 1e-4, 50.0, 0.9) == 0.0


def test_at_full_charge_the_tail_is_a_hundredth() -> None:
    assert lead_acid_acceptance(full_charge(), 360e3, 1e-4, 50.0) == pytest.approx(1.0)


@pytest.mark.parametrize(
    "wrong",
    [
        lambda: peukert_time(0.0, 360e3, 1.2),
        lambda: peukert_time(5.0, 0.0, 1.2),
        lambda: peukert_time(5.0, 360e3, 0.9),
        lambda: rest_voltage(1.2, 11.8, 12.7),
        lambda: lead_acid_acceptance(1.2, 360e3, 1e-4, 50.0),
        lambda: lead_acid_acceptance(0.5, 0.0, 1e-4, 50.0),
        lambda: lead_acid_acceptance(0.5, 360e3, -1e-4, 50.0),
        lambda: lead_acid_acceptance(0.5, 360e3, 1e-4, -50.0),
        lambda: lead_acid_charge_time(-0.1, 0.9, 360e3, 1e-4, 50.0, 0.9),
        lambda: lead_acid_charge_time(0.1, 0.9, 0.0, 1e-4, 50.0, 0.9),
        lambda: lead_acid_charge_time(0.1, 0.9, 360e3, -1e-4, 50.0, 0.9),
        lambda: lead_acid_charge_time(0.1, 0.9, 360e3, 1e-4, 50.0, 0.0),
    ],
)
def test_nonsense_is_refused(wrong: Callable[[], float]) -> None:
    with pytest.raises(OutOfRange):
        wrong()
