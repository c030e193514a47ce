"""What the page of fit shows: each space, each part in it, by how much it misses, and where it would go."""

from __future__ import annotations

import math
from dataclasses import dataclass

from anchorwatt.design.specification import Item
from anchorwatt.sizing.fit import STAY, Fit, PartFit, Place, SpaceFit, more_room, places_for
from anchorwatt.sizing.packing import HAND, PERSON, REACH
from anchorwatt.sizing.space_heat import UNCOUNTED
from anchorwatt.units import System, convert, show, show_clock

CAUTIONS = (
    (
        "Sizes in the generic catalogue are invented: measure the part, its plugs and the bend of its cables, and the "
        "way to the space, before you cut or order."
    ),
    (
        "A space for lithium batteries, or for what makes sparks beside fuel, gas or lead-acid batteries, has rules of "
        "its own: the maker's instructions, ABYC E-13 or ISO/TS 23625, and a certified person decide. Room and "
        "temperature are not all that they ask."
    ),
)

AXES = ("longer", "wider", "higher")


@dataclass(frozen=True)
class PartAnswer:
    """A part in its space, and where else it would go."""

    fit: PartFit
    space: SpaceFit
    others: tuple[Place, ...]

    @property
    def verdict(self) -> str:
        """In one word or two."""
        part = self.fit
        if not part.sized:
            return "size unknown"
        if not part.good:
            return "no"
        return "yes, derated" if part.spare < 0.0 else "yes"

    def misses(self, system: System) -> tuple[str, ...]:
        """What does not hold, each with by how much."""
        part, told = self.fit, []
        if not part.sized:
            return ("its size is not in the catalogue: nothing but heat can be told",)
        if part.through < 0.0:
            told.append(f"the opening is {small(-part.through, system)} too small")
        if part.alone < 0.0:
            told.append(f"by itself it is {small(-part.alone, system)} too large for the space, clearance kept")
        elif not part.alone_found:
            told.append(f"the empty space does not hold {part.item.count} of them")
        elif not part.together:
            told.append("no room beside its neighbours")
        if part.together and not part.serviced:
            told.append(
                "its neighbours are in the way of its service side"
                if part.alone_serviced
                else "its service side cannot be reached, not even by itself"
            )
        if part.spare < 0.0:
            told.append(self._warm(system))
        return tuple(told)

    def _warm(self, system: System) -> str:
        part, heat = self.fit, self.space.heat
        if math.isinf(part.air):
            words = "nothing carries its heat away"
        else:
            what = "its cells to be charged" if part.item.kind == "battery_module" else "its full rating"
            words = f"{show(-part.spare, 'temperature difference', system)} too warm for {what}"
        if not math.isnan(part.kept):
            words += f": it gives {show(part.kept, 'share', system)}, {show(part.asked, 'share', system)} is asked"
        airflow = heat.airflow_for(self.space.space, part.limit)
        if math.isinf(airflow):
            return f"{words}; no airflow helps, its compartment is at {show(heat.around, 'temperature', system)}"
        return f"{words}; {show(airflow, 'volume flow', system)} of air would do"


@dataclass(frozen=True)
class SpaceAnswer:
    """A space, and what it lacks."""

    fit: SpaceFit
    compartment: str
    growth: tuple[int, float] | None  # axis and m by which it would have to grow; None = not needed, or none found

    def room(self, system: System) -> str:
        """Whether its parts find room, in words."""
        found = self.fit
        filled = f"{show(found.share, 'share', system)} filled"
        if not found.parts:
            return "empty"
        if not found.sized:
            return f"a size is unknown; {filled} by the rest"
        if found.arrangement is not None:
            return f"an arrangement is found; {filled}"
        known = "there is no arrangement" if found.proved else "no arrangement found, which is no proof"
        if self.growth is None:
            return f"{known}; {filled}"
        axis, more = self.growth
        return f"{known}; {filled}; {small(more, system)} {AXES[axis]} it would hold them"

    def warmth(self, system: System) -> str:
        """How warm it gets, in words."""
        heat = self.fit.heat
        if math.isnan(heat.air):
            return "its compartment is not in the file: warmth cannot be told"
        around = show(heat.around, "temperature", system)
        if not heat.heat:
            return f"{around}, as {self.compartment}, at {show_clock(heat.at)}; no counted heat then"
        if math.isinf(heat.air):
            return f"{show(heat.heat, 'power', system)} and no way out for it: neither air nor walls"
        return (
            f"{show(heat.air, 'temperature', system)} in its hottest hour, to {show_clock(heat.at)}: "
            f"{show(heat.heat, 'power', system)} of heat in {around} of {self.compartment}"
        )


@dataclass(frozen=True)
class FitStory:
    """What the page of fit shows."""

    figures: Fit
    spaces: tuple[SpaceAnswer, ...]
    parts: tuple[PartAnswer, ...]
    loose: tuple[tuple[Item, tuple[Place, ...]], ...]  # parts in no space that could go into one, and where
    uncounted: str = UNCOUNTED
    cautions: tuple[str, ...] = CAUTIONS

    @property
    def failing(self) -> tuple[PartAnswer, ...]:
        """Parts for which something does not hold, or is not known."""
        return tuple(part for part in self.parts if not part.fit.good)

    def finding(self) -> str:
        """The page in one line."""
        if not self.figures.spaces:
            return "The file names no spaces: write them under spaces: to be told what fits."
        if not self.parts:
            return "No part is put into a space: write space: NAME in its place, under places:."
        if not self.failing:
            return f"All {len(self.parts)} parts in spaces go in, can be worked on and stay cool enough."
        return f"{len(self.failing)} of {len(self.parts)} parts do not fit where they are put."

    def assumptions(self, system: System) -> str:
        """What the answers rest on, in words."""
        wide, high = (show(one, "length", system) for one in PERSON)
        return (
            "A part goes through its opening level, not aslant, and needs no more room to turn behind it; shelves and "
            "brackets are the builder's. Between two parts the larger clearance is kept, none under a part. Worked on "
            f"means: its service side looks at the opening with nothing between, or has {small(HAND, system)} before "
            f"it; at most {small(REACH, system)} from the opening, or from anywhere where that is at least {wide} by "
            f"{high}. Heat: the mean of the hottest hour of night, day and recharge, in balance with the air that "
            f"passes and the walls, both to the compartment. What never runs in them, such as "
            f"a charger where the plan has no shore power, is not tried. Not counted: {self.uncounted}."
        )


def fit_story(figures: Fit, compartments: tuple[str, ...]) -> FitStory:
    """What the page of fit shows."""
    spaces = tuple(
        SpaceAnswer(one, compartments[one.space.cabin] if one.space.cabin >= 0 else "", more_room(one))
        for one in figures.spaces
    )
    parts = tuple(PartAnswer(part, one, places_for(part.item, figures)) for one in figures.spaces for part in one.parts)
    loose = tuple((item, places_for(item, figures)) for item in figures.loose if item.kind not in STAY)
    return FitStory(figures, spaces, parts, loose if figures.spaces else ())


def small(length: float, system: System) -> str:
    """A length of millimetres or inches."""
    if system == "si":
        return f"{convert(length, 'mm', 'length'):.0f} mm"
    return f"{convert(length, 'in', 'length'):.1f} in"
