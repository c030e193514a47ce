"""Heat of people against a textbook's table."""

from __future__ import annotations

import pytest

from anchorwatt.physics.people import latent_from_person, sensible_from_person

SOURCE = "air-conditioning textbook, 5th edition, table 7.16, seated at rest"
ROWS = [(20.0, 90.0, 25.0), (22.0, 80.0, 35.0), (24.0, 75.0, 40.0), (26.0, 65.0, 50.0)]


@pytest.mark.parametrize(("temperature", "sensible", "latent"), ROWS, ids=[f"{SOURCE}, {row[0]:g} C" for row in ROWS])
def test_seated_at_rest(temperature: float, sensible: float, latent: float) -> None:
    """The table goes by steps of 5 W; a straight line through its last two rows keeps within one of them."""
    assert sensible_from_person(75.0, 40.0, 5.0, temperature) == pytest.approx(sensible, abs=5.0)
    assert latent_from_person(75.0, 40.0, 5.0, temperature) == pytest.approx(latent, abs=5.0)
