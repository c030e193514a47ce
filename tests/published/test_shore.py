"""Shore services as they are rated."""

from __future__ import annotations

import pytest

from anchorwatt import catalogue
from anchorwatt.catalogue.shore_service import ShoreService
from anchorwatt.physics.split_phase import apparent_power, leg_current

# Name, VA of the rating; computed in the reference from the ratings of the trade, exact.
SERVICES = [
    ("120 V 30 A", 3600.0),
    ("120/240 V 50 A", 12_000.0),
    ("230 V 16 A", 3680.0),
    ("230 V 32 A", 7360.0),
]


@pytest.mark.parametrize(("name", "rated"), SERVICES, ids=[f"rating-of-the-trade-{row[0]}" for row in SERVICES])
def test_apparent_power_of_a_service(name: str, rated: float) -> None:
    service = catalogue.find("shore_service", name)
    assert isinstance(service, ShoreService)
    assert apparent_power(service.voltage, service.legs, service.current) == rated


@pytest.mark.parametrize(("name", "rated"), SERVICES, ids=[f"rating-of-the-trade-{row[0]}" for row in SERVICES])
def test_a_service_at_its_rating_loads_each_leg_with_its_current(name: str, rated: float) -> None:
    service = catalogue.find("shore_service", name)
    assert isinstance(service, ShoreService)
    to_neutral, across = (rated, 0.0) if service.legs == 1 else (0.0, rated)
    assert leg_current(to_neutral, across, service.voltage) == pytest.approx(float(service.current))


# Name, V below which a charger should cut its draw; from memory, whole volts.
BROWN_OUT = [("120 V 30 A", 105.0), ("120/240 V 50 A", 105.0), ("230 V 16 A", 200.0), ("230 V 32 A", 200.0)]


@pytest.mark.parametrize(("name", "volts"), BROWN_OUT, ids=[f"from-memory-brown-out-{row[0]}" for row in BROWN_OUT])
def test_chargers_give_way_in_a_brown_out(name: str, volts: float) -> None:
    """Below about 105 or 200 V, from memory."""
    service = catalogue.find("shore_service", name)
    assert isinstance(service, ShoreService)
    assert service.voltage * service.lowest_share == pytest.approx(volts, abs=1.0)
