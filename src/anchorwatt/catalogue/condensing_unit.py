"""Variable-speed condensing units for several air handlers."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, model_validator

from anchorwatt.catalogue.circuit import Circuit
from anchorwatt.catalogue.part import kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Length, LinearMass, Mass, Power, Pressure, Share, Temperature, within
from anchorwatt.units.refusal import Refused

HeatingTemperature = Annotated[Temperature, within("36 °C", "70 °C")]
"""°C that a heating plant's map reaches."""


@kind("condensing_unit")
class CondensingUnit(Circuit):
    """A variable-speed compressor with its seawater condenser."""

    turn_down: Annotated[Share, within("5 %", "100 %")] = Field(
        description="Lowest continuous speed over the highest; 100 % is fixed speed."
    )
    pump_power: Annotated[Power, within("0 W", "5 kW")] = Field(description="Seawater pump, while the compressor runs.")
    standby_power: Annotated[Power, within("0 W", "500 W")] = Field(description="Controls, all the time.")
    mass: Annotated[Mass, within("1 kg", "2000 kg")] = Field(description="Mass with pump and pipes.")
    full_to: Annotated[Temperature, within("0 °C", "80 °C")] | None = Field(
        default=None, description="Air round it up to which it gives its rating; left out, unknown."
    )
    reversible: bool = Field(strict=True, description="It heats by the reverse cycle too.")
    lowest_heating_condensing: HeatingTemperature = Field(description="Lowest condensing temperature while it heats.")
    highest_heating_condensing: HeatingTemperature = Field(description="Highest condensing temperature while it heats.")
    charge: Annotated[Mass, within("0.05 kg", "50 kg")] = Field(description="Refrigerant in it as delivered.")
    charge_per_length: Annotated[LinearMass, within("0 g/m", "1 kg/m")] = Field(
        description="Refrigerant for each length of line beyond."
    )
    charged_length: Annotated[Length, within("0 m", "300 m")] = Field(
        description="Line that it is charged for, one way, all handlers together."
    )
    pump_head: Annotated[Pressure, within("1 kPa", "1 MPa")] = Field(
        description="Pressure that the seawater pump gives at the seawater flow."
    )
    condenser_loss: Annotated[Pressure, within("0 kPa", "500 kPa")] = Field(
        description="Pressure that the condenser takes at the seawater flow."
    )
    strainer_loss: Annotated[Pressure, within("0 kPa", "100 kPa")] = Field(
        description="Pressure that a clean strainer takes at the seawater flow."
    )

    @model_validator(mode="after")
    def _heating_limits_follow_each_other(self) -> CondensingUnit:
        lowest, highest = self.lowest_heating_condensing, self.highest_heating_condensing
        if not lowest < highest <= self.highest_condensing:
            raise Refused(
                f"lowest {lowest.text} and highest {highest.text} condensing while it heats",
                f"the lowest under the highest, and neither over the {self.highest_condensing.text} "
                "at which it protects itself",
            )
        return self


CondensingUnitSlot = Annotated[CondensingUnit, Slot("condensing_unit")]
"""A condensing unit by name, by name with changes, or in full."""
