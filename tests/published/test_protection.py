"""Protection against the law's rules, interrupting steps of the trade, standard ratings and a worked fault current."""

from __future__ import annotations

import math
from itertools import pairwise

import pytest
from tests.simulation import boats

from anchorwatt.catalogue import rows
from anchorwatt.catalogue.protective_device import ProtectiveDevice
from anchorwatt.design.specification import Regime
from anchorwatt.physics.fault_current import fault_current, fault_current_after, parallel_resistance, string_resistance
from anchorwatt.sizing.ac_safety import NEAR_INLET, TRIP_CURRENT
from anchorwatt.sizing.fault_current import shore_fault
from anchorwatt.sizing.protection import (
    IEC_STEPS,
    NEC_STEPS,
    Need,
    Protection,
    distances,
    highest_rating,
    next_step,
    protect,
)
from anchorwatt.sizing.selectivity import FUSES

LAW = "33 CFR 183.455"


def family(name: str) -> ProtectiveDevice:
    found = rows("protective_device")[name]
    assert isinstance(found, ProtectiveDevice)
    return found


# A of table 5, V, highest rating A: below 50 V 150 %; from 50 V the ampacity, or the next standard rating within 150 %.
RATINGS = [
    (100.0, 12.0, 150.0),
    (210.0, 24.0, 315.0),
    (445.0, 48.0, 667.5),
    (100.0, 120.0, 100.0),
    (95.0, 120.0, 100.0),
    (55.0, 120.0, 60.0),
    (245.0, 120.0, 250.0),
    (10.0, 120.0, 15.0),
    (9.0, 120.0, 9.0),
]


@pytest.mark.parametrize(
    ("ampacity", "voltage", "most"), RATINGS, ids=[f"{LAW}(c), {a:g} A, {v:g} V" for a, v, _ in RATINGS]
)
def test_highest_rating_for_a_conductor(ampacity: float, voltage: float, most: float) -> None:
    assert highest_rating(ampacity, voltage, Regime.CFR) == pytest.approx(most, abs=1e-9)


TRADE_E_11 = "ABYC E-11 by trade notes, not above ampacity, next standard rating up to 150 %"


@pytest.mark.parametrize(
    ("ampacity", "most"),
    [(100.0, 100.0), (95.0, 100.0), (9.0, 9.0)],
    ids=[f"{TRADE_E_11}, {a} A" for a in (100, 95, 9)],
)
def test_highest_rating_in_voluntary_practice_below_50_volts(ampacity: float, most: float) -> None:
    assert highest_rating(ampacity, 12.0, Regime.ABYC) == pytest.approx(most, abs=1e-9)


# m, regime, source of current, printed; whether bare or sheathed.
DISTANCES = [
    (f"{LAW}(b), 7 in", Regime.CFR, "bus", 0, 0.178, 0.0005),
    (f"{LAW}(b), 40 in where sheathed", Regime.CFR, "bus", 1, 1.02, 0.005),
    ("33 CFR 183.460 from memory, 72 in of the battery", Regime.CFR, "bank", 0, 1.83, 0.005),
    ("ABYC E-11 from memory, 7 in", Regime.ABYC, "bus", 0, 0.178, 0.0005),
    ("ABYC E-11 from memory, 72 in sheathed at the post", Regime.ABYC, "bank", 1, 1.83, 0.005),
    ("ISO 13297 from memory, 200 mm", Regime.ISO, "bus", 0, 0.200, 0.0005),
    ("ISO 13590, a sample, 500 mm sheathed", Regime.ISO, "bus", 1, 0.500, 0.0005),
    ("ISO 13297 from memory, battery about 1.8 m", Regime.ISO, "bank", 0, 1.8, 0.05),
]


@pytest.mark.parametrize(
    ("regime", "source", "column", "printed", "within"),
    [row[1:] for row in DISTANCES],
    ids=[row[0] for row in DISTANCES],
)
def test_distance_from_the_source(regime: Regime, source: str, column: int, printed: float, within: float) -> None:
    assert distances(source, regime)[column] == pytest.approx(printed, abs=within)


# Family, V, kA.
CAPACITIES = [
    ("trade mailing list 2013", "class T", 125.0, 20e3),
    ("trade fuse notes", "NH blade", 57.6, 25e3),
    ("trade fuse notes, lower end", "EV bolt-down", 57.6, 10e3),
    ("trade fuse notes, upper end", "EV bolt-down 50 kA", 57.6, 50e3),
    ("trade fuse notes", "MEGA", 32.0, 2e3),
    ("trade fuse notes", "MIDI", 32.0, 1e3),
    ("trade fuse notes", "blade", 32.0, 1e3),
    ("from memory", "ANL", 32.0, 6e3),
    ("from memory", "battery-post cube", 14.0, 10e3),
    ("from memory", "battery-post cube", 32.0, 5e3),
    ("from memory", "battery-post cube", 58.0, 2e3),
]


@pytest.mark.parametrize(
    ("name", "voltage", "current"),
    [row[1:] for row in CAPACITIES],
    ids=[f"{source}, {name}, {volts:g} V" for source, name, volts, _ in CAPACITIES],
)
def test_interrupting_capacity_of_a_family(name: str, voltage: float, current: float) -> None:
    assert family(name).interrupts(voltage) == pytest.approx(current, abs=1e-9)


