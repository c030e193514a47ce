"""What the YAML files of the served folder are: designs, and settings of yards."""

from __future__ import annotations

from functools import lru_cache
from pathlib import Path

from anchorwatt.web.overview import Mark, mark_of


def designs(folder: Path) -> tuple[str, ...]:
    """Names of the design files, without their ending; whatever is no settings file is meant to be one."""
    return tuple(sorted(path.stem for path in folder.glob("*.yaml") if path.is_file() and not _is_house(path)))


def houses(folder: Path) -> tuple[str, ...]:
    """Names of the yards' settings files, without their ending."""
    return tuple(sorted(path.stem for path in folder.glob("*.yaml") if path.is_file() and _is_house(path)))


def _is_house(path: Path) -> bool:
    return _looked_at(path, mark_of(path))


@lru_cache(maxsize=1024)
def _looked_at(path: Path, _: Mark | None) -> bool:
    from anchorwatt.papers.house import is_house

    return is_house(path)
