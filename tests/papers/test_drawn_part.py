from __future__ import annotations

import pytest
from tests.starters import assessed

from anchorwatt.papers.drawn_part import circuits_at, keys_of, part_screen
from anchorwatt.papers.page import Paragraph, Section, Table


def cells(found: object) -> str:
    assert isinstance(found, Section)
    said = []
    for one in found.body:
        if isinstance(one, Table):
            said += [cell.text for row in one.rows for cell in row]
        elif isinstance(one, Paragraph):
            said.append(one.words)
    return " | ".join(said)


def test_a_part_weighs_what_the_weight_calculation_counts_for_it() -> None:
    cutter = assessed("cutter-12m")
    carried = {one.tag: one for one in cutter.weight.figures.carried}
    item = next(one for one in cutter.specification.items if one.tag == "G1")
    assert item.count * item.mass == pytest.approx(carried["G1"].mass)
    assert f"{carried['G1'].mass:.0f} kg" in cells(part_screen(cutter, "G1", "G1, bank", "si"))


def test_a_bus_says_that_it_is_not_weighed() -> None:
    cutter = assessed("cutter-12m")
    assert "not counted" in cells(part_screen(cutter, "X2", "X2, DC bus", "si"))


def test_every_circuit_is_found_at_both_of_its_ends() -> None:
    cutter = assessed("cutter-12m")
    for one in cutter.wiring.wiring.circuits:
        for end in (one.circuit.start, one.circuit.end):
            assert one in circuits_at(cutter, end)


def test_a_pipe_is_changed_where_its_handler_is() -> None:
    cutter = assessed("cutter-12m")
    assert keys_of(cutter, "line:E2.W1") == keys_of(cutter, "E2")


def test_a_bus_has_no_key() -> None:
    cutter = assessed("cutter-12m")
    assert keys_of(cutter, "X2") == {}
