"""The night put back at each engine speed: the best speeds, and what is left with one alternator lost."""

from __future__ import annotations

import math
from dataclasses import dataclass

from anchorwatt.assessment.headline import Basis
from anchorwatt.assessment.records import Answer, Input, Why
from anchorwatt.design.specification import Specification
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.recharge import LIGHT_LOAD, SpeedPoint, Sweep, recharge_sweeps
from anchorwatt.units import show

HELD_BY = (
    "its own curve when hot",
    "what the bank takes",
    "its current setting",
    "its held temperature",
    "the belt",
    "the engine",
)
"""What holds an alternator back, in the order of the causes of `simulation.electric`."""

HELD_BY_IN_SHORT = ("curve", "bank", "setting", "heat", "belt", "engine")

LIGHT_LOAD_CAUTION = (
    f"A diesel that runs for hours below {round(100 * LIGHT_LOAD)} to 30 % of the load that it could carry at that "
    "speed glazes its bores and soots up (from memory; ask the engine's maker)."
)

NEVER = math.nan


@dataclass(frozen=True)
class BestSpeeds:
    """What a sweep recommends, ready to be told."""

    name: str  # "at anchor", "under way"
    sweep: Sweep
    quickest: str  # rpm in words, "" = none
    least_added: str
    recommended: str
    in_time: str  # the speeds that fill the bank in the time allowed, in words


@dataclass(frozen=True)
class Recharging:
    """The night put back over the engine speeds."""

    with_all: tuple[BestSpeeds, ...]  # at anchor, under way
    one_lost: tuple[BestSpeeds, ...]  # the same with the alternator lost that matters most; none of a single one
    engines: tuple[str, ...]
    answers: tuple[Answer, ...]
    light_load: float  # share of load below which an engine runs too lightly
    light_load_caution: str


def engine_speeds_in_words(point: SpeedPoint) -> str:
    """Speeds of the engines that turn, once where they are alike; “1200 rpm”."""
    turning = [show(speed, "rotational speed", "si") for speed in point.engine_speeds if speed > 0.0]
    return " and ".join(dict.fromkeys(turning))


def _words(point: SpeedPoint | None) -> str:
    return "" if point is None else engine_speeds_in_words(point)


def _runs_in_words(sweep: Sweep) -> str:
    """Neighbouring speeds that fill the bank in time as “650 to 1200 rpm”; several such runs after one another."""
    runs: list[list[SpeedPoint]] = [[]]
    for point in sweep.points:
        if point in sweep.in_time:
            runs[-1].append(point)
        elif runs[-1]:
            runs.append([])
    named = [(engine_speeds_in_words(run[0]), engine_speeds_in_words(run[-1])) for run in runs if run]
    return ", ".join(first if first == last else f"{first.removesuffix(' rpm')} to {last}" for first, last in named)


def _best(sweep: Sweep) -> BestSpeeds:
    return BestSpeeds(
        "under way" if sweep.propelling else "at anchor",
        sweep,
        _words(sweep.quickest),
        _words(sweep.least_added),
        _words(sweep.recommended),
        _runs_in_words(sweep),
    )


def _lead(point: SpeedPoint | None) -> float:
    return NEVER if point is None else max(point.engine_speeds)


def _inputs(point: SpeedPoint | None, simulation: Simulation) -> tuple[Input, ...]:
    dawn = Input("charge at dawn", float(simulation.night.end.charge[0]), "share", "computed")
    full = Input("charge that counts as full", simulation.full_charge, "share", "computed")
    if point is None:
        return dawn, full
    return (
        dawn,
        full,
        Input("engine speed", _lead(point), "rotational speed", "computed"),
        Input("mean current of all alternators", point.mean_current, "current", "computed"),
        Input("hottest winding", point.hottest_winding, "temperature", "computed"),
        Input("load of the engine", point.load_share, "share", "computed"),
    )


