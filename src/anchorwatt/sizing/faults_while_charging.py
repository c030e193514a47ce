"""Faults that strike while the engines charge: an alternator, the bank's contactor, the throttle.

Figures in the sentences come from the runs. What protects and what people do is practice, without a source.
"""

from __future__ import annotations

import math
from functools import partial

from anchorwatt.design.specification import Specification
from anchorwatt.physics.alternator import shaft_power
from anchorwatt.physics.engine import full_load_power
from anchorwatt.physics.propeller import propeller_demand
from anchorwatt.simulation import faults as runs_of
from anchorwatt.simulation.faults import FaultRuns
from anchorwatt.simulation.runs import Run, Simulation
from anchorwatt.sizing.fault_story import Fault, Figure, minutes, warmth_of
from anchorwatt.sizing.load_dump import load_dump


def _names(specification: Specification) -> list[str]:
    return [machine.name for engine in specification.engines for machine in engine.alternators]


def _full(run: Run, since: float) -> float:
    """s of charging from dawn until full; nan = not within the day looked at."""
    return since + float(run.summary.full_at[0])


def alternators(specification: Specification, simulation: Simulation) -> list[Fault]:
    """Each alternator failing ten minutes into the recharge."""
    names = _names(specification)
    moment = runs_of.into_the_charge(simulation)
    return [alternator(specification, simulation, a, names, moment) for a in range(len(names))]


def alternator(specification: Specification, simulation: Simulation, a: int, names: list[str], moment: float) -> Fault:
    """One alternator failing ten minutes into the recharge."""
    runs = runs_of.while_charging(simulation, moment, partial(runs_of.lost_alternators, lost=(a,)))
    if runs is None:
        raise ValueError("a boat without alternators cannot lose one")  # `alternators` asks only for those there are
    since = moment - simulation.dawn
    amps = runs.before.series.alternator_current[0, :, -1]
    with_it, without = _full(runs.broken, since), _full(runs.sound, since)
    allowed = specification.brief.recharge
    figures = [
        Figure("own", "current that it gave", float(amps[a]), "current"),
        Figure("all", "current that all gave", float(amps.sum()), "current"),
        Figure(
            "rest",
            "current that the others give a minute later",
            float(runs.broken.series.alternator_current[0, :, 0].sum()),
            "current",
        ),
        Figure("hottest", "hottest winding after", float(runs.broken.summary.hottest_winding[0]), "temperature"),
        Figure("full", "engine time to put the night back", with_it, "time"),
        Figure("full_without", "engine time to put the night back without it", without, "time"),
        Figure("allowed", "engine time that the brief allows", allowed, "time"),
        Figure("day_charge", "charge a day later", float(runs.broken.end.charge[0]), "share"),
    ]
    alone = len(names) == 1
    if math.isnan(with_it):
        put_back = "The night is not put back within a day: a day later the bank is at {day_charge}."
    elif math.isnan(without):
        put_back = "It takes {full}; without the fault it was not put back within a day either."
    else:
        put_back = "The night takes {full} to put back instead of {full_without}."
    return Fault(
        key="alternator-lost" if alone else f"alternator-{a + 1}-lost",
        name="The alternator fails" if alone else f"{names[a][:1].upper()}{names[a][1:]} fails",
        at=moment,
        happens="Ten minutes into the charge its belt, its excitation or its rectifier goes: {own} of {all} stop.",
        lost=f"{'All charging from the engine. ' if alone else '{rest} are left of {all}. '}{put_back}",
        protects="Nothing has to: the bank lacks current, it does not suffer."
        if alone
        else "Nothing has to: the others go on within their own limits; held back by temperature and belt as before, "
        "their hottest winding reaches {hottest}.",
        sees="Its charge lamp; no current on its own shunt; less into the bank; perhaps a smell of rubber.",
        does="Stop the engine before a hand goes near a belt. Look at belt, excitation fuse and main fuse. A coolant "
        "pump on the same belt means: do not run on. "
        + ("Save charge: turn off cooling first." if alone else "Allow {full} of engine, or save charge by night."),
        figures=tuple(figures),
        minutes=minutes(specification, runs),
        runs=runs,
    )


