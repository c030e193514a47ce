"""What every test of the finished installation should read today, what to accept, and what a pass proves.

Figures for the sea and the air of the test day come from the same map, coils and kernel as the assessment. Pass values
of electrical safety are from memory: the code in force where the boat lies, and whoever is licensed by it, decide.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import TYPE_CHECKING

import numpy as np

from anchorwatt.assessment.plant import full_speed
from anchorwatt.design.specification import Regime
from anchorwatt.errors import OutOfRange
from anchorwatt.physics.coil import bypass_factor, leaving_temperature
from anchorwatt.physics.condenser import sea_out
from anchorwatt.physics.conductor import resistance_ratio
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.assessment.plant import PlantPoint
    from anchorwatt.design.specification import Handler
    from anchorwatt.simulation.runs import Run
    from anchorwatt.sizing.wiring import WiredCircuit

COLDEST_SEA, WARMEST_SEA = 0.0, 40.0
"""°C between which the plant's map is worked out."""

COLDEST_AIR, WARMEST_AIR = -10.0, 50.0
"""°C of outdoor air in which a test day makes sense."""

LARGE = 20.0
"""A from which a circuit's drop is measured under load. From practice, no source."""

TEST_SHARE = 0.5
"""Share of a circuit's current at which its drop is looked for. From practice, no source."""

SPEEDS = 5
"""Engine speeds at which the charge current is read, spread over the sheet."""

FLOW_BAND, POWER_BAND, CAPACITY_BAND, CURRENT_BAND, CHARGE_BAND = 0.10, 0.10, 0.15, 0.10, 0.05
"""Share by which a reading may be off. Common practice, no source."""

THERMOMETERS = 1.0
"""K that two thermometers together may be off. From practice, no source."""

LEAST_SPLIT = 4.0
"""K of air temperature split below which thermometers tell nothing. From practice, no source."""

TERMINAL_RISE = 50.0
"""K of a terminal over the air after two hours at full load. From memory."""

FROM_MEMORY = "from memory; the code in force and the maker's papers decide"
PRACTICE = "tolerance is common practice, no source"

SHOCK = (
    "Shock kills. Shore cord out, inverter off and locked, bank isolated and capacitors run down: prove the circuit "
    "dead before you touch it. Electrical tests are for a licensed electrician."
)
ALIVE = (
    "This is done alive, with covers off. A licensed electrician does it, with a second person beside; insulated "
    "tools, no rings or watches; nobody in the water near the boat."
)
HIGH_VOLTAGE = (
    "The tester puts 500 V on the cable. Unplug inverter, charger, regulators, monitors and every other piece of "
    "electronics first, keep people off both ends, and discharge the cable afterwards."
)
BANK_CURRENT = (
    "The bank can melt a spanner and burn whoever holds it. Cover what is not measured; use fused leads and eye "
    "protection."
)
TURNING = (
    "Engines turn: keep hands, hair and sleeves off belts and fans. Run engines in open air only, with "
    "carbon-monoxide alarms working. Never take the bank off a running alternator."
)
HOT_PARTS = "Alternators and exhausts burn skin: read them with fixed probes, and stop the engine to move one."
SEA = (
    "A seacock, hose or strainer that lets go sinks the boat. Somebody stands by the seacock from its opening until "
    "every joint has been felt dry, with the bilge pump tried first."
)
GAS = (
    "Refrigerant freezes skin, suffocates, and some kinds burn. Only certified people open the circuit; ventilate, no "
    "flame, no spark, and leave the space when the detector sounds."
)
MOVING_FANS = "Fans start without warning: keep fingers out of blowers while thermostats call."
AFLOAT = (
    "Somebody stays aboard and awake to the alarms, with carbon-monoxide and smoke alarms tried that evening. "
    "Unplug in order: loads off, breaker ashore off, then the cord, at the shore end first."
)


