"""The specification: a design with every name looked up and every gap filled.

`specify(design)` (in `design.filling`) makes it. Nothing here is optional, nothing is a name that must
be looked up, every figure is a plain SI float: this is what `climate`, `simulation`, `sizing` and
`checks` read. Temperatures are °C, angles rad, rotational speeds rad/s, charge A·s, shares 0 to 1.

Bearings of the boat's faces are relative to the bow, clockwise seen from above (0 ahead, π/2 starboard).
Tilt is the angle between a face's outward normal and straight up (0 a deck, π/2 a side, π a bottom).
"""

from __future__ import annotations

import math
from dataclasses import dataclass, field
from enum import Enum

from anchorwatt.catalogue.overlay import Overlay
from anchorwatt.design.hold_points import HoldPointName
from anchorwatt.design.installation import Installation


class Outside(Enum):
    """What lies on the other side of a surface."""

    AIR = "air"
    SEA = "sea"
    NOTHING = "nothing"  # adiabatic: a floor over a bilge, a bulkhead to a like space


class Doing(Enum):
    """What the boat does through a period of the plan."""

    AT_ANCHOR = "at anchor"
    MOTORING = "motoring"
    ON_SHORE_POWER = "on shore power"


class FedFrom(Enum):
    """Where on the AC side a device hangs."""

    SHORE = "shore"  # at the inlet, whatever feeds the rest
    TRANSFER = "transfer"  # on what shore power or the inverter gives
    PANEL = "panel"  # the same after the transformer, where there is one


class Regime(Enum):
    """The rules that conductors and their protection are sized by."""

    CFR = "33 CFR 183"
    ISO = "ISO 13297"
    ABYC = "ABYC E-11"


@dataclass(frozen=True)
class Point:
    """A place in the boat."""

    forward: float  # m of the aft end of the waterline
    starboard: float  # m of the centreline, negative to port
    up: float  # m over the waterline


@dataclass(frozen=True)
class Estimate:
    """A figure that nobody typed."""

    key: str  # dotted path in the design file, e.g. "cabins.saloon.height"
    value: str  # as shown, with its unit
    rule: str  # how it was found
    source: str


@dataclass(frozen=True)
class Layer:
    """One layer of a construction."""

    name: str
    thickness: float  # m
    conductivity: float  # W/(m K)
    density: float  # kg/m3
    specific_heat: float  # J/(kg K)


@dataclass(frozen=True)
class Surface:
    """One opaque face of a cabin."""

    name: str
    area: float  # m2, openings taken out
    layers: tuple[Layer, ...]  # outside first
    absorptance: float  # solar, outside face
    emittance: float  # long-wave, outside face
    faces: float  # rad from the bow
    tilt: float  # rad from straight up
    outside: Outside
    sun_left: float  # share of the sun that an awning over it leaves
    sky_left: float  # share of the sky that it still faces; the awning is as warm as the air


@dataclass(frozen=True)
class Window:
    """A window, port light or hatch, all those of a kind on a face together."""

    name: str
    area: float  # m2
    u_value: float  # W/(m2 K), films included
    solar_gain: float  # solar heat gain coefficient at normal incidence, bare glazing
    panes: int  # 1 or 2, sets the loss with angle
    cover_factor: float  # what covers and blinds leave of the solar gain, 1 = none
    faces: float  # rad from the bow
    tilt: float  # rad from straight up


@dataclass(frozen=True)
class Cabin:
    """A cabin or compartment."""

    name: str
    use: str
    deck: str  # "below" or "main"
    floor_area: float  # m2
    length: float  # m, fore and aft
    height: float  # m
    volume: float  # m3
    surfaces: tuple[Surface, ...]
    windows: tuple[Window, ...]
    leakage: float  # air changes, 1/s, hatches shut, in the reference breeze of `physics.ventilation`
    fresh_air: float  # mechanical outdoor air, m3/s
    fresh_air_per_person: float  # mechanical outdoor air for each person in the cabin, m3/s
    fresh_air_recovery: float  # share of heat and moisture that an exchanger in the mechanical air takes back
    furnishing_heat_capacity: float  # J/K
    furnishing_area: float  # m2 exposed to the air
    moisture_factor: float  # moisture held by air and furnishings, over that of the air alone
    centre: Point  # of its volume


