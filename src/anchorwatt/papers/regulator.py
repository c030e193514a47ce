"""The regulator command: what to set in the alternators' regulators, and an hour of charging held and hot."""

from __future__ import annotations

import math
from collections.abc import Sequence
from typing import TYPE_CHECKING, Any

from anchorwatt.papers import screens
from anchorwatt.papers.keys import in_unit
from anchorwatt.papers.page import Content, Gap, Paragraph, Side, Words, figures, page, section, table, unbroken
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import System, show, unit_for

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.regulator import MachineSetUp, RegulatorSetUp
    from anchorwatt.sizing.charging_hour import ChargingHour, Hour, Moment
    from anchorwatt.sizing.regulator import RegulatorRow
    from anchorwatt.sizing.setting import Input, Setting

Plain = dict[str, Any]

_LIMITS = (
    "Cold: what the curve gives cold. Hot: where it settles when only heat and the held temperature limit it. Belt, "
    "engine: the current that their power comes to with hot windings; under way the propeller turns. Bank: its share "
    "of what the bank takes half charged."
)
_SET = (
    "Set: the lowest of cold curve, current limit, belt, engine under way and bank; a regulator does not know whether "
    "the propeller turns. For long: what is left of it when the alternator is hot, and the temperatures then. Field: "
    "share of the full field for it, cold, of a machine that is not saturated; measure the current and correct it."
)


def screen(assessment: Assessment, system: System) -> Content:
    """The set-up sheet of every regulator aboard."""
    made = assessment.regulator
    parts: list[Content] = [screens.about(assessment)]
    if not made.machines:
        parts.append(section("Regulators", Words("No engine of this design carries an alternator.")))
        return page(*parts, screens.cautions(assessment))
    parts += set_up(assessment, system)
    parts.append(section("Belts and crankshaft", *_belts(made, system)))
    for hour in made.hours:
        where = "at anchor" if hour.at_anchor else "under way"
        if not math.isnan(hour.given_air):
            where += f", in air of {show(hour.given_air, 'temperature', system)}"
        parts.append(section(f"An hour of charging {where}, held and hot", *_hour(hour, system)))
    if made.load_dump is not None:
        parts.append(section("Load dump", *_load_dump(made, system)))
    parts.append(section("Where the engine turns", *(Paragraph(words) for words in made.cautions)))
    return page(*parts, screens.cautions(assessment))


def set_up(assessment: Assessment, system: System) -> list[Content]:
    """What to set in every regulator, without belts and hours; nothing where no engine carries an alternator."""
    made = assessment.regulator
    if not made.machines:
        return []
    machines = [part for alike in _alike(made.machines, system) for part in _machine(alike, system)]
    return [*machines, section("All regulators and the bank's management", *_settings(made.bank, system))]


def as_left(assessment: Assessment, system: System, blank: str) -> list[Content]:
    """What to set in every regulator, with a blank beside each figure for how it was left."""
    made = assessment.regulator
    groups: dict[object, list[MachineSetUp]] = {}
    for one in made.machines:
        groups.setdefault((tuple(_entered(one, system)), tuple(_speeds(one, system))), []).append(one)
    parts: list[Content] = [_left(alike, system, blank) for alike in groups.values()]
    if made.bank:
        rows = [(*_designed(setting, system), blank) for setting in made.bank]
        together = table(("", "design", "as left"), ("<", ">", "<"), rows, shares=LEFT_SHARES)
        parts.append(section("All regulators and the bank's management", together))
    return parts


LEFT_SHARES = (6, 3, 4)
"""Of the width: what is set, the design's figure, room to write."""


def _left(alike: Sequence[MachineSetUp], system: System, blank: str) -> Content:
    lefts, blanks = tuple(f"as left,\n{one.name}" for one in alike), (blank,) * len(alike)
    sides: tuple[Side, ...] = tuple("<" for _ in alike)
    shares = (8,) * len(alike)
    singles: list[tuple[str | Words, ...]] = [(*row, *blanks) for row in _entered(alike[0], system)]
    speeds = [(*row, *blanks) for row in _speeds(alike[0], system)]
    return section(
        _named(alike),
        table(("", "design", *lefts), ("<", ">", *sides), singles, shares=(10, 6, *shares)),
        Gap(),
        table(
            ("engine\nrpm", "set\nA", "field\n%", "\ngoverned by", *lefts),
            (">", ">", ">", "<", *sides),
            speeds,
            caption="Current by engine speed",
            shares=(3, 3, 3, 7, *shares),
        ),
    )


