"""A first design from an intake: sizes found by assessing a few candidates of the catalogue, one part after another."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace

from anchorwatt.assessment import Assessment, assess
from anchorwatt.catalogue.air_handler import AirHandler
from anchorwatt.catalogue.part import rows
from anchorwatt.checks import Verdict, rules
from anchorwatt.design import parse
from anchorwatt.design.intake import CHOOSE, INTAKE, Intake
from anchorwatt.design.intake_text import (
    CHARGE_AT_START,
    RESERVE,
    Chosen,
    Served,
    alternators_of,
    belts_for,
    charger_for,
    design_text,
    guessed,
    inverters_of,
    modules_of,
)
from anchorwatt.errors import AnchorwattError
from anchorwatt.sizing.selection import CabinPeak, choose_handler, choose_unit, evaporating_at_rating
from anchorwatt.units import show

Going = Callable[[str], bool]
"""Told in words what is being worked out; False stops it."""

MOST_HANDLERS, MOST_INVERTERS, MOST_ALTERNATORS = 4, 6, 2
TRIES = 12  # candidates of a part that are assessed
LOWEST_VOLTAGES = ((2000.0, 12), (5000.0, 24), (math.inf, 48))
"""Up to which W of inverter a bank's voltage serves: about 200 A. Common practice, no source."""

# Rules of the registry that judge the candidates of a part.
INVERTER_RULES = ("inverter-carries-peak", "inverter-in-heat", "inverter-all-at-once", "inverter-surge")
BANK_RULES = (
    "bank-holds-night",
    "reserve-at-dawn",
    "bank-carries-peak",
    "bank-carries-inverter",
    "voltage-at-reserve",
    "bank-cycles-within-life",
    "aged-bank-holds-night",
    "warranted-bank-holds-night",
    "night-holds-without-a-string",
    "week-above-reserve",
)
CHARGING_RULES = (
    "recharge-in-time",
    "belt-at-charging-speed",
    "alternators-turn-fast-enough",
    "alternators-within-bank",
    "alternator-winding",
    "hold-keeps-winding",
    "mid-range-power-spare",
    "charging-after-any-loss",
    "week-above-reserve",
    "week-keeps-going",
    "week-supplied",
)
BRIEF_RULES = (
    "bank-holds-night",
    "reserve-at-dawn",
    "recharge-in-time",
    "week-above-reserve",
    "week-keeps-going",
    "week-supplied",
)
"""What was asked for; the others are about how well it is done."""


class Stopped(AnchorwattError):
    """Somebody stopped it; nothing was made."""


@dataclass(frozen=True)
class FirstDesign:
    """The text of a design file, and what it cannot do."""

    text: str
    fails: tuple[str, ...]  # in sentences; they stand at the head of the text too