@dataclass(frozen=True)
class Partition:
    """A bulkhead, sole or deck between two cabins, and the door in it."""

    name: str
    cabins: tuple[int, int]  # indices into the specification's cabins
    area: float  # m2
    layers: tuple[Layer, ...]  # from the first cabin to the second
    air_exchange: float  # m3/s each way through the door


@dataclass(frozen=True)
class Duct:
    """A round duct from an air handler to one grille."""

    length: float  # m
    diameter: float  # m, inside
    roughness: float  # m
    stretch_factor: float  # on the friction, for how a flexible duct lies; 1 = stretched or rigid
    bends: float  # right-angled bends
    bend_loss: float  # loss coefficient of one
    insulation: float  # m
    insulation_conductivity: float  # W/(m K)
    grille_area: float  # m2, face
    grille_free_share: float  # of the face that is open
    grille_loss: float  # loss coefficient on the velocity through the free area


@dataclass(frozen=True)
class Outlet:
    """Where a handler blows to."""

    name: str
    cabin: int
    share: float  # of the handler's air; a handler's outlets make 1 together
    duct: Duct


@dataclass(frozen=True)
class Handler:
    """An air handler. It draws its air from the cabin whose thermostat calls it, and blows into one or more."""

    name: str
    cabin: int
    rated_capacity: float  # W, nominal total
    airflow: float  # m3/s at full fan
    fan_power: float  # W at full fan
    lowest_fan: float  # share of full airflow
    bypass_factor: float  # at full airflow
    approach: float  # K, apparatus dew point over the evaporating temperature
    band: float  # K above the set point at which the handler is fully called
    priority: float  # weight when the compressor cannot serve all; 1 = ordinary
    mass: float  # kg
    outlets: tuple[Outlet, ...]
    static_pressure: float  # Pa that its fan has to spare for ducts and grilles at full airflow
    return_area: float  # m2, face of the return grille
    return_free_share: float
    line_length: float  # m of refrigerant line from the condensing unit, one way


@dataclass(frozen=True)
class RefrigerantSafety:
    """What the safety standards say of a refrigerant."""

    name: str  # as the trade writes it
    safety_class: str  # ISO 817 / ASHRAE 34
    flammable_limit: float  # kg/m3, nan = does not burn
    practical_limit: float  # kg/m3 in an occupied space
    limit_with_ventilation: float  # kg/m3, QLMV of EN 378
    limit_with_two_measures: float  # kg/m3, QLAV of EN 378
    warming_potential: float  # GWP over 100 years
    source: str


@dataclass(frozen=True)
class SeaCircuit:
    """Seawater from the through-hull to the condenser and overboard."""

    length: float  # m of hose
    diameter: float  # m, inside
    bends: float  # right-angled bends and fittings counted as such
    lift: float  # m from the waterline to the highest point or the outlet, whichever is higher
    through_hull: float  # m, inside diameter
    condenser_loss: float  # Pa at the rated flow
    strainer_loss: float  # Pa at the rated flow
    pump_head: float  # Pa that the pump gives at the rated flow


@dataclass(frozen=True)
class Refrigeration:
    """A refrigerant circuit with a seawater condenser; its two fitted constants come from the rating."""

    refrigerant: str  # CoolProp's name, e.g. "R410A"
    rated_capacity: float  # W at the rating point
    rated_power: float  # W, compressor and drive at the rating point
    rated_evaporating: float  # °C
    rated_sea: float  # °C, seawater in
    superheat: float  # K
    subcooling: float  # K
    sea_flow: float  # m3/s
    condenser_ntu: float  # transfer units at rated flow
    turn_down: float  # lowest continuous speed over highest; 1 = fixed speed
    degradation: float  # Cd of 1 - Cd (1 - x) when cycling
    lowest_evaporating: float  # °C
    highest_evaporating: float  # °C
    highest_condensing: float  # °C, where the plant protects itself


