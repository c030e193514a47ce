"""The commands on the starter boats, from the file to what is printed and written."""

from __future__ import annotations

import csv
import json
from pathlib import Path
from typing import Any
from xml.etree import ElementTree

import pytest
from tests.cli.conftest import Run
from typer.testing import Result

from anchorwatt.cli import app as commands
from anchorwatt.design import starters

HEADLINE = {
    *("hold_hours", "required_hours", "charge_at_dawn_pct", "night_energy_kWh", "peak_plant_power_W"),
    *(
        "peak_inverter_power_W",
        "engine_hours_to_recharge",
        "recharge_fuel_L",
        "mass_added_kg",
        "heel_deg",
        "trim_cm",
        "total_EUR",
        "checks_failed",
    ),
}
CABIN = {
    *("name", "peak_sensible_W", "peak_latent_W", "peak_at"),
    *("night_max_air_temperature_C", "night_max_relative_humidity_pct"),
}


@pytest.fixture(scope="module")
def assessed(run: Run, trawler: Path, tmp_path_factory: pytest.TempPathFactory) -> tuple[Result, Path]:
    """`assess` with everything it can write."""
    folder = tmp_path_factory.mktemp("written")
    found = run("assess", trawler, "--json", "--csv", folder / "csv", "--plot", folder / "night.svg")
    assert found.exit_code == 0, found.output
    return found, folder


def test_assess_answers_in_json(assessed: tuple[Result, Path]) -> None:
    plain = json.loads(assessed[0].stdout)
    assert plain["headline"].keys() >= HEADLINE
    assert all(cabin.keys() >= CABIN for cabin in plain["cabins"])
    assert plain.keys() == {
        *(
            "design",
            "headline",
            "cabins",
            "night",
            "recharge",
            "comparison",
            "estimates",
            "checks",
            "cautions",
        )
    }


def test_the_night_of_the_default_starter_is_a_night(assessed: tuple[Result, Path]) -> None:
    """Between nothing and all of the bank: 1 to 21.5 kWh, and a plant that runs."""
    headline = json.loads(assessed[0].stdout)["headline"]
    assert headline["required_hours"] == 10.0
    assert 1.0 < headline["night_energy_kWh"] < 21.5
    assert 0.0 < headline["peak_plant_power_W"] < headline["peak_inverter_power_W"]


def test_csv_and_json_agree(assessed: tuple[Result, Path]) -> None:
    found, folder = assessed
    with (folder / "csv" / "headline.csv").open(encoding="utf-8") as file:
        rows = {row["key"]: row["value"] for row in csv.DictReader(file)}
    headline = json.loads(found.stdout)["headline"]
    assert {key: float(value) for key, value in rows.items()} == pytest.approx(headline)


def test_the_series_has_a_row_a_minute(assessed: tuple[Result, Path]) -> None:
    with (assessed[1] / "csv" / "night.csv").open(encoding="utf-8") as file:
        rows = list(csv.DictReader(file))
    assert len(rows) == 600
    assert rows[-1]["clock"] == "07:00"


def test_the_picture_is_drawn(assessed: tuple[Result, Path]) -> None:
    root = ElementTree.fromstring((assessed[1] / "night.svg").read_text("utf-8"))
    assert root.tag.endswith("svg")


def test_what_was_written_is_said_beside_the_data(assessed: tuple[Result, Path]) -> None:
    assert "wrote" in assessed[0].stderr
    assert "wrote" not in assessed[0].stdout


@pytest.mark.parametrize("command", ["assess", "loads", "plant", "night", "recharge", "voltage"])
@pytest.mark.parametrize("units", ["si", "us"])
def test_pages_fit_and_caution(run: Run, trawler: Path, command: str, units: str) -> None:
    found = run(command, trawler, "--units", units)
    assert found.exit_code == 0, found.output
    assert max(len(line) for line in found.stdout.splitlines()) <= 80
    assert "certified people" in " ".join(found.stdout.split())
    assert "\x1b" not in found.stdout
    ours = found.stdout.partition("Estimates made")[0]  # estimates keep the units of the design file
    assert ("°F" in ours) == (units == "us")


