"""Hypothesis strategies for valid designs, from the smallest to large ones.

`designs()` draws what a file would say, as plain mappings; `as_text` writes it as YAML. Other rooms' tests
import both: ``from tests.design.strategies import as_text, designs``.
"""

from __future__ import annotations

import io
import itertools
from collections.abc import Callable
from typing import Any

from hypothesis import strategies as st
from ruamel.yaml import YAML

from anchorwatt import catalogue
from anchorwatt.design.cabins import Use

Draw = Callable[[st.SearchStrategy[Any]], Any]

USES: tuple[str, ...] = Use.__args__  # type: ignore[attr-defined]
SIDES = ("port", "starboard", "ahead", "astern")
FORMS = catalogue.names("hull_form")


def as_text(design: dict[str, Any]) -> str:
    """A design as the text of a file."""
    stream = io.StringIO()
    writer = YAML(typ="safe", pure=True)
    writer.width = 10_000  # it would break keys over lines, which no reader takes
    writer.sort_base_mapping_type_on_output = False  # type: ignore[assignment]
    writer.representer.ignore_aliases = lambda _: True
    writer.dump(design, stream)
    return stream.getvalue()


@st.composite
def designs(draw: Draw, most_cabins: int = 6, real_weather: bool = False) -> dict[str, Any]:
    """A design that passes every check."""
    length = draw(st.integers(8, 24))
    cabins = {f"cabin {number}": draw(_cabins()) for number in range(draw(st.integers(1, most_cabins)))}
    names = list(cabins)
    cooled = draw(st.lists(st.sampled_from(names), min_size=1, max_size=len(names), unique=True))
    volts = draw(st.sampled_from([12, 24, 48]))
    ac_loads = draw(_loads("AC", ("galley sockets", "television and chargers", "water heater"), names))
    dc_loads = draw(_loads("DC", ("refrigerator", "cabin lights", "anchor light", "instruments"), names))
    engines = draw(_engines(volts, names))
    ac = draw(_ac(volts, ac_loads, names))
    cooling = draw(_cooling(cooled, names))
    hatches = [name for name, cabin in cabins.items() if cabin.get("windows")]
    return {
        "anchorwatt": 1,
        "name": "drawn",
        "boat": draw(_boats(length)),
        "place": draw(_places(real_weather)),
        "cabins": cabins,
        "neighbours": draw(_neighbours(names)),
        "cooling": cooling,
        "ac": ac,
        "dc": draw(_dc(volts, dc_loads, names)),
        "charging": {"engines": engines},
        "plan": draw(_plans(names, cooling["plant"]["handlers"], hatches, [*ac_loads, *dc_loads], "shore" in ac)),
        "brief": draw(_briefs()),
        "places": draw(_standing(length)),
        "spaces": draw(_spaces(names)),
        "wiring": draw(_wiring()),
        "installation": draw(_installation()),
    }


def _installation() -> st.SearchStrategy[dict[str, Any]]:
    """What somebody vouches for: some of it, none, or all."""
    said = {key: st.booleans() for key in ("earth_fault_device", "neutral_bond", "battery_switch", "warning")}
    return st.fixed_dictionaries({}, optional={**said, "battery_movement": _number(0.0, 100.0, "mm", 0)})


def _maybe(draw: Draw, holds: dict[str, Any], key: str, value: st.SearchStrategy[Any]) -> None:
    if draw(st.booleans()):
        holds[key] = draw(value)


def _number(low: float, high: float, unit: str, digits: int = 2) -> st.SearchStrategy[str]:
    return st.floats(low, high).map(lambda value: f"{value:.{digits}f} {unit}".strip())


@st.composite
def _boats(draw: Draw, length: int) -> dict[str, Any]:
    boat: dict[str, Any] = {
        "length": draw(st.sampled_from([f"{length} m", f"{length * 3} ft 4 in"])),
        "beam": f"{length / draw(st.integers(2, 4)):.2f} m",
        "hull": draw(st.sampled_from(["foam-cored, white", "balsa-cored", "solid glass-fibre, dark blue"])),
    }
    _maybe(draw, boat, "form", st.sampled_from(FORMS))
    _maybe(draw, boat, "displacement", _number(3, 60, "t"))
    _maybe(draw, boat, "deck", st.sampled_from(["teak over balsa core, weathered teak", "balsa-cored"]))
    _maybe(draw, boat, "metacentric_height", _number(0.6, 2, "m"))
    _maybe(draw, boat, "gravity_height", _number(-0.2, 0.8, "m"))
    _maybe(draw, boat, "bulkheads", st.sampled_from(["light bulkhead", "plywood bulkhead"]))
    return boat