@dataclass(frozen=True)
class SharedPlant:
    """One variable-speed condensing unit that feeds all handlers."""

    name: str
    circuit: Refrigeration
    pump_power: float  # W, seawater pump, while the compressor runs
    standby_power: float  # W, controls, all the time
    mass: float  # kg, pump and pipes included
    handlers: tuple[Handler, ...]
    reversible: bool  # heats by the reverse cycle
    highest_heating_condensing: float  # °C while it heats
    lowest_heating_condensing: float  # °C
    charge: float  # kg of refrigerant in the unit as delivered
    charge_per_length: float  # kg/m of line beyond the length that it is charged for
    charged_length: float  # m of line, all handlers together, that the unit is charged for
    safety: RefrigerantSafety
    sea: SeaCircuit


@dataclass(frozen=True)
class ChilledWaterPlant:
    """The other alternative: a chiller, and water pumped round to fan coils at one temperature."""

    name: str
    circuit: Refrigeration
    supply_temperature: float  # °C of the water
    evaporator_approach: float  # K, water leaving over evaporating temperature
    water_rise: float  # K along the fan coils
    water_pump_power: float  # W, all the time that the plant is on; it ends as heat in the water
    sea_pump_power: float  # W, while a compressor runs
    standby_power: float  # W
    fan_coils: tuple[Handler, ...]  # approach counted from the water's mean temperature
    mass: float  # kg, chiller, pumps and water


@dataclass(frozen=True)
class SelfContainedUnit:
    """A fixed-speed self-contained unit with its own compressor."""

    name: str
    cabin: int
    circuit: Refrigeration
    airflow: float  # m3/s
    fan_power: float  # W
    bypass_factor: float
    approach: float  # K
    hysteresis: float  # K between on and off
    starting_ratio: float  # locked-rotor over running current
    mass: float  # kg


@dataclass(frozen=True)
class SelfContainedPlant:
    """The alternative: a unit a cabin, and one seawater pump that runs while any of them runs."""

    units: tuple[SelfContainedUnit, ...]
    pump_power: float  # W
    mass: float  # kg, pump and manifold, without the units


@dataclass(frozen=True)
class Load:
    """An electrical load, and where its heat goes."""

    name: str
    alternating: bool  # on the AC bus, else on the DC bus
    power: float  # W while it runs
    cabin: int  # index of the cabin that takes the heat, -1 = none
    sensible_share: float  # of the power, into that cabin's air and surfaces
    latent_share: float  # of the power, as moisture
    radiant_share: float  # of the sensible part


@dataclass(frozen=True)
class Fed:
    """A device that takes alternating current, and what it accepts of it."""

    name: str
    key: str  # dotted path in the design file
    fed_from: FedFrom
    voltages: tuple[float, float]  # V, lowest and highest; nan = nobody has said
    frequencies: tuple[float, float]  # Hz, likewise


@dataclass(frozen=True)
class Converter:
    """An inverter or a charger: loss = no_load + linear P + quadratic P²/rated."""

    name: str
    rated_power: float  # W of output, all units together
    no_load_power: float  # W
    linear: float
    quadratic: float
    sleep_power: float  # W, with no load at all
    overload_shares: tuple[float, ...]  # of the rated power, rising from above 1
    overload_times: tuple[float, ...]  # s for which it gives those, falling
    full_to: float  # °C of the air round it up to which it gives its rating
    derating: float  # 1/K, share of the rating lost for each kelvin above
    highest_air: float  # °C at which it switches itself off
    mass: float  # kg
    cabin: int  # the compartment that takes its losses, -1 = none of those described
    output_voltage: float = math.nan  # V alternating that an inverter gives, nan = nobody has said
    output_frequency: float = math.nan  # Hz, likewise


@dataclass(frozen=True)
class Transformer:
    name: str
    rated_power: float  # VA
    core_loss: float  # W
    copper_loss: float  # W at rated load
    primary_voltage: float  # V, the side of shore and inverter
    secondary_voltage: float  # V
    isolating: bool  # False = autotransformer: both sides share a winding
    inrush: float  # peak of the current when switched on, over the peak of the rated current
    mass: float  # kg
    cabin: int  # the compartment that takes its losses, -1 = none of those described
    primary_said: bool = True  # by catalogue or file, else taken from the shore service


