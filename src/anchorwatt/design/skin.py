"""A build-up and its colour in one word: ``foam-cored, white``."""

from __future__ import annotations

from typing import Annotated, Any

from pydantic import Field, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, core_schema

from anchorwatt.catalogue import names
from anchorwatt.catalogue.construction import ConstructionSlot
from anchorwatt.catalogue.finish import FinishSlot
from anchorwatt.catalogue.part import NotInCatalogue, nearest
from anchorwatt.design.section import Section


class SkinParts(Section):
    """A build-up and, for what the sun reaches, its colour."""

    construction: ConstructionSlot = Field(description="Layers from outside to inside.")
    finish: FinishSlot | None = Field(default=None, description="Outside colour.")


class _InOneWord:
    def split(self, value: Any) -> Any:
        """Take ``construction`` or ``construction, finish`` apart."""
        if not isinstance(value, str):
            return value
        constructions, finishes = names("construction"), names("finish")
        if value in constructions:
            return {"construction": value}
        construction, _, finish = (part.strip() for part in value.rpartition(","))
        if construction not in constructions:
            wrong = construction or finish
            raise NotInCatalogue(
                f"no construction “{wrong}”{nearest(wrong, constructions)}",
                f"a construction, or “construction, finish”; constructions: {', '.join(constructions)}",
            )
        if finish not in finishes:
            raise NotInCatalogue(f"no finish “{finish}”{nearest(finish, finishes)}", "a finish: " + ", ".join(finishes))
        return {"construction": construction, "finish": finish}

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_before_validator_function(self.split, handler(source))

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        constructions, finishes = "|".join(names("construction")), "|".join(names("finish"))
        return {
            "anyOf": [
                {"type": "string", "enum": list(names("construction")), "description": "A construction."},
                {
                    "type": "string",
                    "pattern": f"^({constructions}), *({finishes})$",
                    "description": "A construction and a finish.",
                    "examples": ["foam-cored, white"],
                },
                handler(schema),
            ]
        }


Skin = Annotated[SkinParts, _InOneWord()]
"""“construction”, “construction, finish”, or both in full."""
