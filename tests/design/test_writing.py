"""Saving: all or nothing, and every byte that nobody changed stays."""

from __future__ import annotations

import stat
from pathlib import Path
from typing import Any

import pytest
from hypothesis import HealthCheck, given, settings
from tests.design.sample import SAMPLE
from tests.design.strategies import as_text, designs

from anchorwatt import design
from anchorwatt.catalogue import NotInCatalogue
from anchorwatt.errors import BadDesign, CannotWrite


@pytest.mark.parametrize("starter", design.starters())
def test_a_starter_read_and_written_keeps_every_byte(starter: str, tmp_path: Path) -> None:
    made = design.new(starter, tmp_path / "boat.yaml")
    before = (tmp_path / "boat.yaml").read_bytes()
    design.write(made, tmp_path / "copy.yaml")
    assert (tmp_path / "copy.yaml").read_bytes() == before


@settings(max_examples=10, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(designs())
def test_any_design_read_and_written_keeps_every_byte(tmp_path: Path, drawn: dict[str, Any]) -> None:
    text = as_text(drawn)
    design.write(design.parse(text), tmp_path / "boat.yaml")
    assert (tmp_path / "boat.yaml").read_bytes() == text.encode("utf-8")


def test_line_endings_of_the_writer_are_kept(tmp_path: Path) -> None:
    path = tmp_path / "boat.yaml"
    content = SAMPLE.replace("\n", "\r\n").encode("utf-8")
    path.write_bytes(content)
    design.write(design.read(path), path)
    assert path.read_bytes() == content


def test_a_failed_save_leaves_the_old_file_and_nothing_beside_it(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    path = tmp_path / "boat.yaml"
    path.write_text("what was there", encoding="utf-8")

    def full(handle: int) -> None:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("os.fsync", full)
    with pytest.raises(CannotWrite, match="No space left on device; nothing was changed"):
        design.write(design.parse(SAMPLE), path)
    assert path.read_text(encoding="utf-8") == "what was there"
    assert list(tmp_path.iterdir()) == [path]


def test_saving_keeps_who_may_read_the_file(tmp_path: Path) -> None:
    path = tmp_path / "boat.yaml"
    path.write_text(SAMPLE, encoding="utf-8")
    path.chmod(0o640)
    design.write(design.read(path), path)
    assert stat.S_IMODE(path.stat().st_mode) == 0o640


@pytest.mark.parametrize("where", ["", "missing/boat.yaml"])
def test_a_place_that_cannot_be_written_is_refused(where: str, tmp_path: Path) -> None:
    with pytest.raises(CannotWrite, match="nothing was changed"):
        design.write(design.parse(SAMPLE), tmp_path / where)


def test_a_refused_design_writes_nothing(tmp_path: Path) -> None:
    path = tmp_path / "boat.yaml"
    path.write_text(SAMPLE.replace("length: 12 m", "length: 12"), encoding="utf-8")
    with pytest.raises(BadDesign):
        design.read(path)
    assert [entry.name for entry in tmp_path.iterdir()] == ["boat.yaml"]


def test_a_new_file_points_to_the_schema_beside_it(tmp_path: Path) -> None:
    design.new("trawler-14m", tmp_path / "jobs" / "boat.yaml")
    first = (tmp_path / "jobs" / "boat.yaml").read_text(encoding="utf-8").splitlines()[0]
    assert first == "# yaml-language-server: $schema=anchorwatt.schema.json"
    assert (tmp_path / "jobs" / "anchorwatt.schema.json").is_file()


def test_a_new_file_replaces_another_only_on_purpose(tmp_path: Path) -> None:
    path = tmp_path / "boat.yaml"
    path.write_text("mine", encoding="utf-8")
    with pytest.raises(CannotWrite, match="there is a file already"):
        design.new("trawler-14m", path)
    assert path.read_text(encoding="utf-8") == "mine"
    assert design.new("trawler-14m", path, replace=True).name == "Grey Plover"


def test_an_unknown_starter_is_refused_with_the_nearest(tmp_path: Path) -> None:
    with pytest.raises(NotInCatalogue, match="perhaps “trawler-14m”"):
        design.new("trawler-15m", tmp_path / "boat.yaml")
    assert list(tmp_path.iterdir()) == []
