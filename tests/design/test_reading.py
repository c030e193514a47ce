"""One fault a test: the message names file, line, key, what was found and what is allowed."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from tests.design.sample import SAMPLE, changed, line_of

from anchorwatt import design
from anchorwatt.errors import BadDesign, Problem


def problems_of(text: str) -> tuple[Problem, ...]:
    with pytest.raises(BadDesign) as caught:
        design.parse(text, "boat.yaml")
    return caught.value.problems


def problems_or_none(text: str) -> tuple[Problem, ...]:
    try:
        design.parse(text)
    except BadDesign as error:
        return error.problems
    return ()


@dataclass(frozen=True)
class Fault:
    """A change that spoils the sample, and what the message must say of it."""

    old: str
    new: str
    key: str
    found: str
    allowed: str
    at: str = ""  # part of the line that must be named; the new text if empty


FAULTS = {
    "unknown key": Fault("beam: 4 m", "beem: 4 m", "boat.beem", "unknown key “beem”, perhaps “beam”", "length"),
    "unknown top key": Fault("brief:", "breif:", "breif", "perhaps “brief”", "cabins"),
    "missing key": Fault("  beam: 4 m\n", "", "boat.beam", "nothing", "Beam over all hulls", "boat:"),
    "wrong unit": Fault("length: 12 m", "length: 12 kg", "boat.length", "12 kg", "ft"),
    "misspelt unit": Fault("length: 12 m", "length: 12 metrs", "boat.length", "perhaps", "a length"),
    "bare number": Fault("length: 12 m", "length: 12", "boat.length", "bare number 12", "12 ft"),
    "not a quantity": Fault("length: 12 m", "length: long", "boat.length", '"long"', "a length"),
    "nothing where a quantity is needed": Fault(
        "length: 12 m", "length:", "boat.length", "nothing", "12 ft", "length:"
    ),
    "negative area": Fault("floor_area: 7 m2", "floor_area: -7 m2", "cabins.cabin.floor_area", "-7 m2", "not below"),
    "too large": Fault("length: 12 m", "length: 400 m", "boat.length", "400 m", "4 m to 60 m"),
    "a text for a number": Fault(
        "pulley_ratio: 2.2",
        "pulley_ratio: two",
        "charging.engines.engine.alternators.alternator.pulley_ratio",
        '"two"',
        "a number",
    ),
    "a share for a count": Fault("parallel: 2", "parallel: 2.5", "dc.bank.parallel", "2.5", "whole number"),
    "zero in parallel": Fault("parallel: 2", "parallel: 0", "dc.bank.parallel", "0", "at least 1"),
    "a list for a mapping": Fault(
        "  bank:\n", "  bank: [1]\n  bonk:\n", "dc.bank", "a list", "a mapping of module", "bank: [1]"
    ),
    "a mapping for a list": Fault(
        "sides: [port, starboard]\n    windows: {}",
        "sides: {port: 1}\n    windows: {}",
        "cabins.cabin.sides",
        "a mapping",
        "a list",
        "sides: {port",
    ),
    "unknown word": Fault("use: sleeping", "use: bedroom", "cabins.cabin.use", "bedroom", "sleeping"),
    "unknown construction": Fault(
        "hull: foam-cored, white",
        "hull: foam-kored, white",
        "boat.hull",
        "perhaps “foam-cored”",
        "balsa-cored",
    ),
    "unknown finish": Fault(
        "hull: foam-cored, white", "hull: foam-cored, whit", "boat.hull", "perhaps “white”", "dark blue"
    ),
    "unknown catalogue name": Fault(
        "unit: inverter 24 V 3 kW",
        "unit: inverter 24 V 33 kW",
        "ac.inverter.unit",
        "no inverter “inverter 24 V 33 kW”",
        "inverter 24 V 3 kW",
    ),
    "unknown name to start from": Fault(
        "like: lithium 12.8 V 200 Ah",
        "like: lithium 12.8 V 20 Ah",
        "dc.bank.module.like",
        "no battery module",
        "lithium 12.8 V 200 Ah",
    ),
    "unknown field of a catalogue part": Fault(
        "charge_current: 100 A",
        "charge_curent: 100 A",
        "dc.bank.module.charge_curent",
        "perhaps “charge_current”",
        "discharge_current",
    ),
    "wrong unit in a catalogue part": Fault(
        "charge_current: 100 A", "charge_current: 100 V", "dc.bank.module.charge_current", "100 V", "current"
    ),
    "neighbour names an unknown cabin": Fault(
        "between: [saloon, cabin]",
        "between: [saloon, cabbin]",
        "neighbours.0.between.1",
        "no cabin “cabbin”, perhaps “cabin”",
        "saloon, cabin",
    ),
    "neighbour of itself": Fault(
        "between: [saloon, cabin]",
        "between: [saloon, saloon]",
        "neighbours.0.between",
        "“saloon” twice",
        "two different",
    ),
    "neighbour of three": Fault(
        "between: [saloon, cabin]",
        "between: [saloon, cabin, saloon]",
        "neighbours.0.between",
        "3 of them",
        "at most 2",
    ),
    "handler in an unknown cabin": Fault(
        "{unit: air handler 6 kBtu/h, cabin: cabin}",
        "{unit: air handler 6 kBtu/h, cabin: cabn}",
        "cooling.plant.handlers.main.cabin",
        "no cabin “cabn”",
        "cabin",
    ),
    "unit in an unknown cabin": Fault(
        "{unit: self-contained 7 kBtu/h, cabin: cabin}",
        "{unit: self-contained 7 kBtu/h, cabin: attic}",
        "cooling.alternative.units.old unit.cabin",
        "no cabin “attic”",
        "saloon, cabin",
    ),
    "load in an unknown cabin": Fault(
        "{appliance: refrigerator, cabin: saloon}",
        "{appliance: refrigerator, cabin: salon}",
        "dc.loads.refrigerator.cabin",
        "perhaps “saloon”",
        "saloon, cabin",
    ),
    "people in an unknown cabin": Fault(
        "- {cabin: cabin, count: 2",
        "- {cabin: bunk, count: 2",
        "plan.0.people.0.cabin",
        "no cabin “bunk”",
        "saloon",
    ),
    "cooling of an unknown cabin": Fault(
        "cabin: 76 °F", "cabinn: 76 °F", "plan.0.cool.cabinn", "no cabin “cabinn”", "cabin"
    ),
    "cooling where there is no handler": Fault(
        "cabin: 76 °F", "saloon: 76 °F", "plan.0.cool.saloon", "no air handler", "cabin"
    ),
    "running of an unknown load": Fault(
        "television: 10 %",
        "televisionn: 10 %",
        "plan.1.running.televisionn",
        "perhaps “television”",
        "refrigerator",
    ),
    "two loads of one name": Fault(
        "    refrigerator: {appliance: refrigerator",
        "    television: {appliance: refrigerator",
        "dc.loads.television",
        "second load “television”",
        "a name of its own",
    ),
    "window in no surface": Fault(
        "surface: port side",
        "surface: prot side",
        "cabins.saloon.windows.port windows.surface",
        "perhaps “port side”",
        "starboard side",
    ),
    "window larger than its surface": Fault(
        "area: 0.5 m2",
        "area: 50 m2",
        "cabins.saloon.windows.port windows.area",
        "100.0 m²",
        "at most the surface's",
    ),
    "bank of the wrong voltage": Fault("series: 2", "series: 1", "dc.bank.series", "make 12.8 V", "2 in series"),
    "more in series than the module stands": Fault(
        "charge_current: 100 A",
        "charge_current: 100 A\n      highest_series: 1",
        "dc.bank.series",
        "2 in series",
        "at most 1 in series",
        "    series: 2",
    ),
    "more in parallel than the module stands": Fault(
        "parallel: 2", "parallel: 9", "dc.bank.parallel", "9 in parallel", "at most 6"
    ),
    "a voltage that boats do not have": Fault(
        "nominal_voltage: 24 V", "nominal_voltage: 36 V", "dc.nominal_voltage", "36 V", "12 V, 24 V or 48 V"
    ),
    "an inverter for another bank": Fault(
        "unit: inverter 24 V 3 kW",
        "unit: inverter 48 V 3 kW",
        "ac.inverter.unit",
        "an inverter for 48 V",
        "24 V",
    ),
    "a charger for another bank": Fault(
        "unit: charger 24 V 1.7 kW",
        "unit: charger 12 V 1 kW",
        "ac.charger.unit",
        "a charger for 12 V",
        "24 V",
    ),
    "an alternator for another bank": Fault(
        "alternator: high-output 24 V 110 A",
        "alternator: high-output 12 V 180 A",
        "charging.engines.engine.alternators.alternator.alternator",
        "regulates at 14.1 V",
        "24 V",
    ),
    "a rotor that turns too fast": Fault(
        "pulley_ratio: 2.2",
        "pulley_ratio: 6",
        "charging.engines.engine.alternators.alternator.pulley_ratio",
        "18000 rpm",
        "at most 4.67",
    ),
    "an alternator's curve that falls": Fault(
        "alternator: high-output 24 V 110 A",
        "alternator: {like: high-output 24 V 110 A, speeds: [900 rpm, 9000 rpm], currents: [98 %, 67 %]}",
        "charging.engines.engine.alternators.alternator.alternator",
        "currents that fall from 98 % to 67 % at 9000 rpm",
        "do not fall as the speed rises",
    ),
    "an alternator's curve that ends too soon": Fault(
        "alternator: high-output 24 V 110 A",
        "alternator: {like: high-output 24 V 110 A, speeds: [900 rpm, 5000 rpm], currents: [0 %, 98 %]}",
        "charging.engines.engine.alternators.alternator.alternator.speeds",
        "a curve that ends at 5000 rpm, below the 6600 rpm",
        "goes on to 6600 rpm",
    ),
    "a propeller beyond the engine's curve": Fault(
        "charging_speed: 1400 rpm",
        "charging_speed: 1400 rpm\n      propeller_power: 50 kW",
        "charging.engines.engine.propeller_power",
        '"50 kW" at rated speed, over the engine\'s own curve',
        "at most the 42.0 kW that diesel 42 kW gives at 3000 rpm",
        "propeller_power: 50 kW",
    ),
    "charging above rated speed": Fault(
        "charging_speed: 1400 rpm",
        "charging_speed: 4000 rpm",
        "charging.engines.engine.charging_speed",
        "4000 rpm",
        "3000 rpm",
    ),
    "plan with a hole": Fault(
        "start: 16:00", "start: 17:00", "plan.2.start", "a hole from 16:00 to 17:00", "ends at 16:00"
    ),
    "plan with an overlap": Fault(
        "start: 16:00", "start: 15:00", "plan.2.start", "an overlap from 15:00 to 16:00", "follow each other"
    ),
    "plan with a hole over midnight": Fault(
        "start: 21:00\n    end: 07:00",
        "start: 23:00\n    end: 07:00",
        "plan.0.start",
        "a hole from 21:00 to 23:00",
        "24 h",
        "start: 23:00",
    ),
    "time of day that is none": Fault("start: 16:00", "start: 25:00", "plan.2.start", "25:00", "time of day"),
    "motoring without a speed": Fault(
        "    speed: 6 kn\n", "", "plan.2", "motoring without a speed", "7 kn", "start: 16:00"
    ),
    "a speed at anchor": Fault(
        "end: 16:00\n    doing: at anchor",
        "end: 16:00\n    speed: 3 kn\n    doing: at anchor",
        "plan.1.speed",
        "a speed at anchor",
        "motoring",
        "speed: 3 kn",
    ),
    "faster than the engine": Fault("speed: 6 kn", "speed: 11 kn", "plan.2.speed", "11 kn", "8.0 kn"),
    "a weather file that is not there": Fault(
        "weather: pvlib:12839.tm2",
        "weather: nowhere.epw",
        "place.weather",
        "no such file: nowhere.epw",
        "EPW",
    ),
    "a weather file that pvlib has not": Fault(
        "weather: pvlib:12839.tm2",
        "weather: pvlib:00000.tm2",
        "place.weather",
        "no weather file",
        "pvlib:12839.tm2",
    ),
    "a weather file outside pvlib's data": Fault(
        "weather: pvlib:12839.tm2",
        "weather: pvlib:../tools.py",
        "place.weather",
        "no weather file",
        "pvlib:12839.tm2",
    ),
    "neither weather nor design day": Fault(
        "  weather: pvlib:12839.tm2\n", "", "place", "neither", "one of weather and design_day", "place:"
    ),
    "both weather and design day": Fault(
        "weather: pvlib:12839.tm2",
        "weather: pvlib:12839.tm2\n  design_day: {highest_dry_bulb: 9 °C, daily_range: 8 K, dew_point: 4 °C}",
        "place",
        "both",
        "one of",
        "place:",
    ),
    "a day that is none": Fault("day: 17 July", "day: 32 July", "place.day", "32 July", "1 to 31"),
    "a month that is none": Fault("day: 17 July", "day: 17 Juli", "place.day", "17 Juli", "17 July"),
    "reserve over the charge at the start": Fault(
        "reserve: 20 %",
        "reserve: 50 %\n  charge_at_start: 40 %",
        "brief.reserve",
        "50 %",
        "less than the 40 %",
        "reserve: 50 %",
    ),
    "opening of an unknown cabin": Fault(
        "    cool:\n",
        "    ajar: {attic: 0.1 m2}\n    cool:\n",
        "plan.0.ajar.attic",
        "no cabin “attic”",
        "saloon",
        "ajar",
    ),
    "openings larger than the windows": Fault(
        "    cool:\n",
        "    ajar: {saloon: 1.1 m2}\n    cool:\n",
        "plan.0.ajar.saloon",
        '"1.1 m2"',
        "at most the 1.00 m² of windows and hatches in saloon",
        "ajar",
    ),
    "an opening where there is no window": Fault(
        "    cool:\n",
        "    ajar: {cabin: 0.1 m2}\n    cool:\n",
        "plan.0.ajar.cabin",
        '"0.1 m2"',
        "cabin has none",
        "ajar",
    ),
    "heating of an unknown cabin": Fault(
        "    cool:\n      cabin: 76 °F",
        "    heat:\n      attic: 66 °F",
        "plan.0.heat.attic",
        "no cabin “attic”",
        "cabin",
        "attic",
    ),
    "heating where there is no handler": Fault(
        "    cool:\n      cabin: 76 °F",
        "    heat:\n      saloon: 66 °F",
        "plan.0.heat.saloon",
        "heating in saloon, which has no air handler and no outlet of one",
        "cabin (main)",
        "saloon: 66 °F",
    ),
    "a cabin heated and cooled": Fault(
        "    cool:\n",
        "    heat: {cabin: 66 °F}\n    cool:\n",
        "plan.0.heat.cabin",
        "heating to 66 °F and cooling to 76 °F in cabin",
        "one of cool and heat",
        "heat:",
    ),
    "outlet into an unknown cabin": Fault(
        "{unit: air handler 6 kBtu/h, cabin: cabin}",
        "{unit: air handler 6 kBtu/h, cabin: cabin, outlets: {berth: {cabin: cabn}}}",
        "cooling.plant.handlers.main.outlets.berth.cabin",
        "no cabin “cabn”",
        "saloon, cabin",
    ),
    "thermostat in an unknown cabin": Fault(
        "{unit: air handler 6 kBtu/h, cabin: cabin}",
        "{unit: air handler 6 kBtu/h, cabin: cabin, thermostat: cabn}",
        "cooling.plant.handlers.main.thermostat",
        "no cabin “cabn”",
        "saloon, cabin",
    ),
    "outlets that take too little": Fault(
        "{unit: air handler 6 kBtu/h, cabin: cabin}",
        "{unit: air handler 6 kBtu/h, cabin: cabin, outlets: {a: {cabin: cabin, share: 50 %}, b: {cabin: saloon, "
        "share: 40 %}}}",
        "cooling.plant.handlers.main.outlets",
        "90 % of the air",
        "100 % together",
    ),
    "outlets that take too much": Fault(
        "{unit: air handler 6 kBtu/h, cabin: cabin}",
        "{unit: air handler 6 kBtu/h, cabin: cabin, outlets: {a: {cabin: cabin, share: 80 %}, b: {cabin: saloon, "
        "share: 40 %}}}",
        "cooling.plant.handlers.main.outlets",
        "120 % of the air",
        "100 % together",
    ),
    "an outlet that is left no air": Fault(
        "{unit: air handler 6 kBtu/h, cabin: cabin}",
        "{unit: air handler 6 kBtu/h, cabin: cabin, outlets: {a: {cabin: cabin, share: 100 %}, b: {cabin: saloon}}}",
        "cooling.plant.handlers.main.outlets",
        "and 1 more that are left none",
        "leave some air",
    ),
    "a duct with a fan that takes no power": Fault(
        "{unit: air handler 6 kBtu/h, cabin: cabin}",
        "{unit: {like: air handler 6 kBtu/h, fan_power: 0 W}, cabin: cabin}",
        "cooling.plant.handlers.main.unit",
        "a duct with no fan: air handler 6 kBtu/h has a fan_power of 0 W",
        "above 0",
    ),
    "a duct with a fan that gives no pressure": Fault(
        "{unit: air handler 6 kBtu/h, cabin: cabin}",
        "{unit: {like: air handler 6 kBtu/h, static_pressure: 0 Pa}, cabin: cabin, outlets: {a: {cabin: cabin}}}",
        "cooling.plant.handlers.main.outlets",
        "a duct with no fan: air handler 6 kBtu/h has a static_pressure of 0 Pa",
        "above 0",
    ),
    "unknown kind of duct": Fault(
        "{unit: air handler 6 kBtu/h, cabin: cabin}",
        "{unit: air handler 6 kBtu/h, cabin: cabin, outlets: {a: {cabin: cabin, duct: {kind: rigid duct}}}}",
        "cooling.plant.handlers.main.outlets.a.duct.kind",
        "no duct “rigid duct”, perhaps “smooth rigid duct”",
        "stretched flexible duct",
    ),
    "a fan coil in an unknown cabin": Fault(
        "  alternative:\n",
        "  chilled_water: {unit: chiller 16 kBtu/h, fan_coils: {a: {unit: air handler 6 kBtu/h, cabin: attic}}}\n"
        "  alternative:\n",
        "cooling.chilled_water.fan_coils.a.cabin",
        "no cabin “attic”",
        "saloon, cabin",
        "chilled_water",
    ),
    "an unknown chiller": Fault(
        "  alternative:\n",
        "  chilled_water: {unit: chiller 17 kBtu/h}\n  alternative:\n",
        "cooling.chilled_water.unit",
        "no chilled water unit “chiller 17 kBtu/h”",
        "chiller 16 kBtu/h",
        "chilled_water",
    ),
    "a chiller that would freeze": Fault(
        "  alternative:\n",
        "  chilled_water: {unit: {like: chiller 16 kBtu/h, supply_temperature: 4 °C}}\n  alternative:\n",
        "cooling.chilled_water.unit",
        "which evaporates at 0.0 °C",
        "at 1 °C or over it",
        "chilled_water",
    ),
    "an unknown refrigerant": Fault(
        "    unit: variable-speed 12 kBtu/h",
        "    unit: {like: variable-speed 12 kBtu/h, refrigerant: R22}",
        "cooling.plant.unit.refrigerant",
        "R22",
        "R410A, R32 or R134a",
    ),
    "a plant that condenses too coolly to heat": Fault(
        "    unit: variable-speed 12 kBtu/h",
        "    unit: {like: variable-speed 12 kBtu/h, lowest_heating_condensing: 30 °C}",
        "cooling.plant.unit.lowest_heating_condensing",
        "30 °C",
        "from 36 °C to 70 °C",
    ),
    "heating limits out of order": Fault(
        "    unit: variable-speed 12 kBtu/h",
        "    unit: {like: variable-speed 12 kBtu/h, highest_heating_condensing: 65 °C}",
        "cooling.plant.unit",
        "highest 65 °C condensing while it heats",
        "60 °C at which it protects itself",
    ),
    "a plant that may or may not reverse": Fault(
        "    unit: variable-speed 12 kBtu/h",
        "    unit: {like: variable-speed 12 kBtu/h, reversible: perhaps}",
        "cooling.plant.unit.reversible",
        '"perhaps"',
        "true or false",
    ),
    "seawater hotter than the map": Fault(
        "sea: Miami Beach", "sea: 45 °C", "place.sea", '"45 °C"', "from -2 °C to 40 °C, for which plants are computed"
    ),
    "seawater that is ice": Fault("sea: Miami Beach", "sea: -3 °C", "place.sea", '"-3 °C"', "from -2 °C to 40 °C"),
    "a month hotter than the map": Fault(
        "sea: Miami Beach",
        "sea: [20 °C, 20 °C, 20 °C, 20 °C, 20 °C, 20 °C, 41 °C, 20 °C, 20 °C, 20 °C, 20 °C, 20 °C]",
        "place.sea.temperatures.6",
        '"41 °C"',
        "from -2 °C to 40 °C",
    ),
    "a rating in seawater hotter than the map": Fault(
        "    unit: variable-speed 12 kBtu/h",
        "    unit: {like: variable-speed 12 kBtu/h, rated_sea: 44 °C}",
        "cooling.plant.unit.rated_sea",
        '"44 °C"',
        "from 0 °C to 40 °C",
    ),
    "an engine in an unknown cabin": Fault(
        "      engine: diesel 42 kW",
        "      engine: diesel 42 kW\n      cabin: engine rom",
        "charging.engines.engine.cabin",
        "no cabin “engine rom”",
        "saloon, cabin",
        "cabin: engine rom",
    ),
    "an inverter in an unknown cabin": Fault(
        "    unit: inverter 24 V 3 kW",
        "    unit: inverter 24 V 3 kW\n    cabin: attic",
        "ac.inverter.cabin",
        "no cabin “attic”",
        "saloon, cabin",
        "cabin: attic",
    ),
    "a charger in an unknown cabin": Fault(
        "    unit: charger 24 V 1.7 kW",
        "    unit: charger 24 V 1.7 kW\n    cabin: attic",
        "ac.charger.cabin",
        "no cabin “attic”",
        "saloon, cabin",
        "cabin: attic",
    ),
    "a transformer in an unknown cabin": Fault(
        "  inverter:\n",
        "  transformer: {unit: isolation transformer 2 kVA, cabin: attic}\n  inverter:\n",
        "ac.transformer.cabin",
        "no cabin “attic”",
        "saloon, cabin",
        "transformer",
    ),
    "a bank in an unknown cabin": Fault(
        "    parallel: 2",
        "    parallel: 2\n    cabin: attic",
        "dc.bank.cabin",
        "no cabin “attic”",
        "saloon",
        "cabin: attic",
    ),
    "a cover over a surface in the sea": Fault(
        "    windows: {}",
        "    windows: {}\n    surfaces: {bottom: {cover: awning}}",
        "cabins.cabin.surfaces.bottom.cover",
        "a cover over a surface with sea outside",
        "air outside",
        "bottom:",
    ),
    "an unknown blind": Fault(
        "        count: 2",
        "        count: 2\n        blind: plain curtin",
        "cabins.saloon.windows.port windows.blind",
        "perhaps “plain curtain”",
        "reflective blind",
        "blind:",
    ),
    "a name with a full stop": Fault("  cabin:\n", "  cab.in:\n", "cabins.cab.in", "cab.in", "without a full stop"),
    "a later version of the file's shape": Fault("anchorwatt: 1", "anchorwatt: 2", "anchorwatt", "2", "1"),
}


@pytest.mark.parametrize("fault", [pytest.param(fault, id=name) for name, fault in FAULTS.items()])
def test_a_fault_is_told_with_file_line_key_found_and_allowed(fault: Fault) -> None:
    text = changed(fault.old, fault.new)
    told = problems_of(text)
    match = [problem for problem in told if problem.key == fault.key and fault.found in problem.found]
    assert match, "\n".join(map(str, told))
    problem = match[0]
    assert problem.file == "boat.yaml"
    assert problem.line == line_of(text, fault.at or fault.new.strip("\n"))
    assert fault.allowed in problem.allowed
    assert str(problem).startswith(f"boat.yaml:{problem.line}: {fault.key}: found {problem.found}; allowed: ")


def test_an_engine_whose_curve_lies_below_the_propeller_that_nobody_typed_is_refused() -> None:
    curve = "engine: {like: diesel 42 kW, curve_speeds: [20 %, 100 %], curve_powers: [10 %, 80 %]}"
    (problem,) = problems_of(changed("engine: diesel 42 kW", curve))
    assert problem.key == "charging.engines.engine.propeller_power"
    assert problem.found == "an estimated 39.9 kW at rated speed, over the engine's own curve"
    assert problem.allowed.startswith("at most the 33.6 kW")


def test_the_sample_itself_is_sound() -> None:
    assert design.parse(SAMPLE).name == "Sample"


def test_all_faults_are_told_in_one_go_in_the_order_of_the_file() -> None:
    text = SAMPLE
    for old, new in (
        ("length: 12 m", "length: 12"),
        ("floor_area: 7 m2", "floor_area: -7 m2"),
        ("between: [saloon, cabin]", "between: [saloon, cabbin]"),
        ("series: 2", "series: 1"),
        ("start: 16:00", "start: 17:00"),
        ("hold: 10 h", "hold: 10 h\n  hodl: 11 h"),
    ):
        text = text.replace(old, new)
    told = problems_of(text)
    assert [problem.key for problem in told] == [
        "boat.length",
        "cabins.cabin.floor_area",
        "neighbours.0.between.1",
        "dc.bank.series",
        "plan.2.start",
        "brief.hodl",
    ]


def test_a_fault_in_one_section_does_not_hide_one_in_another_that_needs_it() -> None:
    text = changed("speed: 6 kn", "speed: 11 kn").replace("hold: 10 h", "hold: ten hours")
    assert [problem.key for problem in problems_of(text)] == ["plan.2.speed", "brief.hold"]


def test_a_design_day_needs_its_place(tmp_path: Path) -> None:
    day = "design_day: {highest_dry_bulb: 33 °C, daily_range: 8 K, dew_point: 24 °C}"
    told = problems_of(changed("weather: pvlib:12839.tm2", day))
    assert "latitude, longitude" in told[0].found


def test_a_dew_point_over_the_air_is_refused() -> None:
    day = "design_day: {highest_dry_bulb: 30 °C, daily_range: 8 K, dew_point: 31 °C}"
    day += "\n  latitude: 25° N\n  longitude: 80° W"
    told = problems_of(changed("weather: pvlib:12839.tm2", day))
    assert (told[0].key, told[0].allowed) == ("place.design_day.dew_point", "at most the air's 30 °C")


def test_a_weather_file_is_sought_beside_the_design_file(tmp_path: Path) -> None:
    (tmp_path / "night.epw").write_text("anything: climate reads it")
    path = tmp_path / "boat.yaml"
    path.write_text(changed("weather: pvlib:12839.tm2", "weather: night.epw"), encoding="utf-8")
    made = design.specify(design.read(path))
    assert made.place.weather_file == str(tmp_path / "night.epw")


@settings(max_examples=150, deadline=None)
@given(st.text(max_size=300))
def test_any_text_is_read_or_refused(text: str) -> None:
    with pytest.raises(BadDesign):
        design.parse(text)


@settings(max_examples=40, deadline=None)
@given(st.integers(0, len(SAMPLE) - 1), st.sampled_from("\t:{}[]&*!|>'\"%@`#-,?\0\x07é0"))
def test_a_spoilt_character_never_ends_in_another_error(place: int, character: str) -> None:
    text = SAMPLE[:place] + character + SAMPLE[place + 1 :]
    assert all(problem.line is not None and problem.found for problem in problems_or_none(text))


@pytest.mark.parametrize(
    ("old", "new", "key"),
    [
        pytest.param("beam: 4 m", "beem: 4 m", "boat.beem", id="a misspelt key that must be there"),
        pytest.param(
            "{unit: air handler 6 kBtu/h, cabin: cabin}",
            "{unit: air handler 6 kBtu/h, cabin: cabbin}",
            "cooling.plant.handlers.main.cabin",
            id="a handler in no cabin",
        ),
        pytest.param(
            "      main: {unit: air handler 6 kBtu/h, cabin: cabin}",
            "      {}",
            "cooling.plant.handlers",
            id="no handlers",
        ),
    ],
)
def test_one_slip_is_told_once(old: str, new: str, key: str) -> None:
    assert [problem.key for problem in problems_of(changed(old, new))] == [key]


def test_a_file_without_cabins_is_told_so_once() -> None:
    start, end = SAMPLE.index("cabins:\n"), SAMPLE.index("neighbours:\n")
    told = problems_of(SAMPLE[:start] + "cabins: {}\n" + SAMPLE[end:])
    assert [problem.key for problem in told] == ["cabins"]


def test_a_missing_key_stays_told_beside_an_unknown_one_that_is_spelt_otherwise() -> None:
    told = problems_of(changed("beam: 4 m", "colour: red"))
    assert {problem.key for problem in told} == {"boat.beam", "boat.colour"}


def test_shore_power_needs_a_shore_service() -> None:
    text = changed("    end: 16:00\n    doing: at anchor", "    end: 16:00\n    doing: on shore power")
    (problem,) = problems_of(text)
    assert (problem.key, problem.line) == ("plan.1.doing", line_of(text, "on shore power"))
    assert "without a shore service" in problem.found
    assert "ac.shore" in problem.allowed
    design.parse(text.replace("ac:\n", "ac:\n  shore: 120/240 V 50 A\n", 1))


def test_limits_are_told_as_figures() -> None:
    (name,) = problems_of(changed("name: Sample", "name: " + "Sample " * 200))
    assert name.allowed.startswith("a text of at most ")
    (reserve,) = problems_of(changed("reserve: 20 %", "reserve: 70 %\n  charge_at_start: 50 %"))
    assert reserve.allowed == "less than the 50 % at the start"


def test_sides_that_were_left_out_are_on_the_list_of_estimates() -> None:
    def noted(text: str) -> list[str]:
        return [one.key for one in design.specify(design.parse(text)).estimates if one.key.endswith(".sides")]

    left_out = SAMPLE.replace(
        "    floor_area: 7 m2 # with the berth\n    sides: [port, starboard]\n", "    floor_area: 7 m2\n"
    )
    assert noted(SAMPLE) == []
    assert noted(left_out) == ["cabins.cabin.sides"]


def test_heating_needs_a_plant_that_reverses() -> None:
    still = changed("unit: variable-speed 12 kBtu/h", "unit: {like: variable-speed 12 kBtu/h, reversible: false}")
    warm = still.replace("    cool:\n      cabin: 76 °F", "    heat:\n      cabin: 66 °F")
    design.parse(still)
    (problem,) = problems_of(warm)
    assert (problem.key, problem.line) == ("plan.0.heat", line_of(warm, "heat:"))
    assert problem.found == "heating by variable-speed 12 kBtu/h, which does not reverse"
    assert "reversible" in problem.allowed


def test_one_period_does_not_heat_one_cabin_and_cool_another() -> None:
    handler = "main: {unit: air handler 6 kBtu/h, cabin: cabin}"
    text = changed(handler, f"{handler}\n      aft: {{unit: air handler 6 kBtu/h, cabin: saloon}}")
    text = text.replace("    cool:\n", "    heat: {saloon: 66 °F}\n    cool:\n")
    (problem,) = problems_of(text)
    assert (problem.key, problem.line) == ("plan.0.heat", line_of(text, "heat:"))
    assert "heating and cooling in one period" in problem.found


TWO_OUTLETS = "main: {unit: air handler 6 kBtu/h, cabin: cabin, outlets: {a: {cabin: cabin}, b: {cabin: saloon}}}"


def test_a_cabin_that_follows_another_ones_thermostat_is_not_cooled_alone() -> None:
    text = changed("main: {unit: air handler 6 kBtu/h, cabin: cabin}", TWO_OUTLETS)
    alone = text.replace("      cabin: 76 °F", "      saloon: 76 °F")
    (problem,) = problems_of(alone)
    assert (problem.key, problem.line) == ("plan.0.cool.saloon", line_of(alone, "saloon: 76 °F"))
    assert problem.found == "cool in saloon, which follows the thermostat of cabin, without cool there"
    assert problem.allowed == "cool in cabin as well, which calls handler main"


def test_a_cabin_that_follows_another_ones_thermostat_is_noted() -> None:
    text = changed("main: {unit: air handler 6 kBtu/h, cabin: cabin}", TWO_OUTLETS)
    both = text.replace("      cabin: 76 °F", "      cabin: 76 °F\n      saloon: 76 °F")
    notes = {one.key: one for one in design.specify(design.parse(both)).estimates}
    note = notes["cooling.plant.handlers.main.thermostat"]
    assert note.value == "cabin"
    assert "saloon has no thermostat of its own and follows the thermostat of cabin" in note.rule
    told = {one.key for one in design.specify(design.parse(text)).estimates}
    assert "cooling.plant.handlers.main.thermostat" not in told
    typed = both.replace("cabin: cabin, outlets", "cabin: cabin, thermostat: cabin, outlets")
    told = {one.key for one in design.specify(design.parse(typed)).estimates}
    assert "cooling.plant.handlers.main.thermostat" not in told


def test_a_refused_change_leaves_design_and_file_as_they_were(tmp_path: Path) -> None:
    path = tmp_path / "boat.yaml"
    path.write_text(SAMPLE, encoding="utf-8")
    read = design.read(path)
    with pytest.raises(BadDesign, match=r"no cabin “attic”"):
        design.edit(read, "plan.0.ajar", {"attic": "0.2 m2"})
    assert read == design.parse(SAMPLE)
    assert path.read_text(encoding="utf-8") == SAMPLE
    assert list(tmp_path.iterdir()) == [path]
