"""The weight command: masses and where they lie, heel, trim and stability, and what to move."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from anchorwatt.assessment.weight import MOMENT_UNITS, moment_figure
from anchorwatt.papers import screens
from anchorwatt.papers.keys import figure, in_unit
from anchorwatt.papers.page import Content, Paragraph, Words, page, section, table
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import System, convert

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.weight import WeightStory
    from anchorwatt.sizing.weight import Carried, Move

Plain = dict[str, Any]

PLACES_ARE = (
    "Places: forward of the aft end of the waterline, starboard of the centreline (port negative), over the waterline. "
    "A star marks a place that nobody typed."
)


def screen(assessment: Assessment, system: System) -> Content:
    """How the boat floats, what to move, and each part."""
    story = assessment.weight
    parts = [
        screens.about(assessment),
        section("How the boat floats with it", *_floats(story, system)),
        section("What to move", *(Paragraph(words) for words in story.advice(system)), *_moves(story.moves, system)),
        section("Part by part, heaviest first", *_parts(assessment, system)),
        section("Weight and stability", *(Paragraph(words) for words in story.cautions)),
    ]
    return page(*parts, screens.cautions(assessment))


def plain(assessment: Assessment) -> Plain:
    """What `weight` shows, as plain data."""
    story, found = assessment.weight, assessment.weight.figures
    return {
        **{answer.key: figure(answer.key, answer.value, answer.dimension) for answer in story.answers},
        "at_bow_cm": in_unit(found.floats.at_bow, "cm", "length"),
        "at_stern_cm": in_unit(found.floats.at_stern, "cm", "length"),
        "displacement_kg": in_unit(found.floats.displacement, "kg", "mass"),
        "gravity_up_m": in_unit(found.floats.gravity_up, "m", "length"),
        "for_one_centimetre_kg": in_unit(0.01 * found.mass_per_immersion, "kg", "mass"),
        "moment_to_trim_one_centimetre_kg_m": in_unit(found.moment_to_trim, "", "ratio"),
        "radius_m": in_unit(found.radius, "m", "length"),
        "centre": _point(found.centre.forward, found.centre.starboard, found.centre.up),
        "placed_pct": in_unit(found.placed, "%", "share"),
        "parts": rows(assessment),
        "moves": [_plain_move(move) for move in story.moves],
        "not_counted": found.uncounted,
        "cautions": [*story.cautions, *assessment.cautions],
    }


def rows(assessment: Assessment) -> list[Plain]:
    """A row a mass, with its moments about centreline, centre of flotation and waterline."""
    found = assessment.weight.figures
    return [
        {
            "tag": one.tag or None,
            "name": one.name,
            "mass_kg": in_unit(one.mass, "kg", "mass"),
            **_point(one.position.forward, one.position.starboard, one.position.up),
            "placed": one.placed,
            "moment_to_starboard_kg_m": in_unit(one.across, "", "ratio"),
            "moment_forward_of_flotation_kg_m": in_unit(one.mass * arm, "", "ratio"),
            "moment_up_kg_m": in_unit(one.upward, "", "ratio"),
        }
        for one, arm in zip(found.carried, found.trim_arms, strict=True)
    ]


def _point(forward: float, starboard: float, up: float) -> Plain:
    return {
        "forward_m": in_unit(forward, "m", "length"),
        "starboard_m": in_unit(starboard, "m", "length"),
        "up_m": in_unit(up, "m", "length"),
    }


def _plain_move(move: Move) -> Plain:
    return {
        "tag": move.tag,
        "name": move.name,
        "to_space": move.space or None,
        "to": _point(move.end.forward, move.end.starboard, move.end.up),
        "distance_m": in_unit(move.distance, "m", "length"),
        "heel_left_deg": in_unit(move.heel, "°", "angle"),
    }


def _floats(story: WeightStory, system: System) -> list[Content]:
    rows = [(Words(value, "strong"), words) for value, words in story.readings(system)]
    return [table(("", ""), (">", "<"), rows, free=1), Paragraph(story.stiffness(system))]


def _moves(moves: tuple[Move, ...], system: System) -> list[Content]:
    if not moves:
        return []
    unit = heading_unit("length", system)
    heads = ("", "by itself levels the boat", f"from\n{unit} stbd", f"to\n{unit} stbd", f"way\n{unit}")
    lines = [
        (
            move.tag,
            f"{move.name}{f', into {move.space}' if move.space else ''}",
            _metres(move.start.starboard, system),
            _metres(move.end.starboard, system),
            _metres(move.distance, system),
        )
        for move in moves[:5]
    ]
    return [table(heads, ("<", "<", ">", ">", ">"), lines, free=1)]


def _parts(assessment: Assessment, system: System) -> list[Content]:
    found = assessment.weight.figures
    mass, length = heading_unit("mass", system), heading_unit("length", system)
    heads = ("", "", mass, f"forward\n{length}", f"stbd\n{length}", f"up\n{length}", "heels", "trims")
    lines = [_line(one, arm, system) for one, arm in zip(found.carried, found.trim_arms, strict=True)]
    words = (
        f"{PLACES_ARE} The last columns: mass by distance to starboard, and forward of the centre of flotation, in "
        f"{MOMENT_UNITS[system]}. Not counted: {found.uncounted}."
    )
    return [table(heads, ("<", "<", ">", ">", ">", ">", ">", ">"), lines, free=1), Paragraph(words)]


def _line(one: Carried, arm: float, system: System) -> tuple[str, ...]:
    star = "" if one.placed else "*"
    return (
        one.tag,
        one.name,
        reading(one.mass, "mass", system),
        _metres(one.position.forward, system) + star,
        _metres(one.position.starboard, system),
        _metres(one.position.up, system),
        moment_figure(one.across, system),
        moment_figure(one.mass * arm, system),
    )


def _metres(value: float, system: System) -> str:
    found = convert(value, heading_unit("length", system), "length")
    text = f"{found:.{2 if system == 'si' else 1}f}"
    return text.removeprefix("-") if float(text) == 0.0 else text.replace("-", "−")
