"""Heat of engines, converters and hatches left open."""

from __future__ import annotations

from dataclasses import replace
from functools import cache

import numpy as np
import pytest

from anchorwatt.design.specification import Specification
from anchorwatt.simulation.runs import Simulation
from tests.simulation import boats

CAPACITY, CONDUCTANCE, HOT = 300e3, 12.0, 80.0


def machinery_boat(**changes: object) -> Specification:
    """The third cabin holds engine, inverter, transformer, charger and bank."""
    made = boats.boat(3)
    assert made.charger is not None
    assert made.transformer is not None
    engine = replace(
        made.engines[0],
        cabin=2,
        block_capacity=CAPACITY,
        block_conductance=CONDUCTANCE,
        block_temperature=HOT,
        blower=0.03,
    )
    return replace(
        made,
        engines=(replace(engine, **changes),),  # type: ignore[arg-type]
        inverter=replace(made.inverter, cabin=2),
        charger=replace(made.charger, cabin=2),
        transformer=replace(made.transformer, cabin=2),
        bank=replace(made.bank, cabin=2),
    )


@cache
def warm() -> Simulation:
    return Simulation(machinery_boat())


def test_engine_is_hot_after_motoring_and_cools_by_its_time_constant() -> None:
    """The plan motors until 15:00; then the block falls towards its compartment's air exponentially."""
    simulation = warm()
    start = 15.0 * 3600.0
    before = simulation.run("motoring", start - 6.0 * 3600.0, start, simulation.before.end, live=False)
    assert before.end.block[0, 0] == HOT
    hours = 4.0
    after = simulation.run("after", start, start + hours * 3600.0, before.end, live=False)
    air = float(after.series.air[0, 2].mean())
    left = np.exp(-CONDUCTANCE * hours * 3600.0 / CAPACITY)
    assert after.end.block[0, 0] == pytest.approx(air + left * (HOT - air), abs=1.0)


def test_engine_heats_its_compartment() -> None:
    cold = Simulation(machinery_boat(block_conductance=0.0))
    with_engine, without = warm().before.series.air[0, 2], cold.before.series.air[0, 2]
    assert with_engine.max() > without.max() + 1.0


def test_converters_heat_the_compartment_they_stand_in() -> None:
    elsewhere = Simulation(replace(machinery_boat(), inverter=boats.boat(1).inverter))
    assert warm().night.series.sensible[0, 2].sum() > 1.02 * elsewhere.night.series.sensible[0, 2].sum()


def test_heat_balance_closes() -> None:
    s = warm().night.summary
    taken = float(s.sensible_energy[0].sum())
    assert float(s.heat_in[0] - s.heat_stored[0]) == pytest.approx(0.0, abs=1e-6 * taken)


def test_losses_arrive_as_heat() -> None:
    """Over a night the inverter's and the transformer's losses are what the compartment gains more."""
    simulation, bare = warm(), Simulation(machinery_boat(block_conductance=0.0))
    none = Simulation(
        replace(
            bare.specification,
            inverter=boats.boat(1).inverter,
            transformer=boats.boat(1).transformer,
            charger=boats.boat(1).charger,
            bank=boats.boat(1).bank,
        )
    )
    gained = float(bare.night.summary.heat_in[0] - none.night.summary.heat_in[0])
    more_taken = float(bare.night.summary.sensible_energy[0].sum() - none.night.summary.sensible_energy[0].sum())
    lost = float(bare.night.summary.inverter_loss[0] + bare.night.summary.transformer_loss[0])
    assert lost > 0.0
    # Part is taken by the plant, part goes out through the walls, part is stored.
    assert 0.3 * lost < gained + more_taken < 1.3 * lost
    assert simulation.night.summary.inverter_loss[0] > 0.0


def test_a_hatch_left_open_lets_the_weather_in() -> None:
    made = boats.boat(1)
    ajar = replace(made, plan=tuple(replace(p, openings=(0.1,)) for p in made.plan))
    shut, opened = Simulation(made), Simulation(ajar)
    assert opened.night.forcing.outdoor_flow.min() > 2.0 * shut.night.forcing.outdoor_flow.max()
    assert opened.night.summary.latent_energy[0, 0] > 1.5 * shut.night.summary.latent_energy[0, 0]


def test_an_awning_keeps_the_sun_off_and_the_sky_away() -> None:
    made = boats.boat(1)

    def under(sun: float, sky: float) -> Simulation:
        cabin = made.cabins[0]
        deck = tuple(replace(s, sun_left=sun, sky_left=sky) if s.name == "deck" else s for s in cabin.surfaces)
        return Simulation(replace(made, cabins=(replace(cabin, surfaces=deck),)))

    bare, shaded = under(1.0, 1.0), under(0.2, 0.2)
    assert shaded.before.series.air[0, 0].max() < bare.before.series.air[0, 0].max() - 0.3
    # By night the bare deck sees the cold sky; the awning hides it.
    deck = 2
    midnight = int(np.argmin(np.abs(bare.weather.time - 86_400.0)))
    assert shaded.outside.far_temperature[deck, midnight] > bare.outside.far_temperature[deck, midnight] + 0.5
