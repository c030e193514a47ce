"""Weather files kept as arrays: the same table, and never one that is stale or damaged."""

from __future__ import annotations

from dataclasses import fields
from pathlib import Path

import numpy as np
import pytest

from anchorwatt.climate import kept
from anchorwatt.climate.formats import read_hours
from anchorwatt.climate.station import HourTable, find

FILE = find("pvlib:12839.tm2")


@pytest.fixture(autouse=True)
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.setattr(kept, "_folder", lambda: tmp_path)
    return tmp_path


def once() -> HourTable:
    return read_hours(FILE, FILE.read_bytes())


def never() -> HourTable:
    raise AssertionError("it was to come from disk")


def same(one: HourTable, other: HourTable) -> bool:
    return all(
        np.array_equal(getattr(one, field.name), getattr(other, field.name), equal_nan=field.name not in TEXTS)
        for field in fields(HourTable)
    )


TEXTS = ("file", "place_name", "format")


def test_a_kept_table_is_the_one_that_was_read(folder: Path) -> None:
    content = FILE.read_bytes()
    read = kept.kept("a.tm2", content, once)
    again = kept.kept(FILE.name, content, never)
    assert same(read, again)
    assert isinstance(again.latitude, float)
    assert isinstance(again.first_line, int)


def test_messages_name_the_file_as_it_is_called_now() -> None:
    kept.kept("a.tm2", FILE.read_bytes(), once)
    assert kept.kept("b.tm2", FILE.read_bytes(), never).file == "b.tm2"


def test_another_content_is_read() -> None:
    kept.kept("a.tm2", b"one", once)
    with pytest.raises(AssertionError, match="come from disk"):
        kept.kept("a.tm2", b"two", never)


@pytest.mark.parametrize("damage", [b"", b"PK\x03\x04 cut off", b"\x93NUMPY"])
def test_a_damaged_file_is_made_again(folder: Path, damage: bytes) -> None:
    table = kept.kept("a.tm2", b"one", once)
    (path,) = folder.iterdir()
    path.write_bytes(damage)
    assert same(kept.kept(table.file, b"one", once), table)
    assert same(kept.kept(table.file, b"one", never), table)


def test_a_folder_that_cannot_be_written_does_no_harm(folder: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(kept, "_folder", lambda: folder / "lost")
    assert len(kept.kept("a.tm2", b"one", once)) == 8760


def test_what_is_wrong_with_a_file_is_not_kept(folder: Path) -> None:
    with pytest.raises(AssertionError):
        kept.kept("a.tm2", b"one", never)
    assert list(folder.iterdir()) == []
