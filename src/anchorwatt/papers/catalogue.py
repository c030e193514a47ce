"""The catalogue on the screen and as JSON."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import BaseModel

from anchorwatt import catalogue
from anchorwatt.catalogue import Part
from anchorwatt.catalogue.overlay import laid_over as over
from anchorwatt.design.yard import read_yard
from anchorwatt.errors import BadDesign
from anchorwatt.papers.page import Content, Words, section, table
from anchorwatt.units import DIMENSIONS, Quantity, System, show, show_clock

_TOLD_IF_KNOWN = ("price", "supplier")

INVENTED = (
    "Parts are invented and no supplier is named; constructions, people and glazing say where their figures are from."
)


@dataclass(frozen=True)
class Asked:
    """What was asked for: all kinds, the rows of one, or one row."""

    kind: str | None
    rows: dict[str, Part]
    one: bool


@contextmanager
def laid_over(files: Sequence[Path]) -> Iterator[None]:
    """Lay catalogue files over the catalogue within a block.

    Raises
    ------
    BadDesign
        A file cannot be used; its problems say where, what was found and what is allowed.
    """
    overlay, problems = read_yard(files)
    if problems:
        raise BadDesign(tuple(problems))
    with over(overlay):
        yield


def content(kind: str | None, name: str | None) -> Asked:
    """Look up what was asked for.

    Raises
    ------
    NotInCatalogue
        There is no such kind or row; the message names the nearest.
    """
    if kind is None:
        return Asked(None, {}, one=False)
    asked = kind.replace(" ", "_").replace("-", "_")
    if name is None:
        return Asked(asked, dict(catalogue.rows(asked)), one=False)
    return Asked(asked, {name: catalogue.find(asked, name)}, one=True)


def plain(found: Asked) -> dict[str, Any]:
    """As JSON: a quantity is its figure, its unit and what the catalogue's file says."""
    if found.kind is None:
        return {"kinds": [{"kind": kind, "rows": list(catalogue.names(kind))} for kind in catalogue.kinds()]}
    return {"kind": found.kind, "rows": [_plain(row) for row in found.rows.values()]}


def screen(found: Asked, system: System) -> Content:
    """As a page."""
    if found.kind is None:
        rows = [(kind, str(len(catalogue.names(kind))), _about(kind)) for kind in catalogue.kinds()]
        return section("Kinds", table(("", "", ""), ("<", ">", "<"), rows), Words(INVENTED))
    if not found.one:
        summaries = [(name, _summary(row, system)) for name, row in found.rows.items()]
        return section(_about(found.kind), table(("", ""), ("<", "<"), summaries))
    (row,) = found.rows.values()
    lines = [
        (_words(field), shown(getattr(row, field), system), about.description or "")
        for field, about in type(row).model_fields.items()
        if field != "name" and not (field in _TOLD_IF_KNOWN and getattr(row, field) is None)
    ]
    return section(row.name, table(("", "", ""), ("<", "<", "<"), lines))


def _about(kind: str) -> str:
    lines = (catalogue.record_of(kind).__doc__ or "").strip().split("\n")
    return lines[0]


def _summary(row: Part, system: System) -> str:
    fields = [field for field in type(row).model_fields if field not in ("name", "source", *_TOLD_IF_KNOWN)]
    fields += [field for field in _TOLD_IF_KNOWN if getattr(row, field) is not None]
    return ", ".join(f"{_words(field)} {shown(getattr(row, field), system)}" for field in fields)


def _words(field: str) -> str:
    return field.replace("_", " ")


def shown(value: Any, system: System) -> str:
    if isinstance(value, Quantity):
        return show(float(value), value.dimension, system)
    if isinstance(value, BaseModel):
        fields = [field for field in type(value).model_fields if field not in ("source", *_TOLD_IF_KNOWN)]
        inside = [shown(getattr(value, field), system) for field in fields]
        return " ".join(words for words in inside if words)
    if isinstance(value, (list, tuple)):
        return ", ".join(shown(one, system) for one in value)
    return "—" if value is None else str(value)


def _plain(value: Any) -> Any:
    if isinstance(value, Quantity):
        if value.dimension == "clock time":
            return show_clock(value)
        return {"value": float(f"{value:.6g}"), "unit": DIMENSIONS[value.dimension].si, "written": value.text}
    if isinstance(value, BaseModel):
        return {field: _plain(getattr(value, field)) for field in type(value).model_fields}
    if isinstance(value, (list, tuple)):
        return [_plain(one) for one in value]
    return value if isinstance(value, (str, int, float, bool)) or value is None else str(value)
