"""How a pydantic field takes a text of the file: reading, refusing, dumping, limits, JSON Schema."""

from __future__ import annotations

from collections.abc import Callable
from typing import Any

from pydantic import GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic_core import PydanticCustomError, core_schema

from anchorwatt.errors import BadQuantity
from anchorwatt.units.quantity import Quantity
from anchorwatt.units.reading import parse
from anchorwatt.units.refusal import Refused
from anchorwatt.units.schema import ALLOWED
from anchorwatt.units.showing import convert

_DIMENSION = "anchorwatt_dimension"


class Written:
    """A field that is written as a text in the file."""

    def __init__(
        self,
        read: Callable[[Any], object],
        schema: dict[str, Any],
        dimension: str = "",
    ) -> None:
        self.read = read
        self.schema = schema
        self.dimension = dimension

    def __get_pydantic_core_schema__(self, source: object, handler: GetCoreSchemaHandler) -> core_schema.CoreSchema:
        return core_schema.no_info_plain_validator_function(
            self._validate,
            serialization=core_schema.plain_serializer_function_ser_schema(str, return_schema=core_schema.str_schema()),
            metadata={_DIMENSION: self.dimension},
        )

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        return dict(self.schema)

    def _validate(self, value: Any) -> object:
        try:
            return self.read(value)
        except BadQuantity as refusal:
            raise _as_pydantic(refusal) from None


def within(lowest: str | None, highest: str | None = None) -> Range:
    """Limit a quantity of a field, both ends allowed: `Annotated[Length, within("0.5 m", "100 m")]`."""
    return Range(lowest, highest, open_below=False)


def above(lowest: str, highest: str | None = None) -> Range:
    """Limit a quantity of a field to what is more than `lowest`: `Annotated[Area, above("0 m²")]`."""
    return Range(lowest, highest, open_below=True)


class Range:
    def __init__(self, lowest: str | None, highest: str | None, open_below: bool) -> None:
        self.lowest = lowest
        self.highest = highest
        self.open_below = open_below

    def __get_pydantic_core_schema__(self, source: object, handler: GetCoreSchemaHandler) -> core_schema.CoreSchema:
        inner = handler(source)
        dimension = (inner.get("metadata") or {}).get(_DIMENSION)
        if not dimension:
            raise TypeError("a range stands on a quantity: Annotated[Length, within(...)]")
        lowest = _limit(self.lowest, dimension)
        highest = _limit(self.highest, dimension)

        def check(value: Quantity) -> Quantity:
            too_low = lowest is not None and (value <= lowest if self.open_below else value < lowest)
            if too_low or (highest is not None and value > highest):
                raise _as_pydantic(
                    Refused(f'"{value.text}"', f"{self._words()}{self._in_unit_of(value, lowest, highest)}")
                )
            return value

        return core_schema.no_info_after_validator_function(check, inner, metadata={_DIMENSION: dimension})

    def __get_pydantic_json_schema__(
        self, schema: core_schema.CoreSchema, handler: GetJsonSchemaHandler
    ) -> dict[str, Any]:
        written = dict(handler(schema))
        written[ALLOWED] = f"{written[ALLOWED]}; {self._words()}"
        return written

    def _words(self) -> str:
        if self.open_below:
            return f"more than {self.lowest}" + (f", at most {self.highest}" if self.highest else "")
        if self.lowest and self.highest:
            return f"from {self.lowest} to {self.highest}"
        return f"at least {self.lowest}" if self.lowest else f"at most {self.highest}"

    def _in_unit_of(self, value: Quantity, lowest: Quantity | None, highest: Quantity | None) -> str:
        limits = [limit for limit in (lowest, highest) if limit is not None]
        if all(limit.unit == value.unit or (limit == 0.0 and limit.text[:1] == "0") for limit in limits):
            return ""
        told = " to ".join(f"{convert(limit, value.unit, value.dimension):.4g}" for limit in limits)
        return f" ({told} {value.unit})"


def _limit(text: str | None, dimension: str) -> Quantity | None:
    return None if text is None else parse(text, dimension)


def _as_pydantic(refusal: BadQuantity) -> PydanticCustomError:
    found = refusal.found if isinstance(refusal, Refused) else str(refusal)
    wanted = refusal.allowed if isinstance(refusal, Refused) else ""
    return PydanticCustomError("quantity", "found {found}; allowed: {allowed}", {"found": found, "allowed": wanted})
