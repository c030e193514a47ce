"""The yard's drawings of open designs: drawn once a version, and shown and saved from there."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Mapping
from dataclasses import dataclass
from functools import cached_property
from pathlib import Path
from typing import TYPE_CHECKING, Any
from weakref import WeakKeyDictionary

from anchorwatt.drawings.sheet import Sheet
from anchorwatt.drawings.sheets.paper import PAPERS, PaperName
from anchorwatt.errors import AnchorwattError
from anchorwatt.papers.drawn import files
from anchorwatt.units import System
from anchorwatt.web.overview import Mark, mark_of
from anchorwatt.web.sheet_html import sheet_html
from anchorwatt.web.yaml_files import designs

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

PNG_WIDTH = 3300
"""Pixels across a sheet: 200 to the inch of A3."""

FORMATS = {
    "svg": "image/svg+xml",
    "dxf": "image/vnd.dxf",
    "pdf": "application/pdf",
    "png": "image/png",
}
"""What a sheet can be saved as, with its media type."""

SET = {"drawings.pdf": "application/pdf", "drawings.zip": "application/zip"}
"""What the whole set can be saved as."""

_KEPT = 4  # sets of one assessment
_EARLIER = 2  # designs that were looked at as an earlier revision

Wanted = tuple[PaperName, System, "Assessment | None"]


@dataclass(frozen=True)
class Drawn:
    """A whole set of sheets."""

    sheets: tuple[Sheet, ...]

    def named(self, name: str) -> Sheet:
        """The sheet of that name; the first where there is none."""
        return next((one for one in self.sheets if one.name == name), self.sheets[0])

    def html(self, name: str) -> str:
        """That sheet as a part of a page."""
        if name not in self._html:
            self._html[name] = sheet_html(self.named(name))
        return self._html[name]

    @cached_property
    def told(self) -> Mapping[str, str]:
        """What the drawings say of each thing, by its key."""
        found: dict[str, str] = {}
        for sheet in self.sheets:
            for item in sheet.items:
                key, told = getattr(item, "key", ""), getattr(item, "told", "")
                if key and told:
                    found.setdefault(key, told)
        return found

    @cached_property
    def _html(self) -> dict[str, str]:
        return {}


_drawn: WeakKeyDictionary[Assessment, dict[Wanted, Drawn]] = WeakKeyDictionary()
_earlier: dict[Path, tuple[Mark | None, Assessment]] = {}


def paper_of(query: Mapping[str, str]) -> PaperName:
    """The paper that a page or a file is asked for, A3 where it says no other.

    Example
    -------
    >>> paper_of({"paper": "ANSI B"}), paper_of({"paper": "a napkin"})
    ('ANSI B', 'A3')
    """
    return next((paper for paper in PAPERS if paper == query.get("paper")), "A3")


def drawn(assessment: Assessment, system: System, query: Mapping[str, str], folder: Path) -> Drawn:
    """All sheets of a design, from the shelf where they were drawn before.

    Parameters
    ----------
    query : `paper`, and `since`, the name of an earlier design of the folder

    Raises
    ------
    AnchorwattError
        The design, or the earlier one, cannot be read or worked out.
    """
    from anchorwatt.drawings.sheets.sheet_set import sheet_set

    since = earlier(folder, query["since"]) if query.get("since") else None
    shelf = _drawn.setdefault(assessment, {})
    wanted: Wanted = (paper_of(query), system, since)
    made = shelf.get(wanted)
    if made is None:
        made = Drawn(sheet_set(assessment, wanted[0], system, since=since))
        make_room(shelf, _KEPT)
        shelf[wanted] = made
    return made


def make_room(shelf: dict[Any, Any], kept: int) -> None:
    """Take the oldest off a shelf so that it holds one less than `kept`; other threads may be at it too."""
    for old in list(shelf)[: max(len(shelf) + 1 - kept, 0)]:
        shelf.pop(old, None)


def others(folder: Path, name: str) -> tuple[str, ...]:
    """Names of the other design files of the folder."""
    return tuple(one for one in designs(folder) if one != name)


def earlier(folder: Path, name: str) -> Assessment:
    """The assessment of another design of the folder as its file is now.

    Raises
    ------
    AnchorwattError
        There is no such design, or it cannot be read.
    """
    from anchorwatt.assessment import assess
    from anchorwatt.design import read

    if name not in others(folder, ""):
        raise AnchorwattError(f"there is no design “{name}” in this folder")
    path = folder / f"{name}.yaml"
    mark = mark_of(path)
    known = _earlier.get(path)
    if known is None or known[0] != mark:
        _earlier.pop(path, None)
        make_room(_earlier, _EARLIER)
        known = _earlier[path] = (mark, assess(read(path)))
    return known[1]


def written(made: Drawn, file: str) -> bytes:
    """A file of the set: the name of a sheet and an ending of `FORMATS`, or a name of `SET`.

    Raises
    ------
    KeyError
        There is no such file.
    """
    name, _, ending = file.rpartition(".")
    sheets = [one for one in made.sheets if one.name == name]
    if file not in SET and (ending not in FORMATS or not sheets):
        raise KeyError(file)
    if ending == "zip":
        return _packed(made)
    if ending == "png":
        from anchorwatt.drawings.as_png import as_png
        from anchorwatt.drawings.svg import svg

        return as_png(svg(sheets[0]), PNG_WIDTH)
    (content,) = files(sheets or made.sheets, [ending]).values()
    return content


def _packed(made: Drawn) -> bytes:
    """A ZIP file of the set as DXF, the same bytes for the same sheets."""
    packed = io.BytesIO()
    with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
        for name, content in files(made.sheets, ["dxf"]).items():
            entry = zipfile.ZipInfo(name, (2000, 1, 1, 0, 0, 0))
            entry.compress_type = zipfile.ZIP_DEFLATED
            archive.writestr(entry, content)
    return packed.getvalue()