def guarding(prospective: float, voltage: float = 25.6) -> Protection:
    return protect(Need(voltage, False, 100.0, 100.0, 178.0, prospective, "bank", Regime.CFR))


# kA steps of a main device by the battery's cranking current: what is fitted must reach the step.
STEPS = [("up to 650 CCA", 1500.0), ("651 to 1100 CCA", 3000.0), ("beyond 1100 CCA", 5000.0)]


@pytest.mark.parametrize(
    "step", [step for _, step in STEPS], ids=[f"ABYC E-11 by a trade table, {name}" for name, _ in STEPS]
)
def test_a_device_reaches_the_trades_steps(step: float) -> None:
    found = guarding(step)
    assert found.possible
    assert found.interrupting >= step


def test_trawlerforum_75323_beyond_10_ka_a_device_of_20_ka_at_125_v_dc() -> None:
    found = guarding(10_001.0)
    assert found.possible
    assert found.interrupting >= 20e3
    assert found.highest_voltage >= 125.0


def test_abyc_e_11_by_a_trade_table_120_v_shore_30_a_is_taken_at_3_ka() -> None:
    assert shore_fault(boats.boat(1)) == pytest.approx(3000.0, abs=1e-9)


NEC_240_6 = (
    *(15, 20, 25, 30, 35, 40, 45, 50, 60, 70, 80, 90, 100, 110, 125, 150, 175, 200),
    *(225, 250, 300, 350, 400, 450, 500, 600),
)
IEC_60898 = (6, 10, 13, 16, 20, 25, 32, 40, 50, 63)


def test_nec_240_6_standard_ratings_from_memory() -> None:
    assert NEC_STEPS == NEC_240_6


def test_iec_60898_standard_ratings_from_memory() -> None:
    assert IEC_STEPS == IEC_60898
    assert {*IEC_60898} <= {float(one) for one in family("AC breaker, curve C").ratings}


@pytest.mark.parametrize(
    ("lower", "step"),
    list(pairwise(NEC_240_6)),
    ids=[f"NEC 240.6, {a}" for a in NEC_240_6[:-1]],
)
def test_the_next_rating_above(lower: int, step: int) -> None:
    assert next_step(lower + 0.1, math.inf) == pytest.approx(step, abs=1e-9)


def test_nec_from_memory_a_continuous_load_is_taken_at_125_percent() -> None:
    assert guarding(1000.0).at_least == pytest.approx(125.0, abs=1e-9)


def test_iec_60269_from_memory_fuses_of_a_class_are_selective_from_1_6() -> None:
    assert pytest.approx(1.6, abs=1e-9) == FUSES


CELLS = "worked from a 202 Ah cell sheet (0.2 mΩ) and 0.05 mΩ a link, four in series at 3.3 V"


def test_worked_four_cells_and_their_links_are_about_1_0_mohm() -> None:
    assert 1e3 * string_resistance(4, 0.2e-3, 0.05e-3) == pytest.approx(1.0, abs=0.05)


@pytest.mark.parametrize(
    ("strings", "printed", "within"),
    [(1, 13.2e3, 50.0), (2, 26e3, 500.0)],
    ids=[f"{CELLS}, {n} strings" for n in (1, 2)],
)
def test_fault_current_of_strings_of_four_cells(strings: int, printed: float, within: float) -> None:
    each = string_resistance(4, 0.2e-3, 0.05e-3)
    assert fault_current(13.2, parallel_resistance(each, strings)) == pytest.approx(printed, abs=within)


def test_worked_two_such_strings_are_beyond_a_20_ka_fuse_and_one_is_not() -> None:
    each = string_resistance(4, 0.2e-3, 0.05e-3)
    limit = family("class T").interrupts(13.2)
    assert fault_current(13.2, each) < limit < fault_current(13.2, parallel_resistance(each, 2))


# A 12.8 V 100 Ah pack: bounds of its resistance, and the fault.
PACKS = [
    ("data sheet bound of 20 mΩ", 20e-3, 0.66e3, 5.0),
    ("2 mΩ, from memory", 2e-3, 6e3, 700.0),
    ("4 mΩ, from memory", 4e-3, 3e3, 350.0),
]


@pytest.mark.parametrize(
    ("resistance", "printed", "within"),
    [row[1:] for row in PACKS],
    ids=[f"12.8 V 100 Ah pack, {row[0]}" for row in PACKS],
)
def test_fault_current_of_a_pack(resistance: float, printed: float, within: float) -> None:
    """At 13.2 V; the figures from memory are round ones."""
    assert fault_current(13.2, resistance) == pytest.approx(printed, abs=within)


def test_ohms_law_a_cable_of_the_banks_own_resistance_halves_the_fault() -> None:
    assert fault_current_after(13.2, 13.2e3, 1.0e-3) == pytest.approx(6.6e3, abs=1e-6)


def test_abyc_e_11_11_11_1_by_a_forum_leakage_trips_at_30_ma_unless_a_transformer_is_within_10_ft() -> None:
    found = family("earth-fault device 30 mA")
    assert found.residual is not None
    assert float(found.residual) == pytest.approx(TRIP_CURRENT, abs=1e-12)
    assert pytest.approx(10 * 0.3048, abs=0.05) == NEAR_INLET


def test_from_memory_a_leakage_device_trips_within_100_ms() -> None:
    found = family("earth-fault device 30 mA")
    assert found.trip_time is not None
    assert float(found.trip_time) <= 0.1
