"""The answers that decide the job, each with its why."""

from __future__ import annotations

import math
from collections.abc import Callable

from anchorwatt.assessment.offer import price_answer
from anchorwatt.assessment.records import Answer, Finding, Input, Verdict, Why
from anchorwatt.assessment.weight import weight_answers
from anchorwatt.checks import Evidence
from anchorwatt.design.specification import Specification
from anchorwatt.physics.engine import DIESEL_DENSITY
from anchorwatt.simulation.runs import LONGEST_HOLD, Simulation
from anchorwatt.sizing.comfort import WIDEST, worst_votes
from anchorwatt.sizing.occupancy import slept_in

KERNEL = "the time kernel's balance of heat, moisture and power, minute by minute; see docs/theory"

OF_THE_WEIGHT = ("mass_added_kg", "heel_deg", "trim_cm")
"""Answers of the page of weight that decide the job."""

Basis = Callable[[str], str]
"""From a key of the design file to "typed", "catalogue" or "estimated"."""


def answers(evidence: Evidence, basis: Basis) -> tuple[Answer, ...]:
    """The headline answers that need no check, in the order in which people ask."""
    specification, simulation = evidence.specification, evidence.simulation
    with simulation.main_runs():
        comfort = _comfort(evidence)
        weight = {answer.key: answer for answer in weight_answers(specification, evidence.weight, basis)}
        price = price_answer(evidence.offer)
    return (
        *_night(specification, simulation, basis),
        *comfort,
        *_recharge(simulation),
        *(weight[key] for key in OF_THE_WEIGHT),
        price,
    )


def checks_failed(findings: tuple[Finding, ...]) -> Answer:
    """How many checks fail."""
    failed = sum(finding.verdict is Verdict.FAILS for finding in findings)
    untold = sum(finding.verdict is Verdict.CANNOT_TELL for finding in findings)
    return Answer(
        "checks_failed",
        "How many checks fail?",
        float(failed),
        "count",
        "",
        f"of {len(findings)}" + (f"; {untold} cannot tell" if untold else ""),
        Why("count of findings that fail", (), "the checks", "each finding's remedy"),
    )


def _night(specification: Specification, simulation: Simulation, basis: Basis) -> tuple[Answer, ...]:
    brief, bank, night, hold = specification.brief, specification.bank, simulation.night, simulation.hold
    summary = night.summary
    reached = float(hold.summary.reserve_at[0])
    capacity = Input("bank", bank.capacity * bank.nominal_voltage, "energy", basis("dc.bank.module"))
    reserve = Input("reserve", brief.reserve, "share", basis("brief.reserve"))
    start = Input("charge when the night begins", brief.charge_at_start, "share", basis("brief.charge_at_start"))
    energy = float(summary.bank_out[0])
    plant = Input("cooling plant", float(summary.plant_energy[0]), "energy", "computed")
    others = Input("other AC loads", float(summary.ac_load_energy[0]), "energy", "computed")
    direct = Input("DC loads", float(summary.dc_load_energy[0]), "energy", "computed")
    lost = Input(
        "lost in transformer and inverter",
        float(summary.transformer_loss[0] + summary.inverter_loss[0]),
        "energy",
        "computed",
    )
    peak = float(summary.peak_plant_power[0])
    return (
        Answer(
            "hold_hours",
            "How long does the bank hold the night?",
            LONGEST_HOLD if math.isnan(reached) else reached,
            "time",
            "h",
            "or longer" if math.isnan(reached) else "until the reserve is reached, the night going on as it began",
            Why(
                "time from the start of the night until the state of charge reaches the reserve",
                (capacity, start, reserve, plant, others, direct, lost),
                KERNEL,
                "bank size, reserve, cabins cooled and their set points, covers on windows, seawater temperature",
            ),
        ),
        Answer(
            "required_hours",
            "How long must it?",
            brief.hold,
            "time",
            "h",
            "",
            Why(
                "as the brief says",
                (Input("hold", brief.hold, "time", basis("brief.hold")),),
                "the brief",
                "the brief",
            ),
        ),
        Answer(
            "charge_at_dawn_pct",
            "What is left in the bank at dawn?",
            float(night.end.charge[0]),
            "share",
            "%",
            "",
            Why(
                "charge when the night begins, less ampere-hours taken over the bank's capacity",
                (capacity, start, reserve),
                KERNEL,
                "whatever changes the energy of the night, and the bank's size",
            ),
        ),
        Answer(
            "night_energy_kWh",
            "What does the night take from the bank?",
            energy,
            "energy",
            "kWh",
            "",
            Why(
                "energy at the bank's terminals from the start of the night to dawn, out less in",
                (plant, others, direct, lost),
                KERNEL,
                "cabins cooled and their set points, covers, loads left running, seawater temperature",
            ),
        ),
        Answer(
            "peak_plant_power_W",
            "What does the cooling plant draw at most by night?",
            peak,
            "power",
            "W",
            "",
            Why(
                "highest minute of compressor, fans, seawater pump and controls together, counted while they run",
                (
                    Input(
                        "rated capacity",
                        specification.plant.circuit.rated_capacity,
                        "heat flow",
                        basis("cooling.plant"),
                    ),
                    Input(
                        "rated compressor power",
                        specification.plant.circuit.rated_power,
                        "power",
                        basis("cooling.plant"),
                    ),
                ),
                KERNEL,
                "how warm the cabins are when the night begins, compressor size, seawater temperature",
            ),
        ),
        Answer(
            "peak_inverter_power_W",
            "What must the inverter give at most by night?",
            float(summary.peak_inverter_power[0]),
            "power",
            "W",
            "",
            Why(
                "highest minute of plant and AC loads, counted while they run, with the transformer's losses",
                (
                    Input("inverter rating", specification.inverter.rated_power, "power", basis("ac.inverter")),
                    Input("plant at its peak", peak, "power", "computed"),
                ),
                KERNEL,
                "plant peak, and AC loads that run together with it",
            ),
        ),
    )