class _Work:
    """One intake on its way to a design."""

    def __init__(self, intake: Intake, going: Going) -> None:
        self.intake = intake
        self.going = going
        self.short: list[str] = []  # what the catalogue cannot do

    def tell(self, words: str) -> None:
        if not self.going(words):
            raise Stopped("the intake was stopped; nothing was made")

    def assessed(self, chosen: Chosen) -> Assessment:
        return assess(parse(design_text(self.intake, chosen), INTAKE))

    def cooled(self, chosen: Chosen) -> Chosen:
        """Air handlers and condensing unit for the computed peaks."""
        self.tell("Working out the heat of the hottest day …")
        assessment = self.assessed(chosen)
        gains, cabins = assessment.gains, assessment.specification.cabins
        evaporating = evaporating_at_rating(assessment.specification.plant.circuit)
        handlers = tuple(
            self._handler(
                cabins[one.cabin].name,
                CabinPeak(
                    one.peak,
                    float(one.sensible[one.peak_hour]),
                    float(one.air[one.peak_hour]),
                    float(one.humidity[one.peak_hour]),
                ),
                evaporating,
            )
            for one in gains.cabins
        )
        sea = float(assessment.simulation.weather.sea_temperature.max())
        name, able, _ = choose_unit(gains.peak, sea)
        peak = show(gains.peak, "heat flow", "si")
        if name:
            why = f"gives {show(able, 'heat flow', 'si')} at a sea of {sea:.0f} °C, the hottest hour asks for {peak}"
        else:
            name = list(rows("condensing_unit"))[-1]
            why = f"the largest there is; the hottest hour asks for {peak}"
            self.short.append(f"No condensing unit of the catalogue gives the {peak} of the hottest hour.")
        return replace(chosen, plant=name, handlers=handlers, why={**chosen.why, "plant": why})

    def _handler(self, cabin: str, peak: CabinPeak, evaporating: float) -> Served:
        asked = show(peak.total, "heat flow", "si")
        for number in range(1, MOST_HANDLERS + 1):
            part = replace(peak, total=peak.total / number, sensible=peak.sensible / number)
            name, _, gives = choose_handler(part, evaporating)
            if name:
                given = show(gives * number, "heat flow", "si")
                return Served(cabin, name, number, f"takes {given}, the hottest hour asks for {asked}")
        largest = max(
            (one for one in rows("air_handler").values() if isinstance(one, AirHandler)),
            key=lambda one: float(one.rated_capacity),
        )
        self.short.append(f"{MOST_HANDLERS} of the largest air handlers do not take the {asked} of {cabin}.")
        return Served(cabin, largest.name, MOST_HANDLERS, f"the most that is tried; the hottest hour asks for {asked}")

    def converted(self, chosen: Chosen) -> Chosen:
        """Voltage and inverters that carry what runs together."""
        self.tell("Living through evening and night …")
        large = replace(chosen, inverters=MOST_INVERTERS)
        simulation = self.assessed(large).simulation
        peak = max(float(run.summary.peak_inverter_power[0]) for run in (simulation.night, simulation.day))
        options = []
        for voltage in (12, 24, 48):
            if self.intake.voltage in (CHOOSE, f"{voltage} V"):
                options += [
                    self._of_voltage(chosen, voltage, unit.name, number)
                    for number in range(1, MOST_INVERTERS + 1)
                    for unit in inverters_of(voltage)
                    if _volts_serve(self.intake, voltage, number * float(unit.rated_power))
                    and number * float(unit.rated_power) >= peak
                ]
        if not options:
            voltage = 48 if self.intake.voltage == CHOOSE else chosen.voltage
            options = [self._of_voltage(chosen, voltage, inverters_of(voltage)[-1].name, MOST_INVERTERS)]
        options.sort(key=lambda one: one.inverters * _price("inverter", one.inverter))
        found = self._first("inverter", options, lambda one: f"{one.inverters} × {one.inverter}", INVERTER_RULES)
        why = {
            "inverter": f"night and day ask for {show(peak, 'power', 'si')} on average over the busiest minute; "
            "the loads that run at once for more",
            "voltage": "the inverter asks the bank for no more than about 200 A",
        }
        return replace(found, why={**found.why, **why})

    def _of_voltage(self, chosen: Chosen, voltage: int, inverter: str, number: int) -> Chosen:
        """With a bank and alternators of that voltage, as large as they come."""
        module, series = modules_of(voltage)[-1]
        alternator = alternators_of(voltage)[-1]
        return replace(
            chosen,
            voltage=voltage,
            inverter=inverter,
            inverters=number,
            module=module.name,
            series=series,
            parallel=module.highest_parallel,
            alternators=(alternator.name,) * MOST_ALTERNATORS,
            belt=belts_for(alternator)[-1],
            charger="",
        )

    def stored(self, chosen: Chosen) -> Chosen:
        """The cheapest bank that holds the night, new and aged."""
        self.tell("Working out what the night takes from the bank …")
        night = self.assessed(chosen).simulation.night.summary
        wanted = float(night.bank_out[0]) / (CHARGE_AT_START - RESERVE)
        options = []
        for module, series in modules_of(chosen.voltage):
            for parallel in range(1, module.highest_parallel + 1):
                charger = charger_for(self.intake, chosen.voltage, parallel * float(module.charge_current))
                if parallel * series * float(module.nominal_voltage) * float(module.capacity) * 3600.0 >= wanted:
                    options.append(
                        replace(chosen, module=module.name, series=series, parallel=parallel, charger=charger)
                    )
        if not options:
            options = [chosen]
        options.sort(key=lambda one: one.series * one.parallel * _price("battery_module", one.module))
        found = self._first("bank", options, lambda one: f"{one.series * one.parallel} × {one.module}", BANK_RULES)
        held = show(self.assessed(found).answer("hold_hours").value, "time", "si")
        return replace(found, why={**found.why, "bank": f"new, it holds {held} of the night of the plan"})

    def charged(self, chosen: Chosen) -> Chosen:
        """The cheapest alternators and belts that put the night back in time."""
        options = [
            replace(chosen, alternators=(one.name,) * number, belt=belt)
            for number in range(1, MOST_ALTERNATORS + 1)
            for one in alternators_of(chosen.voltage)
            for belt in belts_for(one)[:3]
        ]
        options.sort(
            key=lambda one: len(one.alternators) * (_price("alternator", one.alternators[0]) + _price("belt", one.belt))
        )
        found = self._first(
            "alternators",
            options,
            lambda one: f"{len(one.alternators)} × {one.alternators[0]} an engine, {one.belt} belt",
            CHARGING_RULES,
        )
        hours = self.assessed(found).answer("engine_hours_to_recharge").value
        told = (
            "they do not put the night back within a day"
            if math.isnan(hours)
            else f"they put the night back in {show(hours, 'time', 'si')} at anchor"
        )
        return replace(found, why={**found.why, "alternators": told})

    def _first(
        self, part: str, options: list[Chosen], named: Callable[[Chosen], str], asked: tuple[str, ...]
    ) -> Chosen:
        """The first of the options with which no rule fails; else that of those tried with which least fails.

        A rule of `BRIEF_RULES` that fails outweighs all others.
        """
        judges = sorted((rule for rule in rules() if rule.id in asked), key=lambda rule: rule.id not in BRIEF_RULES)
        best, least = options[0], math.inf
        for option in _spread(options):
            self.tell(f"Trying {part}: {named(option)} …")
            evidence = self.assessed(option).evidence
            failing = 0
            for judge in judges:
                finding = judge.find(evidence)
                if finding is not None and finding.verdict is Verdict.FAILS:
                    failing += len(judges) + 1 if judge.id in BRIEF_RULES else 1
                if failing >= least:
                    break
            if failing < least:
                best, least = option, failing
            if not least:
                break
        return best


