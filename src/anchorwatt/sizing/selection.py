"""Air handlers and a condensing unit chosen from the catalogue for the computed peaks.

A handler's nominal capacity belongs to the air of its rating. What it takes from a cabin follows from the cabin's own
air in its highest hour and from the refrigerant that the design's plant can send: both the sensible load and the
whole must be covered.
"""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass

from anchorwatt.catalogue import rows
from anchorwatt.catalogue.air_handler import AirHandler
from anchorwatt.catalogue.condensing_unit import CondensingUnit
from anchorwatt.design.fill_cooling import circuit_of
from anchorwatt.design.specification import Handler, Refrigeration, SharedPlant
from anchorwatt.physics.coil import moisture_removed, sensible_heat
from anchorwatt.physics.moist_air import latent_heat, saturation_humidity_ratio
from anchorwatt.simulation.plant import full_capacity
from anchorwatt.simulation.plant_map import plant_map
from anchorwatt.simulation.plants import CABIN_AIR_DENSITY, STANDARD_PRESSURE


@dataclass(frozen=True)
class CabinPeak:
    """A cabin in its own highest hour."""

    total: float  # W, sensible and latent
    sensible: float  # W
    air: float  # °C
    humidity: float  # kg/kg


@dataclass(frozen=True)
class HandlerChoice:
    """The smallest air handler of the catalogue that covers a cabin's peak."""

    cabin: int
    peak: float  # W, sensible and latent in the cabin's own highest hour
    has: float  # W nominal of what the design serves it with, its outlets' shares counted
    choice: str  # "" = none is large enough
    capacity: float  # W nominal, nan = none
    has_gives: float  # W that the design's handlers take from the cabin's air in that hour at full fan
    gives: float  # W, the same of the choice, nan = none


@dataclass(frozen=True)
class UnitChoice:
    """The smallest condensing unit of the catalogue that covers the boat's peak hour."""

    peak: float  # W in the boat's highest hour
    sea: float  # °C, the warmest of the days looked at
    has: str
    has_capacity: float  # W at that sea, full speed
    choice: str  # "" = none is large enough
    capacity: float  # W at that sea, nan = none


@dataclass(frozen=True)
class Selection:
    """What the catalogue would give beside what the design has."""

    handlers: tuple[HandlerChoice, ...]
    unit: UnitChoice
    connected: float  # handlers' nominal capacity over the compressor's, of the design
    chosen: float  # the same of what would be chosen, nan = something is not large enough


def served(plant: SharedPlant, cabin: int) -> float:
    """W nominal of the handlers that blow into a cabin, by their outlets' shares."""
    return sum(h.rated_capacity * o.share for h in plant.handlers for o in h.outlets if o.cabin == cabin)


def evaporating_at_rating(circuit: Refrigeration) -> float:
    """°C at which the plant is looked at: that of its rating, or the highest that it allows."""
    return min(circuit.rated_evaporating, circuit.highest_evaporating)


def capacity_at(unit: CondensingUnit, sea: float) -> float:
    """W of cooling at full speed, at the evaporating temperature of its rating or the highest that it allows."""
    circuit = circuit_of(unit, float(unit.turn_down))
    return float(full_capacity(plant_map(circuit).capacity, evaporating_at_rating(circuit), sea))


def coil_gives(handler: AirHandler | Handler, air: float, humidity: float, evaporating: float) -> tuple[float, float]:
    """Sensible and whole W that a handler takes at full fan from air, °C and kg/kg, at an evaporating temperature."""
    flow = float(handler.airflow) * CABIN_AIR_DENSITY
    bypass, surface = float(handler.bypass_factor), evaporating + float(handler.approach)
    saturated = saturation_humidity_ratio(surface, STANDARD_PRESSURE)
    sensible = sensible_heat(flow, bypass, air, surface)
    return sensible, sensible + latent_heat(surface) * moisture_removed(flow, bypass, humidity, saturated)


def given(plant: SharedPlant, cabin: int, peak: CabinPeak) -> float:
    """W that the design's handlers take from a cabin's air at full fan, by their outlets' shares."""
    evaporating = evaporating_at_rating(plant.circuit)
    return sum(
        outlet.share * coil_gives(handler, peak.air, peak.humidity, evaporating)[1]
        for handler in plant.handlers
        for outlet in handler.outlets
        if outlet.cabin == cabin
    )


def choose_handler(peak: CabinPeak, evaporating: float) -> tuple[str, float, float]:
    """Name, nominal capacity and what it gives, W, of the smallest air handler that covers a peak; "" = none does."""
    best, least = ("", math.nan, math.nan), math.inf
    for record in rows("air_handler").values():
        if isinstance(record, AirHandler):
            sensible, whole = coil_gives(record, peak.air, peak.humidity, evaporating)
            nominal = float(record.rated_capacity)
            if sensible >= peak.sensible and whole >= peak.total and nominal < least:
                best, least = (record.name, nominal, whole), nominal
    return best


def choose_unit(peak: float, sea: float) -> tuple[str, float, float]:
    """Name, capacity at a sea temperature and rated capacity of the smallest unit that covers a peak."""
    best = ("", math.nan, math.nan)
    for record in rows("condensing_unit").values():
        if isinstance(record, CondensingUnit):
            able = capacity_at(record, sea)
            if able >= peak and not able >= best[1]:
                best = (record.name, able, float(record.rated_capacity))
    return best


def select(plant: SharedPlant, peaks: Mapping[int, CabinPeak], boat_peak: float, sea: float) -> Selection:
    """Choose for the peaks of cabins, by index, and of the boat, W, at a sea temperature, °C."""
    circuit = plant.circuit
    evaporating = evaporating_at_rating(circuit)
    choices = []
    for cabin, peak in peaks.items():
        name, capacity, gives = choose_handler(peak, evaporating)
        has, has_gives = served(plant, cabin), given(plant, cabin, peak)
        choices.append(HandlerChoice(cabin, peak.total, has, name, capacity, has_gives, gives))
    full = float(full_capacity(plant_map(circuit).capacity, evaporating, sea))
    name, capacity, rated = choose_unit(boat_peak, sea)
    unit = UnitChoice(boat_peak, sea, plant.name, full, name, capacity)
    connected = sum(h.rated_capacity for h in plant.handlers) / circuit.rated_capacity
    return Selection(tuple(choices), unit, connected, sum(one.capacity for one in choices) / rated)
