"""The cabins in plan at one moment: how warm and how damp each is, cooled or not, and who is in it."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from anchorwatt.assessment.cabin_plan import BoatMoment, CabinMoment, boat_at
from anchorwatt.drawings.cabin_shapes import Floor, layers
from anchorwatt.drawings.chart import BLUE, ticks
from anchorwatt.drawings.hull_outline import ends
from anchorwatt.drawings.lettering import clipped, text_width, wrapped
from anchorwatt.drawings.plan_view import View, hulls_from_above, scale_bar
from anchorwatt.drawings.ramp import ramp
from anchorwatt.drawings.sheet import FRAME, INK, QUIET_INK, Path, Sheet, Text, line, rectangle
from anchorwatt.drawings.svg import svg
from anchorwatt.drawings.title_block import EDGE, SMALL, SUBTITLE, foot_block, title_block
from anchorwatt.units import System, convert, show, show_clock, unit_for

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.design.specification import Specification

WIDTH = 900.0
COLDEST, HOTTEST = 20.0, {"night": 32.0, "day": 40.0}
"""°C between which colours change: the same for all moments of a run and for all boats, so that pictures compare."""

_SIDE_ROOM = 66.0  # left of the hull, for its words
_HIGHEST = 320.0  # points of one plan
_NAME, _READING, _LITTLE = 12.0, 13.5, 11.0
_LEADING = 1.25
_PAD = 3.5
_SHORTEST_NAME = 4  # letters and an ellipsis below which a name is not cut
_SLIM = (1.0, 0.85, 0.7, 0.55, 0.4)  # of a cabin's length that its words may take, where that leaves more width
_DASHED = (5.0, 3.0)
_BANDS = 40
_BAR_WIDTH, _BAR_HEIGHT = 240.0, 12.0


def cabin_plan_picture(assessment: Assessment, row: int, system: System, run: Literal["night", "day"] = "night") -> str:
    """Draw the cabins at one minute.

    Parameters
    ----------
    assessment : of the design
    row : of the run's table, from 0
    system : "si" or "us", the units of the figures
    run : which table

    Returns
    -------
    The text of an SVG file. A cabin's shape has `data-key` "cabins.NAME", its key in the design file.

    Raises
    ------
    OutOfRange
        the run has no such row.
    """
    table = assessment.night if run == "night" else assessment.day
    return svg(_sheet(assessment, boat_at(assessment.specification, table, row), system, HOTTEST[run]))


@dataclass(frozen=True)
class _Line:
    words: str
    size: float
    bold: bool = False


@dataclass(frozen=True)
class _Room:
    """Where words may stand in a cabin."""

    middle: tuple[float, float]
    width: float
    height: float


def _sheet(assessment: Assessment, moment: BoatMoment, system: System, hottest: float) -> Sheet:
    boat = assessment.specification
    finding = _finding(moment, system)
    items, y = title_block(finding, _about(boat, moment, system), WIDTH)
    stern, bow = ends(boat)
    scale = min((WIDTH - 2 * EDGE - _SIDE_ROOM) / (bow - stern), _HIGHEST / boat.beam)
    left = EDGE + _SIDE_ROOM + 0.5 * (WIDTH - 2 * EDGE - _SIDE_ROOM - scale * (bow - stern)) - scale * stern
    y += 22.0
    items += _legend(y, system, hottest)
    y += 34.0
    unnamed: list[CabinMoment] = []
    for heading, floors in _plans(boat, moment):
        y += 26.0
        items.append(Text((EDGE, y), heading, SUBTITLE, bold=True))
        y += 10.0
        view = View(scale, (left, y + 0.5 * scale * boat.beam), 1.0)
        items += hulls_from_above(boat, view)
        for floor in floors:
            items.append(_shape(floor, view, system, hottest))
        for floor in floors:
            placed = _words(floor, view, system)
            if placed is None:
                unnamed.append(floor.cabin)
                placed = _number(floor, view, len(unnamed), system)
            items += placed
        y += scale * boat.beam
    y += 22.0
    items += scale_bar(boat.length, scale, (left + scale * stern, y), system)
    for number, cabin in enumerate(unnamed, 1):
        y += 17.0
        told = clipped(f"{number}  {_told(cabin, system)}", _LITTLE, WIDTH - 2 * EDGE)
        items.append(Text((EDGE, y), told, _LITTLE))
    for words in wrapped(_drawn_how(moment, boat, system, hottest), SMALL, WIDTH - 2 * EDGE):
        y += SMALL * 1.5
        items.append(Text((EDGE, y), words, SMALL, QUIET_INK))
    below, height = foot_block(assessment.cautions, y + 8.0, WIDTH)
    return Sheet(WIDTH, height, finding, _description(moment, system), (*items, *below))


def _finding(moment: BoatMoment, system: System) -> str:
    warmest, cooled, at = moment.warmest, moment.warmest_cooled, show_clock(moment.clock)
    if warmest is None:
        return f"At {at} there is nothing to cool: this design has no cabins"
    words = f"At {at} the warmest cabin is {_name(warmest)}, {_warmth(warmest.air, system)}"
    if not math.isnan(warmest.cooled_to):
        return f"{words}, cooled to {_warmth(warmest.cooled_to, system)}"
    if cooled is None:
        return f"{words}; none is cooled"
    return f"{words}, not cooled; the warmest cooled one is {_name(cooled)}, {_warmth(cooled.air, system)}"


def _name(cabin: CabinMoment) -> str:
    return clipped(cabin.name, SUBTITLE, 330.0)


def _warmth(value: float, system: System) -> str:
    return show(value, "temperature", system).replace(" ", "\u00a0")


def _about(boat: Specification, moment: BoatMoment, system: System) -> str:
    name = clipped(boat.name, SUBTITLE, 400.0)
    return (
        f"{name} · air outdoors {_warmth(moment.outdoors, system)}, seawater {_warmth(moment.sea, system)} · "
        "air temperature and relative humidity in each cabin"
    )


def _plans(boat: Specification, moment: BoatMoment) -> list[tuple[str, list[Floor]]]:
    """A plan a deck, the upper one first; more of a deck where cabins lie over one another."""
    found = []
    for deck, heading in (("main", "Main deck"), ("below", "Below deck")):
        for number, floors in enumerate(layers(boat, [cabin for cabin in moment.cabins if cabin.deck == deck])):
            found.append((heading if not number else f"{heading}, cabins over or under those just shown", floors))
    return found or [("Plan", [])]


def _shape(floor: Floor, view: View, system: System, hottest: float) -> Path:
    cabin = floor.cabin
    cooled = not math.isnan(cabin.cooled_to)
    outline = view.shape(floor.outline)
    return Path(
        # Closed by its first corner again, so that dashes run all round.
        (*outline, outline[0]),
        BLUE if cooled else QUIET_INK,
        2.6 if cooled else 1.1,
        () if cooled else _DASHED,
        fill=ramp((cabin.air - COLDEST) / (hottest - COLDEST)),
        key=f"cabins.{cabin.name}",
        told=_told(cabin, system),
    )


def _told(cabin: CabinMoment, system: System) -> str:
    return (
        f"{cabin.name}: {show(cabin.air, 'temperature', system)}, {show(cabin.humidity, 'share', system)} humidity, "
        f"{_state(cabin, system)}, {_people(cabin)}; floor {show(cabin.floor_area, 'area', system)}"
    )


def _state(cabin: CabinMoment, system: System) -> str:
    if not math.isnan(cabin.cooled_to):
        return f"cooled to {show(cabin.cooled_to, 'temperature', system)}"
    if not math.isnan(cabin.heated_to):
        return f"heated to {show(cabin.heated_to, 'temperature', system)}"
    return "not cooled"


def _people(cabin: CabinMoment) -> str:
    if cabin.people == 0.0:
        return "nobody"
    return f"{cabin.people:g} {'person' if cabin.people == 1.0 else 'people'}"


def _words(floor: Floor, view: View, system: System) -> list[Path | Text] | None:
    """What is written in a cabin; None where it does not fit."""
    cabin = floor.cabin
    air, damp = show(cabin.air, "temperature", system), show(cabin.humidity, "share", system)
    state, people = _state(cabin, system), _people(cabin)
    both = [_Line(f"{air} · {damp}", _READING)]
    wide = [*both, _Line(f"{state} · {people}", _LITTLE)]
    high = [*both, _Line(state, _LITTLE), _Line(people, _LITTLE)]
    slim = [_Line(air, _READING), _Line(damp, _READING), *high[1:]]
    rooms = _rooms(floor, view)
    for most in (1, 2):
        for lines in (wide, high, slim):
            for room in rooms:
                shown = [*_named(cabin.name, room.width, most), *lines]
                if len(shown) - len(lines) <= most and _fits(shown, room):
                    return _set(shown, room)
    for lines in (wide, high, slim):
        for room in rooms:
            name = clipped(cabin.name, _NAME, room.width, bold=True)
            if len(name) > _SHORTEST_NAME and _fits([_Line(name, _NAME, True), *lines], room):
                return _set([_Line(name, _NAME, True), *lines], room)
    return None


def _named(name: str, width: float, most: int) -> list[_Line]:
    """A cabin's name, on as many lines as it takes where it may take more than one."""
    return [
        _Line(words, _NAME, True) for words in (wrapped(name, _NAME, max(width, 1.0), True) if most > 1 else [name])
    ]


