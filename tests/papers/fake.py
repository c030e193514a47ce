"""An assessment with invented figures, for tests of what is shown; no weather and no kernel behind it."""

from __future__ import annotations

import math
from types import SimpleNamespace
from typing import Any, cast

import numpy as np

from anchorwatt.assessment import (
    Answer,
    Assessment,
    CabinAnswer,
    Column,
    Comparison,
    Estimate,
    Finding,
    Input,
    Recharge,
    Table,
    Verdict,
    Why,
)
from anchorwatt.assessment.gains import CAUSES, DRY_CAUSES, BoatGains, CabinGains
from anchorwatt.assessment.load_story import LoadStory
from anchorwatt.assessment.plant import PlantMap, PlantPoint
from anchorwatt.sizing.air_quality import CabinAir
from anchorwatt.sizing.comfort import ComfortHour
from anchorwatt.sizing.condensate import Advice, CabinCondensate, Condensate
from anchorwatt.sizing.dew import SurfaceDew
from anchorwatt.sizing.ducts import DuctRun, HandlerAir
from anchorwatt.sizing.refrigerant import Measures, RefrigerantLimits
from anchorwatt.sizing.rules_of_thumb import RuleOfThumb, RulesOfThumb
from anchorwatt.sizing.seawater import SeawaterFlow
from anchorwatt.sizing.selection import HandlerChoice, Selection, UnitChoice

HOUR = 3600.0
NAN = math.nan
WHY = Why("bank over load", (Input("bank", 43.2e6, "energy", "typed"),), "arithmetic", "a larger bank")


def answers(hold: float = 12.5 * HOUR, dawn: float = 0.36, recharge: float = 2.5 * HOUR) -> tuple[Answer, ...]:
    rows: tuple[tuple[str, str, float, str, str], ...] = (
        ("hold_hours", "How long does the bank hold?", hold, "time", "h"),
        ("required_hours", "How long must it?", 10 * HOUR, "time", "h"),
        ("charge_at_dawn_pct", "What is left at dawn?", dawn, "share", "%"),
        ("night_energy_kWh", "What does the night take?", 32.4e6, "energy", "kWh"),
        ("peak_plant_power_W", "What does the plant draw at most?", 1480.0, "power", "W"),
        ("peak_inverter_power_W", "What must the inverter give?", 1720.0, "power", "W"),
        ("engine_hours_to_recharge", "How long must the engine run?", recharge, "time", "h"),
        ("recharge_fuel_L", "How much fuel is that?", 0.0061, "liquid volume", "L"),
        ("mass_added_kg", "What does it weigh?", 412.0, "mass", "kg"),
        ("heel_deg", "How does it heel?", -math.pi / 180.0, "angle", "°"),
        ("trim_cm", "How does it trim?", 0.04, "length", "cm"),
        ("total_EUR", "What does it cost?", 57_682.51, "money", "EUR"),
        ("checks_failed", "How many checks fail?", 1.0, "count", ""),
    )
    return tuple(
        Answer(key, question, value, dimension, unit, "", WHY) for key, question, value, dimension, unit in rows
    )


def night(cabins: tuple[str, ...], hours: float = 10.0, first: float = 0.9, last: float = 0.36) -> Table:
    """Minute by minute from 21:00; the charge falls in a straight line."""
    steps = round(hours * 60)
    through = np.arange(1, steps + 1, dtype=np.float64) / steps
    wave = np.sin(through * 20.0)
    columns = [
        Column("charge_pct", "state of charge", "share", first + (last - first) * through),
        Column("bank_current_A", "bank current", "current", 40.0 + 5.0 * wave),
        Column("plant_power_W", "cooling plant", "power", 800.0 + 300.0 * wave),
        Column("inverter_power_W", "inverter output", "power", 950.0 + 300.0 * wave),
        Column("outdoor_temperature_C", "outdoor air", "temperature", 29.0 - 3.0 * through),
        Column("sea_temperature_C", "seawater", "temperature", 29.0 + 0.0 * through),
    ]
    for number, name in enumerate(cabins):
        air = 24.0 + 0.05 * number + 0.2 * wave
        columns.append(Column(f"air_temperature_C.{name}", name, "temperature", air))
    return Table("night", 21.0 * HOUR + 60.0 * np.arange(1, steps + 1, dtype=np.float64), tuple(columns))