def _entered(one: MachineSetUp, system: System) -> list[tuple[Words, str]]:
    return [_designed(setting, system) for setting in one.settings if setting.entered]


def _speeds(one: MachineSetUp, system: System) -> list[tuple[str, ...]]:
    """Engine speed, current, field, and what governs."""
    return [line[:4] for line in _set_lines(one.sheet.rows, system)]


def _designed(setting: Setting, system: System) -> tuple[Words, str]:
    return Words(setting.name, "strong"), show(setting.value, setting.dimension, system)


def plain(assessment: Assessment) -> Plain:
    """What `regulator` shows, as plain data."""
    made = assessment.regulator
    dump = made.load_dump
    return {
        "alternators": [
            {
                "alternator": one.name,
                "engine": one.engine,
                "air_C": in_unit(one.sheet.air, "°C", "temperature"),
                "voltage_V": in_unit(one.sheet.voltage, "V", "voltage"),
                "speeds": [_row(row) for row in one.sheet.rows],
                "settings": [_setting(setting) for setting in one.settings],
                "belt": {
                    "worst_engine_speed_rpm": in_unit(one.sheet.pull.engine_speed, "rpm", "rotational speed"),
                    "velocity_m_per_s": in_unit(one.sheet.pull.velocity, "m/s", "velocity"),
                    "effective_tension_N": in_unit(one.sheet.pull.effective, "N", "force"),
                    "allowed_effective_tension_N": in_unit(one.sheet.pull.allowed, "N", "force"),
                    "tight_N": in_unit(one.sheet.pull.tight, "N", "force"),
                    "slack_N": in_unit(one.sheet.pull.slack, "N", "force"),
                    "side_load_N": in_unit(one.sheet.pull.load, "N", "force"),
                },
            }
            for one in made.machines
        ],
        "settings": [_setting(setting) for setting in made.bank],
        "crankshafts": [
            {
                "engine": made.engines[one.engine],
                "side_load_N": in_unit(one.load, "N", "force"),
                "maker_allows_N": in_unit(one.limit, "N", "force"),
            }
            for one in made.side_loads
        ],
        "hours": [_plain_hour(hour) for hour in made.hours],
        "load_dump": None
        if dump is None
        else {
            "source_resistance_mohm": in_unit(dump.resistance, "mΩ", "resistance"),
            "peak_V": in_unit(dump.peak, "V", "voltage"),
            "across_loads_V": in_unit(dump.across, "V", "voltage"),
            "suppressed_V": in_unit(dump.suppressed, "V", "voltage"),
            "clamp_energy_J": None if math.isnan(dump.energy) else float(f"{dump.energy:.6g}"),
        },
        "cautions": [*made.cautions, *assessment.cautions],
    }


def rows(assessment: Assessment) -> list[Plain]:
    """Every row of every sheet, as a table."""
    return [
        {"engine": one.engine, "alternator": one.name, **_row(row)}
        for one in assessment.regulator.machines
        for row in one.sheet.rows
    ]


def settings(assessment: Assessment) -> list[Plain]:
    """Every single setting, as a table."""
    made = assessment.regulator
    named = [(one.engine, one.name, setting) for one in made.machines for setting in one.settings]
    named += [("", "", setting) for setting in made.bank]
    return [
        {
            "engine": engine,
            "alternator": name,
            "setting": setting.name,
            "value": in_unit(setting.value, _unit(setting.dimension), setting.dimension),
            "unit": _unit(setting.dimension),
            "formula": setting.formula,
            "source": setting.source,
        }
        for engine, name, setting in named
    ]


