"""Heat that engines and converters give off, into the compartments where they stand."""

from __future__ import annotations

import math

from anchorwatt.simulation.arrays import Floats, Forcing, Power, State
from anchorwatt.simulation.cabins import Cabins
from anchorwatt.simulation.supply import (
    BANK_HEAT,
    BUS,
    CHARGER_LOSS,
    INVERTER_IN,
    INVERTER_OUT,
    TRANSFORMER_LOSS,
)


def machine_heat(power: Power, bus: Floats, room: Cabins) -> None:
    """Heat of converters, bank and alternators for the step that follows; writes `room.waste`."""
    for c in range(room.waste.shape[0]):
        room.waste[c] = 0.0
    lost = (bus[INVERTER_IN] - bus[INVERTER_OUT], bus[TRANSFORMER_LOSS], bus[CHARGER_LOSS], bus[BANK_HEAT])
    for i in range(4):
        if power.heat_cabin[i] >= 0:
            room.waste[power.heat_cabin[i]] += lost[i]
    for g in range(power.engine_cabin.shape[0]):
        if power.engine_cabin[g] >= 0:
            room.waste[power.engine_cabin[g]] += max(0.0, bus[BUS + g])


def engine_heat(power: Power, forcing: Forcing, k: int, m: int, step: float, state: State, room: Cabins) -> None:
    """Warm or cool each engine through step k, and add what it gives off to `room.waste`.

    While it runs its cooling water holds it at its temperature; stopped, it cools towards its compartment's air.
    """
    for g in range(power.engine_cabin.shape[0]):
        c = power.engine_cabin[g]
        if c < 0 or power.engine_block[g, 1] <= 0.0:
            continue
        capacity, conductance = power.engine_block[g, 0], power.engine_block[g, 1]
        air = room.air[c]
        if forcing.engine_speed[g, k] > 0.0:
            state.block[m, g] = power.engine_block[g, 2]
            room.waste[c] += conductance * (state.block[m, g] - air)
        else:
            left = math.exp(-conductance * step / capacity)
            fallen = (1.0 - left) * (state.block[m, g] - air)
            state.block[m, g] -= fallen
            room.waste[c] += capacity * fallen / step
