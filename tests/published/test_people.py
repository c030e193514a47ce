"""Heat of people against a textbook's table."""

from __future__ import annotations

import pytest

from anchorwatt.catalogue import find
from anchorwatt.physics.people import latent_from_person, sensible_from_person

SOURCE = "air-conditioning textbook, 5th edition, table 7.16, seated at rest"
ROWS = [(20.0, 90.0, 25.0), (22.0, 80.0, 35.0), (24.0, 75.0, 40.0), (26.0, 65.0, 50.0)]


@pytest.mark.parametrize(("temperature", "sensible", "latent"), ROWS, ids=[f"{SOURCE}, {row[0]:g} C" for row in ROWS])
def test_seated_at_rest(temperature: float, sensible: float, latent: float) -> None:
    """The table goes by steps of 5 W; a straight line through its last two rows keeps within one of them."""
    assert sensible_from_person(75.0, 40.0, 5.0, temperature) == pytest.approx(sensible, abs=5.0)
    assert latent_from_person(75.0, 40.0, 5.0, temperature) == pytest.approx(latent, abs=5.0)


def test_person_of_iso_7547_at_rest() -> None:
    """ISO 7547:2002, person gains at 27 °C: at rest 70 W sensible, 50 W latent, from memory.

    Another table's person, moved to that temperature: the whole within 5 %, the split within two of its 5 W steps.
    """
    sensible, latent = (part(75.0, 40.0, 5.0, 27.0) for part in (sensible_from_person, latent_from_person))
    assert sensible + latent == pytest.approx(120.0, rel=0.05)
    assert sensible == pytest.approx(70.0, abs=10.0)
    assert latent == pytest.approx(50.0, abs=10.0)


ASHRAE = [
    ("theatre, afternoon", 59.0, 38.0, "at rest"),
    ("hotel, apartment, office", 63.0, 54.0, "light activity"),
]


@pytest.mark.parametrize(
    ("sensible", "latent", "activity"),
    [row[1:] for row in ASHRAE],
    ids=[f"handbook table of human heat gain at 25.6 C (engineering reference page), {row[0]}" for row in ASHRAE],
)
def test_catalogue_persons_against_the_handbook(sensible: float, latent: float, activity: str) -> None:
    """The catalogue's person at that temperature, the whole within a fifth: activities are not quite the same."""
    person = find("person", activity)
    given = float(person.sensible), float(person.latent), float(person.shift)  # type: ignore[attr-defined]
    found = sensible_from_person(*given, 25.6) + latent_from_person(*given, 25.6)
    assert found == pytest.approx(sensible + latent, rel=0.2)
