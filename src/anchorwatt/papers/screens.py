"""What the commands show: the pages of one assessment."""

from __future__ import annotations

import math
from collections.abc import Iterable
from difflib import get_close_matches
from typing import TYPE_CHECKING

from anchorwatt.checks.finding import Finding, Verdict
from anchorwatt.errors import AnchorwattError
from anchorwatt.languages import Said
from anchorwatt.papers import air_and_water
from anchorwatt.papers.page import (
    Content,
    Gap,
    Meaning,
    Paragraph,
    Section,
    Title,
    Words,
    figures,
    page,
    section,
    table,
    unbroken,
)
from anchorwatt.papers.select import by_place, hourly, worst_first
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import System, show, show_clock

if TYPE_CHECKING:
    from anchorwatt.assessment import Answer, Assessment, CabinAnswer, Recharge, Table

_MEANINGS: dict[Verdict, Meaning] = {
    Verdict.FAILS: "fails",
    Verdict.CANNOT_TELL: "cannot_tell",
    Verdict.NEAR: "near",
    Verdict.HOLDS: "holds",
}
_MENDED = (Verdict.FAILS, Verdict.NEAR, Verdict.CANNOT_TELL)
_COLUMNS_AT_ONCE = 5
_OF_THE_NIGHT = (
    "hold_hours",
    "required_hours",
    "charge_at_dawn_pct",
    "night_energy_kWh",
    "peak_plant_power_W",
    "peak_inverter_power_W",
)


def figure(value: float, dimension: str, system: System) -> str:
    """A figure with its unit; a count or a ratio has none.

    Example
    -------
    >>> figure(3.0, "count", "si"), figure(float("nan"), "count", "si"), figure(0.2, "share", "si")
    ('3', '—', '20 %')
    """
    if dimension == "money":
        return "—" if math.isnan(value) else f"{value:,.0f}".replace(",", " ")
    if dimension in ("count", "ratio"):
        return "—" if math.isnan(value) else f"{value:.{0 if dimension == 'count' else 2}f}"
    return show(value, dimension, system)


def assessment(assessment: Assessment, system: System) -> Content:
    """Everything on one page, what decides the job on top."""
    return page(
        about(assessment),
        section("Answers", _answers(assessment, system), Words(assessment.cautions[0], "aside")),
        section("Checks so far, worst first", *_checks(assessment, system)),
        section("Cabins", cabins(assessment, system)),
        section("Night, hour by hour", *_night_tables(assessment, system)),
        section("Recharge", *recharge_story(assessment.recharge, system)),
        section("Kinds of cooling plant, the same night", *comparison(assessment, system)),
        section(_estimates_heading(assessment), *_estimates_in_short(assessment)),
        cautions(assessment),
    )


def estimates(assessment: Assessment) -> Content:
    """Every estimate with how it was found; keys are those of the file in every language."""
    parts: list[Content] = []
    for place, some in by_place(assessment.estimates).items():
        rows = [(Words(Said(key), key=one.key), one.value, f"{one.rule} ({one.source})") for key, one in some]
        parts.append(section(Said(place), table(("", "", ""), ("<", ">", "<"), rows, shares=(10, 7, 19))))
    return page(about(assessment), Words(_estimates_heading(assessment), "strong"), Gap(), *parts)


def night(assessment: Assessment, system: System) -> Content:
    """The night hour by hour."""
    return page(
        about(assessment),
        section("Answers", _answers(assessment, system, _OF_THE_NIGHT)),
        section("Hour by hour", *_night_tables(assessment, system)),
        section("Comfort, hour by hour", *air_and_water.comfort(assessment, system)),
        section("The air that people breathe", *air_and_water.breathed(assessment, system)),
        section("Condensate and dew", *air_and_water.water(assessment, system)),
        cautions(assessment),
    )


