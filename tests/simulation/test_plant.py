"""The shared plant: its map, and how handlers share one compressor."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.compressor import cycle, isentropic_efficiency, volumetric_efficiency
from anchorwatt.physics.condenser import condensing_temperature, effectiveness
from anchorwatt.simulation.arrays import Floats
from anchorwatt.simulation.plant import (
    EVAPORATING_COUNT,
    EVAPORATING_START,
    EVAPORATING_STEP,
    SEA_COUNT,
    SEA_START,
    SEA_STEP,
    compressor_power,
    dispatch,
    full_capacity,
    grid_value,
    new_coils,
    share_out,
)
from anchorwatt.simulation.plant_map import plant_map
from anchorwatt.simulation.plants import handler_tables
from tests.simulation import boats

CIRCUIT = boats.circuit()
MAP = plant_map(CIRCUIT)
ZERO = 273.15


def direct(evaporating: float, sea: float, speed: float) -> tuple[float, float]:
    """Capacity and power straight from CoolProp, by a balance of our own at the condenser."""
    condensing = sea + 8.0
    cooling = work = 0.0
    for _ in range(200):
        state = cycle(CIRCUIT.refrigerant, evaporating, condensing, CIRCUIT.superheat, CIRCUIT.subcooling)
        flow = MAP.swept_flow * speed * state.suction_density * volumetric_efficiency(state.pressure_ratio)
        cooling = flow * state.refrigerating_effect
        efficiency = isentropic_efficiency(state.pressure_ratio, speed, MAP.efficiency_scale)
        work = flow * state.isentropic_work / efficiency
        condensing = condensing_temperature(sea, cooling + work, CIRCUIT.sea_flow, effectiveness(CIRCUIT.condenser_ntu))
    return cooling, work


def test_the_rating_comes_back() -> None:
    cooling, work = direct(CIRCUIT.rated_evaporating, CIRCUIT.rated_sea, 1.0)
    assert cooling == pytest.approx(CIRCUIT.rated_capacity, rel=2e-3)
    assert work == pytest.approx(CIRCUIT.rated_power, rel=2e-3)


@pytest.mark.parametrize(("evaporating", "sea"), [(3.0, 24.0), (7.0, 28.0), (11.0, 32.0), (5.0, 16.0)])
@pytest.mark.parametrize("place", [0, 4, 8])
def test_the_map_is_the_cycle(evaporating: float, sea: float, place: int) -> None:
    """At the map's own points only the cycle table's interpolation in condensing temperature is between."""
    speed = float(np.linspace(CIRCUIT.turn_down, 1.0, 9)[place])
    i = round((evaporating - EVAPORATING_START) / EVAPORATING_STEP)
    j = round((sea - SEA_START) / SEA_STEP)
    cooling, work = direct(evaporating, sea, speed)
    assert MAP.capacity[i, j, place] == pytest.approx(cooling, rel=1e-3)
    assert MAP.power[i, j, place] == pytest.approx(work, rel=2e-3)


def grids() -> tuple[Floats, Floats]:
    evaporating = EVAPORATING_START + EVAPORATING_STEP * np.arange(EVAPORATING_COUNT, dtype=np.float64)
    return evaporating, SEA_START + SEA_STEP * np.arange(SEA_COUNT, dtype=np.float64)


def test_cop_stays_below_carnot() -> None:
    """Between the evaporating temperature and the seawater: no plant of any kind does better."""
    evaporating, sea = grids()
    cop = MAP.capacity / MAP.power
    lift = sea[None, :] - evaporating[:, None]
    carnot = np.where(lift > 0.0, (evaporating[:, None] + ZERO) / np.maximum(lift, 1e-9), np.inf)
    assert (cop < carnot[:, :, None]).all()


def test_capacity_falls_with_warmer_sea() -> None:
    usable = MAP.capacity[4:16, 4:]  # 2 to 13 °C evaporating, 16 °C sea and up
    assert (np.diff(usable, axis=1) <= 1e-9).all()


def test_power_rises_with_warmer_sea_below_the_limit() -> None:
    usable = MAP.power[4:16, 4:9]  # 16 to 32 °C sea
    assert (np.diff(usable, axis=1) > 0.0).all()


def test_cop_does_not_keep_rising_at_low_load() -> None:
    full = full_capacity(MAP.capacity, 7.0, 28.0)
    shares = np.array([0.05, 0.1, 0.2, 0.4, 0.6, 0.8, 1.0])
    cop = [
        share * full / compressor_power(MAP.capacity, MAP.power, share * full, 7.0, 28.0, 0.25)[0] for share in shares
    ]
    best = int(np.argmax(cop))
    assert 0.3 <= shares[best] <= 0.8
    assert cop[0] < cop[1] < cop[2]


def test_cycling_runs_part_of_the_time() -> None:
    lowest = float(MAP.capacity[17, 7, 0])  # 7 °C, 28 °C sea
    _, duty = compressor_power(MAP.capacity, MAP.power, 0.5 * lowest, 7.0, 28.0, 0.25)
    assert duty == pytest.approx(0.5 / (1 - 0.25 * 0.5))


def test_an_impossible_rating_is_told() -> None:
    with pytest.raises(OutOfRange, match=r"0\.25 to 0\.85"):
        plant_map(replace(CIRCUIT, rated_power=600.0))


HANDLERS = [boats.handler("a", 0, 4000.0), boats.handler("b", 1, 4000.0), boats.handler("c", 2, 2500.0)]
DEMAND = np.array([handler_tables(h)[0] for h in HANDLERS])


def run_dispatch(
    calls: list[float],
    temperatures: list[float],
    priority: tuple[float, ...] = (1.0, 1.0, 1.0),
    sea: float = 28.0,
) -> tuple[float, float, Floats, Floats]:
    n = len(calls)
    coils = new_coils(np.arange(n), np.zeros(0, dtype=np.int64), np.zeros(0, dtype=np.int64))
    coils.call[:], coils.entering[:], coils.damp[:] = calls, temperatures, 0.010
    coils.approach[:], coils.priority[:] = 3.0, priority
    coils.demand[:] = [grid_value(DEMAND, h, calls[h]) for h in range(n)]
    evaporating, total = dispatch(coils, 3.0, 11.0, MAP.capacity, sea, 101_325.0)
    return evaporating, total, coils.load, coils.share


def test_off_handlers_take_none() -> None:
    _, total, load, _ = run_dispatch([0.4, 0.0, 0.0], [25.0, 30.0, 30.0])
    assert load[1] == load[2] == 0.0
    assert total == pytest.approx(load[0])


def test_suction_floats_to_the_hardest_worked() -> None:
    """A light call lets suction rise to its limit; a full one pulls it to the lowest."""
    light, *_ = run_dispatch([0.2, 0.1, 0.1], [25.0, 25.0, 25.0])
    hard, *_ = run_dispatch([0.2, 0.1, 1.0], [25.0, 25.0, 25.0])
    assert light == 11.0
    assert hard == 3.0


def test_all_calling_binds_the_compressor() -> None:
    evaporating, total, load, share = run_dispatch([1.0, 1.0, 1.0], [30.0, 30.0, 30.0])
    assert total == pytest.approx(full_capacity(MAP.capacity, evaporating, 28.0), rel=1e-6)
    assert (share < 1.0).all()
    assert load[2] < load[0]  # the smaller handler gets less


def test_priority_is_served_first() -> None:
    plain = run_dispatch([1.0, 1.0, 1.0], [30.0, 30.0, 30.0])
    first = run_dispatch([1.0, 1.0, 1.0], [30.0, 30.0, 30.0], priority=(1.0, 1.0, 5.0))
    assert first[3][2] > plain[3][2]
    assert first[3][0] < plain[3][0]


@given(
    st.lists(st.floats(0.0, 1.0), min_size=3, max_size=3),
    st.lists(st.floats(20.0, 38.0), min_size=3, max_size=3),
    st.floats(10.0, 34.0),
)
def test_dispatch_never_exceeds_the_compressor(calls: list[float], temperatures: list[float], sea: float) -> None:
    evaporating, total, load, share = run_dispatch(calls, temperatures, sea=sea)
    assert 3.0 <= evaporating <= 11.0
    assert total <= full_capacity(MAP.capacity, evaporating, sea) * (1.0 + 1e-6)
    assert (load >= 0.0).all()
    assert ((share >= 0.0) & (share <= 1.0 + 1e-9)).all()


@given(
    st.lists(st.tuples(st.floats(1.0, 5000.0), st.floats(0.2, 5.0)), min_size=1, max_size=8),
    st.floats(0.01, 0.99),
)
def test_share_out_uses_all_and_gives_no_more_than_wished(rows: list[tuple[float, float]], part: float) -> None:
    load = np.array([row[0] for row in rows])
    share = np.zeros(len(rows))
    share_out(load, np.array([row[1] for row in rows]), part * load.sum(), share)
    assert (share * load).sum() == pytest.approx(part * load.sum(), rel=1e-9)
    assert (share <= 1.0 + 1e-12).all()
