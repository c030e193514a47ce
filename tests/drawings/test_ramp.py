from __future__ import annotations

import math
from itertools import pairwise

import pytest

from anchorwatt.drawings.ramp import oklab, ramp
from anchorwatt.drawings.sheet import INK

SHARES = [number / 40 for number in range(41)]


def luminance(colour: str) -> float:
    """Relative luminance, WCAG 2.2."""
    parts = (int(colour[n : n + 2], 16) / 255 for n in (1, 3, 5))
    linear = [part / 12.92 if part <= 0.04045 else ((part + 0.055) / 1.055) ** 2.4 for part in parts]
    return 0.2126 * linear[0] + 0.7152 * linear[1] + 0.0722 * linear[2]


@pytest.mark.parametrize(
    ("colour", "lightness", "chroma", "hue"),
    [
        # sRGB primaries in OKLCH, CSS Color 4 and its reference code, from memory
        ("#ff0000", 0.62796, 0.25768, 29.234),
        ("#00ff00", 0.86644, 0.29483, 142.495),
        ("#0000ff", 0.45201, 0.31321, 264.052),
    ],
)
def test_oklab_of_the_primaries(colour: str, lightness: float, chroma: float, hue: float) -> None:
    found, a, b = oklab(colour)
    assert found == pytest.approx(lightness, abs=1e-4)
    assert math.hypot(a, b) == pytest.approx(chroma, abs=1e-4)
    assert math.degrees(math.atan2(b, a)) % 360 == pytest.approx(hue, abs=0.02)


def test_it_darkens_all_the_way() -> None:
    """So that readers who cannot tell its hues still see the order."""
    lights = [luminance(ramp(share)) for share in SHARES]
    assert lights == sorted(lights, reverse=True)


def test_equal_steps_look_equal() -> None:
    steps = [math.dist(oklab(ramp(a)), oklab(ramp(b))) for a, b in pairwise(SHARES)]
    mean = sum(steps) / len(steps)
    # A colour of eight bits a channel is rounded by up to 0.002 in these units.
    assert all(abs(step - mean) < 0.003 for step in steps)


def test_dark_letters_can_be_read_on_all_of_it() -> None:
    """4.5 : 1, WCAG 2.2 AA."""
    assert all((luminance(ramp(share)) + 0.05) / (luminance(INK) + 0.05) >= 4.5 for share in SHARES)