@pytest.mark.parametrize("command", ["loads", "plant", "night", "recharge"])
def test_json_and_csv_of_the_other_commands(run: Run, trawler: Path, tmp_path: Path, command: str) -> None:
    found = run(command, trawler, "--json", "--csv", tmp_path)
    assert found.exit_code == 0, found.output
    assert isinstance(json.loads(found.stdout), dict)
    assert list(tmp_path.glob("*.csv"))


@pytest.mark.parametrize("starter", starters())
def test_every_starter_can_be_assessed(run: Run, tmp_path: Path, starter: str) -> None:
    path = tmp_path / "boat.yaml"
    assert run("new", starter, path, "--json").exit_code == 0
    found = run("assess", path, "--json")
    assert found.exit_code == 0, found.output
    assert not [value for value in json.loads(found.stdout)["headline"].values() if value is None]


def test_why_explains_one_answer(run: Run, trawler: Path) -> None:
    plain = json.loads(run("assess", trawler, "--why", "hold_hours", "--json").stdout)
    assert {"formula", "inputs", "source", "changes_it", "hold_hours"} <= plain.keys()


def test_why_refuses_an_unknown_answer(run: Run, trawler: Path) -> None:
    found = run("assess", trawler, "--why", "holdhours")
    assert found.exit_code == 2
    assert "perhaps “hold_hours”" in found.stderr


def test_estimates_in_full(run: Run, trawler: Path) -> None:
    found = run("assess", trawler, "--estimates")
    assert "(from memory)" in " ".join(found.stdout.split())


def refused(found: Result) -> str:
    """What was said on stderr of a command that failed as it should."""
    assert found.exit_code == 2
    assert found.stdout == ""
    assert "Traceback" not in found.stderr
    return found.stderr


def test_a_wrong_key_is_one_message_and_nothing_is_written(run: Run, trawler: Path, tmp_path: Path) -> None:
    path = tmp_path / "boat.yaml"
    path.write_text(trawler.read_text("utf-8").replace("  beam: 14 ft 9 in", "  baem: 14 ft 9 in"), "utf-8")
    said = refused(run("assess", path, "--csv", tmp_path / "csv", "--plot", tmp_path / "night.svg"))
    assert "boat.yaml:" in said
    assert "baem" in said
    assert [one.name for one in tmp_path.iterdir()] == ["boat.yaml"]


def test_a_missing_file_is_one_message(run: Run, tmp_path: Path) -> None:
    assert "none.yaml" in refused(run("night", tmp_path / "none.yaml"))


def test_a_missing_weather_file_is_one_message(run: Run, trawler: Path, tmp_path: Path) -> None:
    path = tmp_path / "boat.yaml"
    path.write_text(trawler.read_text("utf-8").replace("pvlib:12839.tm2", "none.epw"), "utf-8")
    assert "none.epw" in refused(run("loads", path))


def test_a_picture_that_is_not_svg_is_refused_before_any_work(run: Run, tmp_path: Path) -> None:
    said = refused(run("night", tmp_path / "none.yaml", "--plot", tmp_path / "night.png"))
    assert ".svg" in said


def test_new_does_not_overwrite(run: Run, trawler: Path) -> None:
    before = trawler.read_text("utf-8")
    assert "replace" in refused(run("new", "cutter-12m", trawler))
    assert trawler.read_text("utf-8") == before


def test_new_with_an_unknown_starter_writes_nothing(run: Run, tmp_path: Path) -> None:
    assert "trawler-14m" in refused(run("new", "trawler-15m", tmp_path / "in" / "boat.yaml"))
    assert list(tmp_path.iterdir()) == []


def test_catalogue(run: Run) -> None:
    assert "inverter" in run("catalogue").stdout
    assert run("catalogue", "inverter").exit_code == 0
    assert "perhaps" in refused(run("catalogue", "invertor"))


def test_the_first_compile_is_said_once(run: Run, trawler: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("anchorwatt.simulation.compiled.needs_compiling", lambda: True)
    found = run("night", trawler)
    assert found.stderr.count("compiling the time kernel") == 1


def test_version(run: Run) -> None:
    from anchorwatt import __version__

    assert run("--version").stdout == f"anchorwatt {__version__}\n"


def test_every_command_that_answers_takes_json() -> None:
    import typer

    group: Any = typer.main.get_command(commands)
    for name, command in group.commands.items():
        if name == "serve":  # it opens pages and answers nothing
            continue
        assert "--json" in {name for one in command.params for name in one.opts}
