"""The commissioning file: every test and caution is on paper, and its figures are the assessment's for the day."""

from __future__ import annotations

import io
import math
from itertools import pairwise

import pypdf
import pytest
from tests.starters import STARTERS, assessed

from anchorwatt.assessment.commissioning import Commissioning, Trial, air_split, commissioning, plant_today
from anchorwatt.errors import OutOfRange
from anchorwatt.papers.document import House
from anchorwatt.papers.sets.commissioning import INSTRUMENTS, document
from anchorwatt.papers.typeset import pdf

TRAWLER = "trawler-14m"


def words(file: bytes) -> str:
    told = " ".join(page.extract_text() for page in pypdf.PdfReader(io.BytesIO(file)).pages)
    return told.replace("\u200b", "").replace("\u00ad", "").replace("-", "")


def letters(some: str) -> str:
    """Without what line breaks change."""
    return "".join(some.replace("\u00ad", "").replace("-", "").split())


def made(sea: float | None = 24.0, air: float | None = 26.0, starter: str = TRAWLER) -> Commissioning:
    return commissioning(assessed(starter), "si", sea, air)


def trial(one: Commissioning, name: str) -> Trial:
    return next(test for test in one.tests if test.name.startswith(name))


def _said(one: Trial) -> tuple[str, ...]:
    return (one.name, one.do, one.proves, one.leaves_open, *one.cautions, *(reading.what for reading in one.readings))


@pytest.mark.parametrize(("starter", "system"), [("trawler-14m", "si"), ("cutter-12m", "us")])
def test_every_test_reading_and_caution_is_on_paper(starter: str, system: str) -> None:
    told = letters(words(pdf(document(assessed(starter), system, 24.0, 26.0), House())))  # type: ignore[arg-type]
    missing = [
        said
        for test in commissioning(assessed(starter), system, 24.0, 26.0).tests  # type: ignore[arg-type]
        for said in (
            test.name,
            test.do,
            test.proves,
            test.leaves_open,
            *test.cautions,
            *(r.what for r in test.readings),
        )
        if letters(said) not in told
    ]
    assert not missing


def test_cautions_stand_before_the_step_that_they_are_for() -> None:
    told = letters(words(pdf(document(assessed(TRAWLER), "si", None, None), House())))
    for test in made(None, None).tests:
        step = told.index(letters(test.do))
        for caution in test.cautions:
            assert told.rfind(letters(caution), 0, step) > told.rfind(letters(test.name), 0, step)


def test_there_is_room_for_every_instrument_and_for_who_tested() -> None:
    told = letters(words(pdf(document(assessed(TRAWLER), "si", None, None), House())))
    assert all(letters(said) in told for said in (*INSTRUMENTS, "make and serial number", "who tested"))


@pytest.mark.parametrize("starter", STARTERS)
def test_a_warmer_sea_gives_less_and_draws_more(starter: str) -> None:
    points = [plant_today(assessed(starter), float(sea)) for sea in range(12, 37, 3)]
    assert all(warm.load < cold.load for cold, warm in pairwise(points))
    assert all(warm.plant_power > cold.plant_power for cold, warm in pairwise(points))


def test_the_plant_at_full_speed_is_the_assessments_map() -> None:
    known = {point.sea: point for point in assessed(TRAWLER).plant.at(1.0)}
    power, compressor, capacity = trial(made(26.0), "Power and capacity").readings
    assert (power.expected, compressor.expected, capacity.expected) == pytest.approx(
        (known[26.0].plant_power, known[26.0].compressor_power, known[26.0].load)
    )


def test_the_seawaters_rise_carries_what_the_plant_takes_and_draws() -> None:
    flow, rise = trial(made(), "Flow and rise").readings
    _, compressor, capacity = trial(made(), "Power and capacity").readings
    # Sea water of 35 g/kg at 25 °C: 1023 kg/m³, 3.99 kJ/(kg K), the tables of ITTC and of UNESCO, from memory.
    carried = flow.expected * 1023.0 * 3990.0 * rise.expected
    assert carried == pytest.approx(capacity.expected + compressor.expected, rel=0.01)


