"""The compiled kernel, its cache, and its plain twin."""

from __future__ import annotations

import inspect
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

from anchorwatt.simulation import compiled as module
from anchorwatt.simulation import kernel
from anchorwatt.simulation.compiled import (
    KERNEL_PHYSICS,
    KERNEL_SIMULATION,
    PACKAGE,
    compiled,
    needs_compiling,
)
from anchorwatt.simulation.kernel import run_cases
from anchorwatt.simulation.runs import Simulation, copy_state, empty_series, empty_summary, settings
from tests.simulation import boats


def test_compiled_equals_plain() -> None:
    """Ten minutes of a night, the same code in plain Python and compiled."""
    simulation = Simulation(boats.boat(2))
    start, end = simulation.night_start, simulation.night_start + 600.0
    fast = simulation.run("fast", start, end, simulation.before.end)
    summary, series = empty_summary(1, 2), empty_series(1, 2, 1, 10)
    run_cases(
        simulation.boat, fast.forcing, settings(1), copy_state(simulation.before.end), simulation.step, 0, 1, 0.2, 0.95,
        summary, series, np.zeros((1, 1, 6)), 0, 1,
    )  # fmt: skip
    for name in ("air", "humidity", "charge", "plant_power", "current"):
        assert getattr(series, name) == pytest.approx(getattr(fast.series, name), rel=1e-9), name


def test_every_source_of_the_kernel_names_the_cache() -> None:
    """Whatever a kernel module imports from physics or simulation is itself in the hash."""
    listed = {f"anchorwatt.physics.{n}" for n in KERNEL_PHYSICS} | {
        f"anchorwatt.simulation.{n}" for n in KERNEL_SIMULATION
    }
    for name in sorted(listed):
        source = (PACKAGE / Path(*name.split(".")[1:])).with_suffix(".py").read_text()
        for line in source.splitlines():
            for room in ("physics", "simulation"):
                if line.startswith(f"from anchorwatt.{room}."):
                    assert line.split()[1] in listed, f"{name} takes from {line.split()[1]}"


def test_a_changed_source_has_another_folder(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    for folder in ("physics", "simulation"):
        (tmp_path / folder).mkdir()
        for source in (PACKAGE / folder).glob("*.py"):
            (tmp_path / folder / source.name).write_bytes(source.read_bytes())
    monkeypatch.setattr(module, "PACKAGE", tmp_path)
    before = module._fingerprint()
    assert module._fingerprint() == before
    (tmp_path / "physics" / "coil.py").write_text("# changed\n")
    assert module._fingerprint() != before


def test_compiles_once() -> None:
    assert Simulation(boats.boat(1)).night.summary.plant_energy[0] > 0.0
    assert not needs_compiling()


def test_an_unwritable_cache_is_no_fault() -> None:
    code = (
        "import os; os.environ['ANCHORWATT_CACHE'] = '/proc/none'\n"
        "from anchorwatt.simulation.compiled import cache_folder\n"
        "print(cache_folder().is_dir())"
    )
    answer = subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True)
    assert answer.stdout.strip() == "True"


def test_kernel_functions_are_plain_python() -> None:
    functions = [f for _, f in inspect.getmembers(kernel, inspect.isfunction)]
    assert all(inspect.isfunction(f) for f in functions)
    assert compiled(run_cases) is not run_cases
