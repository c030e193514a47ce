from __future__ import annotations

import math

import pytest

from anchorwatt.papers.keys import figure, in_unit, unit_of


@pytest.mark.parametrize(
    ("key", "unit"),
    [
        ("hold_hours", "h"),
        ("charge_at_dawn_pct", "%"),
        ("night_energy_kWh", "kWh"),
        ("peak_plant_power_W", "W"),
        ("fuel_flow_L_per_h", "L/h"),
        ("relative_humidity_pct.owner's cabin", "%"),
    ],
)
def test_the_end_of_a_key_is_its_unit(key: str, unit: str) -> None:
    assert unit_of(key) == unit


def test_money_is_an_amount_without_a_unit() -> None:
    assert in_unit(65_000.25, "", "money") == 65_000.25
    assert in_unit(math.nan, "", "money") is None


def test_a_key_without_a_unit_is_refused() -> None:
    with pytest.raises(KeyError, match="ends in no unit"):
        unit_of("charge")


def test_a_figure_is_in_the_unit_of_its_key() -> None:
    assert figure("night_energy_kWh", 3.6e6, "energy") == 1.0


def test_what_is_not_known_is_none() -> None:
    assert figure("hold_hours", math.nan, "time") is None


def test_a_count_stays_a_whole_number() -> None:
    assert in_unit(3.0, "", "count") == 3
    assert isinstance(in_unit(3.0, "", "count"), int)
