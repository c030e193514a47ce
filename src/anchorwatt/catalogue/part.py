"""What all rows of the catalogue have in common, and the register of kinds.

A kind is a module with its record and a YAML file of the same name with its rows. Rows are read when a
kind is first asked for, and each row becomes a record when it is first asked for. What a yard lays over them
(overlay.py) comes first.
"""

from __future__ import annotations

import difflib
import functools
from collections.abc import Callable, Mapping
from importlib import resources
from types import MappingProxyType
from typing import Annotated, Any, Literal, TypeVar

from pydantic import BaseModel, ConfigDict, Field, StringConstraints

from anchorwatt.catalogue.overlay import NOTHING, current, laid_over
from anchorwatt.errors import AnchorwattError
from anchorwatt.units.fields import Length, Price, Time, within

Row = Mapping[str, Any]
PartLength = Annotated[Length, within("1 mm", "10 m")]
LONGEST_SUPPLIER = 80
Supplier = Annotated[str, StringConstraints(strip_whitespace=True, max_length=LONGEST_SUPPLIER)]

_records: dict[str, type[Part]] = {}


class NotInCatalogue(AnchorwattError, ValueError):
    """The catalogue has no such kind, or no such row of a kind."""

    def __init__(self, found: str, allowed: str) -> None:
        super().__init__(found, allowed)
        self.found = found
        self.allowed = allowed

    def __str__(self) -> str:
        return f"found {self.found}; allowed: {self.allowed}"


class Part(BaseModel):
    """A row of the catalogue, or its like typed in a design file."""

    model_config = ConfigDict(frozen=True, extra="forbid")

    name: str = Field(default="", description="What it is called, in lists and on drawings.")
    size: tuple[PartLength, PartLength, PartLength] | None = Field(
        default=None, description="Length, width and height of one, as it stands."
    )
    clearance: Annotated[Length, within("0 mm", "1 m")] | None = Field(
        default=None, description="Kept free on every side, for air and hands."
    )
    service: Literal["front", "top", "end"] | None = Field(
        default=None, description="The side from which it is worked on."
    )
    upright: bool = Field(default=False, description="Whether it must stand as its size is told.")
    lead_time: Annotated[Time, within("0 d", "1000 d")] | None = Field(
        default=None, description="From order to delivery."
    )
    supplier: Supplier | None = Field(
        default=None, description="Who sells it; the catalogue names nobody, a yard's own files may."
    )
    source: str = Field(
        default="typed in the design file", description="Where its figures are from; “invented” for parts."
    )
    price: Price | None = Field(
        default=None, description="Of one, without tax and labour; invented for parts of the catalogue, as they are."
    )


SomePart = TypeVar("SomePart", bound=Part)


CURRENCY = "EUR"
"""Of all prices in the catalogue's files."""


def kind(name: str) -> Callable[[type[SomePart]], type[SomePart]]:
    """Register a record as a kind of the catalogue; its rows are in ``<name>.yaml`` beside its module."""

    def register(record: type[SomePart]) -> type[SomePart]:
        if name in _records:
            raise ValueError(f"the catalogue has a kind {name!r} already: {_records[name].__name__}")
        _records[name] = record
        return record

    return register


def kinds() -> tuple[str, ...]:
    """Names of all kinds, in alphabetical order.

    Example
    -------
    >>> from anchorwatt import catalogue
    >>> "transformer" in catalogue.kinds()
    True
    """
    return tuple(sorted(_records))


def record_of(kind: str) -> type[Part]:
    """The record of a kind."""
    if kind not in _records:
        raise NotInCatalogue(f"no kind “{kind}”{nearest(kind, kinds())}", ", ".join(kinds()))
    return _records[kind]


def names(kind: str) -> tuple[str, ...]:
    """Names of a kind's rows, in the order of its file.

    Example
    -------
    >>> from anchorwatt import catalogue
    >>> catalogue.names("cover")[:2]
    ('none', 'plain curtain')
    """
    return tuple(_laid_rows(kind))


def raw(kind: str, name: str) -> Row:
    """A row as it stands in its file, its name added."""
    rows = _laid_rows(kind)
    if name not in rows:
        title = kind.replace("_", " ")
        raise NotInCatalogue(f"no {title} “{name}”{nearest(name, rows)}", "one of: " + ", ".join(rows))
    return rows[name]


def find(kind: str, name: str) -> Part:
    """The record of a row.

    Parameters
    ----------
    kind : one of `kinds()`
    name : one of `names(kind)`

    Raises
    ------
    NotInCatalogue
        There is no such row; the message names the nearest.

    Example
    -------
    >>> from anchorwatt import catalogue
    >>> catalogue.find("person", "asleep").sensible * 1
    47.0
    >>> catalogue.find("person", "aslep")
    Traceback (most recent call last):
    anchorwatt.catalogue.part.NotInCatalogue: found no person “aslep”, perhaps “asleep”; allowed: one of: ...
    """
    overlay = current()
    if not overlay:
        return _found(kind, name)
    if (kind, name) not in overlay.records:
        overlay.records[kind, name] = record_of(kind).model_validate(dict(raw(kind, name)))
    part: Part = overlay.records[kind, name]
    return part


@functools.cache
def _found(kind: str, name: str) -> Part:
    return record_of(kind).model_validate(dict(raw(kind, name)))


def generic_rows(kind: str) -> Mapping[str, Row]:
    """Rows of a kind as they stand in the catalogue's own file, whatever lies over them."""
    with laid_over(NOTHING):
        return _laid_rows(kind)


def typed(record: type[SomePart], name: str) -> SomePart:
    """The record of a row, asked for by its type.

    Example
    -------
    >>> from anchorwatt.catalogue.finish import Finish
    >>> typed(Finish, "white").absorptance.text
    '22 %'
    """
    kind = next(kind for kind, registered in _records.items() if registered is record)
    return record.model_validate(dict(raw(kind, name)))


def rows(kind: str) -> Mapping[str, Part]:
    """All rows of a kind by their names.

    Example
    -------
    >>> from anchorwatt import catalogue
    >>> catalogue.rows("finish")["white"].absorptance * 1
    0.22
    """
    return MappingProxyType({name: find(kind, name) for name in names(kind)})


def nearest(text: str, among: Any) -> str:
    """A hint at the nearest spelling, or nothing.

    Example
    -------
    >>> nearest("hieght", ["height", "length"])
    ', perhaps “height”'
    """
    lower = {str(one).lower(): str(one) for one in among}
    near = difflib.get_close_matches(text.lower(), lower, n=1, cutoff=0.6)
    return f", perhaps “{lower[near[0]]}”" if near else ""


def _laid_rows(kind: str) -> Mapping[str, Row]:
    rows, over = _raw_rows(kind), current().of(kind)
    return MappingProxyType({**rows, **over}) if over else rows


@functools.cache
def _raw_rows(kind: str) -> Mapping[str, Row]:
    import yaml  # in C, fifty times as fast as ruamel.yaml; a test holds the files to what both read alike

    record_of(kind)
    text = resources.files("anchorwatt.catalogue").joinpath(f"{kind}.yaml").read_text(encoding="utf-8")
    loaded = yaml.load(text, Loader=yaml.CSafeLoader if yaml.__with_libyaml__ else yaml.SafeLoader)  # noqa: S506
    return MappingProxyType({name: MappingProxyType({"name": name, **row}) for name, row in loaded.items()})