def _answers(best: BestSpeeds, simulation: Simulation, basis: Basis) -> list[Answer]:
    sweep, key = best.sweep, best.name.replace(" ", "_")
    quick, least, advised = sweep.quickest, sweep.least_added, sweep.recommended
    source = "a run of the time kernel from dawn at each engine speed, minute by minute; see docs/theory"
    changes = "alternator size and count, pulley ratio, belt, held temperature, the propeller's share of the engine"
    never = "no speed fills the bank within a day"

    def at(words: str) -> str:
        return f"at {words}" if words else never

    def held(point: SpeedPoint | None) -> str:
        if point is None:
            return changes
        return f"{HELD_BY[point.mostly_held_by]}, which holds it most of the time; {changes}"

    return [
        Answer(
            f"{key}_quickest_hours",
            f"How quickly can the night be put back {best.name}?",
            NEVER if quick is None else quick.full_at,
            "time",
            "h",
            at(best.quickest),
            Why(
                "shortest time from dawn until full, of all engine speeds tried",
                _inputs(quick, simulation),
                source,
                held(quick),
            ),
        ),
        Answer(
            f"{key}_least_fuel_added_L",
            f"With how little fuel for the alternators {best.name}?",
            NEVER if least is None else least.fuel_added,
            "liquid volume",
            "L",
            at(best.least_added),
            Why(
                "least of fuel with the alternators less fuel without them at the same speed, by the Willans line",
                _inputs(least, simulation),
                source,
                "alternator efficiency, which falls with heat, current and speed; what runs meanwhile",
            ),
        ),
        Answer(
            f"{key}_recommended_rpm",
            f"At which engine speed {best.name}?",
            _lead(advised),
            "rotational speed",
            "rpm",
            sweep.reason,
            Why(
                "of the speeds that fill the bank in the brief's time and do not load an engine too lightly, the "
                f"quickest near the least {'added fuel' if sweep.propelling else 'fuel burnt'}",
                (
                    *_inputs(advised, simulation),
                    Input("time allowed", sweep.allowed, "time", basis("brief.recharge")),
                    Input("least load of a diesel for hours", LIGHT_LOAD, "share", "estimated"),
                ),
                "light load: 25 to 30 %, from memory; the rest is this run",
                "the time that the brief allows; alternators that load the engine more",
            ),
        ),
    ]


def _lost_answer(best: BestSpeeds, simulation: Simulation) -> Answer:
    quick = best.sweep.quickest
    return Answer(
        f"{best.name.replace(' ', '_')}_one_lost_hours",
        f"And {best.name} with {best.sweep.lost} lost?",
        NEVER if quick is None else quick.full_at,
        "time",
        "h",
        f"at {best.quickest}" if quick is not None else "no speed fills the bank within a day",
        Why(
            "each alternator taken out in turn; of those, the one without which the shortest time is longest",
            _inputs(quick, simulation),
            "a run of the time kernel from dawn at each engine speed, minute by minute; see docs/theory",
            "how much the others can give, and the engine, belt and heat that hold them",
        ),
    )


def recharging(specification: Specification, simulation: Simulation, basis: Basis) -> Recharging | None:
    """The night put back over the engine speeds, `basis` saying where a figure of the design comes from.

    None without an alternator.
    """
    sweeps = recharge_sweeps(specification, simulation)
    if sweeps is None:
        return None
    with_all = tuple(_best(sweep) for sweep in (sweeps.at_anchor, sweeps.under_way))
    lost = [sweep for sweep in (sweeps.at_anchor_one_lost, sweeps.under_way_one_lost) if sweep is not None]
    one_lost = tuple(_best(sweep) for sweep in lost)
    answers = [answer for best in with_all for answer in _answers(best, simulation, basis)]
    answers += [_lost_answer(best, simulation) for best in one_lost]
    return Recharging(
        with_all=with_all,
        one_lost=one_lost,
        engines=tuple(engine.name for engine in specification.engines),
        answers=tuple(answers),
        light_load=LIGHT_LOAD,
        light_load_caution=LIGHT_LOAD_CAUTION,
    )