@dataclass(frozen=True)
class Reading:
    """One figure to read, or one thing to see.

    Parameters
    ----------
    expected, low, high : SI, nan = no such figure or bound
    words : what to see in place of a figure, "" = the figures tell
    judged : whether it passes or fails; else it is only written down
    """

    what: str
    expected: float
    low: float
    high: float
    dimension: str
    words: str = ""
    judged: bool = True


@dataclass(frozen=True)
class Trial:
    """One step of the commissioning."""

    system: str
    name: str
    cautions: tuple[str, ...]  # before it; none where it is harmless
    do: str
    readings: tuple[Reading, ...]
    how: str  # the expected values, in words
    source: str
    proves: str  # what a pass today proves for the design day
    leaves_open: str


@dataclass(frozen=True)
class Commissioning:
    """All tests, and the day that they are for."""

    sea: float  # °C
    air: float  # °C
    sea_typed: bool
    air_typed: bool
    design_sea: float  # °C, the design day's warmest
    design_air: float
    tests: tuple[Trial, ...]


def commissioning(
    assessment: Assessment, system: System, sea: float | None = None, air: float | None = None
) -> Commissioning:
    """The tests for a sea and an air temperature, °C, words in a system of units; None = the design day's warmest.

    Raises
    ------
    OutOfRange
        the sea is not between 0 and 40 °C, or the air not between -10 and 50 °C.
    """
    design_sea, design_air = warmest(assessment)
    today_sea = design_sea if sea is None else sea
    today_air = design_air if air is None else air
    if not COLDEST_SEA <= today_sea <= WARMEST_SEA:
        raise OutOfRange("the sea of the test day must be between 0 and 40 °C; found", today_sea)
    if not COLDEST_AIR <= today_air <= WARMEST_AIR:
        raise OutOfRange("the air of the test day must be between -10 and 50 °C; found", today_air)
    tests = (
        *_dead(),
        *_alive(assessment),
        *_drops(assessment, system, today_air),
        *_bank(assessment),
        *_charging(assessment, system, today_air, design_air),
        *_water(assessment, today_sea),
        *_plant(assessment, system, today_sea),
        *_air(assessment, system, today_air),
        *_last(assessment, system),
    )
    return Commissioning(today_sea, today_air, sea is not None, air is not None, design_sea, design_air, tests)


def warmest(assessment: Assessment) -> tuple[float, float]:
    """The warmest sea and the warmest air of the design day, °C."""
    weather = assessment.simulation.weather
    return float(np.max(weather.sea_temperature)), float(np.max(weather.dry_bulb))


def _seen(what: str, words: str) -> Reading:
    return Reading(what, math.nan, math.nan, math.nan, "", words)


def _within(what: str, expected: float, band: float, dimension: str) -> Reading:
    return Reading(what, expected, expected * (1.0 - band), expected * (1.0 + band), dimension)


def _near(what: str, expected: float, by: float, dimension: str) -> Reading:
    return Reading(what, expected, expected - by, expected + by, dimension)


def _dead() -> list[Trial]:
    return [
        Trial(
            "Wiring, dead",
            "Insulation",
            (SHOCK, HIGH_VOLTAGE),
            "At 500 V DC between each live conductor and earth, and between live conductors; direct-current circuits "
            "with both ends unplugged. Write down the lowest of each kind and its tag.",
            (
                _seen("alternating current, lowest", "1 MΩ or more"),
                _seen("direct current, lowest", "0.1 MΩ or more; new work gives 1 MΩ"),
            ),
            "A sound new cable reads far more; a falling reading is damp or a chafed place.",
            FROM_MEMORY,
            "No cable is chafed or wet today.",
            "Chafe and salt in years to come: measure again each season.",
        ),
        Trial(
            "Wiring, dead",
            "Earth and bonding",
            (SHOCK,),
            "With a low-resistance tester, leads zeroed: from the earth bar to every metal case, and along the bonding "
            "conductors.",
            (
                Reading("earth continuity, highest", math.nan, math.nan, 1.0, "resistance"),
                Reading("bonding, highest", math.nan, math.nan, 0.5, "resistance"),
            ),
            "Good crimps read a tenth of these.",
            FROM_MEMORY,
            "A fault has its way back, so that a device can open.",
            "Corrosion of joints in the bilge.",
        ),
        Trial(
            "Wiring, dead",
            "Polarity",
            (SHOCK,),
            "Before any fuse goes in, trace plus and minus of every direct-current circuit by its tag, and line, "
            "neutral and earth of every socket, from end to end.",
            (
                _seen("direct current", "plus to plus at every end"),
                _seen("alternating current", "line, neutral, earth each in its place"),
            ),
            "By the wire schedule's tags.",
            FROM_MEMORY,
            "The weather does not matter to this test: it holds on the design day.",
            "Reversed polarity of a foreign quay: the lamp at the inlet tells.",
        ),
    ]


