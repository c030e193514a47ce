"""Dew and mould: where they are looked for, and how they are told."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.checks.changed import TWO_CABINS, cabins
from tests.checks.found import finding, sure
from tests.checks.holds_and_fails.condensate import COLD_SEA


@pytest.mark.parametrize("name", ["surfaces-dry", "surfaces-free-of-mould"])
def test_lockers_that_are_never_cooled_are_left_alone(name: str) -> None:
    uncooled = tuple(replace(period, set_points=(float("nan"),) * 2) for period in TWO_CABINS.plan)
    assert finding(name, replace(cabins(TWO_CABINS, use="stowage"), plan=uncooled)) is None


def test_dew_on_the_hull_is_told_with_its_temperature() -> None:
    found = sure("surfaces-dry", COLD_SEA)
    assert 17.0 < found.value < found.limit < 35.0
