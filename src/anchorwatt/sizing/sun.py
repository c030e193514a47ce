"""A day of sun on the panels."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from anchorwatt.design.specification import Specification
from anchorwatt.physics.solar import cell_temperature, panel_power
from anchorwatt.simulation.runs import Simulation

FULL_SUN = 1000.0  # W/m2


@dataclass(frozen=True)
class SunDay:
    """Twenty-four hours of the panels, from where the night begins."""

    peak_power: float  # W at standard test conditions
    delivered_share: float  # what shading, dirt, wiring and controller leave
    full_sun: float  # s of 1000 W/m2 on the panels, unshaded, that would be the same
    without_losses: float  # J that the cells would give at 25 °C, unshaded
    lost_to_heat: float  # J less, as the cells are warmer
    offered: float  # J delivered, were all of it wanted
    taken: float  # J that bank and loads took
    hottest_cells: float  # °C


def sun_day(specification: Specification, simulation: Simulation) -> SunDay | None:
    """The panels' day; None without panels."""
    solar = specification.solar
    if solar is None:
        return None
    sun, cold, warm, offered, taken, hottest = 0.0, 0.0, 0.0, 0.0, 0.0, -273.15
    for run in (simulation.night, simulation.day):
        irradiance = run.forcing.panel_irradiance[0]
        air = run.forcing.dry_bulb[0]
        for on_panel, around in zip(0.5 * (irradiance[:-1] + irradiance[1:]), 0.5 * (air[:-1] + air[1:]), strict=True):
            cells = cell_temperature(float(around), float(on_panel), solar.rise)
            plain = panel_power(float(on_panel), 25.0, solar.peak_power, solar.temperature_coefficient, 1.0)
            heated = panel_power(float(on_panel), cells, solar.peak_power, solar.temperature_coefficient, 1.0)
            sun += float(on_panel) * run.step
            cold += plain * run.step
            warm += heated * run.step
            offered += heated * solar.delivered_share * run.step
            if on_panel > 0.0:
                hottest = max(hottest, cells)
        taken += float(np.sum(run.series.solar[0])) * run.step
    return SunDay(
        peak_power=solar.peak_power,
        delivered_share=solar.delivered_share,
        full_sun=sun / FULL_SUN,
        without_losses=cold,
        lost_to_heat=cold - warm,
        offered=offered,
        taken=taken,
        hottest_cells=hottest,
    )