def _alive(assessment: Assessment) -> list[Trial]:
    evidence, specification = assessment.evidence, assessment.specification
    bonds = evidence.ac_safety.bonds
    tests = [
        Trial(
            "Alternating current, alive",
            "Neutral bond and source polarity",
            (ALIVE,),
            "On each source in turn measure neutral to earth, without load. Try that two sources can never meet.",
            (
                *(
                    _seen(f"on {bond.source}", f"neutral joined to earth at {bond.where}")
                    if bond.joined
                    else _seen(f"on {bond.source}", f"neutral not joined aboard; it is joined {bond.where}")
                    for bond in bonds
                ),
                *((_seen("reverse-polarity lamp", "dark"),) if specification.shore is not None else ()),
            ),
            "One bond for each source, at the source.",
            FROM_MEMORY,
            "Earth-fault devices can see a fault on every source.",
            "Wrongly wired quays: look at the lamp at every berth.",
        )
    ]
    if specification.shore is not None:
        american = specification.wiring.regime is not Regime.ISO
        needed = (
            "asked for here" if evidence.ac_safety.earth_fault_needed else "an isolation transformer may replace it"
        )
        if american:
            readings: tuple[Reading, ...] = (
                Reading("trips at", math.nan, 0.015, 0.030, "current"),
                _seen("within, at its rating", "100 ms or less"),
            )
        else:
            readings = (
                Reading("trips at", math.nan, 0.015, 0.030, "current"),
                _seen("within, at 30 mA", "300 ms or less"),
                _seen("within, at 150 mA", "40 ms or less"),
            )
        tests.append(
            Trial(
                "Alternating current, alive",
                "Earth-fault trip",
                (ALIVE,),
                f"With a tester at each protected socket and at the inlet's device ({needed}: "
                f"{evidence.ac_safety.earth_fault_why}); then its own button. A device that a design has not is "
                "crossed out.",
                readings,
                "A rising test current, then a step of the rating.",
                FROM_MEMORY,
                "A fault to earth is cut off before it kills, whatever the weather.",
                "Devices stick: press the button every month.",
            )
        )
    return tests


def _large(assessment: Assessment) -> list[WiredCircuit]:
    return [
        one
        for one in assessment.wiring.wiring.circuits
        if one.circuit.system in ("dc", "ac") and one.circuit.continuous >= LARGE
    ]


def drop_today(one: WiredCircuit, air: float, system: System) -> Reading:
    """A circuit's drop at the test's share of its current, with copper warmed from today's air."""
    warmed = (one.conductor.temperature - one.circuit.ambient) * TEST_SHARE**2
    colder = resistance_ratio(air + warmed) / resistance_ratio(one.conductor.temperature)
    scale = TEST_SHARE * colder
    allowed = one.conductor.circuit.highest_drop * one.circuit.voltage
    current = show(TEST_SHARE * one.conductor.circuit.current, "current", system)
    name = f"{one.circuit.tag} {one.circuit.function}, at {current}"
    return Reading(name, one.conductor.drop * scale, math.nan, allowed * scale, "voltage")