def _comfort(evidence: Evidence) -> tuple[Answer, ...]:
    """In how many of the cabins that people sleep in they are comfortable; none where nobody sleeps aboard."""
    votes = worst_votes(evidence.comfort, slept_in(evidence.specification, evidence.simulation.night))
    if not votes:
        return ()
    cabins = evidence.specification.cabins
    fine = sum(abs(vote) <= WIDEST for vote in votes.values())
    worst = max(votes, key=lambda cabin: abs(votes[cabin]))
    feels = "warm" if votes[worst] > 0.0 else "cool"
    inputs = tuple(Input(f"vote in {cabins[cabin].name}", vote, "ratio", "computed") for cabin, vote in votes.items())
    return (
        Answer(
            "comfortable_cabins",
            "In how many cabins do people sleep comfortably?",
            float(fine),
            "count",
            "",
            f"of {len(votes)}" + ("" if fine == len(votes) else f"; too {feels} in {cabins[worst].name}"),
            Why(
                f"cabins whose predicted mean vote stays within {WIDEST:g} either way in every hour of the night after "
                "the first (below 0: cool)",
                inputs,
                "ISO 7730, annex A, category C, from memory; people asleep lie below the activity for which it holds, "
                "so that the vote is a guide",
                "set points, covers of sleepers in the plan's people, the air handlers of those cabins",
            ),
        ),
    )


def _recharge(simulation: Simulation) -> tuple[Answer, ...]:
    recharge, dawn = simulation.recharge, float(simulation.night.end.charge[0])
    full_at = math.nan if recharge is None else float(recharge.summary.full_at[0])
    added = math.nan if recharge is None or math.isnan(full_at) else float(recharge.summary.fuel_added[0])
    return (
        Answer(
            "engine_hours_to_recharge",
            "How long must the engine run to put it back?",
            full_at,
            "time",
            "h",
            "does not get there within a day" if math.isnan(full_at) else "",
            Why(
                "time from dawn, engines on, until the bank is charged again",
                (
                    Input("charge at dawn", dawn, "share", "computed"),
                    Input("charge that counts as full", simulation.full_charge, "share", "computed"),
                ),
                KERNEL,
                "alternator size and count, belt, held temperature, engine speed, what runs meanwhile",
            ),
        ),
        Answer(
            "recharge_fuel_L",
            "How much fuel does that cost?",
            added / DIESEL_DENSITY,
            "liquid volume",
            "L",
            "burnt for the alternators, the propeller's share left out",
            Why(
                "fuel with the alternators less fuel without them at the same engine speed, by the Willans line",
                (
                    Input(
                        "energy at the alternator shafts",
                        math.nan if recharge is None else float(recharge.summary.shaft_energy[0]),
                        "energy",
                        "computed",
                    ),
                ),
                KERNEL,
                "alternator efficiency, and whether the engine runs for propulsion anyway",
            ),
        ),
    )
