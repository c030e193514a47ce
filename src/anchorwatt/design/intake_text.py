"""From an intake and what was chosen for it to the text of a first design file.

Only what a design file must say stands in it. Whatever the program estimates by itself is left out, so that every
estimate stays marked as one; what the intake chose says so, with its reason.
"""

from __future__ import annotations

import json
import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from itertools import pairwise

from anchorwatt.catalogue.alternator import Alternator
from anchorwatt.catalogue.battery_module import BatteryModule
from anchorwatt.catalogue.belt import Belt
from anchorwatt.catalogue.charger import Charger
from anchorwatt.catalogue.condensing_unit import CondensingUnit
from anchorwatt.catalogue.engine import Engine
from anchorwatt.catalogue.inverter import Inverter
from anchorwatt.catalogue.part import rows, typed
from anchorwatt.catalogue.shore_service import ShoreService
from anchorwatt.design.climates import CLIMATES
from anchorwatt.design.intake import CHOOSE, NO_SHORE, Intake
from anchorwatt.design.intake_layout import Room
from anchorwatt.units import System, show

NIGHT_START = 22  # h
SHORTEST_NIGHT, LONGEST_NIGHT = 8, 12  # h of the plan that people sleep
ENGINES_OFF = 20  # h, by which engines have charged on a day at anchor
EVENING = 26.0  # °C by day and in the evening, in cabins that are not slept in
FRESH_AIR = 0.007  # m3/s a person: codes for large yachts ask for 25 m³/h, from memory
CHARGE_AT_START, RESERVE = 0.95, 0.20
STEP_UP = "step-up transformer 5 kVA"
ROTOR_SPEED = 7500.0  # rpm of the rotor at rated engine speed. From memory.
RPM = 0.10471975511965977  # rad/s
ENGINE_BATTERY = {12: "dc-dc 12 to 12 V 18 A", 24: "dc-dc 24 to 12 V 20 A", 48: "dc-dc 48 to 12 V 20 A"}
HULLS = {1: "balsa-cored with headliner", 2: "foam-cored with headliner"}
COOK, SIT = ("galley", "saloon", "pilothouse"), ("saloon", "pilothouse", "galley")
BY_INTAKE = "chosen by the intake"


@dataclass(frozen=True)
class Served:
    """The air handlers of a cabin, all of one kind."""

    cabin: str
    unit: str
    count: int
    why: str


@dataclass(frozen=True)
class Chosen:
    """Sizes of what is installed, by their names in the catalogue."""

    plant: str
    handlers: tuple[Served, ...]
    voltage: int  # V nominal of the bank
    inverter: str
    inverters: int
    module: str
    series: int
    parallel: int
    alternators: tuple[str, ...]  # on each engine
    belt: str  # of each of them
    charger: str  # "" = none
    why: Mapping[str, str] = field(default_factory=dict)  # by plant, voltage, inverter, bank, alternators


def aboard(intake: Intake) -> tuple[int, int]:
    """Voltage and frequency of shore and inverter."""
    if intake.shore == NO_SHORE:
        return 230, 50
    service = typed(ShoreService, intake.shore)
    frequency = 50.0 if service.frequency is None else float(service.frequency)
    return round(float(service.voltage)), round(frequency)


def cooled_ever(intake: Intake) -> tuple[str, ...]:
    """Cabins that have an air handler: those of the night, and the saloon for the evening."""
    return tuple(room.name for room in intake.rooms if room.name in intake.cooled_by_night or room.use == "saloon")


def inverters_of(voltage: int) -> list[Inverter]:
    """Inverters for a bank, the smallest first."""
    found = [one for one in rows("inverter").values() if isinstance(one, Inverter)]
    return sorted((one for one in found if round(float(one.input_voltage)) == voltage), key=_rated)


def _rated(one: Inverter) -> float:
    return float(one.rated_power)


def alternators_of(voltage: int) -> list[Alternator]:
    """Alternators for a bank, the weakest first."""
    found = [one for one in rows("alternator").values() if isinstance(one, Alternator)]
    fitting = [one for one in found if 1.0 < float(one.voltage) / voltage < 1.3]
    return sorted(fitting, key=lambda one: float(one.rated_current))


def modules_of(voltage: int) -> list[tuple[BatteryModule, int]]:
    """Battery modules that make a voltage, with how many in series; the smallest string first."""
    found = []
    for one in rows("battery_module").values():
        if isinstance(one, BatteryModule):
            series = round(voltage / float(one.nominal_voltage))
            made = series * float(one.nominal_voltage)
            if 1 <= series <= one.highest_series and abs(made / voltage - 1.0) < 0.1:
                found.append((one, series))
    return sorted(found, key=lambda pair: pair[1] * float(pair[0].nominal_voltage) * float(pair[0].capacity))