@st.composite
def _wiring(draw: Draw) -> dict[str, Any]:
    """Rules, and a length for a circuit that every boat has."""
    wiring: dict[str, Any] = {}
    _maybe(draw, wiring, "regime", st.sampled_from(["33 CFR 183", "ISO 13297", "ABYC E-11"]))
    _maybe(draw, wiring, "insulation", st.sampled_from(["90 °C", "105 °C", "125 °C"]))
    _maybe(draw, wiring, "bundled", st.integers(1, 30))
    _maybe(
        draw, wiring, "circuits", st.fixed_dictionaries({"W1": st.fixed_dictionaries({"length": _number(0, 9, "m")})})
    )
    return wiring


@st.composite
def _standing(draw: Draw, length: int) -> dict[str, Any]:
    """Places of a few parts, well inside the boat; what a place leaves out is estimated."""
    names = draw(st.lists(st.sampled_from(["bank", "inverter", "condensing unit"]), max_size=3, unique=True))
    standing = {}
    for name in names:
        place: dict[str, Any] = {"forward": draw(_number(0.2 * length, 0.7 * length, "m", 3))}
        _maybe(draw, place, "starboard", _number(-0.1 * length, 0.1 * length, "m"))
        _maybe(draw, place, "up", _number(-0.2, 1.5, "m"))
        standing[name] = place
    return standing


@st.composite
def _spaces(draw: Draw, names: list[str]) -> dict[str, Any]:
    """At most one small locker, which any cabin has room for."""
    if draw(st.booleans()):
        return {}
    space: dict[str, Any] = {key: draw(_number(300, 700, "mm", 0)) for key in ("length", "width", "height")}
    _maybe(draw, space, "cabin", st.sampled_from(names))
    _maybe(draw, space, "opens", st.sampled_from(["front", "end", "top"]))
    _maybe(draw, space, "opening", st.just({"width": "300 mm", "height": "250 mm"}))
    _maybe(draw, space, "ventilation", _number(0, 40, "L/s"))
    _maybe(draw, space, "walls", _number(0, 30, "W/K"))
    return {"locker": space}


@st.composite
def _places(draw: Draw, real_weather: bool) -> dict[str, Any]:
    place: dict[str, Any] = {"sea": draw(st.sampled_from(catalogue.names("sea")) | _number(14, 31, "°C", 1))}
    _maybe(draw, place, "heading", st.sampled_from(["to the wind", "90 deg", "215 deg"]))
    if real_weather or draw(st.booleans()):
        place["weather"] = "pvlib:12839.tm2"
        _maybe(draw, place, "day", st.sampled_from(["warmest night", "17 July", "1 January", "31 December"]))
        return place
    warmest = draw(st.integers(24, 42))
    day: dict[str, Any] = {"highest_dry_bulb": f"{warmest} °C", "daily_range": draw(_number(2, 14, "K", 1))}
    if draw(st.booleans()):
        day["dew_point"] = f"{min(35, warmest - draw(st.integers(3, 15)))} °C"
    else:
        day["relative_humidity"] = f"{draw(st.integers(25, 75))} %"
    _maybe(draw, day, "wind_speed", _number(0, 12, "m/s", 1))
    latitude, longitude = draw(st.integers(-40, 45)), draw(st.integers(-170, 170))
    place["day"] = "21 July" if latitude >= 0 else "21 January"
    return {**place, "design_day": day, "latitude": f"{latitude} deg", "longitude": f"{longitude} deg"}


