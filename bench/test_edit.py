"""Speed of an edit until its answers stand, beside reading and assessing the same text with nothing kept.

What an edit leaves alone (weather, faces, plant) is kept from the design before it. Run with `make bench`; nothing
here is a test of `make test`.
"""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator
from functools import _lru_cache_wrapper
from importlib import import_module
from typing import Any

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from anchorwatt import design
from anchorwatt.assessment import assess
from anchorwatt.design import Design
from anchorwatt.simulation.lead_in import KEEPS as LEAD_INS

KEEPS = (
    "anchorwatt.units.reading",
    "anchorwatt.units.table",
    "anchorwatt.design.form",
    "anchorwatt.climate.night",
    "anchorwatt.climate.station",
    "anchorwatt.climate.series",
    "anchorwatt.simulation.network",
    "anchorwatt.simulation.outside",
    "anchorwatt.simulation.plant_map",
    "anchorwatt.simulation.plants",
)
"""Modules that keep what they have worked out."""

EDITS: dict[str, tuple[str, tuple[Any, Any]]] = {
    "a bank edit": ("dc.bank.parallel", (3, 4)),
    "a set-point edit": ("plan.0.cool.owner's cabin", ("75 °F", "77 °F")),
}


@pytest.fixture(scope="module")
def trawler() -> Design:
    made = design.parse(design.starter_text("trawler-14m"))
    assert answers(made)["hold_hours"] > 0.0
    return made


def answers(made: Design) -> dict[str, float]:
    """The answers of a design, without its checks."""
    return {answer.key: answer.value for answer in assess(made).answers}


def forget() -> None:
    """Empty everything that is kept from design to design."""
    for name in KEEPS:
        for value in vars(import_module(name)).values():
            if isinstance(value, _lru_cache_wrapper):
                value.cache_clear()
    LEAD_INS.forget()


def edited(trawler: Design, kind: str) -> Callable[[], dict[str, float]]:
    """A function that makes an edit, another one each time, and gives the answers."""
    key, values = EDITS[kind]
    turns: Iterator[Any] = itertools.cycle(values)
    return lambda: answers(design.edit(trawler, key, next(turns)))


@pytest.mark.parametrize("kind", EDITS)
@pytest.mark.benchmark(group="an edit of the 14 m starter until its answers stand")
def test_edit_to_answers(benchmark: BenchmarkFixture, trawler: Design, kind: str) -> None:
    benchmark.pedantic(edited(trawler, kind), rounds=15, warmup_rounds=2)


@pytest.mark.parametrize("kind", EDITS)
@pytest.mark.benchmark(group="an edit of the 14 m starter until its answers stand")
def test_fresh_read_to_answers(benchmark: BenchmarkFixture, trawler: Design, kind: str) -> None:
    key, values = EDITS[kind]
    text = design.edit(trawler, key, values[0]).document.text
    benchmark.pedantic(lambda: answers(design.parse(text)), setup=forget, rounds=8, warmup_rounds=1)


@pytest.mark.parametrize("kind", EDITS)
def test_an_edit_gives_what_a_fresh_read_gives(trawler: Design, kind: str) -> None:
    key, values = EDITS[kind]
    changed = design.edit(trawler, key, values[0])
    kept = answers(changed)
    forget()
    assert answers(design.parse(changed.document.text)) == kept
