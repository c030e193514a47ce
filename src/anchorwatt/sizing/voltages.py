"""The same boat at 12, 24 and 48 V: the same cells, machines and loads, other voltages and currents."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from anchorwatt.catalogue import rows
from anchorwatt.catalogue.charger import Charger
from anchorwatt.catalogue.inverter import Inverter
from anchorwatt.design.fill_power import converter_of
from anchorwatt.design.specification import Alternator, Bank, Converter, CutOff, Specification
from anchorwatt.physics.conductor import copper_mass
from anchorwatt.physics.inverter import converter_input
from anchorwatt.physics.rewinding import rewound_current, rewound_efficiency
from anchorwatt.simulation.runs import Run, Simulation
from anchorwatt.sizing.conductors import ENGINE_SPACE, CableRun, SizedCircuit, drop_area, series, sized, with_conductor

VOLTAGES = (12.0, 24.0, 48.0)
"""V nominal."""

HIGHEST_DROP = 0.03
"""Share of the nominal voltage that a main run may lose; usual of main feeders."""

DROP_TEMPERATURE = 75.0
"""°C of a conductor that is well used, for the area that the drop alone asks for."""

# Lengths of the main runs, one way, as shares of the boat's length. From memory.
ALTERNATOR_RUN, INVERTER_RUN, CHARGER_RUN = 0.20, 0.10, 0.12


@dataclass(frozen=True)
class PartPrice:
    """What changes hands with the voltage: inverter, charger and main cables."""

    amount: float  # nan = unknown
    currency: str  # "" = unknown


@dataclass(frozen=True)
class AtVoltage:
    """The boat at one voltage."""

    voltage: float  # V nominal
    own: bool  # whether the design has it
    specification: Specification
    alternator_efficiency: float  # at the reference point, of the alternators by their rated output
    circuits: tuple[SizedCircuit, ...]  # sized for the same share of drop and for what they carry
    same_copper: tuple[SizedCircuit, ...]  # with the copper that the design's own voltage needs
    drop_copper: float  # kg of bare copper that the drop alone asks for, in no standard size
    night_energy: float  # J from the bank
    charge_at_dawn: float
    recharge_time: float  # s, nan = not within a day, or no alternator
    charging_power: float  # W of all alternators, mean while they recharge, nan = no alternator
    peak_charging_power: float  # W
    fuel_added: float  # kg, nan as the recharge time
    charging_efficiency: float  # electrical energy over shaft energy of the alternators while they recharge
    price: PartPrice

    @property
    def copper(self) -> float:
        """kg of bare copper in the main runs."""
        return sum(one.copper for one in self.circuits)

    @property
    def cable_mass(self) -> float:
        """kg of the main runs with their insulation."""
        return sum(one.mass for one in self.circuits)

    @property
    def cable_loss(self) -> float:
        """W in the main runs at full current."""
        return sum(one.loss for one in self.circuits)

    @property
    def same_copper_loss(self) -> float:
        """W in the main runs at full current, with the copper of the design's own voltage."""
        return sum(one.loss for one in self.same_copper)

    @property
    def overloaded(self) -> tuple[str, ...]:
        """Runs that the copper of the design's own voltage would not carry."""
        return tuple(one.circuit.name for one in self.same_copper if one.circuit.current > one.ampacity)


def own_voltage(specification: Specification) -> float:
    """The nominal voltage of the design, V: 12.8 V stands for 12 V."""
    return min(VOLTAGES, key=lambda voltage: abs(specification.bank.nominal_voltage / voltage - 1.0))


def bank_at(bank: Bank, cells: int) -> Bank:
    """The same cells, and so the same energy, put together with another number of them in series.

    The share of the resistance that is links and cables goes with the cells': they are sized for the same drop.
    """
    times = cells / bank.cells

    def limit(one: CutOff) -> CutOff:
        scaled = {"voltage": times, "current": 1.0 / times}.get(one.dimension, 1.0)
        return replace(one, limit=one.limit * scaled)

    return replace(
        bank,
        cells=cells,
        nominal_voltage=bank.nominal_voltage * times,
        capacity=bank.capacity / times,
        resistance=bank.resistance * times * times,
        charge_current=bank.charge_current / times,
        discharge_current=bank.discharge_current / times,
        absorb_voltage=bank.absorb_voltage * times,
        float_voltage=bank.float_voltage * times,
        tail_current=bank.tail_current / times,
        cut_off_voltage=bank.cut_off_voltage * times,
        management=tuple(limit(one) for one in bank.management),
    )


def alternator_at(machine: Alternator, voltage: float) -> Alternator:
    """The same machine wound for another voltage, V at regulation; its regulator's limit goes with its current."""
    return replace(
        machine,
        voltage=voltage,
        rated_current=rewound_current(machine.rated_current, machine.voltage, voltage),
        current_limit=rewound_current(machine.current_limit, machine.voltage, voltage),
        efficiency=rewound_efficiency(machine.efficiency, machine.voltage, voltage),
    )


def converter_at(own: Converter, units: Sequence[Inverter] | Sequence[Charger]) -> tuple[Converter, PartPrice]:
    """The fewest units, and of those the smallest, that give as much as the design's own; and their price."""
    largest = max(float(unit.rated_power) for unit in units)
    count = max(1, math.ceil(own.rated_power / largest - 1e-9))
    fit = [unit for unit in units if unit.rated_power * count >= own.rated_power * (1.0 - 1e-9)]
    unit = min(fit, key=lambda one: float(one.rated_power))
    made = converter_of(unit, count, own.cabin)
    if unit.price is None:
        return made, PartPrice(math.nan, "")
    return made, PartPrice(count * float(unit.price.amount), unit.price.currency)


