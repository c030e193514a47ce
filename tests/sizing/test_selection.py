"""Choosing from the catalogue."""

from __future__ import annotations

import math
from dataclasses import replace

import pytest

from anchorwatt.catalogue import rows
from anchorwatt.catalogue.air_handler import AirHandler
from anchorwatt.sizing.selection import CabinPeak, choose_handler, choose_unit, coil_gives, given, select, served
from tests.simulation import boats

EVAPORATING = 5.0
HANDLERS = [record for record in rows("air_handler").values() if isinstance(record, AirHandler)]


def peak(total: float, sensible_share: float = 0.7, air: float = 24.5, humidity: float = 0.0106) -> CabinPeak:
    return CabinPeak(total, sensible_share * total, air, humidity)


def covers(record: AirHandler, wanted: CabinPeak) -> bool:
    sensible, whole = coil_gives(record, wanted.air, wanted.humidity, EVAPORATING)
    return sensible >= wanted.sensible and whole >= wanted.total


@pytest.mark.parametrize("total", [0.0, 500.0, 1200.0, 2000.0, 3500.0])
@pytest.mark.parametrize("sensible_share", [0.4, 0.7, 1.0])
def test_the_handler_covers_the_peak_and_no_smaller_one_does(total: float, sensible_share: float) -> None:
    wanted = peak(total, sensible_share)
    name, capacity, gives = choose_handler(wanted, EVAPORATING)
    chosen = next(record for record in HANDLERS if record.name == name)
    assert covers(chosen, wanted)
    assert float(chosen.rated_capacity) == capacity
    assert gives >= total
    assert not any(covers(record, wanted) for record in HANDLERS if float(record.rated_capacity) < capacity)


def test_a_dry_load_asks_for_a_larger_handler_than_a_damp_one() -> None:
    """The coil's latent share is of no use to a load that has none."""
    edge = next(
        total
        for total in range(200, 6000, 20)
        if choose_handler(peak(float(total), 1.0), EVAPORATING)[1]
        > choose_handler(peak(float(total), 0.5), EVAPORATING)[1]
    )
    assert edge > 0


def test_a_coil_by_hand() -> None:
    """100 L/s of air at 27 °C and 11.2 g/kg, 15 % of it past the coil, which is at 9 °C (7.13 g/kg saturated)."""
    made = replace(boats.handler("one", 0, 2000.0), airflow=0.1, bypass_factor=0.15, approach=4.0)
    sensible, whole = coil_gives(made, 27.0, 0.0112, 5.0)
    flow = 0.1 * 1.17 * 0.85
    assert sensible == pytest.approx(flow * 1006.0 * 18.0, rel=0.01)
    assert whole - sensible == pytest.approx(flow * (0.0112 - 0.00713) * 2.48e6, rel=0.02)


def test_the_designs_handlers_give_by_their_outlets_shares() -> None:
    handler = boats.handler("one", 0, 4000.0)
    split = boats.plant(boats.circuit(), (replace(handler, outlets=(boats.outlet(0, 0.7), boats.outlet(1, 0.3))),))
    wanted = peak(1000.0)
    both = [given(split, cabin, wanted) for cabin in (0, 1)]
    assert both[0] == pytest.approx(7.0 / 3.0 * both[1])
    assert sum(both) == pytest.approx(coil_gives(handler, wanted.air, wanted.humidity, 7.0)[1])


def test_nothing_covers_a_palace() -> None:
    assert choose_handler(peak(1e6), EVAPORATING)[0] == ""
    assert choose_unit(1e6, 28.0)[0] == ""
    assert math.isnan(choose_unit(1e6, 28.0)[1])


def test_a_warmer_sea_asks_for_a_larger_unit() -> None:
    wanted = 3400.0
    cool, warm = choose_unit(wanted, 15.0), choose_unit(wanted, 36.0)
    assert cool[1] >= wanted
    assert warm[1] >= wanted
    assert warm[2] >= cool[2]


def test_outlets_count_by_their_share() -> None:
    handler = boats.handler("one", 0, 4000.0)
    split = boats.plant(
        boats.circuit(),
        (replace(handler, outlets=(boats.outlet(0, 0.7), boats.outlet(1, 0.3))),),
    )
    assert served(split, 0) == pytest.approx(2800.0)
    assert served(split, 1) == pytest.approx(1200.0)
    assert served(split, 2) == 0.0


def test_connected_ratios() -> None:
    plant = boats.plant(boats.circuit(7000.0), (boats.handler("one", 0, 5000.0), boats.handler("two", 1, 4500.0)))
    found = select(plant, {0: peak(1100.0), 1: peak(1800.0)}, 2700.0, 29.0)
    assert found.connected == pytest.approx(9500.0 / 7000.0)
    chosen = sum(one.capacity for one in found.handlers)
    assert found.chosen == pytest.approx(chosen / float(rows("condensing_unit")[found.unit.choice].rated_capacity))  # type: ignore[attr-defined, operator]
    assert found.unit.has_capacity > 2700.0
