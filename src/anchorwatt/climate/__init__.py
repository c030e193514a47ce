"""Weather, sun and sea round the boat: from a weather file, or from a design day.

`weather` gives a table of everything at equally spaced instants, `weather_year` a whole year's; `irradiance_on`
what the sun puts on one plane of the boat; `bow_bearing` where the bow points.
"""

from __future__ import annotations

from anchorwatt.climate.bow import bow_bearing
from anchorwatt.climate.plane import PlaneIrradiance, irradiance_on
from anchorwatt.climate.series import Weather, weather
from anchorwatt.climate.year import weather_year

__all__ = ["PlaneIrradiance", "Weather", "bow_bearing", "irradiance_on", "weather", "weather_year"]
