"""Conductors: which circuit a rule names."""

from __future__ import annotations

import pytest

from tests.checks.found import Told, finding, sure
from tests.checks.holds_and_fails.conductors import AS_IT_IS, CASES, size, wishing


@pytest.mark.parametrize("name", CASES)
def test_a_failure_names_the_wire(name: str) -> None:
    assert sure(name, CASES[name].fails).note.startswith("W")


def test_single_conductors_say_nothing_of_parallel_ones() -> None:
    assert finding("parallel-conductors-large", Told(spoil=size("16 mm²"))) is None


def test_a_circuit_that_there_is_not_is_told_with_its_line() -> None:
    assert sure("circuits-named-exist", wishing("W999")).note.startswith("W999 at boat.yaml:7;")


def test_a_file_that_names_no_circuit_hears_nothing_of_them() -> None:
    assert finding("circuits-named-exist", AS_IT_IS) is None
