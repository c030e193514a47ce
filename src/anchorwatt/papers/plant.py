"""The plant command: capacity, power and COP over sea and load, its pipes, and other plants on the same night."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from anchorwatt.papers import air_and_water, as_json, screens
from anchorwatt.papers.air_and_water_json import pipes
from anchorwatt.papers.keys import in_unit
from anchorwatt.papers.page import Content, Paragraph, page, section, table
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.plant import PlantPoint

Plain = dict[str, Any]


def screen(assessment: Assessment, system: System) -> Content:
    """The plant, what it runs on, and the comparison."""
    made = assessment.plant
    coil = show(made.cooling[0].coil, "temperature", system)
    parts = [
        screens.about(assessment),
        section(
            f"{made.name}, {made.refrigerant}, at full speed",
            _full(assessment, system),
            Paragraph(f"Refrigerant at {coil} in the coils. COP: cooling over power."),
        ),
        section(
            "COP of the whole plant at part load",
            _part(made.cooling, system),
            Paragraph(
                "Load as a share of what the compressor gives at full speed in that sea; fans, seawater pump and "
                "controls are in. Below the lowest speed the compressor stops and starts, which costs."
            ),
        ),
    ]
    if made.heating:
        parts.append(section("Heating at full speed", *_heating(assessment, system)))
        parts.append(section("COP of the whole plant heating at part load", _part(made.heating, system)))
    parts += [
        section("Kinds of cooling plant, the same night", *screens.comparison(assessment, system)),
        section("Ducts and fans", *air_and_water.ducts(assessment, system)),
        section("Refrigerant", *air_and_water.refrigerant(assessment, system)),
        section("Seawater", *air_and_water.seawater(assessment, system)),
        screens.cautions(assessment),
    ]
    return page(*parts)


def plain(assessment: Assessment) -> Plain:
    """What `plant` shows, as plain data."""
    made = assessment.plant
    return {
        "plant": made.name,
        "refrigerant": made.refrigerant,
        "cooling": [_point(point) for point in made.cooling],
        "heating": [_point(point) for point in made.heating],
        "comparison": [as_json.comparison(row) for row in assessment.comparisons],
        "pipes": pipes(assessment),
        "cautions": list(assessment.cautions),
    }


def _point(point: PlantPoint) -> Plain:
    return {
        "sea_C": in_unit(point.sea, "°C", "temperature"),
        "load_pct": in_unit(point.share, "%", "share"),
        "coil_C": in_unit(point.coil, "°C", "temperature"),
        "capacity_W": in_unit(point.load, "W", "heat flow"),
        "compressor_power_W": in_unit(point.compressor_power, "W", "power"),
        "plant_power_W": in_unit(point.plant_power, "W", "power"),
        "compressor_cop": in_unit(point.compressor_cop, "", "ratio"),
        "plant_cop": in_unit(point.plant_cop, "", "ratio"),
        "running_pct": in_unit(point.running, "%", "share"),
    }


def _full(assessment: Assessment, system: System) -> Content:
    heat, warmth = heading_unit("heat flow", system), heading_unit("temperature", system)
    heads = (
        f"seawater\n{warmth}",
        f"cooling\n{heat}",
        "compressor\nW",
        "whole plant\nW",
        "compressor\nCOP",
        "plant\nCOP",
    )
    return table(heads, (">",) * 6, [_row(point, system) for point in assessment.plant.at(1.0)])


def _row(point: PlantPoint, system: System) -> tuple[str, ...]:
    return (
        reading(point.sea, "temperature", system),
        reading(point.load, "heat flow", system),
        reading(point.compressor_power, "power", system),
        reading(point.plant_power, "power", system),
        f"{point.compressor_cop:.1f}",
        f"{point.plant_cop:.1f}",
    )


def _part(points: Sequence[PlantPoint], system: System) -> Content:
    """COP of the whole plant, a row a sea, a column a load."""
    shares = tuple(dict.fromkeys(point.share for point in points))
    columns = [[point for point in points if point.share == share] for share in shares]
    heads = (f"seawater\n{heading_unit('temperature', system)}", *(f"load\n{show(s, 'share', system)}" for s in shares))
    rows = [
        (reading(row[0].sea, "temperature", system), *(f"{point.plant_cop:.1f}" for point in row))
        for row in zip(*columns, strict=True)
    ]
    return table(heads, [">" for _ in heads], rows)


def _heating(assessment: Assessment, system: System) -> list[Content]:
    heat, warmth = heading_unit("heat flow", system), heading_unit("temperature", system)
    heads = (f"seawater\n{warmth}", f"heat\n{heat}", "compressor\nW", "whole plant\nW", "compressor\nCOP", "plant\nCOP")
    points = assessment.plant.heating
    words = f"Refrigerant at {show(points[0].coil, 'temperature', system)} in the coils. COP: heat given over power."
    return [
        table(heads, (">",) * 6, [_row(point, system) for point in assessment.plant.heating_at(1.0)]),
        Paragraph(words),
    ]
