"""Faults that strike by night: seawater, inverter, a module of the bank, shore power.

Figures in the sentences come from the runs. What protects and what people do is practice, without a source.
"""

from __future__ import annotations

import math
from functools import partial

import numpy as np

from anchorwatt.design.specification import Specification
from anchorwatt.physics.condenser import condensing_temperature, effectiveness
from anchorwatt.physics.inverter import temperature_factor
from anchorwatt.simulation import faults as runs_of
from anchorwatt.simulation.faults import FaultRuns
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.fault_story import (
    Fault,
    Figure,
    at_dawn,
    least_dew_margin,
    lived_in,
    minutes,
    warmth_of,
)

CONDENSER_HEAT = 1.1
"""J/K of a condenser and the water in it for each watt of rated cooling. From memory: a coaxial one for 7 kW holds a
litre or so of water and some kilograms of metal."""

SETTLING = 3600.0
"""s."""

OFF = 7200.0
"""s for which an inverter that tripped on heat is taken to stay off."""


def seawater(specification: Specification, simulation: Simulation) -> Fault | None:
    """The seawater pump or its strainer stops the flow in the middle of the night."""
    moment = runs_of.middle_of_the_night(simulation)
    runs = runs_of.seawater_stops(simulation, moment)
    circuit = specification.plant.circuit
    load, drawn = float(runs.before.series.plant_load[0, -1]), float(runs.before.series.plant_power[0, -1])
    sea = float(runs.before.forcing.sea[0, -1])
    rejected = load + drawn
    through = effectiveness(circuit.condenser_ntu)
    room = circuit.highest_condensing - condensing_temperature(sea, rejected, circuit.sea_flow, through)
    trip = CONDENSER_HEAT * circuit.rated_capacity * max(0.0, room) / rejected if rejected > 0.0 else math.nan
    warmth, words = warmth_of(specification, runs)
    figures = [
        Figure("load", "cooling that stops", load, "heat flow"),
        Figure("sea", "seawater", sea, "temperature"),
        Figure("trip", "until the high-pressure switch opens, about", trip, "time"),
        *warmth,
        Figure(
            "dew_margin",
            "least margin of an inside surface over dew, two hours",
            least_dew_margin(runs, lived_in(specification, runs)),
            "temperature difference",
        ),
        *at_dawn(specification, runs),
    ]
    idle = load <= 0.0
    happens = (
        "Weed or a bag shuts the intake while the plant rests; it trips on high pressure at its next start."
        if idle
        else "Weed or a bag shuts the intake, or the pump stops. The heat of {load} of cooling has nowhere to go: "
        "pressure in the condenser rises, and within about {trip} the high-pressure switch stops the compressor."
    )
    return Fault(
        key="seawater-stops",
        name="Seawater stops",
        at=moment,
        happens=happens,
        lost=f"All cooling and dehumidifying. {words} Dawn finds the bank at {{dawn_charge}}, for it has less to do.",
        protects="The high-pressure switch, which holds the compressor off; its time is an estimate from memory. An "
        "engine that shares the through-hull loses its cooling too and must not run.",
        sees="The plant's high-pressure alarm; no water at its outlet overboard; cabins that grow damp.",
        does="Shut the seacock, clean the strainer, open it again and look at the outlet; bleed the pump of air; then "
        f"reset once. {_dew(runs, specification)}",
        figures=tuple(figures),
        minutes=minutes(specification, runs),
        runs=runs,
    )


def _dew(runs: FaultRuns, specification: Specification) -> str:
    margin = least_dew_margin(runs, lived_in(specification, runs))
    if margin > 0.0:
        return "Shut up, the coldest inside surface stays {dew_margin} over dew for two hours; air the boat after that."
    return "Shut up, dew forms on the coldest inside surface within two hours: air the boat."


