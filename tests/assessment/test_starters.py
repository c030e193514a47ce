"""The three starter boats through the whole chain, and what every assessment owes its reader."""

from __future__ import annotations

import math
from pathlib import Path
from tempfile import TemporaryDirectory

import numpy as np
import pytest

import anchorwatt
from anchorwatt import design
from anchorwatt.assessment import Verdict
from tests.starters import STARTERS, assessed

KEYS = (
    "hold_hours",
    "required_hours",
    "charge_at_dawn_pct",
    "night_energy_kWh",
    "peak_plant_power_W",
    "peak_inverter_power_W",
    "comfortable_cabins",
    "engine_hours_to_recharge",
    "recharge_fuel_L",
    "mass_added_kg",
    "heel_deg",
    "trim_cm",
    "total_EUR",
    "checks_failed",
)


@pytest.mark.parametrize("starter", STARTERS)
def test_headline_answers_and_says_why(starter: str) -> None:
    answers = {answer.key: answer for answer in assessed(starter).headline}
    assert tuple(answers) == KEYS
    for answer in answers.values():
        assert math.isfinite(answer.value)
        assert answer.why.formula
        assert answer.why.source
        assert answer.why.changes_it


@pytest.mark.parametrize("starter", STARTERS)
def test_the_starter_does_its_job(starter: str) -> None:
    """A starter is a sound design: nothing fails."""
    assert [f.id for f in assessed(starter).checks if f.verdict is Verdict.FAILS] == []


@pytest.mark.parametrize("starter", STARTERS)
def test_hold_and_charge_at_dawn_agree(starter: str) -> None:
    """The bank holds longer than asked exactly when more than the reserve is left at dawn."""
    it = assessed(starter)
    longer = it.answer("hold_hours").value >= it.answer("required_hours").value
    assert longer == (it.answer("charge_at_dawn_pct").value >= it.specification.brief.reserve)


@pytest.mark.parametrize("starter", STARTERS)
def test_night_energy_is_the_integral_of_the_table(starter: str) -> None:
    it = assessed(starter)
    current, voltage = it.night.column("bank_current_A").values, it.night.column("bank_voltage_V").values
    energy = float((current * voltage).sum()) * it.simulation.step
    assert energy == pytest.approx(it.answer("night_energy_kWh").value, rel=1e-9)


@pytest.mark.parametrize("starter", STARTERS)
def test_gains_by_cause_add_up(starter: str) -> None:
    for cabin in assessed(starter).cabins:
        if cabin.gains:
            assert sum(watts for _, watts in cabin.gains) == pytest.approx(cabin.peak_sensible)


@pytest.mark.parametrize("starter", STARTERS)
def test_recharge_says_what_held_it(starter: str) -> None:
    recharge = assessed(starter).recharge
    assert recharge is not None
    assert sum(share for _, share in recharge.held_by) == pytest.approx(1.0)
    assert recharge.fuel_burnt > recharge.fuel_added > 0.0
    assert recharge.table.column("charge_pct").values[-1] >= assessed(starter).simulation.full_charge - 1e-9


@pytest.mark.parametrize("starter", STARTERS)
def test_every_estimate_has_its_rule(starter: str) -> None:
    estimates = assessed(starter).estimates
    assert estimates
    assert all(e.key and e.value and e.rule and e.source for e in estimates)


@pytest.mark.parametrize("starter", STARTERS)
def test_the_other_plants_use_more(starter: str) -> None:
    shared, *others = assessed(starter).comparisons
    assert [other.plant for other in others] == ["chilled water", "self-contained units"]
    for other in others:
        assert other.night_energy > shared.night_energy
        assert other.peak_plant_power > shared.peak_plant_power
    for one in (shared, *others):
        assert 0.0 < one.warmest < 5.0
        assert 0.4 < one.dampest < 1.0


@pytest.mark.parametrize("starter", STARTERS)
def test_the_peak_lands_near_the_rule_or_says_why_not(starter: str) -> None:
    """Common practice, no source: 14 Btu/h per ft³. Below that, covers, build and a hot boat tell why."""
    story = assessed(starter).load_story
    assert story is not None
    if story.below:
        assert story.peak < story.uncovered < story.bare
        assert story.peak < story.single_skin < story.bare
        assert story.peak < story.pull_down
    else:
        assert story.near


@pytest.mark.parametrize("starter", STARTERS)
def test_the_headline_says_what_the_pages_of_weight_and_price_say(starter: str) -> None:
    it = assessed(starter)
    assert it.answer("mass_added_kg").value == it.weight.figures.added
    assert it.answer("heel_deg").value == it.weight.figures.floats.heel
    assert it.answer("trim_cm").value == it.weight.figures.floats.trim
    assert it.answer("total_EUR").value == float(it.offer.priced.total)


@pytest.mark.parametrize("starter", STARTERS)
def test_cables_and_every_part_are_in_the_mass(starter: str) -> None:
    it = assessed(starter)
    parts = sum(one.count * one.mass for one in it.specification.items)
    cables = sum(one.conductor.mass for one in it.evidence.wiring.circuits)
    assert cables > 1.0
    assert it.answer("mass_added_kg").value == pytest.approx(parts + cables)


def test_no_check_is_run_for_the_answers_or_for_the_fuel() -> None:
    it = anchorwatt.assess(design.parse(design.starter_text("cutter-12m")))
    assert tuple(answer.key for answer in it.answers) == KEYS[:-1]
    assert it.recharge is not None
    assert "checks" not in vars(it)


def test_an_unknown_answer_or_column_is_told() -> None:
    it = assessed("trawler-14m")
    with pytest.raises(KeyError, match="there are"):
        it.answer("speed")
    with pytest.raises(KeyError, match="there are"):
        it.night.column("speed")


def test_nothing_is_computed_before_it_is_asked_for() -> None:
    with TemporaryDirectory() as folder:
        path = Path(folder) / "boat.yaml"
        design.new("cutter-12m", path)
        it = anchorwatt.assess(anchorwatt.read(path))
    assert set(vars(it)) == {"design"}
    assert it.headline is it.headline


def test_tables_share_the_night_s_clock() -> None:
    it = assessed("trawler-14m")
    night, day = it.night.clock, it.day.clock
    assert np.diff(night) == pytest.approx(it.simulation.step)
    assert day[0] - night[-1] == pytest.approx(it.simulation.step)
