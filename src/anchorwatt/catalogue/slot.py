"""A place in a design, or in another part, that takes a part from the catalogue.

A slot takes the name of a row, or a mapping ``{like: NAME, field: value, …}`` that changes some of the
row's fields, or a full record typed in place.
"""

from __future__ import annotations

from typing import Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler, ValidationError
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, InitErrorDetails, PydanticCustomError, core_schema

from anchorwatt.catalogue.part import NotInCatalogue, names, raw


class Slot:
    """Marks a field that takes a part of a kind: ``Annotated[Transformer, Slot("transformer")]``.

    Example
    -------
    >>> from pydantic import TypeAdapter
    >>> from typing import Annotated
    >>> from anchorwatt.catalogue.cover import Cover
    >>> slot = TypeAdapter(Annotated[Cover, Slot("cover")])
    >>> slot.validate_python("awning").factor * 1
    0.22
    >>> slot.validate_python({"like": "awning", "factor": "15 %"}).factor * 1
    0.15
    """

    def __init__(self, kind: str) -> None:
        self.kind = kind

    def __repr__(self) -> str:
        return f"Slot({self.kind!r})"

    def resolve(self, value: Any) -> Any:
        """Turn a name, or a mapping with `like`, into a full mapping; leave anything else as it is."""
        if isinstance(value, str):
            return dict(raw(self.kind, value))
        if isinstance(value, dict) and "like" in value:
            base = value["like"]
            try:
                if not isinstance(base, str):
                    raise NotInCatalogue(repr(base), f"the name of a {self.kind.replace('_', ' ')}")
                row = raw(self.kind, base)
            except NotInCatalogue as problem:
                raise _at("like", base, problem) from None
            changes = {key: change for key, change in value.items() if key != "like"}
            merged = {**row, **changes}
            if changes and "source" not in changes:
                merged["source"] = f"{row['source']}; {', '.join(changes)} typed in the design file"
            return merged
        return value

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_before_validator_function(self.resolve, handler(source))

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        full = handler(schema)
        record = handler.resolve_ref_schema(full)
        title = self.kind.replace("_", " ")
        choice = {"type": "string", "enum": list(names(self.kind))}
        changed = {
            "type": "object",
            "description": f"A {title} of the catalogue with some of its figures changed.",
            "properties": {
                "like": {**choice, "description": f"The {title} to start from."},
                **record.get("properties", {}),
            },
            "required": ["like"],
            "additionalProperties": False,
        }
        return {"anyOf": [{**choice, "description": f"A {title} of the catalogue."}, changed, full]}


def _at(key: str, value: Any, problem: NotInCatalogue) -> ValidationError:
    kind = PydanticCustomError(
        "not_in_catalogue",
        "found {found}; allowed: {allowed}",
        {"found": problem.found, "allowed": problem.allowed},
    )
    return ValidationError.from_exception_data("slot", [InitErrorDetails(type=kind, loc=(key,), input=value)])
