"""Families of fuses, breakers and earth-fault devices."""

from __future__ import annotations

from itertools import pairwise
from typing import Annotated, Literal

from pydantic import Field, model_validator

from anchorwatt.catalogue.part import Part, kind
from anchorwatt.units.fields import Current, Time, Voltage, within
from anchorwatt.units.refusal import Refused


@kind("protective_device")
class ProtectiveDevice(Part):
    """A family of protective devices: its standard ratings, and the faults that it interrupts."""

    device: Literal["fuse", "breaker", "earth-fault device"] = Field(description="What it is.")
    current_kind: Literal["direct", "alternating"] = Field(description="The current that its figures are for.")
    steps: Literal["North American", "IEC"] | None = Field(
        default=None, description="Whose standard ratings they are, where the land codes differ."
    )
    ratings: tuple[Annotated[Current, within("0.1 A", "5000 A")], ...] = Field(
        min_length=1, max_length=60, description="Standard ratings, rising."
    )
    voltages: tuple[Annotated[Voltage, within("5 V", "1500 V")], ...] = Field(
        min_length=1,
        max_length=10,
        description="Voltages for which its interrupting capacity is told, rising; the last is the highest it may see.",
    )
    interrupting: tuple[Annotated[Current, within("10 A", "500 kA")], ...] = Field(
        min_length=1, max_length=10, description="The highest fault that it interrupts, up to each of those voltages."
    )
    carries_peak: float = Field(
        ge=1.0, le=20.0, description="Times its rating that it carries for a second or two, for starts; from memory."
    )
    trips_by: float = Field(
        ge=1.0, le=20.0, description="Times its rating at which it has opened within seconds; from memory."
    )
    residual: Annotated[Current, within("1 mA", "10 A")] | None = Field(
        default=None, description="Leakage to earth at which it trips, of an earth-fault device."
    )
    trip_time: Annotated[Time, within("0.001 s", "10 s")] | None = Field(
        default=None, description="Within which it trips at that leakage."
    )

    @model_validator(mode="after")
    def _steps_fit(self) -> ProtectiveDevice:
        if any(b <= a for a, b in pairwise(self.ratings)):
            raise Refused("ratings that do not rise", "ratings that rise from one to the next")
        if len(self.voltages) != len(self.interrupting):
            raise Refused(
                f"{len(self.voltages)} voltages and {len(self.interrupting)} interrupting capacities",
                "two lists of the same length",
            )
        if any(b <= a for a, b in pairwise(self.voltages)):
            raise Refused("voltages that do not rise", "voltages that rise from one to the next")
        if any(b > a for a, b in pairwise(self.interrupting)):
            raise Refused("an interrupting capacity that rises with the voltage", "no more at a higher voltage")
        if (self.device == "earth-fault device") != (self.residual is not None):
            raise Refused("a leakage and another device, or neither", "a leakage for an earth-fault device only")
        if self.trip_time is not None and self.residual is None:
            raise Refused("a trip time without a leakage", "a trip time for an earth-fault device only")
        return self

    @property
    def highest_voltage(self) -> float:
        """V."""
        return float(self.voltages[-1])

    def interrupts(self, voltage: float) -> float:
        """A that it interrupts at a voltage, V; 0 above its highest."""
        for highest, current in zip(self.voltages, self.interrupting, strict=True):
            if voltage <= highest:
                return float(current)
        return 0.0
