"""Conductors against the law's ampacity table, the gauge's and the metric series, and worked examples."""

from __future__ import annotations

import pytest

from anchorwatt.catalogue import find
from anchorwatt.catalogue.conductor import Conductor
from anchorwatt.physics.conductor import (
    ambient_factor,
    area_for_drop,
    conductor_loss,
    resistance_per_length,
    resistance_ratio,
    voltage_drop,
)
from anchorwatt.sizing.conductors import CableRun, ambient_share, ampacity, bundle_share, resistance, series, sized
from anchorwatt.units import WireGauge

FOOT = 0.3048
MIL = 0.0254e-3
CIRCULAR_MIL = 0.25 * 3.141592653589793 * MIL * MIL

TABLE_5 = "33 CFR 183.425 table 5"
CLASSES = (60.0, 75.0, 80.0, 90.0, 105.0, 125.0, 200.0)
AMPACITIES = {
    "18 AWG": (10, 10, 15, 20, 20, 25, 25),
    "16 AWG": (15, 15, 20, 25, 25, 30, 35),
    "14 AWG": (20, 20, 25, 30, 35, 40, 45),
    "12 AWG": (25, 25, 35, 40, 45, 50, 55),
    "10 AWG": (40, 40, 50, 55, 60, 70, 70),
    "8 AWG": (55, 65, 70, 70, 80, 90, 100),
    "6 AWG": (80, 95, 100, 100, 120, 125, 135),
    "4 AWG": (105, 125, 130, 135, 160, 170, 180),
    "3 AWG": (120, 145, 150, 155, 180, 195, 210),
    "2 AWG": (140, 170, 175, 180, 210, 225, 240),
    "1 AWG": (165, 195, 210, 210, 245, 265, 280),
    "1/0 AWG": (195, 230, 245, 245, 285, 305, 325),
    "2/0 AWG": (225, 265, 285, 285, 330, 355, 370),
    "3/0 AWG": (260, 310, 330, 330, 385, 410, 430),
    "4/0 AWG": (300, 360, 385, 385, 445, 475, 510),
}


def conductor(name: str) -> Conductor:
    found = find("conductor", name)
    assert isinstance(found, Conductor)
    return found


@pytest.mark.parametrize(("name", "printed"), AMPACITIES.items(), ids=[f"{TABLE_5}, {name}" for name in AMPACITIES])
def test_ampacity_in_air_of_30_degrees(name: str, printed: tuple[float, ...]) -> None:
    for insulation, carries in zip(CLASSES, printed, strict=True):
        assert ampacity(conductor(name), insulation) == pytest.approx(carries, abs=1e-9)


# Class °C, share left in an engine space of 50 °C, where the figure was found.
NOTE_1 = [
    (60.0, 0.58, "from memory"),
    (75.0, 0.75, "from memory"),
    (80.0, 0.78, "from memory"),
    (90.0, 0.82, "from memory"),
    (105.0, 0.85, "trade reprint"),
    (125.0, 0.89, "from memory"),
    (200.0, 1.00, "from memory"),
]


@pytest.mark.parametrize(
    ("insulation", "share"),
    [(insulation, share) for insulation, share, _ in NOTE_1],
    ids=[f"{TABLE_5} note 1, {insulation:g} °C, {found}" for insulation, _, found in NOTE_1],
)
def test_an_engine_space_leaves_the_share_of_note_1(insulation: float, share: float) -> None:
    assert ambient_share(insulation, 50.0) == pytest.approx(share, abs=1e-9)


@pytest.mark.parametrize(
    ("insulation", "share"),
    [(insulation, share) for insulation, share, _ in NOTE_1[:-1]],
    ids=[f"{TABLE_5} note 1, {insulation:g} °C, {found}" for insulation, _, found in NOTE_1[:-1]],
)
def test_the_law_behind_note_1_is_within_its_rounding_nearly(insulation: float, share: float) -> None:
    """0.01, twice the rounding; the 200 °C class, which the note does not derate at all, is left out."""
    assert ambient_factor(insulation, 50.0) == pytest.approx(share, abs=0.01)


def test_33_cfr_183_425_table_5_with_note_1_2_0_awg_of_105_degrees_carries_280_5_a_in_an_engine_space() -> None:
    assert ampacity(conductor("2/0 AWG"), 105.0, 50.0) == pytest.approx(280.5, abs=0.05)


