"""What the recharge command shows of engine speeds."""

from __future__ import annotations

import json
import math
from pathlib import Path

import pytest
from tests.cli.conftest import Run
from tests.papers import fake

from anchorwatt.assessment.recharging import BestSpeeds, Recharging
from anchorwatt.cli.terminal import show
from anchorwatt.papers import recharge
from anchorwatt.papers.as_csv import csv_files
from anchorwatt.sizing.recharge import SpeedPoint, Sweep

RPM = math.pi / 30.0
HOUR = 3600.0


def point(rpm: float, full_at: float = 2.0 * HOUR, load: float = 0.4, second: float | None = None) -> SpeedPoint:
    speeds = (rpm * RPM,) * 2 if second is None else (rpm * RPM, second * RPM)
    fuel = math.nan if math.isnan(full_at) else 0.012
    held = (0.1, 0.0, 0.0, 0.7, 0.2, 0.0)
    return SpeedPoint(speeds, rpm * 0.002, 250.0, 310.0, 0.7 * full_at, full_at, 0.5 * fuel, fuel, 121.0, held, load)


def best(*points: SpeedPoint, propelling: bool = False, lost: str = "") -> BestSpeeds:
    sweep = Sweep(propelling, lost, points, 4.0 * HOUR)
    name = "under way" if propelling else "at anchor"
    return BestSpeeds(name, sweep, "1200 rpm", "800 rpm", "1000 rpm", "800 to 1200 rpm")


def made(second: float | None = None) -> Recharging:
    points = (point(800.0, second=second), point(1200.0, load=0.2, second=second), point(2600.0, math.nan))
    return Recharging(
        with_all=(best(*points), best(*points, propelling=True)),
        one_lost=(best(*points, lost="port alternator"), best(*points, propelling=True, lost="port alternator")),
        engines=("port engine with a long name", "starboard engine with a long name"),
        answers=fake.answers()[:1],
        light_load=0.25,
        light_load_caution="Light load glazes bores.",
    )


def text(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, second: float | None = None) -> str:
    monkeypatch.setenv("COLUMNS", "80")
    show(recharge.screen(fake.assessment(recharging=made(second)), "us"))
    return capsys.readouterr().out


@pytest.mark.parametrize("second", [None, 0.0])
def test_it_fits_80_columns(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch, second: float | None
) -> None:
    assert max(len(line) for line in text(capsys, monkeypatch, second).splitlines()) <= 80


def test_a_light_load_is_marked_and_cautioned(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    page = text(capsys, monkeypatch)
    lines = [line for line in page.splitlines() if line.split()[:1] in (["800"], ["1200"])]
    assert [line.rstrip().endswith("!") for line in lines] == [False, True] * 4
    assert "Light load glazes bores." in page


def test_a_speed_that_never_fills_is_a_dash(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    line = next(one for one in text(capsys, monkeypatch).splitlines() if one.split()[:1] == ["2600"])
    assert line.split().count("—") == 4


def test_engines_at_one_speed_share_a_column_and_others_have_their_own(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    assert "rpm   rpm" not in text(capsys, monkeypatch)
    assert "rpm   rpm" in text(capsys, monkeypatch, 0.0)


def test_the_range_in_time_is_told(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> None:
    page = text(capsys, monkeypatch)
    assert "At anchor the bank is full in the time allowed at 800 to 1200 rpm." in page
    assert "Under way with port alternator lost, the worst to lose" in page


def test_json_has_every_speed_in_the_units_of_its_keys() -> None:
    plain = recharge.plain(fake.assessment(recharging=made()))
    json.dumps(plain, allow_nan=False)
    first = plain["by_engine_speed"]["with_all"][0]
    assert first["speeds"][0]["to_full_hours"] == 2.0
    assert first["speeds"][0]["engine_speeds_rpm"]["port engine with a long name"] == pytest.approx(800.0)
    assert first["speeds"][0]["fuel_burnt_L"] == pytest.approx(12.0)
    assert first["speeds"][1]["light_load"] is True
    assert first["speeds"][2]["to_full_hours"] is None
    assert first["speeds"][0]["mostly_held_by"] == "its held temperature"
    assert plain["answers"]["hold_hours"] == 12.5
    assert [one["lost"] for one in plain["by_engine_speed"]["one_lost"]] == ["port alternator"] * 2


def test_csv_has_a_row_for_each_speed_of_each_sweep() -> None:
    (content,) = csv_files(fake.assessment(recharging=made()), Path(), ("recharge_speeds",)).values()
    lines = content.splitlines()
    assert len(lines) == 1 + 4 * 3
    assert "engine_speed_rpm.port engine with a long name" in lines[0]


def test_a_boat_without_an_alternator_has_none_of_it() -> None:
    bare = fake.assessment(recharge=None)
    assert recharge.plain(bare)["by_engine_speed"] is None
    assert recharge.answers(bare) == ()
    assert csv_files(bare, Path(), ("recharge_speeds",)) == {}


def test_why_explains_a_best_speed(run: Run, trawler: Path) -> None:
    plain = json.loads(run("recharge", trawler, "--why", "at_anchor_recommended_rpm", "--json").stdout)
    assert {"formula", "inputs", "source", "changes_it", "at_anchor_recommended_rpm"} <= plain.keys()
    assert run("recharge", trawler, "--why", "at_anchor_rpm").exit_code != 0


def test_the_starter_tells_all_four_sweeps(run: Run, trawler: Path) -> None:
    found = run("recharge", trawler, "--json")
    assert found.exit_code == 0, found.output
    plain = json.loads(found.stdout)
    sweeps = plain["by_engine_speed"]["with_all"] + plain["by_engine_speed"]["one_lost"]
    assert [(one["where"], one["lost"] is None) for one in sweeps] == [
        ("at anchor", True),
        ("under way", True),
        ("at anchor", False),
        ("under way", False),
    ]
    assert all(len(one["speeds"]) >= 8 for one in sweeps)
    quickest = min(row["to_full_hours"] for row in sweeps[0]["speeds"] if row["to_full_hours"])
    assert plain["answers"]["at_anchor_quickest_hours"] == quickest