def first_design(intake: Intake, going: Going = lambda _: True) -> FirstDesign:
    """Choose sizes for an intake, and write its design file.

    Parameters
    ----------
    intake : what was asked for
    going : told in words how far it is; its answer False stops it

    Raises
    ------
    Stopped
        `going` said so.
    OutOfRange
        Some run leaves what its equations hold for.
    """
    work = _Work(intake, going)
    chosen = guessed(intake)
    for step in (work.cooled, work.converted, work.stored, work.charged):
        chosen = step(chosen)
    work.tell("Checking the design …")
    assessment = work.assessed(chosen)
    for done, of in assessment.check_in_turn():
        work.tell(f"Checking the design: {done} of {of} …")
    fails = [one for one in assessment.checks if one.verdict is Verdict.FAILS]
    told = [*work.short, *(f"A check fails: {one.question} {_sentence(one.remedy)}" for one in fails)]
    return FirstDesign(design_text(intake, chosen, told), tuple(told))


def _sentence(words: str) -> str:
    return f"{words[:1].upper()}{words[1:]}." if words and not words.endswith(".") else words


def _volts_serve(intake: Intake, voltage: int, power: float) -> bool:
    """Whether a bank of that voltage is the lowest for W of inverter, where the intake leaves it open."""
    return intake.voltage != CHOOSE or voltage == next(volts for most, volts in LOWEST_VOLTAGES if power <= most)


def _spread(options: list[Chosen]) -> list[Chosen]:
    """At most `TRIES` of the options, the first and the last among them."""
    last = len(options) - 1
    if last < TRIES:
        return options
    return [options[round(number * last / (TRIES - 1))] for number in range(TRIES)]


def _price(kind: str, name: str) -> float:
    price = rows(kind)[name].price
    return 0.0 if price is None else float(price.amount)