@dataclass(frozen=True)
class Shore:
    name: str
    voltage: float  # V, a leg to neutral where there are two
    legs: int  # 1, or 2 of split phase
    frequency: float  # Hz
    current: float  # A, of each leg, as the service is rated
    current_limit: float  # A, of each leg, that the boat is set to take
    continuous_power: float  # W that may be taken for hours within that limit
    lowest_voltage: float  # V at the inlet below which the charger gives way
    frequency_said: bool = True  # by catalogue or file, else taken from the voltage


@dataclass(frozen=True)
class EngineBattery:
    """The engine's own battery, kept full from the bank."""

    converter: Converter  # its rated power is what it may give
    standing_load: float  # W, what the battery and what hangs on it draw all the time
    start_energy: float  # J of one start of all engines
    starts_per_day: float
    voltage: float  # V


@dataclass(frozen=True)
class CutOff:
    """One of the management system's limits, and what it takes away."""

    name: str
    reads: str  # what it watches
    limit: float
    dimension: str  # of the limit
    disconnects: str  # "charge", "discharge" or "both"
    restores: str  # what brings it back, in words


@dataclass(frozen=True)
class Bank:
    """The whole bank, modules in series and parallel taken together."""

    module: str
    series: int
    parallel: int
    cells: int  # in series, over the whole bank
    nominal_voltage: float  # V
    capacity: float  # A s
    resistance: float  # ohm at 25 °C in mid charge, links included
    charge_points: tuple[float, ...]  # state of charge, rising from 0 to 1
    open_circuit_voltages: tuple[float, ...]  # V a cell at the charge points
    resistance_points: tuple[float, ...]  # factor on the resistance at the charge points
    charge_current: float  # A limit
    discharge_current: float  # A limit
    absorb_voltage: float  # V of the bank
    float_voltage: float  # V of the bank, held once it is full
    tail_current: float  # A of charge at which it counts as full
    cut_off_voltage: float  # V of the bank under load, where it disconnects
    cut_off_charge: float  # state of charge at which it disconnects
    lowest_charge_temperature: float  # °C of the cells; below it no charging
    highest_charge_temperature: float  # °C
    lowest_discharge_temperature: float  # °C
    highest_discharge_temperature: float  # °C
    management: tuple[CutOff, ...]
    temperature: float  # °C of what is round it, where it stands in no compartment; else of its cells at first
    heat_capacity: float  # J/K
    heat_conductance: float  # W/K from the cells to what is round it
    cycle_life: float  # full cycles at 25 °C until the warranted share of the capacity is left
    calendar_loss: float  # share of the capacity lost in the first year at 25 °C, half full
    warranted_years: float
    warranted_share: float  # of the capacity that is left at the end of the warranty
    aged_resistance: float  # factor on the resistance at the end of the warranty
    mass: float  # kg
    cabin: int  # the compartment that takes its losses, -1 = none of those described


@dataclass(frozen=True)
class LeadAcidBank:
    """The lead-acid bank that a lithium bank replaces, for comparison."""

    battery: str
    series: int
    parallel: int
    nominal_voltage: float  # V
    capacity: float  # A s at the 20 h rate
    peukert: float  # exponent
    usable_share: float  # of the capacity, for a fair life
    resistance: float  # ohm of the bank
    full_voltage: float  # V at rest, full
    empty_voltage: float  # V at rest, empty
    absorb_voltage: float  # V
    charge_rate: float  # 1/s: highest charging current over capacity
    charge_efficiency: float  # ampere-hours out over in
    cycle_life: float  # cycles of the usable share
    mass: float  # kg


@dataclass(frozen=True)
class Solar:
    peak_power: float  # W at standard test conditions, all panels
    temperature_coefficient: float  # 1/K of power, negative
    rise: float  # K of the cells over the air at 1000 W/m2
    delivered_share: float  # what shading, dirt, wiring and tracking leave
    faces: float  # rad from the bow
    tilt: float  # rad
    mass: float  # kg


