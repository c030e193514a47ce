"""Heating, openings and people of the plan."""

from __future__ import annotations

import math
from typing import Any

import pytest
from tests.design.strategies import as_text
from tests.design.test_specify import minimal

from anchorwatt import catalogue, design
from anchorwatt.design.fill_people import fill_person
from anchorwatt.design.specification import Period, Person


def period(**said: Any) -> Period:
    plan = [{"start": "00:00", "end": "24:00", "doing": "at anchor", **said}]
    (one,) = design.specify(design.parse(as_text(minimal(plan=plan)))).plan
    return one


def test_cabins_that_are_heated_have_a_warm_point_and_no_set_point() -> None:
    one = period(heat={"cabin": "20 °C"})
    assert math.isnan(one.warm_points[0])
    assert one.warm_points[1] == 20.0
    assert all(math.isnan(point) for point in one.set_points)


def test_openings_are_told_by_cabin() -> None:
    assert period(ajar={"saloon": "0.5 m2"}).openings == (0.5, 0.0)
    assert period().openings == (0.0, 0.0)


def test_estimated_windows_can_be_opened_too() -> None:
    """`minimal` says nothing of windows; the saloon's are estimated."""
    saloon = design.specify(design.parse(as_text(minimal()))).cabins[0]
    glazed = sum(window.area for window in saloon.windows)
    assert period(ajar={"saloon": f"{glazed * 0.999} m2"}).openings[0] > 0.0


@pytest.fixture(params=catalogue.names("person"))
def person(request: pytest.FixtureRequest) -> Person:
    return fill_person(catalogue.find("person", request.param))  # type: ignore[arg-type]


def test_heat_and_metabolic_rate_of_a_person_agree(person: Person) -> None:
    """58.2 W/m2 on 1.8 m2; the tables of heat and of rates differ by up to a tenth."""
    assert (person.sensible + person.latent) / (58.2 * 1.8) == pytest.approx(person.metabolic_rate, rel=0.12)


def test_who_does_more_breathes_out_more() -> None:
    people = [fill_person(row) for row in catalogue.rows("person").values()]  # type: ignore[arg-type]
    by_rate = sorted(people, key=lambda one: one.metabolic_rate)
    assert [one.carbon_dioxide for one in by_rate] == sorted(one.carbon_dioxide for one in people)


def test_a_sleeper_breathes_out_what_95_percent_of_the_basal_rate_of_a_mean_adult_gives() -> None:
    """The mean of man and woman of 7.73 and 6.09 MJ a day (Persily and de Jonge 2017), asleep at 0.95 of it."""
    asleep = fill_person(catalogue.find("person", "asleep"))  # type: ignore[arg-type]
    daily = (7.73 + 6.09) / 2.0
    expected = 0.85 * daily * 0.95 * (293.15 / 101.325) * 0.000211e-3
    assert asleep.carbon_dioxide == pytest.approx(expected, rel=0.05)
