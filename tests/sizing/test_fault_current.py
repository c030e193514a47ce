"""What a short circuit could draw, by the design."""

from __future__ import annotations

from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.design.specification import Specification
from anchorwatt.sizing.fault_current import (
    LINK_RESISTANCE,
    alternating_fault,
    inverter_fault,
    prospective,
    prospective_after,
    shore_fault,
    transformer_fault,
)
from tests.simulation import boats

BOAT = boats.boat(1)


def in_strings(parallel: int, resistance: float = 4e-3) -> Specification:
    return replace(BOAT, bank=replace(BOAT.bank, parallel=parallel, resistance=resistance / parallel))


def test_full_cells_drive_the_fault() -> None:
    found = prospective(BOAT)
    assert found.voltage == pytest.approx(8 * 3.598)
    assert found.bank == pytest.approx(found.voltage / found.resistance)


def test_a_string_alone_is_the_bank() -> None:
    found = prospective(BOAT)
    assert found.string == found.bank == found.through_string_device


def test_in_a_bank_of_two_each_device_sees_the_other_string() -> None:
    found = prospective(in_strings(2))
    assert found.through_string_device == found.string
    assert found.bank == pytest.approx(2 * found.string)


def test_in_a_bank_of_four_the_other_three_feed_a_fault_in_one() -> None:
    found = prospective(in_strings(4))
    assert found.through_string_device == pytest.approx(3 * found.string)


def test_the_lower_of_two_resistances_is_taken() -> None:
    """The fault is an upper bound: the maker's long-term figure must not hide a hard short."""
    soft, hard = prospective(in_strings(1, 50e-3)), prospective(in_strings(1, 0.5e-3))
    assert "cells" in soft.governed_by
    assert "stated" in hard.governed_by
    assert hard.bank > soft.bank
    assert soft.resistance > 8 * LINK_RESISTANCE


@given(st.floats(0.0, 0.1), st.floats(0.0, 0.1))
def test_more_cable_never_lets_more_through(one: float, other: float) -> None:
    short, long = sorted((one, other))
    assert prospective_after(BOAT, long) <= prospective_after(BOAT, short) <= prospective(BOAT).bank


def test_other_sources_are_told_and_not_added() -> None:
    alone = replace(BOAT, engines=(), charger=None)
    with_machines, without = prospective(BOAT), prospective(alone)
    assert with_machines.bank == without.bank
    assert [one.name for one in with_machines.contributions] == ["alternator", "charger"]
    assert with_machines.contributions[0].current == pytest.approx(1.5 * 180.0)
    assert without.contributions == ()
    assert with_machines.added < 0.05 * with_machines.bank


def test_sun_is_told_too() -> None:
    found = prospective(replace(BOAT, solar=boats.SUNNY))
    assert found.contributions[-1].name == "sun"


def test_management_is_credited_with_nothing() -> None:
    """A lower limit of the management system leaves the fault as it is."""
    tame = replace(BOAT, bank=replace(BOAT.bank, discharge_current=1.0, management=()))
    assert prospective(tame).bank == prospective(BOAT).bank


def test_the_inverter_gives_no_more_than_its_overload() -> None:
    assert inverter_fault(BOAT) == pytest.approx(2.0 * 4000.0 / 120.0)


def test_shore_of_60_hz_is_taken_at_3_ka_and_of_50_hz_at_6() -> None:
    assert BOAT.shore is not None
    assert shore_fault(BOAT) == 3000.0
    assert shore_fault(replace(BOAT, shore=replace(BOAT.shore, voltage=230.0))) == 6000.0
    assert shore_fault(replace(BOAT, shore=None)) == 0.0


def test_a_transformer_passes_no_more_than_it_is_fed() -> None:
    assert BOAT.transformer is not None
    own = 4000.0 / 120.0 / 0.04
    assert transformer_fault(BOAT) == pytest.approx(own)
    off_shore = replace(BOAT, shore=None)
    assert transformer_fault(off_shore) == pytest.approx(inverter_fault(off_shore))
    assert transformer_fault(replace(BOAT, transformer=None)) == 3000.0


@pytest.mark.parametrize(("source", "current"), [("shore", 3000.0), ("inverter", 2.0 * 4000.0 / 120.0)])
def test_ac_faults_go_by_their_source(source: str, current: float) -> None:
    assert alternating_fault(BOAT, source) == pytest.approx(current)
    assert alternating_fault(BOAT, "transformer") == transformer_fault(BOAT)
