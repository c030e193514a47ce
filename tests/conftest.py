"""What all tests share: a Hypothesis profile, a compiled kernel of their own, and an order."""

from __future__ import annotations

import gc
import os
import tempfile

import pytest
from hypothesis import HealthCheck, settings

# A fresh cache, so that a test never runs code compiled from other sources; the workers of one run share it.
os.environ.setdefault("ANCHORWATT_CACHE", tempfile.mkdtemp(prefix="anchorwatt-tests-"))

settings.register_profile(
    "house", deadline=None, print_blob=True, derandomize=True, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("house")

ORDER = (
    "tests/assessment/test_intake.py",
    *("tests/physics", "tests/published", "tests/climate", "tests/design", "tests/units", "tests/catalogue"),
    *("tests/test_generated.py", "tests/papers", "tests/simulation", "tests/sizing", "tests/cli", "tests/checks"),
    *("tests/assessment", "tests/web", "tests/drawings"),
)
"""Two workers take file after file. One compiles the kernel while the other does what needs none; what takes long comes
next, and what is not named here, all of it short, comes last, so that both end together."""


def pytest_collection_modifyitems(items: list[pytest.Item]) -> None:
    def place(item: pytest.Item) -> int:
        return next((n for n, start in enumerate(ORDER) if item.nodeid.startswith(start)), len(ORDER))

    items.sort(key=place)


def pytest_collection_finish() -> None:
    """What is there now stays to the end: to look through it for garbage takes half a second each time."""
    gc.freeze()