def belts_for(alternator: Alternator) -> list[str]:
    """Belts that carry an alternator at its rated current, the smallest first; the largest where none does."""
    power = float(alternator.rated_current) * float(alternator.voltage) / float(alternator.efficiency)
    belts = sorted((one for one in rows("belt").values() if isinstance(one, Belt)), key=lambda one: float(one.power))
    return [one.name for one in belts if float(one.power) >= power] or [belts[-1].name]


def charger_for(intake: Intake, voltage: int, most: float) -> str:
    """The largest charger of a voltage that gives no more than `most` A and takes the shore's volts; "" = none."""
    found = [one for one in rows("charger").values() if isinstance(one, Charger)]
    fitting = [
        one
        for one in found
        if round(float(one.output_voltage)) == voltage
        and float(one.rated_power) / float(one.output_voltage) <= most
        and (one.voltage_range is None or one.voltage_range[0] <= aboard(intake)[0] <= one.voltage_range[1])
    ]
    if intake.shore == NO_SHORE or not fitting:
        return ""
    return max(fitting, key=lambda one: float(one.rated_power)).name


def guessed(intake: Intake) -> Chosen:
    """Sizes by no more than the size of the boat, to begin with; nothing is computed for them."""
    voltage = 24 if intake.voltage == CHOOSE else int(intake.voltage.split()[0])
    floors = {room.name: room for room in intake.rooms}
    handlers = tuple(
        Served(
            name, "air handler 6 kBtu/h" if floors[name].use == "sleeping" else "air handler 16 kBtu/h", 1, "guessed"
        )
        for name in cooled_ever(intake)
    )
    module, series = modules_of(voltage)[-1]
    alternator = alternators_of(voltage)[-1]
    return Chosen(
        plant="variable-speed 24 kBtu/h",
        handlers=handlers,
        voltage=voltage,
        inverter=inverters_of(voltage)[-1].name,
        inverters=1,
        module=module.name,
        series=series,
        parallel=2,
        alternators=(alternator.name,),
        belt=belts_for(alternator)[0],
        charger=charger_for(intake, voltage, 2.0 * float(module.charge_current)),
    )


def design_text(intake: Intake, chosen: Chosen, remarks: Sequence[str] = ()) -> str:
    """The text of a design file; `remarks` are sentences that stand at its head."""
    parts = (
        _head(intake, remarks),
        _boat(intake),
        _place(intake),
        _cabins(intake),
        _neighbours(intake),
        _cooling(chosen),
        _ac(intake, chosen),
        _dc(intake, chosen),
        _charging(intake, chosen),
        "wiring: {regime: ABYC E-11} # chosen by the intake: the shore service is North American\n"
        if aboard(intake)[1] == 60
        else "",
        _plan(intake),
        _brief(intake),
        _week(intake),
    )
    return "\n".join(part for part in parts if part)


_PLAIN = re.compile(r"[A-Za-z0-9][A-Za-z0-9 .°/%²]*")
_SAID = ("true", "false", "yes", "no", "on", "off", "null")  # plain words that YAML takes for something else


def _quoted(words: str) -> str:
    """A text as a YAML value, in quotes where it might be taken for something else."""
    plain = _PLAIN.fullmatch(words) and words.strip()[:1].isalnum() and words == words.strip()
    if plain and words.lower() not in _SAID and not words.replace(".", "").isdecimal():
        return words
    return json.dumps(words, ensure_ascii=False)


def _system(intake: Intake) -> System:
    return "us" if intake.length.unit in ("ft", "in") else "si"


def _comment(words: str) -> str:
    return "".join(sign if sign.isprintable() else " " for sign in words)


def _head(intake: Intake, remarks: Sequence[str]) -> str:
    told = "".join(["#\n", *(f"# - {_comment(one)}\n" for one in remarks)]) if remarks else ""
    return (
        "# A first design, made from a short intake. Change it freely: comments, order and units stay as you write\n"
        "# them. What was asked for stands as it was typed. What the intake chose says so. Everything that is not\n"
        "# here is estimated by the program and marked as such wherever it is shown: measure it, and type it in.\n"
        f"{told}\n"
        f"anchorwatt: 1\nname: {_quoted(intake.name)}\n"
        "about: A first design from a short intake, nothing of it measured.\n"
    )


