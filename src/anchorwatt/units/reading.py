"""From a writer's text to a quantity: strict, fast, and with an answer that helps."""

from __future__ import annotations

import difflib
import re
from fractions import Fraction
from functools import lru_cache

from anchorwatt.units.position import position
from anchorwatt.units.quantity import Quantity
from anchorwatt.units.refusal import Refused, name_of_kind, quoted
from anchorwatt.units.table import DIMENSIONS, Dimension, Unit, dimension_named, plain, plain_unit, spellings

LONGEST_TEXT = 60
SMALLEST, LARGEST = Fraction(1, 10**12), Fraction(10**12)

VULGAR = {
    "½": "1/2",
    "⅓": "1/3",
    "⅔": "2/3",
    "¼": "1/4",
    "¾": "3/4",
    "⅛": "1/8",
    "⅜": "3/8",
    "⅝": "5/8",
    "⅞": "7/8",
}
_VULGAR = str.maketrans({sign: f" {fraction}" for sign, fraction in VULGAR.items()})

# Digits in groups of three with a space between are how the SI Brochure (5.4.4) writes large numbers.
GROUPED = "[0-9]{1,3}(?: [0-9]{3})+(?![0-9/])(?:\\.[0-9]+)?"
DECIMAL = "(?:[0-9]+(?:\\.[0-9]*)?|\\.[0-9]+)(?:[eE][-+]?[0-9]{1,3}(?![0-9]))?"
FRACTION = "[0-9]+ ?/ ?[0-9]+"
NUMBER = f"(?:[0-9]+(?: |-){FRACTION}|{FRACTION}|{GROUPED}|{DECIMAL})"

_WHOLE = re.compile(f"(?P<sign>[-+]?) ?(?P<number>{NUMBER}) ?(?P<unit>.*)", re.DOTALL)
_MIXED = re.compile("(?:(?P<whole>[0-9]+)[ -])?(?P<above>[0-9]+) ?/ ?(?P<below>[0-9]+)")
_PART = re.compile(f" ?(?P<number>{NUMBER}) ?(?P<unit>[^0-9 ]+)")

# A quantity may be written in two or three units that follow each other down: 6 ft 4 in, 1 h 30 min.
COMPOUNDS: dict[str, tuple[str, ...]] = {"length": ("ft", "in"), "time": ("d", "h", "min", "s")}


def parse(text: str, dimension: str) -> Quantity:
    """Read a quantity of a wanted dimension.

    Parameters
    ----------
    text : a number and a unit of the table; fractions, mixed numbers, feet and inches are understood
    dimension : name of a dimension in `table.DIMENSIONS`

    Returns
    -------
    The SI value, which keeps the text.

    Raises
    ------
    BadQuantity
        The text is not a quantity of that dimension; the message says what was found and what is allowed.

    Example
    -------
    >>> parse("24 kBtu/h", "power") * 1
    7033.7
    >>> parse("1 1/2 in", "length") * 1
    0.0381
    >>> parse("-40 °F", "temperature") * 1
    -40.0
    >>> parse("12 fet", "length")
    Traceback (most recent call last):
    anchorwatt.units.refusal.Refused: found "12 fet", whose unit "fet" is unknown, perhaps "ft"; allowed: ...
    """
    dimension_named(dimension)
    if not isinstance(text, str):
        raise Refused(f"{name_of_kind(text)} without a unit", allowed(dimension))
    if len(text) > LONGEST_TEXT:
        raise Refused(f"{quoted(text)}, a text of {len(text)} characters", allowed(dimension))
    return _quantity(text, dimension)


@lru_cache(maxsize=8192)
def _quantity(text: str, dimension: str) -> Quantity:
    """A text as a quantity, which cannot change: a design that is read again holds mostly the same texts."""
    kind = dimension_named(dimension)
    tidy = plain(text.translate(_VULGAR))
    whole = _WHOLE.fullmatch(tidy)
    if whole is None:
        raise Refused(_why_no_number(text, tidy), allowed(dimension))
    sign = -1 if whole["sign"] == "-" else 1
    name = plain_unit(whole["unit"])
    if name.upper() == "AWG":
        raise Refused(f"{quoted(text)}, which is a wire gauge", allowed(dimension))
    reading = _number(whole["number"], text, dimension)
    unit = spellings(dimension).get(name)
    if unit is None:
        rest = tidy[whole.start("number") :]
        amount = position(rest, dimension) or _compound(rest, text, dimension)
        if amount is None:
            raise Refused(_why_no_unit(text, name, kind), allowed(dimension))
        size, unit = amount
        value = sign * size
    else:
        size = reading * unit.factor
        value = (sign * reading - unit.zero) * unit.factor
    if sign < 0 and unit.symbol[-1] in "NSEW" and unit.symbol.startswith("°"):
        raise Refused(f"{quoted(text)}, with both a minus sign and a hemisphere", allowed(dimension))
    _not_absurd(size, text, dimension)
    return Quantity(_within_nature(float(value), text, kind), text.strip(), dimension, unit.symbol)


