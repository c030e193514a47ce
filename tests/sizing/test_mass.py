from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt.sizing.mass import alternative_mass, chilled_mass, cooling_mass
from tests.simulation import boats


def test_the_cooling_plant_is_weighed_with_its_handlers() -> None:
    assert cooling_mass(boats.boat(2)) == pytest.approx(60.0 + 2 * 14.0)


def test_units_are_weighed_with_their_pump() -> None:
    assert alternative_mass(boats.boat(2)) == pytest.approx(20.0 + 2 * 28.0)


def test_a_chiller_is_weighed_with_its_fan_coils() -> None:
    chilled = boats.chilled((boats.handler("fan coil", 0, 3500.0),))
    assert chilled_mass(boats.boat(1, chilled=chilled)) == pytest.approx(95.0 + 14.0)


def test_what_the_design_does_not_name_weighs_nothing() -> None:
    bare = replace(boats.boat(1), alternative=None, chilled=None)
    assert (alternative_mass(bare), chilled_mass(bare)) == (0.0, 0.0)
