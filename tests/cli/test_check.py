"""What the check command shows, and how it ends."""

from __future__ import annotations

import json
import math
from pathlib import Path

import pytest
from tests.cli.conftest import Run

from anchorwatt.checks import Finding, Verdict, rules


@pytest.mark.parametrize("units", ["si", "us"])
def test_the_page_fits_80_columns(run: Run, trawler: Path, units: str, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    result = run("check", trawler, "--units", units)
    assert result.exit_code == 0, result.output
    lines = result.stdout.splitlines()
    assert max(len(line) for line in lines) <= 80
    assert "bank-holds-night" in result.stdout


def test_the_list_has_what_others_need(run: Run, trawler: Path, tmp_path: Path) -> None:
    result = run("check", trawler, "--json", "--csv", tmp_path)
    found = json.loads(result.stdout)
    assert len(found) >= 60
    for one in found:
        assert {"id", "verdict", "value", "limit", "source", "remedy", "margin", "subject"} <= set(one)
    assert len({one["id"] for one in found}) == len(found)
    assert (tmp_path / "checks.csv").read_text().count("\n") >= len(found)


def test_a_failing_check_ends_with_status_1(run: Run, trawler: Path, tmp_path: Path) -> None:
    short = tmp_path / "short.yaml"
    short.write_text(trawler.read_text().replace("mass_limit: 950 lb", "mass_limit: 100 lb"))
    result = run("check", short, "--json")
    assert result.exit_code == 1
    first = json.loads(result.stdout)[0]
    assert first["verdict"] == "fails"
    assert first["margin"] < 0.0


def test_margins() -> None:
    def margin(value: float, limit: float, verdict: Verdict, dimension: str = "power") -> float:
        return Finding("x", "?", value, limit, dimension, verdict, "", "").margin

    assert margin(80.0, 100.0, Verdict.HOLDS) == pytest.approx(0.2)
    assert margin(120.0, 100.0, Verdict.FAILS) == pytest.approx(-0.2)
    assert margin(30.0, 45.0, Verdict.HOLDS, "temperature") == 15.0
    assert math.isnan(margin(1.0, 0.0, Verdict.HOLDS))
    assert math.isnan(margin(1.0, math.nan, Verdict.CANNOT_TELL))


def test_there_are_many_rules_and_none_twice() -> None:
    names = [rule.id for rule in rules()]
    assert len(names) >= 60
    assert len(set(names)) == len(names)
    assert all(rule.subject for rule in rules())