def _boat(intake: Intake) -> str:
    system = _system(intake)
    beam = (
        f"{show(intake.beam_used, 'length', system)} # estimated by the intake: common practice, no source"
        if intake.beam is None
        else intake.beam.text
    )
    hull = HULLS[2 if intake.form == "catamaran" else 1]
    return (
        f"boat:\n  length: {_quoted(intake.length.text)}\n"
        f"  beam: {beam if intake.beam is None else _quoted(beam)}\n  form: {intake.form}\n"
        f"  hull: {hull} # {BY_INTAKE}: usual for such a boat, from memory\n"
    )


def _place(intake: Intake) -> str:
    climate = CLIMATES[intake.climate]
    lines = "".join(f"  {line}\n" for line in climate.section.splitlines())
    return f"place: # {climate.name}: {climate.source}\n{lines}"


def _cabins(intake: Intake) -> str:
    system = _system(intake)
    text = "cabins: # from the bow aft; floors are shares of the hull, from memory\n"
    for room in intake.rooms:
        sides = f"    sides: [{', '.join(room.sides)}] # {BY_INTAKE}\n" if room.sides is not None else ""
        covered = f"    open_deck: 0 % # {BY_INTAKE}: the deckhouse stands over it\n" if room.covered else ""
        air = (
            f"    fresh_air_per_person: {show(FRESH_AIR, 'volume flow', system)} # {BY_INTAKE}\n"
            f"    fresh_air_recovery: 70 % # {BY_INTAKE}: by an exchanger that takes back heat and moisture\n"
            if room.name in _slept_in(intake)
            else ""
        )
        text += (
            f"  {room.name}:\n    use: {room.use}\n    deck: {room.deck}\n"
            f"    floor_area: {show(room.floor, 'area', system)} # {BY_INTAKE}\n{sides}{covered}{air}"
        )
    return text


def _neighbours(intake: Intake) -> str:
    there = intake.rooms
    by_use: dict[str, list[Room]] = {}
    for room in there:
        by_use.setdefault(room.use, []).append(room)
    sleeping, heads = by_use.get("sleeping", []), by_use.get("head", [])
    step = 2 if intake.form == "catamaran" else 1  # port and starboard in turn: a cabin's neighbour is in its hull
    pairs = [
        f"between: [{one.name}, {next_one.name}], door: closed"
        for one, next_one in zip(sleeping, sleeping[step:], strict=False)
    ]
    pairs += [
        f"between: [{cabin.name}, {head.name}], door: closed" for cabin, head in zip(sleeping, heads, strict=False)
    ]
    living = [room for use in ("pilothouse", "galley", "saloon") for room in by_use.get(use, [])]
    pairs += [
        f"between: [{one.name}, {other.name}]{', door: open' if one.deck == other.deck else ''}"
        for one, other in pairwise(living)
    ]
    machinery = by_use["machinery"]
    beside = [*sleeping[-len(machinery) :], *([living[-1]] * (len(machinery) == 1) if living else [])]
    for number, room in enumerate(beside):
        engine_room = machinery[number % len(machinery)]
        pairs.append(f"between: [{room.name}, {engine_room.name}], through: insulated engine bulkhead, door: none")
    if not pairs:
        return ""
    return f"neighbours: # {BY_INTAKE}\n" + "".join(f"  - {{{pair}}}\n" for pair in pairs)


def _cooling(chosen: Chosen) -> str:
    text = (
        "cooling:\n  plant:\n"
        f"    unit: {chosen.plant} # {BY_INTAKE}: {_comment(chosen.why.get('plant', 'guessed'))}\n    handlers:\n"
    )
    for served in chosen.handlers:
        for number in range(1, served.count + 1):
            name = served.cabin if served.count == 1 else f"{served.cabin} handler {number}"
            reason = _comment(served.why)
            text += f"      {name}: {{unit: {served.unit}, cabin: {served.cabin}}} # {BY_INTAKE}: {reason}\n"
    return text


def stepped_up(intake: Intake, chosen: Chosen) -> bool:
    """Whether the plant wants more volts than there are aboard."""
    accepts = typed(CondensingUnit, chosen.plant).voltage_range
    return accepts is not None and aboard(intake)[0] < float(accepts[0])


