"""What the bank command shows."""

from __future__ import annotations

import json
import re
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from tests.cli.conftest import Run
from tests.papers import fake
from tests.starters import assess_once
from typer.testing import Result

from anchorwatt import read
from anchorwatt.assessment.bank import BankStory
from anchorwatt.cli.terminal import show
from anchorwatt.papers import bank

ENDS = ("_V", "_A", "_Ah", "_kWh", "_pct", "_C", "_W", "_kg", "_hours", "_mohm", "_ratio", "hours")
PLAIN = {
    *("series", "parallel", "cells_in_series", "nights", "full_cycles", "discharge_capacities_per_hour"),
    *("calendar_stress", "years", "cycle_life", "years_to_warranted_share", "strings_needed", "cycles"),
    "years_by_cycles",
}


@pytest.fixture(scope="module")
def story(trawler: Path) -> BankStory:
    return assess_once(read(trawler)).bank


@pytest.fixture(scope="module")
def shown(run: Run, trawler: Path) -> Result:
    return run("bank", trawler)


def one_line(text: str) -> str:
    return re.sub(r"\s+", " ", text)


def page(capsys: pytest.CaptureFixture[str], story: BankStory, system: str = "si") -> str:
    show(bank.screen(fake.assessment(bank=story), system))  # type: ignore[arg-type]
    return one_line(capsys.readouterr().out)


def test_the_command_shows_build_night_years_limits_temperature_and_lead_acid(shown: Result) -> None:
    assert shown.exit_code == 0
    for heading in (
        "2 × lithium 25.6 V 280 Ah, 1 in series, 2 in parallel",
        "Does it hold the night?",
        "Its years",
        "What the management system disconnects",
        "Through the night, hour by hour",
        "Through the recharge",
        "Beside the lead-acid bank that it replaces",
        "Take care",
    ):
        assert heading in shown.stdout


@pytest.mark.parametrize("units", ["si", "us"])
def test_no_line_is_wider_than_the_terminal(run: Run, trawler: Path, units: str) -> None:
    assert max(map(len, run("bank", trawler, "--units", units).stdout.splitlines())) <= 80


def test_each_limit_is_told_with_what_it_opens(capsys: pytest.CaptureFixture[str], story: BankStory) -> None:
    text = page(capsys, story)
    for limit in story.limits:
        assert limit.cut_off.name in text
        assert limit.lost in text


def test_a_night_that_is_not_held_says_so(capsys: pytest.CaptureFixture[str], story: BankStory) -> None:
    failed = replace(story.life.warranted, holds=False)
    assert "does not hold" not in page(capsys, story)
    assert "does not hold" in page(capsys, replace(story, life=replace(story.life, warranted=failed)))


def test_a_bank_that_holds_to_the_end_of_the_run_holds_longer(
    capsys: pytest.CaptureFixture[str], story: BankStory
) -> None:
    longer = replace(story.life.new, hold=48.0 * 3600.0, or_longer=True)
    assert "> 48.0" in page(capsys, replace(story, life=replace(story.life, new=longer)))


def test_a_life_without_end_is_told_as_such(capsys: pytest.CaptureFixture[str], story: BankStory) -> None:
    endless = replace(story, life=replace(story.life, life=float("inf")))
    assert "75 % lasts over 40 years" in page(capsys, endless)
    told: Any = bank.plain(fake.assessment(bank=endless))
    assert told["warranty"]["years_to_warranted_share"] is None


def test_without_lead_acid_the_page_says_how_to_name_one(capsys: pytest.CaptureFixture[str], story: BankStory) -> None:
    assert "dc: replaced_bank:" in page(capsys, replace(story, replaced=None))
    assert bank.plain(fake.assessment(bank=replace(story, replaced=None)))["lead_acid"] is None


def test_without_a_recharge_there_is_none_to_show(capsys: pytest.CaptureFixture[str], story: BankStory) -> None:
    still = replace(story, recharge=None, state=replace(story.state, recharge=None))
    assert "Through the recharge" not in page(capsys, still)
    assert [one["run"] for one in bank.plain(fake.assessment(bank=still))["temperature"]] == ["night", "day"]


def test_json_is_the_story(run: Run, trawler: Path, story: BankStory) -> None:
    found = run("bank", trawler, "--json")
    told = json.loads(found.stdout)
    assert told == json.loads(
        json.dumps(bank.plain(fake.assessment(bank=story, cautions=assess_once(read(trawler)).cautions)))
    )
    assert [night["holds"] for night in told["nights"]] == [True, True, True]
    assert len(told["years"]) == 9
    assert len(told["management"]) == len(story.limits)


def test_every_key_of_a_figure_ends_in_its_unit(story: BankStory) -> None:
    def walk(value: Any, key: str = "") -> None:
        if isinstance(value, dict):
            for name, part in value.items():
                walk(part, name)
        elif isinstance(value, list):
            for part in value:
                walk(part, key)
        elif isinstance(value, (int, float)) and not isinstance(value, bool):
            assert key.endswith(ENDS) or key in PLAIN, key

    walk(bank.plain(fake.assessment(bank=story)))
