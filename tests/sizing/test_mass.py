from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt import design
from anchorwatt.sizing.mass import alternative_mass, cooling_mass, mass_added, parts
from tests.simulation import boats


def test_total_is_the_sum_of_its_parts() -> None:
    boat = boats.boat(3)
    assert mass_added(boat) == pytest.approx(sum(part.mass for part in parts(boat)))


def test_a_part_more_is_its_mass_more() -> None:
    boat = boats.boat(2)
    assert mass_added(replace(boat, solar=boats.SUNNY)) - mass_added(boat) == pytest.approx(boats.SUNNY.mass)
    assert mass_added(boat) - mass_added(replace(boat, transformer=None)) == pytest.approx(30.0)


@pytest.mark.parametrize("starter", design.starters())
def test_items_and_parts_are_two_views_of_one_mass(starter: str) -> None:
    """What is bought weighs what is carried: neither list forgets a part."""
    boat = design.specify(design.parse(design.starter_text(starter)))
    assert sum(item.count * item.mass for item in boat.items) == pytest.approx(mass_added(boat))


def test_cooling_alone() -> None:
    boat = boats.boat(2)
    assert cooling_mass(boat) == pytest.approx(60.0 + 2 * 14.0)
    assert alternative_mass(boat) == pytest.approx(20.0 + 2 * 28.0)
    assert alternative_mass(replace(boat, alternative=None)) == 0.0
