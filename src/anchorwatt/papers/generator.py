"""The generator command: the design beside a generating set that would do the same job."""

from __future__ import annotations

import math
from decimal import Decimal
from typing import TYPE_CHECKING, Any

from anchorwatt.papers import screens
from anchorwatt.papers.keys import in_unit
from anchorwatt.papers.page import Content, Gap, Paragraph, Words, figures, page, section, table
from anchorwatt.units import Money, System, show

if TYPE_CHECKING:
    from collections.abc import Callable

    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.generator import GeneratorStory, Point
    from anchorwatt.sizing.generator import GeneratorComparison, Way

Plain = dict[str, Any]

NONE_FITS = "No generating set of the catalogue gives what this boat needs; name one under generator: in the file."


def screen(assessment: Assessment, system: System) -> Content:
    """The set, the ways to have the night, and the points one by one."""
    story = assessment.generator
    if story is None:
        return page(screens.about(assessment), Paragraph(NONE_FITS), Gap(), screens.cautions(assessment))
    found = story.comparison
    return page(
        screens.about(assessment),
        section(found.generator.name, *_about_the_set(found, system)),
        section("Ways to have the night", *_ways(found, system)),
        section("Noise", Paragraph(_noise(found, system))),
        section("Point by point, the set by its better way", *_points(story, system)),
        section("Fair to both", *(Paragraph(words) for words in fair(found, system))),
        section("With a generating set", *(Paragraph(words) for words in story.cautions)),
        screens.cautions(assessment),
    )


def plain(assessment: Assessment) -> Plain:
    """What `generator` shows, as plain data."""
    story = assessment.generator
    cautions = list(assessment.cautions)
    if story is None:
        return {"generator": None, "note": NONE_FITS, "cautions": cautions}
    found, made = story.comparison, story.comparison.generator
    return {
        "generator": {
            "name": made.name,
            "rated_power_W": in_unit(made.rated_power, "W", "power"),
            "mass_kg": in_unit(made.mass, "kg", "mass"),
            f"price_{found.currency}": in_unit(made.price, "", "ratio"),
            "sound_at_1_m_dBA": in_unit(made.noise, "", "ratio"),
            "sleepers_distance_m": in_unit(found.distance, "m", "length"),
            "sound_at_sleepers_in_the_open_dBA": in_unit(found.level, "", "ratio"),
            "full_load_efficiency_pct": in_unit(found.full_load_efficiency, "%", "share"),
            "d2_fuel_g_per_kWh": in_unit(found.fuel_per_work, "", "ratio"),
            "service_interval_hours": in_unit(made.service_interval, "h", "time"),
            f"service_price_{found.currency}": in_unit(made.service_price, "", "ratio"),
        },
        "charger": found.charger,
        "night_peak_W": in_unit(found.night_peak, "W", "power"),
        "night_served": found.night_served,
        "nights_per_year": in_unit(found.nights, "", "ratio"),
        "ways": [_way(found, way) for way in found.ways],
        "points": [_plain_point(found, point) for point in story.points],
        "cautions": [*story.cautions, *cautions],
    }


def _way(found: GeneratorComparison, way: Way) -> Plain:
    return {
        "way": way.key,
        "name": way.name,
        "night_fuel_L": in_unit(way.fuel, "L", "liquid volume"),
        "year_fuel_L": in_unit(found.fuel_per_year(way), "L", "liquid volume"),
        "night_running_hours": in_unit(way.running, "h", "time"),
        "year_running_hours": in_unit(found.running_per_year(way), "h", "time"),
        "while_asleep_hours": in_unit(way.by_night, "h", "time"),
        "peak_load_W": in_unit(way.peak, "W", "power"),
        "mean_load_pct": in_unit(way.mean_load, "%", "share"),
        "light_load_pct": in_unit(way.light, "%", "share"),
        "over_rating_pct": in_unit(way.over, "%", "share"),
        "year_services": in_unit(found.services_per_year(way), "", "ratio"),
        f"year_service_price_{found.currency}": in_unit(found.service_price_per_year(way), "", "ratio"),
        "overhaul_after_years": in_unit(found.years_of_life(way), "", "ratio"),
        "year_carbon_dioxide_kg": in_unit(found.carbon_dioxide_per_year(way), "kg", "mass"),
    }


_UNITS = {"mass": "kg", "liquid volume": "L", "time": "h"}
_ENDS = {"h": "hours"}


def _plain_point(found: GeneratorComparison, point: Point) -> Plain:
    unit = _UNITS.get(point.dimension, "")
    end = _ENDS.get(unit, unit) or found.currency
    dimension = point.dimension if unit else "ratio"
    other = None if math.isinf(point.set) else in_unit(point.set, unit, dimension)
    return {
        "point": point.key,
        "question": point.question,
        f"design_{end}": in_unit(point.design, unit, dimension),
        f"set_{end}": other,
        "set_without_limit": math.isinf(point.set),
        "better": point.better.value,
    }


def _about_the_set(found: GeneratorComparison, system: System) -> list[Content]:
    made = found.generator
    rows = [
        (show(made.rated_power, "power", system), "rated output, at " + show(made.speed, "rotational speed", system)),
        (show(found.night_peak, "power", system), "the night's highest minute at its terminals"),
        (show(found.full_load_efficiency, "share", system), "of the fuel's heat becomes electricity at full load"),
        (f"{found.fuel_per_work:.0f} g/kWh", "of fuel over the loads of test cycle D2"),
        (show(made.mass, "mass", system), "with exhaust, mounts and fuel lines"),
        (_money(made.price, found.currency), "to buy, installation not counted"),
    ]
    words = f"DC loads and the bank are fed through the {found.charger}. Sets and their prices are invented."
    parts: list[Content] = [table(("", ""), (">", "<"), rows), Paragraph(words)]
    if not found.night_served:
        parts.append(Paragraph("The design's own bank does not serve the night to its end; the set would."))
    return parts