@pytest.mark.parametrize(("what", "bound"), [("insulation", "1 MΩ or more"), ("earth", 1.0)])
def test_pass_values_of_the_dead_tests_are_the_trades(what: str, bound: str | float) -> None:
    # Common practice of US and ISO boat work, from memory.
    reading = trial(made(), what.capitalize()).readings[0]
    assert bound in (reading.words, reading.high)


@pytest.mark.parametrize("starter", STARTERS)
def test_an_earth_fault_device_trips_between_half_and_all_of_30_ma(starter: str) -> None:
    # IEC 61008: not below half the rated residual current, at or below the whole of it; 300 ms and 40 ms from memory.
    trip = trial(made(starter=starter), "Earth-fault").readings[0]
    assert (trip.low, trip.high) == (0.015, 0.030)


def test_a_drop_at_half_current_is_less_than_half_with_colder_copper_but_not_by_much() -> None:
    schedule = {one.circuit.tag: one for one in assessed(TRAWLER).wiring.wiring.circuits}
    readings = trial(made(), "Voltage drop").readings
    shares = [reading.expected / schedule[reading.what.split()[0]].conductor.drop for reading in readings]
    # Copper: 0.39 % a kelvin; cable of 105 °C insulation in 20 °C air is at most 85 K colder.
    assert readings
    assert all(0.5 / 1.34 < share <= 0.5 for share in shares)


@pytest.mark.parametrize("starter", STARTERS)
def test_no_expected_value_lies_outside_what_is_accepted(starter: str) -> None:
    for test in made(starter=starter).tests:
        for reading in test.readings:
            assert not reading.expected < reading.low, (test.name, reading)
            assert not reading.expected > reading.high, (test.name, reading)


def test_an_alternator_is_colder_on_a_colder_day() -> None:
    cold, warm = (trial(made(air=air), "Alternator temperature").readings[0].expected for air in (10.0, 30.0))
    assert cold < warm


def test_charge_currents_are_the_regulator_sheets_at_five_speeds() -> None:
    machine = assessed(TRAWLER).regulator.machines[0]
    readings = trial(made(), f"Charge current of {machine.name}").readings
    assert len(readings) == 5
    assert {reading.expected for reading in readings} <= {row.set_current for row in machine.sheet.rows}


def test_the_air_splits_more_over_a_colder_coil_and_never_below_it() -> None:
    handler = assessed(TRAWLER).specification.plant.handlers[0]
    splits = [air_split(handler, handler.airflow, 26.0, float(coil)) for coil in (2, 5, 8)]
    assert splits == sorted(splits, reverse=True)
    assert splits[0] < 26.0 - 2.0


def test_the_split_of_the_usual_cooling_coil_is_found() -> None:
    # Handbooks of the trade give 8 to 14 K for air of 24 to 27 °C, from memory.
    handler = assessed(TRAWLER).specification.plant.handlers[0]
    assert 8.0 < air_split(handler, handler.airflow, 26.0, 7.0) < 15.0


def test_a_day_too_cold_for_the_split_says_so() -> None:
    readings = trial(made(sea=8.0, air=8.0), "Temperature split").readings
    assert all("too cold today" in reading.words for reading in readings)


def test_charge_at_dawn_is_the_design_nights() -> None:
    dawn = trial(made(), "A night on the bank").readings[0]
    assert dawn.expected == pytest.approx(assessed(TRAWLER).answer("charge_at_dawn_pct").value)
    assert dawn.low == dawn.expected


@pytest.mark.parametrize(("sea", "air"), [(-3.0, 20.0), (45.0, 20.0), (20.0, -30.0), (20.0, 70.0), (math.nan, 20.0)])
def test_a_temperature_that_no_test_day_has_is_told(sea: float, air: float) -> None:
    with pytest.raises(OutOfRange, match="test day must be between"):
        made(sea, air)


def test_without_temperatures_the_sheet_is_for_the_design_day() -> None:
    one = made(None, None)
    assert (one.sea, one.air) == (one.design_sea, one.design_air)
    assert not one.sea_typed
