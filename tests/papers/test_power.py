"""What the power command shows."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from typing import Any

import pytest
from tests.papers import fake

from anchorwatt.assessment.ac_side import CAUTIONS, AcSideStory
from anchorwatt.assessment.records import Answer
from anchorwatt.cli.terminal import show
from anchorwatt.papers import power, power_json
from anchorwatt.sizing.ac_side import AcSide
from anchorwatt.sizing.converters import (
    ChargerFigures,
    Efficiency,
    EfficiencyPoint,
    EngineBatteryFigures,
    HighestStep,
    InverterFigures,
)
from anchorwatt.sizing.shore import LegCurrents, ShoreFigures, ShorePeriod
from anchorwatt.sizing.sun import SunDay
from anchorwatt.sizing.transformer import TransformerFigures
from anchorwatt.units import System

HOUR, NAN = 3600.0, math.nan
POINTS = (EfficiencyPoint(0.5, 2500.0, 172.0), EfficiencyPoint(1.0, 5000.0, 434.0))
CURVE = Efficiency(POINTS, POINTS[0], 0.928)
STEPS = (
    HighestStep("night", 21.0 * HOUR, 548.0, 0.12, math.inf),
    HighestStep("day", 40.0 * HOUR, 5400.0, 1.19, 1800.0),
)
ONCE = HighestStep("all loads at once", 40.0 * HOUR, 6900.0, 1.5, 60.0)
INVERTER = InverterFigures(
    "inverter 24 V 5 kW", 5000.0, CURVE, 46.4, 4520.0, STEPS, ONCE, 34.0, 1.2e6, 1.7e6, 6.0 * HOUR, 2.2e6, 9040.0,
    6780.0, 5400.0, 6070.0,
)  # fmt: skip
TRANSFORMER = TransformerFigures(
    "isolation transformer 5 kVA", 5000.0, True, 1.0, POINTS, POINTS[0], 3.9e6, 1.6e6, 120.0, 120.0, 118.4, 0.48, 58.9,
    589.0, 10.0, False, 50.0, 8.3,
)  # fmt: skip
LEGS = LegCurrents(
    21.0 * HOUR, 3760.0, (27.4, 4.0), 23.4, (30.4, 4.4),
    (("charger 24 V 3 kW", 3288.0, 0), ("isolation transformer 5 kVA", 474.0, 1)),
)  # fmt: skip
SHORE = ShoreFigures(
    "120/240 V 50 A", 120.0, 2, 60.0, 50.0, 50.0, 40.0, 12_000.0, 9600.0, LEGS,
    (ShorePeriod(21.0 * HOUR, 7.0 * HOUR, 409.0, 474.0, 9191.0),), 3.7 * HOUR, "the charger", 0.1, 108.0, 104.4, False,
    3.7 * HOUR,
)  # fmt: skip
CHARGER = ChargerFigures("charger 24 V 3 kW", 3000.0, CURVE, NAN, 3000.0, 106.0)
SUN = SunDay(2400.0, 0.8, 5.7 * HOUR, 48.9e6, 3.5e6, 36.3e6, 36.3e6, 51.6)
BATTERY = EngineBatteryFigures("dc-dc 24 to 12 V 20 A", 275.0, 260.0, 4.5, 9.7, 8.4e5, 21.6e3, 4.0, 84.0)
FIGURES = AcSide(INVERTER, TRANSFORMER, SHORE, CHARGER, SUN, BATTERY)
ANSWERS = (Answer("inverter_surge_W", "What does it give?", 9040.0, "power", "W", "while a motor starts", fake.WHY),)


def story(**changes: Any) -> AcSideStory:
    return AcSideStory(replace(FIGURES, **changes), ANSWERS, CAUTIONS[:1])


def page(capsys: pytest.CaptureFixture[str], system: System = "si", **changes: Any) -> str:
    show(power.screen(fake.assessment(ac_side=story(**changes)), system))
    return capsys.readouterr().out


@pytest.mark.parametrize("system", ["si", "us"])
def test_the_page_fits_80_columns(capsys: pytest.CaptureFixture[str], system: System) -> None:
    assert max(len(line) for line in page(capsys, system).splitlines()) <= 80


def test_units_follow_the_reader(capsys: pytest.CaptureFixture[str]) -> None:
    assert "46.4 °C" in page(capsys)
    assert "116 °F" in page(capsys, "us")


def test_an_overload_says_how_long_it_lasts(capsys: pytest.CaptureFixture[str]) -> None:
    text = page(capsys)
    assert "as long as need be" in text
    assert "30 min" in text
    assert "60 s" in text or "1 min" in text


def test_an_inrush_that_trips_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    assert "the inverter trips, unless it ramps up" in " ".join(page(capsys).split())
    borne = replace(TRANSFORMER, inrush_survived=True)
    assert "the inverter bears it" in " ".join(page(capsys, transformer=borne).split())


def test_an_autotransformer_says_that_it_isolates_nothing(capsys: pytest.CaptureFixture[str]) -> None:
    assert "isolates from shore" in " ".join(page(capsys).split())
    auto = replace(TRANSFORMER, isolating=False, transformed_share=0.5)
    assert "it isolates nothing, and transforms 50 %" in " ".join(page(capsys, transformer=auto).split())


def test_legs_and_neutral_are_shown_of_split_phase_only(capsys: pytest.CaptureFixture[str]) -> None:
    assert "neutral" in page(capsys).split("Shore service")[1].split("by the plan")[0]
    single = replace(SHORE, legs=1, highest=replace(LEGS, legs=(27.4,), sagged=(30.4,), placed=LEGS.placed[:1]))
    assert "neutral" not in page(capsys, shore=single).split("Shore service")[1].split("by the plan")[0]


def test_a_charger_that_gives_way_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    gone = replace(SHORE, gives_way=True, refill_time_in_sag=NAN)
    assert "the bank is not refilled" in " ".join(page(capsys, shore=gone).split())


def test_what_the_design_does_not_have_is_left_out(capsys: pytest.CaptureFixture[str]) -> None:
    text = page(capsys, transformer=None, shore=None, charger=None, sun=None, engine_battery=None)
    assert "Inverter" in text
    assert not any(word in text for word in ("Transformer", "Shore service", "Charger:", "Sun on", "Engines' battery"))


def test_cautions_are_on_the_page(capsys: pytest.CaptureFixture[str]) -> None:
    text = " ".join(page(capsys).split())
    assert "Shore power and inverters kill" in text
    assert "certified people decide" in text


def test_json_carries_units_in_its_keys() -> None:
    plain = power_json.plain(fake.assessment(ac_side=story()))
    json.dumps(plain, allow_nan=False)
    assert plain["answers"] == {"inverter_surge_W": 9040.0}
    assert plain["why"][0]["formula"] == "bank over load"
    assert plain["inverter"]["highest_steps"][0] == {
        "step": "night", "at": "21:00", "power_W": 548.0, "of_rating_there_pct": 12.0, "as_long_as_need_be": True,
        "given_for_s": None,
    }  # fmt: skip
    assert plain["transformer"]["inrush_peak_A"] == 589.0
    assert plain["shore"]["highest_step"]["legs_A"] == [27.4, 4.0]
    assert plain["shore"]["periods"][0]["left_for_charger_W"] == 9191.0
    assert plain["sun"]["full_sun_hours"] == pytest.approx(5.7)
    assert plain["charger"]["hottest_air_C"] is None
    assert plain["engine_battery"]["taken_W"] == 9.7


def test_json_says_null_for_what_the_design_does_not_have() -> None:
    none = {"transformer": None, "shore": None, "charger": None, "sun": None, "engine_battery": None}
    plain = power_json.plain(fake.assessment(ac_side=story(**none)))
    assert {key: plain[key] for key in none} == none


def test_nothing_endless_reaches_json() -> None:
    never = replace(BATTERY, refilled_after=math.inf)
    hot = replace(INVERTER, at_once=replace(ONCE, share=math.inf, lasts=0.0))
    json.dumps(power_json.plain(fake.assessment(ac_side=story(engine_battery=never, inverter=hot))), allow_nan=False)
