"""Every single figure says how it was found."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import pytest

from anchorwatt import design
from anchorwatt.design import origin
from anchorwatt.sizing.regulator import RegulatorSheet, regulator_sheets
from anchorwatt.sizing.regulator_settings import FIELD_CUT, bank_settings, machine_settings
from anchorwatt.sizing.setting import Setting
from anchorwatt.units.table import DIMENSIONS
from tests.simulation import boats

BOAT = boats.boat(1)


def basis(key: str) -> str:
    return "typed"


@cache
def sheet() -> RegulatorSheet:
    return regulator_sheets(BOAT, (50.0,))[0]


def of_machine(boat: object = None) -> dict[str, Setting]:
    return {one.name: one for one in machine_settings(BOAT, sheet(), basis)}


def of_bank() -> dict[str, Setting]:
    return {one.name: one for one in bank_settings(BOAT, basis)}


@pytest.mark.parametrize("setting", [*of_machine().values(), *of_bank().values()], ids=lambda one: one.name)
def test_each_has_its_formula_source_and_dimension(setting: Setting) -> None:
    assert setting.formula
    assert setting.source
    assert setting.dimension in DIMENSIONS
    assert {one.basis for one in setting.inputs} <= {"typed", "catalogue", "estimated", "computed"}


def test_the_current_limit_is_the_lower_of_file_and_sheet() -> None:
    found = of_machine()["current limit"].value
    assert found == min(boats.alternator().current_limit, sheet().highest)


def test_fold_back_begins_and_ends_where_the_file_says() -> None:
    found = of_machine()
    assert found["fold-back begins"].value == 95.0
    assert found["fold-back ends"].value == 105.0
    assert found["winding at the held temperature"].value > 95.0


def test_voltages_and_tail_are_the_banks() -> None:
    found = of_bank()
    assert found["absorb voltage"].value == pytest.approx(28.0)
    assert found["float voltage"].value == pytest.approx(27.0)
    assert found["tail current"].value == pytest.approx(40.0)


def test_the_field_is_off_long_before_a_load_dump_could_last() -> None:
    assert of_bank()["field cut before the management system opens"].value == FIELD_CUT > 10.0 * 0.4


@pytest.mark.parametrize("starter", ["trawler-14m", "catamaran-13m", "cutter-12m"])
def test_every_figure_of_a_starter_has_its_place_in_the_file(starter: str) -> None:
    made = design.parse(design.starter_text(starter))
    it = design.specify(made)
    airs = tuple(45.0 for _ in it.engines)
    for one in regulator_sheets(it, airs):
        for setting in machine_settings(it, one, lambda key: origin(made, key)):
            assert setting.inputs
    assert bank_settings(replace(it), lambda key: origin(made, key))
