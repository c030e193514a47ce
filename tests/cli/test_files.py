from __future__ import annotations

from pathlib import Path

import pytest

from anchorwatt.cli.files import write_all
from anchorwatt.errors import CannotWrite


def everything_in(folder: Path) -> list[str]:
    return sorted(path.name for path in folder.rglob("*") if path.is_file())


def test_writes_all_and_makes_folders(tmp_path: Path) -> None:
    write_all({tmp_path / "new" / "a.csv": "a", tmp_path / "b.svg": "ß"})
    assert (tmp_path / "new" / "a.csv").read_text("utf-8") == "a"
    assert (tmp_path / "b.svg").read_text("utf-8") == "ß"
    assert everything_in(tmp_path) == ["a.csv", "b.svg"]


def test_when_one_cannot_be_written_none_is_changed(tmp_path: Path) -> None:
    (tmp_path / "a.csv").write_text("before")
    (tmp_path / "b.csv").mkdir()
    with pytest.raises(CannotWrite, match=r"b\.csv: cannot write: it is a folder; nothing was changed"):
        write_all({tmp_path / "a.csv": "after", tmp_path / "b.csv": "x"})
    assert (tmp_path / "a.csv").read_text() == "before"
    assert everything_in(tmp_path) == ["a.csv"]


def test_a_file_where_a_folder_should_be_is_one_message(tmp_path: Path) -> None:
    (tmp_path / "taken").write_text("a file")
    with pytest.raises(CannotWrite, match="cannot write"):
        write_all({tmp_path / "taken" / "a.csv": "a"})
    assert everything_in(tmp_path) == ["taken"]
