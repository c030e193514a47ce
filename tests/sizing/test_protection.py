"""Fuses and breakers: rating, family, distance, and what cannot be."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.catalogue.protective_device import ProtectiveDevice
from anchorwatt.design.specification import CircuitWish, Regime
from anchorwatt.sizing.protection import Need, families, highest_rating, protect

NEED = Need(
    voltage=25.6,
    alternating=False,
    continuous=100.0,
    peak=100.0,
    ampacity=178.0,
    prospective=8000.0,
    source="bus",
    regime=Regime.CFR,
)
regimes = st.sampled_from(list(Regime))


def wish(fuse: float = math.nan, family: str = "") -> CircuitWish:
    return CircuitWish("W1", math.nan, "", 0, fuse, family, 0, math.nan)


def test_a_continuous_load_gets_a_quarter_more() -> None:
    found = protect(NEED)
    assert found.rating == 125.0
    assert (found.governed_by, found.kind) == ("continuous load", "fuse")
    assert found.possible


def test_a_peak_can_govern() -> None:
    found = protect(replace(NEED, peak=600.0))
    assert found.governed_by == "peak"
    assert found.rating > 125.0


def test_a_tiny_load_gets_the_smallest_rating() -> None:
    found = protect(replace(NEED, continuous=0.2, peak=0.2, ampacity=17.0))
    assert (found.rating, found.governed_by) == (1.0, "smallest rating of its family")


def test_a_shore_service_is_rated_as_its_breaker_is() -> None:
    shore = replace(NEED, voltage=120.0, alternating=True, continuous=30.0, peak=30.0, ampacity=40.0, prospective=3e3)
    assert protect(replace(shore, factor=1.0)).rating == 30.0
    assert protect(shore).rating == 40.0


@pytest.mark.parametrize(
    ("prospective", "family"),
    [(800.0, "MIDI"), (1500.0, "MEGA"), (6000.0, "ANL"), (19e3, "cylindrical 22 × 58"), (40e3, "EV bolt-down 50 kA")],
)
def test_the_fault_chooses_the_family(prospective: float, family: str) -> None:
    found = protect(replace(NEED, prospective=prospective))
    assert found.family == family
    assert found.interrupting >= prospective


def test_charging_voltage_shuts_out_what_bears_the_nominal_one_only() -> None:
    """A bank of 12.8 V charges at 14.6 V, where the post-mounted cube interrupts half of what it does at 14 V."""
    found = protect(replace(NEED, voltage=12.8, prospective=8000.0, wish=wish(family="battery-post cube")))
    assert found.interrupting == 5000.0
    assert any("interrupts 5 kA" in text for text in found.findings)


def test_above_58_volts_no_32_v_fuse_is_offered() -> None:
    found = protect(replace(NEED, voltage=51.2, prospective=900.0))
    assert found.highest_voltage >= 1.14 * 51.2


def test_a_fault_beyond_every_family_is_told_and_not_raised() -> None:
    found = protect(replace(NEED, prospective=80e3))
    assert not found.possible
    assert any("80 kA" in text for text in found.findings)


def test_a_load_beyond_every_family_is_told_and_not_raised() -> None:
    found = protect(replace(NEED, continuous=900.0, peak=900.0, ampacity=1500.0))
    assert math.isnan(found.rating)
    assert any("split the circuit" in text for text in found.findings)


def test_a_conductor_too_thin_for_any_device_is_told() -> None:
    found = protect(replace(NEED, ampacity=70.0))
    assert found.rating > found.at_most
    assert any("larger conductor" in text for text in found.findings)


def test_an_unknown_fault_says_so() -> None:
    found = protect(replace(NEED, prospective=math.nan))
    assert found.possible
    assert "unknown" in found.why


def test_an_honoured_wish_is_told_as_typed() -> None:
    found = protect(replace(NEED, wish=wish(150.0, "class T")))
    assert (found.family, found.rating, found.governed_by) == ("class T", 150.0, "typed")
    assert found.possible


@pytest.mark.parametrize(
    ("asked", "words"),
    [
        (wish(100.0, "ANL"), "less than the 125 A"),
        (wish(400.0, "class T"), "more than the 267 A"),
        (wish(137.0), "no standard rating"),
        (wish(150.0, "MEGA"), "MEGA interrupts 2 kA"),
        (wish(150.0, "string and hope"), "no family"),
    ],
)
def test_a_wish_that_does_not_hold_is_kept_and_told(asked: CircuitWish, words: str) -> None:
    found = protect(replace(NEED, wish=asked))
    assert any(words in text for text in found.findings)
    assert math.isclose(found.rating, asked.fuse)


def test_a_wished_family_gets_its_rating_worked_out() -> None:
    found = protect(replace(NEED, wish=wish(family="NH blade")))
    assert (found.family, found.rating) == ("NH blade", 125.0)


@pytest.mark.parametrize(
    ("regime", "source", "bare"),
    [
        (Regime.CFR, "bus", 0.1778),
        (Regime.CFR, "bank", 1.8288),
        (Regime.ABYC, "bank", 0.1778),
        (Regime.ISO, "bus", 0.2),
        (Regime.ISO, "bank", 1.8),
        (Regime.ISO, "shore", 3.0),
    ],
)
def test_how_far_from_the_source(regime: Regime, source: str, bare: float) -> None:
    found = protect(replace(NEED, regime=regime, source=source))
    assert found.distance == pytest.approx(bare)
    assert found.sheathed_distance >= found.distance


def test_what_gives_way_is_guarded_at_the_end_that_the_bank_feeds() -> None:
    assert protect(replace(NEED, fed_from_end=True)).at == "end"
    assert protect(NEED).at == "start"


@pytest.mark.parametrize(
    ("regime", "family"), [(Regime.ISO, "AC breaker, curve C"), (Regime.CFR, "AC breaker, 120/240 V")]
)
def test_ac_breakers_are_of_the_regimes_own_land(regime: Regime, family: str) -> None:
    ac = replace(NEED, voltage=230.0, alternating=True, continuous=10.0, peak=10.0, ampacity=30.0, prospective=2500.0)
    assert protect(replace(ac, regime=regime)).family == family


@given(st.floats(1.0, 500.0), st.sampled_from([12.8, 25.6, 51.2, 120.0, 230.0]), regimes)
def test_no_regime_lets_more_than_half_again_through(ampacity: float, voltage: float, regime: Regime) -> None:
    assert ampacity <= highest_rating(ampacity, voltage, regime) <= 1.5 * ampacity * (1.0 + 1e-9)


@given(
    st.sampled_from([12.8, 25.6, 51.2]),
    st.floats(0.05, 450.0),
    st.floats(1.0, 3.0),
    st.floats(1.0, 4.0),
    st.floats(100.0, 60e3),
    regimes,
)
def test_whatever_is_said_to_hold_does(
    voltage: float, continuous: float, peak: float, room: float, prospective: float, regime: Regime
) -> None:
    need = Need(voltage, False, continuous, peak * continuous, room * continuous, prospective, "bus", regime)
    found = protect(need)
    if found.possible:
        assert 1.25 * continuous <= found.rating * (1.0 + 1e-9)
        assert found.rating <= found.at_most * (1.0 + 1e-9)
        assert found.interrupting >= prospective
        assert found.highest_voltage >= 1.14 * voltage
    else:
        assert all(found.findings)


@given(st.floats(1.0, 250.0), st.floats(1.0, 250.0))
def test_a_larger_load_never_gets_a_smaller_device_of_its_family(one: float, other: float) -> None:
    small, large = sorted((one, other))
    asked = replace(NEED, wish=wish(family="class T"), ampacity=1000.0)
    low, high = (protect(replace(asked, continuous=load, peak=load)).rating for load in (small, large))
    assert low <= high


def test_families_are_by_price() -> None:
    direct = [row for row in families(False, Regime.CFR) if isinstance(row, ProtectiveDevice)]
    prices = [row.price.amount for row in direct if row.price is not None]
    assert prices == sorted(prices)
    assert len(prices) == len(direct)
