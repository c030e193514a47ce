"""Specifications built for the tests: small, plain, invented."""

from __future__ import annotations

import math
from dataclasses import replace

from anchorwatt.design.specification import (
    Alternator,
    Bank,
    Brief,
    Cabin,
    Converter,
    DesignDay,
    Doing,
    Engine,
    Handler,
    Layer,
    Load,
    Occupants,
    Outside,
    Partition,
    Period,
    Person,
    Place,
    Refrigeration,
    SelfContainedPlant,
    SelfContainedUnit,
    SharedPlant,
    Shore,
    Solar,
    Specification,
    Surface,
    Transformer,
    Window,
)

HOUR = 3600.0
RPM = 2.0 * math.pi / 60.0

SANDWICH = (
    Layer("laminate", 0.003, 0.40, 1900.0, 1100.0),
    Layer("foam", 0.020, 0.035, 80.0, 1400.0),
    Layer("laminate", 0.003, 0.40, 1900.0, 1100.0),
    Layer("liner", 0.006, 0.07, 300.0, 1400.0),
)
SOLID = (Layer("laminate", 0.012, 0.40, 1900.0, 1100.0),)
JOINERY = (Layer("plywood", 0.018, 0.13, 550.0, 1600.0),)

ASLEEP = Person("asleep", 46.0, 27.0, 5.0)
SEATED = Person("seated", 65.0, 50.0, 5.0)

LFP_CHARGE = (0.0, 0.05, 0.10, 0.15, 0.20, 0.30, 0.40, 0.50, 0.60, 0.70, 0.80, 0.90, 0.95, 0.98, 0.99, 1.0)
LFP_VOLTS = (
    2.0,
    2.785,
    2.978,
    3.108,
    3.169,
    3.206,
    3.253,
    3.266,
    3.269,
    3.274,
    3.310,
    3.314,
    3.316,
    3.350,
    3.415,
    3.598,
)


def circuit(capacity: float = 7000.0, power: float = 1900.0, turn_down: float = 0.2) -> Refrigeration:
    """A seawater-cooled circuit with an ordinary rating."""
    return Refrigeration(
        refrigerant="R410A",
        rated_capacity=capacity,
        rated_power=power,
        rated_evaporating=7.0,
        rated_sea=28.0,
        superheat=5.0,
        subcooling=4.0,
        sea_flow=capacity * 5.6e-8,
        condenser_ntu=1.1,
        turn_down=turn_down,
        degradation=0.25,
        lowest_evaporating=3.0,
        highest_evaporating=11.0,
        highest_condensing=60.0,
    )


def handler(name: str, cabin: int, capacity: float, priority: float = 1.0) -> Handler:
    """An air handler with 50 L/s a kilowatt."""
    return Handler(name, cabin, capacity, capacity * 5e-5, capacity * 0.035, 0.4, 0.15, 3.0, 1.0, priority, 14.0)


def unit(name: str, cabin: int, capacity: float = 3500.0) -> SelfContainedUnit:
    return SelfContainedUnit(
        name,
        cabin,
        replace(circuit(capacity, capacity / 3.4, 1.0)),
        capacity * 5e-5,
        capacity * 0.035,
        0.15,
        3.0,
        1.0,
        5.0,
        28.0,
    )


def cabin(name: str, use: str = "sleeping", floor: float = 7.0, glass: float = 0.5) -> Cabin:
    height = 1.95
    volume = floor * height
    surfaces = (
        Surface("topside", 5.0, SANDWICH, 0.35, 0.9, math.pi / 2, math.pi / 2, Outside.AIR),
        Surface("bottom", 4.0, SOLID, 0.8, 0.9, math.pi / 2, 3 * math.pi / 4, Outside.SEA),
        Surface("deck", floor, SANDWICH, 0.45, 0.9, 0.0, 0.0, Outside.AIR),
        Surface("sole", floor, JOINERY, 0.5, 0.9, 0.0, math.pi, Outside.NOTHING),
    )
    windows = (Window("port light", glass, 5.0, 0.7, 1, 0.8, math.pi / 2, math.pi / 2),) if glass else ()
    return Cabin(name, use, floor, height, volume, surfaces, windows, 0.4 / HOUR, 0.002, 250e3, 12.0, 8.0)


def bank(cells: int = 8, capacity: float = 800.0, charge_current: float = 400.0) -> Bank:
    return Bank(
        "test module",
        1,
        1,
        cells,
        cells * 3.2,
        capacity * HOUR,
        cells * 0.0005 * 200.0 / capacity + 0.0005,
        LFP_CHARGE,
        LFP_VOLTS,
        tuple(1.0 + 0.6 * (abs(c - 0.5) * 2) ** 4 for c in LFP_CHARGE),
        charge_current,
        600.0,
        cells * 3.50,
        cells * 2.6,
        0.05,
        28.0,
        capacity * cells * 0.032,
    )


