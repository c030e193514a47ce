"""The shared plant's ducts: the air that each outlet gets, its noise and its pressure, and whether ducts sweat.

Everything is at full fan, where air is loudest and ducts take most. A fan with more to spare than its ducts take is
turned down to the rated airflow when the boat is commissioned; dampers are not counted.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from functools import lru_cache

from anchorwatt.design.specification import Duct, Handler, Outlet, Specification
from anchorwatt.physics.air_handler import CYCLING_CALL, airflow_share, coil_approach
from anchorwatt.physics.coil import bypass_factor, leaving_temperature
from anchorwatt.physics.duct import Loss, balance, delivered, duct_pressure, grille_pressure, grille_velocity
from anchorwatt.physics.duct_skin import (
    air_at_end,
    duct_conductance,
    inside_film,
    insulation_needed,
    skin_temperature,
)
from anchorwatt.physics.pipe import pipe_velocity

RETURN_LOSS = 1.5
"""Loss coefficient of a return grille on the velocity through its free area. From practice, no source."""

COOL_CABIN = 24.0
"""°C of the air that a handler draws where the plan never cools its cabin. From practice, no source."""

CALLS = (CYCLING_CALL, 0.25, 0.5, 0.75, 1.0)
"""Calls of a handler at which its ducts' skin is looked at: at a small call the air is colder but slower."""


@dataclass(frozen=True)
class DuctRun:
    """A duct with its grille, at full fan."""

    handler: str
    outlet: str
    cabin: int
    wanted: float  # m3/s, its share of the handler's rated airflow
    airflow: float  # m3/s
    off_share: float  # of its share of what the handler delivers; 0 = just its share
    velocity: float  # m/s in the duct
    grille_velocity: float  # m/s through the grille's free area
    pressure: float  # Pa, duct and grille
    alone: bool  # the handler's only outlet


@dataclass(frozen=True)
class HandlerAir:
    """A handler with its ducts, at full fan."""

    name: str
    cabin: int
    rated_airflow: float  # m3/s
    airflow: float  # m3/s with its ducts, up to the rated one
    pressure_needed: float  # Pa that ducts and grilles would take at the rated airflow
    spare_pressure: float  # Pa that the fan has for them there
    return_velocity: float  # m/s at the face of the return grille
    runs: tuple[DuctRun, ...]


@dataclass(frozen=True)
class DuctSkin:
    """The outside of a duct where the air enters it, at the handler's worst call."""

    handler: str
    outlet: str
    supply_temperature: float  # °C of the air, the plant at its lowest evaporating temperature
    skin_temperature: float  # °C
    sweats: bool
    insulation_needed: float  # m that would keep it dry, inf = none does
    warming: float  # K of the air along the duct, at full fan


def _duct_loss(duct: Duct, flow: float) -> float:
    """Pa of a duct with its grille."""
    return duct_pressure(
        flow, duct.length, duct.diameter, duct.roughness, duct.stretch_factor, duct.bends, duct.bend_loss
    ) + grille_pressure(flow, duct.grille_area, duct.grille_free_share, duct.grille_loss)


def _losses(handler: Handler) -> tuple[list[Loss], Loss]:
    """Of each outlet, and of the return grille."""

    def branch(outlet: Outlet) -> Loss:
        return lambda flow: _duct_loss(outlet.duct, flow)

    def back(flow: float) -> float:
        return grille_pressure(flow, handler.return_area, handler.return_free_share, RETURN_LOSS)

    return [branch(outlet) for outlet in handler.outlets], back


