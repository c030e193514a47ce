"""The starter boats, assessed once by whichever test asks first: a run takes seconds, and gives the same again."""

from __future__ import annotations

from functools import cache, lru_cache
from pathlib import Path
from tempfile import TemporaryDirectory

import anchorwatt
from anchorwatt import design
from anchorwatt.assessment import Assessment

STARTERS = design.starters()

assess_once = lru_cache(maxsize=8)(anchorwatt.assess)
"""`assess`, which gives the assessment of an equal design again while it is one of the last few."""


@cache
def assessed(starter: str) -> Assessment:
    """A starter, written to a file, read and assessed."""
    with TemporaryDirectory() as folder:
        path = Path(folder) / "boat.yaml"
        design.new(starter, path)
        return assess_once(anchorwatt.read(path))
