"""The starter boats as engineering: different in kind, and sensible."""

from __future__ import annotations

import math

import pytest

from anchorwatt import design
from anchorwatt.design.specification import Doing, Specification


@pytest.fixture(params=design.starters())
def starter(request: pytest.FixtureRequest) -> str:
    return str(request.param)


@pytest.fixture
def boat(starter: str) -> Specification:
    return design.specify(design.parse(design.starter_text(starter)))


def test_the_default_is_the_trawler() -> None:
    assert design.starters() == ("trawler-14m", "catamaran-13m", "cutter-12m")


def test_each_says_that_all_but_the_weather_is_invented(starter: str) -> None:
    comments = [line for line in design.starter_text(starter).splitlines() if line.startswith("#")]
    assert "invented" in " ".join(comments)
    assert "Only the weather is real" in " ".join(comments)


def test_handlers_together_are_larger_than_the_compressor(boat: Specification) -> None:
    total = sum(handler.rated_capacity for handler in boat.plant.handlers)
    assert 1.3 <= total / boat.plant.circuit.rated_capacity <= 1.6


def test_every_sleeping_cabin_is_cooled_by_night(boat: Specification) -> None:
    night = max(boat.plan, key=lambda period: period.start)
    for cabin, set_point in zip(boat.cabins, night.set_points, strict=True):
        assert (cabin.use == "sleeping") == (not math.isnan(set_point))


def test_the_boat_motors_for_some_hours_by_day(boat: Specification) -> None:
    hours = sum((one.end - one.start) / 3600.0 for one in boat.plan if one.doing is Doing.MOTORING)
    assert 2.0 <= hours <= boat.brief.recharge / 3600.0


def test_the_inverter_carries_the_plant_at_its_rating(boat: Specification) -> None:
    fans = sum(handler.fan_power for handler in boat.plant.handlers)
    assert boat.plant.circuit.rated_power + boat.plant.pump_power + fans < boat.inverter.rated_power


def test_the_installation_stays_under_its_mass_limit(boat: Specification) -> None:
    parts = [boat.plant.mass, boat.inverter.mass, boat.bank.mass]
    parts += [handler.mass for handler in boat.plant.handlers]
    parts += [part.mass for part in (boat.transformer, boat.charger, boat.solar) if part is not None]
    parts += [alternator.mass for engine in boat.engines for alternator in engine.alternators]
    assert sum(parts) < boat.brief.mass_limit


def test_the_alternators_cold_refill_the_bank_within_the_brief(boat: Specification) -> None:
    taken = boat.bank.capacity * (boat.brief.charge_at_start - boat.brief.reserve)
    given = sum(alternator.current_limit for engine in boat.engines for alternator in engine.alternators)
    assert taken / min(given, boat.bank.charge_current) < boat.brief.recharge


def test_they_differ_in_kind() -> None:
    made = [design.specify(design.parse(design.starter_text(name))) for name in design.starters()]
    assert [round(one.bank.nominal_voltage) for one in made] == [26, 51, 13]
    assert [len(one.engines) for one in made] == [1, 2, 1]
    assert [sum(cabin.use == "sleeping" for cabin in one.cabins) for one in made] == [3, 4, 2]
    assert [one.solar is not None for one in made] == [False, True, True]
