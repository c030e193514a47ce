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


def test_a_circuit_that_there_is_not_is_told_with_file_and_line(run: Run, trawler: Path, tmp_path: Path) -> None:
    astray = tmp_path / "astray.yaml"
    lines = trawler.read_text().splitlines()
    lines.insert(lines.index("  circuits:") + 1 if "  circuits:" in lines else 0, "    W999: {fuse: 10 A}")
    astray.write_text("\n".join(lines) + "\n")
    result = run("check", astray, "--json")
    assert result.exit_code == 1, result.output
    (found,) = [one for one in json.loads(result.stdout) if one["id"] == "circuits-named-exist"]
    assert found["verdict"] == "fails"
    assert f"astray.yaml:{lines.index('    W999: {fuse: 10 A}') + 1}" in found["note"]


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