def contactor(specification: Specification, simulation: Simulation) -> Fault | None:
    """The management system opens its contactor under full charge; None without alternators."""
    moment = runs_of.of_full_charge(simulation)
    if math.isnan(moment):
        return None
    runs = runs_of.while_charging(simulation, moment, runs_of.without_bank)
    if runs is None:
        return None
    before = runs.before
    amps = before.series.alternator_current[0, :, -1]
    dump, figures = _dump(specification, simulation)
    warmth, words = warmth_of(specification, runs)
    ac = float(before.series.inverter_output[0, -1])
    dc = float(before.series.dc_load[0, -1])
    figures = [
        Figure("into", "current into the bank", -float(before.series.current[0, -1]), "current"),
        Figure("all", "current of all alternators", float(amps.sum()), "current"),
        Figure("ac", "AC loads that go", ac, "power"),
        Figure("dc", "DC loads that go", dc, "power"),
        *figures,
        *warmth,
    ]
    spare = specification.engine_battery
    kept = (
        "The engine's own battery keeps its gauges and its stop going; the converter that feeds it stops."
        if spare is not None
        else "No engine battery of its own is described: what the engine needs of electricity goes too."
    )
    return Fault(
        key="contactor-opens",
        name="The bank's contactor opens under full charge",
        at=moment,
        happens="{into} flow into the bank when its management system opens the contactor on a cell's voltage or "
        f"temperature. The alternators' {{all}} then find no battery. {dump}",
        lost="Charge and supply together: {ac} of AC and {dc} of DC loads go dead until someone acts. "
        f"{words} {kept}",
        protects="A management system that first tells the regulator to stop and opens a second or more later; a surge "
        "clamp at the alternator's output; a lead-acid battery that stays in parallel. Without one of these a field "
        "that collapses in tenths of a second is all there is.",
        sees="Everything on the bank dark at once; the management's alarm, if it has a supply of its own.",
        does=f"{_steer(before)}Stop the alternators by their excitation, not by pulling a battery lead. Find why it "
        "opened before it is closed again, and only with all charging off. Have diodes and regulators tested: a load "
        "dump may have broken them.",
        figures=tuple(figures),
        minutes=minutes(specification, runs),
        runs=runs,
    )


def _steer(run: Run) -> str:
    if run.forcing.propelling[-1] != 1:
        return ""
    return "Steer first: autopilot, instruments and lights may be gone. "


def _dump(specification: Specification, simulation: Simulation) -> tuple[str, list[Figure]]:
    """The first second, as the standard on load dumps has it."""
    dump = load_dump(specification, simulation)
    if dump is None or math.isnan(dump.peak):
        return "For a system of this voltage the standard on load dumps has no figures: ask the alternator's maker.", []
    figures = [
        Figure("peak", "load dump that nothing holds down, at most", dump.peak, "voltage"),
        Figure("held", "load dump behind a suppressor", dump.suppressed, "voltage"),
        Figure("clamped", "energy that a clamp at that voltage takes", dump.energy, "energy"),
    ]
    words = (
        "By ISO 16750-2, read second-hand, the bus can reach {peak} for some tenths of a second, or {held} behind a "
        "suppressor: enough to break regulators, converters and electronics."
    )
    return words, figures


def throttle(specification: Specification, simulation: Simulation) -> Fault | None:
    """The helmsman goes to full throttle ten minutes into the charge; None without alternators."""
    then = runs_of.full_throttle(simulation)
    moment = runs_of.into_the_charge(simulation)
    if then is None or math.isnan(moment):
        return None
    runs = runs_of.while_charging(simulation, moment, then=then)
    free = runs_of.while_charging(simulation, moment, then=runs_of.full_throttle(simulation, propelling=False))
    if runs is None or free is None:
        return None
    worst, figures = _shortage(specification, free)
    amps = runs.broken.series.alternator_current[0].sum(axis=0)
    figures = [
        Figure(
            "before",
            "current of all alternators before",
            float(runs.before.series.alternator_current[0, :, -1].sum()),
            "current",
        ),
        Figure("after", "current of all alternators at full throttle", float(amps[0]), "current"),
        *figures,
        Figure("hour_charge", "charge after an hour of it", _at(runs.broken, 3600.0), "share"),
        Figure("hour_charge_without", "charge after an hour without it", _at(runs.sound, 3600.0), "share"),
    ]
    short = worst > 0.0
    return Fault(
        key="full-throttle",
        name="Full throttle while charging",
        at=moment,
        happens="The engines go to rated speed with the propellers turning. Of {able} at {rated_speed} the propeller "
        "takes {propeller}; {spare} is to spare, before the margin that the design keeps.",
        lost=f"Charging falls from {{before}} to {'{after}' if amps[0] > 0.0 else 'nothing'}: "
        "an hour of it leaves the bank at {hour_charge} instead of {hour_charge_without}."
        + (
            " A regulator that did not back off would take {shaft}, {short} more than there is: the engine would not "
            "pass {reached} and would run overloaded."
            if short
            else " A regulator that did not back off would take {shaft}, which this engine has to spare."
        ),
        protects="The regulator, which follows engine speed and lowers the field at the top of it; the propeller comes "
        "first. Rotors then turn at {rotor}, of {rotor_limit} that they may.",
        sees="Charge current gone while the engine roars"
        + ("; without the regulator's table, black smoke and a tachometer that stays short." if short else "."),
        does="Nothing, if the way is needed: charging comes back with the throttle. If smoke shows or speed falls "
        "short, switch the alternators' excitation off.",
        figures=tuple(figures),
        minutes=minutes(specification, runs),
        runs=runs,
    )


