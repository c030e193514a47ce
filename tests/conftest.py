"""What all tests share: a Hypothesis profile, and a compiled kernel of their own."""

from __future__ import annotations

import os
import tempfile

from hypothesis import HealthCheck, settings

# A fresh cache, so that a test never runs code compiled from other sources; the workers of one run share it.
os.environ.setdefault("ANCHORWATT_CACHE", tempfile.mkdtemp(prefix="anchorwatt-tests-"))

settings.register_profile(
    "house", deadline=None, print_blob=True, derandomize=True, suppress_health_check=[HealthCheck.too_slow]
)
settings.load_profile("house")
