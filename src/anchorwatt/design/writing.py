"""Designs onto disk: saving, and new files from a starter boat."""

from __future__ import annotations

import contextlib
import os
import tempfile
from importlib import resources
from pathlib import Path
from typing import TYPE_CHECKING

from anchorwatt.catalogue.part import NotInCatalogue, nearest
from anchorwatt.errors import CannotWrite

if TYPE_CHECKING:
    from anchorwatt.design.design import Design

SCHEMA_NAME = "anchorwatt.schema.json"
SCHEMA_LINE = f"# yaml-language-server: $schema={SCHEMA_NAME}\n"


def write(design: Design, path: str | Path) -> None:
    """Save a design: all of it or nothing, with the writer's comments, order and units.

    Parameters
    ----------
    design : what to save
    path : where; an older file there is replaced in one step

    Raises
    ------
    CannotWrite
        Nothing was changed.
    """
    _write_whole(Path(path), design.document.text.encode("utf-8"))


def starters() -> tuple[str, ...]:
    """Names of the starter boats, the default first.

    Example
    -------
    >>> starters()[0]
    'trawler-14m'
    """
    names = sorted(
        entry.name.removesuffix(".yaml")
        for entry in resources.files("anchorwatt.design").joinpath("starters").iterdir()
        if entry.name.endswith(".yaml")
    )
    return tuple(sorted(names, key=lambda name: name != "trawler-14m"))


def starter_text(starter: str) -> str:
    """The text of a starter boat's design file.

    Raises
    ------
    NotInCatalogue
        There is no such starter.
    """
    if starter not in starters():
        raise NotInCatalogue(
            f"no starter “{starter}”{nearest(starter, starters())}", "one of: " + ", ".join(starters())
        )
    package = resources.files("anchorwatt.design")
    return package.joinpath("starters", f"{starter}.yaml").read_text(encoding="utf-8")


def new(starter: str, path: str | Path, replace: bool = False) -> Design:
    """Begin a design file from a starter boat, with the schema for editors beside it.

    Parameters
    ----------
    starter : one of `starters()`
    path : the file to make; its folder is made too
    replace : overwrite a file that is there

    Raises
    ------
    NotInCatalogue
        There is no such starter.
    CannotWrite
        The file is there already, or the disk refuses; nothing was changed.
    """
    return begin(starter_text(starter), path, replace)


def begin(text: str, path: str | Path, replace: bool = False) -> Design:
    """Begin a design file from a text, with the schema for editors beside it; raises as `new` does."""
    from anchorwatt.design.reading import read  # much that what only writes does without

    target = Path(path)
    if target.exists() and not replace:
        raise CannotWrite(target, "there is a file already; replace it on purpose, or choose another name")
    package = resources.files("anchorwatt.design")
    try:
        target.parent.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CannotWrite(target, error.strerror or str(error)) from None
    _write_whole(target, (SCHEMA_LINE + text).encode("utf-8"))
    _write_whole(target.parent / SCHEMA_NAME, package.joinpath(SCHEMA_NAME).read_bytes())
    return read(target)


def _write_whole(path: Path, content: bytes) -> None:
    """Write beside the target and move over it, so that a reader sees the old file or the new one."""
    if path.is_dir():
        raise CannotWrite(path, "it is a folder")
    mode = path.stat().st_mode & 0o777 if path.exists() else None
    beside = None
    try:
        handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
        beside = Path(name)
        with os.fdopen(handle, "wb") as file:
            file.write(content)
            file.flush()
            os.fsync(file.fileno())
        beside.chmod(0o644 if mode is None else mode)
        beside.replace(path)
    except OSError as error:
        if beside is not None:
            with contextlib.suppress(OSError):
                beside.unlink()
        raise CannotWrite(path, error.strerror or str(error)) from None
