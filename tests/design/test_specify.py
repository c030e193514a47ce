"""Filling a design in: laws that hold for every valid design."""

from __future__ import annotations

import dataclasses
import math
from typing import Any

from hypothesis import HealthCheck, given, settings
from tests.design.strategies import as_text, designs

from anchorwatt import design
from anchorwatt.design.specification import Outside, Specification

ANY_DESIGN = settings(max_examples=15, deadline=None, suppress_health_check=[HealthCheck.too_slow])


def numbers(value: Any) -> list[float]:
    """All floats in a record, nan left out where the specification allows it."""
    if isinstance(value, float):
        return [value]
    if isinstance(value, tuple):
        return [number for one in value for number in numbers(one)]
    if dataclasses.is_dataclass(value):
        return [number for field in dataclasses.fields(value) for number in numbers(getattr(value, field.name))]
    return []


@ANY_DESIGN
@given(designs())
def test_every_valid_design_becomes_a_specification(drawn: dict[str, Any]) -> None:
    made = design.specify(design.parse(as_text(drawn)))
    assert isinstance(made, Specification)
    assert math.isnan(made.plant.safety.flammable_limit)  # none of the catalogue's plants holds what burns
    # What nobody but the maker knows, and what the simulation finds, is left open.
    engines = tuple(
        dataclasses.replace(
            engine,
            alternators=tuple(dataclasses.replace(machine, clamp_voltage=0.0) for machine in engine.alternators),
            side_load_limit=0.0 if math.isnan(engine.side_load_limit) else engine.side_load_limit,
            air_temperature=0.0 if engine.cabin >= 0 and math.isnan(engine.air_temperature) else engine.air_temperature,
        )
        for engine in made.engines
    )
    plant = dataclasses.replace(made.plant, safety=dataclasses.replace(made.plant.safety, flammable_limit=0.0))
    inverter = dataclasses.replace(made.inverter, output_voltage=0.0, output_frequency=0.0)
    for part in (
        made.cabins,
        made.partitions,
        plant,
        made.alternative,
        made.chilled,
        made.loads,
        inverter,
        made.bank,
        engines,
    ):
        assert all(math.isfinite(number) for number in numbers(part))


@ANY_DESIGN
@given(designs())
def test_areas_are_positive_and_windows_fit_their_faces(drawn: dict[str, Any]) -> None:
    made = design.specify(design.parse(as_text(drawn)))
    for cabin in made.cabins:
        assert cabin.volume > 0.0
        assert all(surface.area > 0.0 and surface.layers for surface in cabin.surfaces)
        assert all(window.area > 0.0 for window in cabin.windows)
        wet = [surface for surface in cabin.surfaces if surface.outside is Outside.SEA]
        assert all(surface.absorptance == 0.0 for surface in wet)


@ANY_DESIGN
@given(designs())
def test_the_plan_covers_a_day_exactly(drawn: dict[str, Any]) -> None:
    made = design.specify(design.parse(as_text(drawn)))
    assert sum((period.end - period.start) % 86_400.0 or 86_400.0 for period in made.plan) == 86_400.0
    assert all(len(period.set_points) == len(made.cabins) for period in made.plan)
    assert all(len(period.running) == len(made.loads) for period in made.plan)


@settings(ANY_DESIGN, max_examples=5)
@given(designs())
def test_what_was_typed_is_never_listed_as_an_estimate(drawn: dict[str, Any]) -> None:
    read = design.parse(as_text(drawn))
    for estimate in design.specify(read).estimates:
        assert design.origin(read, estimate.key) == "estimated"
        assert estimate.value
        assert estimate.rule
        assert estimate.source


@ANY_DESIGN
@given(designs())
def test_specifying_twice_gives_the_same(drawn: dict[str, Any]) -> None:
    read = design.parse(as_text(drawn))
    assert repr(design.specify(read)) == repr(design.specify(read))


SIDES = ["port", "starboard"]


def minimal(**changes: Any) -> dict[str, Any]:
    """What a designer knows on the first day: length, beam, floor areas, a foam-cored white hull."""
    return {
        "anchorwatt": 1,
        "name": "first enquiry",
        "boat": {"length": "46 ft", "beam": "14 ft", "hull": "foam-cored, white"},
        "place": {"weather": "pvlib:12839.tm2", "sea": "Miami Beach"},
        "cabins": {
            "saloon": {
                "use": "saloon",
                "deck": "main",
                "floor_area": "130 ft2",
                "sides": SIDES,
            },
            "cabin": {
                "use": "sleeping",
                "deck": "below",
                "floor_area": "80 ft2",
                "sides": SIDES,
            },
        },
        "cooling": {
            "plant": {
                "unit": "variable-speed 12 kBtu/h",
                "handlers": {"cabin": {"unit": "air handler 6 kBtu/h", "cabin": "cabin"}},
            }
        },
        "ac": {"inverter": {"unit": "inverter 24 V 3 kW"}},
        "dc": {
            "nominal_voltage": "24 V",
            "bank": {"module": "lithium 25.6 V 200 Ah", "series": 1, "parallel": 2},
        },
        "charging": {
            "engines": {
                "engine": {
                    "engine": "slow diesel 90 kW",
                    "alternators": {
                        "alternator": {
                            "alternator": "high-output 24 V 110 A",
                            "belt": "six-rib PK",
                            "pulley_ratio": 2.5,
                        }
                    },
                }
            }
        },
        "plan": [{"start": "00:00", "end": "24:00", "doing": "at anchor", "cool": {"cabin": "76 °F"}}],
        "brief": {"hold": "10 h", "night_start": "21:00", "reserve": "20 %", "recharge": "4 h"},
        **changes,
    }


