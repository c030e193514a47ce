from __future__ import annotations

import math
from dataclasses import replace

import pytest

from anchorwatt.design.specification import RefrigerantSafety, Specification
from anchorwatt.sizing.refrigerant import (
    GUARDED,
    LESS,
    STIRRED,
    Measures,
    RefrigerantLimits,
    cabins_reached,
    measures_needed,
    refrigerant_limits,
)
from tests.simulation import boats

R32 = RefrigerantSafety("R-32", "A2L", 0.307, 0.061, 0.063, 0.15, 675.0, "tests")


def found(boat: Specification) -> RefrigerantLimits:
    limits = refrigerant_limits(boat)
    assert limits is not None
    return limits


def with_safety(boat: Specification, safety: RefrigerantSafety, charge: float) -> Specification:
    return replace(boat, plant=replace(boat.plant, safety=safety, charge=charge))


def test_lines_beyond_the_charged_length_count() -> None:
    limits = found(boats.boat(3))
    assert limits.line_length == pytest.approx(18.0)
    assert limits.charge == pytest.approx(1.5 + 8.0 * 0.05)


def test_the_smallest_occupied_cabin_counts() -> None:
    small = replace(boats.cabin("small"), volume=6.0, floor_area=3.0)
    head = replace(boats.cabin("head", use="head"), volume=2.0, floor_area=1.0)
    boat = replace(boats.boat(3), cabins=(boats.cabin("large"), small, head))
    limits = found(boat)
    assert limits.cabin == 1
    assert limits.concentration == pytest.approx(limits.charge / 6.0)
    assert limits.floor_area == 3.0


def test_a_cabin_with_only_an_outlet_counts() -> None:
    boat = boats.boat(2)
    one = replace(boat.plant.handlers[0], outlets=(boats.outlet(0, 0.5), boats.outlet(1, 0.5)))
    with_one = replace(boat, plant=replace(boat.plant, handlers=(one,)))
    assert cabins_reached(with_one) == (0, 1)
    alone = replace(boat, plant=replace(boat.plant, handlers=(replace(one, outlets=(boats.outlet(0),)),)))
    assert cabins_reached(alone) == (0,)


def test_no_occupied_cabin_no_limits() -> None:
    boat = replace(boats.boat(1), cabins=(boats.cabin("stores", use="stowage"),))
    assert refrigerant_limits(boat) is None


@pytest.mark.parametrize(
    ("concentration", "expected"),
    [
        (0.0, Measures.NONE),
        (0.061, Measures.NONE),
        (0.062, Measures.ONE),
        (0.10, Measures.TWO),
        (0.15, Measures.TWO),
        (0.16, Measures.LESS_CHARGE),
    ],
)
def test_measures_by_concentration(concentration: float, expected: Measures) -> None:
    assert measures_needed(concentration, R32) is expected


def test_between_a_higher_practical_limit_and_the_others_no_measure_helps() -> None:
    """R-410A's practical limit lies over its QLMV and QLAV: the lower of them is kept to."""
    assert measures_needed(0.42, boats.R410A) is Measures.NONE
    assert measures_needed(0.43, boats.R410A) is Measures.LESS_CHARGE


def test_remedies_fit_what_is_needed() -> None:
    boat = boats.boat(2)
    assert found(boat).remedies == ()
    guarded = found(with_safety(boat, R32, 1.0))
    assert guarded.measures is Measures.TWO
    assert guarded.remedies == (*LESS, *GUARDED, *STIRRED)
    beyond = found(with_safety(boat, R32, 5.0))
    assert beyond.measures is Measures.LESS_CHARGE
    assert beyond.remedies == LESS


def test_a_floor_counts_only_for_what_burns() -> None:
    boat = boats.boat(2)
    assert math.isnan(found(boat).largest_charge)
    assert math.isnan(found(boat).least_floor_area)
    burning = found(with_safety(boat, R32, 1.0))
    assert burning.largest_charge == pytest.approx(0.907, abs=0.0005)  # the floor is 7 m²
    assert burning.least_floor_area > 7.0
