"""The week of the design file: its forms, its estimates, its refusals."""

from __future__ import annotations

from typing import Any

import pytest
from tests.design.strategies import as_text
from tests.design.test_specify import minimal

from anchorwatt import design
from anchorwatt.design.specification import PlannedDay, Specification
from anchorwatt.errors import BadDesign

HOUR = 3600.0


def made(*week: Any, **changes: Any) -> Specification:
    return design.specify(design.parse(as_text(minimal(week=list(week), **changes))))


def refused(*week: Any, **changes: Any) -> tuple[str, str, str]:
    with pytest.raises(BadDesign) as caught:
        made(*week, **changes)
    (problem,) = caught.value.problems
    return problem.key, problem.found, problem.allowed


def test_left_out_it_is_seven_days_by_the_plan_and_says_so() -> None:
    found = design.specify(design.parse(as_text(minimal())))
    assert found.week == (PlannedDay(True, 8 * HOUR, 0.0),) * 7
    assert [one.value for one in found.estimates if one.key == "week"] == ["7 days by the plan"]


def test_both_forms_of_a_day_are_read() -> None:
    found = made("by the plan", {"doing": "at anchor", "charging": "90 min", "start": "07:30"}, "at anchor")
    assert [(day.passage, day.charging_time) for day in found.week] == [(True, 0.0), (False, 5400.0), (False, 0.0)]
    assert found.week[1].charging_start == 7.5 * HOUR
    assert not [one for one in found.estimates if one.key.startswith("week")]


def test_a_start_that_is_not_typed_is_an_estimate() -> None:
    found = made({"doing": "at anchor", "charging": "2 h"})
    assert [(one.key, one.value) for one in found.estimates if one.key.startswith("week")] == [
        ("week.0.start", "08:00")
    ]
    assert found.week[0].charging_start == 8 * HOUR


@pytest.mark.parametrize(
    ("day", "key", "found", "allowed"),
    [
        ("at ancor", "week.0", "at ancor", "by the plan or at anchor"),
        ({"doing": "sailing"}, "week.0.doing", "sailing", "by the plan or at anchor"),
        ({"charging": "2 h"}, "week.0.doing", "nothing", "stays"),
        ({"doing": "at anchor", "chargin": "2 h"}, "week.0.chargin", "perhaps “charging”", "doing, charging, start"),
        ({"doing": "at anchor", "charging": "25 h"}, "week.0.charging", "25 h", "from 0 h to 24 h"),
        ({"doing": "at anchor", "charging": "2 kW"}, "week.0.charging", "2 kW", "a length of time"),
        ({"doing": "at anchor", "charging": "20 h", "start": "08:00"}, "week.0.charging", "from 08:00", "until"),
        ({"doing": "at anchor", "start": "08:00"}, "week.0.start", "without its length", "charging"),
    ],
)  # fmt: skip
def test_a_fault_is_told_once_where_it_stands(day: Any, key: str, found: str, allowed: str) -> None:
    problem = refused(day)
    assert problem[0] == key
    assert found in problem[1]
    assert allowed in problem[2]


@pytest.mark.parametrize(("number", "allowed"), [(0, "at least 1"), (15, "at most 14")])
def test_a_week_has_one_to_fourteen_days(number: int, allowed: str) -> None:
    assert allowed in refused(*["at anchor"] * number)[2]


def test_engines_may_run_until_the_next_night_begins_and_no_longer() -> None:
    """The night of `minimal` begins at 21:00."""
    assert made({"doing": "at anchor", "charging": "13 h", "start": "08:00"}).week[0].charging_time == 13 * HOUR
    assert "until the next night" in refused({"doing": "at anchor", "charging": "13.1 h", "start": "08:00"})[2]


def test_an_assessed_week_keeps_the_writers_text() -> None:
    text = as_text(minimal(week=["by the plan", {"doing": "at anchor", "charging": "2 h", "start": "08:00"}]))
    assert design.parse(text).document.text == text
