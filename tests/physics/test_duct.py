"""Ducts, grilles and the fan behind them."""

from __future__ import annotations

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.duct import (
    SHUT_OFF_RATIO,
    Loss,
    balance,
    branch_flow,
    delivered,
    duct_pressure,
    fan_pressure,
    grille_pressure,
    grille_velocity,
)


def duct(length: float, diameter: float, bends: float = 2.0) -> Loss:
    return lambda flow: duct_pressure(flow, length, diameter, 0.0009, 1.3, bends, 0.3)


def nothing(_: float) -> float:
    return 0.0


lengths = st.floats(0.2, 10.0)
diameters = st.floats(0.06, 0.3)
ducts = st.builds(duct, lengths, diameters)
flows = st.floats(0.001, 0.4)


@given(flows, lengths, diameters, st.floats(0.0, 6.0), st.floats(0.01, 2.0))
def test_longer_bent_and_slack_ducts_take_more(
    flow: float, length: float, diameter: float, bends: float, more: float
) -> None:
    plain = duct_pressure(flow, length, diameter, 0.0009, 1.0, bends, 0.3)
    assert duct_pressure(flow, length + more, diameter, 0.0009, 1.0, bends, 0.3) > plain
    assert duct_pressure(flow, length, diameter, 0.0009, 1.0, bends + more, 0.3) > plain
    assert duct_pressure(flow, length, diameter, 0.0009, 1.0 + more, bends, 0.3) > plain


@given(flows, lengths, diameters, st.floats(1.01, 2.0))
def test_a_larger_duct_takes_less(flow: float, length: float, diameter: float, more: float) -> None:
    assert duct(length, diameter * more)(flow) < duct(length, diameter)(flow)


def test_the_stretch_factor_is_on_the_friction_alone() -> None:
    entry, straight, slack = (
        duct_pressure(0.05, length, 0.15, 0.0009, factor, 0.0, 0.0)
        for length, factor in ((0.0, 1.0), (10.0, 1.0), (10.0, 2.0))
    )
    assert slack - entry == pytest.approx(2.0 * (straight - entry))


@given(flows, st.floats(0.005, 0.2), st.floats(0.3, 1.0))
def test_a_grille_goes_with_the_square_of_the_flow(flow: float, area: float, free: float) -> None:
    assert grille_velocity(flow, area, free) * area * free == pytest.approx(flow)
    assert grille_pressure(2.0 * flow, area, free, 1.5) == pytest.approx(4.0 * grille_pressure(flow, area, free, 1.5))


@given(ducts, st.floats(0.01, 500.0))
def test_a_branch_takes_the_pressure_that_drives_it(loss: Loss, pressure: float) -> None:
    """Where laminar flow tips over, no flow takes just that pressure: it lies between the two sides."""
    flow = branch_flow(loss, pressure)
    assert loss(flow * (1.0 - 1e-6)) <= pressure * (1.0 + 1e-6)
    assert loss(flow * (1.0 + 1e-6)) >= pressure * (1.0 - 1e-6)


@given(st.lists(ducts, min_size=1, max_size=5), flows)
def test_balanced_branches_carry_the_whole(losses: list[Loss], flow: float) -> None:
    assert math.fsum(balance(losses, flow)) == pytest.approx(flow)


@given(st.lists(ducts, min_size=2, max_size=4), st.floats(0.1, 0.4))
def test_balanced_branches_take_the_same_pressure(losses: list[Loss], flow: float) -> None:
    found = balance(losses, flow)
    lowest = max(loss(each * 0.9999) for loss, each in zip(losses, found, strict=True))
    highest = min(loss(each * 1.0001) for loss, each in zip(losses, found, strict=True))
    assert lowest <= highest * (1.0 + 1e-6)


@given(ducts, flows, st.integers(2, 5))
def test_like_branches_share_alike(loss: Loss, flow: float, count: int) -> None:
    assert balance([loss] * count, flow) == pytest.approx([flow / count] * count)


def test_branches_of_the_square_law_share_by_hand() -> None:
    """a q² alike at both: q goes with 1/√a."""
    assert balance([lambda q: 9.0 * q * q, lambda q: q * q], 0.4) == pytest.approx([0.1, 0.3])


@given(st.floats(0.01, 0.5), st.floats(1.0, 300.0), st.floats(0.0, 1.3), st.floats(0.01, 0.2))
def test_a_fan_spares_less_the_more_it_moves(full: float, spare: float, share: float, more: float) -> None:
    assert fan_pressure(full * (share + more), full, spare) < fan_pressure(full * share, full, spare)
    assert fan_pressure(full, full, spare) == pytest.approx(spare)
    assert fan_pressure(0.0, full, spare) == pytest.approx(SHUT_OFF_RATIO * spare)


@given(st.lists(ducts, min_size=1, max_size=3), st.floats(0.02, 0.3), st.floats(5.0, 150.0))
def test_what_is_delivered_is_where_fan_and_ducts_meet(losses: list[Loss], full: float, spare: float) -> None:
    def back(flow: float) -> float:
        return grille_pressure(flow, 0.06, 0.7, 1.5)

    found = delivered(losses, back, full, spare)
    total = math.fsum(found)
    left = fan_pressure(total, full, spare) - back(total)
    assert losses[0](found[0] * 0.9999) <= left + 1e-3 * spare
    assert losses[0](found[0] * 1.0001) >= left - 1e-3 * spare


@given(ducts, st.floats(0.02, 0.3), st.floats(5.0, 100.0), st.floats(1.01, 2.0))
def test_a_stronger_fan_delivers_more(loss: Loss, full: float, spare: float, more: float) -> None:
    assert sum(delivered([loss], nothing, full, spare * more)) >= sum(delivered([loss], nothing, full, spare))


def test_a_fan_without_pressure_delivers_nothing() -> None:
    assert delivered([duct(2.0, 0.1), duct(3.0, 0.1)], nothing, 0.1, 0.0) == (0.0, 0.0)
    assert balance([duct(2.0, 0.1), duct(3.0, 0.1)], 0.0) == (0.0, 0.0)
    assert branch_flow(duct(2.0, 0.1), 0.0) == 0.0


def test_impossible_ducts_are_refused() -> None:
    for values in (
        (0.1, -1.0, 0.1, 0.0009, 1.0, 2.0, 0.3),
        (0.1, 1.0, 0.1, 0.0009, 0.9, 2.0, 0.3),
        (0.1, 1.0, 0.1, 0.0009, 1.0, -2.0, 0.3),
        (-0.1, 1.0, 0.1, 0.0009, 1.0, 2.0, 0.3),
    ):
        with pytest.raises(OutOfRange):
            duct_pressure(*values)
    for grille in ((-0.1, 0.1, 0.7, 1.0), (0.1, 0.0, 0.7, 1.0), (0.1, 0.1, 1.1, 1.0), (0.1, 0.1, 0.7, -1.0)):
        with pytest.raises(OutOfRange):
            grille_pressure(*grille)
    for fan in ((-0.1, 0.1, 60.0), (0.1, 0.0, 60.0), (0.1, 0.1, -60.0)):
        with pytest.raises(OutOfRange):
            fan_pressure(*fan)
    with pytest.raises(OutOfRange):
        balance([], 0.1)
    with pytest.raises(OutOfRange):
        balance([nothing], -0.1)
    with pytest.raises(OutOfRange):
        delivered([], nothing, 0.1, 60.0)
    with pytest.raises(OutOfRange):
        branch_flow(duct(2.0, 0.1), -1.0)
    with pytest.raises(OutOfRange, match="take some pressure"):
        branch_flow(nothing, 1.0)
