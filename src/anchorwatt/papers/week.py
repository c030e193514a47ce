"""The week command: the bank through days and nights, when it first fails, and the shortest engine time at anchor."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from anchorwatt.papers import screens
from anchorwatt.papers.as_json import table_rows
from anchorwatt.papers.keys import figure, in_unit
from anchorwatt.papers.page import Content, Drawn, Paragraph, Words, figures, page, section, table
from anchorwatt.papers.strip_chart import per_day, strip_chart
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import System, show, show_clock

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.sizing.week import Failure, Shortest, Week, WeekDay

Plain = dict[str, Any]


def screen(assessment: Assessment, system: System) -> Content:
    """The week of the file and the planning answer."""
    found = assessment.week
    return page(
        screens.about(assessment),
        section("Does the week keep going?", *_verdict(assessment, system)),
        section("State of charge through the week", *_chart(assessment, system)),
        section("Day by day, each from the start of its night", *_days(found.planned, system)),
        section("The shortest engine time a day at anchor", *_shortest(found.shortest, system)),
        screens.cautions(assessment),
    )


def plain(assessment: Assessment) -> Plain:
    """What `week` shows, as plain data."""
    found = assessment.week
    week, least = found.planned, found.shortest
    return {
        "week": _week(week),
        "days": days(assessment),
        "shortest_at_anchor": {
            "engine_hours_a_day": in_unit(least.time, "h", "time"),
            "from": show_clock(least.start),
            "usual_from": show_clock(least.usual_start),
            "usual_engine_hours_a_day": in_unit(least.usual_time, "h", "time"),
            "starts_tried": [show_clock(start) for start in least.tried],
            "longest_tried_hours": figure("_hours", least.longest, "time"),
            "why": least.binds,
            **_week(least.week),
        },
        "hours": table_rows(found.hours),
        "weather": assessment.weather_source,
        "cautions": list(assessment.cautions),
    }


def days(assessment: Assessment) -> list[Plain]:
    """The days of the week as plain data."""
    return [_day(day) for day in assessment.week.planned.days]


def _week(week: Week) -> Plain:
    return {
        "keeps_going": week.sustained,
        "fails": _failure(week.failure),
        "charge_at_start_pct": figure("_pct", week.charge_at_start, "share"),
        "charge_at_end_pct": figure("_pct", week.evenings[-1], "share"),
        "lowest_charge_pct": figure("_pct", week.lowest, "share"),
        "lowest_at": show_clock(week.lowest_at),
        "engine_hours": figure("engine_hours", week.engine_time, "time"),
        "fuel_L": figure("fuel_L", week.fuel, "liquid volume"),
        "solar_kWh": figure("solar_kWh", week.solar_energy, "energy"),
        "solar_share_pct": figure("_pct", week.solar_share, "share"),
    }


def _failure(found: Failure | None) -> Plain | None:
    if found is None:
        return None
    return {"day": found.day, "at": show_clock(found.at), "cause": found.cause, "words": found.words}


def _day(day: WeekDay) -> Plain:
    return {
        "day": day.number,
        "doing": _doing(day),
        "charge_at_dawn_pct": figure("_pct", day.charge_at_dawn, "share"),
        "charge_at_dusk_pct": figure("_pct", day.charge_at_dusk, "share"),
        "lowest_charge_pct": figure("_pct", day.lowest, "share"),
        "lowest_at": show_clock(day.lowest_at),
        "engine_hours": figure("engine_hours", day.engine_time, "time"),
        "engine_at_anchor_hours": figure("_hours", day.charging_time, "time"),
        "fuel_L": figure("fuel_L", day.fuel, "liquid volume"),
        "solar_kWh": figure("_kWh", day.solar_energy, "energy"),
        "alternators_kWh": figure("_kWh", day.alternator_energy, "energy"),
        "shore_kWh": figure("_kWh", day.shore_energy, "energy"),
        "used_kWh": figure("_kWh", day.used_energy, "energy"),
        "highest_outdoor_temperature_C": figure("_C", day.highest_outdoor, "temperature"),
        "sun_mean_W_per_m2": in_unit(day.sun, "W/m²", "heat flux"),
    }


def _doing(day: WeekDay) -> str:
    if day.passage:
        return "under way"
    return "at anchor" if day.charging_time <= 0.0 else "charging"


def _verdict(assessment: Assessment, system: System) -> list[Content]:
    week = assessment.week.planned
    if week.failure is None:
        verdict = Words("It keeps going.", "holds")
    else:
        verdict = Words(f"It first fails on {week.failure.words}.", "fails")
    rows = [
        (show(week.lowest, "share", system), f"lowest state of charge, at {show_clock(week.lowest_at)}"),
        (show(week.evenings[-1], "share", system), f"when it ends, of {show(week.charge_at_start, 'share', system)}"),
        (show(week.engine_time, "time", system), f"of engine in {len(week.days)} days"),
        (show(week.fuel, "liquid volume", system), "of fuel, the propeller's share in it"),
        (_share(week, system), "of all energy brought aboard is the sun's"),
    ]
    return [verdict, table(("", ""), (">", "<"), rows)]


def _share(week: Week, system: System) -> str:
    return "—" if math.isnan(week.solar_share) else show(week.solar_share, "share", system)


def _chart(assessment: Assessment, system: System) -> list[Content]:
    from anchorwatt.assessment.week import strip

    week, reserve = assessment.week.planned, assessment.specification.brief.reserve
    number = len(week.days)
    starts = show_clock(assessment.specification.brief.night_start)
    drawn = strip_chart(strip(week, per_day(number)), number, reserve)
    words = (
        f"Days begin with their night at {starts}. Each column: the lowest of its stretch. Underline: the reserve of "
        f"{show(reserve, 'share', system)}. Engines on: w under way, a at anchor."
    )
    return [Drawn(drawn, "The bank through the days, the reserve and the engines"), Paragraph(words)]


def _days(week: Week, system: System) -> list[Content]:
    fuel, warmth = heading_unit("liquid volume", system), heading_unit("temperature", system)
    levels = ("dawn\n%", "dusk\n%", "low\n%", "at")
    energies = ("sun\nkWh", "altern.\nkWh", "used\nkWh")
    heads = ("", "", *levels, "engine\nh", f"fuel\n{fuel}", *energies, f"max\n{warmth}")
    rows = [
        (
            str(day.number),
            _doing(day),
            reading(day.charge_at_dawn, "share", system),
            reading(day.charge_at_dusk, "share", system),
            reading(day.lowest, "share", system),
            show_clock(day.lowest_at),
            _tenths(day.engine_time, "h", "time"),
            reading(day.fuel, "liquid volume", system),
            _tenths(day.solar_energy, "kWh", "energy"),
            _tenths(day.alternator_energy, "kWh", "energy"),
            _tenths(day.used_energy, "kWh", "energy"),
            reading(day.highest_outdoor, "temperature", system),
        )
        for day in week.days
    ]
    sun = ", ".join(show(day.sun, "heat flux", system).split(" ")[0] for day in week.days)
    unit = show(week.days[0].sun, "heat flux", system).split(" ")[1]
    words = f"Sun on a level plane, mean of each day's 24 h: {sun} {unit}. Used: into the inverter and the DC loads."
    return [table(heads, ("<", "<", *figures(heads)[2:]), rows), Paragraph(words)]


def _tenths(value: float, unit: str, dimension: str) -> str:
    found = in_unit(value, unit, dimension)
    return "—" if found is None else f"{found:.1f}"


def _shortest(found: Shortest, system: System) -> list[Content]:
    start = show_clock(found.start)
    if math.isnan(found.time):
        head = Words("No engine time suffices.", "fails")
        longest = show(found.longest, "time", system)
        return [head, Paragraph(f"Even with {longest} of engine a day from {start}: {found.binds}.")]
    if found.time <= 0.0:
        head = Words("None is needed: the sun keeps it going.", "holds")
        return [head, Paragraph(f"Lowest state of charge: {show(found.week.lowest, 'share', system)}.")]
    head = Words(f"{show(found.time, 'time', system)} a day from {start}, to five minutes", "strong")
    fuel = show(found.week.fuel_a_day, "liquid volume", system)
    words = (
        f"Seven days at anchor, never under way: {fuel} of fuel a day, lowest state of charge "
        f"{show(found.week.lowest, 'share', system)}. And {found.binds}."
    )
    return [head, Paragraph(words), Paragraph(_usual(found, system))]


def _usual(found: Shortest, system: System) -> str:
    """What the week's usual hour would take, and which hours were tried."""
    tried = ", ".join(show_clock(start) for start in sorted(found.tried))
    usual, hour = show(found.usual_time, "time", system), show_clock(found.usual_start)
    if found.usual_start == found.start:
        return f"{hour} is the week's usual hour, and the best of those tried: {tried}."
    if math.isnan(found.usual_time):
        return f"From the week's usual hour, {hour}, no time suffices. Tried: {tried}."
    return f"From the week's usual hour, {hour}, it takes {usual}. Tried: {tried}."
