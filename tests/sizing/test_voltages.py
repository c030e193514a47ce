"""The same boat at 12, 24 and 48 V."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache
from itertools import pairwise

import pytest

from anchorwatt.design.specification import Bank, Specification
from anchorwatt.physics.battery import stored_energy
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.voltages import (
    HIGHEST_DROP,
    VOLTAGES,
    AtVoltage,
    alternator_at,
    at_voltages,
    bank_at,
    converter_at,
    own_voltage,
    specification_at,
)
from tests.simulation import boats

BOAT = boats.boat(1)


@cache
def found() -> tuple[AtVoltage, ...]:
    return at_voltages(BOAT, Simulation(BOAT))


def test_common_practice_48_v_charges_faster_and_wastes_less_than_12_v_for_the_same_copper() -> None:
    """Common practice, no source."""
    low, _, high = found()
    assert high.recharge_time < low.recharge_time
    assert high.charging_power > low.charging_power
    assert high.same_copper_loss < low.same_copper_loss
    assert high.charging_efficiency > low.charging_efficiency
    assert high.fuel_added < low.fuel_added


def test_copper_for_the_same_drop_goes_with_one_over_the_voltage_squared() -> None:
    """Nearly: a better converter takes less current."""
    low, middle, high = (one.drop_copper for one in found())
    assert low / middle == pytest.approx(4.0, rel=0.03)
    assert middle / high == pytest.approx(4.0, rel=0.03)


def test_a_higher_voltage_never_needs_more_cable() -> None:
    for lower, higher in pairwise(found()):
        assert higher.copper < lower.copper
        assert higher.cable_mass < lower.cable_mass


def test_every_run_keeps_the_drop_and_its_ampacity() -> None:
    for one in found():
        for run in one.circuits:
            assert run.drop_share <= HIGHEST_DROP
            assert run.circuit.current <= run.ampacity


def test_the_design_is_its_own_column_and_its_run_is_not_made_again() -> None:
    assert [one.own for one in found()] == [False, True, False]
    own = found()[1]
    assert own.specification is BOAT
    assert own.circuits == tuple(
        replace(run, governed_by=one.governed_by) for run, one in zip(own.same_copper, own.circuits, strict=True)
    )
    assert own.overloaded == ()


def test_the_copper_of_24_v_is_too_thin_at_12_v() -> None:
    assert found()[0].overloaded
    assert not found()[2].overloaded


@pytest.mark.parametrize(("volts", "own"), [(12.8, 12.0), (25.6, 24.0), (24.0, 24.0), (51.2, 48.0), (48.0, 48.0)])
def test_the_own_voltage_is_the_nominal_one_it_stands_for(volts: float, own: float) -> None:
    assert own_voltage(replace(BOAT, bank=replace(BOAT.bank, nominal_voltage=volts))) == own


@pytest.mark.parametrize("cells", [4, 16])
def test_a_bank_put_together_anew_holds_and_loses_the_same(cells: int) -> None:
    """Energy, charging power and share lost at a power stay; limits go with voltage or current."""
    bank, other = BOAT.bank, bank_at(BOAT.bank, cells)

    def energy(one: Bank) -> float:
        return one.cells * stored_energy(1.0, one.charge_points, one.open_circuit_voltages, one.capacity)

    assert energy(other) == pytest.approx(energy(bank))
    assert other.absorb_voltage * other.charge_current == pytest.approx(bank.absorb_voltage * bank.charge_current)
    share = [one.resistance / one.nominal_voltage**2 for one in (bank, other)]
    assert share[0] == pytest.approx(share[1])
    assert other.management[0].limit == pytest.approx(cells * 3.65)
    assert other.mass == bank.mass
    assert bank_at(other, bank.cells).capacity == pytest.approx(bank.capacity)


def test_a_current_limit_of_the_management_goes_with_the_current() -> None:
    limit = replace(BOAT.bank.management[0], dimension="current", limit=400.0)
    cold = replace(limit, dimension="temperature", limit=0.0)
    bank = bank_at(replace(BOAT.bank, management=(limit, cold)), 4)
    assert [one.limit for one in bank.management] == [800.0, 0.0]


def test_the_rewound_alternator_keeps_frame_belt_and_output() -> None:
    machine = boats.alternator()
    other = alternator_at(machine, 2.0 * machine.voltage)
    assert other.rated_current * other.voltage == pytest.approx(machine.rated_current * machine.voltage)
    assert other.current_limit == pytest.approx(0.5 * machine.current_limit)
    assert other.efficiency > machine.efficiency
    same = replace(
        other,
        voltage=machine.voltage,
        rated_current=machine.rated_current,
        current_limit=machine.current_limit,
        efficiency=machine.efficiency,
    )
    assert same == machine


def test_several_units_side_by_side_where_the_largest_is_too_small() -> None:
    low = found()[0].specification.inverter
    assert low.name == "2 × inverter 12 V 2 kW"
    assert low.rated_power == BOAT.inverter.rated_power
    high = found()[2].specification.inverter
    assert high.name == "inverter 48 V 5 kW"


def test_no_smaller_unit_is_taken_than_the_designs_own() -> None:
    from anchorwatt.catalogue import rows

    units = [row for row in rows("charger").values() if row.output_voltage == 12.0]  # type: ignore[attr-defined]
    for power in (200.0, 1000.0, 1001.0, 1700.0, 3400.0, 3500.0, 20_000.0):
        made, _ = converter_at(replace(BOAT.inverter, rated_power=power), units)  # type: ignore[arg-type]
        assert made.rated_power >= power


def test_a_boat_without_charger_and_alternators_has_its_cables_still() -> None:
    bare = replace(BOAT, charger=None, engines=(boats.engine(()),))
    for one in at_voltages(bare, Simulation(bare)):
        assert [run.circuit.name for run in one.circuits] == ["bank to inverter"]
        assert math.isnan(one.recharge_time)
        assert math.isnan(one.charging_power)
        assert math.isnan(one.alternator_efficiency)
        assert one.specification.charger is None


def test_the_price_is_unknown_where_one_part_has_none() -> None:
    """The tests' boat lists no parts; what the catalogue gives it at other voltages is known."""
    assert math.isnan(found()[1].price.amount)


def priced(currency: str) -> Specification:
    items = (
        boats.item("ac.inverter.unit", "inverter", "inverter", 2, 25.0, 900.0, "EUR", -1),
        boats.item("ac.charger.unit", "charger", "charger", 1, 8.0, 400.0, currency, -1),
    )
    return replace(BOAT, items=items)


def test_prices_of_the_designs_own_parts_are_counted_by_their_number() -> None:
    _, (inverter, charger) = specification_at(priced("EUR"), 24.0)
    assert (inverter.amount, inverter.currency) == (1800.0, "EUR")
    assert (charger.amount, charger.currency) == (400.0, "EUR")


def test_prices_in_two_currencies_are_not_added() -> None:
    specification = priced("USD")
    assert math.isnan(at_voltages(specification, Simulation(specification))[1].price.amount)


def test_all_three_voltages_are_told_in_order() -> None:
    assert tuple(one.voltage for one in found()) == VOLTAGES
