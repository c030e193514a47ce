"""Moving a part: its place in the file follows a hand that drags it across a picture."""

from __future__ import annotations

import math
from typing import Any

from anchorwatt.design.design import Design
from anchorwatt.design.editing import edit, edit_all
from anchorwatt.errors import BadDesign
from anchorwatt.units import Quantity, convert

SEEN = {"plan": ("forward", "starboard", 1.0), "profile": ("forward", "up", -1.0)}
"""What a picture shows to the right and what down it, and whether down is more or less of that."""


def moved(design: Design, key: str, view: str, at: dict[str, float], right: float, down: float) -> Design:
    """A design with one part put elsewhere.

    Parameters
    ----------
    key : of its place: “places.bank”
    view : "plan" or "profile"
    at : m, its place as it is: forward, starboard, up
    right, down : m, by which it is moved across the picture

    Raises
    ------
    BadDesign
        No such view, no figures, or a place out of the boat; the design is unchanged.

    Example
    -------
    >>> from anchorwatt import design
    >>> trawler = design.parse(design.starter_text("trawler-14m"))
    >>> at = {"forward": 5.18, "starboard": -0.30, "up": -0.30}
    >>> moved(trawler, "places.bank", "plan", at, 1.0, 0.6).places["bank"].forward.text
    '20.28 ft'
    """
    above, _, name = key.partition(".")
    figures = (*at.values(), right, down)
    if above != "places" or not name or view not in SEEN or not all(math.isfinite(one) for one in figures):
        raise BadDesign((design.document.problem(("places",), f"“{key}” in the {view}", "a part of the picture"),))
    first, second, sign = SEEN[view]
    there = design.places.get(name)
    values = {first: at[first] + right, second: at[second] + sign * down}
    typed = {one: _typed(value, getattr(there, one, None), design) for one, value in values.items()}
    if there is None:
        return edit(design, key, typed)
    return edit_all(design, {f"{key}.{one}": text for one, text in typed.items()})


def _typed(value: float, before: Any, design: Design) -> str:
    """A length as the writer writes lengths."""
    unit = before.unit if isinstance(before, Quantity) else design.boat.length.unit
    unit = "ft" if unit in ("in", "ft") else "m"
    return f"{convert(value, unit, 'length'):.2f} {unit}"