def _row(row: RegulatorRow) -> Plain:
    return {
        "engine_speed_rpm": in_unit(row.engine_speed, "rpm", "rotational speed"),
        "rotor_speed_rpm": in_unit(row.rotor_speed, "rpm", "rotational speed"),
        "cold_A": in_unit(row.cold, "A", "current"),
        "hot_A": in_unit(row.hot, "A", "current"),
        "belt_A": in_unit(row.belt, "A", "current"),
        "engine_at_anchor_A": in_unit(row.at_anchor, "A", "current"),
        "engine_under_way_A": in_unit(row.under_way, "A", "current"),
        "bank_A": in_unit(row.bank, "A", "current"),
        "set_A": in_unit(row.set_current, "A", "current"),
        "field_pct": in_unit(row.field, "%", "share"),
        "governs": row.governs,
        "for_long_A": in_unit(row.lasting.current, "A", "current"),
        "winding_C": in_unit(row.lasting.winding, "°C", "temperature"),
        "frame_C": in_unit(row.lasting.frame, "°C", "temperature"),
        "governs_for_long": row.lasting_governs,
    }


def _setting(setting: Setting) -> Plain:
    return {
        "name": setting.name,
        "value": in_unit(setting.value, _unit(setting.dimension), setting.dimension),
        "unit": _unit(setting.dimension),
        "formula": setting.formula,
        "inputs": [
            {
                "name": one.name,
                "value": in_unit(one.value, _unit(one.dimension), one.dimension),
                "unit": _unit(one.dimension),
                "basis": one.basis,
            }
            for one in setting.inputs
        ],
        "source": setting.source,
    }


def _unit(dimension: str) -> str:
    if dimension == "time":
        return "s"  # as regulators ask for it
    return "" if dimension in ("count", "ratio") else unit_for(dimension, "si")


def _plain_hour(hour: ChargingHour) -> Plain:
    return {
        "at_anchor": hour.at_anchor,
        "highest_winding_C": in_unit(hour.highest_winding, "°C", "temperature"),
        "air_C": in_unit(hour.air, "°C", "temperature"),
        "hold_reached_in_air_C": in_unit(hour.reached_in, "°C", "temperature"),
        "engine_speeds_rpm": [in_unit(speed, "rpm", "rotational speed") for speed in hour.speeds],
        **{
            name: None
            if one is None
            else {
                "moments": [
                    {
                        "after_min": in_unit(moment.after, "min", "time"),
                        "current_A": in_unit(moment.current, "A", "current"),
                        "winding_C": in_unit(moment.winding, "°C", "temperature"),
                        "frame_C": in_unit(moment.frame, "°C", "temperature"),
                    }
                    for moment in one.moments
                ],
                "energy_kWh": in_unit(one.energy, "kWh", "energy"),
                "hottest_winding_C": in_unit(one.hottest_winding, "°C", "temperature"),
                "hottest_frame_C": in_unit(one.hottest_frame, "°C", "temperature"),
                "over_limit_min": in_unit(one.over, "min", "time"),
            }
            for name, one in (("held", hour.held), ("hot", hour.hot))
        },
    }


def _alike(machines: Sequence[MachineSetUp], system: System) -> list[list[MachineSetUp]]:
    """Machines of which the page would say the same, together."""
    groups: dict[object, list[MachineSetUp]] = {}
    for one in machines:
        values = tuple(show(setting.value, setting.dimension, system) for setting in one.settings)
        shown = (tuple(_limit_lines(one.sheet.rows, system)), tuple(_set_lines(one.sheet.rows, system)), values)
        groups.setdefault(shown, []).append(one)
    return list(groups.values())


def _machine(alike: Sequence[MachineSetUp], system: System) -> list[Content]:
    one = alike[0]
    voltage, air = show(one.sheet.voltage, "voltage", system), show(one.sheet.air, "temperature", system)
    return [
        section(
            _named(alike),
            _limits(one.sheet.rows, system),
            Paragraph(f"{_LIMITS} At {voltage}, in air of {air}."),
            Gap(),
            _to_set(one.sheet.rows, system),
            Paragraph(_SET),
            Gap(),
            *_settings(one.settings, system, "Single settings"),
        )
    ]