def _ac(intake: Intake, chosen: Chosen) -> str:
    volts, hertz = aboard(intake)
    ashore = intake.shore != NO_SHORE
    stands = _engine_room(intake)
    text = "ac:\n"
    if ashore:
        text += f"  shore: {intake.shore}\n"
    if chosen.charger:
        text += (
            f"  charger: {{unit: {chosen.charger}, cabin: {stands}}} # {BY_INTAKE}: the largest that the bank takes\n"
        )
    fed = volts
    if stepped_up(intake, chosen):
        fed = 2 * volts
        text += f"  transformer: {{unit: {STEP_UP}, cabin: {stands}}} # {BY_INTAKE}: the plant needs {fed} V\n"
    several = f"count: {chosen.inverters}, " if chosen.inverters > 1 else ""
    text += (
        f"  inverter: {{unit: {chosen.inverter}, {several}cabin: {stands}, output_voltage: {volts} V, "
        f"output_frequency: {hertz} Hz}} # {BY_INTAKE}: {_comment(chosen.why.get('inverter', 'guessed'))}\n"
    )
    lived, sit = _lived_in(intake, COOK), _lived_in(intake, SIT)
    if lived is None:
        return text
    accepts = (
        f"voltage_range: [{fed * 9 // 10} V, {fed * 11 // 10} V], frequency_range: [{hertz - 3} Hz, {hertz + 3} Hz]"
    )
    return text + (
        f"  loads: # {BY_INTAKE}: what is bought for the supply aboard\n"
        f"    galley sockets: {{appliance: {{like: galley sockets, {accepts}}}, cabin: {lived}}}\n"
        f"    induction hob: {{appliance: {{like: induction hob, {accepts}}}, cabin: {lived}}}\n"
        f"    television and chargers: {{appliance: television and chargers, cabin: {sit}}}\n"
    )


def _dc(intake: Intake, chosen: Chosen) -> str:
    stands, lived = _engine_room(intake), _lived_in(intake, COOK)
    first = intake.rooms[0].name
    slept_in = _slept_in(intake)
    keep = f"    refrigerator: {{appliance: refrigerator and freezer, cabin: {lived}}}\n" if lived is not None else ""
    return (
        f"dc:\n  nominal_voltage: {chosen.voltage} V # {_voltage_words(intake, chosen)}\n"
        f"  bank: {{module: {chosen.module}, series: {chosen.series}, parallel: {chosen.parallel}, "
        f"cabin: {_bank_cabin(intake)}}} "
        f"# {BY_INTAKE}: {_comment(chosen.why.get('bank', 'guessed'))}\n"
        f"  engine_battery: {{unit: {ENGINE_BATTERY[chosen.voltage]}, cabin: {stands}}} # {BY_INTAKE}\n"
        f"  loads: # {BY_INTAKE}: what such a boat usually has\n{keep}"
        f"    lights: {{appliance: cabin lights, cabin: {_lived_in(intake, SIT) or first}}}\n"
        "    anchor light: {appliance: anchor light}\n"
        "    monitors: {appliance: gas and bilge monitors}\n"
        "    water pump: {appliance: water pump}\n"
        f"    fresh-air exchangers: {{appliance: fresh-air exchanger, cabin: {slept_in[0]}, "
        f"count: {len(slept_in)}}}\n"
    )


def _voltage_words(intake: Intake, chosen: Chosen) -> str:
    if intake.voltage != CHOOSE:
        return "as asked for"
    return f"{BY_INTAKE}: {_comment(chosen.why.get('voltage', 'guessed'))}"


def _charging(intake: Intake, chosen: Chosen) -> str:
    engine = typed(Engine, intake.engine)
    ratio = round(ROTOR_SPEED * RPM / float(engine.rated_speed), 1)
    machinery = [room.name for room in intake.rooms if room.use == "machinery"]
    names = ("main engine",) if intake.engines == 1 else ("port engine", "starboard engine")
    text = "charging:\n  engines:\n"
    for number, name in enumerate(names):
        prefix = "" if len(names) == 1 else f"{name.split()[0]} "
        text += f"    {name}:\n      engine: {intake.engine}\n      cabin: {machinery[number % len(machinery)]}\n"
        text += f"      alternators: # {BY_INTAKE}: {_comment(chosen.why.get('alternators', 'guessed'))}\n"
        for count, alternator in enumerate(chosen.alternators, 1):
            text += (
                f"        {prefix}alternator {count}: {{alternator: {alternator}, "
                f"belt: {chosen.belt}, pulley_ratio: {ratio:g}}}\n"
            )
    return text