def test_length_beam_floors_and_hull_are_enough_to_start() -> None:
    made = design.specify(design.parse(as_text(minimal())))
    keys = {estimate.key for estimate in made.estimates}
    assert {"boat.waterline", "boat.displacement", "cabins.cabin.height", "cabins.cabin.windows"} <= keys
    assert {"cabins.cabin.leakage", "brief.charge_at_start", "place.heading", "place.day"} <= keys


def test_estimates_are_shown_in_the_units_that_the_writer_uses() -> None:
    values = {one.key: one.value for one in design.specify(design.parse(as_text(minimal()))).estimates}
    assert values["cabins.cabin.height"] == "6.2 ft"
    boat = {"length": "14 m", "beam": "4.3 m", "hull": "foam-cored, white"}
    values = {one.key: one.value for one in design.specify(design.parse(as_text(minimal(boat=boat)))).estimates}
    assert values["cabins.cabin.height"] == "1.90 m"


def test_modules_in_series_and_parallel_make_the_bank() -> None:
    bank = {"module": "lithium 12.8 V 100 Ah", "series": 2, "parallel": 3, "link_resistance": "1 mohm"}
    made = design.specify(design.parse(as_text(minimal(dc={"nominal_voltage": "24 V", "bank": bank}))))
    assert made.bank.nominal_voltage == 25.6
    assert made.bank.cells == 8
    assert math.isclose(made.bank.capacity, 3 * 100 * 3600.0)
    assert math.isclose(made.bank.resistance, 7e-3 * 2 / 3 + 1e-3)
    assert made.bank.charge_current == 150.0
    assert math.isclose(made.bank.mass, 6 * 12.8)


def test_a_load_in_no_cabin_heats_none() -> None:
    dc = minimal()["dc"] | {"loads": {"fridge": {"appliance": "refrigerator"}}}
    load = design.specify(design.parse(as_text(minimal(dc=dc)))).loads[0]
    assert (load.cabin, load.sensible_share, load.power) == (-1, 0.0, 55.0)


def test_a_load_runs_as_usual_unless_the_plan_says_otherwise() -> None:
    dc = minimal()["dc"] | {"loads": {"fridge": {"appliance": "refrigerator"}, "fans": {"appliance": "bedside fans"}}}
    plan = [{**minimal()["plan"][0], "running": {"fans": "80 %"}}]
    made = design.specify(design.parse(as_text(minimal(dc=dc, plan=plan))))
    assert made.plan[0].running == (0.5, 0.8)


def test_cabins_that_the_plan_does_not_cool_have_no_set_point() -> None:
    made = design.specify(design.parse(as_text(minimal())))
    saloon, cabin = made.plan[0].set_points
    assert math.isnan(saloon)
    assert math.isclose(cabin, (76 - 32) / 1.8)


def test_a_whole_day_from_noon_is_told_in_two_stretches() -> None:
    plan = [{"start": "12:00", "end": "12:00", "doing": "at anchor"}]
    made = design.specify(design.parse(as_text(minimal(plan=plan))))
    assert [(period.start, period.end) for period in made.plan] == [(43_200.0, 86_400.0), (0.0, 43_200.0)]


def test_a_design_day_by_relative_humidity_agrees_with_the_psychrometric_table() -> None:
    # 35 °C and 50 %: dew point 23.02 °C by psychrolib.
    place = {
        "design_day": {"highest_dry_bulb": "35 °C", "daily_range": "8 K", "relative_humidity": "50 %"},
        "day": "21 July",
        "latitude": "25° N",
        "longitude": "80° W",
        "sea": "29 °C",
    }
    made = design.specify(design.parse(as_text(minimal(place=place)))).place
    assert made.design_day is not None
    assert math.isclose(made.design_day.dew_point, 23.02, abs_tol=0.02)
    assert made.hours_east == -5.0


def test_the_underwater_and_dry_sides_of_a_cabin_make_its_height() -> None:
    made = design.specify(design.parse(as_text(minimal())))
    cabin = made.cabins[1]
    areas = {surface.name: surface.area for surface in cabin.surfaces}
    glazed = sum(window.area for window in cabin.windows if "port side" in window.name)
    whole = areas["port side"] + glazed + areas["port side under water"]
    length = cabin.floor_area / (14 * 0.3048 * 0.78)
    assert math.isclose(whole, length * cabin.height, rel_tol=1e-6)