def cabin(name: str, set_point: float = 24.0) -> CabinAnswer:
    cooled = not math.isnan(set_point)
    return CabinAnswer(
        name=name,
        use="sleeping",
        peak_sensible=740.0 if cooled else NAN,
        peak_latent=210.0 if cooled else NAN,
        peak_at=16.0 * HOUR if cooled else NAN,
        gains=(("sun through glass", 400.0), ("walls, decks and neighbours", -12.0)) if cooled else (),
        handler_capacity=1758.0 if cooled else 0.0,
        set_point=set_point,
        night_highest_temperature=24.7,
        night_highest_humidity=0.61,
    )


def recharge(engine_time: float = 2.5 * HOUR) -> Recharge:
    clock = 31.0 * HOUR + 60.0 * np.arange(1, 151, dtype=np.float64)
    flat = np.ones(150)
    table = Table(
        "recharge",
        clock,
        (
            Column("charge_pct", "state of charge", "share", 0.36 + 0.004 * np.arange(150, dtype=np.float64)),
            Column("bank_current_A", "bank current", "current", -180.0 * flat),
            Column("bank_voltage_V", "bank voltage", "voltage", 27.0 * flat),
            Column("plant_power_W", "cooling plant", "power", 0.0 * flat),
            Column("fuel_flow_L_per_h", "fuel", "fuel flow", 7.0 / 3.6e6 * flat),
            Column("alternator_current_A.port", "port current", "current", 90.0 * flat),
            Column("winding_temperature_C.port", "port winding", "temperature", 120.0 * flat),
            Column("frame_temperature_C.port", "port frame", "temperature", 95.0 * flat),
        ),
    )
    held = (("temperature", 0.8), ("the bank", 0.2))
    return Recharge("motoring at 7.0 kn", engine_time, 0.0061, 0.031, 180.0, 131.0, held, table)


def finding(verdict: Verdict, question: str = "Does it hold?", value: float = 0.36) -> Finding:
    return Finding("some-rule", question, value, 0.2, "share", verdict, "the brief", "a larger bank")


def comfort_hour(number: int, start: float) -> ComfortHour:
    return ComfortHour(number, start, "asleep", 2.0, 24.6, 0.55, 25.2, 24.9, -0.4, 0.08, False)


def handler_air(name: str) -> HandlerAir:
    run = DuctRun(name, "berth", 0, 0.06, 0.058, -0.01, 2.9, 1.5, 18.0, True)
    return HandlerAir(name, 0, 0.06, 0.06, 21.0, 55.0, 0.9, (run,))


LIMITS = RefrigerantLimits(
    "R-32", "A2L", 1.4, 30.0, 0, 12.0, 6.0, 0.117, 0.061, 0.063, 0.15, 0.83, 7.0, Measures.TWO, ("a leak detector",)
)
SEAWATER = SeawaterFlow(3.6e-4, 8700.0, 5.9, 1.4, 0.8, 36e3, 50e3, 13.0, 0.2, 29.0, 41.0)
CONDENSATE = Condensate(6.0, 21.0, 4e-4, (CabinCondensate(0, 6.0, 21.0, 1.0),), 0.03)


def gains(cabins: int = 2) -> BoatGains:
    hours = np.arange(24, dtype=np.float64)
    hump = np.clip(np.sin((hours - 6.0) / 12.0 * np.pi), 0.0, None)
    rows = []
    for cabin in range(cabins):
        values = [400.0 * hump + 10.0 * number for number in range(len(CAUSES))]
        values[6] = 150.0 * hump - 120.0
        dry, moist = values[: len(DRY_CAUSES)], values[len(DRY_CAUSES) :]
        zero = np.zeros(24)
        rows.append(
            CabinGains(
                cabin,
                tuple(zip(CAUSES, values, strict=True)),
                sum(dry, zero),
                sum(moist, zero),
                zero + 25.0,
                zero + 0.01,
            )
        )
    return BoatGains(tuple(rows))