@dataclass(frozen=True)
class Alternator:
    """An alternator on its belt with its regulator."""

    name: str
    rated_current: float  # A cold, at high speed
    voltage: float  # V, at regulation
    speeds: tuple[float, ...]  # rad/s of the rotor, rising; below the first it gives nothing
    currents: tuple[float, ...]  # share of the rated current, cold
    hot_loss: float  # share of the output lost at the hot reference
    efficiency: float  # at the reference point of `physics.alternator`
    winding_capacity: float  # J/K
    frame_capacity: float  # J/K
    winding_conductance: float  # W/K, winding to frame
    frame_conductance: float  # W/K, frame to air at rated rotor speed
    highest_winding: float  # °C, insulation class
    highest_speed: float  # rad/s
    pulley_ratio: float  # rotor speed over engine speed
    belt: str
    belt_power: float  # W the belt carries at the belt's reference rotor speed
    belt_speed: float  # rad/s, that reference rotor speed
    belt_tension_ratio: float  # tight over slack side when it works at its limit
    pulley_diameter: float  # m of its own pulley
    current_limit: float  # A, set in the regulator
    hold_temperature: float  # °C of the frame, at which the regulator begins to fold back
    fold_band: float  # K over which it folds back to nothing
    clamp_voltage: float  # V to which its diodes or a clamp at its post hold a load dump, nan = nobody has said
    mass: float  # kg, bracket and regulator included


@dataclass(frozen=True)
class Engine:
    name: str
    rated_power: float  # W at the crankshaft
    rated_speed: float  # rad/s
    idle_speed: float  # rad/s
    curve_speeds: tuple[float, ...]  # share of rated speed, rising
    curve_powers: tuple[float, ...]  # share of rated power at full load
    propeller_power: float  # W absorbed at rated speed
    propeller_exponent: float
    margin: float  # share of full-load power never asked for
    indicated_efficiency: float  # of the Willans line
    friction_pressure: float  # Pa, mean effective, of the Willans line
    displacement: float  # m3, swept volume
    air_temperature: float  # °C round the alternator; nan = that of its compartment
    volumetric_efficiency: float  # air drawn in over swept volume; above 1 with a turbocharger
    side_load_limit: float  # N that the maker allows at the front of the crankshaft, nan = not asked yet
    boat_speed: float  # m/s at rated engine speed
    charging_speed: float  # rad/s when it charges at anchor
    alternators: tuple[Alternator, ...]
    cabin: int  # the compartment that it stands in, -1 = none of those described
    block_capacity: float  # J/K of the engine and its water
    block_conductance: float  # W/K from the engine to the compartment's air and surfaces
    block_temperature: float  # °C of the engine while it runs
    blower: float  # m3/s of outdoor air through the compartment while it runs


@dataclass(frozen=True)
class Generator:
    """The generator that would do the same job, for comparison."""

    name: str
    rated_power: float  # W of output for long
    efficiency: float  # of its own alternator
    speed: float  # rad/s, constant
    displacement: float  # m3, swept volume of its engine
    indicated_efficiency: float  # of the Willans line
    friction_pressure: float  # Pa, of the Willans line
    lowest_load: float  # share of the rating below which it should not run for hours
    noise: float  # dB(A) at 1 m in its enclosure
    service_interval: float  # s of running
    service_price: float  # in the catalogue's currency, one service with its labour
    life: float  # s of running until an overhaul
    price: float  # in the catalogue's currency, nan = unknown
    mass: float  # kg with exhaust, mounts and fuel lines