@st.composite
def _cabins(draw: Draw) -> dict[str, Any]:
    deck = draw(st.sampled_from(["below", "main"]))
    cabin: dict[str, Any] = {
        "use": draw(st.sampled_from(USES)),
        "deck": deck,
        "floor_area": draw(st.sampled_from(["2.2 m2", "48 ft2", "6.5 m²", "110 ft²", "16 m2"])),
        "sides": draw(st.lists(st.sampled_from(SIDES), max_size=4, unique=True)),
    }
    _maybe(draw, cabin, "height", _number(1.4, 2.2, "m"))
    _maybe(draw, cabin, "leakage", _number(0.1, 3, "ach"))
    _maybe(draw, cabin, "fresh_air", _number(0, 20, "L/s", 1))
    _maybe(draw, cabin, "fresh_air_recovery", _number(0, 80, "%", 0))
    _maybe(draw, cabin, "fresh_air_per_person", _number(0, 8, "L/s", 1))
    _maybe(draw, cabin, "open_deck", st.sampled_from(["0 %", "40 %", "100 %"]))
    _maybe(draw, cabin, "moisture_factor", st.floats(1, 20))
    if draw(st.booleans()):
        cabin["windows"] = {}
        if cabin.get("open_deck") != "0 %":
            over = "deck" if deck == "below" else "roof"
            covers = st.sampled_from(catalogue.names("cover"))
            _maybe(
                draw,
                cabin["windows"],
                "hatch",
                st.fixed_dictionaries(
                    {
                        "surface": st.just(over),
                        "glazing": st.sampled_from(catalogue.names("glazing")),
                        "area": st.sampled_from(["0.04 m2", "1 ft2", "0.2 m²"]),
                        "cover": covers,
                    },
                    optional={"blind": covers},
                ),
            )
            if draw(st.booleans()):
                cabin["surfaces"] = {over: {"cover": draw(covers)}}
    return cabin


@st.composite
def _neighbours(draw: Draw, names: list[str]) -> list[dict[str, Any]]:
    neighbours = []
    for first, second in itertools.pairwise(names):
        if draw(st.booleans()):
            neighbour: dict[str, Any] = {"between": [first, second]}
            _maybe(draw, neighbour, "door", st.sampled_from(["none", "closed", "louvred", "open"]))
            _maybe(draw, neighbour, "area", st.sampled_from(["1 m2", "20 ft2"]))
            neighbours.append(neighbour)
    return neighbours


@st.composite
def _cooling(draw: Draw, cooled: list[str], names: list[str]) -> dict[str, Any]:
    handlers = {f"handler in {cabin}": draw(_handlers(cabin, names)) for cabin in cooled}
    unit = draw(st.sampled_from(catalogue.names("condensing_unit")))
    cooling: dict[str, Any] = {"plant": {"unit": unit, "handlers": handlers}}
    if draw(st.booleans()):
        seawater: dict[str, Any] = {}
        _maybe(draw, seawater, "hose_length", _number(2, 15, "m", 1))
        _maybe(draw, seawater, "hose_diameter", st.sampled_from(["19 mm", "1 in"]))
        _maybe(draw, seawater, "lift", _number(0, 3, "m", 1))
        cooling["plant"]["seawater"] = seawater
    if draw(st.booleans()):
        units = catalogue.names("self_contained_unit")
        cooling["alternative"] = {
            "units": {f"unit in {cabin}": {"unit": draw(st.sampled_from(units)), "cabin": cabin} for cabin in cooled}
        }
    if draw(st.booleans()):
        cooling["chilled_water"] = {"unit": draw(st.sampled_from(catalogue.names("chilled_water_unit")))}
        if draw(st.booleans()):
            coils = {f"coil in {cabin}": draw(_handlers(cabin, names)) for cabin in cooled}
            cooling["chilled_water"]["fan_coils"] = coils
    return cooling


@st.composite
def _handlers(draw: Draw, cabin: str, names: list[str]) -> dict[str, Any]:
    handler: dict[str, Any] = {"unit": draw(st.sampled_from(catalogue.names("air_handler"))), "cabin": cabin}
    _maybe(draw, handler, "band", _number(0.5, 2.5, "K", 1))
    _maybe(draw, handler, "priority", st.sampled_from([1, 2, 0.5]))
    _maybe(draw, handler, "line_length", _number(1, 20, "m", 1))
    _maybe(draw, handler, "return_grille", st.sampled_from([{"area": "0.1 m2"}, {"kind": "wooden louvre"}]))
    if draw(st.booleans()):
        into = [cabin, *draw(st.lists(st.sampled_from(names), max_size=2))]
        handler["outlets"] = {f"outlet {number}": {"cabin": name} for number, name in enumerate(into)}
        if draw(st.booleans()):
            shares = [["100 %"], ["35 %", "65 %"], ["33.3 %", "33.3 %", "33.4 %"]][len(into) - 1]
            for outlet, share in zip(handler["outlets"].values(), shares, strict=True):
                outlet["share"] = share
        duct: dict[str, Any] = {}
        _maybe(draw, duct, "kind", st.sampled_from(catalogue.names("duct")))
        _maybe(draw, duct, "length", _number(0.3, 8, "m", 1))
        _maybe(draw, duct, "diameter", st.sampled_from(["100 mm", "6 in", "200 mm"]))
        _maybe(draw, duct, "grille_area", st.sampled_from(["300 cm²", "60 in²"]))
        _maybe(draw, handler["outlets"]["outlet 0"], "duct", st.just(duct))
    return handler


