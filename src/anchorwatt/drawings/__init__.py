"""Pictures of an assessment: one drawing model of our own, and small writers for each format."""

from __future__ import annotations

from anchorwatt.drawings.as_png import as_png
from anchorwatt.drawings.cabin_plan_picture import cabin_plan_picture
from anchorwatt.drawings.compare_picture import compare_picture
from anchorwatt.drawings.engine_picture import engine_picture
from anchorwatt.drawings.gains_picture import gains_picture
from anchorwatt.drawings.heel_trim_picture import heel_trim_picture
from anchorwatt.drawings.night_picture import night_picture
from anchorwatt.drawings.places_picture import places_picture
from anchorwatt.drawings.plant_picture import plant_picture

__all__ = [
    "as_png",
    "cabin_plan_picture",
    "compare_picture",
    "engine_picture",
    "gains_picture",
    "heel_trim_picture",
    "night_picture",
    "places_picture",
    "plant_picture",
]
