"""What pydantic found wrong, told in a writer's words: file, line, key, what was found, what is allowed."""

from __future__ import annotations

import types
import typing
from collections.abc import Mapping, Sequence
from typing import Any

from pydantic import BaseModel
from pydantic.fields import FieldInfo
from pydantic_core import ErrorDetails

from anchorwatt.catalogue.part import nearest
from anchorwatt.design.document import Document, Key
from anchorwatt.design.section import Section
from anchorwatt.errors import Problem
from anchorwatt.units.refusal import name_of_kind, quoted


def as_problem(error: ErrorDetails, document: Document, model: type[BaseModel], under: Key = ()) -> Problem:
    """One of pydantic's errors as a problem of the file, where the model reads what stands under a key."""
    key: Key = tuple(part for part in error["loc"] if part != "[key]")
    found, allowed = _told(error, key, model)
    return document.problem((*under, *key), found, allowed)


def one_each(errors: Sequence[ErrorDetails]) -> list[ErrorDetails]:
    """Errors without those that follow from another: one slip, one message.

    A missing key that an unknown key beside it nearly spells goes, and so does a list that is too short for want of
    the values that were refused.
    """
    unknown = [error["loc"] for error in errors if error["type"] == "extra_forbidden"]

    def nearly_there(missing: tuple[str | int, ...]) -> bool:
        return any(
            place[:-1] == missing[:-1] and nearest(str(place[-1]), (str(missing[-1]),)) != "" for place in unknown
        )

    def short_for_want(place: tuple[str | int, ...]) -> bool:
        return any(len(error["loc"]) > len(place) and error["loc"][: len(place)] == place for error in errors)

    return [
        error
        for error in errors
        if not (error["type"] == "missing" and nearly_there(error["loc"]))
        and not (error["type"] == "too_short" and short_for_want(error["loc"]))
    ]


def keys_of(model: type[BaseModel]) -> tuple[str, ...]:
    """The keys that a mapping of the file may have."""
    return tuple(field.alias or name for name, field in model.model_fields.items())


def model_at(model: type[BaseModel], key: Key) -> type[BaseModel] | None:
    """The model that reads what stands at a key; None where no model does."""
    at: Any = model
    for part in key:
        if isinstance(at, type) and issubclass(at, BaseModel):
            fields = _fields(at)
            if part not in fields and in_short(at) in fields:
                fields = _fields(_bare(fields[in_short(at)].annotation))
            if part not in fields:
                return None
            at = _bare(fields[str(part)].annotation)
        elif typing.get_origin(at) is dict:
            at = _bare(typing.get_args(at)[1])
        elif typing.get_origin(at) is tuple:
            at = _bare(typing.get_args(at)[0])
        else:
            return None
    return at if isinstance(at, type) and issubclass(at, BaseModel) else None


def shown(value: Any) -> str:
    """A value of the file as it is named in a message."""
    return quoted(value) if isinstance(value, str) else name_of_kind(value)


def in_short(model: type[BaseModel]) -> str:
    """The key of a model whose value may stand for the whole; none where empty."""
    return model.in_short if issubclass(model, Section) else ""


def _fields(model: Any) -> dict[str, FieldInfo]:
    """Fields by key; none of what is no model, such as a choice of words."""
    if not (isinstance(model, type) and issubclass(model, BaseModel)):
        return {}
    return {field.alias or name: field for name, field in model.model_fields.items()}


def _bare(annotation: Any) -> Any:
    while typing.get_origin(annotation) in (typing.Annotated, typing.Union, types.UnionType):
        annotation = next(one for one in typing.get_args(annotation) if one is not type(None))
    return annotation


def _told(error: ErrorDetails, key: Key, model: type[BaseModel]) -> tuple[str, str]:
    kind, value = error["type"], error["input"]
    context: Mapping[str, Any] = error.get("ctx", {})
    if "found" in context and "allowed" in context:
        return str(context["found"]), str(context["allowed"])
    if kind == "value_error":
        raised = context["error"]
        return getattr(raised, "found", str(raised)), getattr(raised, "allowed", "")
    if kind == "extra_forbidden":
        return _unknown_key(key, model)
    if kind == "missing":
        return "nothing", f"{key[-1]}, which must be there: {_description(key, model)}"
    if kind == "literal_error":
        return shown(value), str(context["expected"]).replace("'", "")
    if kind == "string_too_long":
        return shown(value), f"a text of at most {context['max_length']} characters"
    if kind in ("too_short", "too_long"):
        limit = context.get("min_length") if kind == "too_short" else context.get("max_length")
        return (
            f"{context['actual_length']} of them",
            f"at {'least' if kind == 'too_short' else 'most'} {limit}",
        )
    if kind == "string_pattern_mismatch":
        return shown(value), "a name without a full stop, without spaces at its ends"
    if kind in _WANTED:
        return shown(value), _WANTED[kind]
    if kind in ("model_type", "model_attributes_type", "dict_type"):
        there = model_at(model, key)
        return shown(value), "a mapping" + (f" of {', '.join(keys_of(there))}" if there else "")
    for limit, words in _LIMITS.items():
        if limit in context:
            return f"{value}", f"{words} {context[limit]:g}"
    return shown(value), error["msg"]


_WANTED = {
    "string_type": "a text",
    "bool_type": "true or false",
    "int_type": "a whole number",
    "int_parsing": "a whole number",
    "int_from_float": "a whole number",
    "float_type": "a number",
    "float_parsing": "a number",
    "finite_number": "a finite number",
    "tuple_type": "a list",
    "list_type": "a list",
    "string_too_short": "a text that is not empty",
}

_LIMITS = {
    "ge": "a number of at least",
    "gt": "a number above",
    "le": "a number of at most",
    "lt": "a number below",
}


def _unknown_key(key: Key, model: type[BaseModel]) -> tuple[str, str]:
    there = model_at(model, key[:-1])
    keys = keys_of(there) if there is not None else ()
    if there is not None and in_short(there):
        keys += tuple(_fields(_bare(there.model_fields[in_short(there)].annotation)))
    return f"an unknown key “{key[-1]}”{nearest(str(key[-1]), keys)}", "one of: " + ", ".join(keys)


def _description(key: Key, model: type[BaseModel]) -> str:
    there = model_at(model, key[:-1])
    if there is None:
        return ""
    fields = _fields(there)
    if in_short(there):
        fields = _fields(_bare(fields[in_short(there)].annotation)) | fields
    field = fields.get(str(key[-1]))
    return (field.description or "").rstrip(".") if field is not None else ""