def _named(alike: Sequence[MachineSetUp]) -> str:
    name = " and ".join(machine.name for machine in alike)
    engines = " and ".join(dict.fromkeys(machine.engine for machine in alike))
    each = ", each set alike" if len(alike) > 1 else ""
    return f"{name} on {engines}{each}"


def _limit_lines(sheet: Sequence[RegulatorRow], system: System) -> list[tuple[str, ...]]:
    return [
        (
            reading(row.engine_speed, "rotational speed", system),
            reading(row.rotor_speed, "rotational speed", system),
            *(
                reading(amperes, "current", system)
                for amperes in (row.cold, row.hot, row.belt, row.at_anchor, row.under_way, row.bank)
            ),
        )
        for row in sheet
    ]


def _limits(sheet: Sequence[RegulatorRow], system: System) -> Content:
    heads = (
        "engine\nrpm",
        "rotor\nrpm",
        "\ncold",
        "\nhot",
        "\nbelt",
        "engine at\nanchor",
        "engine\nunder way",
        "\nbank",
    )
    return table(heads, [">" for _ in heads], _limit_lines(sheet, system), caption="What limits it, A")


def _set_lines(sheet: Sequence[RegulatorRow], system: System) -> list[tuple[str, ...]]:
    return [
        (
            reading(row.engine_speed, "rotational speed", system),
            reading(row.set_current, "current", system),
            reading(row.field, "share", system),
            row.governs,
            reading(row.lasting.current, "current", system),
            reading(row.lasting.winding, "temperature", system),
            reading(row.lasting.frame, "temperature", system),
            row.lasting_governs,
        )
        for row in sheet
    ]


def _to_set(sheet: Sequence[RegulatorRow], system: System) -> Content:
    warmth = heading_unit("temperature", system)
    heads = (
        "engine\nrpm",
        "set\nA",
        "field\n%",
        "\ngoverned by",
        "for\nlong A",
        f"winding\n{warmth}",
        f"frame\n{warmth}",
        "for long\ngoverned by",
    )
    sides: tuple[Side, ...] = (">", ">", ">", "<", ">", ">", ">", "<")
    lines: list[tuple[str | Words, ...]] = [
        (line[0], Words(line[1], "strong"), *line[2:]) for line in _set_lines(sheet, system)
    ]
    return table(heads, sides, lines, caption="What to set by engine speed")


def _settings(some: Sequence[Setting], system: System, caption: str = "") -> list[Content]:
    lines = []
    for setting in some:
        words = Words(setting.name, "strong")
        words = words.then(f"\n{setting.formula} ({setting.source})")
        if setting.inputs:
            each = "; ".join(f"{one.name} {unbroken(_figure(one, system))}, {one.basis}" for one in setting.inputs)
            words = words.then(f"\nFrom: {each}.", "aside")
        lines.append((Words(show(setting.value, setting.dimension, system), "strong"), words))
    return [table(("", ""), (">", "<"), lines, free=1, caption=caption)]


def _figure(one: Input, system: System) -> str:
    return screens.figure(one.value, one.dimension, system)


def _belts(made: RegulatorSetUp, system: System) -> list[Content]:
    speed, force = heading_unit("velocity", system), heading_unit("force", system)
    heads = (
        "alternator",
        "worst at\nrpm",
        f"belt\n{speed}",
        f"pull\n{force}",
        f"carries\n{force}",
        f"tight\n{force}",
        f"slack\n{force}",
        f"on shaft\n{force}",
    )
    lines = [
        (
            one.name,
            reading(one.sheet.pull.engine_speed, "rotational speed", system),
            reading(one.sheet.pull.velocity, "velocity", system),
            *(
                reading(pull, "force", system)
                for pull in (
                    one.sheet.pull.effective,
                    one.sheet.pull.allowed,
                    one.sheet.pull.tight,
                    one.sheet.pull.slack,
                    one.sheet.pull.load,
                )
            ),
        )
        for one in made.machines
    ]
    parts: list[Content] = [
        table(heads, figures(heads), lines, free=0),
        Paragraph(
            "Pull: tight less slack side, at the row of the sheet where it is most; on shaft: both together, sides "
            "parallel, tensioned so that the belt just does not slip. A static tension set higher pulls more."
        ),
    ]
    for one in made.side_loads:
        load = show(one.load, "force", system)
        allowed = (
            "what the engine's maker allows is not in the file: ask"
            if math.isnan(one.limit)
            else f"the engine's maker allows {show(one.limit, 'force', system)}"
        )
        parts.append(
            Paragraph(f"{made.engines[one.engine]}: {load} on the crankshaft if all belts pull one way; {allowed}.")
        )
    return parts


