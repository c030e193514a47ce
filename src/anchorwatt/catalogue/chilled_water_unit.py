"""Chillers: a refrigerant circuit that cools water, and the pumps that send it round to fan coils."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, model_validator

from anchorwatt.catalogue.circuit import Circuit
from anchorwatt.catalogue.part import kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Mass, Power, Share, Temperature, TemperatureDifference, within
from anchorwatt.units.refusal import Refused


@kind("chilled_water_unit")
class ChilledWaterUnit(Circuit):
    """A chiller with its pumps."""

    turn_down: Annotated[Share, within("5 %", "100 %")] = Field(
        description="Lowest continuous speed over the highest; 100 % is fixed speed."
    )
    supply_temperature: Annotated[Temperature, within("3 °C", "15 °C")] = Field(
        description="Of the water that it sends out."
    )
    evaporator_approach: Annotated[TemperatureDifference, within("0.5 K", "12 K")] = Field(
        description="Water leaving over evaporating temperature."
    )
    water_rise: Annotated[TemperatureDifference, within("1 K", "12 K")] = Field(
        description="Of the water along the fan coils."
    )
    fan_coil_approach: Annotated[TemperatureDifference, within("0 K", "10 K")] = Field(
        description="Apparatus dew point of a fan coil over the water's mean temperature."
    )
    water_pump_power: Annotated[Power, within("0 W", "5 kW")] = Field(
        description="Water pump, all the time; it ends as heat in the water."
    )
    sea_pump_power: Annotated[Power, within("0 W", "5 kW")] = Field(
        description="Seawater pump, while the compressor runs."
    )
    standby_power: Annotated[Power, within("0 W", "500 W")] = Field(description="Controls, all the time.")
    mass: Annotated[Mass, within("1 kg", "2000 kg")] = Field(description="Mass with pumps, pipes and water.")

    @model_validator(mode="after")
    def _evaporator_does_not_freeze(self) -> ChilledWaterUnit:
        evaporating = self.supply_temperature - self.evaporator_approach
        if evaporating < self.lowest_evaporating - 1e-9:
            raise Refused(
                f"water of {self.supply_temperature.text} with {self.evaporator_approach.text} under it, "
                f"which evaporates at {evaporating:.1f} °C",
                f"water that leaves the evaporating temperature at {self.lowest_evaporating.text} or over it",
            )
        return self


ChilledWaterUnitSlot = Annotated[ChilledWaterUnit, Slot("chilled_water_unit")]
"""A chilled water unit by name, by name with changes, or in full."""
