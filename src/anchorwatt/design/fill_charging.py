"""Engines and alternators, every gap filled."""

from __future__ import annotations

import math
from collections.abc import Mapping

from anchorwatt.design.cabins import CabinEntry
from anchorwatt.design.charging import AlternatorEntry, Charging, EngineEntry
from anchorwatt.design.document import Key
from anchorwatt.design.fill_power import place_of
from anchorwatt.design.hull import Hull
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.specification import Alternator, Engine
from anchorwatt.physics.engine import full_load_power

# Of an engine as a body that gives off its heat after it has run. All from memory.
BLOCK_HEAT = 60e6  # J/K for each m3 of swept volume: 110 kg a litre with gearbox, coolant and oil, at 0.55 kJ/(kg K)
BLOCK_CONDUCTANCE, BLOCK_REFERENCE = 12.0, 90e3  # W/K of an engine of that many W; over the power of 2/3, as its faces
BLOCK_TEMPERATURE = 80.0  # °C
PROPELLER_SHARE = 0.95  # of the rated power, that a propeller takes at rated speed. From memory.
BLOWER = 0.05  # m3/s, in a machinery space


def fill_engines(charging: Charging, cabins: Mapping[str, CabinEntry], hull: Hull, ledger: Ledger) -> list[Engine]:
    """Every engine with its propeller and alternators."""
    return [_engine(name, entry, cabins, hull, ledger) for name, entry in charging.engines.items()]


def check_engines(charging: Charging, nominal: float, ledger: Ledger) -> None:
    """Refuse alternators of another voltage, rotors that leave their curve or turn too fast, propellers too large."""
    for name, entry in charging.engines.items():
        key: Key = ("charging", "engines", name)
        engine = entry.engine
        speed = entry.charging_speed
        if speed is not None and not engine.idle_speed <= speed <= engine.rated_speed:
            ledger.refuse(
                (*key, "charging_speed"),
                f'"{speed.text}"',
                f"from idle {engine.idle_speed.text} to rated {engine.rated_speed.text}",
            )
        _check_propeller(entry, key, ledger)
        for title, alternator in entry.alternators.items():
            place: Key = (*key, "alternators", title)
            voltage = alternator.alternator.voltage
            if not 1.0 < voltage / nominal < 1.3:
                found = f"an alternator that regulates at {voltage.text}"
                ledger.refuse((*place, "alternator"), found, f"one for a bank of {nominal:g} V")
            fastest = alternator.pulley_ratio * engine.rated_speed
            if fastest > alternator.alternator.highest_speed * (1.0 + 1e-9):
                per_rpm = math.pi / 30.0
                most = alternator.alternator.highest_speed / engine.rated_speed
                ledger.refuse(
                    (*place, "pulley_ratio"),
                    f"{alternator.pulley_ratio:g}, which turns the rotor at {fastest / per_rpm:.0f} rpm",
                    f"at most {most:.3g}, for its {alternator.alternator.highest_speed.text}",
                )
            elif fastest > alternator.alternator.speeds[-1] * (1.0 + 1e-9):
                last = alternator.alternator.speeds[-1].text
                ledger.refuse(
                    (*place, "alternator", "speeds"),
                    f"a curve that ends at {last}, below the {fastest * 30.0 / math.pi:.0f} rpm that "
                    f"pulley_ratio {alternator.pulley_ratio:g} turns the rotor at",
                    f"a curve that goes on to {fastest * 30.0 / math.pi:.0f} rpm, or a smaller pulley_ratio",
                )


def _check_propeller(entry: EngineEntry, key: Key, ledger: Ledger) -> None:
    """Refuse a propeller that takes more at rated speed than the engine's own curve gives there."""
    engine, typed = entry.engine, entry.propeller_power
    able = full_load_power(
        engine.rated_speed, engine.rated_speed, engine.rated_power, engine.curve_speeds, engine.curve_powers
    )
    takes = PROPELLER_SHARE * engine.rated_power if typed is None else float(typed)
    if takes <= able * (1.0 + 1e-9):
        return
    gives = ledger.show(able, "shaft power")
    found = f'"{typed.text}"' if typed is not None else f"an estimated {ledger.show(takes, 'shaft power')}"
    ledger.refuse(
        (*key, "propeller_power"),
        f"{found} at rated speed, over the engine's own curve",
        f"at most the {gives} that {engine.name} gives at {engine.rated_speed.text}",
    )


