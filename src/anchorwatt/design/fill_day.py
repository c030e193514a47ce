"""Place and brief, every gap filled."""

from __future__ import annotations

import importlib.util
import math
from pathlib import Path

from anchorwatt.design import specification as spec
from anchorwatt.design.bearing import TO_THE_WIND
from anchorwatt.design.day import DAY, Brief
from anchorwatt.design.document import Key
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.place import WARMEST_NIGHT, DesignDay, Place

CARRIED = "pvlib:"


def fill_place(place: Place, ledger: Ledger) -> spec.Place | None:
    """Where and when; None when that cannot be said."""
    key: Key = ("place",)
    if (place.weather is None) == (place.design_day is None):
        found = "both weather and design_day" if place.weather is not None else "neither weather nor design_day"
        ledger.refuse(key, found, "one of weather and design_day")
        return None
    heading = place.heading
    if heading is None:
        ledger.note((*key, "heading"), TO_THE_WIND, "a boat at anchor lies to the wind", "common knowledge")
    day = place.day
    if day is None and place.weather is not None:
        ledger.note((*key, "day"), WARMEST_NIGHT, "no day is given", "the weather file")
    month, day_of_month = (0, 0) if day is None else day
    latitude = math.nan if place.latitude is None else float(place.latitude)
    longitude = math.nan if place.longitude is None else float(place.longitude)
    zone = math.nan if place.time_zone is None else place.time_zone
    made = None
    if place.design_day is not None:
        lacking = [name for name in ("latitude", "longitude", "day") if getattr(place, name) is None]
        if lacking:
            ledger.refuse(
                key,
                f"a design day without {', '.join(lacking)}",
                "latitude, longitude and day with a design day",
            )
            return None
        if month == 0:
            ledger.refuse((*key, "day"), WARMEST_NIGHT, "a day such as “21 July” with a design day")
            return None
        made = _design_day(place.design_day, ledger)
        if made is None:
            return None
        if place.time_zone is None:
            zone = float(round(math.degrees(longitude) / 15.0))
            ledger.note((*key, "time_zone"), f"UTC{zone:+g}", "longitude over 15°, rounded", "geography")
    else:
        _check_weather_file(str(place.weather), ledger)
    return spec.Place(
        latitude=latitude,
        longitude=longitude,
        hours_east=zone,
        weather_file="" if place.weather is None else weather_path(place.weather, ledger),
        month=month,
        day=day_of_month,
        design_day=made,
        sea_temperatures=tuple(float(temperature) for temperature in place.sea.temperatures),
        heading=math.nan if heading is None else float(heading),
    )


def fill_brief(brief: Brief, ledger: Ledger) -> spec.Brief:
    """What the boat must do."""
    charge = ledger.fill(
        brief.charge_at_start,
        ("brief", "charge_at_start"),
        1.0,
        "share",
        "the night begins with a full bank",
        MEMORY,
    )
    if charge <= brief.reserve:
        ledger.refuse(
            ("brief", "reserve"), f'"{brief.reserve.text}"', f"less than the {charge * 100:.0f} % at the start"
        )
    return spec.Brief(
        hold=float(brief.hold),
        night_start=brief.night_start % DAY,
        charge_at_start=charge,
        reserve=float(brief.reserve),
        recharge=float(brief.recharge),
        mass_limit=math.nan if brief.mass_limit is None else float(brief.mass_limit),
        nights_per_year=ledger.fill(
            brief.nights_per_year, ("brief", "nights_per_year"), 60.0, "", "weekends and a long cruise", MEMORY
        ),
        price_limit="" if brief.price_limit is None else str(brief.price_limit),
    )


def weather_path(weather: str, ledger: Ledger) -> str:
    """The weather file as `climate` takes it: pvlib:NAME, or a path seen from the design file."""
    if weather.startswith(CARRIED):
        return weather
    path = ledger.document.path
    return str((path.parent if path is not None else Path()) / weather)


def _check_weather_file(weather: str, ledger: Ledger) -> None:
    key: Key = ("place", "weather")
    if weather.startswith(CARRIED):
        package = importlib.util.find_spec("pvlib")
        origin = package.origin if package is not None else None
        name = weather.removeprefix(CARRIED)
        folder = Path(origin).parent / "data" if origin else Path()
        if "/" in name or "\\" in name or not (folder / name).is_file():
            known = sorted(file.name for file in folder.iterdir() if file.suffix.lower() in (".tm2", ".epw"))
            ledger.refuse(key, f"no weather file “{name}” in pvlib", ", ".join(CARRIED + one for one in known))
    elif not Path(weather_path(weather, ledger)).is_file():
        kind = "a folder" if Path(weather_path(weather, ledger)).is_dir() else "no such file"
        ledger.refuse(key, f"{kind}: {weather}", "an EPW, TMY3 or TMY2 file, its path seen from the design file")


def _design_day(day: DesignDay, ledger: Ledger) -> spec.DesignDay | None:
    key: Key = ("place", "design_day")
    if (day.dew_point is None) == (day.relative_humidity is None):
        found = "both dew_point and" if day.dew_point is not None else "neither dew_point nor"
        ledger.refuse(key, f"{found} relative_humidity", "one of dew_point and relative_humidity")
        return None
    if day.dew_point is not None:
        dew_point = float(day.dew_point)
        if dew_point > day.highest_dry_bulb:
            ledger.refuse(
                (*key, "dew_point"),
                f'"{day.dew_point.text}"',
                f"at most the air's {day.highest_dry_bulb.text}",
            )
            return None
    else:
        from anchorwatt.physics import moist_air

        ratio = moist_air.humidity_ratio(float(day.highest_dry_bulb), float(day.relative_humidity or 0.0), 101_325.0)
        dew_point = float(moist_air.dew_point(ratio, 101_325.0))
    return spec.DesignDay(
        highest_dry_bulb=float(day.highest_dry_bulb),
        daily_range=float(day.daily_range),
        dew_point=dew_point,
        wind_speed=ledger.fill(day.wind_speed, (*key, "wind_speed"), 2.5, "speed", "a light night breeze", MEMORY),
        wind_direction=ledger.fill(
            day.wind_direction, (*key, "wind_direction"), math.pi / 2, "angle", "from the east", MEMORY
        ),
        turbidity=ledger.fill(
            day.turbidity, (*key, "turbidity"), 3.5, "", "Linke turbidity of a marine summer, 3 to 4", MEMORY
        ),
    )