def _drops(assessment: Assessment, system: System, air: float) -> list[Trial]:
    large, hotter = _large(assessment), show(TERMINAL_RISE, "temperature difference", system)
    if not large:
        return []
    return [
        Trial(
            "Wiring, under load",
            "Voltage drop of the large circuits",
            (ALIVE, BANK_CURRENT),
            "Load each circuit near the current named, for a minute; measure from end to end along plus and along "
            "minus, and add (of alternating current: voltage at the start less voltage at the end). At another "
            "current, expected and allowed drop change in the same proportion. Then look at every joint with a thermal "
            "camera: none is touched alive.",
            tuple(drop_today(one, air, system) for one in large),
            "The schedule's drop × half its current × resistance of copper as warm as today over that of the hottest.",
            "IEC 60228 and the temperature coefficient of copper; highest drop as the schedule has it",
            "Drop rises in proportion to current and by 0.4 % a kelvin: a pass keeps the allowed drop on the design "
            "day too.",
            f"A joint that heats only after hours at full current: terminals at most {hotter} over the air after two "
            f"hours at full load ({FROM_MEMORY}). A reading well above the expected one is a poor joint, though "
            "allowed.",
        )
    ]


def _bank(assessment: Assessment) -> list[Trial]:
    bank = assessment.specification.bank
    inverter = assessment.specification.inverter
    return [
        Trial(
            "Inverter",
            "Start of the plant, and standby",
            (ALIVE, BANK_CURRENT),
            "Bank low, shore power off: read what the inverter takes with nothing on it; switch the transformer on ten "
            "times where there is one; then start the whole plant from rest with the largest other load on.",
            (
                _within("taken from the bank with nothing on", inverter.no_load_power, POWER_BAND, "power"),
                _seen("start", "nothing trips, no lamp dims for long"),
            ),
            "The inverter's no-load power in the design.",
            f"design file and catalogue; {PRACTICE}",
            "Inverter and bank start the plant; a start does not depend much on the sea.",
            "Long hours at the design day's power in a hot compartment, where the inverter gives less.",
        ),
        Trial(
            "Bank",
            "Alarms and shutdown",
            (BANK_CURRENT, TURNING),
            "With the maker's program bring each limit to the reading until it trips, charging only at idle and at the "
            "least current; set each one back afterwards and read it back. Press the remote disconnect with engines "
            "stopped and a small load on.",
            (
                _seen("alarm", "sounds before anything is cut off"),
                _seen("charge refused", "alternators' field stops before a contactor opens"),
                _seen("remote disconnect", "bank off at once, without the electronics' consent"),
                *(
                    Reading(f"{one.name}, set at", one.limit, one.limit, one.limit, one.dimension)
                    for one in bank.management
                ),
            ),
            "Limits as the design file and catalogue have them.",
            f"sequence {FROM_MEMORY}",
            "The bank protects itself by the same steps on the design day.",
            "That each cell's own sensor is right: only the maker's log tells.",
        ),
    ]


