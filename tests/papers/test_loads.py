"""What the loads and plant commands show."""

from __future__ import annotations

import json
import math
from dataclasses import replace

import pytest
from tests.papers import fake

from anchorwatt.cli.terminal import show
from anchorwatt.papers import loads, plant

WORDS = {"cabin", "catalogue", "has", "peak_at"}
RATIOS = {"diversity"}


def text(capsys: pytest.CaptureFixture[str], **changes: object) -> str:
    show(loads.screen(fake.assessment(**changes), "si"))
    return capsys.readouterr().out


def test_the_boats_hour_and_its_cabins_hours(capsys: pytest.CaptureFixture[str]) -> None:
    page = text(capsys)
    gains = fake.gains()
    assert f"begins at {gains.peak_hour:02d}:00" in page
    assert "own peaks add to" in page.replace("\n  ", " ")


def test_none_large_enough_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    assert "none is large enough" in text(capsys)


def test_rules_are_marked_as_common_practice(capsys: pytest.CaptureFixture[str]) -> None:
    assert "Common practice, no source" in text(capsys).replace("\n  ", " ")


def test_a_peak_far_below_the_rule_says_why(capsys: pytest.CaptureFixture[str]) -> None:
    page = text(capsys).replace("\n  ", " ")
    assert "Why so far below" in page
    assert "8.80 kW" in page


def test_a_peak_near_the_rule_needs_no_excuse(capsys: pytest.CaptureFixture[str]) -> None:
    near = replace(fake.STORY, peak=8500.0)
    assert "Why so far" not in text(capsys, load_story=near)


def test_a_peak_far_above_the_rule_says_why(capsys: pytest.CaptureFixture[str]) -> None:
    page = text(capsys, load_story=replace(fake.STORY, peak=20_000.0)).replace("\n  ", " ")
    assert "Why so far above" in page
    assert "222 % of it" in page


def test_a_plant_that_never_gets_there_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    never = replace(fake.STORY, pull_down=math.nan, own_pull_down=math.nan)
    page = text(capsys, load_story=never).replace("\n  ", " ")
    assert "by any plant" in page
    assert "does not get there in 12 h" in page


def test_every_cabin_has_its_24_hours(capsys: pytest.CaptureFixture[str]) -> None:
    page = text(capsys)
    first, second = page.index("owner's cabin through the day"), page.index("saloon through the day")
    assert all(f"{hour:02d}:00" in page[first:second] for hour in range(24))


def test_the_highest_hour_of_each_cabin_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    (cabin, *_) = fake.gains().cabins
    assert f"They begin: owner's cabin {cabin.peak_hour:02d}:00" in text(capsys).replace("\n  ", " ")


def test_every_key_of_a_figure_ends_in_its_unit() -> None:
    told = loads.plain(fake.assessment())
    for part in (told["boat"], told["selection"]["condensing_unit"], *told["selection"]["handlers"]):
        assert all(key.endswith(("_W", "_C")) for key, value in part.items() if key not in WORDS | RATIOS)


def test_json_has_every_cause_of_every_hour() -> None:
    plain = loads.plain(fake.assessment())
    json.dumps(plain, allow_nan=False)
    assert {len(values) for values in plain["by_hour_W"]["owner's cabin"].values()} == {24}
    assert len(plain["boat"]["total_W"]) == 24
    assert plain["selection"]["handlers"][1]["catalogue"] is None
    assert plain["rules_of_thumb"]["boat_by_volume_W"] == 9000.0


def test_json_of_the_plant_has_its_map_and_pipes() -> None:
    plain = plant.plain(fake.assessment())
    json.dumps(plain, allow_nan=False)
    assert len(plain["cooling"]) == 9
    assert {"capacity_W", "plant_power_W", "plant_cop", "sea_C"} <= plain["cooling"][0].keys()
    assert plain["pipes"]["handlers"]
    assert len(plain["comparison"]) == 2


def test_a_plant_that_does_not_heat_has_no_such_table(capsys: pytest.CaptureFixture[str]) -> None:
    made = fake.assessment()
    show(plant.screen(made, "si"))
    assert "Heating at full speed" in capsys.readouterr().out
    show(plant.screen(fake.assessment(plant=replace(made.plant, heating=())), "si"))
    assert "Heating at full speed" not in capsys.readouterr().out
