"""What the regulator command shows."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from functools import cache
from typing import Any

import pytest
from tests.papers import fake
from tests.simulation import boats

from anchorwatt.assessment.regulator import CAUTIONS, MachineSetUp, RegulatorSetUp
from anchorwatt.cli.terminal import show
from anchorwatt.papers import regulator
from anchorwatt.sizing.charging_hour import ChargingHour, Hour, Moment
from anchorwatt.sizing.load_dump import LoadDump
from anchorwatt.sizing.regulator import regulator_sheets, side_loads
from anchorwatt.sizing.regulator_settings import bank_settings, machine_settings
from anchorwatt.units import System

NAN = math.nan
MINUTES = (1.0, 10.0, 20.0, 40.0, 60.0)
ENDS = ("_rpm", "_A", "_C", "_V", "_N", "_pct", "_kWh", "_min", "_J", "_mohm", "_m_per_s")
WORDS = {"alternator", "engine", "name", "unit", "formula", "source", "basis", "governs", "governs_for_long", "value"}
BARE = {"at_anchor"}


def hour(held: float, hot: float, over: float = 0.0) -> ChargingHour:
    def one(is_held: bool, energy: float) -> Hour:
        moments = tuple(Moment(60.0 * minute, 150.0 - minute / 2.0, 100.0, 90.0) for minute in MINUTES)
        return Hour(is_held, moments, energy, 121.0 if is_held else 187.0, 97.0, 0.0 if is_held else over)

    return ChargingHour(True, NAN, one(True, held), one(False, hot), 180.0, (125.0,), 43.0, 400.0, 45.3)


@cache
def made() -> RegulatorSetUp:
    machine = boats.alternator("port alternator")
    twin = replace(boats.alternator("starboard alternator"))
    small = replace(boats.alternator("small", rated=60.0))
    engines = (boats.engine((machine, twin)), boats.engine((small,), name="wing engine"))
    boat = replace(boats.boat(1), engines=engines)
    sheets = regulator_sheets(boat, (50.0, 50.0))
    names = [(g, m.name) for g, engine in enumerate(engines) for m in engine.alternators]
    return RegulatorSetUp(
        machines=tuple(
            MachineSetUp(name, engines[g].name, sheet, machine_settings(boat, sheet, lambda _: "typed"))
            for (g, name), sheet in zip(names, sheets, strict=True)
        ),
        bank=bank_settings(boat, lambda _: "catalogue"),
        side_loads=side_loads(boat, sheets),
        engines=tuple(engine.name for engine in engines),
        hours=(hour(20e6, 24e6, 1200.0),),
        load_dump=LoadDump(0.2, (0.2,), 202.0, 250.0, 186.0, 58.0, 900.0),
    )


def page(capsys: pytest.CaptureFixture[str], system: System = "si", **changes: Any) -> str:
    show(regulator.screen(fake.assessment(regulator=replace(made(), **changes)), system))
    return capsys.readouterr().out


def flat(text: str) -> str:
    return " ".join(text.split())


@pytest.mark.parametrize("system", ["si", "us"])
def test_it_fits_80_columns(capsys: pytest.CaptureFixture[str], system: System) -> None:
    assert max(len(line) for line in page(capsys, system).splitlines()) <= 80


def test_machines_that_are_set_alike_are_told_once(capsys: pytest.CaptureFixture[str]) -> None:
    text = flat(page(capsys))
    assert "port alternator and starboard alternator on main engine, each set alike" in text
    assert "small on wing engine" in text
    assert text.count("What to set by engine speed") == 2


def test_every_setting_has_its_formula_inputs_and_source(capsys: pytest.CaptureFixture[str]) -> None:
    text = flat(page(capsys))
    for setting in (*made().machines[0].settings, *made().bank):
        assert setting.name in text
        assert setting.formula in text
        assert setting.source in text
    assert "current limit of the file 180 A, typed" in text


def test_the_hour_stands_side_by_side_with_what_the_insulation_bears(capsys: pytest.CaptureFixture[str]) -> None:
    text = flat(page(capsys))
    assert "Held: 5.6 kWh, winding up to 121.0 °C, never over" in text
    assert "6.7 kWh, winding up to 187.0 °C, 20 min of it over the limit of its insulation" in text
    assert "Both are alike" not in text


def test_an_hour_in_which_the_hold_does_nothing_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    text = flat(page(capsys, hours=(hour(20e6, 20e6),)))
    assert "Both are alike: in air of 43.0 °C" in text
    assert "above 45.3 °C" in text


def test_windings_that_burn_are_told(capsys: pytest.CaptureFixture[str]) -> None:
    burnt = replace(hour(20e6, 20e6), hot=None)
    text = flat(page(capsys, hours=(burnt,)))
    assert "windings past 400.0 °C within the hour, which no insulation bears" in text
    plain = regulator.plain(fake.assessment(regulator=replace(made(), hours=(burnt,))))
    assert plain["hours"][0]["hot"] is None


def test_the_maker_must_be_asked(capsys: pytest.CaptureFixture[str]) -> None:
    assert "what the engine's maker allows is not in the file: ask" in flat(page(capsys))
    told = tuple(replace(one, limit=4000.0) for one in made().side_loads)
    assert "the engine's maker allows 4000 N" in flat(page(capsys, side_loads=told))


def test_a_load_dump_at_48_v_has_no_figure(capsys: pytest.CaptureFixture[str]) -> None:
    dump = LoadDump(0.9, (0.9,), NAN, 250.0, NAN, NAN, NAN)
    assert "ISO 16750-2 has peaks for 12 and 24 V only" in flat(page(capsys, load_dump=dump))
    plain = regulator.plain(fake.assessment(regulator=replace(made(), load_dump=dump)))
    assert plain["load_dump"]["clamp_energy_J"] is None


def test_cautions_of_the_engine_and_of_the_program_stand_below(capsys: pytest.CaptureFixture[str]) -> None:
    text = flat(page(capsys))
    for words in (*CAUTIONS, *fake.CAUTIONS):
        assert words in text


def test_no_alternator_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    text = page(capsys, machines=(), side_loads=(), hours=(), load_dump=None)
    assert "No engine of this design carries an alternator." in text


def keys(plain: Any) -> set[str]:
    if isinstance(plain, dict):
        return set(plain).union(*(keys(value) for value in plain.values()))
    if isinstance(plain, list):
        return set().union(*(keys(value) for value in plain))
    return set()


def test_every_key_of_a_figure_ends_in_its_unit() -> None:
    plain = regulator.plain(fake.assessment(regulator=made()))
    json.dumps(plain, allow_nan=False)
    groups = {"alternators", "speeds", "settings", "belt", "inputs", "crankshafts", "hours", "held", "hot", "moments",
              "load_dump", "cautions"}  # fmt: skip
    found = keys(plain) - groups - WORDS - BARE - {"engine_speeds_rpm"}
    assert {key for key in found if not key.endswith(ENDS)} == set()


def test_tables_have_a_row_a_speed_and_a_row_a_setting() -> None:
    assessment = fake.assessment(regulator=made())
    assert len(regulator.rows(assessment)) == sum(len(one.sheet.rows) for one in made().machines)
    settings = regulator.settings(assessment)
    assert len(settings) == sum(len(one.settings) for one in made().machines) + len(made().bank)
    assert {row["unit"] for row in settings} == {"A", "V", "°C", "s"}