def test_33_cfr_183_425_a_conductor_run_singly_is_16_awg_or_larger() -> None:
    found = sized(CableRun("example", 0.5, 1.0, 12.0, 0.10), series(metric=False))
    assert found.conductor.name == "16 AWG"


def test_33_cfr_183_425_a_core_in_a_sheath_is_18_awg_or_larger() -> None:
    found = sized(CableRun("example", 0.5, 1.0, 12.0, 0.10, sheathed=True), series(metric=False))
    assert found.conductor.name == "18 AWG"


def test_iso_10133_a_sample_a_conductor_run_singly_is_1_mm2_or_larger() -> None:
    found = sized(CableRun("example", 0.5, 1.0, 12.0, 0.10), series(metric=True))
    assert found.conductor.name == "1 mm²"


def test_iso_10133_a_sample_a_core_in_a_sheath_is_0_75_mm2_or_larger() -> None:
    found = sized(CableRun("example", 0.5, 1.0, 12.0, 0.10, sheathed=True), series(metric=True))
    assert found.conductor.name == "0.75 mm²"


NOTE_2 = [(1, 1.0), (2, 1.0), (3, 0.70), (4, 0.60), (6, 0.60), (7, 0.50), (24, 0.50), (25, 0.40), (40, 0.40)]


@pytest.mark.parametrize(("conductors", "share"), NOTE_2, ids=[f"{TABLE_5} note 2, {n} conductors" for n, _ in NOTE_2])
def test_a_bundle_leaves_the_share_of_note_2_from_50_volts(conductors: int, share: float) -> None:
    assert bundle_share(conductors, 50.0) == pytest.approx(share, abs=1e-9)
    assert bundle_share(conductors, 48.0) == pytest.approx(1.0, abs=1e-9)


# Circular mils of the National Electrical Code's chapter 9, table 8, from memory.
CIRCULAR_MILS = {
    "18 AWG": 1620.0,
    "16 AWG": 2580.0,
    "14 AWG": 4110.0,
    "12 AWG": 6530.0,
    "10 AWG": 10_380.0,
    "8 AWG": 16_510.0,
    "6 AWG": 26_240.0,
    "4 AWG": 41_740.0,
    "3 AWG": 52_620.0,
    "2 AWG": 66_360.0,
    "1 AWG": 83_690.0,
    "1/0 AWG": 105_600.0,
    "2/0 AWG": 133_100.0,
    "3/0 AWG": 167_800.0,
    "4/0 AWG": 211_600.0,
}


@pytest.mark.parametrize(
    ("name", "mils"),
    CIRCULAR_MILS.items(),
    ids=[f"NEC chapter 9 table 8, from memory, {name}" for name in CIRCULAR_MILS],
)
def test_area_of_a_gauge(name: str, mils: float) -> None:
    """0.5 %: the table rounds to three or four figures."""
    assert WireGauge.parse(name).area / CIRCULAR_MIL == pytest.approx(mils, rel=0.005)


# Ohm in 1000 ft at 75 °C, stranded copper, National Electrical Code chapter 9 table 8, from memory.
OHMS = {
    "14 AWG": 3.14,
    "12 AWG": 1.98,
    "10 AWG": 1.24,
    "8 AWG": 0.778,
    "6 AWG": 0.491,
    "4 AWG": 0.308,
    "3 AWG": 0.245,
    "2 AWG": 0.194,
    "1 AWG": 0.154,
    "1/0 AWG": 0.122,
    "2/0 AWG": 0.0967,
    "3/0 AWG": 0.0766,
    "4/0 AWG": 0.0608,
}


@pytest.mark.parametrize(
    ("name", "ohms"), OHMS.items(), ids=[f"NEC chapter 9 table 8, from memory, {name}, 75 °C" for name in OHMS]
)
def test_resistance_of_a_gauge_from_its_build(name: str, ohms: float) -> None:
    """0.5 %, which covers the printed rounding and the 2 % that strands are longer."""
    each = resistance_per_length(WireGauge.parse(name).area) * resistance_ratio(75.0)
    assert each * 1000.0 * FOOT == pytest.approx(ohms, rel=0.005)


