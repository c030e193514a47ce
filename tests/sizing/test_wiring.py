"""Conductors and protection of whole boats."""

from __future__ import annotations

import math
from dataclasses import replace
from functools import cache

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from anchorwatt import design
from anchorwatt.design.specification import CircuitWish, Regime
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.conductors import series
from anchorwatt.sizing.terminations import BAR_DENSITY, busbar, stud
from anchorwatt.sizing.wiring import BONDING, WiredCircuit, Wiring, wiring
from tests.design.strategies import as_text, designs
from tests.sizing.test_circuits import WISH, rich, simulation


@cache
def made(regime: Regime = Regime.ABYC, metric: bool = False) -> Wiring:
    specification = rich()
    changed = replace(specification.wiring, regime=regime, metric=metric)
    return wiring(replace(specification, wiring=changed), simulation())


def wished(wish: CircuitWish) -> Wiring:
    specification = rich()
    changed = replace(specification.wiring, regime=Regime.ABYC, metric=False, wishes=(wish,))
    return wiring(replace(specification, wiring=changed), simulation())


def named(function: str, among: Wiring | None = None) -> WiredCircuit:
    return next(one for one in (among or made()).circuits if one.circuit.function == function)


every = pytest.mark.parametrize(
    ("regime", "metric"), [(Regime.CFR, False), (Regime.ABYC, False), (Regime.ISO, True), (Regime.ABYC, True)]
)


@every
def test_every_conductor_keeps_ampacity_drop_and_terminals(regime: Regime, metric: bool) -> None:
    for one in made(regime, metric).circuits:
        circuit, conductor = one.circuit, one.conductor
        assert circuit.continuous <= conductor.ampacity
        assert conductor.drop_share <= circuit.highest_drop
        assert math.isnan(one.terminal_ampacity) or circuit.continuous <= one.terminal_ampacity


@every
def test_no_device_is_rated_more_than_its_conductors_allow(regime: Regime, metric: bool) -> None:
    for one in made(regime, metric).circuits:
        if one.protection is not None and not math.isnan(one.protection.rating):
            assert one.protection.rating <= one.protection.at_most * (1.0 + 1e-9)


@every
def test_everything_that_could_burn_has_protection(regime: Regime, metric: bool) -> None:
    for one in made(regime, metric).circuits:
        assert (one.protection is not None) == one.circuit.needs_protection


def test_sizes_are_those_that_the_boat_is_wired_in() -> None:
    for metric in (False, True):
        names = {size.name for size in series(metric)}
        assert {one.conductor.conductor.name for one in made(Regime.ABYC, metric).circuits} <= names


def test_a_bundle_below_50_volts_counts_for_one_reading_only() -> None:
    """33 CFR 183.425 table 5 note 2 begins at 50 V; the cautious reading of ABYC E-11 does not."""
    cfr, abyc = (named("charger output", made(regime)) for regime in (Regime.CFR, Regime.ABYC))
    assert abyc.conductor.area > cfr.conductor.area
    same = cfr.conductor.conductor
    columns = zip(same.insulations, same.ampacities, strict=True)
    listed = next(float(carries) for column, carries in columns if column == 105.0) * cfr.conductor.parallel
    assert cfr.conductor.ampacity >= 0.85 * listed - 1e-6


def test_totals_are_the_sums_of_the_circuits() -> None:
    found = made()
    assert math.isclose(found.copper_mass, sum(one.conductor.copper for one in found.circuits))
    assert math.isclose(found.mass, sum(one.conductor.mass for one in found.circuits))
    assert found.mass > found.copper_mass > 0.0
    assert math.isclose(found.price, sum(one.conductor.price for one in found.circuits))
    assert found.currency == "EUR"


def test_copper_counts_every_core() -> None:
    one = named("shore inlet").conductor
    two = named("shore inlet").circuit
    volume = one.conductor.area * one.parallel * two.cores * two.length
    assert one.copper == pytest.approx(8890.0 * 1.02 * volume)


