"""Speed of sizing every circuit of the 14 m starter, beside one simulated night in the same run.

Run with `make bench`; nothing here is a test of `make test`.
"""

from __future__ import annotations

from pathlib import Path

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from anchorwatt import design
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.wiring import Wiring, wiring

MANY = 60


@pytest.fixture(scope="module")
def simulation(tmp_path_factory: pytest.TempPathFactory) -> Simulation:
    path = Path(tmp_path_factory.mktemp("bench")) / "boat.yaml"
    design.new("trawler-14m", path)
    made = Simulation(design.specify(design.read(path)))
    assert made.night.clock.size
    assert made.day.clock.size
    assert made.recharge is not None
    return made


@pytest.mark.benchmark(group="circuits of the 14 m starter")
def test_all_circuits(benchmark: BenchmarkFixture, simulation: Simulation) -> None:
    found: Wiring = benchmark.pedantic(wiring, args=(simulation.specification, simulation), rounds=30, warmup_rounds=3)
    assert len(found.circuits) >= MANY


@pytest.mark.benchmark(group="circuits of the 14 m starter")
def test_beside_one_night(benchmark: BenchmarkFixture, simulation: Simulation) -> None:
    run = simulation.run
    state, start, end = simulation.before.end, simulation.night_start, simulation.dawn
    benchmark.pedantic(lambda: run("night", start, end, state), rounds=30, warmup_rounds=3)
