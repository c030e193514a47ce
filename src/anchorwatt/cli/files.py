"""Writing files: all that were asked for, or none."""

from __future__ import annotations

import contextlib
import os
import tempfile
from collections.abc import Mapping
from pathlib import Path

from anchorwatt.errors import CannotWrite


def write_all(contents: Mapping[Path, str | bytes]) -> None:
    """Write texts, or bytes, to files. Each is first written in full beside its target; then all are moved into place.

    Raises
    ------
    CannotWrite
        A folder or file cannot be written; no file was changed.
    """
    ready: dict[Path, Path] = {}
    try:
        for path, content in contents.items():
            try:
                ready[path] = _beside(path, content)
            except OSError as error:
                raise CannotWrite(path, error.strerror or str(error)) from None
        for path, beside in ready.items():
            try:
                beside.replace(path)
            except OSError as error:
                raise CannotWrite(path, error.strerror or str(error)) from None
    finally:
        for beside in ready.values():
            with contextlib.suppress(OSError):
                beside.unlink()


def _beside(path: Path, content: str | bytes) -> Path:
    if path.is_dir():
        raise IsADirectoryError(0, "it is a folder")
    path.parent.mkdir(parents=True, exist_ok=True)
    handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
    beside = Path(name)
    try:
        with os.fdopen(handle, "wb") as file:
            file.write(content.encode("utf-8") if isinstance(content, str) else content)
        beside.chmod(0o644)
    except OSError:
        beside.unlink()
        raise
    return beside
