"""Parts in spaces: which part a rule names, what is near, and what is not looked at."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict
from tests.checks.found import finding, sure
from tests.checks.holds_and_fails.fit import CASES, FITS, INVERTER, SIZELESS, boat
from tests.simulation import boats


@pytest.mark.parametrize("name", CASES)
def test_what_fits_has_room_to_spare(name: str) -> None:
    assert sure(name, FITS).verdict is Verdict.HOLDS


@pytest.mark.parametrize("name", CASES)
def test_a_failure_names_the_part(name: str) -> None:
    assert "T1" in sure(name, CASES[name].fails).note


@pytest.mark.parametrize("name", CASES)
def test_nothing_is_told_without_parts_in_spaces(name: str) -> None:
    assert finding(name, boat(boats.space(), replace(INVERTER, space=-1))) is None


@pytest.mark.parametrize("name", ["goes-through-opening", "fits-in-space", "serviceable"])
def test_a_part_without_a_size_is_named(name: str) -> None:
    assert "T2" in sure(name, SIZELESS).note


def test_a_tight_opening_is_near() -> None:
    found = sure("goes-through-opening", boat(boats.space(opening=(0.7, 0.405)), INVERTER))
    assert found.verdict is Verdict.NEAR
    assert found.value == pytest.approx(0.005)


def test_a_part_that_derates_and_still_gives_what_is_asked_is_near() -> None:
    made = boat(boats.space(), replace(INVERTER, highest_air=33.0))
    gentle = replace(made.inverter, full_to=33.0, highest_air=65.0, derating=0.015)
    found = sure("space-cool-enough", replace(made, inverter=gentle))
    assert found.verdict is Verdict.NEAR
    assert "which is enough" in found.note
