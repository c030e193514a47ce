"""The recharge command: the plan's own recharge, and the night put back at each engine speed."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from anchorwatt.papers import as_json, screens
from anchorwatt.papers.keys import in_unit
from anchorwatt.papers.page import Content, Gap, Paragraph, Side, Words, page, section, table
from anchorwatt.papers.select import some_rows
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Answer, Assessment, Recharge
    from anchorwatt.assessment.recharging import BestSpeeds, Recharging
    from anchorwatt.sizing.recharge import SpeedPoint

Plain = dict[str, Any]

_LEGEND = (
    "A: of all alternators, mean until full and highest. Added: burnt for the alternators alone; burnt: all that the "
    "engines burn meanwhile. Held: what holds the alternators back most of the time: their own curve when hot, what "
    "the bank takes, the current setting, the held temperature (heat), the belt, the engine. Load: of the engine with "
    "the least, over what it could give at that speed; “!” marks a light one. “—”: not within a day."
)


def screen(assessment: Assessment, system: System) -> Content:
    """How the engines put the night back, by the plan and at each speed."""
    found, made = assessment.recharge, assessment.recharging
    parts = [screens.about(assessment), section("Recharge", *screens.recharge_story(found, system))]
    if found is not None:
        parts.append(section("As it goes", *_alternators(found, system)))
    if made is not None:
        parts.append(section("Best engine speeds", *_best(made, system)))
        parts += [section(_heading(best), _speeds(made, best, system)) for best in (*made.with_all, *made.one_lost)]
        parts.append(section("How to read these", Paragraph(_LEGEND), Paragraph(made.light_load_caution)))
    return page(*parts, screens.cautions(assessment))


def plain(assessment: Assessment) -> Plain:
    """What `recharge` shows, as plain data."""
    made = assessment.recharging
    return {
        **as_json.recharge(assessment),
        "answers": {} if made is None else {one.key: _headline(one) for one in made.answers},
        "by_engine_speed": None
        if made is None
        else {
            "with_all": [_sweep(made, best) for best in made.with_all],
            "one_lost": [_sweep(made, best) for best in made.one_lost],
            "light_load_pct": in_unit(made.light_load, "%", "share"),
            "light_load_caution": made.light_load_caution,
        },
    }


def rows(assessment: Assessment) -> list[Plain]:
    """Every speed of every sweep, as a table."""
    made = assessment.recharging
    if made is None:
        return []
    return [
        {"where": best.name, "lost": best.sweep.lost, **_point(made, point, joined=True)}
        for best in (*made.with_all, *made.one_lost)
        for point in best.sweep.points
    ]


def answers(assessment: Assessment) -> tuple[Answer, ...]:
    """What `--why` can explain here."""
    return () if assessment.recharging is None else assessment.recharging.answers


def _headline(answer: Answer) -> float | None:
    return in_unit(answer.value, answer.unit, answer.dimension)


def _sweep(made: Recharging, best: BestSpeeds) -> Plain:
    sweep = best.sweep
    return {
        "where": best.name,
        "lost": sweep.lost or None,
        "quickest": best.quickest or None,
        "least_fuel_added": best.least_added or None,
        "recommended": best.recommended or None,
        "because": sweep.reason,
        "speeds": [_point(made, point) for point in sweep.points],
    }


def _point(made: Recharging, point: SpeedPoint, joined: bool = False) -> Plain:
    from anchorwatt.assessment.recharging import HELD_BY

    speeds = {
        name: in_unit(speed, "rpm", "rotational speed")
        for name, speed in zip(made.engines, point.engine_speeds, strict=True)
    }
    return {
        **({f"engine_speed_rpm.{name}": speed for name, speed in speeds.items()} if joined else {}),
        **({} if joined else {"engine_speeds_rpm": speeds}),
        "boat_speed_kn": in_unit(point.boat_speed, "kn", "speed"),
        "mean_current_A": in_unit(point.mean_current, "A", "current"),
        "peak_current_A": in_unit(point.peak_current, "A", "current"),
        "to_80_pct_hours": in_unit(point.mostly_filled_at, "h", "time"),
        "to_full_hours": in_unit(point.full_at, "h", "time"),
        "fuel_added_L": in_unit(point.fuel_added, "L", "liquid volume"),
        "fuel_burnt_L": in_unit(point.fuel_burnt, "L", "liquid volume"),
        "hottest_winding_C": in_unit(point.hottest_winding, "°C", "temperature"),
        "mostly_held_by": HELD_BY[point.mostly_held_by],
        "engine_load_pct": in_unit(point.load_share, "%", "share"),
        "light_load": point.light,
    }


def _alternators(found: Recharge, system: System) -> list[Content]:
    run = found.table
    shown = some_rows(run)
    bank = ("charge_pct", "bank_current_A", "bank_voltage_V", "plant_power_W", "fuel_flow_L_per_h")
    heads = ("charge", "from bank", "bank", "plant", "fuel")
    tables = [screens.series(run, shown, bank, heads, system)]
    machines = [one.key.split(".", 1)[1] for one in run.columns if one.key.startswith("alternator_current_A.")]
    for name in machines:
        keys = (
            f"alternator_current_A.{name}",
            f"winding_temperature_C.{name}",
            f"frame_temperature_C.{name}",
        )
        tables += [Gap(), screens.series(run, shown, keys, ("current", "winding", "frame"), system, caption=name)]
    return tables


def _best(made: Recharging, system: System) -> list[Content]:
    """The headline figures, and in words which speed and why."""
    lines = []
    for answer in made.answers:
        question = Words(answer.question)
        question = question.then(f"\n{answer.note}", "aside")
        lines.append((Words(screens.figure(answer.value, answer.dimension, system), "strong"), question))
    return [table(("", ""), (">", "<"), lines), *(Paragraph(words) for words in map(_range, made.with_all) if words)]


def _range(best: BestSpeeds) -> str:
    """From which to which speed the bank is filled in time; the crew chooses within it."""
    if not best.in_time:
        return ""
    return f"{best.name.capitalize()} the bank is full in the time allowed at {best.in_time}."


def _heading(best: BestSpeeds) -> str:
    if best.sweep.lost:
        return f"{best.name.capitalize()} with {best.sweep.lost} lost, the worst to lose"
    return f"At each engine speed, {best.name}"


def _speeds(made: Recharging, best: BestSpeeds, system: System) -> Content:
    """A row a speed. Engines at different speeds each have their column."""
    points = best.sweep.points
    columns = [
        n
        for n in range(len(made.engines))
        if n == 0 or any(point.engine_speeds[n] != point.engine_speeds[0] for point in points)
    ]
    moving = best.sweep.propelling
    volume = heading_unit("liquid volume", system)
    heads = [
        *("rpm\n" for _ in columns),
        *(["boat\nkn"] if moving else []),
        *("mean\nA", "peak\nA", "to 80 %\nh", "full\nh", f"added\n{volume}", f"burnt\n{volume}"),
        f"winding\n{heading_unit('temperature', system)}",
        *("held\nby", "load\n%", "\n"),
    ]
    sides: list[Side] = [">" for _ in heads]
    sides[-3] = sides[-1] = "<"
    listed = table(heads, sides, [_row(point, columns, moving, system) for point in points])
    if len(columns) == 1:
        return listed
    engines = ", ".join(made.engines[n] for n in columns)
    return page(listed, Paragraph(f"Columns of rpm from the left: {engines}. At 0 an engine stands."))


def _row(point: SpeedPoint, columns: Sequence[int], moving: bool, system: System) -> list[str]:
    from anchorwatt.assessment.recharging import HELD_BY_IN_SHORT

    return [
        *(reading(point.engine_speeds[n], "rotational speed", system) for n in columns),
        *([show(point.boat_speed, "speed", system).split()[0]] if moving else []),
        reading(point.mean_current, "current", system),
        reading(point.peak_current, "current", system),
        reading(point.mostly_filled_at, "time", system),
        reading(point.full_at, "time", system),
        reading(point.fuel_added, "liquid volume", system),
        reading(point.fuel_burnt, "liquid volume", system),
        reading(point.hottest_winding, "temperature", system),
        HELD_BY_IN_SHORT[point.mostly_held_by],
        reading(point.load_share, "share", system),
        "!" if point.light else "",
    ]
