"""The plan of the day and the brief."""

from __future__ import annotations

from typing import Annotated, Literal

from pydantic import Field

from anchorwatt.catalogue.person import PersonSlot
from anchorwatt.design.section import Name, Section
from anchorwatt.units.fields import Area, ClockTime, Mass, Price, Share, Speed, Temperature, Time, within

DAY = 86_400.0  # s

SetPoint = Annotated[Temperature, within("10 °C", "35 °C")]
OpenArea = Annotated[Area, within("0 m2", "40 m2")]
RunningShare = Annotated[Share, within("0 %", "100 %")]


class People(Section):
    """People in a cabin."""

    cabin: Name = Field(description="Where they are.")
    count: Annotated[float, Field(ge=0.0, le=200.0)] = Field(
        description="How many; 0.5 for one person half of the time."
    )
    doing: PersonSlot = Field(description="What they do.")


class PeriodEntry(Section):
    """One stretch of the day."""

    start: ClockTime = Field(description="Local standard time, such as 21:00.")
    end: ClockTime = Field(description="Local standard time; may lie past midnight.")
    doing: Literal["at anchor", "motoring", "on shore power"] = Field(description="What the boat does.")
    speed: Annotated[Speed, within("0.1 kn", "60 kn")] | None = Field(
        default=None, description="Of the boat, when motoring."
    )
    cool: dict[Name, SetPoint] = Field(
        default_factory=dict, description="Cabins that are cooled, and to what; others are not."
    )
    heat: dict[Name, SetPoint] = Field(
        default_factory=dict, description="Cabins that are heated by the reverse cycle, and to what."
    )
    ajar: dict[Name, OpenArea] = Field(
        default_factory=dict, description="Hatches and windows left open: the area that is free, by cabin."
    )
    people: tuple[People, ...] = Field(default=(), max_length=200, description="Who is where.")
    running: dict[Name, RunningShare] = Field(
        default_factory=dict,
        description="Share of the time that loads run, where it is not what is usual for them.",
    )


class Brief(Section):
    """What the boat must do."""

    hold: Annotated[Time, within("1 h", "23 h")] = Field(description="How long the bank must carry.")
    night_start: ClockTime = Field(description="When that begins, local standard time.")
    charge_at_start: Annotated[Share, within("10 %", "100 %")] | None = Field(
        default=None, description="State of charge when it begins."
    )
    reserve: Annotated[Share, within("0 %", "80 %")] = Field(
        description="State of charge that must be left at the end."
    )
    recharge: Annotated[Time, within("0.25 h", "24 h")] = Field(
        description="Engine hours allowed to put the charge back."
    )
    mass_limit: Annotated[Mass, within("1 kg", "50 t")] | None = Field(
        default=None, description="Most that the installation may weigh."
    )
    nights_per_year: Annotated[float, Field(ge=1.0, le=366.0)] | None = Field(
        default=None, description="Nights aboard in a year."
    )
    price_limit: Price | None = Field(default=None, description="Most that it may cost.")
