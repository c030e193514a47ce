"""American wire gauge: a size of its own, not a unit."""

from __future__ import annotations

import functools
import math
import re
from dataclasses import dataclass

from anchorwatt.units.refusal import Refused, name_of_kind, quoted

_SIZE = "(?:[1-4]/0|00?0?0?|[1-9]|[1-3][0-9]|40)"
GAUGE = f"{_SIZE} ?(?:AWG|awg)|(?:AWG|awg) ?{_SIZE}"
ALLOWED = 'a wire gauge from "4/0 AWG" to "40 AWG"'


@dataclass(frozen=True, order=True)
class WireGauge:
    """A conductor size of the American wire gauge; larger numbers are thinner wires.

    Source
    ------
    ASTM B258: diameters form a geometric series of 39 steps from 0.46 in (4/0) to 0.005 in (36).

    Example
    -------
    >>> gauge = WireGauge.parse("4/0 AWG")
    >>> gauge.number, str(gauge)
    (-3, '4/0 AWG')
    >>> gauge.diameter * 1000, gauge.area * 1e6
    (11.684, 107.2)
    """

    number: int  # 1/0 is 0, 2/0 is -1, 3/0 is -2, 4/0 is -3

    def __post_init__(self) -> None:
        if not -3 <= self.number <= 40:
            raise ValueError(f"wire gauges go from -3 (4/0) to 40; found {self.number}")

    @classmethod
    def parse(cls, text: str) -> WireGauge:
        """Read a gauge such as "8 AWG", "AWG 8", "4/0 AWG" or "0000 AWG".

        Raises
        ------
        BadQuantity
            The text is not a gauge; the message says what was found and what is allowed.
        """
        if not isinstance(text, str):
            raise Refused(f"{name_of_kind(text)} without AWG", ALLOWED)
        tidy = text.strip()
        if not re.fullmatch(GAUGE, tidy):
            raise Refused(quoted(text), ALLOWED)
        size = re.sub("[^0-9/]", "", tidy)
        if size.endswith("/0"):
            return cls(1 - int(size[0]))
        return cls(1 - len(size) if size.startswith("0") else int(size))

    @property
    def diameter(self) -> float:
        """Diameter of the solid wire, m."""
        return 0.127e-3 * math.pow(92.0, (36 - self.number) / 39)

    @property
    def area(self) -> float:
        """Area of the solid wire, m²."""
        return _area(self.number)

    def __str__(self) -> str:
        return f"{1 - self.number}/0 AWG" if self.number <= 0 else f"{self.number} AWG"


@functools.cache
def _area(number: int) -> float:
    """Sizing looks at every gauge for every circuit; there are a few dozen of them."""
    return math.pi / 4 * WireGauge(number).diameter ** 2