def test_a_fault_shrinks_along_the_cables() -> None:
    found = made()
    bus, main = named("main feeder", found), named("inverter supply", found)
    assert named("bank string 1 of 2", found).prospective > 0.0
    assert bus.prospective > main.prospective > main.fault_at_end > 0.0
    for one in found.circuits:
        if one.protection is not None:
            assert one.fault_at_end < one.prospective


def test_a_typed_size_is_laid_whether_it_suffices_or_not() -> None:
    one = wished(replace(WISH, tag="W3", conductor="16 AWG")).circuit("W3")
    assert (one.conductor.conductor.name, one.conductor.governed_by) == ("16 AWG", "typed")
    assert one.protection is not None
    assert one.protection.rating > one.protection.at_most


def test_at_least_so_many_side_by_side_as_is_typed() -> None:
    assert wished(replace(WISH, tag="W3", parallel=2)).circuit("W3").conductor.parallel >= 2


def test_a_typed_fuse_is_taken() -> None:
    one = wished(replace(WISH, tag="W3", fuse=400.0)).circuit("W3")
    assert one.protection is not None
    assert one.protection.rating == 400.0


def test_a_wish_for_a_circuit_that_is_not_there_is_told() -> None:
    assert wished(replace(WISH, tag="W999")).unknown == ("W999",)
    assert made().unknown == ()


def test_a_circuit_that_is_not_there_is_named_with_those_that_are() -> None:
    with pytest.raises(KeyError, match=r"no circuit W0; there are W1 to W"):
        made().circuit("W0")


def test_bonding_follows_the_conductor_that_feeds_the_part() -> None:
    for metric in (False, True):
        found = made(Regime.ABYC, metric)
        for one in found.circuits:
            if one.circuit.system == "bonding":
                assert one.conductor.area >= BONDING[metric]
                feeding = [
                    other.conductor.conductor.area
                    for other in found.circuits
                    if other.circuit.system != "bonding"
                    and one.circuit.start in (other.circuit.start, other.circuit.end)
                ]
                largest = max(feeding, default=0.0)
                between = [size for size in series(metric) if one.conductor.area < size.area < largest]
                assert not between


def test_the_choice_of_least_cost_costs_no_more_than_what_is_laid() -> None:
    with_one = [one for one in made().circuits if one.optimum is not None]
    assert with_one
    for one in with_one:
        assert one.optimum is not None
        assert one.optimum.total <= one.cost.total * (1.0 + 1e-9)


def test_dear_energy_asks_for_more_copper() -> None:
    specification = rich()

    def best(price: float) -> float:
        changed = replace(specification.wiring, energy_price=price, years=10.0)
        one = wiring(replace(specification, wiring=changed), simulation()).circuit("W4").optimum
        assert one is not None
        return one.conductor.area * one.parallel

    assert best(10.0 / 3.6e6) > best(0.01 / 3.6e6)


@pytest.mark.parametrize(
    ("current", "metric", "size"),
    [(30.0, True, "M5"), (31.0, True, "M6"), (250.0, False, "5/16 in"), (900.0, True, "M10")],
)
def test_a_stud_by_its_current(current: float, metric: bool, size: str) -> None:
    assert stud(current, metric) == size


@given(st.floats(1.0, 9000.0), st.floats(1.0, 9000.0))
def test_a_bar_carries_what_goes_through_it(fed: float, feeding: float) -> None:
    bar = busbar("X1", "bus", fed, feeding)
    assert bar.current == min(fed, feeding) <= bar.rating
    assert math.isclose(bar.area * BAR_DENSITY, bar.rating)


@settings(max_examples=6, deadline=None, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large])
@given(designs(most_cabins=3))
def test_any_valid_design_is_wired_and_guarded(drawn: dict[str, object]) -> None:
    specification = design.specify(design.parse(as_text(drawn)))
    found = wiring(specification, Simulation(specification))
    assert found.unknown == ()
    for one in found.circuits:
        assert (
            one.circuit.system in ("control", "bonding")
            or one.protection is not None
            or (one.circuit.source in ("solar", "none"))
        )
        assert one.circuit.continuous <= one.conductor.ampacity
    assert math.isclose(found.copper_mass, sum(one.conductor.copper for one in found.circuits))