@st.composite
def _loads(draw: Draw, kind: str, among: tuple[str, ...], names: list[str]) -> dict[str, Any]:
    loads = {}
    for appliance in draw(st.lists(st.sampled_from(among), max_size=3, unique=True)):
        load: dict[str, Any] = {"appliance": appliance}
        _maybe(draw, load, "cabin", st.sampled_from(names))
        _maybe(draw, load, "count", st.integers(1, 3))
        loads[f"{kind} {appliance}"] = load
    return loads


def _of_voltage(kind: str, field: str, volts: int) -> list[str]:
    fit = []
    for name, row in catalogue.rows(kind).items():
        ratio = float(getattr(row, field)) / volts
        if 0.99 < ratio < 1.3:
            fit.append(name)
    return fit


@st.composite
def _ac(draw: Draw, volts: int, loads: dict[str, Any], names: list[str]) -> dict[str, Any]:
    inverters = _of_voltage("inverter", "input_voltage", volts)
    ac: dict[str, Any] = {"inverter": {"unit": draw(st.sampled_from(inverters))}, "loads": loads}
    _maybe(draw, ac["inverter"], "count", st.integers(1, 3))
    _maybe(draw, ac["inverter"], "cabin", st.sampled_from(names))
    _maybe(draw, ac, "shore", st.sampled_from(catalogue.names("shore_service")))
    transformers = st.sampled_from(catalogue.names("transformer"))
    somewhere = {"cabin": st.sampled_from(names)}
    _maybe(draw, ac, "transformer", transformers | st.fixed_dictionaries({"unit": transformers}, optional=somewhere))
    chargers = _of_voltage("charger", "output_voltage", volts)
    _maybe(draw, ac, "charger", st.fixed_dictionaries({"unit": st.sampled_from(chargers)}, optional=somewhere))
    return ac


@st.composite
def _dc(draw: Draw, volts: int, loads: dict[str, Any], names: list[str]) -> dict[str, Any]:
    name = draw(st.sampled_from(catalogue.names("battery_module")))
    module = catalogue.find("battery_module", name)
    series = round(volts / module.nominal_voltage)  # type: ignore[attr-defined]
    if series < 1 or series > module.highest_series:  # type: ignore[attr-defined]
        name, series = _of_voltage("battery_module", "nominal_voltage", volts)[0], 1
        module = catalogue.find("battery_module", name)
    bank: dict[str, Any] = {
        "module": name,
        "series": series,
        "parallel": draw(st.integers(1, module.highest_parallel)),  # type: ignore[attr-defined]
    }
    _maybe(draw, bank, "temperature", _number(5, 45, "°C", 0))
    _maybe(draw, bank, "link_resistance", _number(0.1, 5, "mohm"))
    _maybe(draw, bank, "cabin", st.sampled_from(names))
    dc: dict[str, Any] = {"nominal_voltage": f"{volts} V", "bank": bank, "loads": loads}
    if draw(st.booleans()):
        panel = draw(st.sampled_from(catalogue.names("solar_panel")))
        dc["solar"] = {"panel": panel, "count": draw(st.integers(1, 8))}
        _maybe(draw, dc["solar"], "tilt", st.sampled_from(["0 deg", "10 deg", "60 deg"]))
        _maybe(draw, dc["solar"], "shading", _number(20, 100, "%", 0))
    if draw(st.booleans()):
        output = draw(st.sampled_from([12, 24]))
        unit = next(name for name in _of_voltage("dc_dc", "input_voltage", volts) if f"to {output} V" in name)
        dc["engine_battery"] = {"unit": unit, "voltage": f"{output} V"}
        _maybe(draw, dc["engine_battery"], "standing_load", _number(0, 30, "W", 1))
        _maybe(draw, dc["engine_battery"], "starts_per_day", st.integers(0, 8))
        _maybe(draw, dc["engine_battery"], "cabin", st.sampled_from(names))
    return dc