def _at(run: Run, since: float) -> float:
    return float(run.series.charge[0, min(run.clock.size, max(1, round(since / run.step))) - 1])


def _shortage(specification: Specification, free: FaultRuns) -> tuple[float, list[Figure]]:
    """How much the engine worst off would lack at full throttle if its alternators did not back off."""
    amps, winding = free.broken.series.alternator_current[0, :, 0], free.broken.series.alternator_winding[0, :, 0]
    voltage = float(free.broken.series.voltage[0, 0])
    found: list[tuple[float, list[Figure]]] = []
    a = 0
    for engine in specification.engines:
        shaft, fastest, limit = 0.0, 0.0, math.nan
        for machine in engine.alternators:
            rotor = engine.rated_speed * machine.pulley_ratio
            if amps[a] > 0.0:
                shaft += shaft_power(
                    float(amps[a]), voltage, rotor, float(winding[a]), machine.rated_current, machine.efficiency
                )
            if rotor > fastest:
                fastest, limit = rotor, machine.highest_speed
            a += 1
        if not engine.alternators:
            continue
        able = full_load_power(
            engine.rated_speed, engine.rated_speed, engine.rated_power, engine.curve_speeds, engine.curve_powers
        )
        taken = propeller_demand(
            engine.rated_speed, engine.rated_speed, engine.propeller_power, engine.propeller_exponent
        )
        short = shaft - (able - taken)
        figures = [
            Figure("able", "full-load power", able, "shaft power"),
            Figure("rated_speed", "rated engine speed", engine.rated_speed, "rotational speed"),
            Figure("propeller", "propeller's share", taken, "shaft power"),
            Figure("spare", "left between them", able - taken, "shaft power"),
            Figure("shaft", "alternators' shafts, unchecked", shaft, "shaft power"),
            Figure("short", "what the engine would lack", max(0.0, short), "shaft power"),
            Figure(
                "reached",
                "speed that it would reach",
                reached_speed(specification, engine.name, shaft),
                "rotational speed",
            ),
            Figure("rotor", "rotor speed", fastest, "rotational speed"),
            Figure("rotor_limit", "highest rotor speed", limit, "rotational speed"),
        ]
        found.append((short, figures))
    return max(found, key=lambda one: one[0])


def reached_speed(specification: Specification, name: str, shaft: float) -> float:
    """rad/s at which an engine gives what propeller and `shaft` W of alternators take; its rated speed at most."""
    (engine,) = [one for one in specification.engines if one.name == name]

    def over(speed: float) -> float:
        able = full_load_power(speed, engine.rated_speed, engine.rated_power, engine.curve_speeds, engine.curve_powers)
        return (
            able
            - shaft
            - propeller_demand(speed, engine.rated_speed, engine.propeller_power, engine.propeller_exponent)
        )

    low, high = 0.5 * engine.rated_speed, engine.rated_speed
    if over(high) >= 0.0:
        return high
    if over(low) < 0.0:
        return math.nan
    for _ in range(50):
        middle = 0.5 * (low + high)
        low, high = (middle, high) if over(middle) >= 0.0 else (low, middle)
    return low