def _inverters(voltage: float) -> list[Inverter]:
    return [
        row
        for row in rows("inverter").values()
        if isinstance(row, Inverter) and math.isclose(row.input_voltage, voltage)
    ]


def _chargers(voltage: float) -> list[Charger]:
    return [
        row
        for row in rows("charger").values()
        if isinstance(row, Charger) and math.isclose(row.output_voltage, voltage)
    ]


def _price_of(specification: Specification, kind: str) -> PartPrice:
    """What the design's own parts of a kind cost."""
    items = [item for item in specification.items if item.kind == kind]
    if not items or any(math.isnan(item.price) for item in items) or len({item.currency for item in items}) > 1:
        return PartPrice(math.nan, "")
    return PartPrice(sum(item.count * item.price for item in items), items[0].currency)


def _sum(prices: Sequence[PartPrice]) -> PartPrice:
    """Unknown where one is, or where they are in several currencies."""
    if len({one.currency for one in prices}) != 1 or any(math.isnan(one.amount) for one in prices):
        return PartPrice(math.nan, "")
    return PartPrice(sum(one.amount for one in prices), prices[0].currency)


def specification_at(specification: Specification, voltage: float) -> tuple[Specification, tuple[PartPrice, ...]]:
    """The boat at another nominal voltage, and what its inverter and charger cost."""
    own = own_voltage(specification)
    has = [] if specification.charger is None else ["charger"]
    if math.isclose(voltage, own):
        return specification, tuple(_price_of(specification, kind) for kind in ("inverter", *has))
    cells = max(1, round(specification.bank.cells * voltage / own))
    bank = bank_at(specification.bank, cells)
    times = cells / specification.bank.cells
    inverter, price = converter_at(specification.inverter, _inverters(voltage))
    charger, prices = None, [price]
    if specification.charger is not None:
        charger, price = converter_at(specification.charger, _chargers(voltage))
        prices.append(price)
    engines = tuple(
        replace(engine, alternators=tuple(alternator_at(one, one.voltage * times) for one in engine.alternators))
        for engine in specification.engines
    )
    return replace(specification, bank=bank, inverter=inverter, charger=charger, engines=engines), tuple(prices)


def main_runs(at: Specification, job: Specification, voltage: float) -> tuple[CableRun, ...]:
    """Alternators to bank, bank to inverter, charger to bank, at full current; `job` says what they must give."""
    length = ALTERNATOR_RUN * at.length
    found = [
        CableRun(f"{machine.name} to bank", machine.current_limit, length, voltage, HIGHEST_DROP, ambient=ENGINE_SPACE)
        for engine in at.engines
        for machine in engine.alternators
    ]
    inverter, output = at.inverter, job.inverter.rated_power
    drawn = converter_input(output, inverter.rated_power, inverter.no_load_power, inverter.linear, inverter.quadratic)
    found.append(CableRun("bank to inverter", drawn / voltage, INVERTER_RUN * at.length, voltage, HIGHEST_DROP))
    if job.charger is not None:
        current = job.charger.rated_power / voltage
        found.append(CableRun("charger to bank", current, CHARGER_RUN * at.length, voltage, HIGHEST_DROP))
    return tuple(found)


def _efficiency(specification: Specification) -> float:
    machines = [machine for engine in specification.engines for machine in engine.alternators]
    rated = sum(machine.rated_current for machine in machines)
    return sum(machine.efficiency * machine.rated_current for machine in machines) / rated if rated else math.nan


def _charging(run: Run | None) -> tuple[float, float, float, float, float]:
    """Time s, mean and peak W, added fuel kg, electrical over shaft energy."""
    if run is None:
        return (math.nan,) * 5
    shaft, given = float(run.summary.shaft_energy[0]), float(run.summary.alternator_energy[0])
    power = run.series.alternator_current[0].sum(axis=0) * run.series.voltage[0]
    full_at = float(run.summary.full_at[0])
    fuel = math.nan if math.isnan(full_at) else float(run.summary.fuel_added[0])
    mean = given / (run.step * len(run.clock))
    return full_at, mean, float(power.max()), fuel, given / shaft if shaft > 0.0 else math.nan


def at_voltages(specification: Specification, simulation: Simulation) -> tuple[AtVoltage, ...]:
    """The boat at each voltage; the design's own run is not made again."""
    own = own_voltage(specification)
    sizes = series(metric=False)
    own_runs = [sized(circuit, sizes) for circuit in main_runs(specification, specification, own)]
    found = []
    for voltage in VOLTAGES:
        at, prices = specification_at(specification, voltage)
        runs = simulation if at is specification else Simulation(at, simulation.step)
        circuits = tuple(sized(circuit, sizes) for circuit in main_runs(at, specification, voltage))
        time, mean, peak, fuel, efficiency = _charging(runs.recharge)
        found.append(
            AtVoltage(
                voltage=voltage,
                own=at is specification,
                specification=at,
                alternator_efficiency=_efficiency(at),
                circuits=circuits,
                same_copper=tuple(
                    with_conductor(one.circuit, has.conductor, has.parallel)
                    for one, has in zip(circuits, own_runs, strict=True)
                ),
                drop_copper=sum(
                    copper_mass(drop_area(one.circuit, DROP_TEMPERATURE), one.circuit.loop) for one in circuits
                ),
                night_energy=float(runs.night.summary.bank_out[0]),
                charge_at_dawn=float(runs.night.end.charge[0]),
                recharge_time=time,
                charging_power=mean,
                peak_charging_power=peak,
                fuel_added=fuel,
                charging_efficiency=efficiency,
                price=_sum([*prices, *(PartPrice(one.price, one.currency) for one in circuits)]),
            )
        )
    return tuple(found)
