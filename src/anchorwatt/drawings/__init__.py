"""Pictures of an assessment: one drawing model of our own, and small writers for each format."""

from __future__ import annotations

from anchorwatt.drawings.gains_picture import gains_picture
from anchorwatt.drawings.night_picture import night_picture
from anchorwatt.drawings.plant_picture import plant_picture

__all__ = ["gains_picture", "night_picture", "plant_picture"]
