"""Conductors of the catalogue for circuits: what a size may carry, and the smallest that a circuit can have."""

from __future__ import annotations

import functools
import math
from collections.abc import Sequence
from dataclasses import dataclass, replace

from anchorwatt.catalogue import rows
from anchorwatt.catalogue.cable_insulation import CableInsulation
from anchorwatt.catalogue.conductor import Conductor
from anchorwatt.catalogue.overlay import current
from anchorwatt.errors import OutOfRange
from anchorwatt.physics.conductor import (
    RATED_AMBIENT,
    ambient_factor,
    area_for_drop,
    conductor_loss,
    conductor_temperature,
    copper_mass,
    resistance_per_length,
    voltage_drop,
)

ENGINE_SPACE = 50.0
"""°C of an engine space in 33 CFR 183.425 table 5 note 1."""

HIGH_VOLTAGE = 50.0
"""V from which table 5 note 2 counts the conductors of a bundle."""

BUNDLES = ((25, 0.40), (7, 0.50), (4, 0.60), (3, 0.70))
"""Current-carrying conductors in a bundle from which a share of the ampacity is left: 33 CFR 183.425 table 5 note 2."""

SMALLEST_SINGLE = {True: 1.0e-6, False: 1.30e-6}
"""m² that a conductor run singly must have: ISO 13297 for metric sizes, 16 AWG (33 CFR 183.425) for gauges."""

PARALLEL_FROM = 50.0e-6
"""m² from which conductors may be laid side by side for one pole: 1/0 AWG in the land code of the US, from memory."""

BOAT_CABLE = 105.0
"""°C of the insulation usual in boats."""


@dataclass(frozen=True)
class CableRun:
    """Two conductors, out and back, from a source to a load."""

    name: str
    current: float  # A that it carries for long
    length: float  # m one way
    voltage: float  # V nominal
    highest_drop: float  # share of the nominal voltage
    insulation: float = BOAT_CABLE  # °C
    ambient: float = RATED_AMBIENT  # °C
    bundled: int = 1  # current-carrying conductors in its bundle
    cores: int = 2  # conductors laid, one that carries nothing (protective earth) counted
    sheathed: bool = False  # cores of one sheath, which may be thinner than a conductor run singly
    bundles_below: bool = False  # whether its bundle counts below 50 V too

    @property
    def bundle_voltage(self) -> float:
        """V by which its bundle counts."""
        return max(self.voltage, HIGH_VOLTAGE) if self.bundles_below else self.voltage

    @property
    def loop(self) -> float:
        """m, out and back."""
        return 2.0 * self.length

    @property
    def laid(self) -> float:
        """m of conductor, all cores."""
        return self.cores * self.length


@dataclass(frozen=True)
class SizedCircuit:
    """A circuit with its conductors."""

    circuit: CableRun
    conductor: Conductor
    parallel: int  # cables side by side, each way
    governed_by: str  # "voltage drop", "ampacity" or "smallest size allowed"
    ampacity: float  # A of all side by side, where they run
    temperature: float  # °C that they reach
    drop: float  # V
    loss: float  # W
    copper: float  # kg of bare copper, all cores
    mass: float  # kg with insulation
    price: float  # of the cable, nan = unknown
    currency: str

    @property
    def size(self) -> str:
        """How it is said: the standard size, with how many lie side by side where there are several."""
        return said(self.conductor, self.parallel)

    @property
    def area(self) -> float:
        """m² of copper each way."""
        return self.conductor.area * self.parallel

    @property
    def drop_share(self) -> float:
        """Drop over the nominal voltage."""
        return self.drop / self.circuit.voltage


def said(conductor: Conductor, parallel: int) -> str:
    """A size, with how many lie side by side for each pole where there are several: 2 × 70 mm²."""
    return conductor.name if parallel == 1 else f"{parallel} × {conductor.name}"


def series(metric: bool) -> tuple[Conductor, ...]:
    """The catalogue's metric sizes, or its gauges, by rising area; a yard's own rows among them."""
    return _series(metric) if current() else _generic_series(metric)


@functools.cache
def _generic_series(metric: bool) -> tuple[Conductor, ...]:
    return _series(metric)


def _series(metric: bool) -> tuple[Conductor, ...]:
    found = [row for row in rows("conductor").values() if isinstance(row, Conductor)]
    return tuple(sorted((row for row in found if (row.gauge is None) == metric), key=lambda row: row.area))


def resistance(conductor: Conductor, tinned: bool = False) -> float:
    """ohm/m at 20 °C: the highest that its standard allows, or that of its area."""
    if tinned and conductor.tinned_resistance is not None:
        return float(conductor.tinned_resistance)
    if conductor.resistance is not None:
        return float(conductor.resistance)
    return resistance_per_length(conductor.area)


@functools.cache
def _engine_space_share(insulation: float) -> float:
    classes = [row for row in rows("cable_insulation").values() if isinstance(row, CableInsulation)]
    return next(
        (float(one.engine_space_share) for one in classes if math.isclose(one.highest, insulation)),
        ambient_factor(insulation, ENGINE_SPACE),
    )


