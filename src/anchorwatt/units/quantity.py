"""A float in SI units that remembers how its author wrote it."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NoReturn

if TYPE_CHECKING:
    from pydantic_core import CoreSchema


class Quantity(float):
    """The SI value of a quantity, with the author's text, the dimension and the unit beside it.

    Arithmetic gives plain floats: what comes out of a formula was not written by anybody.

    Example
    -------
    >>> from anchorwatt.units import parse
    >>> height = parse("6 ft 6 in", "length")
    >>> height * 1
    1.9812
    >>> height.text, height.dimension, height.unit
    ('6 ft 6 in', 'length', 'ft')
    """

    __slots__ = ("dimension", "text", "unit")

    text: str  # as its author wrote it
    dimension: str  # a name in `table.DIMENSIONS`
    unit: str  # symbol of the unit it was written in (the first, of feet and inches)

    def __new__(cls, value: float, text: str, dimension: str, unit: str) -> Quantity:
        self = super().__new__(cls, value)
        object.__setattr__(self, "text", text)
        object.__setattr__(self, "dimension", dimension)
        object.__setattr__(self, "unit", unit)
        return self

    def __setattr__(self, name: str, value: object) -> NoReturn:
        raise AttributeError(f"a quantity cannot change: {name}")

    def __delattr__(self, name: str) -> NoReturn:
        raise AttributeError(f"a quantity cannot change: {name}")

    def __reduce__(self) -> tuple[Any, ...]:
        return type(self), (float(self), self.text, self.dimension, self.unit)

    def __copy__(self) -> Quantity:
        return self

    def __deepcopy__(self, memo: dict[int, Any]) -> Quantity:
        return self

    def __repr__(self) -> str:
        return f"Quantity({float(self)!r}, {self.text!r}, {self.dimension!r}, {self.unit!r})"

    def __str__(self) -> str:
        return self.text

    @classmethod
    def __get_pydantic_core_schema__(cls, source: object, handler: object) -> CoreSchema:
        """Let a pydantic field that says no more than `Quantity` take an instance and dump its text."""
        # Here and not at the top: units are read by programs that have no need of pydantic.
        from pydantic_core import core_schema

        text = core_schema.plain_serializer_function_ser_schema(str, return_schema=core_schema.str_schema())
        return core_schema.is_instance_schema(cls, serialization=text)
