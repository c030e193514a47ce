"""What the voltage command shows."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from functools import cache
from pathlib import Path

import pytest
from tests.cli.conftest import Run
from tests.papers import fake
from tests.simulation import boats

from anchorwatt.assessment.voltages import VoltageStory, voltage_story
from anchorwatt.cli.terminal import show
from anchorwatt.papers import voltage
from anchorwatt.simulation.runs import Simulation


@cache
def story() -> VoltageStory:
    specification = boats.boat(1)
    return voltage_story(specification, Simulation(specification))


def text(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, system: str = "si") -> str:
    monkeypatch.setenv("COLUMNS", "80")
    show(voltage.screen(fake.assessment(voltages=story()), system))  # type: ignore[arg-type]
    return capsys.readouterr().out


@pytest.mark.parametrize("system", ["si", "us"])
def test_it_fits_80_columns(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, system: str) -> None:
    assert max(len(line) for line in text(capsys, monkeypatch, system).splitlines()) <= 80


def test_it_says_which_is_the_design(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    lines = text(capsys, monkeypatch).splitlines()
    heads = next(number for number, line in enumerate(lines) if line.split() == ["12.0", "V", "24.0", "V", "48.0", "V"])
    middle = lines[heads].index("24.0 V") + len("24.0 V")
    assert lines[heads + 1].rstrip().endswith("as designed")
    assert len(lines[heads + 1].rstrip()) == middle


def test_a_price_that_is_not_known_is_said(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    """The tests' boat lists no parts with prices."""
    line = next(one for one in text(capsys, monkeypatch).splitlines() if "main cables, EUR" in one)
    assert line.count("unknown") == 1


def test_what_was_assumed_and_the_50_volts_are_told(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    page = " ".join(text(capsys, monkeypatch).split())
    for words in ("the same cells", "wound for the other voltage", "estimates, from memory", "51.2 V nominal"):
        assert words in page


def test_copper_that_would_not_carry_is_named(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    page = " ".join(text(capsys, monkeypatch).split())
    assert "would not carry at 12 V: alternator to bank" in page


def test_json_has_each_voltage_with_its_runs_and_how() -> None:
    plain = voltage.plain(fake.assessment(voltages=story()))
    json.dumps(plain, allow_nan=False)
    assert [one["nominal_V"] for one in plain["voltages"]] == [12.0, 24.0, 48.0]
    assert [one["as_designed"] for one in plain["voltages"]] == [False, True, False]
    assert plain["voltages"][1]["price"] is None
    assert plain["voltages"][0]["currency"] == "EUR"
    assert {row.key for row in story().rows} == plain["how"].keys()
    for one in plain["voltages"]:
        assert plain["how"].keys() <= one.keys()
        assert all(run["drop_pct"] <= 3.0 and run["current_A"] <= run["ampacity_A"] for run in one["runs"])


def test_a_figure_that_is_not_known_is_a_dash(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    rows = tuple(replace(row, values=(math.nan,) * 3) if row.key == "charging_power_W" else row for row in story().rows)
    show(voltage.screen(fake.assessment(voltages=replace(story(), rows=rows)), "si"))
    line = next(one for one in capsys.readouterr().out.splitlines() if "charging power, mean" in one)
    assert line.split()[-3:] == ["—"] * 3


def test_every_figure_says_how_it_was_found() -> None:
    assert all(row.how for row in story().rows)


def test_the_command_tells_the_starter(run: Run, trawler: Path) -> None:
    found = run("voltage", trawler, "--json")
    assert found.exit_code == 0, found.output
    low, own, high = json.loads(found.stdout)["voltages"]
    assert own["as_designed"]
    assert high["recharge_hours"] < low["recharge_hours"]
    assert all(one["price"] for one in (low, own, high))