def ambient_share(insulation: float, ambient: float) -> float:
    """What surroundings, °C, leave of the ampacity: all up to 30 °C, note 1 of table 5 at 50 °C, between and
    beyond by the law behind it."""
    if ambient <= RATED_AMBIENT:
        return 1.0
    noted = _engine_space_share(insulation)
    law = ambient_factor(insulation, ambient)
    if ambient < ENGINE_SPACE:
        return max(law, noted)
    return noted * law / ambient_factor(insulation, ENGINE_SPACE)


def bundle_share(conductors: int, voltage: float) -> float:
    """What a bundle of that many current-carrying conductors leaves of the ampacity; all of it below 50 V.

    Trade practice also counts bundles below 50 V; ask for it with a voltage of 50 V.
    """
    if voltage < HIGH_VOLTAGE:
        return 1.0
    return next((share for least, share in BUNDLES if conductors >= least), 1.0)


def ampacity(
    conductor: Conductor,
    insulation: float = BOAT_CABLE,
    ambient: float = RATED_AMBIENT,
    bundled: int = 1,
    voltage: float = 0.0,
) -> float:
    """A that a conductor may carry for long.

    Parameters
    ----------
    insulation : °C, one of the conductor's columns
    ambient : °C round it
    bundled : current-carrying conductors in its bundle
    voltage : V of the circuit

    Raises
    ------
    OutOfRange
        the conductor has no such column.
    """
    for column, carries in zip(conductor.insulations, conductor.ampacities, strict=True):
        if math.isclose(column, insulation):
            return float(carries) * ambient_share(insulation, ambient) * bundle_share(bundled, voltage)
    raise OutOfRange(f"{conductor.name} has no ampacity for insulation of °C", insulation)


def with_conductor(circuit: CableRun, conductor: Conductor, parallel: int, governed_by: str = "given") -> SizedCircuit:
    """A circuit with given conductors, whether they suffice or not."""
    carries = ampacity(conductor, circuit.insulation, circuit.ambient, circuit.bundled, circuit.bundle_voltage)
    each, ohms = circuit.current / parallel, resistance(conductor)
    warm = conductor_temperature(each, carries, circuit.insulation, circuit.ambient)
    # Beyond its limit the law would run away: what is told there is told at the limit.
    warm = min(warm, circuit.insulation)
    copper = copper_mass(conductor.area, circuit.laid * parallel)
    priced = conductor.price
    return SizedCircuit(
        circuit=circuit,
        conductor=conductor,
        parallel=parallel,
        governed_by=governed_by,
        ampacity=carries * parallel,
        temperature=warm,
        drop=voltage_drop(each, circuit.loop, ohms, warm),
        loss=parallel * conductor_loss(each, circuit.loop, ohms, warm),
        copper=copper,
        mass=copper * (1.0 + conductor.insulation_share),
        price=math.nan if priced is None else float(priced.amount) * circuit.laid * parallel,
        currency="" if priced is None else priced.currency,
    )


def sized(circuit: CableRun, sizes: Sequence[Conductor], least: int = 1) -> SizedCircuit:
    """The fewest cables side by side, and of those the smallest size, that keep drop and ampacity.

    Parameters
    ----------
    sizes : by rising area, as `series` gives them
    least : cables side by side

    Raises
    ------
    OutOfRange
        no drop is allowed at all, or surroundings as hot as the insulation may be.
    """
    highest = circuit.highest_drop * circuit.voltage
    if not highest > 0.0:
        raise OutOfRange("a voltage drop that is allowed must be positive; found", highest)
    parallel = least
    while True:
        for size in permitted(circuit, sizes, parallel, least):
            found = with_conductor(circuit, size, parallel)
            if circuit.current <= found.ampacity and found.drop <= highest:
                return replace(found, governed_by=_governed(found, sizes, least))
        parallel += 1


def permitted(circuit: CableRun, sizes: Sequence[Conductor], parallel: int, least: int = 1) -> list[Conductor]:
    """Sizes that so many side by side may have; only large ones, unless the design itself asks for several."""
    smallest = 0.0 if circuit.sheathed else SMALLEST_SINGLE[sizes[0].gauge is None]
    if parallel > max(1, least):
        smallest = PARALLEL_FROM
    return [size for size in sizes if size.area >= smallest]


def _governed(found: SizedCircuit, sizes: Sequence[Conductor], least: int) -> str:
    """Which demand the next smaller choice would not have met."""
    circuit, parallel = found.circuit, found.parallel
    smaller = [one for one in permitted(circuit, sizes, parallel, least) if one.area < found.conductor.area]
    if smaller:
        below = with_conductor(circuit, smaller[-1], parallel)
    elif parallel <= least:
        return "smallest size allowed"
    else:
        below = with_conductor(circuit, sizes[-1], parallel - 1)
    return "ampacity" if circuit.current > below.ampacity else "voltage drop"


def drop_area(circuit: CableRun, temperature: float) -> float:
    """m² of copper that keep the drop with the conductor at a temperature, °C, before any standard size."""
    return area_for_drop(circuit.current, circuit.loop, circuit.highest_drop * circuit.voltage, temperature)