def _charging(assessment: Assessment, system: System, air: float, design_air: float) -> list[Trial]:
    made, tests = assessment.regulator, []
    for machine in made.machines:
        rows = [row for row in machine.sheet.rows if row.set_current > 0.0]
        places = sorted({round(place) for place in np.linspace(0, len(rows) - 1, SPEEDS)}) if rows else []
        readings = tuple(
            _within(
                f"at {show(rows[place].engine_speed, 'rotational speed', system)}",
                rows[place].set_current,
                CURRENT_BAND,
                "current",
            )
            for place in places
        )
        if readings:
            tests.append(
                Trial(
                    "Charging",
                    f"Charge current of {machine.name} by engine speed",
                    (TURNING, BANK_CURRENT),
                    "Bank at half charge or below, this alternator alone, cold, out of gear with the boat held fast. "
                    "Clamp meter on its output; a minute at each engine speed. Again after half an hour: write the "
                    "hot current beside it.",
                    readings,
                    "The regulator sheet's current to set: the lowest of cold curve, limit, belt, engine and bank.",
                    f"alternator curve of the design; {PRACTICE}",
                    "Curve, belt and regulator give what the recharge of the design day begins with.",
                    "What is left when it is hot: the hour below.",
                )
            )
    run, space = _hour_today(assessment, air, design_air)
    if run is not None:
        alternators = [one for engine in assessment.specification.engines for one in engine.alternators]
        winding, frame = run.series.alternator_winding[0, :, -1], run.series.alternator_frame[0, :, -1]
        warm = []
        for n, one in enumerate(alternators):
            hold = one.hold_temperature + one.fold_band
            warm += [
                Reading(f"{one.name}, winding", float(winding[n]), math.nan, one.highest_winding, "temperature"),
                Reading(f"{one.name}, frame", float(frame[n]), math.nan, hold, "temperature"),
            ]
        tests.append(
            Trial(
                "Charging",
                "Alternator temperature after an hour",
                (TURNING, HOT_PARTS),
                "Bank as low as it will be at dawn, all alternators, engines at their charging speed at anchor for an "
                "hour. Fixed probes on frame and winding, and in the air round the alternators: expected "
                f"{show(space, 'temperature', system)} there.",
                tuple(warm),
                "The time kernel's hour of charging, the air round the alternators as far from the design hour's as "
                "today's air from the design day's.",
                "docs/theory; that the engine space follows the air kelvin for kelvin is an assumption of this sheet",
                "The regulator holds the temperature where the reading stays below what is allowed, and the alternator "
                "is cooled as the design assumes if it reads as expected.",
                f"An engine space {show(abs(design_air - air), 'temperature difference', system)} off today's, "
                "and days under way in following wind."
                if air != design_air
                else "Days under way in following wind, and a blower that fails.",
            )
        )
    return tests


def _hour_today(assessment: Assessment, air: float, design_air: float) -> tuple[Run | None, float]:
    """The hour of charging at anchor in today's air, and °C round the alternators then."""
    hours = [one for one in assessment.regulator.hours if one.at_anchor and math.isnan(one.given_air)]
    if not hours:
        return None, math.nan
    space = hours[0].air + air - design_air
    return assessment.simulation.charging_hour(True, True, space), space


def plant_today(assessment: Assessment, sea: float) -> PlantPoint:
    """The shared plant at full speed in a sea, °C."""
    return full_speed(assessment.specification.plant, assessment.simulation.boat.plant, sea)


def _water(assessment: Assessment, sea: float) -> list[Trial]:
    found, point = assessment.seawater, plant_today(assessment, sea)
    heat = point.load + point.compressor_power
    rise = sea_out(sea, heat, found.flow) - sea
    return [
        Trial(
            "Seawater",
            "Flow and rise",
            (SEA,),
            "Fill a bucket at the outlet and time it, strainer clean. Then at full speed for 20 minutes: water in and "
            "out at the condenser, both thermometers held together first.",
            (
                _within("flow", found.flow, FLOW_BAND, "liquid flow"),
                Reading(
                    "rise", rise, rise * (1.0 - CAPACITY_BAND), rise * (1.0 + CAPACITY_BAND), "temperature difference"
                ),
            ),
            "Rise: cooling and compressor power at full speed in today's sea over flow, density and heat capacity.",
            f"heat balance of the condenser; {PRACTICE}",
            "Flow does not know the sea's temperature: as it flows today it flows on the design day.",
            "Weed, growth and a boat that heels: the strainer and the flow alarm are for the crew.",
        )
    ]


