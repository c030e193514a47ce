"""What the generator command shows."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from pathlib import Path
from typing import Any

import pytest
from tests.cli.conftest import Run
from tests.papers import fake

from anchorwatt.assessment.generator import GeneratorStory, points
from anchorwatt.cli.terminal import show
from anchorwatt.design.specification import Generator
from anchorwatt.papers import generator
from anchorwatt.sizing.generator import GeneratorComparison, Way

HOUR, NAN = 3600.0, math.nan
ENDS = ("_L", "_hours", "_W", "_pct", "_kg", "_m", "_dBA", "_g_per_kWh", "_EUR", "_years", "_services")
SET = Generator(
    "an invented set",
    5000.0,
    0.83,
    188.5,
    8e-4,
    0.395,
    61e3,
    0.3,
    63.0,
    200 * HOUR,
    280.0,
    5000 * HOUR,
    11_400.0,
    210.0,
)
WAYS = (
    Way("under-way", "engine, under way", False, 0.0026, 0.0, 0.0, NAN, NAN, NAN, NAN),
    Way("at-anchor", "engine, at anchor", False, 0.0043, HOUR, 0.0, NAN, 0.22, NAN, NAN),
    Way("all-night", "set, all night", True, 0.0036, 10 * HOUR, 10 * HOUR, 640.0, 0.12, 1.0, 0.0),
    Way("recharge", "set, to recharge", True, 0.0034, 2 * HOUR, 0.0, 4900.0, 0.88, 0.0, 0.0),
)
FOUND = GeneratorComparison(
    SET, 60.0, WAYS, "an invented charger", 640.0, True, 8.9e-8, 0.29, 3.5, 52.1, 196.0, 13_910.0, "EUR"
)


def story(found: GeneratorComparison = FOUND) -> GeneratorStory:
    return GeneratorStory(found, points(found, 16 * HOUR))


def page(capsys: pytest.CaptureFixture[str], made: GeneratorStory | None, units: Any = "si") -> str:
    show(generator.screen(fake.assessment(generator=made), units))
    return capsys.readouterr().out


def told(made: GeneratorStory | None = None) -> dict[str, Any]:
    plain = generator.plain(fake.assessment(generator=made or story()))
    json.dumps(plain, allow_nan=False)
    return plain


@pytest.mark.parametrize("units", ["si", "us"])
def test_the_page_fits_80_columns(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, units: str
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    assert max(len(line) for line in page(capsys, story(), units).splitlines()) <= 80


def test_cautions_are_on_the_page(capsys: pytest.CaptureFixture[str]) -> None:
    words = page(capsys, story()).replace("\n  ", " ")
    assert "carbon monoxide, which kills" in words
    assert "local codes decide" in words
    assert all(one in words for one in fake.CAUTIONS)


def test_where_the_set_is_better_is_said(capsys: pytest.CaptureFixture[str]) -> None:
    words = page(capsys, story())
    (price,) = [line for line in words.splitlines() if line.strip().startswith("Price  ")]
    assert price.split()[-1] == "set"
    assert "while fuel lasts" in words
    assert "For the set:" in words


def test_a_price_that_is_not_known_is_a_dash(capsys: pytest.CaptureFixture[str]) -> None:
    words = page(capsys, story(replace(FOUND, bank_price=NAN)))
    (price,) = [line for line in words.splitlines() if line.strip().startswith("Price  ")]
    assert "—" in price
    assert price.endswith("cannot tell")


def test_engines_that_never_get_there_at_anchor_are_told(capsys: pytest.CaptureFixture[str]) -> None:
    never = replace(WAYS[1], fuel=NAN, running=NAN)
    words = page(capsys, story(replace(FOUND, ways=(WAYS[0], never, *WAYS[2:])))).replace("\n  ", " ")
    assert "the set is the only way" in words


def test_a_night_that_the_bank_does_not_serve_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    assert "does not serve the night" not in page(capsys, story())
    assert "does not serve the night" in page(capsys, story(replace(FOUND, night_served=False)))


def test_without_a_set_the_page_says_what_to_do(capsys: pytest.CaptureFixture[str]) -> None:
    assert "name one under generator:" in page(capsys, None).replace("\n", " ")
    plain = generator.plain(fake.assessment(generator=None))
    assert plain["generator"] is None
    assert plain["note"] == generator.NONE_FITS


def test_every_key_of_a_figure_ends_in_its_unit() -> None:
    plain = told()
    for part in (plain["generator"], *plain["ways"], *plain["points"]):
        figures = [
            key for key, value in part.items() if isinstance(value, (int, float)) and not isinstance(value, bool)
        ]
        assert [key for key in figures if not key.endswith(ENDS)] == []


def test_json_has_a_year_and_a_night_of_every_way() -> None:
    ways = {one["way"]: one for one in told()["ways"]}
    assert ways.keys() == {way.key for way in WAYS}
    assert ways["all-night"]["year_fuel_L"] == pytest.approx(216.0)
    assert ways["all-night"]["while_asleep_hours"] == 10.0
    assert ways["at-anchor"]["year_services"] is None


def test_json_says_without_limit_in_words_not_in_a_number() -> None:
    (one,) = [one for one in told()["points"] if one["point"] == "on-end"]
    assert one["set_hours"] is None
    assert one["set_without_limit"] is True
    assert one["better"] == "set"


def test_the_command_runs_on_the_starter(run: Run, trawler: Path) -> None:
    found = run("generator", trawler, "--json")
    assert found.exit_code == 0, found.output
    plain = json.loads(found.stdout)
    assert plain["generator"]["name"] == "diesel set 5 kW 60 Hz"
    assert [one["way"] for one in plain["ways"]] == ["under-way", "at-anchor", "all-night", "recharge"]
    assert run("generator", trawler, "--units", "us").exit_code == 0
