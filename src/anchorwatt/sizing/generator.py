"""A generating set that would do the same job, beside the bank and the engine.

It is asked to work in two ways. Either it runs all night and carries what the inverter would have carried, with the DC
loads through a charger; or it runs when people are awake, carries the AC loads as on shore power, and puts back through
the charger what the night took out of the bank.
"""

from __future__ import annotations

import math
from dataclasses import dataclass, replace

import numpy as np

from anchorwatt.catalogue.part import CURRENCY
from anchorwatt.design.specification import Converter, Doing, Generator, Specification
from anchorwatt.physics.combustion import carbon_dioxide_emitted
from anchorwatt.physics.engine import DIESEL_HEATING_VALUE, fuel_volume, full_load_power
from anchorwatt.physics.generator import D2_LOADS, cycle_specific_fuel, generator_fuel_flow
from anchorwatt.physics.inverter import converter_input
from anchorwatt.physics.sound import level_at_distance
from anchorwatt.simulation.arrays import Boat, Floats
from anchorwatt.simulation.forcing import Stretch, period_at, recharge_stretch
from anchorwatt.simulation.runs import LONGEST_RECHARGE, Run, Simulation
from anchorwatt.sizing.price import prices

BANK_KINDS = ("battery_module", "inverter", "alternator", "belt")
"""What a boat that lives on its engine carries for it."""

SLEEPERS_SHARE = 0.25
"""Of the boat's length, from the set to the nearest sleeper. Common practice, no source."""

MEASURED_AT = 1.0  # m, where a set's level is told for

USUAL_CHARGER = Converter("a usual charger", 0.0, 15.0, 0.05, 0.04, 2.0, (), (), 40.0, 0.015, 65.0, 0.0, -1)
"""Losses of a charger where the design has none. From memory."""

CHARGER_SHARE = 0.5
"""Of the set's rating, for a charger where the design has none. Common practice, no source."""


@dataclass(frozen=True)
class Way:
    """One way to have the night, with what it asks of a machine that burns fuel."""

    key: str
    name: str
    generator: bool  # else the boat's own engines
    fuel: float  # m3 a night
    running: float  # s a night that a machine runs for this and for nothing else
    by_night: float  # s of it while people sleep
    peak: float  # W of electrical load, nan = not asked
    mean_load: float  # share of what the machine can give at its speed, nan = it pushes the boat as well
    light: float  # share of its running below the lowest load that is good for it, nan = not asked
    over: float  # share of its running above its rating, nan = not asked


@dataclass(frozen=True)
class GeneratorComparison:
    """The design beside a generating set, for a night; a year has `nights` of them."""

    generator: Generator
    nights: float  # a year
    ways: tuple[Way, ...]  # the design's own first
    charger: str  # that the set would charge through
    night_peak: float  # W, the highest minute of the night at the set's terminals
    night_served: bool  # whether the design's own bank served the night to its end
    specific_fuel: float  # kg/J of electricity over the D2 cycle
    full_load_efficiency: float  # electricity over the fuel's heat
    distance: float  # m from the set to the nearest sleeper
    level: float  # dB(A) there, in the open
    bank_mass: float  # kg of bank, inverter, alternators and belts
    bank_price: float  # nan = not all known, or in another currency
    currency: str

    @property
    def fuel_per_work(self) -> float:
        """g of fuel for each kWh of electricity over the D2 cycle, as the trade writes it."""
        return self.specific_fuel * 3.6e9

    def way(self, key: str) -> Way | None:
        """The way of that key, where there is one."""
        return next((way for way in self.ways if way.key == key), None)

    def fuel_per_year(self, way: Way) -> float:
        """m3."""
        return self.nights * way.fuel

    def running_per_year(self, way: Way) -> float:
        """s."""
        return self.nights * way.running

    def services_per_year(self, way: Way) -> float:
        """Services by running hours, one a year at least; nan for the boat's own engines, which have theirs anyway."""
        if not way.generator:
            return math.nan
        return max(1.0, self.running_per_year(way) / self.generator.service_interval)

    def service_price_per_year(self, way: Way) -> float:
        """In the currency of the comparison."""
        return self.services_per_year(way) * self.generator.service_price

    def years_of_life(self, way: Way) -> float:
        """Years until an overhaul by running hours; nan for the boat's own engines."""
        running = self.running_per_year(way)
        return self.generator.life / running if way.generator and running > 0.0 else math.nan

    def carbon_dioxide_per_year(self, way: Way) -> float:
        """kg."""
        fuel = self.fuel_per_year(way)
        return math.nan if math.isnan(fuel) else carbon_dioxide_emitted(fuel)


def compare(specification: Specification, simulation: Simulation) -> GeneratorComparison | None:
    """The design beside the generating set that it names or that was chosen for it; None without one."""
    generator = specification.generator
    if generator is None:
        return None
    charger = charger_of(specification, generator)
    carrying = carried(simulation.night, charger)
    distance = max(MEASURED_AT, SLEEPERS_SHARE * specification.length)
    bank = [item for item in specification.items if item.kind in BANK_KINDS]
    return GeneratorComparison(
        generator=generator,
        nights=specification.brief.nights_per_year,
        ways=(
            *own_ways(specification, simulation),
            all_night(generator, carrying, simulation.step),
            refilling(specification, simulation, generator, charger),
        ),
        charger=charger.name,
        night_peak=float(np.max(carrying)),
        night_served=float(simulation.night.summary.unserved_energy[0]) <= 0.0,
        specific_fuel=specific_fuel(generator),
        full_load_efficiency=generator.rated_power / heat_burnt(generator, generator.rated_power),
        distance=distance,
        level=level_at_distance(generator.noise, MEASURED_AT, distance),
        bank_mass=sum(item.count * item.mass for item in bank),
        bank_price=prices(specification, BANK_KINDS).only(CURRENCY),
        currency=CURRENCY,
    )


