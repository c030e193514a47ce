"""All circuits of a boat with their conductors and protection: the smallest that every demand allows."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property

from anchorwatt.design.specification import CircuitWish, Regime, Specification
from anchorwatt.errors import OutOfRange
from anchorwatt.physics.fault_current import fault_current_after
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.cable_optimum import LifeCost, LifeCosts
from anchorwatt.sizing.circuit_list import NO_WISH
from anchorwatt.sizing.circuits import Circuit, circuits
from anchorwatt.sizing.conductors import (
    CableRun,
    SizedCircuit,
    ampacity,
    permitted,
    resistance,
    series,
    sized,
    with_conductor,
)
from anchorwatt.sizing.ends import Ends
from anchorwatt.sizing.fault_current import alternating_fault, prospective
from anchorwatt.sizing.protection import CONTINUOUS_FACTOR, Need, Protection, protect
from anchorwatt.sizing.terminations import Busbar, busbar, colour, lug

TERMINALS = {True: 70.0, False: 75.0}
"""°C that terminals of AC breakers and sockets bear, by the nearest column of metric sizes and of gauges: 75 °C in the
land code of the US, from memory. Studs and lugs of the DC side bear what their cable bears."""

BONDING = {True: 6.0e-6, False: 8.3e-6}
"""m² that a bonding conductor has at least: 6 mm² and 8 AWG. From memory."""

ENGINE_BATTERY_FAULT = 3000.0
"""A that a starting battery of up to 1100 A of cold cranking is taken to give: ABYC E-11, by a trade table."""

BONDING_RULE = "one size below the conductor that feeds the part"


@dataclass(frozen=True)
class WiredCircuit:
    """A circuit with all that is laid for it."""

    circuit: Circuit
    conductor: SizedCircuit
    protection: Protection | None  # None = nothing in it could burn it
    prospective: float  # A of a fault at its start, nan = not from the bank
    fault_at_end: float  # A of a fault at its far end, nan likewise
    colour: str
    lug: str
    terminal_ampacity: float  # A that its terminals leave, nan = they leave all
    cost: LifeCost  # over the years, as laid
    optimum: LifeCost | None  # what costs least, whatever is demanded; None = no price, or it carries next to nothing
    why: str  # what governs its size, in words

    @property
    def tag(self) -> str:
        return self.circuit.tag

    @property
    def optimum_allowed(self) -> bool:
        """Whether the choice that costs least has at least the copper that is demanded."""
        best = self.optimum
        return best is not None and best.conductor.area * best.parallel >= self.conductor.area * (1.0 - 1e-9)


@dataclass(frozen=True)
class Wiring:
    """How the whole boat is wired."""

    regime: Regime
    circuits: tuple[WiredCircuit, ...]
    busbars: tuple[Busbar, ...]
    unknown: tuple[str, ...]  # tags that the design file wishes for and no circuit has

    def circuit(self, tag: str) -> WiredCircuit:
        """The circuit of that tag.

        Raises
        ------
        KeyError
            no such circuit; the text says which there are.
        """
        for one in self.circuits:
            if one.tag == tag:
                return one
        raise KeyError(f"no circuit {tag}; there are {self.circuits[0].tag} to {self.circuits[-1].tag}")

    @cached_property
    def copper_mass(self) -> float:
        """kg of bare copper, all conductors."""
        return math.fsum(one.conductor.copper for one in self.circuits)

    @cached_property
    def mass(self) -> float:
        """kg of all cables with insulation."""
        return math.fsum(one.conductor.mass for one in self.circuits)

    @cached_property
    def protection_price(self) -> float:
        """Of all fuses and breakers with their holders, nan as `price`."""
        devices = [one.protection for one in self.circuits if one.protection is not None]
        if len({device.currency for device in devices}) != 1:
            return math.nan
        return math.fsum(device.price for device in devices)

    @cached_property
    def length(self) -> float:
        """m of conductor, all cores."""
        return math.fsum(one.conductor.circuit.laid * one.conductor.parallel for one in self.circuits)

    @cached_property
    def price(self) -> float:
        """Of all cables, nan = one has no price or they are in several currencies."""
        if len({one.conductor.currency for one in self.circuits}) != 1:
            return math.nan
        return math.fsum(one.conductor.price for one in self.circuits)

    @property
    def currency(self) -> str:
        """Of the price; empty where it is unknown."""
        return "" if math.isnan(self.price) else self.circuits[0].conductor.currency


def wiring(specification: Specification, simulation: Simulation) -> Wiring:
    """Circuits, conductors, protection and bars of a boat."""
    found = circuits(specification, simulation)
    maker = _Maker(specification)
    wired: dict[str, WiredCircuit] = {}
    for circuit in found:
        wired[circuit.tag] = maker.wire(circuit, tuple(wired.values()))
    tags = {circuit.tag for circuit in found}
    return Wiring(
        regime=specification.wiring.regime,
        circuits=tuple(wired.values()),
        busbars=_busbars(specification, found),
        unknown=tuple(wish.tag for wish in specification.wiring.wishes if wish.tag not in tags),
    )


class _Maker:
    """Wires one circuit after another."""

    def __init__(self, specification: Specification) -> None:
        self.specification = specification
        self.metric = specification.wiring.metric
        self.sizes = series(self.metric)
        self.wishes = {wish.tag: wish for wish in specification.wiring.wishes}
        self.costs = LifeCosts(specification, self.sizes)
        self.ends = Ends(specification)
        self.fault = prospective(specification)
        self.feeds = (self.ends.dc_bus.tag, self.ends.dc_panel.tag)
        self.loops: dict[str, float] = {}  # ohm out and back from the bank to a bus

    def wire(self, circuit: Circuit, before: Sequence[WiredCircuit]) -> WiredCircuit:
        """One circuit; `before` are those that are wired already."""
        regime, wish = self.specification.wiring.regime, self.wishes.get(circuit.tag, NO_WISH)
        run = CableRun(
            name=circuit.function,
            current=circuit.continuous,
            length=circuit.length,
            voltage=circuit.voltage,
            highest_drop=circuit.highest_drop,
            insulation=circuit.insulation,
            ambient=circuit.ambient,
            bundled=circuit.bundled,
            cores=circuit.cores,
            sheathed=circuit.system == "control",
            bundles_below=regime is Regime.ABYC,
        )
        start = self._prospective(circuit)
        protection: Protection | None = None
        if circuit.system == "bonding":
            conductor = self._bonding(run, wish, circuit, before)
        else:
            conductor = self._wished(run, wish)
            while wish.conductor == "" and not self._terminals_suffice(circuit, conductor):
                conductor = self._larger(conductor, wish, "terminals")
            if circuit.needs_protection:
                protection = self._protect(circuit, conductor, start, wish)
                while wish.conductor == "" and protection.rating > protection.at_most:
                    conductor = self._larger(conductor, wish, "fuse")
                    protection = self._protect(circuit, conductor, start, wish)
        self._note_loop(circuit, conductor)
        return WiredCircuit(
            circuit=circuit,
            conductor=conductor,
            protection=protection,
            prospective=start,
            fault_at_end=_at_end(circuit, conductor, start),
            colour=colour(circuit, regime),
            lug=lug(circuit, conductor, self.metric),
            terminal_ampacity=self._terminal_ampacity(circuit, conductor),
            cost=self.costs.of(circuit, run, conductor.conductor, conductor.parallel),
            optimum=self.costs.least(circuit, run) if circuit.mean_square > 0.0 else None,
            why=WHY.get(conductor.governed_by, conductor.governed_by),
        )

    def _wished(self, run: CableRun, wish: CircuitWish) -> SizedCircuit:
        if wish.conductor:
            size = next(one for one in (*self.sizes, *series(not self.metric)) if one.name == wish.conductor)
            return with_conductor(run, size, max(1, wish.parallel), "typed")
        return sized(run, self.sizes, max(1, wish.parallel))

    def _bonding(
        self, run: CableRun, wish: CircuitWish, circuit: Circuit, before: Sequence[WiredCircuit]
    ) -> SizedCircuit:
        if wish.conductor:
            return self._wished(run, wish)
        feeding = [
            one.conductor.conductor.area for one in before if circuit.start in (one.circuit.start, one.circuit.end)
        ]
        largest = max(feeding, default=0.0)
        smaller = [size for size in self.sizes if size.area < largest * (1.0 - 1e-9)]
        least = next(size for size in self.sizes if size.area >= BONDING[self.metric])
        size = smaller[-1] if smaller and smaller[-1].area > least.area else least
        return with_conductor(run, size, 1, BONDING_RULE if size is not least else "smallest size allowed")

    def _terminal_ampacity(self, circuit: Circuit, conductor: SizedCircuit) -> float:
        if circuit.system != "ac":
            return math.nan
        size = conductor.conductor
        column = TERMINALS[size.gauge is None]
        return ampacity(size, min(column, circuit.insulation)) * conductor.parallel

    def _terminals_suffice(self, circuit: Circuit, conductor: SizedCircuit) -> bool:
        allowed = self._terminal_ampacity(circuit, conductor)
        return math.isnan(allowed) or circuit.continuous <= allowed

    def _larger(self, conductor: SizedCircuit, wish: CircuitWish, governed_by: str) -> SizedCircuit:
        """The next larger choice."""
        run, least = conductor.circuit, max(1, wish.parallel)
        for parallel in (conductor.parallel, conductor.parallel + 1):
            for size in permitted(run, self.sizes, parallel, least):
                found = with_conductor(run, size, parallel, governed_by)
                if found.area > conductor.area and found.ampacity > conductor.ampacity:
                    return found
        raise OutOfRange("no conductor is large enough for a current of A", run.current)

    def _protect(self, circuit: Circuit, conductor: SizedCircuit, start: float, wish: CircuitWish) -> Protection:
        return protect(
            Need(
                voltage=circuit.voltage,
                alternating=circuit.system == "ac",
                continuous=circuit.continuous,
                peak=circuit.peak,
                ampacity=conductor.ampacity,
                prospective=start,
                source=circuit.source,
                regime=self.specification.wiring.regime,
                wish=wish,
                fed_from_end=self._fed_from_end(circuit),
                factor=1.0 if self._is_service(circuit) else CONTINUOUS_FACTOR,
            )
        )

    def _fed_from_end(self, circuit: Circuit) -> bool:
        """Whether a fault on it is fed by the bank, from the bus that it gives its current to."""
        return (
            circuit.system == "dc"
            and circuit.start not in (self.ends.bank.tag, *self.loops)
            and circuit.end in self.loops
        )

    def _is_service(self, circuit: Circuit) -> bool:
        """Whether its current is the rating of the shore service, which its breaker ashore has too."""
        shore = self.specification.shore
        return shore is not None and circuit.source == "shore" and math.isclose(circuit.continuous, shore.current)

    def _prospective(self, circuit: Circuit) -> float:
        """A of a fault where a circuit begins: what its source gives through what lies before it."""
        if not circuit.needs_protection:
            return math.nan
        if circuit.system == "ac":
            return alternating_fault(self.specification, circuit.source)
        if circuit.start == self.ends.bank.tag:
            return self.fault.through_string_device
        if circuit.start == self.ends.engine_battery.tag:
            return ENGINE_BATTERY_FAULT
        # What gives its current to a bus is fed from that bus when it fails.
        node = circuit.start if circuit.start in self.loops else circuit.end
        return self.fault.after(self.loops[node]) if node in self.loops else math.nan

    def _note_loop(self, circuit: Circuit, conductor: SizedCircuit) -> None:
        """Keep ohm from the bank to the bus or panel that a circuit leads to."""
        own = loop_resistance(conductor)
        if circuit.start == self.ends.bank.tag:
            self.loops.setdefault(circuit.end, own / self.fault.strings)
        elif circuit.start in self.loops and circuit.end in self.feeds:
            self.loops.setdefault(circuit.end, self.loops[circuit.start] + own)


def loop_resistance(conductor: SizedCircuit) -> float:
    """ohm of a circuit out and back at 20 °C, as a fault meets it before it grows warm."""
    return resistance(conductor.conductor) * conductor.circuit.loop / conductor.parallel


def _at_end(circuit: Circuit, conductor: SizedCircuit, start: float) -> float:
    """A of a fault at the far end: the circuit's own conductors are in the loop then."""
    if math.isnan(start):
        return math.nan
    return fault_current_after(circuit.voltage, start, loop_resistance(conductor))


def _busbars(specification: Specification, found: Sequence[Circuit]) -> tuple[Busbar, ...]:
    """Bars where several circuits meet."""
    ends = Ends(specification)
    return tuple(
        busbar(
            end.tag,
            end.name,
            math.fsum(one.continuous for one in found if one.end == end.tag),
            math.fsum(one.continuous for one in found if one.start == end.tag),
        )
        for end in (ends.bank_bus, ends.dc_bus)
    )


WHY = {
    "voltage drop": "a smaller size would lose more than the share of the voltage that is allowed",
    "ampacity": "a smaller size would grow hotter than its insulation may",
    "smallest size allowed": "the smallest size that may be laid would do",
    "terminals": "a smaller size would carry less, at the temperature of its terminals, than the circuit does",
    "fuse": "no fuse of a standard rating would let the current through and still guard a smaller size",
    "typed": "somebody typed it",
    BONDING_RULE: f"{BONDING_RULE}, not less than the smallest that may be laid",
}
