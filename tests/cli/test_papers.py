"""The papers command: which files it writes, and what it refuses before any work."""

from __future__ import annotations

import json
import zipfile
from pathlib import Path

import pytest
from tests.cli.conftest import Run


def test_papers_are_written_and_told(run: Run, trawler: Path, tmp_path: Path) -> None:
    done = run("papers", trawler, "--out", tmp_path, "--set", "build", "--json")
    assert done.exit_code == 0, done.output
    told = {one["name"]: one["bytes"] for one in json.loads(done.stdout)["files"]}
    assert told == {path.name: path.stat().st_size for path in tmp_path.iterdir()}
    assert set(told) == {"build.pdf", "build.xlsx"}


@pytest.mark.parametrize("options", [(), ("--cost",)])
def test_what_hours_cost_is_in_the_workbook_only_when_asked_for(
    run: Run, trawler: Path, tmp_path: Path, options: tuple[str, ...]
) -> None:
    assert run("papers", trawler, "--out", tmp_path, "--set", "build", *options).exit_code == 0
    with zipfile.ZipFile(tmp_path / "build.xlsx") as archive:
        texts = archive.read("xl/sharedStrings.xml").decode()
    assert ("hourly_rate_EUR" in texts) == bool(options)


def test_the_page_fits_eighty_columns(run: Run, trawler: Path, tmp_path: Path) -> None:
    done = run("papers", trawler, "--out", tmp_path, "--set", "offer", "--set", "broker", "--set", "commissioning")
    assert done.exit_code == 0, done.output
    assert max(map(len, done.stdout.splitlines())) <= 80
    assert "certified people" in " ".join(done.stdout.split())


def test_bad_results_are_told_by_line_and_column_before_any_work(run: Run, tmp_path: Path) -> None:
    table = tmp_path / "filled.csv"
    table.write_text("trial,reading,found,verdict\nFlow and rise,flow,24,fine\n")
    done = run("papers", tmp_path / "none.yaml", "--out", tmp_path / "out", "--set", "handover", "--results", table)
    assert done.exit_code == 2
    assert 'filled.csv:2: verdict: found "fine"; allowed: pass, fail, or' in " ".join(done.stderr.split())
    assert not (tmp_path / "out").exists()


def test_unknown_papers_are_told_before_any_work(run: Run, tmp_path: Path) -> None:
    done = run("papers", tmp_path / "none.yaml", "--out", tmp_path / "out", "--set", "biuld")
    assert done.exit_code == 2
    assert "found no papers “biuld”, perhaps “build”" in " ".join(done.stderr.split())
    assert not (tmp_path / "out").exists()
