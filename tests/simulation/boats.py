"""Specifications built for the tests: small, plain, invented."""

from __future__ import annotations

import math
from dataclasses import replace

from anchorwatt.catalogue.overlay import NOTHING
from anchorwatt.design.installation import NOTHING_SAID
from anchorwatt.design.specification import (
    Alternator,
    Bank,
    Brief,
    Cabin,
    ChilledWaterPlant,
    Converter,
    CutOff,
    DesignDay,
    Doing,
    Duct,
    Engine,
    Handler,
    Item,
    Layer,
    Load,
    Occupants,
    Offer,
    Outlet,
    Outside,
    Partition,
    Period,
    Person,
    Place,
    PlannedDay,
    Point,
    RefrigerantSafety,
    Refrigeration,
    Regime,
    SeaCircuit,
    SelfContainedPlant,
    SelfContainedUnit,
    SharedPlant,
    Shore,
    Solar,
    Space,
    Specification,
    Surface,
    Transformer,
    Window,
    Wiring,
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

ASLEEP = Person("asleep", 46.0, 27.0, 5.0, 0.7, 1.2, 3.2e-6)
SEATED = Person("seated", 65.0, 50.0, 5.0, 1.0, 0.5, 4.4e-6)

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


DUCT = Duct(2.0, 0.125, 0.0009, 1.3, 2.0, 0.3, 0.013, 0.038, 0.02, 0.7, 1.5)


def outlet(cabin: int, share: float = 1.0) -> Outlet:
    """An outlet with a plain duct."""
    return Outlet(f"outlet to {cabin}", cabin, share, DUCT)


def handler(name: str, cabin: int, capacity: float, priority: float = 1.0) -> Handler:
    """An air handler with 50 L/s a kilowatt, which blows into its own cabin."""
    return Handler(
        name=name,
        cabin=cabin,
        rated_capacity=capacity,
        airflow=capacity * 5e-5,
        fan_power=capacity * 0.035,
        lowest_fan=0.4,
        bypass_factor=0.15,
        approach=3.0,
        band=1.0,
        priority=priority,
        mass=14.0,
        outlets=(outlet(cabin),),
        static_pressure=60.0,
        return_area=0.06,
        return_free_share=0.7,
        line_length=6.0,
    )


R410A = RefrigerantSafety("R-410A", "A1", math.nan, 0.44, 0.42, 0.42, 2088.0, "tests")
SEA_HOSE = SeaCircuit(7.0, 0.025, 4.0, 1.2, 0.032, 12_000.0, 3_000.0, 60_000.0)


def plant(circuit: Refrigeration, handlers: tuple[Handler, ...]) -> SharedPlant:
    """A reversible condensing unit with those handlers."""
    return SharedPlant(
        name="test plant",
        circuit=circuit,
        pump_power=90.0,
        standby_power=15.0,
        mass=60.0,
        handlers=handlers,
        reversible=True,
        highest_heating_condensing=50.0,
        lowest_heating_condensing=38.0,
        charge=1.5,
        charge_per_length=0.05,
        charged_length=10.0,
        safety=R410A,
        sea=SEA_HOSE,
    )


def chilled(fan_coils: tuple[Handler, ...], capacity: float = 7000.0) -> ChilledWaterPlant:
    """A chiller with one compressor and those fan coils."""
    return ChilledWaterPlant(
        name="test chiller",
        circuit=circuit(capacity, capacity / 3.6, 1.0),
        supply_temperature=7.0,
        evaporator_approach=4.0,
        water_rise=4.0,
        water_pump_power=80.0,
        sea_pump_power=90.0,
        standby_power=15.0,
        fan_coils=fan_coils,
        mass=95.0,
    )


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


AMIDSHIPS = Point(6.0, 0.0, 0.3)


def item(
    key: str, kind: str, name: str, count: int, mass: float, price: float, currency: str, cabin: int = -1, tag: str = ""
) -> Item:
    """A part as it is bought and carried; its key is its tag where none is given."""
    return Item(
        tag=tag or key,
        key=key,
        kind=kind,
        name=name,
        count=count,
        mass=mass,
        price=price,
        currency=currency,
        lead_time=math.nan,
        supplier="",
        cabin=cabin,
        space=-1,
        position=AMIDSHIPS,
        placed=False,
        size=(math.nan, math.nan, math.nan),
        clearance=math.nan,
        service="",
        upright=False,
        highest_air=math.nan,
    )


def space(
    name: str = "locker",
    size: tuple[float, float, float] = (0.8, 0.5, 0.6),
    opening: tuple[float, float] = (0.7, 0.55),
    airflow: float = 0.03,
    cabin: int = 0,
) -> Space:
    """A locker that opens across the boat."""
    return Space(name, cabin, AMIDSHIPS, size, opening, "front", 4.0, airflow)


def cabin(name: str, use: str = "sleeping", floor: float = 7.0, glass: float = 0.5) -> Cabin:
    height = 1.95
    volume = floor * height
    surfaces = (
        Surface("topside", 5.0, SANDWICH, 0.35, 0.9, math.pi / 2, math.pi / 2, Outside.AIR, 1.0, 1.0),
        Surface("bottom", 4.0, SOLID, 0.8, 0.9, math.pi / 2, 3 * math.pi / 4, Outside.SEA, 1.0, 1.0),
        Surface("deck", floor, SANDWICH, 0.45, 0.9, 0.0, 0.0, Outside.AIR, 1.0, 1.0),
        Surface("sole", floor, JOINERY, 0.5, 0.9, 0.0, math.pi, Outside.NOTHING, 1.0, 1.0),
    )
    windows = (Window("port light", glass, 5.0, 0.7, 1, 0.8, math.pi / 2, math.pi / 2),) if glass else ()
    return Cabin(
        name,
        use,
        "below",
        floor,
        floor / 3.5,
        height,
        volume,
        surfaces,
        windows,
        0.4 / HOUR,
        0.002,
        0.0,
        0.0,
        250e3,
        12.0,
        8.0,
        AMIDSHIPS,
    )


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
        cells * 3.375,
        0.05 * capacity,
        cells * 2.6,
        0.05,
        0.0,
        45.0,
        -20.0,
        60.0,
        (CutOff("overvoltage", "voltage", cells * 3.65, "voltage", "charge", "by itself"),),
        28.0,
        capacity * cells * 32.0,
        capacity * cells * 0.0016,
        3500.0,
        0.02,
        8.0,
        0.75,
        1.5,
        capacity * cells * 0.032,
        -1,
    )


