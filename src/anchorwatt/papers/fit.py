"""The fit command: spaces with their parts, by how much each misses, and where else it would go."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from anchorwatt.assessment.fit import small
from anchorwatt.papers import screens
from anchorwatt.papers.keys import in_unit
from anchorwatt.papers.page import Content, Meaning, Paragraph, Words, page, section, table
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import System, convert, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.fit import FitStory, PartAnswer, SpaceAnswer
    from anchorwatt.sizing.fit import Place

Plain = dict[str, Any]

MEANINGS: dict[str, Meaning] = {"yes": "holds", "yes, derated": "near", "no": "fails", "size unknown": "cannot_tell"}
SHOWN = 3
"""Offers shown for a part; all are in the JSON."""


def screen(assessment: Assessment, system: System) -> Content:
    """What fits, what does not and why, each space, and where else parts would go."""
    story = assessment.fit
    parts = [
        screens.about(assessment),
        section(story.finding(), *_parts(story, system)),
    ]
    if story.failing or any(part.misses(system) for part in story.parts):
        parts.append(section("What is short, and by how much", *_misses(story, system)))
    if story.spaces:
        parts.append(section("The spaces", *_spaces(story, system)))
        parts.append(section("Other spaces that would take them", *_offers(story, system)))
    parts.append(section("What this rests on", Paragraph(story.assumptions(system))))
    parts.append(section("Measure first", *(Paragraph(words) for words in story.cautions)))
    return page(*parts, screens.cautions(assessment))


def plain(assessment: Assessment) -> Plain:
    """What `fit` shows, as plain data."""
    story = assessment.fit
    return {
        "finding": story.finding(),
        "spaces": spaces(assessment),
        "parts": [
            {**row, "misses": list(part.misses("si")), "other_spaces": _places(part.others)}
            for row, part in zip(rows(assessment), story.parts, strict=True)
        ],
        "parts_in_no_space": [
            {"tag": item.tag, "name": item.name, "other_spaces": _places(places)} for item, places in story.loose
        ],
        "assumptions": story.assumptions("si"),
        "not_counted": story.uncounted,
        "cautions": [*story.cautions, *assessment.cautions],
    }


def rows(assessment: Assessment) -> list[Plain]:
    """A row a part in a space."""
    return [
        {
            "tag": part.fit.item.tag,
            "name": part.fit.item.name,
            "count": part.fit.item.count,
            "space": part.space.space.name,
            "fits": part.verdict,
            "opening_spare_m": in_unit(part.fit.through, "m", "length"),
            "alone_spare_m": in_unit(part.fit.alone, "m", "length"),
            "fits_alone": _known(part, part.fit.alone_found),
            "fits_together": _known(part, part.fit.together),
            "serviceable": _known(part, part.fit.serviced),
            "air_C": _finite(part.fit.air, "°C", "temperature"),
            "full_rating_to_C": in_unit(part.fit.limit, "°C", "temperature"),
            "kept_pct": in_unit(part.fit.kept, "%", "share"),
            "asked_pct": in_unit(part.fit.asked, "%", "share"),
        }
        for part in assessment.fit.parts
    ]


def spaces(assessment: Assessment) -> list[Plain]:
    """A row a space."""
    return [
        {
            "name": one.fit.space.name,
            "compartment": one.compartment or None,
            "length_m": in_unit(one.fit.space.size[0], "m", "length"),
            "width_m": in_unit(one.fit.space.size[1], "m", "length"),
            "height_m": in_unit(one.fit.space.size[2], "m", "length"),
            "opens": one.fit.space.opens,
            "opening_width_m": in_unit(one.fit.space.opening[0], "m", "length"),
            "opening_height_m": in_unit(one.fit.space.opening[1], "m", "length"),
            "filled_pct": in_unit(one.fit.share, "%", "share"),
            "room": one.room("si"),
            "heat_W": in_unit(one.fit.heat.heat, "W", "power"),
            "compartment_air_C": in_unit(one.fit.heat.around, "°C", "temperature"),
            "air_C": _finite(one.fit.heat.air, "°C", "temperature"),
        }
        for one in assessment.fit.spaces
    ]


def _known(part: PartAnswer, value: bool) -> bool | None:
    return value if part.fit.sized else None


def _finite(value: float, unit: str, dimension: str) -> float | None:
    return None if math.isinf(value) else in_unit(value, unit, dimension)


def _places(places: Sequence[Place]) -> list[Plain]:
    return [{"space": place.space.name, "air_C": _finite(place.air, "°C", "temperature")} for place in places]


def _parts(story: FitStory, system: System) -> list[Content]:
    if not story.parts:
        return []
    unit = "mm" if system == "si" else "in"
    degree = heading_unit("temperature", system)
    heads = ("", "", f"opening\nspare {unit}", f"space\nspare {unit}", "hands", f"air\n{degree}", "fits")
    lines = [_line(part, unit, system) for part in story.parts]
    return [table(heads, ("<", "<", ">", ">", "<", ">", "<"), lines, free=1)]


def _line(part: PartAnswer, unit: str, system: System) -> tuple[str | Words, ...]:
    found = part.fit
    hands = ("yes" if found.serviced else "no") if found.together else "—"
    return (
        found.item.tag,
        f"{found.item.counted}, in {part.space.space.name}",
        _length(found.through, unit),
        _length(found.alone, unit),
        hands,
        "∞" if math.isinf(found.air) else reading(found.air, "temperature", system),
        Words(part.verdict, MEANINGS[part.verdict]),
    )


def _length(value: float, unit: str) -> str:
    if math.isnan(value):
        return "—"
    text = f"{convert(value, unit, 'length'):.{0 if unit == 'mm' else 1}f}"
    return text.removeprefix("-") if float(text) == 0.0 else text.replace("-", "−")


def _misses(story: FitStory, system: System) -> list[Content]:
    return [
        Paragraph(f"{part.fit.item.tag} {part.fit.item.name}: {'; '.join(misses)}.")
        for part in story.parts
        if (misses := part.misses(system))
    ]


def _spaces(story: FitStory, system: System) -> list[Content]:
    told: list[Content] = []
    for one in story.spaces:
        told.append(Words(f"{one.fit.space.name}: {_inside(one, system)}", "strong"))
        told.append(Paragraph(f"{one.room(system)}. {one.warmth(system)}."))
    return told


def _inside(one: SpaceAnswer, system: System) -> str:
    space = one.fit.space
    size = " × ".join(small(side, system) for side in space.size)
    opening = " × ".join(small(side, system) for side in space.opening)
    return f"{size}, opens to the {space.opens} by {opening}"


def _offers(story: FitStory, system: System) -> list[Content]:
    rows = [(part.fit.item, part.others) for part in story.parts]
    lines = [(item.tag, item.name, _offer(places, system)) for item, places in (*rows, *story.loose)]
    words = "Each tried beside what stands there, and the air that it would then have. Parts in no space are last."
    return [table(("", "", ""), ("<", "<", "<"), lines, free=2), Paragraph(words)]


def _offer(places: Sequence[Place], system: System) -> str:
    if not places:
        return "none"
    told = [f"{place.space.name} ({show(place.air, 'temperature', system)})" for place in places[:SHOWN]]
    more = len(places) - len(told)
    return ", ".join(told) + (f", and {more} more" if more > 0 else "")
