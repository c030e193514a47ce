"""The bank command: build, limits, temperature and years of the bank, and the lead-acid bank that it replaces."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from anchorwatt.papers import screens
from anchorwatt.papers.keys import in_unit
from anchorwatt.papers.page import Content, Paragraph, Side, figures, page, section, table
from anchorwatt.papers.select import hourly, some_rows
from anchorwatt.papers.tabular import heading_unit, reading
from anchorwatt.units import System, show, show_clock

if TYPE_CHECKING:
    from collections.abc import Sequence

    from anchorwatt.assessment import Assessment, Table
    from anchorwatt.assessment.bank import BankStory, Limit
    from anchorwatt.sizing.bank_life import AgedNight, AgedYear
    from anchorwatt.sizing.bank_state import RunTemperatures
    from anchorwatt.sizing.replaced_bank import ReplacedBank

Plain = dict[str, Any]

CAUTIONS = (
    (
        "A short-circuited bank drives thousands of amperes: fuse each string at its post, insulate tools, take off "
        "rings. Never trust a management system's transistors to break a fault."
    ),
    "Give a lithium bank the place, restraint, warning and disconnection that its maker and the codes ask for.",
)
NO_LEAD = "The design names no lead-acid bank to compare with; name one under dc: replaced_bank: in the file."


def screen(assessment: Assessment, system: System) -> Content:
    """Build, limits, temperature, night when new and aged, years, lead-acid."""
    story = assessment.bank
    parts: list[Content] = [
        screens.about(assessment),
        section(_title(story), *_build(story, system)),
        section("Does it hold the night?", *_nights(story, system)),
        section("Its years", *_years(story, system)),
        section("What the management system disconnects", *limits(story, system)),
        section(
            "Through the night, hour by hour", *_through(story.night, hourly(story.night), story.state.night, system)
        ),
    ]
    if story.recharge is not None and story.state.recharge is not None:
        rows = some_rows(story.recharge)
        parts.append(section("Through the recharge", *_through(story.recharge, rows, story.state.recharge, system)))
    parts += [
        section("Beside the lead-acid bank that it replaces", *_replaced(story, system)),
        section("With any bank", *(Paragraph(words) for words in CAUTIONS)),
        screens.cautions(assessment),
    ]
    return page(*parts)


def plain(assessment: Assessment) -> Plain:
    """What `bank` shows, as plain data."""
    story = assessment.bank
    bank, state, window, life = story.bank, story.state, story.state.window, story.life
    year = life.year
    return {
        "bank": {
            "module": bank.module,
            "series": bank.series,
            "parallel": bank.parallel,
            "cells_in_series": bank.cells,
            "nominal_voltage_V": _volts(bank.nominal_voltage),
            "capacity_Ah": in_unit(bank.capacity, "Ah", "charge"),
            "nominal_energy_kWh": _energy(window.nominal_energy),
            "stored_energy_kWh": _energy(window.stored_energy),
            "usable_energy_kWh": _energy(window.usable_energy),
            "charge_at_start_pct": _share(window.charge_at_start),
            "reserve_pct": _share(window.reserve),
            "resistance_mohm": in_unit(bank.resistance, "mΩ", "resistance"),
            "cut_off_V": _volts(bank.cut_off_voltage),
            "rest_at_reserve_V": _volts(window.rest_at_reserve),
            "rest_at_start_V": _volts(window.rest_at_start),
            "float_V": _volts(bank.float_voltage),
            "absorb_V": _volts(bank.absorb_voltage),
            "tail_A": _amperes(bank.tail_current),
            "charge_limit_A": _amperes(bank.charge_current),
            "discharge_limit_A": _amperes(bank.discharge_current),
            "peak_A": _amperes(state.peak_current),
            "voltage_at_reserve_aged_V": _volts(state.voltage_at_reserve),
            "alternators_A": _amperes(state.alternators),
            "charger_and_sun_A": _amperes(state.charger_and_sun),
            "mass_kg": in_unit(bank.mass, "kg", "mass"),
        },
        "nights": [_plain_night(one, story) for one in (life.new, life.computed, life.warranted)],
        "year": {
            "nights": in_unit(year.nights, "", "ratio"),
            "night_depth_pct": _share(year.depth),
            "full_cycles": in_unit(year.full_cycles, "", "ratio"),
            "discharge_capacities_per_hour": in_unit(year.discharge_rate, "", "ratio"),
            "cells_in_use_C": _degrees(year.temperature),
            "charge_in_use_pct": _share(year.charge),
            "cells_at_rest_C": _degrees(year.rest_temperature),
            "charge_at_rest_pct": _share(year.rest_charge),
            "calendar_stress": in_unit(year.stress, "", "ratio"),
        },
        "years": [_plain_year(one) for one in life.aged],
        "warranty": {
            "years": in_unit(bank.warranted_years, "", "ratio"),
            "capacity_pct": _share(bank.warranted_share),
            "cycle_life": in_unit(bank.cycle_life, "", "ratio"),
            "dominant": life.dominant,
            "years_to_warranted_share": None if math.isinf(life.life) else in_unit(life.life, "", "ratio"),
        },
        "management": [_plain_limit(limit) for limit in story.limits],
        "temperature": [_plain_run(run) for run in (state.night, state.day, state.recharge) if run is not None],
        "lead_acid": None if story.replaced is None else _plain_replaced(story.replaced),
        "cautions": [*CAUTIONS, *assessment.cautions],
    }


def _plain_night(night: AgedNight, story: BankStory) -> Plain:
    return {
        "bank": night.name,
        "capacity_pct": _share(night.capacity),
        "resistance_ratio": in_unit(night.resistance, "", "ratio"),
        "hold_hours": in_unit(night.hold, "h", "time"),
        "or_longer": night.or_longer,
        "required_hours": in_unit(story.required, "h", "time"),
        "charge_at_dawn_pct": _share(night.charge_at_dawn),
        "lowest_V": _volts(night.lowest_voltage),
        "unserved_kWh": _energy(night.unserved),
        "holds": night.holds,
    }


def _plain_year(one: AgedYear) -> Plain:
    return {
        "years": in_unit(one.years, "", "ratio"),
        "calendar_loss_pct": _share(one.calendar),
        "cycle_loss_pct": _share(one.cycles),
        "published_cycle_loss_pct": _share(one.published),
        "capacity_pct": _share(one.capacity),
        "resistance_ratio": in_unit(one.resistance, "", "ratio"),
    }


_ENDS = {"voltage": ("V", "V"), "current": ("A", "A"), "temperature": ("C", "°C"), "share": ("pct", "%")}


def _plain_limit(limit: Limit) -> Plain:
    one = limit.cut_off
    end, unit = _ENDS[one.dimension]
    return {
        "name": one.name,
        "reads": one.reads,
        f"limit_{end}": in_unit(one.limit, unit, one.dimension),
        f"nearest_{end}": in_unit(limit.nearest, unit, one.dimension),
        "disconnects": one.disconnects,
        "lost": limit.lost,
        "restores": one.restores,
    }


def _plain_run(run: RunTemperatures) -> Plain:
    return {
        "run": run.name,
        "first_C": _degrees(run.first),
        "coldest_C": _degrees(run.coldest),
        "hottest_C": _degrees(run.hottest),
        "lost_kWh": _energy(run.lost),
        "highest_A": _amperes(run.highest_current),
        "highest_V": _volts(run.highest_voltage),
        "lowest_V": _volts(run.lowest_voltage),
    }


def _plain_replaced(found: ReplacedBank) -> Plain:
    lead, lithium = found.lead_acid, found.lithium
    return {
        "battery": lead.bank.battery,
        "series": lead.bank.series,
        "parallel": lead.bank.parallel,
        "capacity_Ah": in_unit(lead.bank.capacity, "Ah", "charge"),
        "night_power_W": in_unit(lead.power, "W", "power"),
        "night_current_A": _amperes(lead.current),
        "capacity_at_current_Ah": in_unit(lead.capacity_at_current, "Ah", "charge"),
        "usable_energy_kWh": _energy(lead.usable_energy),
        "hold_hours": in_unit(lead.hold, "h", "time"),
        "hold_unfilled_hours": in_unit(lead.hold_unfilled, "h", "time"),
        "holds": lead.holds,
        "charge_at_dawn_pct": _share(lead.charge_at_dawn),
        "strings_needed": None if math.isinf(lead.strings_needed) else in_unit(lead.strings_needed, "", "ratio"),
        "mass_needed_kg": None if math.isinf(lead.mass_needed) else in_unit(lead.mass_needed, "kg", "mass"),
        "charging_A": _amperes(lead.available),
        "recharge": [{"to_pct": _share(to), "hours": _hours(time)} for to, time in lead.recharge],
        "energy_efficiency_pct": _share(lead.efficiency),
        "mass_kg": in_unit(lead.bank.mass, "kg", "mass"),
        "cycles": None if math.isinf(lead.cycles) else in_unit(lead.cycles, "", "ratio"),
        "years_by_cycles": None if math.isinf(lead.years) else in_unit(lead.years, "", "ratio"),
        "lithium": {
            "usable_energy_kWh": _energy(lithium.usable_energy),
            "hold_hours": in_unit(lithium.hold, "h", "time"),
            "recharge_hours": in_unit(lithium.recharge_time, "h", "time"),
            "energy_efficiency_pct": _share(lithium.efficiency),
            "mass_kg": in_unit(lithium.mass, "kg", "mass"),
        },
    }


def _volts(value: float) -> float | None:
    return in_unit(value, "V", "voltage")


def _amperes(value: float) -> float | None:
    return in_unit(value, "A", "current")


def _degrees(value: float) -> float | None:
    return in_unit(value, "°C", "temperature")


def _share(value: float) -> float | None:
    return in_unit(value, "%", "share")


def _energy(value: float) -> float | None:
    return in_unit(value, "kWh", "energy")


def _hours(value: float) -> float | None:
    return None if math.isinf(value) else in_unit(value, "h", "time")


def _title(story: BankStory) -> str:
    bank = story.bank
    return f"{bank.series * bank.parallel} × {bank.module}, {bank.series} in series, {bank.parallel} in parallel"


def _build(story: BankStory, system: System) -> list[Content]:
    bank, state, window = story.bank, story.state, story.state.window

    def told(value: float, dimension: str) -> str:
        return show(value, dimension, system)

    start, reserve = told(window.charge_at_start, "share"), told(window.reserve, "share")
    rows = [
        (
            told(bank.capacity, "charge"),
            f"at {told(bank.nominal_voltage, 'voltage')} nominal, {bank.cells} cells in series",
        ),
        (
            told(window.nominal_energy, "energy"),
            f"nominal; {told(window.stored_energy, 'energy')} in it at no current",
        ),
        (told(window.usable_energy, "energy"), f"between the night's start at {start} and the reserve, {reserve}"),
        (told(bank.resistance, "resistance"), "at 25 °C in mid charge, links included"),
        (told(bank.cut_off_voltage, "voltage"), f"cut-off under load, {window.cell_cut_off:.2f} V a cell"),
        (told(window.rest_at_reserve, "voltage"), "at rest with the reserve left"),
        (told(window.rest_at_start, "voltage"), "at rest when the night begins"),
        (told(bank.float_voltage, "voltage"), "float, once it is full"),
        (told(bank.absorb_voltage, "voltage"), f"absorb, {window.cell_absorb:.2f} V a cell"),
        (told(bank.tail_current, "current"), "of charge at absorb voltage: it counts as full"),
        (
            told(bank.charge_current, "current"),
            (
                f"highest charge; alternators give {told(state.alternators, 'current')}, "
                f"charger and sun {told(state.charger_and_sun, 'current')}"
            ),
        ),
        (
            told(bank.discharge_current, "current"),
            f"highest discharge; all loads at their peak draw {told(state.peak_current, 'current')}",
        ),
        (told(state.voltage_at_reserve, "voltage"), "under that peak, aged and down to the reserve"),
        (told(bank.mass, "mass"), "with its management systems"),
    ]
    return [table(("", ""), (">", "<"), rows)]


def _nights(story: BankStory, system: System) -> list[Content]:
    life = story.life
    heads = ("bank", "capacity\n%", "resistance\nratio", "holds\nh", "left at\ndawn %", "lowest\nV", "the night")
    sides: tuple[Side, ...] = ("<", ">", ">", ">", ">", ">", "<")
    rows = [
        (
            one.name.replace("warranty, ", "warranty,\n").replace("no more left", "no more"),
            reading(one.capacity, "share", system),
            f"{one.resistance:.2f}",
            ("> " if one.or_longer else "") + f"{in_unit(one.hold, 'h', 'time'):.1f}",
            reading(one.charge_at_dawn, "share", system),
            reading(one.lowest_voltage, "voltage", system),
            "holds" if one.holds else "does not hold",
        )
        for one in (life.new, life.computed, life.warranted)
    ]
    hours = show(story.required, "time", system)
    words = (
        f"Asked for: {hours}, down to the reserve, the night going on as it began. The warranty runs "
        f"{story.bank.warranted_years:.0f} years and warrants {show(story.bank.warranted_share, 'share', system)}."
    )
    return [table(heads, sides, rows, free=0), Paragraph(words)]


def _years(story: BankStory, system: System) -> list[Content]:
    life, year, bank = story.life, story.life.year, story.bank
    heads = ("after\nyears", "calendar\n−%", "cycles\n−%", "by small\ncells −%", "capacity\n%", "resistance\nratio")
    rows = [
        (
            f"{one.years:.3g}",
            *(f"{100.0 * loss:.1f}" for loss in (one.calendar, one.cycles, one.published)),
            f"{100.0 * one.capacity:.1f}",
            f"{one.resistance:.2f}",
        )
        for one in life.aged
    ]
    share = show(bank.warranted_share, "share", system)
    reached = (
        f"{share} is left after {life.life:.1f} years." if math.isfinite(life.life) else f"{share} lasts over 40 years."
    )
    larger = "standing" if life.dominant == "calendar" else "cycling"
    first = (
        f"A year: {year.nights:g} such nights and days, each taking {show(year.depth, 'share', system)} by night, "
        f"{year.full_cycles:.0f} full cycles in all of {bank.cycle_life:.0f} that the module is made for; cells at "
        f"{show(year.temperature, 'temperature', system)} and {show(year.charge, 'share', system)}. Else at rest at "
        f"{show(year.rest_charge, 'share', system)} and the year's mean sea, "
        f"{show(year.rest_temperature, 'temperature', system)}. {reached} At the warranty's end more is lost to "
        f"{larger}."
    )
    second = (
        "Calendar: root of the time, by temperature and charge; cycles: scaled to the module's own cycle life. From "
        "memory, for comparing, not for a claim. By small cells: the throughput model of J. Power Sources 196 (2011) "
        "3942 for the same charge, from memory; it is not in the sum."
    )
    return [table(heads, (">",) * 6, rows), Paragraph(first), Paragraph(second)]


def limits(story: BankStory, system: System, left: str = "") -> list[Content]:
    """What the management system disconnects, and how near it comes; with `left` as the cell of a last column."""
    heads = ("limit", "at", "nearest", "opens", "comes back", *(("as left",) if left else ()))
    sides: tuple[Side, ...] = ("<", ">", ">", "<", "<", *(("<",) if left else ()))
    rows = [
        (
            limit.cut_off.name,
            show(limit.cut_off.limit, limit.cut_off.dimension, system),
            show(limit.nearest, limit.cut_off.dimension, system),
            limit.cut_off.disconnects,
            limit.cut_off.restores,
            *((left,) if left else ()),
        )
        for limit in story.limits
    ]
    lost = dict.fromkeys((limit.cut_off.disconnects, limit.lost) for limit in story.limits)
    words = " ".join(f"{side.capitalize()} opened: {what}." for side, what in lost)
    told = Paragraph(f"Nearest: how near this night, the day after it and the recharge come. {words}")
    if left:
        return [told, table(heads, sides, rows, shares=(6, 3, 3, 4, 11, 6))]
    return [table(heads, sides, rows, free=4), told]


def _through(made: Table, rows: Sequence[int], run: RunTemperatures, system: System) -> list[Content]:
    heads = ("at", *(f"{column.label}\n{heading_unit(column.dimension, system)}" for column in made.columns))
    lines = [
        (
            show_clock(float(made.clock[row])),
            *(reading(float(column.values[row]), column.dimension, system) for column in made.columns),
        )
        for row in rows
    ]
    rise = show(run.hottest - run.first, "temperature difference", system)
    words = (
        f"Its own losses, {show(run.lost, 'energy', system)}, and what stands round it warm the cells by {rise} at "
        f"most, to {show(run.hottest, 'temperature', system)}."
    )
    return [table(heads, figures(heads), lines), Paragraph(words)]


def _replaced(story: BankStory, system: System) -> list[Content]:
    if story.replaced is None:
        return [Paragraph(NO_LEAD)]
    lead, lithium = story.replaced.lead_acid, story.replaced.lithium

    def time(value: float) -> str:
        return "—" if math.isnan(value) or math.isinf(value) else show(value, "time", system)

    def kilowatt_hours(value: float) -> str:
        return show(value, "energy", system)

    def share(value: float) -> str:
        return show(value, "share", system)

    made = lead.bank
    easy, nearly, full = (
        (f"recharged to {share(to)}" if to < lead.recharge[-1][0] else "recharged to full", time(took))
        for to, took in lead.recharge
    )
    rows = [
        (
            "nominal",
            kilowatt_hours(made.capacity * made.nominal_voltage),
            kilowatt_hours(story.state.window.nominal_energy),
        ),
        ("usable on this night's load", kilowatt_hours(lead.usable_energy), kilowatt_hours(lithium.usable_energy)),
        ("holds the night for", time(lead.hold), time(lithium.hold)),
        ("when charged to 85 % only", time(lead.hold_unfilled), "—"),
        (*easy, "—"),
        (*nearly, "—"),
        (*full, time(lithium.recharge_time)),
        ("energy back, of what goes in", share(lead.efficiency), share(lithium.efficiency)),
        ("mass", show(made.mass, "mass", system), show(lithium.mass, "mass", system)),
        ("mass that would hold the night", show(lead.mass_needed, "mass", system), "—"),
    ]
    heads = ("", "lead-acid", "lithium")
    cycles = "—" if math.isinf(lead.cycles) else f"{lead.cycles:.0f}"
    years = (
        ""
        if math.isinf(lead.years)
        else f", which {story.life.year.nights:g} nights a year use up in {lead.years:.0f} years"
    )
    first = (
        f"Lead-acid: {made.series * made.parallel} × {made.battery}, {show(made.capacity, 'charge', system)}, of which "
        f"{share(made.usable_share)} is used. At the night's mean current of {show(lead.current, 'current', system)} "
        f"it gives {show(lead.capacity_at_current, 'charge', system)} (Peukert, exponent {made.peukert:g}). It stands "
        f"{cycles} such nights{years}; age alone ends most after 4 to 8 years (from memory)."
    )
    second = (
        f"Recharge: the same engines and sun, {show(lead.available, 'current', system)}, as long as it takes them: at "
        f"most {share(made.charge_rate * 3600.0)} of its capacity an hour, then no more amperes than ampere-hours are "
        "missing (Woodbridge, 1935); full at a hundredth of its capacity an hour. Lithium: to the charge with which "
        "nights begin."
    )
    return [table(heads, figures(heads), rows, free=0), Paragraph(first), Paragraph(second)]