def _plant(assessment: Assessment, system: System, sea: float) -> list[Trial]:
    point, plant = plant_today(assessment, sea), assessment.specification.plant
    coil = show(point.coil, "temperature", system)
    full = Trial(
        "Cooling plant",
        "Power and capacity at full speed",
        (ALIVE, SEA),
        "Warm the cabins first, so that all air handlers call at full fan and the compressor stays at full speed for "
        "20 minutes. Read the plant's whole power at its supply; capacity = seawater flow × rise × 4.1 kJ/(L·K) less "
        f"compressor power. Read the refrigerant in the coils: these figures are for {coil}; colder coils give less.",
        (
            _within("whole plant, power", point.plant_power, POWER_BAND, "power"),
            _within("compressor, power", point.compressor_power, POWER_BAND, "power"),
            _within("cooling capacity", point.load, CAPACITY_BAND, "heat flow"),
        ),
        "The plant's map at full speed in today's sea.",
        f"docs/theory, the map fitted to the unit's rating; {PRACTICE}",
        "The plant gives in this sea what its map says; the same map tells what it gives on the design day.",
        "The design day's warmer sea itself: less capacity, more power and higher pressure. Read again in the first "
        "warm week.",
    )
    limits = assessment.refrigerant
    charge = math.nan if limits is None else limits.charge
    weighed = (
        (_within("charge by scale", charge, CHARGE_BAND, "mass"),)
        if limits is not None
        else (_seen("charge", "as the maker's plate has it"),)
    )
    gas = Trial(
        "Cooling plant",
        "Refrigerant charge",
        (GAS,),
        f"A certified person: pressure test with nitrogen, vacuum held, then {plant.safety.name} by weight; superheat "
        "and subcooling written down; every joint with a leak detector.",
        (
            *weighed,
            _near("superheat", plant.circuit.superheat, 3.0, "temperature difference"),
            _near("subcooling", plant.circuit.subcooling, 3.0, "temperature difference"),
            _seen("leak search", "no leak"),
        ),
        "The unit's charge and what the lines beyond its own take; superheat and subcooling as the map assumes.",
        f"the unit's maker decides; {PRACTICE}",
        "The right charge is right on every day.",
        "A slow leak: look again after a month and each season.",
    )
    return [gas, full]


def air_split(handler: Handler, airflow: float, air: float, evaporating: float) -> float:
    """K between the air that a handler draws, °C, and what leaves its coil at an evaporating temperature, °C."""
    share = airflow / handler.airflow
    if not share > 0.0:
        return 0.0
    bypass = bypass_factor(handler.bypass_factor, share)
    return air - leaving_temperature(bypass, air, evaporating + handler.approach)


def _air(assessment: Assessment, system: System, air: float) -> list[Trial]:
    plant, circuit = assessment.specification.plant, assessment.specification.plant.circuit
    splits, flows = [], []
    for handler, found in zip(plant.handlers, assessment.handlers_air, strict=True):
        if not found.runs:
            continue
        evaporating = min(circuit.rated_evaporating, circuit.highest_evaporating)
        expected = air_split(handler, found.airflow, air, evaporating)
        if expected < LEAST_SPLIT:
            splits.append(_seen(f"{handler.name}, split", "too cold today to tell: warm the cabin first"))
        else:
            low = air_split(handler, found.airflow, air, circuit.highest_evaporating) - THERMOMETERS
            high = air_split(handler, found.airflow, air, circuit.lowest_evaporating) + THERMOMETERS
            splits.append(Reading(f"{handler.name}, split", expected, low, high, "temperature difference"))
        flows += [
            _within(
                f"{found.name}, {run.outlet}" if run.outlet != found.name else found.name,
                run.airflow,
                FLOW_BAND,
                "volume flow",
            )
            for run in found.runs
        ]
    if not flows:
        return []
    return [
        Trial(
            "Air",
            "Flow of each grille",
            (MOVING_FANS,),
            "Full fan, doors as by night, filters clean; a flow hood, or ten readings over the face of each grille.",
            tuple(flows),
            "Ducts and grilles in balance with the fan.",
            f"docs/theory; {PRACTICE}",
            "The air's way does not know the weather: flows hold on the design day.",
            "Filters that clog, and lockers stowed before a return grille.",
        ),
        Trial(
            "Air",
            "Temperature split of each air handler",
            (MOVING_FANS,),
            "One handler at a time at full fan, thermostat at its lowest, for 10 minutes: air at the return less air "
            f"at the nearest grille. The cabin's air taken as {show(air, 'temperature', system)}, like outdoors; in "
            "other air the split changes by nearly as much.",
            tuple(splits),
            "Bypass factor of the coil; expected at the rating's evaporating temperature, accepted between the "
            "plant's highest and lowest, a kelvin more for the thermometers.",
            "definition of the bypass factor; docs/theory",
            "Coil, refrigerant and fan of this handler work together as the design assumes.",
            "All handlers at once, when the compressor shares out what it has; damp air, when the same coil is as "
            "cold but much of its work goes into water.",
        ),
    ]


