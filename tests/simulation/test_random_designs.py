"""Laws on random valid designs: the whole chain from the file's text on."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest
from hypothesis import Phase, given, reject, settings

from anchorwatt import design
from anchorwatt.errors import OutOfRange
from anchorwatt.simulation.arrays import UNCOOLED
from anchorwatt.simulation.runs import Run, Simulation
from tests.design.strategies import as_text, designs

STEP = 20.0


def short_runs(drawn: dict[str, Any]) -> tuple[Simulation, Run, Run]:
    """Six hours from the start of the night, cooled and not, from one state."""
    simulation = Simulation(design.specify(design.parse(as_text(drawn))), STEP)
    start, end = simulation.night_start, simulation.night_start + 6 * 3600.0
    lead = simulation.run("lead", start - 12 * 3600.0, start, simulation.first_state(30.0), live=False)
    cooled = simulation.run("cooled", start, end, lead.end)
    return simulation, cooled, simulation.run("uncooled", start, end, lead.end, mode=UNCOOLED)


@settings(max_examples=15, phases=[Phase.explicit, Phase.generate])  # a smaller failure is not worth minutes
@given(designs())
def test_laws(drawn: dict[str, Any]) -> None:
    try:
        simulation, run, uncooled = short_runs(drawn)
    except OutOfRange as error:  # kilowatts in a closed small cabin boil it: told, not computed
        if "look for one with many people or much running" not in str(error):
            raise
        reject()
    series, summary = run.series, run.summary
    for name in (
        "air",
        "humidity",
        "sensible",
        "latent",
        "plant_power",
        "inverter_input",
        "charge",
        "voltage",
        "current",
    ):
        assert np.isfinite(getattr(series, name)).all(), name
    # Charge stays between its limits.
    assert series.charge.min() >= 0.0
    assert series.charge.max() <= 1.0
    # Power balance closes at every step, to the watt's millionth part of what flows.
    bank = series.current[0] * series.voltage[0]
    supplied = bank + series.solar[0] + series.charger[0]
    used = series.dc_load[0] + series.inverter_input[0]
    engines_off = (run.forcing.engine_speed[0] == 0.0).all(axis=0) if run.forcing.engine_speed.shape[1] else slice(None)
    scale = 1.0 + np.abs(used).max()
    assert np.abs((supplied - used)[engines_off]).max(initial=0.0) < 1e-6 * scale
    throughput = float(summary.inverter_energy[0] + summary.dc_load_energy[0] + summary.alternator_energy[0]) + 1.0
    fed = summary.bank_out + summary.alternator_energy + summary.solar_energy + summary.charger_energy
    drawn_off = summary.inverter_energy + summary.dc_load_energy
    assert float(fed[0] - drawn_off[0]) == pytest.approx(0.0, abs=1e-6 * throughput)
    assert float(summary.bank_out[0] + summary.bank_loss[0] + summary.bank_stored[0]) == pytest.approx(
        0.0, abs=1e-6 * throughput
    )
    heat = abs(float(summary.heat_in[0])) + float(summary.sensible_energy[0].sum()) + 1.0
    assert float(summary.heat_in[0] - summary.heat_stored[0]) == pytest.approx(0.0, abs=1e-6 * heat)
    # Cooling never raises a cabin's temperature (steps are divided where air moves fast, so not at the same
    # moments in both runs: 0.01 K), unless machinery's heat or air from a warmer cabin comes with it.
    boat = simulation.boat
    machines = np.r_[boat.power.heat_cabin, boat.power.engine_cabin]
    alone = boat.plant.outlet_handler.size == 0 and (machines < 0).all()
    warmed = not np.isnan(run.forcing.warm_point).all()
    if alone and not warmed:
        assert (series.air - uncooled.series.air).max() < 0.01
    # Heating never makes one colder, by the same reckoning.
    if alone and np.isnan(run.forcing.set_point).all():
        assert (series.air - uncooled.series.air).min() > -0.01
    # What the plant takes is never more than its compressor gives at the warmest suction.
    capacity = simulation.boat.plant.plant_capacity[0]
    assert series.plant_load.max() <= capacity.max() * (1.0 + 1e-6)
