"""What is public says what it is: exported names, and the docstring of every physics function."""

from __future__ import annotations

import inspect
import re
from collections.abc import Callable
from importlib import import_module
from pathlib import Path
from typing import Any

import pytest

import anchorwatt
from anchorwatt import physics
from anchorwatt.simulation import compiled

PHYSICS = sorted(path.stem for path in Path(physics.__path__[0]).glob("*.py") if path.stem != "__init__")
SECTION = re.compile(r"^(\w[\w ]*)\n-{3,}\n", re.MULTILINE)


def functions_of(name: str) -> list[tuple[str, Callable[..., Any]]]:
    module = import_module(f"anchorwatt.physics.{name}")
    return [
        (f"{name}.{function}", one)
        for function, one in inspect.getmembers(module, inspect.isfunction)
        if one.__module__ == module.__name__ and not function.startswith("_")
    ]


FUNCTIONS = [pair for name in PHYSICS for pair in functions_of(name)]


def sections(function: Callable[..., Any]) -> dict[str, str]:
    pieces = SECTION.split(inspect.getdoc(function) or "")
    return {"": pieces[0], **dict(zip(pieces[1::2], pieces[2::2], strict=True))}


def documented(body: str) -> list[str]:
    """Names before the colon at the left edge; several may share a line."""
    heads = [line.split(" :")[0] for line in body.splitlines() if line[:1].strip() and " :" in line]
    return [name.strip() for head in heads for name in head.split(",")]


@pytest.mark.parametrize("name", anchorwatt.__all__)
def test_every_exported_name_is_there(name: str) -> None:
    assert getattr(anchorwatt, name) is not None


def test_only_the_exported_names_are_listed() -> None:
    assert dir(anchorwatt) == sorted(anchorwatt.__all__)


def test_a_name_that_is_not_there_is_an_attribute_error() -> None:
    with pytest.raises(AttributeError, match="no attribute 'nothing'"):
        _ = anchorwatt.nothing


def test_there_are_physics_functions_to_walk() -> None:
    assert len(FUNCTIONS) > 50


@pytest.mark.parametrize(("name", "function"), FUNCTIONS, ids=[name for name, _ in FUNCTIONS])
class TestPhysicsFunction:
    def test_has_its_sections(self, name: str, function: Callable[..., Any]) -> None:
        needed = {"Returns", "Source", "Example"} | (
            {"Parameters"} if inspect.signature(function).parameters else set()
        )
        assert needed <= sections(function).keys()

    def test_documents_each_parameter_once(self, name: str, function: Callable[..., Any]) -> None:
        assert documented(sections(function).get("Parameters", "")) == list(inspect.signature(function).parameters)

    def test_names_its_source(self, name: str, function: Callable[..., Any]) -> None:
        assert sections(function)["Source"].strip()

    def test_has_an_example_that_runs_it(self, name: str, function: Callable[..., Any]) -> None:
        example = sections(function)["Example"]
        assert ">>>" in example
        assert function.__name__ in example

    def test_says_when_it_refuses(self, name: str, function: Callable[..., Any]) -> None:
        refuses = "raise OutOfRange" in inspect.getsource(function)
        assert not refuses or "OutOfRange" in sections(function).get("Raises", "")


@pytest.mark.parametrize("name", compiled.KERNEL_PHYSICS)
def test_what_the_kernel_compiles_is_there(name: str) -> None:
    assert name in PHYSICS


@pytest.mark.parametrize("name", compiled.KERNEL_SIMULATION)
def test_every_physics_module_that_the_kernel_calls_is_in_its_list(name: str) -> None:
    """The list names the cache's folder: a module left out could leave stale code running."""
    text = (Path(anchorwatt.__path__[0]) / "simulation" / f"{name}.py").read_text("utf-8")
    called = set(re.findall(r"^from anchorwatt\.physics\.(\w+) import", text, re.MULTILINE))
    assert called <= set(compiled.KERNEL_PHYSICS)


@pytest.mark.parametrize("name", compiled.KERNEL_SIMULATION)
def test_every_simulation_module_that_the_kernel_calls_is_in_its_list(name: str) -> None:
    text = (Path(anchorwatt.__path__[0]) / "simulation" / f"{name}.py").read_text("utf-8")
    called = set(re.findall(r"^from anchorwatt\.simulation\.(\w+) import", text, re.MULTILINE))
    assert called <= {*compiled.KERNEL_SIMULATION, "compiled"}


@pytest.mark.parametrize("name", compiled.KERNEL_PHYSICS)
def test_the_kernels_physics_calls_only_what_is_in_the_list(name: str) -> None:
    text = (Path(physics.__path__[0]) / f"{name}.py").read_text("utf-8")
    called = set(re.findall(r"^from anchorwatt\.physics\.(\w+) import", text, re.MULTILINE))
    assert called <= set(compiled.KERNEL_PHYSICS)
