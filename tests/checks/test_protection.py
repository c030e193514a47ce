"""Fuses and breakers: what counts as one."""

from __future__ import annotations

import math

from anchorwatt.checks import Verdict
from tests.checks.found import Told, finding, sure
from tests.checks.holds_and_fails.protection import device


def test_one_string_needs_no_device_of_its_own() -> None:
    assert finding("string-devices", Told()) is None


def test_a_device_without_a_rating_is_none() -> None:
    found = sure("circuits-protected", Told(spoil=device(rating=math.nan)))
    assert found.verdict is Verdict.FAILS
    assert "W1" in found.note
