from __future__ import annotations

import json
import math
from pathlib import Path
from typing import Any

import pytest
from tests.papers import fake

from anchorwatt.assessment import Verdict
from anchorwatt.papers import as_json


def assessed(**changes: Any) -> dict[str, Any]:
    """Through the text and back, as a caller meets it."""
    plain = as_json.assessment(fake.assessment(**changes), Path("boat.yaml"))
    return dict(json.loads(as_json.printed(plain)))


@pytest.mark.parametrize(
    ("key", "value"),
    [
        ("hold_hours", 12.5),
        ("required_hours", 10.0),
        ("charge_at_dawn_pct", 36.0),
        ("night_energy_kWh", 9.0),
        ("peak_plant_power_W", 1480.0),
        ("peak_inverter_power_W", 1720.0),
        ("engine_hours_to_recharge", 2.5),
        ("recharge_fuel_L", 6.1),
        ("mass_added_kg", 412.0),
        ("heel_deg", -1.0),
        ("trim_cm", 4.0),
        ("total_EUR", 57_682.51),
        ("checks_failed", 1),
    ],
)
def test_the_headline_is_in_the_units_of_its_keys(key: str, value: float) -> None:
    assert assessed()["headline"][key] == pytest.approx(value)


def test_a_recharge_that_never_ends_is_null() -> None:
    never = fake.answers(recharge=math.nan)
    assert assessed(headline=never)["headline"]["engine_hours_to_recharge"] is None


def test_a_cooled_cabin_has_its_load_and_its_night() -> None:
    first = assessed()["cabins"][0]
    assert (first["name"], first["peak_at"], first["peak_sensible_W"]) == ("owner's cabin", "16:00", 740.0)
    assert first["night_max_relative_humidity_pct"] == pytest.approx(61.0)


def test_a_cabin_that_is_never_cooled_has_no_load() -> None:
    second = assessed()["cabins"][1]
    assert [second[key] for key in ("peak_sensible_W", "peak_latent_W", "peak_at")] == [None, None, None]
    assert second["night_max_air_temperature_C"] == 24.7


def test_the_worst_check_comes_first() -> None:
    assert [check["verdict"] for check in assessed()["checks"]] == ["fails", "holds"]


def test_a_check_that_cannot_tell_has_no_value() -> None:
    unknown = fake.finding(Verdict.CANNOT_TELL, value=math.nan)
    assert assessed(checks=(unknown,))["checks"][0]["value"] is None


def test_a_check_says_in_which_unit_it_is() -> None:
    check = assessed()["checks"][0]
    assert (check["value"], check["limit"], check["unit"]) == (36.0, 20.0, "%")


def test_estimates_carry_rule_and_source() -> None:
    assert assessed()["estimates"][0] == {
        "key": "boat.waterline",
        "value": "42 ft",
        "rule": "92 % of the length",
        "source": "from memory",
    }


def test_cautions_are_there() -> None:
    assert assessed()["cautions"] == list(fake.CAUTIONS)


def test_the_night_of_assess_is_hourly_and_that_of_night_is_by_the_minute() -> None:
    assert len(assessed()["night"]["rows"]) == 10
    assert len(as_json.night(fake.assessment())["rows"]) == 600


def test_a_boat_without_an_alternator_has_no_recharge() -> None:
    assert assessed(recharge=None)["recharge"] is None
    assert as_json.recharge(fake.assessment(recharge=None))["recharge"] is None


def test_recharge_rows_name_the_alternator() -> None:
    row = as_json.recharge(fake.assessment())["recharge"]["rows"][0]
    assert row["alternator_current_A.port"] == 90.0
    assert row["fuel_flow_L_per_h"] == pytest.approx(7.0)


def test_why_gives_the_inputs_and_where_they_are_from() -> None:
    plain = as_json.why(fake.answers()[0])
    assert plain["hold_hours"] == 12.5
    assert plain["inputs"] == [{"name": "bank", "value": 43.2e6, "unit": "J", "basis": "typed"}]
