"""The words that a design's owner typed: they stay as they are in a paper of any language."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from typing import TYPE_CHECKING, Any, Literal, get_args, get_origin

from pydantic import BaseModel

from anchorwatt.catalogue import kinds
from anchorwatt.catalogue.part import generic_rows

if TYPE_CHECKING:
    from anchorwatt.design import Design


def own_names(design: Design) -> frozenset[str]:
    """Every text of the file that is neither one of a closed choice nor the name of a generic part."""
    generic = {name for kind in kinds() for name in generic_rows(kind)}
    return frozenset(_typed(design)) - generic


def _typed(section: BaseModel) -> Iterator[str]:
    for name, field in type(section).model_fields.items():
        if not _closed(field.annotation):
            yield from _words(getattr(section, name))


def _words(value: object) -> Iterator[str]:
    match value:
        case str():
            yield value
        case BaseModel():
            yield from _typed(value)
        case Mapping():
            for key, inner in value.items():
                yield from (str(key), *_words(inner))
        case tuple() | list():
            for inner in value:
                yield from _words(inner)


def _closed(annotation: Any) -> bool:
    """Whether a key takes its value from a list of ours."""
    parts = [one for one in get_args(annotation) if one is not type(None)]
    return get_origin(annotation) is Literal or (len(parts) == 1 and get_origin(parts[0]) is Literal)
