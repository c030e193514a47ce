"""What every refrigerant circuit with a seawater condenser says of itself, whatever it is built into."""

from __future__ import annotations

from typing import Annotated, Self

from pydantic import Field, model_validator

from anchorwatt.catalogue.fed import Fed
from anchorwatt.catalogue.refrigerant import Refrigerant, check_limits
from anchorwatt.units.fields import HeatFlow, LiquidFlow, Power, Share, Temperature, TemperatureDifference, within


class Circuit(Fed):
    """A refrigerant circuit: its rating, its condenser and its limits."""

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

    @model_validator(mode="after")
    def _limits_follow_each_other(self) -> Self:
        check_limits(self.lowest_evaporating, self.rated_evaporating, self.highest_evaporating, self.highest_condensing)
        return self
