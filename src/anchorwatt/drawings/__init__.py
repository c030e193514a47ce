"""Pictures of an assessment: one drawing model of our own, and small writers for each format."""

from __future__ import annotations

from anchorwatt.drawings.gains_picture import gains_picture
from anchorwatt.drawings.heel_trim_picture import heel_trim_picture
from anchorwatt.drawings.night_picture import night_picture
from anchorwatt.drawings.plant_picture import plant_picture

__all__ = ["gains_picture", "heel_trim_picture", "night_picture", "plant_picture"]
