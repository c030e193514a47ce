"""Inverter, transformer, shore power, bank and alternators: what is left out."""

from __future__ import annotations

from dataclasses import replace

import pytest

from tests.checks.changed import ONE_CABIN
from tests.checks.found import finding
from tests.simulation import boats

BARE = replace(ONE_CABIN, transformer=None, shore=None, engines=(boats.engine(()),))


@pytest.mark.parametrize(
    "name", ["transformer-carries-peak", "shore-carries-load", "alternator-winding", "alternator-overspeed"]
)
def test_a_rule_without_an_object_is_left_out(name: str) -> None:
    assert finding(name, BARE) is None