@st.composite
def _engines(draw: Draw, volts: int, names: list[str]) -> dict[str, Any]:
    engines = {}
    alternators = _of_voltage("alternator", "voltage", volts)
    for number in range(draw(st.integers(1, 2))):
        name = draw(st.sampled_from(catalogue.names("engine")))
        engine: dict[str, Any] = {"engine": name, "boat_speed": "9 kn", "alternators": {}}
        _maybe(draw, engine, "charging_speed", st.sampled_from(["1200 rpm", "1600 rpm"]))
        _maybe(draw, engine, "margin", st.sampled_from(["5 %", "15 %", "30 %"]))
        _maybe(draw, engine, "cabin", st.sampled_from(names))
        _maybe(draw, engine, "block_heat_capacity", _number(40, 500, "kJ/K", 0))
        _maybe(draw, engine, "blower", _number(0, 100, "L/s", 0))
        rated = catalogue.find("engine", name).rated_speed  # type: ignore[attr-defined]
        for place in range(draw(st.integers(1, 2))):
            part = draw(st.sampled_from(alternators))
            highest = catalogue.find("alternator", part).highest_speed / rated  # type: ignore[attr-defined]
            engine["alternators"][f"alternator {place}"] = {
                "alternator": part,
                "belt": draw(st.sampled_from(catalogue.names("belt"))),
                "pulley_ratio": round(draw(st.floats(1.0, min(3.5, highest * 0.99))), 2),
            }
        engines[f"engine {number}"] = engine
    return engines


@st.composite
def _plans(
    draw: Draw, names: list[str], handlers: dict[str, Any], hatches: list[str], loads: list[str], shore: bool
) -> list[dict[str, Any]]:
    halves = sorted(draw(st.lists(st.integers(0, 47), min_size=1, max_size=8, unique=True)))
    cooled = [handler["cabin"] for handler in handlers.values()]
    plan = []
    for number, half in enumerate(halves):
        end = halves[(number + 1) % len(halves)]
        doing = draw(st.sampled_from(["at anchor", "at anchor", "motoring", *(["on shore power"] if shore else [])]))
        period: dict[str, Any] = {"start": _clock(half), "end": _clock(end), "doing": doing}
        if doing == "motoring":
            period["speed"] = draw(st.sampled_from(["3 kn", "6.5 kn", "8.9 kn"]))
        where = draw(st.lists(st.sampled_from(cooled), max_size=len(cooled), unique=True))
        if draw(st.booleans()):
            where += _followers(handlers, where)
        warm = draw(st.sampled_from([False, False, False, True]))
        points = st.sampled_from(["16 °C", "70 °F"] if warm else ["21 °C", "76 °F", "26 °C"])
        period["heat" if warm else "cool"] = {cabin: draw(points) for cabin in where}
        if hatches:
            _maybe(draw, period, "ajar", st.dictionaries(st.sampled_from(hatches), st.just("0.03 m2"), max_size=2))
        period["people"] = [
            {
                "cabin": draw(st.sampled_from(names)),
                "count": draw(st.sampled_from([1, 2, 0.5])),
                "doing": draw(st.sampled_from(catalogue.names("person"))),
            }
            for _ in range(draw(st.integers(0, 3)))
        ]
        running = draw(st.lists(st.sampled_from(loads), max_size=3, unique=True)) if loads else []
        period["running"] = {load: draw(st.sampled_from(["0 %", "30 %", "100 %"])) for load in running}
        plan.append(period)
    return plan


def _followers(handlers: dict[str, Any], where: list[str]) -> list[str]:
    """Cabins without a thermostat whose first handler is called from a cabin among those."""
    called = [handler["cabin"] for handler in handlers.values()]
    leaders: dict[str, str] = {}
    for handler in handlers.values():
        for outlet in handler.get("outlets", {}).values():
            leaders.setdefault(outlet["cabin"], handler["cabin"])
    return [cabin for cabin, leader in leaders.items() if cabin not in called and leader in where]


@st.composite
def _briefs(draw: Draw) -> dict[str, Any]:
    brief: dict[str, Any] = {
        "hold": draw(st.sampled_from(["8 h", "10 h", "12 h"])),
        "night_start": draw(st.sampled_from(["20:00", "21:00", "22:30"])),
        "reserve": draw(st.sampled_from(["10 %", "20 %", "30 %"])),
        "recharge": draw(st.sampled_from(["2 h", "4 h"])),
    }
    _maybe(draw, brief, "charge_at_start", st.sampled_from(["60 %", "90 %", "100 %"]))
    _maybe(draw, brief, "mass_limit", st.sampled_from(["300 kg", "1500 lb"]))
    _maybe(draw, brief, "price_limit", st.just("30 000 EUR"))
    return brief


def _clock(half_hours: int) -> str:
    return f"{half_hours // 2:02d}:{half_hours % 2 * 30:02d}"
