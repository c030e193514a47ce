"""The cooling plant: a shared variable-speed plant, and what it is compared with."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.catalogue.air_handler import AirHandlerSlot
from anchorwatt.catalogue.chilled_water_unit import ChilledWaterUnitSlot
from anchorwatt.catalogue.condensing_unit import CondensingUnitSlot
from anchorwatt.catalogue.duct import DuctSlot
from anchorwatt.catalogue.grille import GrilleSlot
from anchorwatt.catalogue.self_contained_unit import SelfContainedUnitSlot
from anchorwatt.design.section import Name, Section
from anchorwatt.units.fields import Area, Length, Mass, Power, Share, TemperatureDifference, within

GrilleArea = Annotated[Area, within("5 cm2", "4 m2")]


class DuctEntry(Section):
    """The duct to an outlet, and the grille at its end."""

    kind: DuctSlot | None = Field(default=None, description="Duct, and how it is laid.")
    length: Annotated[Length, within("0 m", "40 m")] | None = Field(default=None, description="From handler to grille.")
    diameter: Annotated[Length, within("20 mm", "600 mm")] | None = Field(default=None, description="Inside.")
    bends: Annotated[float, Field(ge=0.0, le=40.0)] | None = Field(
        default=None, description="Right-angled bends; 0.5 for one of 45 degrees."
    )
    grille: GrilleSlot | None = Field(default=None, description="Grille at its end.")
    grille_area: GrilleArea | None = Field(default=None, description="Face of that grille.")


class OutletEntry(Section):
    """Where a handler blows to."""

    cabin: Name = Field(description="The cabin that its air goes to.")
    share: Annotated[Share, within("1 %", "100 %")] | None = Field(
        default=None, description="Of the handler's air; left out, an equal part of what the others leave."
    )
    duct: DuctEntry | None = Field(default=None, description="The duct to it.")


class ReturnGrilleEntry(Section):
    """Where a handler draws its air in."""

    kind: GrilleSlot | None = Field(default=None, description="Grille.")
    area: GrilleArea | None = Field(default=None, description="Its face.")


class HandlerEntry(Section):
    """An air handler in a cabin."""

    unit: AirHandlerSlot = Field(description="Air handler.")
    cabin: Name = Field(description="The cabin that it stands in and cools.")
    thermostat: Name | None = Field(
        default=None, description="The cabin whose thermostat calls it and whose air it draws; left out, its cabin."
    )
    band: Annotated[TemperatureDifference, within("0.2 K", "5 K")] | None = Field(
        default=None, description="Over the set point, where it is called for fully."
    )
    priority: Annotated[float, Field(ge=0.1, le=10.0)] | None = Field(
        default=None, description="Weight when the compressor cannot serve all; 1 is ordinary, as when left out."
    )
    outlets: dict[Name, OutletEntry] | None = Field(
        default=None, min_length=1, max_length=12, description="Where it blows to; left out, into its own cabin."
    )
    return_grille: ReturnGrilleEntry | None = Field(default=None, description="Where it draws its air in.")
    line_length: Annotated[Length, within("0.2 m", "60 m")] | None = Field(
        default=None, description="Refrigerant line from the condensing unit, one way."
    )


class SeawaterEntry(Section):
    """Seawater from the through-hull to the condenser and overboard."""

    hose_length: Annotated[Length, within("0.5 m", "60 m")] | None = Field(
        default=None, description="All of the hose, there and overboard."
    )
    hose_diameter: Annotated[Length, within("8 mm", "150 mm")] | None = Field(default=None, description="Inside.")
    bends: Annotated[float, Field(ge=0.0, le=40.0)] | None = Field(
        default=None, description="Right-angled bends, and fittings that count as such."
    )
    lift: Annotated[Length, within("0 m", "10 m")] | None = Field(
        default=None, description="From the waterline to the highest point or the outlet, whichever is higher."
    )
    through_hull: Annotated[Length, within("8 mm", "200 mm")] | None = Field(
        default=None, description="Inside diameter of the through-hull."
    )


class PlantEntry(Section):
    """One condensing unit that feeds several air handlers."""

    unit: CondensingUnitSlot = Field(description="Condensing unit.")
    handlers: dict[Name, HandlerEntry] = Field(min_length=1, max_length=60, description="Its air handlers.")
    seawater: SeawaterEntry | None = Field(default=None, description="Its seawater circuit.")


class UnitEntry(Section):
    """A self-contained unit in a cabin."""

    unit: SelfContainedUnitSlot = Field(description="Self-contained unit.")
    cabin: Name = Field(description="The cabin that it cools.")


class AlternativeEntry(Section):
    """Self-contained units with one seawater pump, to compare with."""

    units: dict[Name, UnitEntry] = Field(min_length=1, max_length=60, description="A unit a cabin.")
    pump_power: Annotated[Power, within("5 W", "5 kW")] | None = Field(
        default=None, description="Seawater pump, which runs while any unit runs."
    )
    mass: Annotated[Mass, within("0 kg", "500 kg")] | None = Field(
        default=None, description="Pump and pipes, without the units."
    )


class ChilledWaterEntry(Section):
    """A chiller with fan coils, to compare with."""

    unit: ChilledWaterUnitSlot = Field(description="Chiller with its pumps.")
    fan_coils: dict[Name, HandlerEntry] | None = Field(
        default=None,
        min_length=1,
        max_length=60,
        description="Its fan coils, told as air handlers; left out, coils in place of the shared plant's handlers.",
    )


class Cooling(Section):
    """The plant, and what it is compared with."""

    plant: PlantEntry = Field(description="The shared plant.")
    alternative: AlternativeEntry | None = Field(default=None, description="Self-contained units to compare with.")
    chilled_water: ChilledWaterEntry | None = Field(default=None, description="A chiller to compare with.")
