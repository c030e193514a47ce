"""Battery modules."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field, model_validator

from anchorwatt.catalogue.cell import CellSlot
from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Charge, Current, Mass, Resistance, Share, Voltage, within
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
    cut_off_voltage: Annotated[Voltage, within("1 V", "1000 V")] = Field(
        description="Voltage under load at which it disconnects."
    )
    cut_off_charge: Annotated[Share, within("0 %", "50 %")] = Field(
        description="State of charge at which it disconnects."
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
        return self


BatteryModuleSlot = Annotated[BatteryModule, Slot("battery_module")]
"""A battery module by name, by name with changes, or in full."""
