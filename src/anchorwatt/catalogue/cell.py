"""Cells of battery modules."""

from __future__ import annotations

from itertools import pairwise
from typing import Annotated

from pydantic import Field, model_validator

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.catalogue.slot import Slot
from anchorwatt.units.fields import Share, Voltage, within
from anchorwatt.units.refusal import Refused


@kind("cell")
class Cell(Part):
    """Open-circuit voltage and resistance over the state of charge."""

    nominal_voltage: Annotated[Voltage, within("1 V", "5 V")] = Field(description="Nominal voltage.")
    charge_points: tuple[Annotated[Share, within("0 %", "100 %")], ...] = Field(
        min_length=2, max_length=100, description="States of charge, rising from 0 to 100 %."
    )
    open_circuit_voltages: tuple[Annotated[Voltage, within("0.5 V", "5 V")], ...] = Field(
        min_length=2, max_length=100, description="Voltage of a resting cell at those states of charge."
    )
    resistance_points: tuple[Annotated[float, Field(ge=0.1, le=20.0)], ...] = Field(
        min_length=2, max_length=100, description="Factor on the resistance at those states of charge."
    )

    @model_validator(mode="after")
    def _curves_fit(self) -> Cell:
        points, voltages = self.charge_points, self.open_circuit_voltages
        counts = len(points), len(voltages), len(self.resistance_points)
        if len(set(counts)) > 1:
            raise Refused(
                f"{counts[0]} charge points, {counts[1]} voltages, {counts[2]} resistance factors",
                "three lists of the same length",
            )
        if points[0] != 0.0 or points[-1] != 1.0 or any(b <= a for a, b in pairwise(points)):
            raise Refused("charge points that do not rise from 0 to 100 %", "states of charge rising from 0 % to 100 %")
        if any(b < a for a, b in pairwise(voltages)):
            raise Refused("a voltage that falls while the cell fills", "voltages that never fall")
        return self


CellSlot = Annotated[Cell, Slot("cell")]
"""A cell by name, by name with changes, or in full."""