@dataclass(frozen=True)
class Item:
    """A part of the design as it is bought and carried."""

    tag: str  # what it is called on drawings and in lists, once in a boat
    key: str  # dotted path in the design file
    kind: str  # of the catalogue
    name: str
    count: int
    mass: float  # kg of one
    price: float  # of one, nan = unknown
    currency: str  # ISO 4217, "" = price unknown
    lead_time: float  # s from order to delivery, nan = unknown
    supplier: str  # "" = nobody is named
    cabin: int  # the compartment that it stands in, -1 = none of those described
    space: int  # the space that it stands in, -1 = none
    position: Point  # of its centre, all of them together
    placed: bool  # whether somebody said where it stands
    size: tuple[float, float, float]  # m: length, width, height of one, nan = unknown
    clearance: float  # m kept free on every side, nan = unknown
    service: str  # the side from which it is worked on: "front", "top", "end", "" = unknown
    upright: bool  # whether it must stand as it is drawn
    highest_air: float  # °C round it up to which it gives its rating, nan = unknown

    @property
    def counted(self) -> str:
        """Its name, with how many there are where there is more than one."""
        return f"{self.count} × {self.name}" if self.count > 1 else self.name


@dataclass(frozen=True)
class TakenOut:
    """What leaves the boat though its displacement still counts it."""

    name: str
    mass: float  # kg
    position: Point
    placed: bool  # whether somebody said where it stood


@dataclass(frozen=True)
class Space:
    """A locker or a part of a compartment where parts go."""

    name: str
    cabin: int  # the compartment that it is a part of, -1 = none of those described
    centre: Point
    size: tuple[float, float, float]  # m inside: fore and aft, athwartships, height
    opening: tuple[float, float]  # m of the door or hatch
    opens: str  # where the opening is: "front" (a side) or "top"
    wall_conductance: float  # W/K of its walls to the compartment
    airflow: float  # m3/s of the compartment's air through it


@dataclass(frozen=True)
class CircuitWish:
    """What the design says of one circuit over what is worked out."""

    tag: str
    length: float  # m one way, nan = worked out
    conductor: str  # of the catalogue, "" = the smallest that will do
    parallel: int  # 0 = as few as will do
    fuse: float  # A, nan = worked out
    family: str  # of fuse or breaker, "" = worked out
    bundled: int  # current-carrying conductors in its bundle, 0 = usual
    highest_drop: float  # share, nan = usual of its kind
    where: str = ""  # file and line in which it stands


@dataclass(frozen=True)
class Wiring:
    """How the boat is wired."""

    regime: Regime
    metric: bool  # sizes in mm2, else gauges
    insulation: float  # °C of the cable's insulation
    routing_factor: float  # length of a run over the distance along the boat's axes
    slack: float  # m added at both ends together
    bundled: int  # current-carrying conductors in an ordinary bundle
    years: float  # over which a conductor's cost is looked at
    energy_price: float  # of 1 J from the bank, in the offer's currency
    mass_price: float  # of 1 kg carried for those years, in the offer's currency
    wishes: tuple[CircuitWish, ...]


@dataclass(frozen=True)
class Rate:
    """An exchange rate."""

    currency: str
    per_unit: float  # of that currency for 1 of the offer's
    date: str  # ISO 8601


@dataclass(frozen=True)
class Task:
    """Labour."""

    name: str
    hours: float
    rate: float  # an hour, in the offer's currency
    hold_points: tuple[HoldPointName, ...] = ()  # typed: where work stops before it


@dataclass(frozen=True)
class Package:
    """A variant of the design that is offered beside it."""

    name: str
    about: str
    changes: tuple[tuple[str, str], ...]  # key of the design file and what is written there


@dataclass(frozen=True)
class Offer:
    """How the design is priced."""

    currency: str  # ISO 4217
    date: str  # ISO 8601 day on which prices and order dates are looked at, "" = unknown
    rates: tuple[Rate, ...]
    parts_margin: float  # share on the cost of parts
    labour_margin: float  # share on the cost of labour
    commission: float  # share of the price, the broker's
    tax: float  # share on top
    tasks: tuple[Task, ...]
    consumables: float  # share of the parts' cost
    spares: tuple[tuple[str, int], ...]  # tags, and how many more of them
    arrival: str  # ISO 8601 date on which the boat arrives at the yard, "" = unknown
    packages: tuple[Package, ...]


