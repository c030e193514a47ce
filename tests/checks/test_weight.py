"""Where the parts stand: places that nobody gave, and a boat that lies over."""

from __future__ import annotations

import pytest

from anchorwatt.checks import Verdict
from tests.checks.changed import ONE_CABIN
from tests.checks.found import finding, sure
from tests.checks.holds_and_fails.weight import CASES, FLOTATION, LEVEL, UNPLACED, boat


@pytest.mark.parametrize("name", CASES)
def test_a_level_boat_has_room_to_spare(name: str) -> None:
    assert sure(name, LEVEL).verdict is Verdict.HOLDS


@pytest.mark.parametrize("name", CASES)
def test_places_that_nobody_gave_are_asked_for(name: str) -> None:
    assert "places:" in sure(name, UNPLACED).note


@pytest.mark.parametrize("name", CASES)
def test_nothing_is_told_without_parts(name: str) -> None:
    assert finding(name, ONE_CABIN) is None


def test_a_boat_that_lies_over_fails() -> None:
    assert sure("heel-from-weight", boat((3000.0, FLOTATION, 2.0, 0.0))).verdict is Verdict.FAILS
