"""A float in SI units that remembers how its author wrote it."""

from __future__ import annotations

from typing import Any, NoReturn

from anchorwatt.units.dumping import DumpedAsText


class Quantity(DumpedAsText, float):
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
