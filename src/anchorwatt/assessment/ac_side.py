"""The AC side with the small converters: its figures, and the answers that decide, each with its why."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from anchorwatt.assessment.records import Answer, Input, Why
from anchorwatt.design.specification import Specification
from anchorwatt.sizing.ac_side import AcSide
from anchorwatt.sizing.converters import START_TIME, WAKES
from anchorwatt.units import show, show_clock

Basis = Callable[[str], str]
"""From a key of the design file to "typed", "catalogue" or "estimated"."""

LIST = "the part's own list of overloads, read as a staircase on the safe side"

CAUTIONS = (
    (
        "Shore power and inverters kill: currents on the neutral and the earth, and voltages of two sources that meet. "
        "Connection, bonding of neutral to earth, leakage protection and changeover are work for a licensed "
        "electrician, by the code in force where the boat lies."
    ),
    "An autotransformer isolates nothing: it does not guard against galvanic currents, nor against a fault ashore.",
)


@dataclass(frozen=True)
class AcSideStory:
    figures: AcSide
    answers: tuple[Answer, ...]
    cautions: tuple[str, ...]


def ac_side_story(specification: Specification, figures: AcSide, basis: Basis) -> AcSideStory:
    """What the page of the AC side shows."""
    answers = [
        *_inverter(specification, figures, basis),
        *_transformer(specification, figures, basis),
        *_shore(specification, figures, basis),
        *_direct(specification, figures, basis),
    ]
    auto = figures.transformer is not None and not figures.transformer.isolating
    return AcSideStory(figures, tuple(answers), CAUTIONS if auto else CAUTIONS[:1])


def _inverter(specification: Specification, figures: AcSide, basis: Basis) -> list[Answer]:
    found, inverter = figures.inverter, specification.inverter
    rated = Input("rating", inverter.rated_power, "power", basis("ac.inverter.unit.rated_power"))
    worst = max(found.steps, key=lambda step: step.power)
    if math.isinf(worst.lasts):
        lasts = "within its rating: for as long as need be"
    else:
        lasts = (
            f"above its rating: for {show(worst.lasts, 'time', 'si')}" if worst.lasts > 0.0 else "more than it gives"
        )
    no_load = Input("no-load loss", inverter.no_load_power, "power", basis("ac.inverter.unit.no_load_power"))
    return [
        Answer(
            "inverter_rating_in_heat_W",
            "What does the inverter give for long where it stands?",
            found.rating,
            "power",
            "W",
            "it stands in no compartment that the file describes"
            if math.isnan(found.hottest_air)
            else "at the hottest that its compartment becomes in night, day and recharge",
            Why(
                "rating, less the derating for each kelvin of air above the temperature of full rating",
                (
                    rated,
                    Input("hottest air of its compartment", found.hottest_air, "temperature", "computed"),
                    Input("full rating up to", inverter.full_to, "temperature", basis("ac.inverter.unit.full_to")),
                    Input("derating", inverter.derating, "per kelvin", basis("ac.inverter.unit.derating")),
                    Input("off from", inverter.highest_air, "temperature", basis("ac.inverter.unit.highest_air")),
                ),
                "a straight line, as on makers' sheets; its usual figures from memory",
                "where the inverter stands, the compartment's air, the inverter",
            ),
        ),
        Answer(
            "inverter_highest_step_W",
            "What is the most that the inverter is asked for?",
            worst.power,
            "power",
            "W",
            f"by {worst.name}, at {show_clock(worst.at)}; {lasts}",
            Why(
                "the highest minute of plant and loads through the transformer, a cycling machine counted at what it "
                "draws while it runs",
                (rated, Input("share of the rating there", worst.share, "share", "computed")),
                f"the time kernel; {LIST}",
                "loads that run together, the plant, the transformer",
            ),
        ),
        Answer(
            "inverter_surge_W",
            "What does the inverter give while a motor starts?",
            found.surge,
            "power",
            "W",
            f"the shared plant's start asks for {show(found.start, 'power', 'si')}, no more than it draws running"
            + (
                ""
                if math.isnan(found.alternative_start)
                else f"; self-contained units would ask for {show(found.alternative_start, 'power', 'si')}"
            ),
            Why(
                f"the highest overload that lasts {START_TIME:g} s or longer, of the rating in its compartment",
                (Input("rating there", found.rating, "power", "computed"),),
                f"{LIST}; {START_TIME:g} s for a start, and 3 to 7 times its running current for a fixed-speed motor, "
                "from memory",
                "the inverter, soft starters, a variable-speed plant",
            ),
        ),
        Answer(
            "night_no_load_kWh",
            "What does the inverter's no-load loss cost in the night?",
            found.no_load_energy,
            "energy",
            "kWh",
            f"of {show(found.night_loss, 'energy', 'si')} that it loses in all",
            Why(
                "no-load loss times the hours of the night that it feeds something",
                (no_load, Input("all of its losses in the night", found.night_loss, "energy", "computed")),
                "loss = no load + linear P + quadratic P²/rating",
                "a smaller inverter, or a bank of higher voltage",
            ),
        ),
        Answer(
            "sleep_saving_kWh",
            "What would sleep save in a day?",
            found.sleep_saving,
            "energy",
            "kWh",
            f"next to nothing is asked of it for {show(found.idle_time, 'time', 'si')} of the day"
            if found.idle_time > 0.0
            else "something is asked of it all day",
            Why(
                f"what it takes from the bank, less its draw asleep, in the minutes in which plant and loads ask for "
                f"less than {WAKES:g} W on average; core loss and the plant's controls are off with it",
                (
                    no_load,
                    Input("draw asleep", inverter.sleep_power, "power", basis("ac.inverter.unit.sleep_power")),
                    Input("time", found.idle_time, "time", "computed"),
                ),
                "the time kernel; an inverter in sleep wakes at 10 to 50 W, from memory. An upper bound: loads are "
                "known by their mean, and each wakes it while it runs",
                "loads left switched on, the plant's standby, the transformer",
            ),
        ),
    ]


def _transformer(specification: Specification, figures: AcSide, basis: Basis) -> list[Answer]:
    found, transformer = figures.transformer, specification.transformer
    if found is None or transformer is None:
        return []
    key = "ac.transformer.unit"
    rated = Input("rating", transformer.rated_power, "apparent power", basis(f"{key}.rated_power"))
    core = Input("core loss", transformer.core_loss, "power", basis(f"{key}.core_loss"))
    survived = "borne by the inverter" if found.inrush_survived else "more than the inverter bears"
    return [
        Answer(
            "transformer_no_load_kWh",
            "What does the transformer cost in a day at no load?",
            found.no_load_energy,
            "energy",
            "kWh",
            f"it loses {show(found.night_loss, 'energy', 'si')} in the night",
            Why(
                "core loss through 24 h",
                (core, Input("best at", found.best.share, "share", "computed")),
                "open-circuit loss; a transformer is best where copper loss equals core loss",
                "a smaller transformer, or one of better iron; none where nothing needs it",
            ),
        ),
        Answer(
            "transformer_inrush_A",
            "What does the transformer draw at first when switched on?",
            found.inrush,
            "current",
            "A",
            f"first peak; {survived}",
            Why(
                "inrush times the peak of the rated current, decaying to 37 % in a tenth of a second",
                (
                    rated,
                    Input("primary voltage", transformer.primary_voltage, "voltage", "catalogue"),
                    Input("inrush over the rated peak", transformer.inrush, "ratio", basis(f"{key}.inrush")),
                    Input("over the inverter's rated peak", found.inrush_on_inverter, "ratio", "computed"),
                    Input("over the shore breaker's rated peak", found.inrush_on_breaker, "ratio", "computed"),
                ),
                "8 to 12 times without a soft start, from memory; peaks held against the inverter's list of overloads",
                "an inverter that ramps up, a soft starter, the moment in the cycle",
            ),
        ),
    ]


def _shore(specification: Specification, figures: AcSide, basis: Basis) -> list[Answer]:
    found, shore = figures.shore, specification.shore
    if found is None or shore is None:
        return []
    continuous = Input("continuous", found.continuous_current, "current", "computed")
    set_to = "typed" if found.current_limit < found.rated_current else basis("ac.shore.current")
    limit = Input("limit that is set", found.current_limit, "current", set_to)
    sag = show(found.sag, "share", "si")
    answers = [
        Answer(
            "shore_leg_A",
            "What does the busier leg of the shore service carry at most?",
            max(found.highest.legs),
            "current",
            "A",
            f"at {show_clock(found.highest.at)} of a day ashore, the charger running; for hours it carries "
            f"{show(found.continuous_current, 'current', 'si')}",
            Why(
                "loads to neutral over the voltage, and half of those across both legs; placed largest first, each on "
                "the lighter leg",
                (Input("all of it", found.highest.power, "power", "computed"), limit, continuous),
                "Kirchhoff's law; 80 % of the rating for hours, from memory",
                "which leg loads lie on, the charger's setting, the plant",
            ),
        )
    ]
    if specification.charger is None:
        return answers
    bank = Input(
        "bank", specification.bank.capacity * specification.bank.nominal_voltage, "energy", basis("dc.bank.module")
    )
    if found.gives_way:
        in_sag = f"in a sag of {sag} the charger gives way"
    else:
        in_sag = f"in a sag of {sag} {show(found.refill_time_in_sag, 'time', 'si')}"
    return [
        *answers,
        Answer(
            "shore_refill_hours",
            "How long does shore power take to refill the bank from its reserve?",
            found.refill_time,
            "time",
            "h",
            f"by the plan from where the night begins; held mostly by {found.held_by}; {in_sag}",
            Why(
                "a day ashore by the plan, the charger taking what the limit leaves after plant and loads",
                (
                    bank,
                    Input("reserve", specification.brief.reserve, "share", basis("brief.reserve")),
                    Input("charger", specification.charger.rated_power, "power", basis("ac.charger.unit.rated_power")),
                    limit,
                    Input("continuous power", found.continuous_power, "power", "computed"),
                ),
                "the time kernel",
                "the charger, the service, what runs meanwhile, sun on the panels",
            ),
        ),
    ]


def _direct(specification: Specification, figures: AcSide, basis: Basis) -> list[Answer]:
    sun, solar = figures.sun, specification.solar
    answers = []
    if sun is not None and solar is not None:
        answers.append(
            Answer(
                "solar_day_kWh",
                "What does the sun give in the day?",
                sun.offered,
                "energy",
                "kWh",
                f"of which {show(sun.taken, 'energy', 'si')} is taken",
                Why(
                    "sun on the panels, times their power at 1000 W/m², less what heat takes, times what shading, "
                    "dirt, wiring and controller leave",
                    (
                        Input("panels", sun.peak_power, "power", "computed"),
                        Input("at 25 °C and without shade", sun.without_losses, "energy", "computed"),
                        Input("lost to heat", sun.lost_to_heat, "energy", "computed"),
                        Input("left after shade and the rest", sun.delivered_share, "share", "computed"),
                    ),
                    "NREL/TP-6A20-62641, direct-current model",
                    "panels, where they lie, what shades them, the weather",
                ),
            )
        )
    battery, found = specification.engine_battery, figures.engine_battery
    if battery is not None and found is not None:
        key = "dc.engine_battery"
        answers.append(
            Answer(
                "engine_battery_day_kWh",
                "What does the engines' own battery take from the bank in a day?",
                found.day_energy,
                "energy",
                "kWh",
                "in the night too: it is a DC load of the night",
                Why(
                    "standing load and starts, averaged over the day, through the DC-DC converter's losses",
                    (
                        Input("standing load", battery.standing_load, "power", basis(f"{key}.standing_load")),
                        Input("one start", battery.start_energy, "energy", basis(f"{key}.start_energy")),
                        Input("starts a day", battery.starts_per_day, "ratio", basis(f"{key}.starts_per_day")),
                        Input("mean output", found.mean_output, "power", "computed"),
                        Input("taken", found.taken, "power", "computed"),
                    ),
                    "loss = no load + linear P + quadratic P²/rating",
                    "what stands on it, a converter with less no-load loss, a switch",
                ),
            )
        )
    return answers
