"""Conductors, their markers and their terminals."""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from functools import cache
from itertools import takewhile

import pytest

from anchorwatt.design.specification import Regime
from anchorwatt.sizing.terminals import NUMBERED, Core, core_names, cores, meeting, protection_tag
from anchorwatt.sizing.wiring import WiredCircuit, wiring
from tests.sizing.test_circuits import rich, simulation


@cache
def wired(regime: Regime = Regime.ABYC) -> tuple[WiredCircuit, ...]:
    specification = rich()
    changed = replace(specification.wiring, regime=regime, metric=regime is Regime.ISO)
    return wiring(replace(specification, wiring=changed), simulation()).circuits


def side_by_side(tag: str, count: int) -> tuple[WiredCircuit, ...]:
    return tuple(
        replace(one, conductor=replace(one.conductor, parallel=count)) if one.tag == tag else one for one in wired()
    )


def of(function: str, among: tuple[WiredCircuit, ...] | None = None) -> list[Core]:
    every = among or wired()
    tag = next(one.tag for one in every if one.circuit.function == function)
    return [core for core in cores(every) if core.circuit == tag]


regimes = pytest.mark.parametrize("regime", list(Regime))


@regimes
def test_no_two_conductors_share_a_terminal(regime: Regime) -> None:
    found = Counter(terminal for core in cores(wired(regime)) for terminal in (core.start, core.end))
    assert set(found.values()) == {1}


@regimes
def test_no_two_conductors_share_a_marker(regime: Regime) -> None:
    markers = [core.marker for core in cores(wired(regime))]
    assert len(markers) == len(set(markers))


@regimes
def test_every_circuit_has_as_many_conductors_as_its_schedule_lays(regime: Regime) -> None:
    laid = Counter(core.circuit for core in cores(wired(regime)))
    assert laid == {one.tag: one.circuit.cores * one.conductor.parallel for one in wired(regime)}


@regimes
def test_every_conductor_ends_where_its_circuit_does(regime: Regime) -> None:
    ends = {one.tag: (one.circuit.start, one.circuit.end) for one in wired(regime)}
    assert all((core.start.end, core.end.end) == ends[core.circuit] for core in cores(wired(regime)))


@pytest.mark.parametrize(
    ("regime", "system", "poles", "colours"),
    [
        (Regime.ABYC, "dc", 2, ["red", "yellow"]),
        (Regime.ISO, "dc", 2, ["red", "black"]),
        (Regime.ABYC, "ac", 2, ["black", "white", "green"]),
        (Regime.ISO, "ac", 2, ["brown", "blue", "green-yellow"]),
        (Regime.ISO, "bonding", 1, ["green-yellow"]),
        (Regime.ABYC, "bonding", 1, ["green"]),
        (Regime.ABYC, "control", 2, [NUMBERED, NUMBERED]),
    ],
)
def test_each_core_has_the_colour_of_its_function_under_the_regime(
    regime: Regime, system: str, poles: int, colours: list[str]
) -> None:
    """ABYC E-11, ISO 13297 and IEC 60445, from memory: as `sizing.terminations` has them for the whole circuit."""
    one = next(one for one in wired(regime) if (one.circuit.system, one.circuit.poles) == (system, poles))
    assert [core.colour for core in cores(wired(regime)) if core.circuit == one.tag] == colours


def test_two_lines_of_a_split_service_are_black_and_red() -> None:
    """ABYC E-11, from memory."""
    inlet = next(one for one in wired() if one.circuit.system == "ac")
    split = replace(
        inlet, circuit=replace(inlet.circuit, poles=3, cores=4), colour="black, red, white, green", protection=None
    )
    assert [(core.name, core.colour) for core in cores([split])] == [
        ("L1", "black"),
        ("L2", "red"),
        ("N", "white"),
        ("PE", "green"),
    ]


def test_a_bus_numbers_its_terminals_by_the_circuits_that_meet_there() -> None:
    on_bus = [terminal.name for core in cores(wired()) for terminal in (core.start, core.end) if terminal.end == "X2"]
    count = meeting(wired())["X2"]
    numbers = [int("".join(takewhile(str.isdigit, name))) for name in on_bus]
    assert list(dict.fromkeys(numbers)) == list(range(1, count + 1))


def test_a_device_names_its_terminals_by_what_they_do() -> None:
    assert [core.start.name for core in of("port output")] == ["DC+", "DC−"]
    assert [core.end.name for core in of("solar panels")] == ["PV+", "PV−"]
    assert [core.end.name for core in of("cooling plant")] == ["L", "N", "PE"]
    assert {core.start.name for core in of("bonding, case of inverter")} == {"case"}
    field = next(one.circuit.function for one in wired() if one.circuit.function.startswith("field"))
    assert [core.end.name for core in of(field)] == ["F+", "F−"]


def test_a_second_circuit_of_a_kind_on_a_device_gets_a_number_before_its_names() -> None:
    assert [core.start.name for core in of("bank string 2 of 2")] == ["2DC+", "2DC−"]


def test_signals_of_a_device_are_numbered_on() -> None:
    on_plant = [
        terminal.name
        for core in cores(wired())
        for terminal in (core.start, core.end)
        if terminal.end == "K1" and terminal.name.startswith("S")
    ]
    assert on_plant == [f"S{number}" for number in range(1, len(on_plant) + 1)]


def test_conductors_side_by_side_each_have_marker_and_terminals() -> None:
    found = of("main feeder", side_by_side(wired()[2].tag, 2))
    assert [core.marker for core in found] == ["W3+.1", "W3+.2", "W3−.1", "W3−.2"]
    assert len({core.start for core in found} | {core.end for core in found}) == 8


def test_fuses_stand_in_the_positive_and_in_the_lines_only() -> None:
    assert {core.name for core in cores(wired()) if core.live} == {"+", "L"}


def test_a_device_of_protection_has_its_circuits_number() -> None:
    assert protection_tag("W12") == "F12"


def test_a_control_core_does_not_read_as_another_circuit() -> None:
    control = next(one for one in wired() if one.circuit.system == "control")
    assert core_names(control.circuit) == ("1", "2")
    assert [core.marker for core in cores([control])] == [f"{control.tag}.1", f"{control.tag}.2"]


def test_no_circuits_have_no_conductors() -> None:
    assert cores(()) == ()
