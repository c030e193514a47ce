"""What burning diesel gives off."""

from __future__ import annotations

import pytest

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.combustion import carbon_dioxide_emitted
from anchorwatt.physics.engine import DIESEL_DENSITY


def test_carbon_dioxide_is_heavier_than_the_fuel_but_not_by_more_than_pure_carbon_allows() -> None:
    assert DIESEL_DENSITY < carbon_dioxide_emitted(1.0) < 44.0 / 12.0 * DIESEL_DENSITY


def test_nothing_burnt_gives_nothing() -> None:
    assert carbon_dioxide_emitted(0.0) == 0.0


def test_limits() -> None:
    with pytest.raises(OutOfRange, match="volume must not be negative"):
        carbon_dioxide_emitted(-1e-3)