def _fits(lines: Sequence[_Line], room: _Room) -> bool:
    return _height(lines) <= room.height and all(
        text_width(one.words, one.size, one.bold) <= room.width for one in lines
    )


def _height(lines: Sequence[_Line]) -> float:
    return sum(one.size for one in lines) * _LEADING


def _rooms(floor: Floor, view: View) -> list[_Room]:
    """Rectangles in a floor: about its middle, then toward either end where the hull leaves more width there."""
    return [_room(floor, view, share, place) for place in (0.5, 0.0, 1.0) for share in _SLIM]


def _room(floor: Floor, view: View, share: float, place: float = 0.5) -> _Room:
    """The rectangle that takes a share of a floor's length, from its aft end (place 0) to its fore end (1)."""
    aft, fore = floor.stations[0], floor.stations[-1]
    half = 0.5 * share * (fore - aft)
    middle = aft + half + place * (fore - aft - 2.0 * half)
    across = [floor.across(middle + half * part / 8.0) for part in range(-8, 9)]
    port, star = max(one for one, _ in across), min(other for _, other in across)
    x, y = view(middle, 0.5 * (port + star))
    return _Room((x, y), 2.0 * half * view.scale - 2.0 * _PAD, (star - port) * view.scale - 2.0 * _PAD)


