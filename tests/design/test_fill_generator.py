"""The generating set that a design is compared with."""

from __future__ import annotations

from typing import Any

import pytest
from tests.design.strategies import as_text
from tests.design.test_specify import minimal

from anchorwatt import catalogue, design
from anchorwatt.catalogue.generator import Generator
from anchorwatt.design.fill_generator import STARTING, night_peak, night_period
from anchorwatt.design.specification import Specification
from anchorwatt.errors import BadDesign

HOUR = 3600.0


def specified(**changes: Any) -> Specification:
    return design.specify(design.parse(as_text(minimal(**changes))))


def with_plant(unit: str) -> dict[str, Any]:
    cooling = minimal()["cooling"]
    return {"cooling": {"plant": {**cooling["plant"], "unit": unit}}}


def on_shore(service: str) -> dict[str, Any]:
    return {"ac": {**minimal()["ac"], "shore": service}}


def needed(made: Specification) -> float:
    night = night_period(made.plan, made.brief.night_start)
    return STARTING * night_peak(made.plant, made.loads, night, made.transformer)


def rating(name: str) -> float:
    record = catalogue.find("generator", name)
    assert isinstance(record, Generator)
    return float(record.rated_power)


def test_a_set_that_the_file_names_is_taken_and_is_no_estimate() -> None:
    made = specified(generator="diesel set 12 kW 60 Hz")
    assert made.generator is not None
    assert made.generator.name == "diesel set 12 kW 60 Hz"
    assert made.generator.price == 18_600.0
    assert not [one for one in made.estimates if one.key.startswith("generator")]


@pytest.mark.parametrize("unit", ["variable-speed 12 kBtu/h", "variable-speed 30 kBtu/h", "variable-speed 48 kBtu/h"])
def test_left_out_it_is_the_smallest_that_carries_the_night_and_says_so(unit: str) -> None:
    made = specified(**with_plant(unit))
    assert made.generator is not None
    assert made.generator.rated_power >= needed(made)
    smaller = [n for n in catalogue.names("generator") if rating(n) < made.generator.rated_power]
    assert all(rating(name) < needed(made) for name in smaller)
    (estimate,) = [one for one in made.estimates if one.key == "generator"]
    assert estimate.value == made.generator.name


@pytest.mark.parametrize(("service", "frequency"), [("120 V 30 A", "60 Hz"), ("230 V 16 A", "50 Hz")])
def test_its_frequency_is_that_of_the_shore_service(service: str, frequency: str) -> None:
    made = specified(**on_shore(service))
    assert made.generator is not None
    assert made.generator.name.endswith(frequency)


def test_none_is_chosen_where_none_is_large_enough() -> None:
    heater = {"appliance": {"like": "water heater", "power": "14 kW", "duty": "10 %"}}
    made = specified(ac={**minimal()["ac"], "loads": {"heater": heater}})
    assert made.generator is None
    assert not [one for one in made.estimates if one.key == "generator"]


def test_only_what_runs_by_night_is_counted() -> None:
    loads = {"heater": {"appliance": {"like": "water heater", "power": "1 kW", "duty": "10 %"}}}
    plan = minimal()["plan"]
    ac = {**minimal()["ac"], "loads": loads}
    running = specified(ac=ac)
    resting = specified(ac=ac, plan=[{**plan[0], "running": {"heater": "0 %"}}])
    assert needed(running) - needed(resting) == pytest.approx(STARTING * 1000.0)


@pytest.mark.parametrize("field", ["price", "service_price"])
def test_a_price_in_another_currency_is_refused(field: str) -> None:
    given = {"like": "diesel set 6 kW 50 Hz", field: "400 USD"}
    with pytest.raises(BadDesign, match=rf"generator.{field}: found “400 USD”; allowed: a price in EUR"):
        specified(generator=given)


def test_a_set_of_ones_own_may_have_no_price() -> None:
    record = dict(catalogue.part.raw("generator", "diesel set 6 kW 50 Hz"))
    own = {key: value for key, value in record.items() if key != "price"}
    made = specified(generator=own)
    assert made.generator is not None
    assert made.generator.price != made.generator.price


@pytest.mark.parametrize("clock", [0.0, 6.0, 6.999, 21.0, 24.0 * 3])
def test_the_night_is_found_over_midnight(clock: float) -> None:
    plan = [
        {"start": "07:00", "end": "21:00", "doing": "at anchor"},
        {"start": "21:00", "end": "07:00", "doing": "at anchor", "cool": {"cabin": "76 °F"}},
    ]
    made = specified(plan=plan)
    assert night_period(made.plan, clock * HOUR).set_points != made.plan[0].set_points