# mm², ohm/km at 20 °C, plain and tinned.
CLASS_5 = [
    (0.75, 26.0, 26.7),
    (1.0, 19.5, 20.0),
    (1.5, 13.3, 13.7),
    (2.5, 7.98, 8.21),
    (4.0, 4.95, 5.09),
    (6.0, 3.30, 3.39),
    (10.0, 1.91, 1.95),
    (16.0, 1.21, 1.24),
    (25.0, 0.780, 0.795),
    (35.0, 0.554, 0.565),
    (50.0, 0.386, 0.393),
    (70.0, 0.272, 0.277),
    (95.0, 0.206, 0.210),
    (120.0, 0.161, 0.164),
    (150.0, 0.129, 0.132),
]


@pytest.mark.parametrize(
    ("section", "plain", "tinned"), CLASS_5, ids=[f"IEC 60228 class 5, {section:g} mm²" for section, *_ in CLASS_5]
)
def test_highest_resistance_of_a_metric_size(section: float, plain: float, tinned: float) -> None:
    row = conductor(f"{section:g} mm²")
    assert 1e3 * resistance(row) == pytest.approx(plain, abs=1e-9)
    assert 1e3 * resistance(row, tinned=True) == pytest.approx(tinned, abs=1e-9)


def test_iec_60028_resistivity_of_annealed_copper_is_1_58th() -> None:
    assert 1e6 * resistance_per_length(1.0, lay=1.0) == pytest.approx(0.017241, abs=0.5e-6)


def test_iec_60228_factor_from_20_to_75_degrees_is_1_216() -> None:
    assert resistance_ratio(75.0) == pytest.approx(1.216, abs=0.0005)


# A, ft of the loop, circular mils by the formula 10.75 I L / E for 3 % of 12 V.
FORMULA = "ABYC circular-mil formula with 10.75, from memory"
MIL_EXAMPLES = [(20.0, 20.0, 11_944.0), (200.0, 10.0, 59_722.0)]


@pytest.mark.parametrize(
    ("current", "feet", "mils"), MIL_EXAMPLES, ids=[f"{FORMULA}, {a:g} A, {f:g} ft" for a, f, _ in MIL_EXAMPLES]
)
def test_area_by_the_circular_mil_formula(current: float, feet: float, mils: float) -> None:
    """0.2 %: 10.75 ohm circular mils per foot is solid copper at 29 °C, to its last digit."""
    area = area_for_drop(current, feet * FOOT, 0.36, temperature=29.0, lay=1.0)
    assert area / CIRCULAR_MIL == pytest.approx(mils, rel=0.002)


def test_worked_example_from_memory_20_a_through_20_ft_at_12_v_takes_8_awg() -> None:
    found = sized(CableRun("example", 20.0, 10.0 * FOOT, 12.0, 0.03), series(metric=False))
    assert (found.conductor.name, found.governed_by) == ("8 AWG", "voltage drop")


def test_worked_example_from_memory_200_a_in_an_engine_space_takes_1_awg_by_ampacity() -> None:
    """2 AWG would do for the drop, but carries 0.85 × 210 A there."""
    circuit = CableRun("example", 200.0, 5.0 * FOOT, 12.0, 0.03, ambient=50.0)
    found = sized(circuit, series(metric=False))
    assert (found.conductor.name, found.governed_by) == ("1 AWG", "ampacity")
    assert ampacity(conductor("2 AWG"), 105.0, 50.0) == pytest.approx(178.0, abs=0.6)
    assert ampacity(conductor("1 AWG"), 105.0, 50.0) == pytest.approx(208.0, abs=0.6)


EXAMPLE_B = "worked from IEC 60228 class 5 and IEC 60028, 24 V, 250 A, 2.5 m one way, 70 mm²"


@pytest.mark.parametrize(
    ("temperature", "drop", "share", "loss"),
    [(20.0, 0.340, 0.0142, 85.0), (70.0, 0.407, 0.0170, 102.0)],
    ids=[f"{EXAMPLE_B}, {t} °C" for t in (20, 70)],
)
def test_drop_and_loss_of_a_main_cable(temperature: float, drop: float, share: float, loss: float) -> None:
    each = resistance(conductor("70 mm²"))
    found = voltage_drop(250.0, 5.0, each, temperature)
    assert found == pytest.approx(drop, abs=0.0005)
    assert found / 24.0 == pytest.approx(share, abs=0.00005)
    assert conductor_loss(250.0, 5.0, each, temperature) == pytest.approx(loss, abs=0.5)