def _set(lines: Sequence[_Line], room: _Room) -> list[Path | Text]:
    x, y = room.middle
    y -= 0.5 * _height(lines)
    items: list[Path | Text] = []
    for one in lines:
        y += one.size * _LEADING
        items.append(Text((x, y - 0.32 * one.size), one.words, one.size, INK, one.bold, "middle"))
    return items


def _number(floor: Floor, view: View, number: int, system: System) -> list[Path | Text]:
    """A number by which the cabin is found in the list below, with its temperature where there is room."""
    air = show(floor.cabin.air, "temperature", system)
    here = _Line(f"{number}", _LITTLE, True)
    both = _Line(f"{number} · {air}", _LITTLE, True)
    for lines in ([here, _Line(air, _READING)], [both], [here]):
        for room in _rooms(floor, view):
            if _fits(lines, _Room(room.middle, room.width + _PAD, room.height + _PAD)):
                return _set(lines, room)
    return []


def _legend(y: float, system: System, hottest: float) -> list[Path | Text]:
    """The ramp with its scale, and what the outlines mean."""
    left, right = WIDTH - EDGE - _BAR_WIDTH - 16.0, WIDTH - EDGE - 16.0
    unit = unit_for("temperature", system)
    items: list[Path | Text] = []
    step = (right - left) / _BANDS
    for number in range(_BANDS):
        fill = ramp((number + 0.5) / _BANDS)
        items.append(rectangle(left + number * step, y, left + (number + 1) * step, y + _BAR_HEIGHT, fill))
    low, high = (convert(value, unit, "temperature") for value in (COLDEST, hottest))
    for reading in ticks(low, high, 6):
        if low <= reading <= high:
            x = left + (reading - low) / (high - low) * (right - left)
            items.append(line((x, y + _BAR_HEIGHT), (x, y + _BAR_HEIGHT + 4.0), FRAME))
            items.append(Text((x, y + _BAR_HEIGHT + 16.0), f"{reading:g}", SMALL, QUIET_INK, anchor="middle"))
    items.append(Text((left - 8.0, y + 10.0), f"air, {unit}", SMALL, QUIET_INK, anchor="end"))
    middle = y + 0.5 * _BAR_HEIGHT
    items.append(line((EDGE, middle), (EDGE + 28.0, middle), BLUE, 2.6))
    items.append(Text((EDGE + 34.0, y + 10.0), "cooled at this time", SMALL, QUIET_INK))
    items.append(line((EDGE + 170.0, middle), (EDGE + 198.0, middle), QUIET_INK, 1.1, _DASHED))
    items.append(Text((EDGE + 204.0, y + 10.0), "not cooled", SMALL, QUIET_INK))
    return items


def _drawn_how(moment: BoatMoment, boat: Specification, system: System, hottest: float) -> str:
    words = "Bow to the right. The hull is sketched from its length, beam and waterplane; floors are drawn to scale."
    guessed = [cabin.name for cabin in moment.cabins if cabin.estimated]
    if moment.cabins and len(guessed) == len(moment.cabins):
        words += " Where cabins lie and how long they are is estimated: the design file does not say it."
    elif guessed:
        names = ", ".join(clipped(name, SMALL, 150.0) for name in guessed)
        words += f" Place or length estimated, the design file does not say it: {names}."
    small = [floor.cabin.name for _, floors in _plans(boat, moment) for floor in floors if not floor.whole]
    if small:
        names = ", ".join(clipped(name, SMALL, 150.0) for name in small)
        words += f" Drawn smaller than their floor, since the sketched hull has no room for it there: {names}."
    beyond = [cabin for cabin in moment.cabins if not COLDEST <= cabin.air <= hottest]
    if beyond:
        words += (
            f" Colours end at {show(COLDEST, 'temperature', system)} and {show(hottest, 'temperature', system)}: "
            "what is colder or warmer has the colour of that end."
        )
    return words


def _description(moment: BoatMoment, system: System) -> str:
    told = "; ".join(_told(cabin, system) for cabin in moment.cabins) or "no cabins"
    return f"Plan of the boat, bow to the right, with each cabin coloured by its air temperature: {told}."
