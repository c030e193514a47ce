"""Lead-acid batteries, the kind of bank that lithium often replaces."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, model_validator

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Charge, Mass, Resistance, Share, Voltage, within
from anchorwatt.units.refusal import Refused


@kind("lead_acid_battery")
class LeadAcidBattery(Part):
    """A lead-acid battery for deep discharge."""

    nominal_voltage: Annotated[Voltage, within("2 V", "48 V")] = Field(description="Nominal voltage.")
    capacity: Annotated[Charge, within("10 Ah", "3000 Ah")] = Field(description="Capacity at the 20 h rate.")
    peukert: Annotated[float, Field(ge=1.0, le=1.6)] = Field(description="Exponent of Peukert's law.")
    usable_share: Annotated[Share, within("10 %", "100 %")] = Field(
        default="50 %",
        validate_default=True,
        description="Of the capacity, for a fair life; common practice, no source.",
    )
    resistance: Annotated[Resistance, within("0.1 mohm", "100 mohm")] = Field(description="When charged, at 25 °C.")
    full_voltage: Annotated[Voltage, within("2 V", "60 V")] = Field(description="At rest, full.")
    empty_voltage: Annotated[Voltage, within("1.5 V", "60 V")] = Field(description="At rest, empty.")
    absorb_voltage: Annotated[Voltage, within("2 V", "70 V")] = Field(description="Voltage at which charging is held.")
    charge_rate: Annotated[Share, within("2 %", "200 %")] = Field(
        description="Highest charging current: share of the capacity in an hour."
    )
    charge_efficiency: Annotated[Share, within("50 %", "100 %")] = Field(description="Ampere-hours out over in.")
    cycle_life: Annotated[float, Field(ge=20.0, le=10_000.0)] = Field(description="Cycles of the usable share.")
    highest_parallel: int = Field(default=4, ge=1, le=100, description="Most strings that should stand in parallel.")
    mass: Annotated[Mass, within("1 kg", "2000 kg")] = Field(description="Mass.")

    @model_validator(mode="after")
    def _voltages_fit(self) -> LeadAcidBattery:
        if not self.empty_voltage < self.full_voltage < self.absorb_voltage:
            raise Refused(
                f"empty {self.empty_voltage.text}, full {self.full_voltage.text}, absorb {self.absorb_voltage.text}",
                "empty below full below absorb voltage",
            )
        if not 0.9 * self.nominal_voltage < self.full_voltage < 1.15 * self.nominal_voltage:
            raise Refused(
                f"{self.full_voltage.text} at rest when full, for {self.nominal_voltage.text} nominal",
                f"about {1.06 * self.nominal_voltage:g} V",
            )
        return self


LeadAcidBatterySlot = Annotated[LeadAcidBattery, Slot("lead_acid_battery")]
"""A lead-acid battery by name, by name with changes, or in full."""
