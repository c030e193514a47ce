"""Loss of solar gain with angle against the handbook's table of glazings."""

from __future__ import annotations

import math

import pytest

from anchorwatt.physics.window import angle_modifier, diffuse_modifier

SINGLE = "ASHRAE Handbook - Fundamentals 2005, chapter 31, glazing 1a, as transcribed on a public page"
DOUBLE = "ASHRAE Handbook - Fundamentals, fenestration chapter, glazing 5a; from memory"
ANGLES = (40.0, 50.0, 60.0, 70.0, 80.0)

# Solar heat gain coefficients of clear 3 mm glass at normal incidence, then at ANGLES.
ROWS = [(SINGLE, 1, 0.86, (0.84, 0.82, 0.78, 0.67, 0.42)), (DOUBLE, 2, 0.76, (0.74, 0.71, 0.64, 0.50, 0.26))]
CASES = [
    (f"{source}, {angle:g} deg", panes, normal, angle, gain)
    for source, panes, normal, gains in ROWS
    for angle, gain in zip(ANGLES, gains, strict=True)
]


@pytest.mark.parametrize(
    ("panes", "normal", "angle", "gain"), [row[1:] for row in CASES], ids=[row[0] for row in CASES]
)
def test_gain_at_an_angle(panes: int, normal: float, angle: float, gain: float) -> None:
    """One pane to the printed rounding; two panes within 0.03.

    For two panes the table is met to 0.01 by sheets that light meets unpolarised each time; ours keeps the
    polarisation between them, as light does, which passes a little more of a slanting sun.
    """
    found = normal * angle_modifier(math.cos(math.radians(angle)), panes)
    assert found == pytest.approx(gain, abs=0.01 if panes == 1 else 0.03)


DIFFUSE = [(SINGLE, 1, 0.86, 0.78), (f"{DOUBLE}; diffuse 0.66 seen in a public transcription", 2, 0.76, 0.66)]


@pytest.mark.parametrize(
    ("panes", "normal", "gain"),
    [row[1:] for row in DIFFUSE],
    ids=[f"{row[0]}, hemispherical" for row in DIFFUSE],
)
def test_gain_from_all_sides(panes: int, normal: float, gain: float) -> None:
    assert normal * diffuse_modifier(panes) == pytest.approx(gain, abs=0.015)
