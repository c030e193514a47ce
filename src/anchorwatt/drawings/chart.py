"""Charts: scales, round ticks, lines, areas, and labels that stand beside what they name."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

from anchorwatt.drawings.lettering import text_width
from anchorwatt.drawings.sheet import FRAME, GRID, INK, QUIET_INK, Path, Point, Text, line

# Okabe and Ito's palette for colour-blind readers; yellow and black are left out for lines on white.
BLUE, VERMILION, GREEN, PURPLE, ORANGE, SKY = (
    "#0072b2",
    "#d55e00",
    "#009e73",
    "#cc79a7",
    "#e69f00",
    "#56b4e9",
)
COLOURS = (BLUE, VERMILION, GREEN, PURPLE, ORANGE, SKY)

TICK_SIZE = 11.5
LABEL_SIZE = 12.0
_LABEL_GAP = 15.5
_LEADER = 30.0
_DETAIL = 0.25  # of a point: what a line may be simplified by


@dataclass(frozen=True)
class Scale:
    """A straight scale from readings to points of the sheet."""

    low: float
    high: float
    start: float
    end: float

    def __call__(self, reading: float) -> float:
        return self.start + (reading - self.low) / (self.high - self.low) * (self.end - self.start)


@dataclass(frozen=True)
class Series:
    """One line of a chart, in the readings of its scales; a gap where a reading is nan."""

    key: str
    label: str
    times: Sequence[float]
    readings: Sequence[float]
    colour: str
    width: float = 2.0
    dashes: tuple[float, ...] = ()


def round_step(span: float, about: int) -> float:
    """The step of 1, 2 or 5 times a power of ten that cuts a span into no more than about so many pieces.

    Example
    -------
    >>> round_step(12.0, 6), round_step(0.9, 5)
    (2.0, 0.2)
    """
    rough = span / about
    power = 10.0 ** math.floor(math.log10(rough))
    for factor in (1.0, 2.0, 5.0):
        if factor * power >= rough * (1 - 1e-9):
            return factor * power
    return 10.0 * power


def ticks(low: float, high: float, about: int = 5) -> list[float]:
    """Round readings that enclose low to high.

    Example
    -------
    >>> ticks(21.3, 29.8)
    [20.0, 22.0, 24.0, 26.0, 28.0, 30.0]
    """
    step = round_step(max(high - low, 1e-9), about)
    first, last = math.floor(low / step + 1e-9), math.ceil(high / step - 1e-9)
    return [round(count * step, 12) for count in range(first, max(last, first + 1) + 1)]


def hour_ticks(start: float, end: float, about: int = 12) -> list[float]:
    """Whole hours, in s, from start to end: every hour, or every second, third, sixth or twelfth.

    Example
    -------
    >>> [time / 3600 for time in hour_ticks(75_600.0, 93_600.0)]
    [21.0, 22.0, 23.0, 24.0, 25.0, 26.0]
    """
    step = next((hours for hours in (1, 2, 3, 6) if (end - start) / 3600 / hours <= about), 12) * 3600
    first = math.ceil(start / step - 1e-9)
    return [float(step * count) for count in range(first, math.floor(end / step + 1e-9) + 1)]


def spread(wanted: Sequence[float], gap: float, low: float, high: float) -> list[float]:
    """Places for labels: as near to what is wanted as a gap between neighbours and the ends allow.

    Labels that crowd one another move apart as a block about their common middle.

    Example
    -------
    >>> spread([10.0, 12.0, 50.0], 10.0, 0.0, 100.0)
    [6.0, 16.0, 50.0]
    """
    order = sorted(range(len(wanted)), key=lambda index: wanted[index])
    blocks: list[list[int]] = []
    for index in order:
        blocks.append([index])
        while len(blocks) > 1 and _top(blocks[-1], wanted, gap, low, high) < (
            _top(blocks[-2], wanted, gap, low, high) + gap * len(blocks[-2])
        ):
            last = blocks.pop()
            blocks[-1].extend(last)
    places = [0.0] * len(wanted)
    for block in blocks:
        top = _top(block, wanted, gap, low, high)
        for count, index in enumerate(block):
            places[index] = top + gap * count
    return places


def _top(block: list[int], wanted: Sequence[float], gap: float, low: float, high: float) -> float:
    length = gap * (len(block) - 1)
    middle = sum(wanted[index] for index in block) / len(block)
    return max(low, min(middle - length / 2, high - length))


def simplified(points: Sequence[Point], detail: float = _DETAIL) -> list[Point]:
    """Leave out points that lie within `detail` of the line drawn without them (Ramer, Douglas and Peucker).

    Example
    -------
    >>> simplified([(0.0, 0.0), (1.0, 0.1), (2.0, 0.0), (3.0, 5.0)])
    [(0.0, 0.0), (2.0, 0.0), (3.0, 5.0)]
    """
    keep = {0, len(points) - 1}
    open_ends = [(0, len(points) - 1)]
    while open_ends:
        first, last = open_ends.pop()
        (x0, y0), (x1, y1) = points[first], points[last]
        length = math.hypot(x1 - x0, y1 - y0) or 1.0
        farthest, distance = first, detail
        for index in range(first + 1, last):
            x, y = points[index]
            away = abs((x1 - x0) * (y - y0) - (x - x0) * (y1 - y0)) / length
            if away > distance:
                farthest, distance = index, away
        if farthest != first:
            keep.add(farthest)
            open_ends += [(first, farthest), (farthest, last)]
    return [points[index] for index in sorted(keep)]


@dataclass(frozen=True)
class Panel:
    """A chart on a sheet: its two scales."""

    x: Scale
    y: Scale

    def title(self, words: str) -> Text:
        """What is charted and in which unit, above the panel."""
        return Text((self.x.start, self.y.end - 9), words, LABEL_SIZE, bold=True)

    def grid(self, times: Sequence[float], readings: Sequence[float], names: Sequence[str]) -> list[Path | Text]:
        """Grid lines with the readings' names at the left; the lowest reading is the panel's floor."""
        items: list[Path | Text] = [
            line((self.x(time), self.y.start), (self.x(time), self.y.end), GRID) for time in times
        ]
        for reading, name in zip(readings, names, strict=True):
            y = self.y(reading)
            items.append(line((self.x.start, y), (self.x.end, y), GRID))
            items.append(Text((self.x.start - 7, y + 4), name, TICK_SIZE, QUIET_INK, anchor="end"))
        items.append(line((self.x.start, self.y.start), (self.x.end, self.y.start), FRAME))
        return items

    def feet(self, times: Sequence[float], names: Sequence[str]) -> list[Path | Text]:
        """Names of times below the panel."""
        items: list[Path | Text] = []
        for time, name in zip(times, names, strict=True):
            x = self.x(time)
            items.append(line((x, self.y.start), (x, self.y.start + 4), FRAME))
            items.append(Text((x, self.y.start + 17), name, TICK_SIZE, QUIET_INK, anchor="middle"))
        return items

    def curve(self, series: Series) -> list[Path]:
        """The line of a series, in pieces where readings are missing."""
        return [
            Path(tuple(simplified(piece)), series.colour, series.width, series.dashes, key=series.key)
            for piece in self._pieces(series)
        ]

    def area(self, series: Series, opacity: float) -> list[Path]:
        """The area between a series and the panel's floor."""
        filled = []
        for piece in self._pieces(series):
            points = ((piece[0][0], self.y.start), *simplified(piece), (piece[-1][0], self.y.start))
            filled.append(Path(points, fill=series.colour, fill_opacity=opacity))
        return filled

    def labels(self, series: Sequence[Series]) -> list[Path | Text]:
        """Each series' name at the right, led to the end of its line, none over another."""
        named = [(one, end) for one in series if (end := self._end(one)) is not None]
        places = spread([end for _, end in named], _LABEL_GAP, self.y.end + 4, self.y.start - 2)
        items: list[Path | Text] = []
        for (one, end), place in zip(named, places, strict=True):
            right = self.x.end
            led = ((right + 2, end), (right + 10, place), (right + _LEADER - 5, place))
            items.append(Path(led, one.colour, min(one.width, 2.0), one.dashes))
            items.append(Text((right + _LEADER, place + 4), one.label, LABEL_SIZE, key=one.key))
        return items

    def _pieces(self, series: Series) -> list[list[Point]]:
        pieces: list[list[Point]] = [[]]
        for time, reading in zip(series.times, series.readings, strict=True):
            if math.isnan(reading):
                pieces.append([])
            else:
                pieces[-1].append((self.x(time), self.y(reading)))
        return [piece for piece in pieces if len(piece) > 1]

    def _end(self, series: Series) -> float | None:
        known = [reading for reading in series.readings if not math.isnan(reading)]
        return self.y(known[-1]) if known else None


def label_height(count: int) -> float:
    """Points of height that a panel needs for so many labels."""
    return _LABEL_GAP * count + 6


def label_room(labels: Sequence[str]) -> float:
    """Points that labels need to the right of a panel."""
    return _LEADER + max(text_width(label, LABEL_SIZE) for label in labels)


__all__ = ["COLOURS", "INK", "Panel", "Scale", "Series", "hour_ticks", "label_room", "ticks"]
