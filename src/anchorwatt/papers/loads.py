"""The loads command: where the heat comes from, what would carry it, and what rules of thumb would have said."""

from __future__ import annotations

import math
from textwrap import wrap
from typing import TYPE_CHECKING, Any

from anchorwatt.papers import as_json, screens
from anchorwatt.papers.keys import in_unit
from anchorwatt.papers.page import Content, Paragraph, Side, Words, figures, page, section, table
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.gains import BoatGains, CabinGains
    from anchorwatt.assessment.load_story import LoadStory

Plain = dict[str, Any]


def screen(assessment: Assessment, system: System) -> Content:
    """Loads of the cabins that are cooled at some hour."""
    unit = heading_unit("heat flow", system)
    parts: list[Content] = [
        screens.about(assessment),
        section("Cooling load in each cabin's hottest hour", screens.cabins(assessment, system)),
    ]
    if assessment.gains.cabins:
        parts += [
            section(
                f"What causes each cabin's highest load, dry and moist together, {unit}", *_causes(assessment, system)
            ),
            section(f"The whole boat through the day, {unit}", *_day(assessment, system)),
            section("What the catalogue would give", *_selection(assessment, system)),
            section("What rules of thumb would have said", *_rules(assessment, system)),
            *_each(assessment, system),
        ]
    else:
        parts.append(section("Where it comes from", Words("No cabin of this design is ever cooled.")))
    return page(*parts, screens.cautions(assessment))


def plain(assessment: Assessment) -> Plain:
    """What `loads` shows, as plain data."""
    gains, names = assessment.gains, [cabin.name for cabin in assessment.specification.cabins]
    story, selection = assessment.load_story, assessment.selection
    return {
        **as_json.loads(assessment),
        "by_hour_W": {
            names[cabin.cabin]: {cause: _watts(values) for cause, values in cabin.causes} for cabin in gains.cabins
        },
        "boat": {
            "by_hour_W": {cause: _watts(values) for cause, values in gains.causes},
            "total_W": _watts(gains.total),
            "peak_W": _watt(gains.peak),
            "peak_at": f"{gains.peak_hour:02d}:00" if gains.cabins else None,
            "sum_of_cabin_peaks_W": _watt(gains.sum_of_peaks),
            "diversity": in_unit(gains.diversity, "", "ratio"),
        },
        "selection": {
            "handlers": [
                {
                    "cabin": names[one.cabin],
                    "peak_W": _watt(one.peak),
                    "has_W": _watt(one.has),
                    "has_gives_W": _watt(one.has_gives),
                    "catalogue": one.choice or None,
                    "catalogue_W": _watt(one.capacity),
                    "catalogue_gives_W": _watt(one.gives),
                }
                for one in selection.handlers
            ],
            "condensing_unit": {
                "peak_W": _watt(selection.unit.peak),
                "sea_C": in_unit(selection.unit.sea, "°C", "temperature"),
                "has": selection.unit.has,
                "has_W": _watt(selection.unit.has_capacity),
                "catalogue": selection.unit.choice or None,
                "catalogue_W": _watt(selection.unit.capacity),
            },
            "connected_ratio": in_unit(selection.connected, "", "ratio"),
            "connected_ratio_catalogue": in_unit(selection.chosen, "", "ratio"),
        },
        "rules_of_thumb": None if story is None else _story(story, names),
    }


def _story(story: LoadStory, names: list[str]) -> Plain:
    return {
        "source": "common practice, no source",
        "cabins": [
            {
                "cabin": names[one.cabin],
                "by_volume_low_W": _watt(one.low),
                "by_volume_high_W": _watt(one.high),
                "by_floor_W": _watt(one.by_floor),
            }
            for one in story.rules.cabins
        ],
        "boat_by_volume_W": _watt(story.rules.boat),
        "boat_by_floor_W": _watt(story.rules.by_floor),
        "computed_over_rule_pct": in_unit(story.share, "%", "share"),
        "without_covers_W": _watt(story.uncovered),
        "single_skin_W": _watt(story.single_skin),
        "single_skin_without_covers_W": _watt(story.bare),
        "pull_down_W": _watt(story.pull_down),
        "pull_down_hours": in_unit(story.pull_down_time, "h", "time"),
        "own_plant_pull_down_hours": in_unit(story.own_pull_down, "h", "time"),
    }


def _watt(value: float) -> float | None:
    return in_unit(value, "W", "heat flow")


def _watts(values: Any) -> list[float | None]:
    return [_watt(float(value)) for value in values]


def _narrow(words: str) -> str:
    return "\n".join(wrap(words, 9, break_long_words=False))


def _causes(assessment: Assessment, system: System) -> list[Content]:
    names = [cabin.name for cabin in assessment.specification.cabins]
    cabins = assessment.gains.cabins
    heads = ("cabin", *(_narrow(name) for name, _ in cabins[0].groups))
    rows = [
        (
            names[cabin.cabin],
            *(reading(float(values[cabin.peak_hour]), "heat flow", system) for _, values in cabin.groups),
        )
        for cabin in cabins
    ]
    words = "Below zero: heat goes out that way, or into walls and decks. Neighbours and stored damp count with them."
    return [table(heads, figures(heads), rows, free=0), Paragraph(words)]


def _hours(found: CabinGains | BoatGains, system: System) -> Content:
    """The 24 hours by cause; the highest is set off."""
    heads = ("from", *(_narrow(name) for name, _ in found.groups), "all")
    rows: list[list[str | Words]] = []
    for hour in range(24):
        highest = hour == found.peak_hour
        total = Words(reading(float(found.total[hour]), "heat flow", system), "strong" if highest else "")
        gains = (reading(float(values[hour]), "heat flow", system) for _, values in found.groups)
        rows.append([f"{hour:02d}:00", *gains, total])
    return table(heads, figures(heads), rows)


