"""Where circuits begin and end: the parts of the design, its buses and panels, and what hangs on them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from anchorwatt.design.specification import Item, Load, Point, Specification

PANEL_CABINS = ("pilothouse", "saloon", "galley")
"""Uses of the cabin that the panels hang in, the first that there is."""

INLET_UP = 1.0
"""m over the waterline of a shore inlet. From memory."""


@dataclass(frozen=True)
class End:
    """One end of a circuit."""

    tag: str
    name: str
    position: Point
    cabin: int  # index of the compartment, -1 = none of those described


class Ends:
    """All ends of a boat. Parts keep their tags; buses, panels and what is not an item get letters of IEC 81346-2.

    X is a terminal or bus, Q a switch, K a regulator or relay, B a sensor, P an indicator (IEC 81346-2, from memory);
    that standard has no one letter for loads: ours is L.
    """

    def __init__(self, specification: Specification) -> None:
        self.specification = specification
        self._amidships = Point(0.5 * specification.waterline, 0.0, 0.5)
        self._made = 0
        items = specification.items
        self.bank = self._of(items, "battery_module", "bank", specification.bank.cabin)
        self.inverters = self._of(items, "inverter", "inverter", specification.inverter.cabin)
        self.charger = self._optional(items, "charger", "charger", specification.charger)
        self.transformer = self._optional(items, "transformer", "transformer", specification.transformer)
        battery = specification.engine_battery
        self.dc_dc = None if battery is None else self._of(items, "dc_dc", "DC-DC converter", battery.converter.cabin)
        self.solar = None if specification.solar is None else self._of(items, "solar_panel", "solar panels", -1)
        self.plant = self._of(items, "condensing_unit", "condensing unit", -1)
        machines = [item for item in items if item.kind == "alternator"]
        engines = [(engine, one) for engine in specification.engines for one in engine.alternators]
        self.alternators = tuple(
            self._item(machines, n, machine.name, engine.cabin) for n, (engine, machine) in enumerate(engines)
        )
        coils = [item for item in items if item.kind == "air_handler"]
        self.handlers = tuple(
            self._item(coils, n, f"air handler, {handler.name}", handler.cabin)
            for n, handler in enumerate(specification.plant.handlers)
        )
        panel = self._panel_cabin()
        self.bank_bus = self._own("X1", "bank bus", self.bank.position, self.bank.cabin)
        between = _middle(self.bank.position, self.inverters.position)
        self.dc_bus = self._own("X2", "DC bus", between, self.inverters.cabin)
        self.dc_panel = self._own("X3", "DC panel", self.at(panel), panel)
        self.ac_panel = self._own("X4", "AC panel", self.at(panel), panel)
        self.bonding = self._own("X5", "bonding bus", between, self.inverters.cabin)
        inlet = Point(0.0, 0.5 * specification.beam, INLET_UP)
        self.inlet = self._own("X6", "shore inlet", inlet, -1)
        self.breaker = self._own("Q1", "shore main breaker", Point(0.5, inlet.starboard, inlet.up), -1)
        self.transfer = self._own("Q2", "transfer switch", self.inverters.position, self.inverters.cabin)
        self.monitor = self._own("P1", "battery monitor", self.at(panel), panel)
        self.management = self._own("K1", "battery management", self.bank.position, self.bank.cabin)
        self.regulators = tuple(
            self._own(f"K{number}", f"regulator of {end.tag}", end.position, end.cabin)
            for number, end in enumerate(self.alternators, 2)
        )
        self.controller = self._own(f"K{2 + len(self.alternators)}", "solar controller", between, self.inverters.cabin)
        first = specification.engines[0].cabin if specification.engines else -1
        self.engine_battery = self._own("X7", "engine battery", self.at(first), first)
        self.loads = tuple(self._load(number, load) for number, load in enumerate(specification.loads, 1))
        self.thermostats = tuple(
            self._own(f"B{number}", f"thermostat, {handler.name}", self.at(handler.cabin), handler.cabin)
            for number, handler in enumerate(specification.plant.handlers, 1)
        )
        self.pump = self._own("L0", "seawater pump", self.plant.position, self.plant.cabin)

    def at(self, cabin: int) -> Point:
        """The middle of a cabin; of the boat for none."""
        return self.specification.cabins[cabin].centre if cabin >= 0 else self._amidships

    def sensor(self, number: int, name: str, beside: End) -> End:
        """A sensor at another end."""
        return self._own(f"B{number}", name, beside.position, beside.cabin)

    def _load(self, number: int, load: Load) -> End:
        return self._own(f"L{number}", load.name, self.at(load.cabin), load.cabin)

    def _own(self, tag: str, name: str, position: Point, cabin: int) -> End:
        return End(tag, name, position, cabin)

    def _optional(self, items: Sequence[Item], kind: str, name: str, part: object) -> End | None:
        return None if part is None else self._of(items, kind, name, getattr(part, "cabin", -1))

    def _of(self, items: Sequence[Item], kind: str, name: str, cabin: int) -> End:
        return self._item([item for item in items if item.kind == kind], 0, name, cabin)

    def _item(self, items: Sequence[Item], number: int, name: str, cabin: int) -> End:
        """That item; where the design lists none, an end with a tag of ours amid its compartment."""
        if number < len(items):
            item = items[number]
            return End(item.tag, name, item.position, item.cabin)
        self._made += 1
        return End(f"U{self._made}", name, self.at(cabin), cabin)

    def _panel_cabin(self) -> int:
        uses = [cabin.use for cabin in self.specification.cabins]
        return next((uses.index(use) for use in PANEL_CABINS if use in uses), -1)


def _middle(a: Point, b: Point) -> Point:
    return Point(0.5 * (a.forward + b.forward), 0.5 * (a.starboard + b.starboard), 0.5 * (a.up + b.up))


def along_axes(a: Point, b: Point) -> float:
    """m between two places, along the boat's three axes."""
    return abs(a.forward - b.forward) + abs(a.starboard - b.starboard) + abs(a.up - b.up)
