"""The moisture balance of the cabins: outdoor air, doors, people, coils and wet surfaces."""

from __future__ import annotations

from anchorwatt.physics.moist_air import CP_AIR
from anchorwatt.simulation.arrays import TO_CABIN, Fabric, Floats, Integers

SETTLED_HUMIDITY = 1e-11
"""kg/kg, where the iteration over cabins rests."""


def surface_exchange(fabric: Fabric, flow: Floats) -> None:
    """Air that exchanges moisture with each cabin's surfaces, kg/s, by the Lewis relation h / cp."""
    for c in range(fabric.air_mass.shape[0]):
        flow[c] = fabric.furnishing_convection[c] / CP_AIR
    for w in range(fabric.wall_kind.shape[0]):
        flow[fabric.wall_cabin[w]] += fabric.near_convection[w] / CP_AIR
        if fabric.wall_kind[w] == TO_CABIN:
            flow[fabric.wall_far_cabin[w]] += fabric.far_convection[w] / CP_AIR


def dry_out(
    fabric: Fabric,
    base: Floats,
    gain: Floats,
    outdoor: float,
    flow: Floats,
    saturated: Floats,
    owner: Integers,
    dew_flow: Floats,
    most: Floats,
    stage_step: float,
    known: Floats,
    weight: Floats,
    humidity: Floats,
) -> None:
    """Humidity ratios of the cabins at the end of a stage, implicitly, by iteration to rest.

    Parameters
    ----------
    fabric : for what each cabin holds, the outdoor air and the doors
    base : kg/kg that the stage starts from
    gain : kg/s
    outdoor : kg/kg
    flow, saturated, owner : kg/s of air that meets each coil, kg/kg of saturated air there, its cabin
    dew_flow, most : kg/s of air that meets each cabin's surfaces, which take what is over saturation, kg/kg
    stage_step : s
    known, weight : room for work
    humidity : kg/kg; a guess, then the answer
    """
    cabins = base.shape[0]
    for c in range(cabins):
        known[c] = fabric.moisture_mass[c] / stage_step * base[c] + gain[c] + fabric.outdoor_flow[c] * outdoor
        weight[c] = fabric.moisture_mass[c] / stage_step + fabric.outdoor_flow[c]
        for d in range(cabins):
            weight[c] += fabric.exchange[c, d]
        if humidity[c] > most[c]:
            known[c] += dew_flow[c] * most[c]
            weight[c] += dew_flow[c]
    for h in range(owner.shape[0]):
        # A coil dries only air that is damper than it is.
        if flow[h] > 0.0 and humidity[owner[h]] > saturated[h]:
            known[owner[h]] += flow[h] * saturated[h]
            weight[owner[h]] += flow[h]
    for _ in range(60):
        change = 0.0
        for c in range(cabins):
            new = known[c]
            for d in range(cabins):
                new += fabric.exchange[c, d] * humidity[d]
            new /= weight[c]
            change = max(change, abs(new - humidity[c]))
            humidity[c] = new
        if change < SETTLED_HUMIDITY:
            break
