"""What the fit command shows."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from tests.assessment.test_fit import story
from tests.checks.holds_and_fails.fit import CASES, FITS
from tests.cli.conftest import Run
from tests.papers import fake

from anchorwatt.cli.terminal import show
from anchorwatt.papers import fit as pages
from anchorwatt.units import System


@pytest.mark.parametrize("system", ["si", "us"])
@pytest.mark.parametrize("name", CASES)
def test_the_page_fits_80_columns(
    name: str, system: System, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    show(pages.screen(fake.assessment(fit=story(CASES[name].fails)), system))
    lines = capsys.readouterr().out.splitlines()
    assert max(len(line) for line in lines) <= 80
    text = " ".join(" ".join(lines).split())
    for words in ("What is short", "The spaces", "Other spaces", "What this rests on", "Measure first", "Take care"):
        assert words in text


def test_nothing_short_has_no_such_heading(capsys: pytest.CaptureFixture[str]) -> None:
    show(pages.screen(fake.assessment(fit=story(FITS)), "si"))
    assert "What is short" not in capsys.readouterr().out


def test_the_starter_fits(run: Run, trawler: Path, tmp_path: Path) -> None:
    result = run("fit", trawler, "--json", "--csv", tmp_path)
    assert result.exit_code == 0, result.output
    plain = json.loads(result.stdout)
    assert {part["tag"] for part in plain["parts"]} >= {"T1", "G1", "E1"}
    assert all(part["fits"].startswith("yes") for part in plain["parts"])
    assert len(plain["spaces"]) >= 2
    for part in plain["parts"]:
        assert part["opening_spare_m"] > 0.0
    assert (tmp_path / "fit.csv").read_text().count("\n") == len(plain["parts"]) + 1
    assert (tmp_path / "fit_spaces.csv").exists()