def _hour(hour: ChargingHour, system: System) -> list[Content]:
    warmth = heading_unit("temperature", system)
    heads = (
        "after\nmin",
        "held\nA",
        f"winding\n{warmth}",
        f"frame\n{warmth}",
        "hot\nA",
        f"winding\n{warmth}",
        f"frame\n{warmth}",
    )
    hot_moments = (None,) * len(hour.held.moments) if hour.hot is None else hour.hot.moments
    lines = [
        (
            f"{in_unit(held.after, 'min', 'time'):.0f}",
            *_moment(held, system),
            *(("—",) * 3 if hot is None else _moment(hot, system)),
        )
        for held, hot in zip(hour.held.moments, hot_moments, strict=True)
    ]
    speeds = ", ".join(show(speed, "rotational speed", system) for speed in dict.fromkeys(hour.speeds))
    limit = show(hour.highest_winding, "temperature", system)
    air, reached = show(hour.air, "temperature", system), show(hour.reached_in, "temperature", system)
    words = (
        f"From dawn, engines at {speeds}, the bank at its reserve; all alternators together, the hottest of them. "
        f"Held: {_energy(hour.held, hour.burnt, system)}. Hot, the regulators blind to temperature: "
        f"{_energy(hour.hot, hour.burnt, system)}. "
        f"Lowest limit of the insulation aboard: {limit}."
    )
    if not math.isnan(hour.given_air):
        words += " That is the air in which the trade takes hot curves, and what a blower that has failed may leave."
    if hour.alike:
        words += (
            f" Both are alike: in air of {air} the frames do not reach the held temperature in this hour. At this "
            f"speed and the bank's absorb voltage they would in the end in air above {reached}."
        )
    return [table(heads, [">" for _ in heads], lines), Paragraph(words)]


def _energy(hour: Hour | None, burnt: float, system: System) -> str:
    if hour is None:
        return f"windings past {show(burnt, 'temperature', system)} within the hour, which no insulation bears"
    words = f"{show(hour.energy, 'energy', system)}, winding up to {show(hour.hottest_winding, 'temperature', system)}"
    if hour.over > 0.0:
        return f"{words}, {show(hour.over, 'time', system)} of it over the limit of its insulation"
    return f"{words}, never over the limit of its insulation"


def _moment(moment: Moment, system: System) -> tuple[str, ...]:
    return (
        reading(moment.current, "current", system),
        reading(moment.winding, "temperature", system),
        reading(moment.frame, "temperature", system),
    )


def _load_dump(made: RegulatorSetUp, system: System) -> list[Content]:
    dump = made.load_dump
    if dump is None:
        return []
    resistance = show(dump.resistance, "resistance", system)
    if math.isnan(dump.peak):
        words = (
            f"Taken off the bank at full charge, the alternators drive what is left through {resistance}. ISO 16750-2 "
            "has peaks for 12 and 24 V only; at 48 V ask the makers of everything on this bus what it stands."
        )
        return [Paragraph(words)]
    peak, across = show(dump.peak, "voltage", system), show(dump.across, "voltage", system)
    suppressed = show(dump.suppressed, "voltage", system)
    energy = f"{dump.energy:.0f} J"
    words = (
        f"Taken off the bank at full charge, the alternators rise to {peak} behind {resistance} (ISO 16750-2, "
        f"unsuppressed); {across} with only the {show(dump.loads, 'power', system)} of direct-current loads that "
        f"always draw. Suppressed systems see {suppressed}: for that a clamp at one alternator takes up to {energy} in "
        "one dump. Whether there is one, a file cannot tell."
    )
    return [Paragraph(words)]