def night_hours(intake: Intake) -> int:
    """Hours of the plan that people sleep."""
    return max(SHORTEST_NIGHT, min(LONGEST_NIGHT, -int(-float(intake.hold) // 3600)))


def _plan(intake: Intake) -> str:
    by_night = intake.cooled_by_night
    wished = _quoted(intake.temperature.text)
    beds = _slept_in(intake)
    lived, cook = _lived_in(intake, SIT), intake.saloon or intake.galley
    awake = 2 * len(beds)
    dawn = (NIGHT_START + night_hours(intake)) % 24
    morning = dawn + 2
    saloon = [room.name for room in intake.rooms if room.use == "saloon"]
    evening = dict.fromkeys(saloon, show(EVENING, "temperature", _system(intake)))
    evening |= dict.fromkeys(by_night, wished)
    loads = lived is not None
    social = lived or by_night[0]
    night_loads = "lights: 5 %, anchor light: 100 %" + (", television and chargers: 5 %" if loads else "")
    morning_loads = "lights: 0 %, anchor light: 0 %" + (", galley sockets: 15 %, induction hob: 10 %" if loads else "")
    evening_loads = "lights: 80 %, anchor light: 100 %" + (
        ", television and chargers: 40 %, induction hob: 20 %, galley sockets: 5 %" if loads and cook else ""
    )
    return (
        f"plan: # {BY_INTAKE}: two people a cabin, ashore by day; no passage, so that engines charge at anchor\n"
        f"  - start: {NIGHT_START}:00\n    end: {dawn:02}:00\n    doing: at anchor\n"
        f"    cool: {_mapping(dict.fromkeys(by_night, wished))}\n    people:\n"
        + "".join(f"      - {{cabin: {name}, count: 2, doing: asleep}}\n" for name in beds)
        + f"    running: {{{night_loads}}}\n"
        f"  - start: {dawn:02}:00\n    end: {morning:02}:00\n    doing: at anchor\n"
        f"    people:\n      - {{cabin: {social}, count: {awake}, doing: light activity}}\n"
        f"    running: {{{morning_loads}}}\n"
        f"  - start: {morning:02}:00\n    end: 18:00\n    doing: at anchor\n"
        "    running: {lights: 0 %, anchor light: 0 %}\n"
        f"  - start: 18:00\n    end: {NIGHT_START}:00\n    doing: at anchor\n"
        f"    cool: {_mapping(evening)}\n"
        f"    people:\n      - {{cabin: {social}, count: {awake}, doing: light activity}}\n"
        f"    running: {{{evening_loads}}}\n"
    )


def _mapping(said: Mapping[str, str]) -> str:
    return "{" + ", ".join(f"{key}: {value}" for key, value in said.items()) + "}"


def _brief(intake: Intake) -> str:
    limits = ""
    if intake.mass_limit is not None:
        limits += f"  mass_limit: {_quoted(intake.mass_limit.text)}\n"
    if intake.price_limit is not None:
        limits += f"  price_limit: {_quoted(str(intake.price_limit))}\n"
    return (
        f"brief:\n  hold: {_quoted(intake.hold.text)}\n  night_start: {NIGHT_START}:00 # {BY_INTAKE}\n"
        f"  charge_at_start: {CHARGE_AT_START:.0%} # {BY_INTAKE}: the last few per cent charge slowly\n"
        f"  reserve: {RESERVE:.0%} # {BY_INTAKE}: usual, from memory\n"
        f"  recharge: {_quoted(intake.recharge.text)}\n{limits}"
    )


def _week(intake: Intake) -> str:
    start = show(ENGINES_OFF * 3600.0 - float(intake.recharge), "clock time", "si")
    day = f"  - {{doing: by the plan, charging: {_quoted(intake.recharge.text)}, start: {start}}}\n"
    return (
        f"week: # {BY_INTAKE}: the hours of engine that were allowed, each afternoon until {ENGINES_OFF}:00\n{7 * day}"
    )


def _engine_room(intake: Intake) -> str:
    return next(room.name for room in intake.rooms if room.use == "machinery")


def _slept_in(intake: Intake) -> list[str]:
    """The sleeping cabins; without any, the first cabin that is cooled by night."""
    return [room.name for room in intake.rooms if room.use == "sleeping"] or [intake.cooled_by_night[0]]


def _bank_cabin(intake: Intake) -> str:
    """Out of the engine space: under a settee, else under the aftermost berth."""
    sleeping = [room.name for room in intake.rooms if room.use == "sleeping"]
    return next((room.name for room in intake.rooms if room.use == "saloon"), (sleeping or [intake.rooms[0].name])[-1])


def _lived_in(intake: Intake, uses: tuple[str, ...]) -> str | None:
    """The first room of those uses; None on a boat of sleeping cabins only."""
    there = {room.use: room.name for room in intake.rooms}
    return next((there[use] for use in uses if use in there), None)
