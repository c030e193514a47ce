"""One case's cabins as they move through a step: room for work, and what drives them at a moment."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from anchorwatt.physics.moist_air import latent_heat, saturation_humidity_ratio
from anchorwatt.physics.people import latent_from_person, sensible_from_person
from anchorwatt.simulation.arrays import TO_OUTSIDE, Fabric, Floats, Forcing
from anchorwatt.simulation.fabric import PEOPLE_RADIANT

SETTLED = 1e-7  # K, where the iteration over condensing rests
HOTTEST = 90.0
"""°C that no cabin is taken to reach by condensing alone."""

WASTE_RADIANT = 0.4
"""Radiant share of the heat that machinery gives off. From practice, no source."""

NEARLY_DAMP = 0.9
"""Share of saturation above which a cabin's saturation is followed stage by stage, not step by step."""


class Cabins(NamedTuple):
    """The cabins and walls of one case; `base_*` is what a stage starts from."""

    node: Floats  # (N,) °C
    base_node: Floats
    furnishing: Floats  # (C,) °C
    base_furnishing: Floats
    air: Floats  # (C,) °C
    base_air: Floats
    humidity: Floats  # (C,) kg/kg
    base_humidity: Floats
    right: Floats  # (2C,) right-hand side of the cabin system
    cabin: Floats  # (2C,) °C air nodes, then radiant stars
    free: Floats  # (C,) °C at the end of the stage without cooling
    cooling: Floats  # (C,) W into the air, negative = cooling
    far_temperature: Floats  # (W,) °C
    air_gain: Floats  # (C,) W
    radiant_gain: Floats  # (C,) W
    furnishing_gain: Floats  # (C,) W
    moisture_gain: Floats  # (C,) kg/s
    sun: Floats  # (C,) W through windows
    waste: Floats  # (C,) W that machinery gives off, from the step before
    outdoor_flow: Floats  # (C,) kg/s dry air from outdoors
    blown: Floats  # (C, C) kg/s dry air that outlets send round through doors, symmetric
    mix: Floats  # (C,) W that this air carries from cabin to cabin
    mixed: Floats  # (C,) °C, `free` with it
    mirrored: Floats  # (C,) °C set points while heating
    dew_flow: Floats  # (C,) kg/s of air that meets surfaces
    dew_heat: Floats  # (C,) W that condensing gives up to the air
    most: Floats  # (C,) kg/kg at saturation
    known: Floats  # (C,) room for the moisture balance
    weight: Floats  # (C,)
    step_start: Floats  # (C,) °C air at the start of the step
    step_node: Floats  # (N,) °C, and the rest of what there was then
    step_furnishing: Floats
    step_humidity: Floats
    sensible: Floats  # (C,) W taken, mean of the step
    latent: Floats  # (C,) W taken, mean of the step
    heating: Floats  # (C,) W given, mean of the step


def new_cabins(nodes: int, cabins: int, walls: int) -> Cabins:
    """Room for one case."""
    c = cabins
    return Cabins(
        np.empty(nodes),
        np.empty(nodes),
        *(np.empty(c), np.empty(c), np.empty(c), np.empty(c), np.empty(c), np.empty(c)),
        np.empty(2 * c),
        np.empty(2 * c),
        *(np.empty(c), np.empty(c)),
        np.empty(walls),
        *(np.empty(c), np.empty(c), np.empty(c), np.empty(c), np.empty(c), np.zeros(c), np.empty(c)),
        np.zeros((c, c)),
        *(np.zeros(c), np.empty(c), np.empty(c)),
        *(np.empty(c), np.empty(c), np.empty(c), np.empty(c), np.empty(c)),
        np.empty(c),
        np.empty(nodes),
        *(np.empty(c), np.empty(c)),
        *(np.empty(c), np.empty(c), np.empty(c)),
    )


def start_from_here(room: Cabins) -> None:
    """Make the present the base of the next stage."""
    for i in range(room.node.shape[0]):
        room.base_node[i] = room.node[i]
    for c in range(room.air.shape[0]):
        room.base_air[c], room.base_furnishing[c] = room.air[c], room.furnishing[c]
        room.base_humidity[c] = room.humidity[c]


def keep(room: Cabins) -> None:
    """Remember the start of a step."""
    for i in range(room.node.shape[0]):
        room.step_node[i] = room.node[i]
    for c in range(room.air.shape[0]):
        room.step_start[c], room.step_furnishing[c] = room.air[c], room.furnishing[c]
        room.step_humidity[c] = room.humidity[c]


def go_back(room: Cabins) -> None:
    """Return to the start of the step."""
    for i in range(room.node.shape[0]):
        room.node[i] = room.step_node[i]
    for c in range(room.air.shape[0]):
        room.air[c], room.furnishing[c] = room.step_start[c], room.step_furnishing[c]
        room.humidity[c] = room.step_humidity[c]


