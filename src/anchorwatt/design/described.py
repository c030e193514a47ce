"""What may be typed where a type of the design file or of the catalogue stands: in words, and for a form."""

from __future__ import annotations

import functools
import types
import typing
from dataclasses import dataclass
from typing import Any, Literal

from pydantic import BaseModel, TypeAdapter

from anchorwatt.catalogue.slot import Slot
from anchorwatt.design.in_short import annotation
from anchorwatt.units.schema import ALLOWED, KIND

Kind = Literal["quantity", "number", "whole", "flag", "choice", "text", "written"]
"""`written`: anything else, such as a list, as it is written on one line of the file."""


@dataclass(frozen=True)
class Told:
    """What may be typed."""

    kind: Kind
    allowed: str
    choices: tuple[str, ...] = ()
    slot: str = ""  # kind of the catalogue that a part is taken from
    example: Any = ""


@functools.lru_cache(maxsize=2000)
def described(model: type[BaseModel], name: str) -> Told:
    """What may be typed in a field of a model."""
    return of_type(annotation(model.model_fields[name]))


def of_type(kind: Any) -> Told:
    """What may be typed where a type stands."""
    slot = next((one.kind for one in metadata(kind) if isinstance(one, Slot)), "")
    if slot:
        return Told("choice", f"one of the catalogue's: {slot.replace('_', ' ')}", (), slot)
    schema = TypeAdapter(kind).json_schema()
    if "anyOf" in schema:
        some = [one for one in schema["anyOf"] if one.get("type") != "null"]
        if len(some) > 1:
            return _one_of_several(some)
        schema = some[0]
    if KIND in schema:
        return Told("quantity", str(schema[ALLOWED]), example=schema["examples"][0])
    if "enum" in schema or "const" in schema:
        choices = tuple(str(one) for one in schema.get("enum", (schema.get("const"),)))
        return Told("choice", "one of: " + ", ".join(choices), choices)
    kinds: dict[str, Kind] = {"integer": "whole", "number": "number", "boolean": "flag", "string": "text"}
    told = kinds.get(str(schema.get("type")), "written")
    limits = [f"{words} {schema[limit]:g}" for limit, words in _LIMITS.items() if limit in schema]
    plain = {"whole": "a whole number", "number": "a number", "flag": "yes or no", "text": "a text"}.get(told, "")
    example = {"whole": 1, "number": 1.0, "flag": False, "text": "new"}.get(told, [])
    return Told(told, " ".join([plain, " and ".join(limits)]).strip(), example=example)


def _one_of_several(schemas: list[dict[str, Any]]) -> Told:
    """A value that may be one of some words, or something else that is typed."""
    words = tuple(str(one) for each in schemas for one in each.get("enum", [each["const"]] if "const" in each else []))
    others = [str(each[ALLOWED]) for each in schemas if ALLOWED in each]
    others += [str(each["description"]) for each in schemas if "pattern" in each and "description" in each]
    return Told("text", "; or ".join(filter(None, ["one of: " + ", ".join(words) if words else "", *others])), words)


_LIMITS = {
    "minimum": "of at least",
    "exclusiveMinimum": "above",
    "maximum": "of at most",
    "exclusiveMaximum": "below",
}


def metadata(kind: Any) -> list[Any]:
    """Everything that is said of a type beside the type."""
    found: list[Any] = []
    while True:
        if typing.get_origin(kind) is typing.Annotated:
            found += kind.__metadata__
            kind = typing.get_args(kind)[0]
        elif typing.get_origin(kind) in (typing.Union, types.UnionType):
            kind = next(one for one in typing.get_args(kind) if one is not type(None))
        else:
            return found