def charger_of(specification: Specification, generator: Generator) -> Converter:
    """The design's charger, or a usual one."""
    if specification.charger is not None:
        return specification.charger
    return replace(USUAL_CHARGER, rated_power=CHARGER_SHARE * generator.rated_power)


def flow(generator: Generator, output: float) -> float:
    """kg/s of fuel for W at the terminals."""
    return generator_fuel_flow(
        output,
        generator.efficiency,
        generator.speed,
        generator.displacement,
        generator.friction_pressure,
        generator.indicated_efficiency,
    )


def heat_burnt(generator: Generator, output: float) -> float:
    """W of the fuel's heat for W at the terminals."""
    return flow(generator, output) * DIESEL_HEATING_VALUE


def specific_fuel(generator: Generator) -> float:
    """kg of fuel for each J of electricity over the loads and weights of cycle D2."""
    powers = [load * generator.rated_power for load in D2_LOADS]
    return cycle_specific_fuel([flow(generator, power) for power in powers], powers)


def carried(night: Run, charger: Converter) -> Floats:
    """W at the set's terminals, minute by minute, in a night on which it stands in for the inverter.

    DC loads that the sun does not feed go through the charger as far as it is rated; the bank bears the rest.
    """
    series = night.series
    direct = np.clip(series.dc_load[0] - series.solar[0], 0.0, charger.rated_power)
    through = [
        converter_input(float(power), charger.rated_power, charger.no_load_power, charger.linear, charger.quadratic)
        if power > 0.0
        else 0.0
        for power in direct
    ]
    return np.asarray(series.inverter_output[0] + np.array(through), dtype=np.float64)


def all_night(generator: Generator, loads: Floats, step: float) -> Way:
    """The set running through the night with those loads, W, one a step of s."""
    whole = loads.size * step
    return _way("all-night", "set, all night", generator, loads, step, whole, whole)


def refilling(specification: Specification, simulation: Simulation, generator: Generator, charger: Converter) -> Way:
    """The set running by day until the bank is as full as the engines would have made it."""
    stretch = recharge_stretch(specification, simulation.dawn)
    period = period_at(specification, simulation.dawn) if stretch is None else stretch.period
    held = Stretch(replace(period, doing=Doing.ON_SHORE_POWER, boat_speed=0.0))
    boat = fed_by(simulation.boat, generator, charger)
    start = simulation.dawn
    run = simulation.run("generator", start, start + LONGEST_RECHARGE, simulation.night.end, held=held, boat=boat)
    time = float(run.summary.full_at[0])
    steps = run.series.shore.shape[1] if math.isnan(time) else max(1, math.ceil(time / simulation.step))
    loads = run.series.shore[0, :steps]
    name = "set, to recharge"
    return _way("recharge", name, generator, loads, simulation.step, time, 0.0)


def fed_by(boat: Boat, generator: Generator, charger: Converter) -> Boat:
    """The boat with the set in the place of the shore service."""
    figures = [charger.rated_power, charger.no_load_power, charger.linear, charger.quadratic]
    power = boat.power._replace(
        shore_power=np.full_like(boat.power.shore_power, generator.rated_power),
        charger=np.tile(figures, (boat.power.charger.shape[0], 1)),
    )
    return boat._replace(power=power)


def _way(key: str, name: str, generator: Generator, loads: Floats, step: float, running: float, by_night: float) -> Way:
    rated = generator.rated_power
    given = np.minimum(loads, rated)
    burnt = sum(flow(generator, float(power)) for power in given) * step
    return Way(
        key=key,
        name=name,
        generator=True,
        fuel=math.nan if math.isnan(running) else fuel_volume(burnt),
        running=running,
        by_night=by_night,
        peak=float(np.max(loads)),
        mean_load=float(np.mean(given)) / rated,
        light=float(np.mean(loads < generator.lowest_load * rated)),
        over=float(np.mean(loads > rated)),
    )


def own_ways(specification: Specification, simulation: Simulation) -> tuple[Way, ...]:
    """The boat's own engines: under way, where the plan motors, and at anchor for the bank alone."""
    stretch = recharge_stretch(specification, simulation.dawn)
    run = simulation.recharge
    if stretch is None or run is None:
        return ()
    ways = []
    speeds = tuple(engine.charging_speed for engine in specification.engines)
    if stretch.period.doing is Doing.MOTORING:
        reached = not math.isnan(float(run.summary.full_at[0]))
        fuel = fuel_volume(float(run.summary.fuel_added[0])) if reached else math.nan
        running = 0.0 if reached else math.nan
        nan = math.nan
        ways.append(Way("under-way", "engine, under way", False, fuel, running, 0.0, nan, nan, nan, nan))
        run = simulation.recharge_at(speeds, False)
    if run is not None:
        ways.append(_at_anchor(specification, run))
    return tuple(ways)


def _at_anchor(specification: Specification, run: Run) -> Way:
    """Engines that run for the bank and for nothing else: all of their fuel counts."""
    time = float(run.summary.full_at[0])
    reached = not math.isnan(time)
    able = sum(
        full_load_power(
            engine.charging_speed, engine.rated_speed, engine.rated_power, engine.curve_speeds, engine.curve_powers
        )
        for engine in specification.engines
        if engine.alternators
    )
    return Way(
        key="at-anchor",
        name="engine, at anchor",
        generator=False,
        fuel=fuel_volume(float(run.summary.fuel[0])) if reached else math.nan,
        running=time,
        by_night=0.0,
        peak=math.nan,
        mean_load=float(run.summary.shaft_energy[0]) / (run.step * run.clock.size * able),
        light=math.nan,
        over=math.nan,
    )