def reach_ahead(room: Cabins, beyond: float) -> None:
    """Make the second stage's base, which lies on the line through the start and the first stage."""
    for i in range(room.node.shape[0]):
        room.base_node[i] += beyond * (room.node[i] - room.base_node[i])
    for c in range(room.air.shape[0]):
        room.base_air[c] += beyond * (room.air[c] - room.base_air[c])
        room.base_furnishing[c] += beyond * (room.furnishing[c] - room.base_furnishing[c])
        # A coil switched on for the first time may throw the line below nothing.
        ahead = room.base_humidity[c] + beyond * (room.humidity[c] - room.base_humidity[c])
        room.base_humidity[c] = max(0.0, ahead)


def between(now: float, then: float, part: float) -> float:
    """What lies at `part` of the way from one instant's value to the next one's."""
    return (1.0 - part) * now + part * then


def drive(
    forcing: Forcing, fabric: Fabric, k: int, part: float, factor: float, air_offset: float, room: Cabins
) -> None:
    """Gains and outside temperatures at a moment of step k; `factor` multiplies people, appliances and sun."""
    for w in range(fabric.wall_kind.shape[0]):
        if fabric.wall_kind[w] == TO_OUTSIDE:
            room.far_temperature[w] = (
                between(forcing.far_temperature[w, k], forcing.far_temperature[w, k + 1], part) + air_offset
            )
    for c in range(room.air.shape[0]):
        sun = factor * between(forcing.solar_gain[c, k], forcing.solar_gain[c, k + 1], part)
        sensible, latent = forcing.people_sensible[c, k], forcing.people_latent[c, k]
        shift, air = forcing.people_shift[c, k], room.air[c]
        people, vapour = 0.0, 0.0
        if sensible + latent > 0.0:
            people = factor * sensible_from_person(sensible, latent, shift, air)
            vapour = factor * latent_from_person(sensible, latent, shift, air) / latent_heat(air)
        room.sun[c] = sun
        still = factor * forcing.air_gain[c, k] + (1.0 - PEOPLE_RADIANT) * people
        room.air_gain[c] = still + (1.0 - WASTE_RADIANT) * room.waste[c]
        spread = factor * forcing.radiant_gain[c, k] + PEOPLE_RADIANT * people + WASTE_RADIANT * room.waste[c]
        room.radiant_gain[c] = spread + fabric.sun_star[c] * sun
        room.furnishing_gain[c] = fabric.sun_furnishing[c] * sun
        room.moisture_gain[c] = factor * forcing.moisture_gain[c, k] + vapour


def condense(room: Cabins, response: Floats, pressure: float) -> None:
    """Heat that vapour gives up to each cabin's air where it condenses on surfaces within a stage, W.

    The warmer air holds more, so heat and temperature are found together, by Newton's method; `response` is K
    of each cabin's air (rows) per W into each cabin's air. The cooling is taken to be that of the stage before,
    still in `room.cooling`. Adds the heat's effect to `room.free`.
    """
    cabins = room.air.shape[0]
    for c in range(cabins):
        room.dew_heat[c] = 0.0
        if room.humidity[c] <= NEARLY_DAMP * room.most[c]:
            continue
        around = room.free[c]
        for d in range(cabins):
            around += response[c, d] * room.cooling[d]
        room.most[c] = saturation_humidity_ratio(around, pressure)
        over = room.humidity[c] - room.most[c]
        if over <= 0.0:
            continue
        # The end lies between no effect and the effect that the heat would have if warming did not check it.
        low, high = around, min(HOTTEST, around + response[c, c] * room.dew_flow[c] * latent_heat(around) * over)
        temperature, heat = around, 0.0
        for _ in range(40):
            saturated = saturation_humidity_ratio(temperature, pressure)
            slope = (saturation_humidity_ratio(temperature + 0.01, pressure) - saturated) / 0.01
            carried = room.dew_flow[c] * latent_heat(temperature)
            heat = carried * max(0.0, room.humidity[c] - saturated)
            error = temperature - around - response[c, c] * heat
            if abs(error) < SETTLED:
                break
            if error > 0.0:
                high = temperature
            else:
                low = temperature
            temperature -= error / (1.0 + (response[c, c] * carried * slope if heat > 0.0 else 0.0))
            if not low < temperature < high:
                temperature = 0.5 * (low + high)
        room.most[c] = saturation_humidity_ratio(temperature, pressure)
        room.dew_heat[c] = heat
    for c in range(cabins):
        if room.dew_heat[c] > 0.0:
            for d in range(cabins):
                room.free[d] += response[d, c] * room.dew_heat[c]


def moved(room: Cabins) -> float:
    """K by which the air of the fastest cabin has moved since the start of the step."""
    most = 0.0
    for c in range(room.air.shape[0]):
        most = max(most, abs(room.air[c] - room.step_start[c]))
    return most