def hottest_moment(specification: Specification, simulation: Simulation) -> int:
    """Step of the night at which the inverter gives the largest share of what it can give in its air.

    Its first hour is left out where there are more: cabins that are still being cooled down say nothing of how fast a
    cool one warms. So are its last two, in which there would be no night left to follow.
    """
    run = simulation.night
    settled = min(round(SETTLING / run.step), run.clock.size // 2)
    output = run.series.inverter_output[0] / specification.inverter.rated_power
    c = specification.inverter.cabin
    if c >= 0:
        part = specification.inverter
        able = [temperature_factor(t, part.full_to, part.derating, part.highest_air) for t in run.series.air[0, c]]
        output = output / np.maximum(able, 1e-3)
    followed = max(settled + 1, run.clock.size - round(OFF / run.step))
    return settled + int(np.argmax(output[settled:followed]))


def inverter(specification: Specification, simulation: Simulation) -> Fault:
    """The inverter trips on heat when it works hardest in the night."""
    part, night = specification.inverter, simulation.night
    k = hottest_moment(specification, simulation)
    moment = float(night.clock[k])
    runs = runs_of.by_night(simulation, moment, off=OFF)
    broken = runs.broken
    hours = min(broken.clock.size, round(OFF / broken.step))
    output = float(runs.before.series.inverter_output[0, -1])
    air = float(runs.before.series.air[0, part.cabin, -1]) if part.cabin >= 0 else math.nan
    kept = float(broken.series.dc_load[0, :hours].sum()) * broken.step
    warmth, words = warmth_of(specification, runs)
    figures = [
        Figure("output", "what it gave", output, "power"),
        Figure("rated", "its rating", part.rated_power, "power"),
        Figure("air", "air round it then", air, "temperature"),
        Figure("full_to", "air up to which it gives its rating", part.full_to, "temperature"),
        Figure("highest_air", "air at which it switches itself off", part.highest_air, "temperature"),
        Figure("dc_kept", "DC loads served in the two hours", kept, "energy"),
        *warmth,
        *at_dawn(specification, runs),
    ]
    where = "It gives {output} of its {rated}"
    where += " in air of {air}" if part.cabin >= 0 else ", its air not described"
    return Fault(
        key="inverter-trips",
        name="The inverter trips on heat",
        at=moment,
        happens=f"{where} when its fan clogs, and it switches itself off. It loses rating over {{full_to}} and stops "
        "at {highest_air}. It is told here as off for two hours.",
        lost=f"The cooling plant and every AC load. {words}",
        protects="Its own temperature switch. The DC side goes on: {dc_kept} of lights, fans and refrigerator in the "
        "two hours. A battery monitor shows it at once: almost no current.",
        sees="The inverter's alarm, the plant silent, AC outlets dead; DC lights on.",
        does="Switch off what can wait, give it air, clean its fan and filter. Let it cool before it is started again, "
        "first without load. Do not open it: it holds a charge that kills after it is off.",
        figures=tuple(figures),
        minutes=minutes(specification, runs),
        runs=runs,
    )


def module(specification: Specification, simulation: Simulation) -> Fault:
    """A module of the bank, and the string that it stands in, is lost in the middle of the night."""
    bank = specification.bank
    breaks = partial(runs_of.without_string, strings=bank.parallel)
    moment = runs_of.middle_of_the_night(simulation)
    runs = runs_of.by_night(simulation, moment, breaks)
    left = (bank.parallel - 1.0) / bank.parallel
    sound = runs_of.hold_after(simulation, runs, None)
    broken = runs_of.hold_after(simulation, runs, breaks) if bank.parallel > 1 else 0.0
    unserved = float(runs.broken.summary.unserved_energy[0])
    warmth, words = warmth_of(specification, runs)
    figures = [
        Figure("left", "of the bank that is left", left, "share"),
        Figure("discharge", "current that it may then give", bank.discharge_current * left, "current"),
        Figure("charge", "current that it may then take", bank.charge_current * left, "current"),
        Figure("hold", "until the reserve is reached", broken, "time"),
        Figure("hold_without", "until the reserve is reached without it", sound, "time"),
        Figure("unserved", "energy that loads went without by dawn", unserved, "energy"),
        *(warmth if bank.parallel == 1 else []),
        *at_dawn(specification, runs),
    ]
    if bank.parallel == 1:
        told = f"The only string, and with it everything that runs from the bank, AC and DC. {words}"
        happens = "A cell of the only string fails; its management system opens the contactor."
        does = "Land or run on what the engine's own battery keeps up; the boat has no supply until the module is out."
    else:
        kept = "All loads go on." if unserved <= 0.0 else "Loads go without {unserved} by dawn."
        told = (
            "One string: {left} of the bank is left, which gives {discharge} and takes {charge} at most. Dawn finds "
            f"it at {{dawn_charge}} instead of {{dawn_charge_without}}. {kept}"
        )
        happens = (
            f"A cell fails in one of {bank.parallel} strings, whose management opens its contactor; the others carry "
            "on at the charge that they have."
        )
        does = (
            "Warm the set points by a degree or two and turn off what can wait: from then on the reserve is reached "
            "after {hold} instead of {hold_without}. Charge early. Leave the string off until a qualified person has "
            "seen it: a swollen, hot or smelling module means leaving the space and airing it."
        )
    return Fault(
        key="module-lost",
        name="A module of the bank is lost",
        at=moment,
        happens=happens,
        lost=told,
        protects="The string's own management and its fuse, which keep the other strings from feeding the fault.",
        sees="The management's alarm; a state of charge that falls faster than on other nights.",
        does=does,
        figures=tuple(figures),
        minutes=minutes(specification, runs),
        runs=runs,
    )


def shore(specification: Specification, simulation: Simulation) -> Fault | None:
    """Shore voltage sags in the night; None where there is no shore service."""
    service = specification.shore
    if service is None:
        return None
    runs = runs_of.shore_sags(simulation, runs_of.middle_of_the_night(simulation))
    series = runs.before.series
    taken, fed = float(series.shore[0, -1]), float(series.charger[0, -1])
    after = runs_of.hold_after(simulation, runs, None)
    lost = not math.isnan(float(runs.broken.summary.lost_at[0]))
    figures = [
        Figure("taken", "power from shore", taken, "power"),
        Figure("fed", "of it, out of the charger", fed, "power"),
        Figure("nominal", "nominal voltage", service.voltage, "voltage"),
        Figure("lowest", "voltage at which the charger gives way", service.lowest_voltage, "voltage"),
        Figure("amps", "shore current of each leg", taken / (service.voltage * service.legs), "current"),
        Figure(
            "amps_low",
            "shore current at that voltage, the same power",
            taken / (service.lowest_voltage * service.legs),
            "current",
        ),
        Figure("limit", "shore current that the boat is set to", service.current_limit, "current"),
        Figure("from_bank", "current out of the bank after", float(runs.broken.series.current[0, 0]), "current"),
        Figure("hold", "until the reserve is reached", after, "time"),
        *at_dawn(specification, runs),
    ]
    held = "for more than two days" if math.isnan(after) else "for {hold} until the reserve"
    charger = (
        "The charger, which gave {fed}, gives way first at {lowest}. " if specification.charger is not None else ""
    )
    return Fault(
        key="shore-sags",
        name="Shore power sags",
        at=runs.moment,
        happens="Other boats load the dock and its voltage falls. Motors and chargers take the same power from less "
        "voltage: {amps} of each leg at {nominal} would be {amps_low} at {lowest}.",
        lost=f"{charger}Then the inverter takes the loads, {{from_bank}} from the bank"
        + ("; part of the loads is lost" if lost else "; no load is lost")
        + ". Dawn finds the bank at {dawn_charge} instead of {dawn_charge_without}.",
        protects=f"The limit on shore current, {{limit}} a leg, and the inverter's transfer: it holds {held}.",
        sees="Shore voltage on the panel, the charger's lamp, a bank current that has turned round.",
        does="Leave the loads on the inverter, or reduce them before going back to shore. Feel the shore plug and "
        "inlet for warmth without touching metal: a warm plug means a bad contact, and the dock's breaker goes off "
        "before it is pulled.",
        figures=tuple(figures),
        minutes=minutes(specification, runs),
        runs=runs,
    )
