"""What the commands show of the air that people breathe and of what carries air, refrigerant and water."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from anchorwatt.papers.page import Content, Gap, Paragraph, Words, figures, table
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import System, show, show_clock

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment


def comfort(assessment: Assessment, system: System) -> list[Content]:
    """How people in each cabin feel, hour by hour."""
    hours = assessment.comfort
    if not hours:
        return [Words("Nobody is aboard by night.")]
    warmth = heading_unit("temperature", system)
    heads = ("cabin", "from", f"air\n{warmth}", f"felt\n{warmth}", "humid\n%", "vote", "unhappy\n%")
    rows: list[tuple[str, ...]] = []
    named = -1
    for hour in hours:
        rows.append(
            (
                assessment.specification.cabins[hour.cabin].name if hour.cabin != named else "",
                show_clock(hour.start),
                reading(hour.air, "temperature", system),
                reading(hour.operative, "temperature", system),
                reading(hour.humidity, "share", system),
                _signed(hour.vote),
                reading(hour.dissatisfied, "share", system),
            )
        )
        named = hour.cabin
    words = "Vote: −3 cold, −1 slightly cool, 0 neither, 1 slightly warm, 3 hot (ISO 7730)."
    if not all(hour.within_standard for hour in hours):
        words += " Asleep it is used below the activity that the standard covers: a guide."
    return [table(heads, figures(heads), rows, free=0), Paragraph(words)]


def breathed(assessment: Assessment, system: System) -> list[Content]:
    """Carbon dioxide and outdoor air in each cabin that people are in by night."""
    cabins = assessment.cabin_air
    if not cabins:
        return [Words("Nobody is aboard by night.")]
    flow = heading_unit("volume flow", system)
    heads = ("cabin", "people", "highest\nppm", "at the\nend ppm", f"outdoor\nair {flow}", f"for 1000\nppm {flow}")
    rows = [
        (
            assessment.specification.cabins[air.cabin].name,
            f"{air.people:g}",
            reading(air.highest, "share by volume", system),
            reading(air.at_end, "share by volume", system),
            reading(air.outdoor_flow, "volume flow", system),
            reading(air.needed[0], "volume flow", system),
        )
        for air in cabins
    ]
    words = "Carbon dioxide tells how stale the air is. It says nothing of carbon monoxide, which needs its alarm."
    return [table(heads, figures(heads), rows, free=0), Paragraph(words)]


def water(assessment: Assessment, system: System) -> list[Content]:
    """Condensate, and how near inside surfaces come to dew."""
    found = assessment.condensate
    rows = [
        (show(found.night_volume, "liquid volume", system), "of condensate in the night"),
        (show(found.day_volume, "liquid volume", system), "in 24 hours"),
        (show(found.peak_flow, "fuel flow", system), "in the wettest hour"),
    ]
    parts: list[Content] = [table(("", ""), (">", "<"), rows)]
    parts += [Paragraph(f"{one.text} ({one.source})") for one in assessment.drain_advice]
    surfaces = assessment.surface_dew
    if surfaces:
        worst = min(surfaces, key=lambda surface: surface.margin)
        name = assessment.specification.cabins[worst.cabin].name
        margin = show(worst.margin, "temperature difference", system)
        parts.append(
            Paragraph(
                f"The inside surface nearest to dew is in {name} at {show_clock(worst.at)}: "
                f"{show(worst.surface, 'temperature', system)}, {margin} over the dew point of its air."
            )
        )
    return parts


def ducts(assessment: Assessment, system: System) -> list[Content]:
    """Every duct with its grille, and every handler's fan."""
    handlers = assessment.handlers_air
    if not any(handler.runs for handler in handlers):
        return [Words("No air handler of this design has an outlet.")]
    flow, speed = heading_unit("volume flow", system), heading_unit("velocity", system)
    heads = ("handler, outlet", f"wanted\n{flow}", f"gets\n{flow}", f"duct\n{speed}", f"grille\n{speed}", "loss\nPa")
    rows = [
        (
            f"{handler.name}, {run.outlet}" if run.outlet != handler.name else handler.name,
            reading(run.wanted, "volume flow", system),
            reading(run.airflow, "volume flow", system),
            reading(run.velocity, "velocity", system),
            reading(run.grille_velocity, "velocity", system),
            f"{run.pressure:.0f}",
        )
        for handler in handlers
        for run in handler.runs
    ]
    fans = [
        (
            handler.name,
            reading(handler.rated_airflow, "volume flow", system),
            reading(handler.airflow, "volume flow", system),
            f"{handler.pressure_needed:.0f}",
            f"{handler.spare_pressure:.0f}",
            reading(handler.return_velocity, "velocity", system),
        )
        for handler in handlers
    ]
    fan_heads = ("handler", f"rated\n{flow}", f"gives\n{flow}", "needs\nPa", "fan has\nPa", f"return\n{speed}")
    return [
        table(heads, figures(heads), rows, free=0),
        Gap(),
        table(fan_heads, figures(fan_heads), fans, free=0),
    ]


def refrigerant(assessment: Assessment, system: System) -> list[Content]:
    """The charge against what the safety standards allow in the smallest occupied cabin."""
    found = assessment.refrigerant
    if found is None:
        return [Words("The plant reaches no occupied cabin.")]
    cabin = assessment.specification.cabins[found.cabin].name
    rows = [
        (show(found.charge, "mass", system), f"of {found.refrigerant}, class {found.safety_class}, lines counted in"),
        (show(found.line_length, "length", system), "of line, one way, all handlers together"),
        (show(found.concentration, "density", system), f"if all of it leaked into {cabin}"),
        (show(found.practical_limit, "density", system), "practical limit"),
        (show(found.limit_with_ventilation, "density", system), "with minimum ventilation (QLMV)"),
        (show(found.limit_with_two_measures, "density", system), "with two further measures (QLAV)"),
    ]
    if not math.isnan(found.largest_charge):
        rows.append((show(found.largest_charge, "mass", system), "largest charge over the smallest floor; it burns"))
    parts: list[Content] = [table(("", ""), (">", "<"), rows)]
    parts += [Paragraph(f"→ {remedy}") for remedy in found.remedies]
    words = "Refrigerant work is for certified people; the standards in force where the boat lies decide."
    parts.append(Paragraph(words))
    return parts


def seawater(assessment: Assessment, system: System) -> list[Content]:
    """The seawater circuit at full load."""
    found = assessment.seawater
    rows = [
        (show(found.flow, "liquid flow", system), "through the condenser"),
        (show(found.rise, "temperature difference", system), "warmer when it leaves, at the rated load"),
        (show(found.hose_velocity, "velocity", system), "in the hose"),
        (show(found.through_hull_velocity, "velocity", system), "in the through-hull"),
        (show(found.pressure_needed, "pressure", system), "taken by lift, hose, strainer and condenser"),
        (show(found.pump_pressure, "pressure", system), "given by the pump"),
        (show(found.condensing, "temperature", system), "condensing in the year's warmest sea"),
    ]
    words = "A through-hull can sink the boat: a proper seacock, double clips, and the work of a qualified yard."
    return [table(("", ""), (">", "<"), rows), Paragraph(words)]


def _signed(value: float) -> str:
    return f"{value:+.1f}".replace("-", "−")
