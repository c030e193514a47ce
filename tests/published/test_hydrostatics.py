"""Heel, trim and sinkage against a textbook, teaching notes and worked examples."""

from __future__ import annotations

import math

import pytest

from anchorwatt.physics import hydrostatics

TEXTBOOK = "public-domain textbook of seamanship, p. 525"
NOTES = "public teaching notes on MCTC and TPC"
INCH = 0.0254
FOOT = 0.3048
TON = 1016.0469088


def trim_moment(trim: float, per_inch: float) -> float:
    """ft·tons that change the trim by so many inches in a ship whose moment for one inch is known."""
    # A waterline and a metacentric height of 1 m leave the displacement to make up that moment.
    displacement = per_inch * TON * FOOT / INCH
    one = hydrostatics.change_of_trim(TON * FOOT, displacement, 1.0, 1.0)
    return trim * INCH / one


def test_moment_that_removes_a_trim() -> None:
    """Public-domain textbook of seamanship, p. 525: 49.8 in of trim, 1423 ft·tons for one inch: 70 865 ft·tons."""
    assert trim_moment(49.8, 1423.0) == pytest.approx(70_865.0, abs=0.5)


@pytest.mark.parametrize(
    ("tons", "feet"), [(400.0, 177.2), (800.0, 88.6)], ids=[f"{TEXTBOOK}, {n} tons" for n in (400, 800)]
)
def test_way_of_a_mass_that_removes_a_trim(tons: float, feet: float) -> None:
    """Public-domain textbook of seamanship, p. 525: 400 tons must move 177 ft, or 800 tons 88½ ft."""
    assert trim_moment(49.8, 1423.0) / tons == pytest.approx(feet, abs=0.2)


# A yacht: 15 t, 13 m of waterline, GML 16 m, GM 1.1 m, 38 m² of waterplane. A generator of 180 kg, 3.0 m aft of the
# centre of flotation and 0.3 m to port, goes; batteries of 160 kg, 0.2 m forward of it and 0.5 m to starboard, come.
DISPLACEMENT, LENGTH, ALONG, ACROSS, PLANE = 15_000.0, 13.0, 16.0, 1.1, 38.0
OUT, IN = 180.0, 160.0
YACHT = [
    ("moment to trim 1 cm, t·m", hydrostatics.moment_to_trim(DISPLACEMENT, ALONG, LENGTH) / 1000.0, 0.1846, 5e-5),
    ("tonnes for 1 cm", hydrostatics.mass_per_immersion(PLANE) / 1e5, 0.3895, 5e-5),
    ("sinkage, cm", 100.0 * hydrostatics.sinkage(IN - OUT, PLANE), -0.05, 0.005),
    (
        "trim, cm by the bow",
        100.0 * hydrostatics.change_of_trim(OUT * 3.0 + IN * 0.2, DISPLACEMENT, ALONG, LENGTH),
        3.1,
        0.05,
    ),
    (
        "heel, ° to starboard",
        math.degrees(hydrostatics.heel_angle(OUT * 0.3 + IN * 0.5, DISPLACEMENT, ACROSS)),
        0.47,
        0.005,
    ),
]


@pytest.mark.parametrize(
    ("found", "printed", "rounding"),
    [row[1:] for row in YACHT],
    ids=[f"yacht worked by hand with {NOTES}: {row[0]}" for row in YACHT],
)
def test_a_yacht_worked_by_hand(found: float, printed: float, rounding: float) -> None:
    assert found == pytest.approx(printed, abs=rounding)


def test_tons_for_an_inch() -> None:
    """Teaching notes, from memory: tons for one inch are the waterplane in ft² over 420."""
    waterplane = 420.0 * FOOT**2
    assert hydrostatics.mass_per_immersion(waterplane) * INCH / TON == pytest.approx(1.0, rel=0.002)


@pytest.mark.parametrize(
    ("coefficient", "across", "along"),
    [(1.0, 1.0 / 12.0, 1.0 / 12.0)],
    ids=["a box, any text of statics: B³L/12 and L³B/12"],
)
def test_waterplane_of_a_box(coefficient: float, across: float, along: float) -> None:
    """The fits are of ships' lines; at their end, a box, they come within 10 % of the exact value."""
    assert hydrostatics.waterplane_inertia_across(coefficient, 1.0, 1.0) == pytest.approx(across, rel=0.1)
    assert hydrostatics.waterplane_inertia_along(coefficient, 1.0, 1.0) == pytest.approx(along, rel=0.1)


def test_weight_added_to_a_box() -> None:
    """A box barge worked from first principles (any text of ship stability): KB + BM - KG before and after."""
    length, beam, draught, gravity = 10.0, 4.0, 1.0, 0.9
    plane, density = length * beam, hydrostatics.SEAWATER_DENSITY
    displacement, mass, height = density * plane * draught, 500.0, 1.7

    def stiffness(depth: float, centre: float) -> float:
        return depth / 2.0 + beam**2 / (12.0 * depth) - centre

    deeper = draught + mass / (density * plane)
    centre = (displacement * gravity + mass * height) / (displacement + mass)
    found = hydrostatics.metacentric_height_after(
        stiffness(draught, gravity), displacement, mass, mass * (height - draught), plane
    )
    assert found == pytest.approx(stiffness(deeper, centre), rel=1e-12)
