"""The shared plant's seawater: flow, velocities, rise, and the pressure that its pump must give."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.design.specification import Specification
from anchorwatt.physics.condenser import condensing_temperature, effectiveness, sea_out
from anchorwatt.physics.pipe import pipe_velocity
from anchorwatt.physics.sea_circuit import hydraulic_power, pressure_needed, pump_efficiency


@dataclass(frozen=True)
class SeawaterFlow:
    """The seawater circuit at its rated flow, the plant at its rated capacity."""

    flow: float  # m3/s
    heat_rejected: float  # W, rated capacity and power together; a warmer sea changes it little
    rise: float  # K
    hose_velocity: float  # m/s
    through_hull_velocity: float  # m/s
    pressure_needed: float  # Pa
    pump_pressure: float  # Pa that the pump gives
    hydraulic_power: float  # W that the circuit takes
    pump_efficiency: float  # that over the pump's electric power
    warmest_sea: float  # °C, of the year's months
    condensing: float  # °C in that sea


def seawater_flow(specification: Specification) -> SeawaterFlow:
    """The shared plant's seawater circuit."""
    plant, sea = specification.plant, specification.plant.sea
    circuit, flow = plant.circuit, plant.circuit.sea_flow
    heat = circuit.rated_capacity + circuit.rated_power
    warmest = max(specification.place.sea_temperatures)
    needed = pressure_needed(
        flow,
        sea.length,
        sea.diameter,
        sea.bends,
        sea.lift,
        sea.through_hull,
        sea.condenser_loss + sea.strainer_loss,
    )
    return SeawaterFlow(
        flow=flow,
        heat_rejected=heat,
        rise=sea_out(warmest, heat, flow) - warmest,
        hose_velocity=pipe_velocity(flow, sea.diameter),
        through_hull_velocity=pipe_velocity(flow, sea.through_hull),
        pressure_needed=needed,
        pump_pressure=sea.pump_head,
        hydraulic_power=hydraulic_power(flow, needed),
        pump_efficiency=pump_efficiency(flow, needed, plant.pump_power),
        warmest_sea=warmest,
        condensing=condensing_temperature(warmest, heat, flow, effectiveness(circuit.condenser_ntu)),
    )
