"""Variable-speed condensing units for several air handlers."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, model_validator

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.refrigerant import Refrigerant, check_limits
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import (
    HeatFlow,
    LiquidFlow,
    Mass,
    Power,
    Share,
    Temperature,
    TemperatureDifference,
    within,
)


@kind("condensing_unit")
class CondensingUnit(Part):
    """A variable-speed compressor with its seawater condenser."""

    refrigerant: Refrigerant = Field(description="Refrigerant.")
    rated_capacity: Annotated[HeatFlow, within("500 W", "100 kW")] = Field(description="Cooling at the rating point.")
    rated_power: Annotated[Power, within("50 W", "50 kW")] = Field(
        description="Compressor and drive at the rating point."
    )
    rated_evaporating: Annotated[Temperature, within("-10 °C", "20 °C")] = Field(
        description="Evaporating temperature of the rating."
    )
    rated_sea: Annotated[Temperature, within("0 °C", "40 °C")] = Field(
        description="Seawater temperature of the rating."
    )
    superheat: Annotated[TemperatureDifference, within("0 K", "20 K")] = Field(description="Superheat at suction.")
    subcooling: Annotated[TemperatureDifference, within("0 K", "20 K")] = Field(description="Subcooling of the liquid.")
    sea_flow: Annotated[LiquidFlow, within("0.5 L/min", "1000 L/min")] = Field(
        description="Seawater through the condenser."
    )
    condenser_ntu: float = Field(ge=0.05, le=6.0, description="Transfer units of the condenser at that flow.")
    turn_down: Annotated[Share, within("5 %", "100 %")] = Field(
        description="Lowest continuous speed over the highest; 100 % is fixed speed."
    )
    degradation: Annotated[Share, within("0 %", "50 %")] = Field(
        description="Loss when cycling: factor 1 - Cd (1 - load)."
    )
    lowest_evaporating: Annotated[Temperature, within("-10 °C", "15 °C")] = Field(
        description="Lowest evaporating temperature, against frost."
    )
    highest_evaporating: Annotated[Temperature, within("0 °C", "22 °C")] = Field(
        description="Highest evaporating temperature."
    )
    highest_condensing: Annotated[Temperature, within("30 °C", "75 °C")] = Field(
        description="Condensing temperature at which it protects itself."
    )
    pump_power: Annotated[Power, within("0 W", "5 kW")] = Field(description="Seawater pump, while the compressor runs.")
    standby_power: Annotated[Power, within("0 W", "500 W")] = Field(description="Controls, all the time.")
    mass: Annotated[Mass, within("1 kg", "2000 kg")] = Field(description="Mass with pump and pipes.")

    @model_validator(mode="after")
    def _limits_follow_each_other(self) -> CondensingUnit:
        check_limits(self.lowest_evaporating, self.rated_evaporating, self.highest_evaporating, self.highest_condensing)
        return self


CondensingUnitSlot = Annotated[CondensingUnit, Slot("condensing_unit")]
"""A condensing unit by name, by name with changes, or in full."""
