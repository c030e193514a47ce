"""The week and faults commands on the starter boats: 80 columns, both systems of units, JSON and CSV."""

from __future__ import annotations

import csv
import json
import re
from pathlib import Path

import pytest
from tests.cli.conftest import Run
from tests.starters import STARTERS, assessed

from anchorwatt.cli.terminal import show
from anchorwatt.errors import AnchorwattError
from anchorwatt.papers import faults, week
from anchorwatt.units import System

SYSTEMS: tuple[System, ...] = ("si", "us")


@pytest.fixture(autouse=True)
def narrow(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "80")


def printed(page: object, capsys: pytest.CaptureFixture[str]) -> str:
    show(page)  # type: ignore[arg-type]
    return capsys.readouterr().out


def fits(text: str) -> bool:
    return max(map(len, text.splitlines())) <= 80


def one_line(text: str) -> str:
    return re.sub(r"\s+", " ", text)


@pytest.mark.parametrize("starter", STARTERS)
@pytest.mark.parametrize("system", SYSTEMS)
def test_the_week_fits_the_page(starter: str, system: System, capsys: pytest.CaptureFixture[str]) -> None:
    text = printed(week.screen(assessed(starter), system), capsys)
    assert fits(text)
    assert "…" not in text
    assert "It keeps going." in text
    assert all(caution in one_line(text) for caution in assessed(starter).cautions)
    assert "The shortest engine time a day at anchor" in text


@pytest.mark.parametrize("starter", STARTERS)
@pytest.mark.parametrize("system", SYSTEMS)
def test_faults_fit_the_page(starter: str, system: System, capsys: pytest.CaptureFixture[str]) -> None:
    text = printed(faults.screen(assessed(starter), system), capsys)
    assert fits(text)
    assert "{" not in text
    assert all(caution in one_line(text) for caution in assessed(starter).cautions)
    for found in assessed(starter).faults:
        assert f"{found.fault.name}, at " in text
        one = printed(faults.one(assessed(starter), found.fault.key, system), capsys)
        assert fits(one)
        assert "…" not in one
        assert len([line for line in one.splitlines() if re.match(r"^  \d\d:\d\d ", line)]) >= 121


@pytest.mark.parametrize("starter", STARTERS)
def test_figures_stay_with_their_units(starter: str, capsys: pytest.CaptureFixture[str]) -> None:
    text = printed(faults.screen(assessed(starter), "si"), capsys)
    assert not re.search(r"^ +(A|V|W|kW|°C|K|%|min|h|rpm|Wh)\b", text, re.MULTILINE)


def test_keys_end_in_units_and_the_hours_are_those_of_the_week() -> None:
    plain = json.loads(json.dumps(week.plain(assessed("trawler-14m")), allow_nan=False))
    assert len(plain["days"]) == 7
    assert len(plain["hours"]) == 7 * 24
    assert plain["hours"][-1]["charge_pct"] == pytest.approx(plain["week"]["charge_at_end_pct"])
    assert sum(day["engine_hours"] for day in plain["days"]) == pytest.approx(plain["week"]["engine_hours"])
    assert plain["shortest_at_anchor"]["keeps_going"] is (plain["shortest_at_anchor"]["engine_hours_a_day"] is not None)
    assert plain["cautions"]


def test_a_fault_in_json_has_its_story_and_with_a_key_its_minutes() -> None:
    it = assessed("trawler-14m")
    plain = json.loads(json.dumps(faults.plain(it), allow_nan=False))
    assert [one["key"] for one in plain["faults"]] == [found.fault.key for found in it.faults]
    for one in plain["faults"]:
        assert {"happens", "lost", "protects", "sees", "does", "figures"} <= one.keys()
        assert "minutes" not in one
    (only,) = faults.plain(it, "full-throttle")["faults"]
    assert len(only["minutes"]) == 125


@pytest.mark.parametrize("starter", STARTERS)
def test_single_losses_are_one_row_each_on_the_page_and_in_json(
    starter: str, capsys: pytest.CaptureFixture[str]
) -> None:
    it = assessed(starter)
    _, table = one_line(printed(faults.screen(it, "si"), capsys)).split("Any single part lost")
    rows = json.loads(json.dumps(faults.plain(it), allow_nan=False))["single_losses"]
    assert [row["key"] for row in rows] == [row.loss.key for row in it.redundancy.rows]
    assert table.count(" goes on: ") == len(rows) - 1


def test_one_fault_alone_comes_without_the_single_losses() -> None:
    assert "single_losses" not in faults.plain(assessed("trawler-14m"), "seawater-stops")


def test_an_unknown_fault_names_the_nearest() -> None:
    with pytest.raises(AnchorwattError, match="perhaps “seawater-stops”"):
        faults.one(assessed("trawler-14m"), "seawater-stop", "si")


def test_the_commands_write_what_they_show(run: Run, trawler: Path, tmp_path: Path) -> None:
    found = run("week", trawler, "--json", "--csv", tmp_path / "week")
    assert found.exit_code == 0, found.output
    with (tmp_path / "week" / "week.csv").open(encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    assert len(rows) == 7 * 24
    assert {"charge_pct", "solar_W", "outdoor_temperature_C"} <= rows[0].keys()
    assert (tmp_path / "week" / "week_days.csv").exists()


def test_an_unknown_fault_ends_with_a_message(run: Run, trawler: Path, tmp_path: Path) -> None:
    found = run("faults", trawler, "--show", "seawater-stop", "--csv", tmp_path / "faults")
    assert found.exit_code == 2
    assert "perhaps “seawater-stops”" in found.output
    assert not (tmp_path / "faults").exists()
    found = run("faults", trawler, "--show", "seawater-stops", "--csv", tmp_path / "faults")
    assert found.exit_code == 0, found.output
    with (tmp_path / "faults" / "fault_seawater-stops.csv").open(encoding="utf-8") as file:
        assert len(list(csv.DictReader(file))) == 125
    with (tmp_path / "faults" / "single_losses.csv").open(encoding="utf-8") as file:
        losses = list(csv.DictReader(file))
    assert losses[0]["key"] == "nothing"
    assert {"cooling_pct", "bank_holds_h", "charging_pct", "home_by_engine"} <= losses[0].keys()
