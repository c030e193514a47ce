"""Rows laid over the catalogue's own for as long as one design is read and worked out; nobody else sees them."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass, field
from types import MappingProxyType
from typing import Any

Row = Mapping[str, Any]
_NO_ROWS: Mapping[str, Row] = MappingProxyType({})


@dataclass(frozen=True)
class Overlay:
    """Rows by kind and name, whole: what each file leaves to the row below it is filled in."""

    rows: Mapping[str, Mapping[str, Row]] = field(default_factory=dict)
    files: tuple[str, ...] = ()
    records: dict[tuple[str, str], Any] = field(default_factory=dict, compare=False, repr=False)  # found already

    def of(self, kind: str) -> Mapping[str, Row]:
        """Rows of a kind."""
        return self.rows.get(kind, _NO_ROWS)

    def __bool__(self) -> bool:
        return bool(self.rows)


NOTHING = Overlay()

_current: ContextVar[Overlay] = ContextVar("overlay", default=NOTHING)


def current() -> Overlay:
    """What is laid over the catalogue here and now."""
    return _current.get()


@contextmanager
def laid_over(overlay: Overlay) -> Iterator[None]:
    """Lay rows over the catalogue within a block, in place of what lay there before.

    Example
    -------
    >>> from anchorwatt import catalogue
    >>> with laid_over(Overlay({"finish": {"teal": {**catalogue.part.raw("finish", "white"), "name": "teal"}}})):
    ...     "teal" in catalogue.names("finish")
    True
    >>> "teal" in catalogue.names("finish")
    False
    """
    token = _current.set(overlay)
    try:
        yield
    finally:
        _current.reset(token)