def alternator(name: str = "alternator", rated: float = 180.0, volts: float = 28.0) -> Alternator:
    return Alternator(
        name=name,
        rated_current=rated,
        voltage=volts,
        speeds=tuple(n * RPM for n in (1000, 1200, 1500, 1800, 2000, 2500, 3000, 4000, 5000, 6000)),
        currents=(0.0, 0.39, 0.63, 0.78, 0.84, 0.93, 0.97, 0.99, 1.0, 1.0),
        hot_loss=0.22,
        efficiency=0.67,
        winding_capacity=1200.0,
        frame_capacity=7000.0,
        winding_conductance=25.0,
        frame_conductance=28.0,
        highest_winding=180.0,
        highest_speed=12_000 * RPM,
        pulley_ratio=2.6,
        belt="8 rib",
        belt_power=7000.0,
        belt_speed=6000 * RPM,
        current_limit=rated,
        hold_temperature=95.0,
        fold_band=10.0,
        mass=14.0,
    )


def engine(alternators: tuple[Alternator, ...] = (), power: float = 110e3, name: str = "main engine") -> Engine:
    return Engine(
        name=name,
        rated_power=power,
        rated_speed=2600 * RPM,
        idle_speed=700 * RPM,
        curve_speeds=(0.25, 0.3, 0.4, 0.5, 0.6, 0.7, 0.8, 0.9, 1.0),
        curve_powers=(0.15, 0.20, 0.36, 0.53, 0.68, 0.81, 0.91, 0.97, 1.0),
        propeller_power=0.95 * power,
        propeller_exponent=2.7,
        margin=0.15,
        indicated_efficiency=0.45,
        friction_pressure=150e3,
        displacement=4.5e-3,
        air_temperature=50.0,
        boat_speed=4.4,
        charging_speed=1200 * RPM,
        alternators=alternators,
    )


DAY = DesignDay(33.0, 7.0, 25.0, 3.0, math.radians(120.0), 3.5)


def place(day: DesignDay | None = DAY) -> Place:
    return Place(
        math.radians(25.8),
        math.radians(-80.3),
        -5.0,
        "" if day else "pvlib:12839.tm2",
        7,
        21,
        day,
        (28.0,) * 12,
        0.0,
    )


def plan(cabins: int, loads: int, set_point: float = 25.0) -> tuple[Period, ...]:
    """Motoring at noon for three hours, anchored by day without cooling, cooled by night."""
    off, on = (math.nan,) * cabins, (set_point,) * cabins
    sleepers = tuple(Occupants(c, 2.0, ASLEEP) for c in range(cabins))
    awake = (Occupants(0, 2.0, SEATED),)
    running = (0.5,) * loads
    return (
        Period(7 * HOUR, 12 * HOUR, Doing.AT_ANCHOR, 0.0, off, awake, running),
        Period(12 * HOUR, 15 * HOUR, Doing.MOTORING, 3.6, off, awake, running),
        Period(15 * HOUR, 20 * HOUR, Doing.AT_ANCHOR, 0.0, off, awake, running),
        Period(20 * HOUR, 7 * HOUR, Doing.AT_ANCHOR, 0.0, on, sleepers, running),
    )


def boat(cabins: int = 2, **changes: object) -> Specification:
    """A boat of `cabins` like cabins in a row, one shared plant, 24 V; `changes` replace whole parts."""
    rooms = tuple(cabin(f"cabin {c + 1}") for c in range(cabins))
    loads = (
        Load("fridge", False, 60.0, 0, 1.0, 0.0, 0.0),
        Load("galley socket", True, 100.0, 0, 0.9, 0.05, 0.3),
    )
    made = Specification(
        name="test boat",
        length=14.0,
        beam=4.4,
        displacement=17_000.0,
        place=place(),
        cabins=rooms,
        partitions=tuple(Partition(f"bulkhead {c + 1}", (c, c + 1), 6.0, JOINERY, 0.01) for c in range(cabins - 1)),
        plant=SharedPlant(
            "test plant",
            circuit(),
            90.0,
            15.0,
            60.0,
            tuple(handler(f"handler {c + 1}", c, 9500.0 / cabins) for c in range(cabins)),
        ),
        alternative=SelfContainedPlant(tuple(unit(f"unit {c + 1}", c) for c in range(cabins)), 150.0, 20.0),
        loads=loads,
        shore=Shore("120 V 30 A", 120.0, 30.0, 2880.0),
        charger=Converter("charger", 1500.0, 15.0, 0.05, 0.04, 0.0, 8.0),
        transformer=Transformer("transformer", 4000.0, 35.0, 90.0, 30.0),
        inverter=Converter("inverter", 4000.0, 30.0, 0.03, 0.05, 6.0, 25.0),
        bank=bank(),
        solar=None,
        engines=(engine((alternator(),)),),
        plan=plan(cabins, len(loads)),
        brief=Brief(10 * HOUR, 21 * HOUR, 0.95, 0.2, 4 * HOUR, 500.0, ""),
        estimates=(),
    )
    return replace(made, **changes)  # type: ignore[arg-type]


SUNNY = Solar(800.0, -0.0035, 28.0, 0.8, 0.0, 0.0, 20.0)
