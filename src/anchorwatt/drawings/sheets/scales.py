"""Scales that a drawing is made to: the steps that a scale rule has, in each system."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.drawings.sheet import Point
from anchorwatt.units import System


@dataclass(frozen=True)
class Scale:
    """How much smaller the drawing is than the boat."""

    ratio: float  # mm of the boat for 1 mm of paper
    name: str

    @property
    def per_metre(self) -> float:
        """mm of paper for a metre."""
        return 1000.0 / self.ratio


def _inches(name: str, ratio: int) -> Scale:
    return Scale(float(ratio), f"{name} in = 1 ft (1:{ratio})")


BOAT: dict[System, tuple[Scale, ...]] = {
    "si": tuple(Scale(float(one), f"1:{one}") for one in (20, 25, 30, 40, 50, 75, 100, 150, 200, 500)),
    "us": (
        *(_inches("1/2", 24), _inches("3/8", 32), _inches("1/4", 48), _inches("3/16", 64), _inches("1/8", 96)),
        *(_inches("3/32", 128), _inches("1/16", 192), _inches("1/32", 384)),
    ),
}
"""Largest first. The last two or three are for ships: no boat of the size that this program is for needs them."""


def largest(scales: tuple[Scale, ...], room: Point, needed: Point) -> Scale:
    """The largest scale at which what is needed goes into a room; the smallest of them where none does.

    Parameters
    ----------
    room : mm of width and height
    needed : m of width and height

    Example
    -------
    >>> largest(BOAT["si"], (382.0, 233.0), (14.0, 9.0)).name, largest(BOAT["us"], (382.0, 233.0), (14.0, 9.0)).name
    ('1:40', '1/4 in = 1 ft (1:48)')
    """

    def fits(scale: Scale) -> bool:
        return all(long * scale.per_metre <= mm + 1e-9 for long, mm in zip(needed, room, strict=True))

    return next((one for one in scales if fits(one)), scales[-1])
