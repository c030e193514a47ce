"""What is told of the regulators of a boat."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

from anchorwatt.assessment.regulator import RegulatorSetUp, regulator_set_up
from anchorwatt.checks import Evidence
from anchorwatt.design.specification import Specification
from anchorwatt.simulation.runs import Simulation
from tests.simulation import boats


def set_up(boat: Specification) -> RegulatorSetUp:
    return regulator_set_up(Evidence(boat, Simulation(boat)), lambda _: "typed")


@cache
def twins() -> RegulatorSetUp:
    return set_up(replace(boats.boat(1), engines=(boats.engine((boats.alternator("a"), boats.alternator("b"))),)))


def test_every_alternator_has_its_sheet_and_settings() -> None:
    assert [one.name for one in twins().machines] == ["a", "b"]
    assert {one.engine for one in twins().machines} == {"main engine"}
    for one in twins().machines:
        assert one.sheet.rows
        assert one.settings


def test_charge_currents_of_the_machines_add_to_what_the_bank_takes() -> None:
    shares = [s.value for one in twins().machines for s in one.settings if s.name == "charge current for the bank"]
    assert sum(shares) == boats.bank().charge_current


def test_the_hour_the_belts_and_the_load_dump_are_told() -> None:
    assert twins().hours
    assert twins().load_dump is not None
    assert [one.engine for one in twins().side_loads] == [0]
    assert any("load dump" in words for words in twins().cautions)


def test_a_boat_without_alternators_has_only_the_banks_settings() -> None:
    bare = set_up(replace(boats.boat(1), engines=(boats.engine(()),)))
    assert bare.machines == ()
    assert bare.hours == ()
    assert bare.load_dump is None
    assert bare.bank
