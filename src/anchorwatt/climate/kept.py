"""Weather files that were read before, kept as arrays: reading one takes a second, its arrays a hundredth."""

from __future__ import annotations

import contextlib
import hashlib
import zipfile
from collections.abc import Callable
from dataclasses import fields
from functools import cache
from importlib.metadata import version
from importlib.resources import files
from pathlib import Path
from typing import Any

import numpy as np

from anchorwatt.climate.station import HourTable
from anchorwatt.stored import cache_folder, keep


def kept(file: str, content: bytes, read: Callable[[], HourTable]) -> HourTable:
    """The table of a weather file's content: from disk, or read and kept.

    Parameters
    ----------
    file : its name, which the table says in messages
    """
    path = _folder() / f"weather-{hashlib.sha256(content).hexdigest()[:32]}.npz"
    with contextlib.suppress(OSError, EOFError, ValueError, KeyError, TypeError, zipfile.BadZipFile):
        return _loaded(path, file)
    table = read()
    with contextlib.suppress(OSError):
        keep(path, lambda out: np.savez(out, **_parts(table)))
    return table


@cache
def _folder() -> Path:
    """One for each version of what reads weather files: a table of another reader is never taken for ours."""
    digest = hashlib.sha256()
    for name in ("formats.py", "station.py", "kept.py"):
        digest.update(files("anchorwatt.climate").joinpath(name).read_bytes())
    digest.update(version("pvlib").encode())
    return cache_folder(digest.hexdigest()[:16])


_KEPT = tuple(field.name for field in fields(HourTable) if field.name != "file")


def _parts(table: HourTable) -> dict[str, Any]:
    return {name: np.asarray(getattr(table, name)) for name in _KEPT}


def _loaded(path: Path, file: str) -> HourTable:
    with path.open("rb") as content, np.load(content) as found:
        parts = {name: found[name] for name in _KEPT}
    return HourTable(file=file, **{name: part if part.ndim else part.item() for name, part in parts.items()})
