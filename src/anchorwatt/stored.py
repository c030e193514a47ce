"""What was worked out once and is kept on disk for the next time. All of it can be thrown away at any time."""

from __future__ import annotations

import contextlib
import os
import tempfile
from collections.abc import Callable
from functools import cache
from pathlib import Path
from typing import BinaryIO


@cache
def cache_folder(version: str) -> Path:
    """Where what a version of our sources made is kept; made if it is not there.

    `ANCHORWATT_CACHE` names the parent; else the user's cache folder; else, when that cannot be written,
    a folder of this user's own among the temporary files.
    """
    named = os.environ.get("ANCHORWATT_CACHE")
    home = Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "anchorwatt"
    folder = (Path(named) if named else home) / version
    with contextlib.suppress(OSError):
        folder.mkdir(parents=True, exist_ok=True)
        with tempfile.TemporaryFile(dir=folder):
            return folder
    return Path(tempfile.mkdtemp(prefix="anchorwatt-"))


def keep(path: Path, write: Callable[[BinaryIO], None]) -> None:
    """Write a file whole or not at all, whoever else writes or reads it meanwhile."""
    handle, name = tempfile.mkstemp(dir=path.parent, suffix=path.suffix)
    try:
        with os.fdopen(handle, "wb") as file:
            write(file)
        Path(name).replace(path)
    except BaseException:
        Path(name).unlink(missing_ok=True)
        raise