def _engine(name: str, entry: EngineEntry, cabins: Mapping[str, CabinEntry], hull: Hull, ledger: Ledger) -> Engine:
    key: Key = ("charging", "engines", name)
    engine = entry.engine
    index = {title: number for number, title in enumerate(cabins)}
    room = cabins.get(entry.cabin or "")

    def of_block(field: str, estimate: float, dimension: str, rule: str) -> float:
        # Without a compartment nothing comes of these: they are not worth a line on the list.
        given = getattr(entry, field)
        if room is None:
            return estimate if given is None else float(given)
        return ledger.fill(given, (*key, field), estimate, dimension, rule, MEMORY)

    coefficient = hull.form.speed_coefficient
    idle, rated = float(engine.idle_speed), float(engine.rated_speed)
    return Engine(
        name=name,
        rated_power=float(engine.rated_power),
        rated_speed=rated,
        idle_speed=idle,
        curve_speeds=tuple(float(speed) for speed in engine.curve_speeds),
        curve_powers=tuple(float(power) for power in engine.curve_powers),
        propeller_power=ledger.fill(
            entry.propeller_power,
            (*key, "propeller_power"),
            PROPELLER_SHARE * engine.rated_power,
            "shaft power",
            f"{100.0 * PROPELLER_SHARE:g} % of the rated power at rated speed",
            MEMORY,
        ),
        propeller_exponent=ledger.fill(
            entry.propeller_exponent,
            (*key, "propeller_exponent"),
            2.7,
            "",
            "usual, pleasure craft included",
            "reference of the trade on fuel-flow sensors; rated E3 cycle of the NOx Technical Code has 3.0",
        ),
        margin=ledger.fill(entry.margin, (*key, "margin"), 0.15, "share", "full load that is never asked for", MEMORY),
        indicated_efficiency=float(engine.indicated_efficiency),
        friction_pressure=float(engine.friction_pressure),
        displacement=float(engine.displacement),
        air_temperature=math.nan
        if room is not None and entry.air_temperature is None
        else ledger.fill(
            entry.air_temperature,
            (*key, "air_temperature"),
            50.0,
            "temperature",
            "engine space, engine running",
            "33 CFR 183.425 Table 5 note 1 counts engine spaces as 50 °C",
        ),
        volumetric_efficiency=engine.volumetric_efficiency,
        side_load_limit=math.nan if entry.side_load_limit is None else float(entry.side_load_limit),
        boat_speed=ledger.fill(
            entry.boat_speed,
            (*key, "boat_speed"),
            coefficient * math.sqrt(hull.waterline),
            "speed",
            f"{coefficient:g} times the root of the waterline length, {hull.form.name}",
            hull.form.source,
        ),
        charging_speed=ledger.fill(
            entry.charging_speed,
            (*key, "charging_speed"),
            idle + 0.2 * (rated - idle),
            "rotational speed",
            "a fifth of the way from idle to rated speed",
            MEMORY,
        ),
        alternators=tuple(
            _alternator(title, alternator, (*key, "alternators", title), ledger)
            for title, alternator in entry.alternators.items()
        ),
        cabin=place_of(entry.cabin, index),
        block_capacity=of_block(
            "block_heat_capacity",
            BLOCK_HEAT * engine.displacement,
            "heat capacity",
            f"{BLOCK_HEAT / 1e6:g} kJ/K for each litre of swept volume, gearbox, coolant and oil included",
        ),
        block_conductance=of_block(
            "block_conductance",
            BLOCK_CONDUCTANCE * math.pow(engine.rated_power / BLOCK_REFERENCE, 2.0 / 3.0),
            "thermal conductance",
            f"{BLOCK_CONDUCTANCE:g} W/K at {BLOCK_REFERENCE / 1e3:g} kW, with the power of 2/3 of the rated power",
        ),
        block_temperature=of_block("block_temperature", BLOCK_TEMPERATURE, "temperature", "thermostat of the coolant"),
        blower=of_block(
            "blower",
            BLOWER if room is not None and room.use == "machinery" else 0.0,
            "volume flow",
            "usual of a machinery space" if room is not None and room.use == "machinery" else "no machinery space",
        ),
    )


def _alternator(name: str, entry: AlternatorEntry, key: Key, ledger: Ledger) -> Alternator:
    part = entry.alternator
    return Alternator(
        name=name,
        rated_current=float(part.rated_current),
        voltage=float(part.voltage),
        speeds=tuple(float(speed) for speed in part.speeds),
        currents=tuple(float(current) for current in part.currents),
        hot_loss=float(part.hot_loss),
        efficiency=float(part.efficiency),
        winding_capacity=float(part.winding_capacity),
        frame_capacity=float(part.frame_capacity),
        winding_conductance=float(part.winding_conductance),
        frame_conductance=float(part.frame_conductance),
        highest_winding=float(part.highest_winding),
        highest_speed=float(part.highest_speed),
        pulley_ratio=entry.pulley_ratio,
        belt=entry.belt.name,
        belt_power=float(entry.belt.power),
        belt_speed=float(entry.belt.reference_speed),
        belt_tension_ratio=entry.belt.tension_ratio,
        pulley_diameter=float(part.pulley_diameter),
        current_limit=ledger.fill(
            entry.current_limit,
            (*key, "current_limit"),
            0.9 * part.rated_current,
            "current",
            "90 % of the rated current",
            MEMORY,
        ),
        hold_temperature=ledger.fill(
            entry.hold_temperature,
            (*key, "hold_temperature"),
            100.0,
            "temperature",
            "case probe of the regulator, 90 to 110 °C",
            MEMORY,
        ),
        fold_band=ledger.fill(
            entry.fold_band,
            (*key, "fold_band"),
            15.0,
            "temperature difference",
            "from full output to none",
            MEMORY,
        ),
        clamp_voltage=math.nan if entry.clamp_voltage is None else float(entry.clamp_voltage),
        mass=part.mass + entry.belt.mass,
    )