SELECTION = Selection(
    (
        HandlerChoice(0, 1400.0, 1758.0, "air handler 6 kBtu/h", 1758.0, 2100.0, 2150.0),
        HandlerChoice(1, 99e3, 1758.0, "", NAN, 2100.0, NAN),
    ),
    UnitChoice(2900.0, 29.4, "variable-speed 24 kBtu/h", 6500.0, "variable-speed 12 kBtu/h", 3200.0),
    1.5,
    NAN,
)
RULES = RulesOfThumb((RuleOfThumb(0, 1600.0, 1900.0, 2100.0), RuleOfThumb(1, 900.0, 1100.0, 1500.0)), 9000.0, 3600.0)
STORY = LoadStory(
    2900.0, RULES, 3600.0, 8800.0, 2.0 * HOUR, (("sun through glass", 0.4), ("people", 0.2)), 4100.0, 4700.0, 2.8 * HOUR
)


def plant_map() -> PlantMap:
    points = [
        PlantPoint(sea, share, 7000.0 * share - 30.0 * sea, 5.0, 200.0 + 1300.0 * share, 350.0 + 1400.0 * share, 1.0)
        for share in (1.0, 0.5, 0.25)
        for sea in (10.0, 20.0, 30.0)
    ]
    heating = [PlantPoint(sea, 1.0, 6000.0 + 100.0 * sea, 45.0, 1900.0, 2300.0, 1.0) for sea in (4.0, 12.0)]
    return PlantMap("variable-speed 24 kBtu/h", "R-410A", tuple(points), tuple(heating))


CAUTIONS = ("It advises; local codes and certified people decide.", "Lithium batteries can kill.")
ESTIMATES = (
    Estimate("boat.waterline", "42 ft", "92 % of the length", "from memory"),
    Estimate("cabins.saloon.surfaces.roof.area", "12.0 m²", "the floor's area", "from memory"),
    Estimate("dc.bank.temperature", "30 °C", "a locker in summer", "from memory"),
)


def assessment(**changes: Any) -> Assessment:
    """The invented assessment, with some of its parts changed."""
    cabins = changes.pop("cabins", (cabin("owner's cabin"), cabin("saloon", NAN)))
    headline = changes.pop("headline", answers())
    parts: dict[str, Any] = {
        "specification": SimpleNamespace(
            name="Invented 12",
            cabins=tuple(SimpleNamespace(name=one.name) for one in cabins),
            brief=SimpleNamespace(night_start=21.0 * HOUR, hold=10.0 * HOUR, reserve=0.2),
        ),
        "weather_source": "invented weather",
        "answers": headline[:-1],
        "headline": headline,
        "cabins": cabins,
        "night": night(tuple(one.name for one in cabins)),
        "day": night(tuple(one.name for one in cabins), hours=14.0),
        "recharge": recharge(),
        "recharging": None,
        "comparisons": (
            Comparison("shared variable-speed plant", 32.4e6, 1480.0, "starts softly", 0.36, 99.0, 0.6, 0.61),
            Comparison("self-contained units", 61.2e6, 2300.0, "starts hard", 0.05, 150.0, 1.1, 0.66),
        ),
        "checks": (finding(Verdict.HOLDS), finding(Verdict.FAILS, "Is it dry enough?")),
        "estimates": ESTIMATES,
        "cautions": CAUTIONS,
        "comfort": tuple(comfort_hour(0, (21.0 + hour) % 24.0 * HOUR) for hour in range(10)),
        "cabin_air": (CabinAir(0, 2.0, 980e-6, 930e-6, 0.014, 0.007, (0.0117, 0.0093, 0.0063)),),
        "condensate": CONDENSATE,
        "drain_advice": (Advice("Let every drain fall.", "from memory"),),
        "surface_dew": (SurfaceDew(0, 4.2, 5.0 * HOUR, 22.0, 17.8, 0.0, 0.6, 0.7),),
        "handlers_air": (handler_air("owner's cabin"),),
        "refrigerant": LIMITS,
        "seawater": SEAWATER,
        "gains": gains(),
        "selection": SELECTION,
        "load_story": STORY,
        "plant": plant_map(),
        "answer": lambda key: {one.key: one for one in headline}[key],
    }
    return cast(Assessment, SimpleNamespace(**{**parts, **changes}))
