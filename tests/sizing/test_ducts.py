from __future__ import annotations

import math
from dataclasses import replace

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.design.specification import Duct, Handler, Outlet, Specification
from anchorwatt.sizing.ducts import COOL_CABIN, coolest_air, duct_runs, duct_skins, handler_air, handlers_air
from tests.simulation import boats

WIDE = replace(boats.DUCT, diameter=0.20, grille_area=0.11)


def handler_with(*ducts: tuple[float, Duct], **changes: float) -> Handler:
    outlets = tuple(Outlet(f"outlet {n + 1}", n % 2, share, duct) for n, (share, duct) in enumerate(ducts))
    plain = replace(boats.handler("handler", 0, 2400.0), outlets=outlets, return_area=0.10)
    return replace(plain, **changes)  # type: ignore[arg-type]


def boat_with(*handlers: Handler) -> Specification:
    boat = boats.boat(2)
    return replace(boat, plant=replace(boat.plant, handlers=handlers))


def test_a_wide_duct_delivers_the_rated_airflow() -> None:
    air = handler_air(handler_with((1.0, WIDE)))
    assert air.airflow == pytest.approx(air.rated_airflow)
    assert air.pressure_needed < air.spare_pressure
    assert air.runs[0].wanted == pytest.approx(0.12)
    assert air.runs[0].alone


def test_a_narrow_duct_delivers_less() -> None:
    air = handler_air(handler_with((1.0, replace(WIDE, diameter=0.08))))
    assert air.airflow < 0.7 * air.rated_airflow
    assert air.pressure_needed > air.spare_pressure


def test_velocities_are_flow_over_area() -> None:
    (run,) = handler_air(handler_with((1.0, WIDE))).runs
    assert run.velocity == pytest.approx(0.12 / (math.pi * 0.01))
    assert run.grille_velocity == pytest.approx(0.12 / (0.11 * 0.7))
    assert handler_air(handler_with((1.0, WIDE))).return_velocity == pytest.approx(1.2)


def test_like_outlets_with_like_shares_are_in_balance() -> None:
    for run in handler_air(handler_with((0.5, WIDE), (0.5, WIDE))).runs:
        assert run.off_share == pytest.approx(0.0, abs=1e-6)
        assert not run.alone


def test_the_longer_duct_gets_less_than_its_share() -> None:
    near, far = handler_air(handler_with((0.5, WIDE), (0.5, replace(WIDE, length=12.0, bends=6.0)))).runs
    assert near.off_share > 0.05
    assert far.off_share == pytest.approx(-near.off_share)
    assert near.pressure == pytest.approx(far.pressure, rel=1e-3)


sizes = st.floats(0.06, 0.25)


@given(st.lists(sizes, min_size=1, max_size=4), st.floats(10.0, 120.0))
def test_outlets_add_up_to_the_handlers_air(diameters: list[float], spare: float) -> None:
    share = 1.0 / len(diameters)
    made = handler_with(*((share, replace(WIDE, diameter=d)) for d in diameters), static_pressure=spare)
    air = handler_air(made)
    assert math.fsum(run.airflow for run in air.runs) == pytest.approx(air.airflow)
    assert 0.0 < air.airflow <= air.rated_airflow * (1.0 + 1e-9)
    assert math.fsum(run.off_share * share for run in air.runs) == pytest.approx(0.0, abs=1e-6)


@given(sizes, st.floats(1.05, 2.0))
def test_a_larger_duct_delivers_at_least_as_much(diameter: float, more: float) -> None:
    small, large = (handler_air(handler_with((1.0, replace(WIDE, diameter=d)))) for d in (diameter, diameter * more))
    assert large.airflow >= small.airflow * (1.0 - 1e-9)


def test_a_fan_without_pressure_delivers_nothing() -> None:
    air = handler_air(handler_with((1.0, WIDE), static_pressure=0.0))
    assert air.airflow == 0.0
    assert math.isnan(air.runs[0].off_share)
    boat = boat_with(handler_with((1.0, WIDE), static_pressure=0.0))
    assert math.isnan(duct_skins(boat, 28.0, 24.0)[0].warming)


def test_a_handler_without_outlets_has_no_runs() -> None:
    boat = boat_with(handler_with(), handler_with((0.5, WIDE), (0.5, WIDE)))
    assert len(handlers_air(boat)) == 2
    assert handlers_air(boat)[0].airflow == 0.0
    assert [run.outlet for run in duct_runs(boat)] == ["outlet 1", "outlet 2"]
    assert len(duct_skins(boat, 28.0, 24.0)) == 2


def test_a_bare_duct_sweats_and_a_thick_one_does_not() -> None:
    bare, thick = (
        duct_skins(boat_with(handler_with((1.0, replace(WIDE, insulation=d)))), 28.0, 23.0)[0] for d in (0.0, 0.05)
    )
    assert bare.sweats
    assert not thick.sweats
    assert bare.skin_temperature < thick.skin_temperature
    assert bare.insulation_needed == pytest.approx(thick.insulation_needed)
    assert thick.warming < bare.warming


def test_the_insulation_needed_is_just_enough() -> None:
    needed = duct_skins(boat_with(handler_with((1.0, WIDE))), 28.0, 23.0)[0].insulation_needed
    skin = duct_skins(boat_with(handler_with((1.0, replace(WIDE, insulation=needed)))), 28.0, 23.0)[0]
    assert skin.skin_temperature == pytest.approx(23.0, abs=1e-4)


def test_supply_air_is_between_the_coil_and_the_cabin() -> None:
    boat = boat_with(handler_with((1.0, WIDE)))
    (skin,) = duct_skins(boat, 28.0, 23.0)
    assert boat.plant.circuit.lowest_evaporating < skin.supply_temperature < coolest_air(boat, 0)


def test_the_air_drawn_is_that_of_the_lowest_set_point() -> None:
    boat = boats.boat(2)
    assert coolest_air(boat, 0) == 25.0
    never = tuple(replace(period, set_points=(math.nan, math.nan)) for period in boat.plan)
    assert coolest_air(replace(boat, plan=never), 0) == COOL_CABIN
