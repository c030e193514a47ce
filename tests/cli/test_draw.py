"""The draw command: which files it writes, and what it refuses before it writes any."""

from __future__ import annotations

import json
from pathlib import Path

import pypdf
import pytest
from tests.cli.conftest import Run

from anchorwatt.drawings.sheets.sheet_set import NAMES


def test_a_sheet_is_written_in_each_format(run: Run, trawler: Path, tmp_path: Path) -> None:
    done = run("draw", trawler, "--out", tmp_path, "--sheet", "bonding")
    assert done.exit_code == 0, done.output
    assert sorted(path.name for path in tmp_path.iterdir()) == ["bonding.dxf", "bonding.svg", "drawings.pdf"]


def test_all_sheets_of_the_set_are_one_pdf_on_the_paper_that_was_asked_for(
    run: Run, trawler: Path, tmp_path: Path
) -> None:
    done = run("draw", trawler, "--out", tmp_path, "--format", "pdf", "--paper", "ansi-b", "--json")
    told = json.loads(done.stdout)
    pages = pypdf.PdfReader(tmp_path / "drawings.pdf").pages
    assert len(pages) == len(told["sheets"]) >= len(NAMES)
    assert {(float(page.mediabox.width), float(page.mediabox.height)) for page in pages} == {(1224.0, 792.0)}


def test_labels_go_to_a_label_printer_as_csv(run: Run, trawler: Path, tmp_path: Path) -> None:
    done = run("draw", trawler, "--out", tmp_path, "--sheet", "labels", "--format", "pdf", "--csv", tmp_path / "tables")
    assert done.exit_code == 0, done.output
    assert (tmp_path / "tables" / "labels.csv").read_text(encoding="utf-8").count("\n") > 200


def test_a_file_of_svg_brings_its_letters_along(run: Run, trawler: Path, tmp_path: Path) -> None:
    run("draw", trawler, "--out", tmp_path, "--sheet", "control", "--format", "svg")
    assert "@font-face" in (tmp_path / "control.svg").read_text(encoding="utf-8")


def test_an_unknown_sheet_is_told_before_any_work(run: Run, tmp_path: Path) -> None:
    done = run("draw", tmp_path / "none.yaml", "--out", tmp_path / "out", "--sheet", "contrl")
    assert done.exit_code == 2
    assert "found no sheet “contrl”, perhaps “control”" in " ".join(done.stderr.split())
    assert not (tmp_path / "out").exists()


def test_an_earlier_file_that_is_not_there_is_one_message_and_nothing_is_written(
    run: Run, trawler: Path, tmp_path: Path
) -> None:
    done = run("draw", trawler, "--out", tmp_path / "out", "--since", tmp_path / "none.yaml")
    assert done.exit_code == 2
    assert not (tmp_path / "out").exists()


def test_a_folder_that_cannot_be_made_is_told(run: Run, trawler: Path, tmp_path: Path) -> None:
    blocked = tmp_path / "file"
    blocked.write_text("", encoding="utf-8")
    done = run("draw", trawler, "--out", blocked / "out", "--sheet", "bonding")
    assert done.exit_code == 2
    assert "cannot write" in done.stderr
    assert [path.name for path in tmp_path.iterdir()] == ["file"]


@pytest.mark.parametrize("paper", ["a3", "ansi-b"])
def test_the_page_fits_eighty_columns(run: Run, trawler: Path, tmp_path: Path, paper: str) -> None:
    done = run("draw", trawler, "--out", tmp_path, "--paper", paper, "--format", "svg")
    assert done.exit_code == 0
    assert max(map(len, done.stdout.splitlines())) <= 80
    assert "never “fit to page”" in done.stdout
