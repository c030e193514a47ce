"""Battery modules."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, model_validator

from anchorwatt.catalogue.cell import CellSlot
from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Charge, Current, Mass, Resistance, Share, Temperature, Time, Voltage, within
from anchorwatt.units.refusal import Refused


@kind("battery_module")
class BatteryModule(Part):
    """A module with its management system."""

    cell: CellSlot = Field(description="Its cells.")
    cells_in_series: int = Field(ge=1, le=300, description="Cells in series in the module.")
    nominal_voltage: Annotated[Voltage, within("2 V", "800 V")] = Field(description="Nominal voltage.")
    capacity: Annotated[Charge, within("1 Ah", "5000 Ah")] = Field(description="Capacity.")
    resistance: Annotated[Resistance, within("0.01 mohm", "1 ohm")] = Field(
        description="Resistance at 25 °C in mid charge, management included."
    )
    charge_current: Annotated[Current, within("0.1 A", "5000 A")] = Field(description="Highest charging current.")
    discharge_current: Annotated[Current, within("0.1 A", "5000 A")] = Field(description="Highest discharging current.")
    absorb_voltage: Annotated[Voltage, within("2 V", "1000 V")] = Field(
        description="Voltage at which charging is held."
    )
    float_voltage: Annotated[Voltage, within("2 V", "1000 V")] | None = Field(
        default=None, description="Voltage held once it is full."
    )
    high_cut_off_voltage: Annotated[Voltage, within("2 V", "1000 V")] | None = Field(
        default=None, description="Voltage at which its management system stops charging."
    )
    tail: Annotated[Share, within("0.5 %", "20 %")] = Field(
        default="5 %",
        validate_default=True,
        description="Charging current at which it counts as full, share of the capacity in an hour; "
        "common practice, no source.",
    )
    cut_off_voltage: Annotated[Voltage, within("1 V", "1000 V")] = Field(
        description="Voltage under load at which it disconnects."
    )
    cut_off_charge: Annotated[Share, within("0 %", "50 %")] = Field(
        description="State of charge at which it disconnects."
    )
    lowest_charge_temperature: Annotated[Temperature, within("-30 °C", "30 °C")] = Field(
        default="0 °C", validate_default=True, description="Of the cells, below which it must not be charged."
    )
    highest_charge_temperature: Annotated[Temperature, within("20 °C", "80 °C")] = Field(
        default="45 °C", validate_default=True, description="Of the cells, above which it must not be charged."
    )
    lowest_discharge_temperature: Annotated[Temperature, within("-60 °C", "20 °C")] = Field(
        default="-20 °C", validate_default=True, description="Of the cells, below which it disconnects."
    )
    highest_discharge_temperature: Annotated[Temperature, within("20 °C", "90 °C")] = Field(
        default="60 °C", validate_default=True, description="Of the cells, above which it disconnects."
    )
    cycle_life: Annotated[float, Field(ge=100.0, le=50_000.0)] = Field(
        default=3500.0,
        description="Full cycles at 25 °C until the warranted share is left; 2500 to 8000, from memory.",
    )
    calendar_loss: Annotated[Share, within("0.1 %", "20 %")] = Field(
        default="2 %",
        validate_default=True,
        description="Share of the capacity lost in the first year at 25 °C, half full; from memory.",
    )
    warranted: Annotated[Time, within("30 d", "40000 d")] = Field(
        default="2922 d", validate_default=True, description="How long it is warranted; 8 years, from memory."
    )
    warranted_share: Annotated[Share, within("30 %", "100 %")] = Field(
        default="75 %", validate_default=True, description="Of the capacity, left at the end of the warranty."
    )
    aged_resistance: Annotated[float, Field(ge=1.0, le=5.0)] = Field(
        default=1.5, description="Resistance at the end of the warranty over that when new; from memory."
    )
    highest_series: int = Field(ge=1, le=100, description="Most modules that may stand in series.")
    highest_parallel: int = Field(ge=1, le=100, description="Most strings that may stand in parallel.")
    mass: Annotated[Mass, within("0.1 kg", "2000 kg")] = Field(description="Mass.")

    @model_validator(mode="after")
    def _voltages_fit(self) -> BatteryModule:
        per_cell = self.nominal_voltage / self.cells_in_series
        if abs(per_cell / self.cell.nominal_voltage - 1.0) > 0.05:
            raise Refused(
                f"{self.nominal_voltage.text} for {self.cells_in_series} cells of {self.cell.nominal_voltage.text}",
                f"about {self.cells_in_series * self.cell.nominal_voltage:g} V",
            )
        if not self.cut_off_voltage < self.nominal_voltage < self.absorb_voltage:
            raise Refused(
                f"cut-off {self.cut_off_voltage.text}, nominal {self.nominal_voltage.text}, "
                f"absorb {self.absorb_voltage.text}",
                "cut-off below nominal below absorb voltage",
            )
        float_voltage, high = self.float_voltage, self.high_cut_off_voltage
        if float_voltage is not None and float_voltage > self.absorb_voltage:
            raise Refused(f"float voltage {float_voltage.text}", f"at most the absorb {self.absorb_voltage.text}")
        if high is not None and high <= self.absorb_voltage:
            raise Refused(f"high cut-off {high.text}", f"more than the absorb {self.absorb_voltage.text}")
        return self


BatteryModuleSlot = Annotated[BatteryModule, Slot("battery_module")]
"""A battery module by name, by name with changes, or in full."""
