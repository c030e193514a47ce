"""Where and when the boat must live: weather, sea and heading."""

from __future__ import annotations

import calendar
import math
import re
from typing import Annotated, Any, NamedTuple

from pydantic import BeforeValidator, Field, GetCoreSchemaHandler, GetJsonSchemaHandler
from pydantic.json_schema import JsonSchemaValue, WithJsonSchema
from pydantic_core import CoreSchema, core_schema

from anchorwatt.catalogue import names
from anchorwatt.catalogue.sea import COLDEST_SEA, WARMEST_SEA, Sea
from anchorwatt.catalogue.slot import Slot
from anchorwatt.design.bearing import Heading
from anchorwatt.design.section import Section
from anchorwatt.units import parse
from anchorwatt.units.fields import (
    Angle,
    Latitude,
    Longitude,
    Share,
    Speed,
    Temperature,
    TemperatureDifference,
    within,
)
from anchorwatt.units.pattern import pattern_of
from anchorwatt.units.refusal import Refused, name_of_kind, quoted

WARMEST_NIGHT = "warmest night"
MONTHS = tuple(calendar.month_name)[1:]
_DAY = re.compile(r"(\d{1,2}) ([A-Za-z]+)")


class Day(NamedTuple):
    """A day of the year; month 0 and day 0 stand for the warmest night of the weather file."""

    month: int
    day: int


class _DayInWords:
    def read(self, value: Any) -> Day:
        """Read “17 July” or “warmest night”."""
        if isinstance(value, Day):
            return value
        allowed = f"“{WARMEST_NIGHT}”, or a day such as “17 July”"
        if not isinstance(value, str):
            raise Refused(name_of_kind(value), allowed)
        if value == WARMEST_NIGHT:
            return Day(0, 0)
        match = _DAY.fullmatch(value)
        if match is None or match[2].capitalize() not in MONTHS:
            raise Refused(quoted(value), allowed)
        month = MONTHS.index(match[2].capitalize()) + 1
        last = calendar.monthrange(2001, month)[1]
        if not 1 <= int(match[1]) <= last:
            raise Refused(quoted(value), f"a day of {MONTHS[month - 1]} from 1 to {last}")
        return Day(month, int(match[1]))

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self.read)

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        months = "|".join(MONTHS)
        return {
            "type": "string",
            "pattern": f"^({WARMEST_NIGHT}|[0-9]{{1,2}} ({months}))$",
            "examples": [WARMEST_NIGHT, "17 July"],
        }


DayInWords = Annotated[Day, _DayInWords()]


def _sea(value: Any) -> Any:
    """One temperature for all months, or twelve, or leave it to the catalogue."""
    if isinstance(value, list):
        return {"name": "typed", "temperatures": value}
    if isinstance(value, str) and value not in names("sea") and value[:1] in "-+0123456789":
        temperature = parse(value, "temperature")
        if not COLDEST_SEA <= temperature <= WARMEST_SEA:
            raise Refused(
                quoted(value), f"from {COLDEST_SEA:g} °C to {WARMEST_SEA:g} °C, for which plants are computed"
            )
        return {"name": "typed", "temperatures": [str(temperature)] * 12}
    if isinstance(value, (int, float)):
        raise Refused(name_of_kind(value), "a sea by name, a temperature such as “84 °F”, or twelve of them by month")
    return value


_TEMPERATURE = {"type": "string", "pattern": pattern_of("temperature")}

SeaByMonth = Annotated[
    Sea,
    Slot("sea"),
    BeforeValidator(_sea),
    WithJsonSchema(
        {
            "anyOf": [
                {"type": "string", "enum": list(names("sea")), "description": "A sea of the catalogue."},
                {**_TEMPERATURE, "description": "One temperature all year."},
                {
                    "type": "array",
                    "items": _TEMPERATURE,
                    "minItems": 12,
                    "maxItems": 12,
                    "description": "January to December.",
                },
            ]
        }
    ),
]


_ZONE = re.compile(r"UTC(?:([+-])(\d{1,2})(?::(\d{2}))?)?")


class _ZoneInWords:
    def read(self, value: Any) -> float:
        """Read “UTC-5” into hours east of Greenwich."""
        if isinstance(value, float):
            return value
        match = _ZONE.fullmatch(value) if isinstance(value, str) else None
        hours = int(match[2] or 0) + int(match[3] or 0) / 60.0 if match else math.inf
        if match is None or hours > 14.0:
            raise Refused(
                quoted(value) if isinstance(value, str) else name_of_kind(value),
                "a standard time such as UTC-5 or UTC+5:30",
            )
        return -hours if match[1] == "-" else hours

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        return core_schema.no_info_plain_validator_function(self.read)

    def __get_pydantic_json_schema__(self, schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        pattern = "^UTC([+-][0-9]{1,2}(:[0-9]{2})?)?$"
        return {"type": "string", "pattern": pattern, "examples": ["UTC-5"]}


TimeZone = Annotated[float, _ZoneInWords()]
"""Hours east of Greenwich, written “UTC-5”."""


class DesignDay(Section):
    """A day made of a few figures, for a place without a weather file."""

    highest_dry_bulb: Annotated[Temperature, within("0 °C", "55 °C")] = Field(
        description="Highest temperature of the air on that day."
    )
    daily_range: Annotated[TemperatureDifference, within("0 K", "25 K")] = Field(
        description="Highest less lowest temperature of the air."
    )
    dew_point: Annotated[Temperature, within("-20 °C", "35 °C")] | None = Field(
        default=None, description="Dew point, all day. Either this or relative_humidity."
    )
    relative_humidity: Annotated[Share, within("5 %", "100 %")] | None = Field(
        default=None, description="Relative humidity in the hottest hour. Either this or dew_point."
    )
    wind_speed: Annotated[Speed, within("0 m/s", "40 m/s")] | None = Field(default=None, description="Wind, all day.")
    wind_direction: Angle | None = Field(default=None, description="Where the wind comes from, true.")
    turbidity: Annotated[float, Field(ge=1.0, le=10.0)] | None = Field(
        default=None, description="Linke turbidity of the clear sky."
    )


class Place(Section):
    """Where and when. Give a weather file or a design day, not both."""

    weather: str | None = Field(
        default=None,
        max_length=1000,
        description=(
            "Weather file (EPW, TMY3, TMY2), its path seen from this file, or pvlib:NAME for a file that pvlib carries."
        ),
    )
    design_day: DesignDay | None = Field(default=None, description="A day made of a few figures.")
    day: DayInWords | None = Field(default=None, description="The day to live through.")
    latitude: Latitude | None = Field(default=None, description="North positive. Not needed with a weather file.")
    longitude: Longitude | None = Field(default=None, description="East positive. Not needed with a weather file.")
    time_zone: TimeZone | None = Field(
        default=None,
        description="Local standard time, such as UTC-5. Not needed with a weather file.",
    )
    sea: SeaByMonth = Field(description="Temperature of the sea: by name, one, or twelve by month.")
    heading: Heading | None = Field(default=None, description="Where the bow points: “to the wind”, or a true bearing.")
