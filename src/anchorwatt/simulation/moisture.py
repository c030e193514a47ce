"""The moisture balance of the cabins: outdoor air, doors, people, coils and wet surfaces."""

from __future__ import annotations

from anchorwatt.physics.moist_air import CP_AIR
from anchorwatt.simulation.arrays import TO_CABIN, Fabric, Floats, Integers
from anchorwatt.simulation.cabins import Cabins

SETTLED_HUMIDITY = 1e-10
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
    room: Cabins,
    outdoor: float,
    stage_step: float,
    flow: Floats,
    saturated: Floats,
    owner: Integers,
    own: Floats,
    outlet_coil: Integers,
    outlet_cabin: Integers,
    outlet_share: Floats,
) -> None:
    """Humidity ratios of the cabins at the end of a stage, implicitly, by iteration to rest.

    Parameters
    ----------
    fabric : for what each cabin holds, and the doors
    room : the cabins; `room.humidity` is a guess, then the answer; what is over saturation goes to surfaces
    outdoor : kg/kg
    stage_step : s
    flow, saturated, owner : kg/s of air that meets each coil, kg/kg of saturated air there, its cabin
    own : share of its air that each coil blows into its own cabin
    outlet_coil, outlet_cabin, outlet_share : further cabins that coils blow into
    """
    cabins = room.base_humidity.shape[0]
    humidity, known, weight = room.humidity, room.known, room.weight
    for c in range(cabins):
        held = fabric.moisture_mass[c] / stage_step
        known[c] = held * room.base_humidity[c] + room.moisture_gain[c] + room.outdoor_flow[c] * outdoor
        weight[c] = held + room.outdoor_flow[c]
        for d in range(cabins):
            weight[c] += fabric.exchange[c, d] + room.blown[c, d]
        if humidity[c] > room.most[c]:
            known[c] += room.dew_flow[c] * room.most[c]
            weight[c] += room.dew_flow[c]
    for h in range(owner.shape[0]):
        # A coil dries only air that is damper than it is.
        if flow[h] > 0.0 and humidity[owner[h]] > saturated[h]:
            known[owner[h]] += own[h] * flow[h] * saturated[h]
            weight[owner[h]] += own[h] * flow[h]
    for _ in range(60):
        change = 0.0
        for c in range(cabins):
            new = known[c]
            for d in range(cabins):
                new += (fabric.exchange[c, d] + room.blown[c, d]) * humidity[d]
            for o in range(outlet_coil.shape[0]):
                h = outlet_coil[o]
                if outlet_cabin[o] == c and humidity[owner[h]] > saturated[h]:
                    new -= outlet_share[o] * flow[h] * (humidity[owner[h]] - saturated[h])
            new /= weight[c]
            change = max(change, abs(new - humidity[c]))
            humidity[c] = new
        if change < SETTLED_HUMIDITY:
            break
