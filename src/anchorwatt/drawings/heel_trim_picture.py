"""Heel and trim as one picture: the masses over a section of the hull and over its profile."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING

from anchorwatt.drawings.chart import BLUE, SKY, VERMILION, spread
from anchorwatt.drawings.hull_outline import profile
from anchorwatt.drawings.lettering import text_width, wrapped
from anchorwatt.drawings.sheet import FRAME, INK, QUIET_INK, Path, Point, Sheet, Text, line
from anchorwatt.drawings.svg import svg
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.design.specification import Specification
    from anchorwatt.sizing.weight import Carried

WIDTH = 900.0
_EDGE = 14.0
_TITLE, _SUBTITLE, _SMALL = 19.0, 12.5, 11.0
_GAP = 14.0
_SECTION, _PROFILE = 340.0, 250.0
_LABELS = 190.0
_NAMED = 9
_SIDES = 40
_SHOWN_HEEL = math.radians(12.0)
_SHOWN_TRIM = math.radians(4.0)
_ROUND = (1.0, 2.0, 5.0, 10.0, 20.0, 50.0)
_DASHED = (6.0, 3.0)
_HULL = "#f2f4f6"
_UNSEEN = 5e-4  # rad and m that are told as none

Metres = tuple[float, float]


def heel_trim_picture(assessment: Assessment, system: System) -> str:
    """Draw how the boat floats with its installation.

    Parameters
    ----------
    assessment : of the design
    system : "si" or "us", the units of the figures

    Returns
    -------
    The text of an SVG file.
    """
    return svg(_sheet(assessment, system))


def exaggeration(angle: float, largest: float) -> float:
    """How many times an angle is drawn: a round number that makes it plain and keeps it below the largest.

    Example
    -------
    >>> import math
    >>> exaggeration(math.radians(0.4), math.radians(12.0)), exaggeration(0.0, 0.1), exaggeration(1.0, 0.1)
    (20.0, 1.0, 1.0)
    """
    if angle == 0.0 or math.isnan(angle):
        return 1.0
    return max((times for times in _ROUND if abs(angle) * times <= largest), default=1.0)


def _sheet(assessment: Assessment, system: System) -> Sheet:
    story, boat = assessment.weight, assessment.specification
    floats = story.figures.floats
    finding = story.finding(system)
    items: list[Path | Text] = []
    y = _EDGE
    for words in wrapped(finding, _TITLE, WIDTH - 2 * _EDGE, bold=True):
        y += _TITLE * 1.25
        items.append(Text((_EDGE, y), words, _TITLE, bold=True))
    about = (
        f"{boat.name} · discs: what is brought aboard, by mass, grey where nobody said its place; rings: what is taken "
        f"ashore; hull sketched from its proportions · {story.level(system)}"
    )
    for words in wrapped(about, _SUBTITLE, WIDTH - 2 * _EDGE):
        y += _SUBTITLE * 1.45
        items.append(Text((_EDGE, y), words, _SUBTITLE, QUIET_INK))

    heel = floats.heel if abs(floats.heel) >= _UNSEEN else 0.0  # and none where it is not known
    times = exaggeration(heel, _SHOWN_HEEL)
    y += 34.0
    head = f"Section, seen from astern: {story.heel(system)}" + (f", drawn {times:g} times" if times > 1.0 else "")
    items.append(Text((_EDGE, y), head, _SUBTITLE, bold=True))
    y += _GAP
    items += _section(boat, story.figures.carried, heel * times, y, y + _SECTION)
    y += _SECTION

    slope = math.atan(floats.trim / boat.waterline) if abs(floats.trim) >= _UNSEEN else 0.0
    times = exaggeration(slope, _SHOWN_TRIM)
    y += 34.0
    head = f"Profile, bow to the right: {story.trim(system)}" + (f", drawn {times:g} times" if times > 1.0 else "")
    items.append(Text((_EDGE, y), head, _SUBTITLE, bold=True))
    y += _GAP
    items += _profile(boat, story.figures.carried, slope * times, y, y + _PROFILE)
    y += _PROFILE + 8.0
    for words in wrapped(" ".join((*story.cautions, *assessment.cautions)), _SMALL, WIDTH - 2 * _EDGE):
        y += _SMALL * 1.4
        items.append(Text((_EDGE, y), words, _SMALL, QUIET_INK))
    return Sheet(WIDTH, y + _EDGE, finding, _description(assessment, system), tuple(items))


class _View:
    """A view of the boat: metres about a point of the waterline, turned, onto a frame of the sheet that it fills."""

    def __init__(self, shown: Sequence[Metres], angle: float, room: float, top: float, foot: float) -> None:
        self.angle = angle
        turned = [self._turned(*point) for point in shown]
        left, right = min(x for x, _ in turned), max(x for x, _ in turned)
        low, high = min(y for _, y in turned), max(y for _, y in turned)
        self.scale = min((foot - top) / (high - low), room / (right - left))
        self.middle = (0.5 * WIDTH - 0.5 * self.scale * (left + right), 0.5 * (top + foot + self.scale * (low + high)))

    def _turned(self, across: float, up: float) -> Metres:
        """Turned clockwise about the point."""
        c, s = math.cos(self.angle), math.sin(self.angle)
        return across * c + up * s, up * c - across * s

    def __call__(self, across: float, up: float) -> Point:
        """Metres to the right of the point and over the waterline."""
        x, y = self._turned(across, up)
        return self.middle[0] + self.scale * x, self.middle[1] - self.scale * y

    def shape(self, points: Sequence[Metres], key: str = "") -> Path:
        """An outline of the boat."""
        return Path(tuple(self(*point) for point in points), FRAME, 1.5, fill=_HULL, fill_opacity=0.7, key=key)


def _section(
    boat: Specification, carried: Sequence[Carried], angle: float, top: float, foot: float
) -> list[Path | Text]:
    apart = 0.5 * (boat.beam - boat.hull_beam)
    outlines = [_hull_section(boat, middle) for middle in ((0.0,) if boat.hulls == 1 else (-apart, apart))]
    masses = [(one.position.starboard, one.position.up) for one in carried]
    shown = [*(point for outline in outlines for point in outline), *_rims(carried, masses)]
    view = _View(shown, angle, WIDTH - 2 * (_EDGE + _LABELS), top, foot - 20.0)
    water = view.middle[1]
    items: list[Path | Text] = [view.shape(outline, "hull") for outline in outlines]
    if boat.hulls > 1:
        deck, inner = 0.08 * boat.length, 0.5 * boat.beam - boat.hull_beam
        items.append(view.shape([(-inner, deck), (inner, deck), (inner, 0.55 * deck), (-inner, 0.55 * deck)]))
    left, right = _EDGE + _LABELS, WIDTH - _EDGE - _LABELS
    items += _water(water, foot, left, right)
    upright = [up for _, up in shown]
    items.append(Path((view(0.0, min(upright)), view(0.0, max(upright))), QUIET_INK, 1.0, _DASHED))
    items.append(Text((left + 4.0, foot - 5.0), "port", _SMALL, QUIET_INK))
    items.append(Text((right - 4.0, foot - 5.0), "starboard", _SMALL, QUIET_INK, anchor="end"))
    places = [view(*mass) for mass in masses]
    return items + _discs(carried, places, view.scale) + _labels(carried, places, top, foot)


def _profile(
    boat: Specification, carried: Sequence[Carried], angle: float, top: float, foot: float
) -> list[Path | Text]:
    outline = [(along - boat.flotation, up) for along, up in profile(boat)]
    masses = [(one.position.forward - boat.flotation, one.position.up) for one in carried]
    view = _View([*outline, *_rims(carried, masses)], angle, WIDTH - 2 * _EDGE - 40.0, top, foot - 24.0)
    x, water = view.middle
    items: list[Path | Text] = [view.shape(outline, "hull"), *_water(water, foot, _EDGE, WIDTH - _EDGE)]
    items.append(Path(((x, water - 4.0), (x - 5.0, water + 5.0), (x + 5.0, water + 5.0)), INK, 1.0, fill=INK))
    items.append(Text((x, foot - 5.0), "turns about its centre of flotation", _SMALL, QUIET_INK, anchor="middle"))
    items.append(Path(((x, water + 6.0), (x, foot - 17.0)), QUIET_INK, 1.0, (2.0, 3.0)))
    places = [view(*mass) for mass in masses]
    return items + _discs(carried, places, view.scale)


def _rims(carried: Sequence[Carried], masses: Sequence[Metres]) -> list[Metres]:
    """Corners round each disc, that a view must show."""
    return [
        (x + sign * _radius(one), y + sign * _radius(one))
        for one, (x, y) in zip(carried, masses, strict=True)
        for sign in (-1.0, 1.0)
    ]


def _hull_section(boat: Specification, middle: float) -> list[Metres]:
    half, free = 0.5 * boat.hull_beam, 0.1 * boat.length
    right = [
        (half, free),
        (0.93 * half, 0.0),
        (0.8 * half, -0.55 * boat.draught),
        (0.45 * half, -0.9 * boat.draught),
        (0.0, -boat.draught),
    ]
    left = [(-x, y) for x, y in reversed(right[:-1])]
    return [(middle + x, y) for x, y in (*right, *left)]


def _water(level: float, foot: float, left: float, right: float) -> list[Path | Text]:
    sea = ((left, level), (right, level), (right, foot), (left, foot))
    return [Path(sea, fill=SKY, fill_opacity=0.14), line((left, level), (right, level), BLUE, 1.2)]


def _radius(one: Carried) -> float:
    """m: a disc whose area goes with the mass."""
    return 0.03 * math.sqrt(abs(one.mass) / 3.0) + 0.02


def _discs(carried: Sequence[Carried], places: Sequence[Point], scale: float) -> list[Path | Text]:
    items: list[Path | Text] = []
    for one, (x, y) in zip(carried, places, strict=True):
        radius = max(scale * _radius(one), 2.5)
        ring = tuple(
            (x + radius * math.cos(2 * math.pi * n / _SIDES), y + radius * math.sin(2 * math.pi * n / _SIDES))
            for n in range(_SIDES)
        )
        if one.mass < 0.0:
            items.append(Path((*ring, ring[0]), VERMILION, 1.6, (4.0, 3.0), key=one.name))
        else:
            fill = BLUE if one.placed else FRAME
            items.append(Path(ring, "#ffffff", 0.8, fill=fill, fill_opacity=0.75, key=one.tag))
    return items


def _labels(carried: Sequence[Carried], places: Sequence[Point], top: float, foot: float) -> list[Path | Text]:
    """The heaviest masses by name at the two sides, each led to its disc."""
    named = list(zip(carried, places, strict=True))[:_NAMED]
    middle = 0.5 * WIDTH
    items: list[Path | Text] = []
    for left in (True, False):
        side = sorted((pair for pair in named if (pair[1][0] < middle) is left), key=lambda pair: pair[1][1])
        heights = spread([point[1] for _, point in side], 16.0, top + 8.0, foot - 6.0)
        edge = _EDGE if left else WIDTH - _EDGE
        for (one, point), height in zip(side, heights, strict=True):
            words = _short(one)
            end = edge + (text_width(words, _SMALL) + 4.0) * (1.0 if left else -1.0)
            items.append(Path(((end, height - 3.5), point), FRAME, 0.8))
            items.append(Text((edge, height), words, _SMALL, anchor="start" if left else "end"))
    return items


def _short(one: Carried) -> str:
    words = f"{one.tag} {one.name}".strip()
    while text_width(words, _SMALL) > _LABELS and " " in words:
        words = words.rsplit(" ", 1)[0]
    return words


def _description(assessment: Assessment, system: System) -> str:
    story = assessment.weight
    parts = "; ".join(
        f"{one.name}, {show(abs(one.mass), 'mass', system)}{' taken out' if one.mass < 0.0 else ''}, "
        f"{show(abs(one.position.starboard), 'length', system)} to "
        f"{'starboard' if one.position.starboard >= 0.0 else 'port'}"
        for one in story.figures.carried[:_NAMED]
    )
    return (
        f"A section of the hull from astern ({story.heel(system)}) and its profile ({story.trim(system)}), with each "
        f"mass as a disc at its place. The heaviest: {parts}."
    )