@dataclass(frozen=True)
class Person:
    """An activity of one person."""

    activity: str
    sensible: float  # W at 24 °C
    latent: float  # W at 24 °C
    shift: float  # W from sensible to latent for each K warmer
    metabolic_rate: float  # met
    clothing: float  # clo, bedding counted in
    carbon_dioxide: float  # m3/s breathed out, at 20 °C and 101 325 Pa


@dataclass(frozen=True)
class Occupants:
    cabin: int
    count: float
    person: Person


@dataclass(frozen=True)
class Period:
    """One stretch of the plan of the day. `end` may be earlier in the day than `start`: over midnight."""

    start: float  # s after midnight, local standard time
    end: float  # s after midnight
    doing: Doing
    boat_speed: float  # m/s, motoring only
    set_points: tuple[float, ...]  # °C a cabin, nan = not cooled
    warm_points: tuple[float, ...]  # °C a cabin, nan = not heated
    openings: tuple[float, ...]  # m2 of hatches and windows left open, a cabin
    occupants: tuple[Occupants, ...]
    running: tuple[float, ...]  # share of the time each load runs, row for row with `loads`


@dataclass(frozen=True)
class PlannedDay:
    """One day of the week ahead, from the start of one night to that of the next."""

    passage: bool  # whether the plan's motoring takes place; else the boat lies at anchor
    charging_start: float  # s after midnight, engines on at anchor
    charging_time: float  # s


@dataclass(frozen=True)
class Brief:
    hold: float  # s the bank must carry
    night_start: float  # s after midnight
    charge_at_start: float  # state of charge when the night begins
    reserve: float  # state of charge that must be left
    recharge: float  # s allowed
    mass_limit: float  # kg, nan = none
    price_limit: str  # as written, "" = none
    nights_per_year: float


@dataclass(frozen=True)
class DesignDay:
    highest_dry_bulb: float  # °C
    daily_range: float  # K
    dew_point: float  # °C
    wind_speed: float  # m/s
    wind_direction: float  # rad, from
    turbidity: float  # Linke


@dataclass(frozen=True)
class Place:
    """Where and when. One of `weather_file` and `design_day` is empty."""

    latitude: float  # rad, north positive
    longitude: float  # rad, east positive; both nan = take them from the weather file
    hours_east: float  # h, of the local standard time; nan = from the weather file
    weather_file: str  # path or "pvlib:NAME" for a file that pvlib's wheel carries; "" = design day
    month: int
    day: int  # month 0 and day 0 = the warmest night of the file
    design_day: DesignDay | None
    sea_temperatures: tuple[float, ...]  # °C, January to December
    heading: float  # rad, true; nan = the bow lies to the wind


@dataclass(frozen=True)
class Specification:
    name: str
    length: float  # m
    beam: float  # m
    waterline: float  # m
    draught: float  # m of the hull body
    hulls: int
    hull_beam: float  # m of one hull
    block_coefficient: float
    metacentric_height: float  # m, GM, transverse
    longitudinal_metacentric_height: float  # m
    waterplane: float  # m2
    flotation: float  # m forward of the aft end of the waterline, centre of flotation
    gravity_up: float  # m over the waterline, centre of gravity of the boat without the design's parts
    displacement: float  # kg
    place: Place
    cabins: tuple[Cabin, ...]
    partitions: tuple[Partition, ...]
    spaces: tuple[Space, ...]
    items: tuple[Item, ...]
    removed: tuple[TakenOut, ...]
    wiring: Wiring
    plant: SharedPlant
    alternative: SelfContainedPlant | None
    chilled: ChilledWaterPlant | None
    loads: tuple[Load, ...]
    fed: tuple[Fed, ...]
    shore: Shore | None
    charger: Converter | None
    transformer: Transformer | None
    inverter: Converter
    bank: Bank
    replaced: LeadAcidBank | None
    solar: Solar | None
    engine_battery: EngineBattery | None
    engines: tuple[Engine, ...]
    generator: Generator | None
    plan: tuple[Period, ...]
    week: tuple[PlannedDay, ...]
    brief: Brief
    offer: Offer
    installation: Installation
    overlay: Overlay = field(hash=False)  # the yard's own rows over the catalogue
    estimates: tuple[Estimate, ...]
