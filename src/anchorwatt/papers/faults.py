"""The faults command: what is lost, what protects, what the crew sees and does; one fault minute by minute."""

from __future__ import annotations

from difflib import get_close_matches
from typing import TYPE_CHECKING, Any

from anchorwatt.errors import AnchorwattError
from anchorwatt.papers import screens
from anchorwatt.papers.as_json import table_rows
from anchorwatt.papers.keys import in_unit
from anchorwatt.papers.page import Content, Gap, Paragraph, Words, figures, page, section, table, unbroken
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import DIMENSIONS, System, show, show_clock

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.faults import FaultAnswer

Plain = dict[str, Any]

PRACTICE = (
    "Figures come from runs of this design. What protects and what the crew does is common practice, no source; the "
    "makers' instructions come first."
)


def screen(assessment: Assessment, system: System, commands: bool = True) -> Content:
    """Every fault that the boat can have, in words; how to ask for one of them can be left out, as on paper."""
    parts: list[Content] = [screens.about(assessment)]
    for found in assessment.faults:
        fault = found.fault
        told = (Paragraph(f"{heading}: {words}") for _, heading, words in found.story(system, unbroken))
        clock = show_clock(fault.at)
        heading = f"{fault.name}, at {clock} ({fault.key})" if commands else f"{fault.name}, at {clock}"
        parts.append(section(heading, *told))
    if not assessment.faults:
        parts.append(Paragraph("This boat has nothing of what these faults are about."))
    elif commands:
        keys = ", ".join(found.fault.key for found in assessment.faults)
        parts.append(Paragraph(f"One of them minute by minute: --show KEY, with KEY one of {keys}."))
    return page(
        *parts,
        Gap(),
        Paragraph(PRACTICE),
        Gap(),
        single_losses(assessment, system),
        screens.cautions(assessment),
    )


def single_losses(assessment: Assessment, system: System) -> Content:
    """One row a part lost, the sound boat first."""
    story = assessment.redundancy
    lines: list[list[str | Words]] = []
    for row in story.rows:
        loss = row.loss
        words = Words(loss.part, "strong")
        if row is not story.sound:
            words = words.then(f"\nstops: {row.stops}; goes on: {row.goes_on}")
        hold = reading(loss.hold, "time", system)
        lines.append(
            [
                words,
                reading(loss.cooling, "share", system),
                f"{hold}+" if row.longest else hold,
                reading(loss.charging, "share", system),
                loss.home,
            ]
        )
    share, hours = heading_unit("share", system), heading_unit("time", system)
    heads = ("lost", f"cooling\n{share}", f"bank holds\n{hours}", f"charging\n{share}", "home by\nengine")
    return section(
        "Any single part lost",
        table(heads, ("<", ">", ">", ">", "<"), lines, free=0),
        *(Paragraph(words) for words in (*story.assumptions, "+: so long or longer.")),
    )


def one(assessment: Assessment, key: str, system: System) -> Content:
    """One fault with its figures, minute by minute."""
    found = named(assessment, key)
    fault = found.fault
    told = (Paragraph(f"{heading}: {words}") for _, heading, words in found.story(system, unbroken))
    rows = [(show(each.value, each.dimension, system), each.name) for each in fault.figures]
    columns = found.minutes.columns
    heads = ("at", *(f"{column.label}\n{heading_unit(column.dimension, system)}" for column in columns))
    lines: list[list[str | Words]] = []
    for row, time in enumerate(found.minutes.clock):
        figures_of_row = [reading(float(column.values[row]), column.dimension, system) for column in columns]
        lines.append([Words(show_clock(time), "strong" if time == fault.at else ""), *figures_of_row])
    clock = show_clock(fault.at)
    return page(
        screens.about(assessment),
        section(f"{fault.name}, at {clock}", *told),
        section("Figures", table(("", ""), (">", "<"), rows)),
        section(
            "Minute by minute",
            table(heads, figures(heads), lines),
            Paragraph(f"It strikes at {clock}; a row is the minute that ends then. Warmest: of the cooled cabins."),
        ),
        screens.cautions(assessment),
    )


def named(assessment: Assessment, key: str) -> FaultAnswer:
    """The fault of that key, or an error that names the nearest."""
    known = {found.fault.key: found for found in assessment.faults}
    if key in known:
        return known[key]
    near = get_close_matches(key, known, n=1)
    hint = f", perhaps “{near[0]}”" if near else ""
    raise AnchorwattError(f"--show: found no fault “{key}”{hint}; allowed: one of: {', '.join(known)}")


def plain(assessment: Assessment, key: str | None = None) -> Plain:
    """What `faults` shows, as plain data; with a key that fault alone, minute by minute."""
    some = assessment.faults if key is None else (named(assessment, key),)
    return {
        "faults": [_fault(found, minutes=key is not None) for found in some],
        **({"single_losses": losses(assessment)} if key is None else {}),
        "source": "runs of this design; what protects and what the crew does: common practice, no source",
        "cautions": list(assessment.cautions),
    }


def losses(assessment: Assessment) -> list[Plain]:
    """A row a part lost, the sound boat first."""
    return [
        {
            "key": row.loss.key,
            "lost": row.loss.part,
            "stops": row.stops if row is not assessment.redundancy.sound else "nothing",
            "goes_on": row.goes_on,
            "cooling_pct": in_unit(row.loss.cooling, "%", "share"),
            "bank_holds_h": in_unit(row.loss.hold, "h", "time"),
            "or_longer": row.longest,
            "charging_pct": in_unit(row.loss.charging, "%", "share"),
            "charging_at_anchor_W": in_unit(row.loss.at_anchor, "W", "power"),
            "charging_at_the_dock_W": in_unit(row.loss.ashore, "W", "power"),
            "direct_current_from": row.loss.direct,
            "alternating_current": row.loss.alternating,
            "home_by_engine": row.loss.home,
        }
        for row in assessment.redundancy.rows
    ]


def _fault(found: FaultAnswer, minutes: bool) -> Plain:
    fault = found.fault
    return {
        "key": fault.key,
        "name": fault.name,
        "at": show_clock(fault.at),
        **{part: words for part, _, words in found.story("si")},
        "figures": [
            {
                "key": each.key,
                "name": each.name,
                "value": in_unit(each.value, _unit(each.dimension), each.dimension),
                "unit": _unit(each.dimension),
            }
            for each in fault.figures
        ],
        **({"minutes": table_rows(found.minutes)} if minutes else {}),
    }


def _unit(dimension: str) -> str:
    return "%" if dimension == "share" else DIMENSIONS[dimension].si