def _ways(found: GeneratorComparison, system: System) -> list[Content]:
    def litres(value: float) -> str:
        return show(value, "liquid volume", system)

    def hours(value: float) -> str:
        return show(value, "time", system) if value else "none"

    def share(value: float) -> str:
        return show(value, "share", system)

    def count(value: float) -> str:
        return "—" if math.isnan(value) else f"{value:.1f}"

    def price(value: float) -> str:
        return _money(value, found.currency)

    measures: tuple[tuple[str, Callable[[Way], str]], ...] = (
        ("fuel a night", lambda way: litres(way.fuel)),
        ("fuel a year", lambda way: litres(found.fuel_per_year(way))),
        ("carbon dioxide a year", lambda way: show(found.carbon_dioxide_per_year(way), "mass", system)),
        ("running for this, a night", lambda way: hours(way.running)),
        ("running for this, a year", lambda way: hours(found.running_per_year(way))),
        ("running while people sleep", lambda way: hours(way.by_night)),
        ("mean load", lambda way: share(way.mean_load)),
        ("light load, of its running", lambda way: share(way.light)),
        ("over its rating", lambda way: share(way.over)),
        ("services a year", lambda way: count(found.services_per_year(way))),
        ("their price", lambda way: price(found.service_price_per_year(way))),
        ("years to an overhaul", lambda way: count(found.years_of_life(way))),
    )
    heads = ("", *(way.name.replace(", ", ",\n") for way in found.ways))
    rows = [(name, *(told(way) for way in found.ways)) for name, told in measures]
    light = show(found.generator.lowest_load, "share", system)
    words = (
        f"A year has {found.nights:g} nights aboard. Under way the engine runs anyway: only what it burns more for the "
        "alternators counts. At anchor it runs for the bank alone: all of its fuel and time counts. Mean load of the "
        f"engine: of what it gives at that speed. Light load: below {light} of the rating, where bores glaze and "
        "exhausts soot (from memory). Services by running hours, one a year at least; the engine has its own anyway, "
        "and its further wear at anchor is not priced."
    )
    return [table(heads, figures(heads), rows, free=0), Paragraph(words)]


def _noise(found: GeneratorComparison, system: System) -> str:
    made = found.generator
    return (
        f"{made.noise:.0f} dB(A) at {show(1.0, 'length', system)} in its enclosure, by its record. At the nearest "
        f"berth, put {show(found.distance, 'length', system)} away (a quarter of the boat's length, common practice, "
        f"no source), distance alone leaves {found.level:.0f} dB(A). What bulkheads take away is not credited; what "
        "comes through the hull and the exhaust is not counted. Neither is known. For sleep the guidelines of the "
        "World Health Organization of 1999 ask for 30 dB(A) (from memory)."
    )


def side_by_side(points: tuple[Point, ...], currency: str, system: System, caption: str = "") -> Content:
    """Both on each point, and who comes out better."""

    def told(value: float, dimension: str) -> str:
        if math.isinf(value):
            return "while fuel lasts"
        return _money(value, currency) if dimension == "money" else show(value, dimension, system)

    rows = [
        (
            point.question,
            told(point.design, point.dimension),
            told(point.set, point.dimension),
            Words(point.better.value, "strong"),
        )
        for point in points
    ]
    return table(("", "design", "set", "better"), ("<", ">", ">", "<"), rows, free=0, caption=caption)


def _points(story: GeneratorStory, system: System) -> list[Content]:
    words = (
        "Price and mass of the design: bank, inverter, alternators and belts. A set that runs all night spares most of "
        "the bank and the inverter; one that recharges needs them too."
    )
    return [side_by_side(story.points, story.comparison.currency, system), Paragraph(words)]


def fair(found: GeneratorComparison, system: System) -> list[str]:
    """What speaks for either, in words."""
    under_way, at_anchor = found.way("under-way"), found.way("at-anchor")
    words = [
        (
            "For the set: night after night at anchor without an hour of the main engine, hot days as well as nights, "
            "large loads at any hour, and nothing to wait for when the bank is low."
        )
    ]
    if at_anchor is not None and math.isnan(at_anchor.running):
        words.append("The engines do not put the night back within a day at anchor: there the set is the only way.")
    elif at_anchor is not None:
        each, load = show(at_anchor.running, "time", system), show(at_anchor.mean_load, "share", system)
        words.append(
            f"A boat that stays where it is runs its main engine {each} a day for the bank, at {load} of what it gives "
            "at that speed; the lighter it is loaded, the worse for it."
        )
    quiet = "For the design: no engine runs while people sleep"
    if under_way is not None and not math.isnan(under_way.running):
        quiet += ", and on days under way none runs for the bank at all"
    words.append(f"{quiet}; no second engine to buy, feed, service and give an exhaust.")
    words.append(
        "Loads that run a part of the time are counted at their mean, so real peaks are higher. Fuel by Willans lines, "
        "9.905 kWh a litre (UK government 2025); 2640 g of carbon dioxide a litre (EU 2020/728)."
    )
    return words


def _money(amount: float, currency: str) -> str:
    return "—" if math.isnan(amount) else str(Money(Decimal(round(amount)), currency))
