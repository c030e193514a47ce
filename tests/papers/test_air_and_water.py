"""What is shown of air, refrigerant and water."""

from __future__ import annotations

import json

import pytest
from tests.papers import fake

from anchorwatt.cli.terminal import show
from anchorwatt.papers import air_and_water, air_and_water_json
from anchorwatt.papers.page import Page, section
from anchorwatt.units import System


def page(capsys: pytest.CaptureFixture[str], system: System = "si", **changes: object) -> str:
    made = fake.assessment(**changes)
    parts = (
        air_and_water.comfort, air_and_water.breathed, air_and_water.water, air_and_water.ducts,
        air_and_water.refrigerant, air_and_water.seawater,
    )  # fmt: skip
    show(Page(tuple(section(part.__name__, *part(made, system)) for part in parts)))
    return capsys.readouterr().out


@pytest.mark.parametrize("system", ["si", "us"])
def test_pages_fit_80_columns(capsys: pytest.CaptureFixture[str], system: System) -> None:
    assert max(len(line) for line in page(capsys, system).splitlines()) <= 80


def test_a_cabin_is_named_once(capsys: pytest.CaptureFixture[str]) -> None:
    text = page(capsys).split("breathed")[0]
    assert text.count("owner's cabin") == 1
    assert "06:00" in text


def test_units_follow_the_reader(capsys: pytest.CaptureFixture[str]) -> None:
    assert "ppm" in page(capsys)
    us = page(capsys, "us")
    assert "cfm" in us
    assert "ft/min" in us


def test_below_the_standards_activity_it_says_so(capsys: pytest.CaptureFixture[str]) -> None:
    assert "a guide" in page(capsys)


def test_nobody_aboard_is_no_fault(capsys: pytest.CaptureFixture[str]) -> None:
    text = page(capsys, comfort=(), cabin_air=(), handlers_air=(), refrigerant=None)
    assert text.count("Nobody is aboard") == 2
    assert "no outlet" in text or "has an outlet" in text


def test_a_charge_beyond_its_limit_shows_what_helps(capsys: pytest.CaptureFixture[str]) -> None:
    text = page(capsys)
    assert "→ a leak detector" in text
    assert "largest charge over the smallest floor" in text
    assert "certified people" in text


def test_json_carries_units_in_its_keys() -> None:
    made = fake.assessment()
    night, pipes = air_and_water_json.night_air(made), air_and_water_json.pipes(made)
    json.dumps([night, pipes], allow_nan=False)
    assert night["carbon_dioxide"][0]["highest_ppm"] == 980.0
    assert night["condensate"]["night_L"] == 6.0
    assert night["comfort"][0]["dissatisfied_pct"] == 8.0
    assert pipes["handlers"][0]["outlets"][0]["airflow_L_per_s"] == 58.0
    assert pipes["refrigerant"]["concentration_kg_per_m3"] == 0.117
    assert pipes["seawater"]["flow_L_per_min"] == pytest.approx(21.6)
