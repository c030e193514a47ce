"""Speed of a whole weather year of a single box, beside the same year at a step of a minute.

Run with `make bench`; nothing here is a test of `make test`.
"""

from __future__ import annotations

import math

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from anchorwatt import Enclosure, Face, Gain, IdealLoads, Layer, Window, ideal_loads, weather_year
from anchorwatt.climate import year

FILE = "pvlib:723170TYA.CSV"
WALL = (Layer("boards", 0.01, 0.14, 530.0, 900.0), Layer("fibre", 0.07, 0.04, 12.0, 840.0))
SLAB = (Layer("foam", 0.1, 0.04, 20.0, 1400.0), Layer("concrete", 0.2, 1.4, 2300.0, 900.0))


def box() -> Enclosure:
    """A box with a set-back, so that the year is run a second time for the jumps of the set point."""
    sides = [Face(name, 20.0, WALL, azimuth=0.5 * math.pi * turn) for turn, name in enumerate("NESW")]
    faces = [*sides, Face("roof", 45.0, WALL, tilt=0.0), Face("floor", 45.0, SLAB, tilt=math.pi, beyond=10.0)]
    return Enclosure(
        "box", 120.0, faces, [Window("S", 10.0, 2.9, 0.76)], leakage=0.5 / 3600.0, gains=[Gain(200.0, 0.6)],
        heating=[12.0] * 7 + [20.0] * 15 + [12.0] * 2, cooling=26.0,
    )  # fmt: skip


def from_file() -> IdealLoads:
    year._year.cache_clear()
    return ideal_loads(box(), FILE)


@pytest.mark.benchmark(group="a weather year of one box")
def test_from_the_weather_file(benchmark: BenchmarkFixture) -> None:
    benchmark.pedantic(from_file, rounds=10, warmup_rounds=1)


@pytest.mark.benchmark(group="a weather year of one box")
def test_with_the_year_at_hand(benchmark: BenchmarkFixture) -> None:
    benchmark.pedantic(ideal_loads, args=(box(), weather_year(FILE)), rounds=10, warmup_rounds=1)


@pytest.mark.benchmark(group="a weather year of one box")
def test_at_a_step_of_a_minute(benchmark: BenchmarkFixture) -> None:
    benchmark.pedantic(ideal_loads, args=(box(), weather_year(FILE, 60.0)), rounds=2, warmup_rounds=1)