def _last(assessment: Assessment, system: System) -> list[Trial]:
    specification, condensate = assessment.specification, assessment.condensate
    brief, night = specification.brief, assessment.simulation.night
    dawn = float(night.end.charge[0])
    cooling = float(night.summary.plant_energy[0] / (night.summary.bank_out[0] + night.summary.solar_energy[0]))
    drains = Trial(
        "Condensate",
        "Drains",
        (),
        "Pour clean water into each handler's pan for ten minutes with the fan at full, at the rate named, the boat "
        "trimmed and heeled as she lies at her worst.",
        (
            Reading("poured through each pan", condensate.peak_flow, condensate.peak_flow, math.nan, "fuel flow"),
            _seen("pan and bilge", "nothing stands in the pan, nothing in the bilge"),
        ),
        "The whole boat's wettest hour of the design day, through every single drain.",
        "the design night, minute by minute",
        "Every drain alone carries the design day's water.",
        "How much water the coils take out today: today's humidity is unknown to this sheet, so no amount is "
        "expected. Slime in a season.",
    )
    noise = Trial(
        "Noise",
        "Sound in each cabin",
        (),
        "By night, engines off, fans at the speed at which people sleep: dB(A) at each pillow. For the record.",
        tuple(
            Reading(cabin.name, math.nan, math.nan, math.nan, "", "write it down", judged=False)
            for cabin in specification.cabins
            if cabin.use in ("sleeping", "saloon", "pilothouse")
        ),
        "The design does not work out noise.",
        "none",
        "Nothing is proved; it is what later complaints are measured against.",
        "The compressor at full speed on the design day.",
    )
    used = brief.charge_at_start - dawn
    plant = float(night.summary.plant_energy[0])
    others = float(night.summary.bank_out[0] + night.summary.solar_energy[0]) - plant
    return [
        drains,
        noise,
        Trial(
            "The night",
            "A night on the bank, shore power unplugged",
            (AFLOAT,),
            f"Start at {show(brief.night_start, 'clock time', system)} with the bank at "
            f"{show(brief.charge_at_start, 'share', system)}, thermostats and people as in the plan. "
            "At dawn read charge, and the energy of bank and plant. From another charge at the start, expect as much "
            "more or less at dawn.",
            (
                Reading("charge at dawn", dawn, dawn, brief.charge_at_start, "share"),
                Reading("energy of all but the plant", others, math.nan, others * (1.0 + POWER_BAND), "energy"),
            ),
            f"The design night takes {show(used, 'share', system)} of the bank; the plant's share of all energy "
            f"is {show(cooling, 'share', system)}. On a milder "
            "night the plant's part shrinks, the rest does not.",
            "the design night, minute by minute",
            "A mild night at or above this charge proves bank, inverter and other loads together. Energy of all but "
            "the plant, which is what bank and sun gave less what the plant drew, proves that nothing else draws more "
            "than the design says; it holds the losses of inverter and transformer.",
            "The plant's energy on the design night, "
            f"{show(plant, 'energy', system)}: only a night as hot and damp shows it. A "
            "mild night below this figure is a fail; one above it does not yet prove the design night.",
        ),
    ]
