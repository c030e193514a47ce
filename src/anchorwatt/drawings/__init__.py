"""Pictures of an assessment: one drawing model of our own, and small writers for each format."""

from __future__ import annotations

from anchorwatt.drawings.night_picture import night_picture

__all__ = ["night_picture"]
