"""Speed of the night, beside the same equations solved by scipy's `solve_ivp` in the same run.

Run with `make bench`; nothing here is a test of `make test`.
"""

from __future__ import annotations

import resource
from pathlib import Path

import numpy as np
import pytest
from pytest_benchmark.fixture import BenchmarkFixture
from tests.simulation.reference import solve

from anchorwatt import design
from anchorwatt.simulation.arrays import SHARED, State
from anchorwatt.simulation.forcing import forcing
from anchorwatt.simulation.runs import (
    Simulation,
    copy_state,
    empty_series,
    empty_summary,
    run_batch,
    settings,
)

HOURS = 12.0
MANY = 10_000


@pytest.fixture(scope="module")
def simulation(tmp_path_factory: pytest.TempPathFactory) -> Simulation:
    path = Path(tmp_path_factory.mktemp("bench")) / "boat.yaml"
    design.new("trawler-14m", path)
    made = Simulation(design.specify(design.read(path)))
    assert made.before.end.charge[0] > 0.0
    return made


def nights(simulation: Simulation, count: int, state: State, threads: int) -> float:
    """Run that many nights of twelve hours; the mean charge at their end."""
    start = simulation.night_start
    driving = forcing(simulation.specification, simulation.outside, start, start + HOURS * 3600.0)
    cabins, machines = len(simulation.specification.cabins), simulation.boat.power.alternator_engine.size
    cases = settings(count)._replace(sea_offset=np.linspace(-2.0, 2.0, count), air_offset=np.linspace(1.0, -1.0, count))
    run_batch(
        simulation.boat, driving, cases, state, simulation.step, SHARED, True, 0.0, 1.0, empty_summary(count, cabins),
        empty_series(count, cabins, machines, 0), np.zeros((count, machines, 6)), threads,
    )  # fmt: skip
    return float(state.charge.mean())


@pytest.mark.benchmark(group="a 12-hour night of the 14 m starter")
def test_kernel_one_night(benchmark: BenchmarkFixture, simulation: Simulation) -> None:
    start = simulation.before.end
    benchmark.pedantic(nights, setup=lambda: ((simulation, 1, copy_state(start), 1), {}), rounds=50, warmup_rounds=3)


@pytest.mark.benchmark(group="a 12-hour night of the 14 m starter")
def test_solve_ivp_one_night(benchmark: BenchmarkFixture, simulation: Simulation) -> None:
    start = simulation.night_start
    driving = forcing(simulation.specification, simulation.outside, start, start + HOURS * 3600.0)
    benchmark.pedantic(
        solve, args=(simulation.boat, driving, simulation.before.end, simulation.step), rounds=1, iterations=1
    )


@pytest.mark.benchmark(group="ten thousand such nights, two threads")
def test_kernel_ten_thousand_nights(benchmark: BenchmarkFixture, simulation: Simulation) -> None:
    start = simulation.before.end
    benchmark.pedantic(nights, setup=lambda: ((simulation, MANY, copy_state(start, MANY), 2), {}), rounds=1)
    peak = resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024.0
    benchmark.extra_info["peak memory, MB"] = round(peak)
    print(f"\npeak memory of the whole process {peak:.0f} MB")