def allowed(dimension: str) -> str:
    """Say what may be written for a dimension.

    Example
    -------
    >>> allowed("frequency")
    'a frequency such as "60 Hz", in one of Hz, kHz'
    """
    kind = dimension_named(dimension)
    symbols = ", ".join(unit.symbol for unit in kind.units)
    one_of = "in one of " if len(kind.units) > 1 else "in "
    return f'{kind.phrase} such as "{kind.example}", {one_of}{symbols}'


def _number(number: str, text: str, dimension: str) -> Fraction:
    parts = _MIXED.fullmatch(number)
    if parts is None:
        return Fraction(number.replace(" ", ""))
    if int(parts["below"]) == 0:
        raise Refused(f"{quoted(text)}, a division by zero", allowed(dimension))
    return int(parts["whole"] or "0") + Fraction(int(parts["above"]), int(parts["below"]))


def _compound(tidy: str, text: str, dimension: str) -> tuple[Fraction, Unit] | None:
    order = [spellings(dimension)[symbol] for symbol in COMPOUNDS.get(dimension, ())]
    parts: list[tuple[Fraction, Unit]] = []
    place = 0
    while place < len(tidy):
        part = _PART.match(tidy, place)
        unit = spellings(dimension).get(part["unit"]) if part else None
        if part is None or unit not in order:
            return None
        reading = _number(part["number"], text, dimension)
        if parts:
            above_reading, above = parts[-1]
            if order.index(unit) <= order.index(above) or above_reading.denominator != 1:
                return None
            if reading * unit.factor >= above.factor:
                why = f"where {part[0].strip()} makes a whole {above.symbol}"
                raise Refused(f"{quoted(text)}, {why}", allowed(dimension))
        parts.append((reading, unit))
        place = part.end()
    if not parts:
        return None
    return sum((reading * unit.factor for reading, unit in parts), Fraction(0)), parts[0][1]


def _not_absurd(size: Fraction, text: str, dimension: str) -> None:
    if size != 0 and not SMALLEST <= abs(size) <= LARGEST:
        how = "large" if abs(size) > LARGEST else "small"
        raise Refused(f"{quoted(text)}, which is absurdly {how}", allowed(dimension))


def _within_nature(value: float, text: str, kind: Dimension) -> float:
    if kind.lowest is not None and value < kind.lowest:
        least = f"{kind.lowest:.6g} {kind.si}" if kind.lowest else "zero"
        raise Refused(quoted(text), f"{kind.phrase} not below {least}")
    if kind.highest is not None and value > kind.highest:
        raise Refused(quoted(text), f"{kind.phrase} not above {kind.highest:.6g} {kind.si}")
    return value


def _why_no_number(text: str, tidy: str) -> str:
    if not tidy:
        return "an empty text"
    if re.search("[0-9],[0-9]", tidy):
        return f"{quoted(text)}, where a comma may mean thousands or decimals (write 12 000 or 0.5)"
    return f"{quoted(text)}, which does not begin with a number that can be read"


def _why_no_unit(text: str, name: str, kind: Dimension) -> str:
    if not name:
        return f"{quoted(text)}, a bare number without a unit"
    if "," in name and re.search("[0-9],[0-9]", text):
        return f"{quoted(text)}, where a comma may mean thousands or decimals (write 12 000 or 0.5)"
    if name[0].isdigit():
        return f"{quoted(text)}, which does not begin with a number that can be read"
    others = [other for other in DIMENSIONS.values() if not other.kin and name in spellings(other.name)]
    if others:
        return f"{quoted(text)}, which is {' or '.join(other.phrase for other in others)}"
    lower = {spelling.lower(): unit.symbol for spelling, unit in spellings(kind.name).items()}
    near = difflib.get_close_matches(name.lower(), lower, n=1, cutoff=0.5)
    hint = f', perhaps "{lower[near[0]]}"' if near else ""
    return f"{quoted(text)}, whose unit {quoted(name)} is unknown{hint}"
