"""Safety of the AC side: what nobody has said, and what does another's work."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.checks import Verdict
from anchorwatt.design.installation import Installation
from tests.checks.changed import ONE_CABIN
from tests.checks.found import Told, finding, sure
from tests.checks.holds_and_fails.ac_safety import CASES, UNSAID
from tests.sizing.test_ac_safety import with_transformer

WITHOUT_SHORE = replace(ONE_CABIN, shore=None)


@pytest.mark.parametrize("name", [name for name, case in CASES.items() if case.cannot_tell])
def test_what_nobody_has_said_is_asked_for(name: str) -> None:
    assert "installation." in sure(name, UNSAID).note


@pytest.mark.parametrize("name", ["earth-fault-device", "galvanic-isolation", "reverse-polarity"])
def test_a_transformer_before_everything_does_their_work(name: str) -> None:
    found = sure(name, with_transformer())
    assert found.verdict is Verdict.HOLDS
    assert "transformer" in found.note


def test_double_pole_breakers_do_for_polarity() -> None:
    assert sure("reverse-polarity", Told(said=Installation(double_pole=True))).verdict is Verdict.HOLDS


@pytest.mark.parametrize("name", [name for name in CASES if name != "neutral-earth-bond"])
def test_without_shore_power_there_is_nothing_to_ask(name: str) -> None:
    assert finding(name, WITHOUT_SHORE) is None