def why(answer: Answer, system: System) -> Content:
    """How one answer was found."""
    inputs = [(one.name, figure(one.value, one.dimension, system), one.basis) for one in answer.why.inputs]
    parts: list[Content] = [Words(f"How: {answer.why.formula}.")]
    if inputs:
        parts += [Gap(), table(("from", "", "which is"), ("<", ">", "<"), inputs), Gap()]
    parts += [Words(f"Source: {answer.why.source}."), Words(f"What changes it: {answer.why.changes_it}.")]
    found = figure(answer.value, answer.dimension, system)
    note = f", {answer.note}" if answer.note else ""
    return section(f"{answer.question} {found}{note}", *parts)


def answer_named(answers: Iterable[Answer], key: str) -> Answer:
    """The answer of that key, or an error that names the nearest."""
    known = {answer.key: answer for answer in answers}
    if key in known:
        return known[key]
    near = get_close_matches(key, known, n=1)
    hint = f", perhaps “{near[0]}”" if near else ""
    raise AnchorwattError(f"--why: found no answer “{key}”{hint}; allowed: one of: {', '.join(known)}")


def about(assessment: Assessment) -> Content:
    return Title(assessment.specification.name, f"Weather: {assessment.weather_source}")


def _answers(assessment: Assessment, system: System, keys: tuple[str, ...] = ()) -> Content:
    rows = []
    for answer in assessment.answers if keys else assessment.headline:
        if not keys or answer.key in keys:
            question = Words(answer.question)
            if answer.note:
                question = question.then(f"\n{answer.note}", "aside")
            rows.append((Words(figure(answer.value, answer.dimension, system), "strong"), question))
    return table(("", ""), (">", "<"), rows)


def cabins(assessment: Assessment, system: System) -> Content:
    heat, warmth = heading_unit("heat flow", system), heading_unit("temperature", system)
    heads = (
        "cabin",
        f"sensible\n{heat}",
        f"latent\n{heat}",
        "hottest\nat",
        f"handler\n{heat}",
        f"set to\n{warmth}",
        f"night's\nmax {warmth}",
        "humid\nmax %",
    )
    return table(heads, figures(heads), [_cabin(cabin, system) for cabin in assessment.cabins], free=0)


def _cabin(cabin: CabinAnswer, system: System) -> tuple[str, ...]:
    return (
        cabin.name,
        reading(cabin.peak_sensible, "heat flow", system),
        reading(cabin.peak_latent, "heat flow", system),
        show(cabin.peak_at, "clock time", system),
        reading(cabin.handler_capacity, "heat flow", system) if cabin.handler_capacity else "—",
        reading(cabin.set_point, "temperature", system),
        reading(cabin.night_highest_temperature, "temperature", system),
        reading(cabin.night_highest_humidity, "share", system),
    )


def _night_tables(assessment: Assessment, system: System) -> list[Content]:
    run = assessment.night
    rows = hourly(run)
    boat = ("charge_pct", "plant_power_W", "inverter_power_W", "outdoor_temperature_C", "sea_temperature_C")
    tables = [series(run, rows, boat, ("charge", "plant", "inverter", "outdoors", "seawater"), system)]
    names = [cabin.name for cabin in assessment.cabins if not math.isnan(cabin.set_point)]
    for first in range(0, len(names), _COLUMNS_AT_ONCE):
        some = names[first : first + _COLUMNS_AT_ONCE]
        keys = tuple(f"air_temperature_C.{name}" for name in some)
        tables += [Gap(), series(run, rows, keys, tuple(some), system)]
    return tables


def series(
    run: Table, rows: list[int], keys: tuple[str, ...], names: tuple[str, ...], system: System, caption: str = ""
) -> Content:
    """Some columns of a run, clock first."""
    columns = [run.column(key) for key in keys]
    heads = [f"{name}\n{heading_unit(column.dimension, system)}" for name, column in zip(names, columns, strict=True)]
    lines = [
        (
            show_clock(run.clock[row]),
            *(reading(float(column.values[row]), column.dimension, system) for column in columns),
        )
        for row in rows
    ]
    return table(("at", *heads), figures(("at", *heads)), lines, caption=caption)