@lru_cache(maxsize=128)
def handler_air(handler: Handler) -> HandlerAir:
    """What a handler delivers through its ducts; one without outlets delivers nothing."""
    losses, back = _losses(handler)
    rated = handler.airflow
    if not losses:
        return HandlerAir(handler.name, handler.cabin, rated, 0.0, math.inf, handler.static_pressure, 0.0, ())
    at_rated = balance(losses, rated)
    needed = losses[0](at_rated[0]) + back(rated)
    enough = needed <= handler.static_pressure
    flows = at_rated if enough else delivered(losses, back, rated, handler.static_pressure)
    total = math.fsum(flows)
    runs = tuple(
        DuctRun(
            handler=handler.name,
            outlet=outlet.name,
            cabin=outlet.cabin,
            wanted=outlet.share * rated,
            airflow=flow,
            off_share=flow / (outlet.share * total) - 1.0 if outlet.share * total > 0.0 else math.nan,
            velocity=pipe_velocity(flow, outlet.duct.diameter),
            grille_velocity=grille_velocity(flow, outlet.duct.grille_area, outlet.duct.grille_free_share),
            pressure=loss(flow),
            alone=len(losses) == 1,
        )
        for outlet, flow, loss in zip(handler.outlets, flows, losses, strict=True)
    )
    return HandlerAir(
        name=handler.name,
        cabin=handler.cabin,
        rated_airflow=rated,
        airflow=total,
        pressure_needed=needed,
        spare_pressure=handler.static_pressure,
        return_velocity=total / handler.return_area,
        runs=runs,
    )


def handlers_air(specification: Specification) -> tuple[HandlerAir, ...]:
    """Every handler of the shared plant with its ducts."""
    return tuple(handler_air(handler) for handler in specification.plant.handlers)


def duct_runs(specification: Specification) -> tuple[DuctRun, ...]:
    """Every duct of the shared plant."""
    return tuple(run for handler in handlers_air(specification) for run in handler.runs)


def coolest_air(specification: Specification, cabin: int) -> float:
    """°C of the coolest air that a handler in that cabin draws: its lowest set point in the plan."""
    points = [period.set_points[cabin] for period in specification.plan]
    return min((point for point in points if not math.isnan(point)), default=COOL_CABIN)


def duct_skins(specification: Specification, surroundings: float, dew_point: float) -> tuple[DuctSkin, ...]:
    """Every duct of the shared plant in surroundings of that temperature and dew point, °C."""
    return tuple(
        _skin(specification, handler, outlet, run, surroundings, dew_point)
        for handler in specification.plant.handlers
        for outlet, run in zip(handler.outlets, handler_air(handler).runs, strict=True)
    )


def _skin(
    specification: Specification,
    handler: Handler,
    outlet: Outlet,
    run: DuctRun,
    surroundings: float,
    dew_point: float,
) -> DuctSkin:
    duct = outlet.duct
    states = [_air_in_duct(specification, handler, run, duct, call) for call in CALLS]
    skins = [
        (
            skin_temperature(air, surroundings, duct.diameter, duct.insulation, duct.insulation_conductivity, film),
            air,
        )
        for air, film in states
    ]
    coldest, supply = min(skins)
    air, film = states[-1]
    conductance = duct_conductance(duct.diameter, duct.insulation, duct.insulation_conductivity, film)
    end = air_at_end(air, surroundings, conductance, duct.length, run.airflow) if run.airflow > 0.0 else math.nan
    return DuctSkin(
        handler=handler.name,
        outlet=outlet.name,
        supply_temperature=supply,
        skin_temperature=coldest,
        sweats=coldest < dew_point,
        insulation_needed=max(
            insulation_needed(air, surroundings, dew_point, duct.diameter, duct.insulation_conductivity, film)
            for air, film in states
        ),
        warming=end - air,
    )


def _air_in_duct(
    specification: Specification, handler: Handler, run: DuctRun, duct: Duct, call: float
) -> tuple[float, float]:
    """°C of the air at a call, and its film, W/(m² K); the fan's own heat is left out, on the safe side."""
    share = airflow_share(call, handler.lowest_fan)
    surface = specification.plant.circuit.lowest_evaporating + coil_approach(handler.approach, call)
    drawn = coolest_air(specification, handler.cabin)
    air = leaving_temperature(bypass_factor(handler.bypass_factor, share), drawn, surface)
    return air, inside_film(run.velocity * share, duct.diameter)