def _day(assessment: Assessment, system: System) -> list[Content]:
    gains = assessment.gains
    peak, added = show(gains.peak, "heat flow", system), show(gains.sum_of_peaks, "heat flow", system)
    names = [cabin.name for cabin in assessment.specification.cabins]
    each = "; ".join(f"{names[cabin.cabin]} {cabin.peak_hour:02d}:00" for cabin in gains.cabins)
    words = (
        f"The boat's highest hour begins at {gains.peak_hour:02d}:00 with {peak}. Its cabins' own peaks add to "
        f"{added}, of which that is {show(gains.diversity, 'share', system)}. They begin: {each}."
    )
    return [_hours(gains, system), Paragraph(words)]


def _each(assessment: Assessment, system: System) -> list[Content]:
    names, unit = [cabin.name for cabin in assessment.specification.cabins], heading_unit("heat flow", system)
    return [
        section(f"{names[cabin.cabin]} through the day, {unit}", _hours(cabin, system))
        for cabin in assessment.gains.cabins
    ]


def _selection(assessment: Assessment, system: System) -> list[Content]:
    selection, names = assessment.selection, [cabin.name for cabin in assessment.specification.cabins]
    heads = ("cabin", "\npeak", "has\nnominal", "\ngives", "smallest\nthat covers it", "\nnominal", "\ngives")
    rows = [
        (
            names[one.cabin],
            *(reading(value, "heat flow", system) for value in (one.peak, one.has, one.has_gives)),
            one.choice or "none is large enough",
            *(reading(value, "heat flow", system) for value in (one.capacity, one.gives)),
        )
        for one in selection.handlers
    ]
    found = selection.unit
    sea = show(found.sea, "temperature", system)
    chosen = "no unit of the catalogue is large enough"
    if found.choice:
        chosen = f"{found.choice}, which gives {show(found.capacity, 'heat flow', system)} there"
    words = (
        f"For the boat's peak of {show(found.peak, 'heat flow', system)} in seawater of {sea}: {chosen}. The design "
        f"has {found.has}, which gives {show(found.has_capacity, 'heat flow', system)}: what is over cools a hot boat "
        "down. Connected ratio, handlers over compressor: "
        f"{screens.figure(selection.connected, 'ratio', system)} as designed, "
        f"{screens.figure(selection.chosen, 'ratio', system)} as the catalogue would give."
    )
    how = (
        f"In {heading_unit('heat flow', system)}. Gives: at full fan, from the cabin's own air in its highest hour, "
        "the refrigerant at the evaporating temperature of the plant's rating. The smallest covers the sensible load "
        "and the whole."
    )
    sides: tuple[Side, ...] = ("<", ">", ">", ">", "<", ">", ">")
    return [table(heads, sides, rows, free=0), Paragraph(how), Paragraph(words)]


def _rules(assessment: Assessment, system: System) -> list[Content]:
    story = assessment.load_story
    if story is None:
        return []
    names, unit = [cabin.name for cabin in assessment.specification.cabins], heading_unit("heat flow", system)
    peaks = {cabin.cabin: cabin.peak for cabin in assessment.gains.cabins}
    heads = ("cabin", f"computed\n{unit}", "by volume,\nfrom", "\nto", "by\nfloor")
    rows = [
        (
            names[one.cabin],
            *(reading(value, "heat flow", system) for value in (peaks[one.cabin], one.low, one.high, one.by_floor)),
        )
        for one in story.rules.cabins
    ]
    return [
        table(heads, figures(heads), rows, free=0),
        Paragraph(
            "By volume: 16 to 19 Btu/h for each ft³ of saloon, galley and pilothouse, 10 to 12 of cabins below or for "
            "the night; by floor: 100 Btu/h for each ft². Common practice, no source."
        ),
        *(Paragraph(words) for words in _why(story, system)),
    ]


def _why(story: LoadStory, system: System) -> list[str]:
    """Why computed load and rule differ, from the boat's own figures."""
    peak, rule = show(story.peak, "heat flow", system), show(story.rules.boat, "heat flow", system)
    share = show(story.share, "share", system)
    causes = ", ".join(f"{cause} {show(part, 'share', system)}" for cause, part in story.largest)
    first = (
        f"The whole boat by 14 Btu/h for each ft³: {rule}. The computed peak, {peak}, is {share} of it. "
        f"Its largest parts: {causes}."
    )
    if story.near:
        return [first]
    if not story.below:
        return [
            first,
            "Why so far above: the rules know nothing of glass, build and people; these parts are this boat's.",
        ]
    uncovered, single = show(story.uncovered, "heat flow", system), show(story.single_skin, "heat flow", system)
    second = (
        "Why so far below: the computed peak keeps a boat cool that is cool already, on the day of the file, as it is "
        f"built and covered. Without any cover, blind or awning it would be {uncovered}; with hull and decks of a "
        f"single skin, 10 mm of laminate, {single}; with both {show(story.bare, 'heat flow', system)}. The rules size "
        "for a boat that has stood hot as well."
    )
    return [first, second, _pull_down(story, system)]


def _pull_down(story: LoadStory, system: System) -> str:
    time = show(story.pull_down_time, "time", system)
    words = f"Left uncooled until its highest hour, this boat is not brought to its set points in {time} by any plant."
    if not math.isnan(story.pull_down):
        power = show(story.pull_down, "heat flow", system)
        words = f"To bring this one, left uncooled until its highest hour, to its set points in {time} takes {power}."
    if math.isnan(story.own_pull_down):
        return f"{words} The plant of the design does not get there in 12 h."
    return f"{words} The plant of the design takes {show(story.own_pull_down, 'time', system)}."