OVERLOAD = ((1.2, 1.5, 2.0), (1800.0, 60.0, 3.0), 40.0, 0.015, 65.0)
"""Overload shares and times, full to, derating and highest air of a converter."""


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
        belt_tension_ratio=4.0,
        pulley_diameter=0.065,
        current_limit=rated,
        hold_temperature=95.0,
        fold_band=10.0,
        clamp_voltage=math.nan,
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
        volumetric_efficiency=0.9,
        side_load_limit=math.nan,
        boat_speed=4.4,
        charging_speed=1200 * RPM,
        alternators=alternators,
        cabin=-1,
        block_capacity=300e3,
        block_conductance=12.0,
        block_temperature=80.0,
        blower=0.03,
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
    off, on, shut = (math.nan,) * cabins, (set_point,) * cabins, (0.0,) * cabins
    sleepers = tuple(Occupants(c, 2.0, ASLEEP) for c in range(cabins))
    awake = (Occupants(0, 2.0, SEATED),)
    running = (0.5,) * loads
    return (
        Period(7 * HOUR, 12 * HOUR, Doing.AT_ANCHOR, 0.0, off, off, shut, awake, running),
        Period(12 * HOUR, 15 * HOUR, Doing.MOTORING, 3.6, off, off, shut, awake, running),
        Period(15 * HOUR, 20 * HOUR, Doing.AT_ANCHOR, 0.0, off, off, shut, awake, running),
        Period(20 * HOUR, 7 * HOUR, Doing.AT_ANCHOR, 0.0, on, off, shut, sleepers, running),
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
        waterline=12.9,
        draught=0.75,
        hulls=1,
        hull_beam=4.2,
        block_coefficient=0.4,
        metacentric_height=1.1,
        longitudinal_metacentric_height=16.0,
        waterplane=38.0,
        flotation=5.9,
        gravity_up=0.4,
        displacement=17_000.0,
        place=place(),
        cabins=rooms,
        spaces=(),
        items=(),
        removed=(),
        wiring=Wiring(Regime.CFR, True, 105.0, 1.4, 0.5, 3, 10.0, 0.0, 0.0, ()),
        partitions=tuple(Partition(f"bulkhead {c + 1}", (c, c + 1), 6.0, JOINERY, 0.01) for c in range(cabins - 1)),
        plant=plant(circuit(), tuple(handler(f"handler {c + 1}", c, 9500.0 / cabins) for c in range(cabins))),
        alternative=SelfContainedPlant(tuple(unit(f"unit {c + 1}", c) for c in range(cabins)), 150.0, 20.0),
        chilled=None,
        loads=loads,
        fed=(),
        shore=Shore("120 V 30 A", 120.0, 1, 60.0, 30.0, 30.0, 2880.0, 104.0),
        charger=Converter("charger", 1500.0, 15.0, 0.05, 0.04, 0.0, *OVERLOAD, 8.0, -1),
        transformer=Transformer("transformer", 4000.0, 35.0, 90.0, 120.0, 120.0, True, 10.0, 30.0, -1),
        inverter=Converter("inverter", 4000.0, 30.0, 0.03, 0.05, 6.0, *OVERLOAD, 25.0, -1),
        bank=bank(),
        replaced=None,
        solar=None,
        engine_battery=None,
        engines=(engine((alternator(),)),),
        generator=None,
        plan=plan(cabins, len(loads)),
        week=(PlannedDay(True, 8 * HOUR, 0.0),) * 7,
        brief=Brief(10 * HOUR, 21 * HOUR, 0.95, 0.2, 4 * HOUR, 500.0, "", 60.0),
        offer=Offer("EUR", "", (), 0.0, 0.0, 0.0, 0.0, (), 0.0, (), "", ()),
        installation=NOTHING_SAID,
        overlay=NOTHING,
        estimates=(),
    )
    return replace(made, **changes)  # type: ignore[arg-type]


SUNNY = Solar(800.0, -0.0035, 28.0, 0.8, 0.0, 0.0, 20.0)
