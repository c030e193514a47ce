"""Every rule: a design that makes it hold and one that makes it fail."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass, replace
from functools import cache
from pathlib import Path

import pytest

from anchorwatt.checks import SUBJECTS, Evidence, Finding, Verdict, rules
from anchorwatt.checks.registry import at_least, at_most, rule
from anchorwatt.design.specification import Doing, Item, Specification
from anchorwatt.simulation.runs import Simulation
from tests.simulation import boats

Spoil = Callable[[Specification], Specification]


@dataclass(frozen=True)
class Case:
    holds: Spoil
    fails: Spoil


def as_it_is(boat: Specification) -> Specification:
    return boat


def with_brief(**changes: float) -> Spoil:
    return lambda boat: replace(boat, brief=replace(boat.brief, **changes))  # type: ignore[arg-type]


def ashore(power: float) -> Spoil:
    def change(boat: Specification) -> Specification:
        day, *others = boat.plan
        plan = (replace(day, doing=Doing.ON_SHORE_POWER), *others)
        assert boat.shore is not None
        return replace(boat, plan=plan, shore=replace(boat.shore, continuous_power=power))

    return change


def one_alternator(**changes: float) -> Spoil:
    def change(boat: Specification) -> Specification:
        machine = replace(boats.alternator(), **changes)  # type: ignore[arg-type]
        return replace(boat, engines=(boats.engine((machine,)),))

    return change


def drier(boat: Specification) -> Specification:
    cold = replace(boat.plant.circuit, highest_evaporating=3.5, lowest_evaporating=1.0)
    cabins = tuple(replace(c, leakage=0.1 / 3600.0, fresh_air=0.0) for c in boat.cabins)
    nobody = tuple(replace(p, occupants=()) for p in boat.plan)
    return replace(boat, plant=replace(boat.plant, circuit=cold), cabins=cabins, plan=nobody)


def wetter(boat: Specification) -> Specification:
    return replace(boat, cabins=tuple(replace(c, fresh_air=0.03) for c in boat.cabins))


def tiny_plant(boat: Specification) -> Specification:
    return replace(boat, plant=replace(boat.plant, circuit=boats.circuit(700.0, 200.0)))


def in_winter(change: Spoil = as_it_is) -> Spoil:
    """Cold weather, every cabin heated day and night."""

    def made(boat: Specification) -> Specification:
        cabins = len(boat.cabins)
        weather = replace(
            boats.place(replace(boats.DAY, highest_dry_bulb=-4.0, dew_point=-9.0)), sea_temperatures=(12.0,) * 12
        )
        off, on = (math.nan,) * cabins, (20.0,) * cabins
        plan = tuple(replace(period, set_points=off, warm_points=on) for period in boat.plan)
        return change(replace(boat, place=weather, plan=plan))

    return made


def tiniest_plant(boat: Specification) -> Specification:
    return replace(boat, plant=replace(boat.plant, circuit=boats.circuit(250.0, 75.0)))


IN_WINTER, IN_WINTER_TINY = in_winter(), in_winter(tiniest_plant)


def frosting(boat: Specification) -> Specification:
    return replace(boat, plant=replace(boat.plant, circuit=replace(boat.plant.circuit, lowest_evaporating=-3.0)))


def priced(limit: str) -> Spoil:
    """Parts of 3000 EUR together, and a limit."""
    items = (
        boats.item("ac.inverter.unit", "inverter", "inverter", 1, 25.0, 1000.0, "EUR", -1),
        boats.item("dc.bank.module", "battery_module", "module", 2, 40.0, 1000.0, "EUR", -1),
    )
    return lambda boat: replace(boat, items=items, brief=replace(boat.brief, price_limit=limit))


CASES = {
    "coils-above-frost": Case(as_it_is, frosting),
    "plant-heats-boat": Case(IN_WINTER, IN_WINTER_TINY),
    "cabins-warm-at-night": Case(IN_WINTER, IN_WINTER_TINY),
    "bank-holds-night": Case(as_it_is, lambda b: replace(b, bank=boats.bank(capacity=60.0))),
    "reserve-at-dawn": Case(as_it_is, lambda b: replace(b, bank=boats.bank(capacity=60.0))),
    "night-without-interruption": Case(as_it_is, lambda b: replace(b, bank=boats.bank(capacity=60.0))),
    "recharge-in-time": Case(as_it_is, with_brief(recharge=600.0)),
    "mass-limit": Case(as_it_is, with_brief(mass_limit=100.0)),
    "price-limit": Case(priced("3 500 EUR"), priced("2 999.99 EUR")),
    "cabins-cool-at-night": Case(as_it_is, tiny_plant),
    "cabins-dry-at-night": Case(drier, wetter),
    "compressor-carries-boat": Case(as_it_is, tiny_plant),
    "connected-ratio": Case(as_it_is, tiny_plant),
    "inverter-carries-peak": Case(as_it_is, lambda b: replace(b, inverter=replace(b.inverter, rated_power=250.0))),
    "transformer-carries-peak": Case(
        as_it_is,
        lambda b: replace(b, transformer=replace(b.transformer, rated_power=250.0)),  # type: ignore[type-var]
    ),
    "shore-carries-load": Case(ashore(2880.0), ashore(40.0)),
    "bank-carries-inverter": Case(as_it_is, lambda b: replace(b, bank=replace(b.bank, discharge_current=5.0))),
    "alternator-winding": Case(as_it_is, one_alternator(highest_winding=60.0)),
    "alternator-overspeed": Case(as_it_is, one_alternator(highest_speed=5000 * boats.RPM)),
}


@cache
def evidence(spoil: Spoil) -> Evidence:
    made = spoil(boats.boat(2))
    return Evidence(made, Simulation(made))


def verdict(name: str, spoil: Spoil) -> Verdict:
    (found,) = [r.find(evidence(spoil)) for r in rules() if r.id == name]
    assert found is not None
    assert found.source
    assert found.remedy
    return found.verdict


@pytest.mark.parametrize("name", CASES)
def test_holds(name: str) -> None:
    assert verdict(name, CASES[name].holds) in (Verdict.HOLDS, Verdict.NEAR)


@pytest.mark.parametrize("name", CASES)
def test_fails(name: str) -> None:
    assert verdict(name, CASES[name].fails) is Verdict.FAILS


def test_every_rule_has_its_cases() -> None:
    mine = {r.id for r in rules() if r.measure.__module__.rsplit(".", 1)[1] in ("brief", "cooling", "power")}
    assert mine == set(CASES)


def test_every_subject_has_its_tests() -> None:
    """The subjects that are not looked at here have a test file of their own name, with its own cases."""
    for subject in SUBJECTS:
        name = subject.__name__.rsplit(".", 1)[1]
        if name not in ("brief", "cooling", "power"):
            assert "CASES" in (Path(__file__).parent / f"test_{name}.py").read_text(), name


def price_finding(limit: str, *items: Item) -> Finding:
    made = priced(limit)(boats.boat(1))
    made = replace(made, items=items or made.items)
    (found,) = [r.find(Evidence(made, Simulation(made))) for r in rules() if r.id == "price-limit"]
    assert found is not None
    return found


def test_a_price_that_can_be_told_says_in_what() -> None:
    found = price_finding("65 000 EUR")
    assert (found.value, found.limit, found.note) == (3000.0, 65_000.0, "in EUR")


def test_price_limit_in_another_currency_cannot_tell_and_says_why() -> None:
    found = price_finding("65 000 USD")
    assert found.verdict is Verdict.CANNOT_TELL
    assert found.note == "in USD; the parts come to 3 000 EUR, which is not converted"


def test_price_limit_with_a_part_without_a_price_cannot_tell_and_names_it() -> None:
    bare = boats.item("dc.bank.module", "battery_module", "our own module", 2, 40.0, math.nan, "", -1)
    found = price_finding("65 000 EUR", bare)
    assert found.verdict is Verdict.CANNOT_TELL
    assert found.note == "in EUR; no price of our own module"


def test_price_limit_without_parts_cannot_tell() -> None:
    made = replace(priced("65 000 EUR")(boats.boat(1)), items=())
    (found,) = [r.find(Evidence(made, Simulation(made))) for r in rules() if r.id == "price-limit"]
    assert found is not None
    assert found.verdict is Verdict.CANNOT_TELL


def test_rules_without_an_object_are_left_out() -> None:
    bare = replace(boats.boat(1), transformer=None, shore=None, engines=(boats.engine(()),))
    found = {r.id for r in rules() if r.find(Evidence(bare, Simulation(bare))) is not None}
    assert not found & {"transformer-carries-peak", "shore-carries-load", "alternator-winding", "alternator-overspeed"}


def test_registering_twice_is_an_error() -> None:
    with pytest.raises(ValueError, match="twice"):
        rule("mass-limit", "again?", "mass", "none", "none")(lambda _: None)


@pytest.mark.parametrize(
    ("value", "limit", "expected"),
    [
        (1.0, 2.0, Verdict.HOLDS),
        (1.9, 2.0, Verdict.NEAR),
        (2.0, 2.0, Verdict.NEAR),
        (2.1, 2.0, Verdict.FAILS),
        (math.nan, 2.0, Verdict.CANNOT_TELL),
        (1.0, math.nan, Verdict.CANNOT_TELL),
    ],
)
def test_at_most(value: float, limit: float, expected: Verdict) -> None:
    assert at_most(value, limit).verdict is expected
    mirrored = at_least(-value, -limit).verdict
    assert mirrored is expected
