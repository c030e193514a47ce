"""Directions: from the bow, and of the bow."""

from __future__ import annotations

import math
from typing import Annotated, Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema, core_schema

from anchorwatt.units import Quantity, parse
from anchorwatt.units.pattern import pattern_of
from anchorwatt.units.refusal import Refused

FACES = {"ahead": 0.0, "starboard": math.pi / 2, "astern": math.pi, "port": 3 * math.pi / 2}

TO_THE_WIND = "to the wind"


class _Direction:
    """An angle, or one of a few words for it."""

    def __init__(self, words: dict[str, float], about: str) -> None:
        self.words = words
        self.about = about

    def read(self, value: Any) -> Quantity:
        """Turn a word or an angle into rad."""
        if isinstance(value, Quantity):
            return value
        if isinstance(value, str) and value in self.words:
            return Quantity(self.words[value], value, "angle", "")
        try:
            return parse(value, "angle")
        except Refused as refused:
            raise Refused(refused.found, f"{', '.join(self.words)}, or {self.about}") from None

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self.read, serialization=core_schema.to_string_ser_schema())

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        angle = {"type": "string", "pattern": pattern_of("angle"), "description": self.about}
        return {"anyOf": [{"type": "string", "enum": list(self.words)}, angle]}


Face = Annotated[Quantity, _Direction(FACES, "an angle clockwise from the bow such as “120 deg”")]
"""Where a face of the boat looks: a side, or an angle clockwise from the bow."""

Heading = Annotated[Quantity, _Direction({TO_THE_WIND: math.nan}, "a true bearing of the bow such as “90 deg”")]
"""Where the bow points: to the wind (nan), or a true bearing."""
