"""Runs off the bank, kept from design to design: what they are known by, and that nothing else enters them."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest

from anchorwatt import design
from anchorwatt.design import Design, specify
from anchorwatt.simulation import runs
from anchorwatt.simulation.lead_in import KEEPS, Asked
from anchorwatt.simulation.runs import Simulation


@cache
def boat(starter: str) -> Design:
    return design.parse(design.starter_text(starter))


def before(made: Design) -> runs.Run:
    return Simulation(specify(made)).before


@pytest.mark.parametrize(
    ("key", "value"),
    [("dc.bank.parallel", 4), ("brief.reserve", "30 %"), ("place.heading", "90°")],
)
def test_a_kept_run_is_what_a_fresh_one_gives(key: str, value: object) -> None:
    changed = design.edit(boat("trawler-14m"), key, value)
    KEEPS.forget()
    fresh = before(changed)
    KEEPS.forget()
    before(boat("trawler-14m"))
    after_the_other = before(changed)
    for one, other in zip(fresh.end, after_the_other.end, strict=True):
        np.testing.assert_array_equal(one, other)


def test_an_edit_of_the_bank_does_not_repeat_the_days_before() -> None:
    first = before(boat("trawler-14m"))
    assert before(design.edit(boat("trawler-14m"), "dc.bank.parallel", 4)).series is first.series


def test_a_bank_in_a_cabin_enters_the_days_before() -> None:
    inside = design.edit(boat("trawler-14m"), "dc.bank.cabin", "owner's cabin")
    assert before(design.edit(inside, "dc.bank.parallel", 4)).series is not before(inside).series


@pytest.mark.parametrize("starter", ["trawler-14m", "catamaran-13m", "cutter-12m"])
def test_what_is_taken_out_of_a_run_off_the_bank_does_not_matter(starter: str, monkeypatch: pytest.MonkeyPatch) -> None:
    KEEPS.forget()
    lean = before(boat(starter))
    KEEPS.forget()
    monkeypatch.setattr(runs, "asked", lambda *given: Asked(*given))
    whole = before(boat(starter))
    for one, other in zip((*lean.end, *lean.series), (*whole.end, *whole.series), strict=True):
        np.testing.assert_array_equal(one, other)
    KEEPS.forget()