def recharge_story(found: Recharge | None, system: System) -> list[Content]:
    """The plan's own recharge in short."""
    if found is None:
        return [Words("No engine of this design carries an alternator.")]
    rows = [
        (show(found.engine_time, "time", system), f"of engine, {found.doing}"),
        (show(found.fuel_added, "liquid volume", system), "of fuel for the alternators alone"),
        (show(found.fuel_burnt, "liquid volume", system), "of fuel in that time, all that the engines burn"),
        (show(found.mean_alternator_current, "current", system), "on average, all alternators together"),
        (show(found.highest_winding, "temperature", system), "in the hottest winding"),
    ]
    held = ", ".join(f"{cause} {unbroken(show(share, 'share', system))}" for cause, share in found.held_by)
    return [table(("", ""), (">", "<"), rows), Paragraph(f"Held back by, as a share of the time: {held}.")]


def comparison(assessment: Assessment, system: System) -> list[Content]:
    rows = [
        (
            row.plant,
            show(row.night_energy, "energy", system),
            show(row.charge_at_dawn, "share", system),
            show(row.peak_plant_power, "power", system),
            show(row.mass, "mass", system),
            show(row.warmest, "temperature difference", system),
            show(row.dampest, "share", system),
        )
        for row in assessment.comparisons
    ]
    starts = [Words(f"{row.plant}: {row.starting_current_note}.") for row in assessment.comparisons]
    heads = ("", "from\nbank", "left at\ndawn", "\npeak", "\nmass", "over\nset", "most\nhumid")
    return [table(heads, figures(heads), rows, free=0), *starts]


def _checks(assessment: Assessment, system: System) -> list[Content]:
    """What must be looked at in full; what holds by name."""
    rows, hold = [], []
    for one in worst_first(assessment.checks):
        if one.verdict is Verdict.HOLDS:
            hold.append(one.id)
            continue
        verdict = Words(one.verdict.value, _MEANINGS[one.verdict])
        found, limit = found_and_limit(one, system)
        rows.append((verdict, question(one), found, limit))
    parts: list[Content] = []
    if rows:
        parts.append(table(("", "", "found", "limit"), ("<", "<", ">", ">"), rows, free=1))
    if hold:
        parts.append(Paragraph(f"{len(hold)} hold: {', '.join(hold)}."))
        parts.append(Words("Each with its figures, its source and its remedy: anchorwatt check."))
    return parts


def found_and_limit(one: Finding, system: System) -> tuple[str, str]:
    """Both figures, told apart by a further digit where rounding would make them look the same."""
    found, limit = figure(one.value, one.dimension, system), figure(one.limit, one.dimension, system)
    if found == limit and one.value != one.limit and one.dimension not in ("count", "ratio", "money"):
        return show(one.value, one.dimension, system, 4), show(one.limit, one.dimension, system, 4)
    return found, limit


def question(one: Finding) -> Words:
    words = Words(f"{one.question} ({one.source})")
    if one.note:
        words = words.then(f"\n{one.note}")
    if one.verdict in _MENDED and one.remedy:
        words = words.then(f"\n→ {one.remedy}", "aside")
    return words


def _estimates_heading(assessment: Assessment) -> str:
    return f"Estimates made: {len(assessment.estimates)} entries that nobody typed, in the units of the file"


def _estimates_in_short(assessment: Assessment) -> list[Content]:
    parts: list[Content] = []
    for place, some in by_place(assessment.estimates).items():
        each = "; ".join(f"{key} {unbroken(one.value) if len(one.value) < 12 else one.value}" for key, one in some)
        parts.append(Paragraph(f"{place}: {each}"))
    return [*parts, Words("How each was found: --estimates, --json or --csv.")]


def cautions(assessment: Assessment) -> Section:
    return section("Take care", *(Words(words) for words in assessment.cautions))
