"""A ramp of colour for readings that have an order, even to the eye and plain to colour-blind readers.

The colours lie on a straight line in OKLab between a light blue and an orange, so that equal steps of the reading
look like equal steps of colour. They darken steadily, so that they keep their order where hues are not told apart;
dark letters can be read on all of them.
"""

from __future__ import annotations

COOL, WARM = "#c2e2f7", "#e8833a"

Lab = tuple[float, float, float]


def ramp(share: float) -> str:
    """The colour at a share of the way from cool to warm; what lies beyond an end takes that end's colour.

    Example
    -------
    >>> ramp(-1.0), ramp(1.0)
    ('#c2e2f7', '#e8833a')
    """
    along = min(max(share, 0.0), 1.0)
    lightness, a, b = (start + (end - start) * along for start, end in zip(oklab(COOL), oklab(WARM), strict=True))
    return _colour(lightness, a, b)


def oklab(colour: str) -> Lab:
    """Lightness, green to red and blue to yellow of an sRGB colour.

    Source
    ------
    B. Ottosson, "A perceptual color space for image processing", 2020; also CSS Color 4, section 9.
    """
    r, g, b = (_linear(int(colour[n : n + 2], 16) / 255.0) for n in (1, 3, 5))
    long = (0.4122214708 * r + 0.5363325363 * g + 0.0514459929 * b) ** (1 / 3)
    medium = (0.2119034982 * r + 0.6806995451 * g + 0.1073969566 * b) ** (1 / 3)
    short = (0.0883024619 * r + 0.2817188376 * g + 0.6299787005 * b) ** (1 / 3)
    return (
        0.2104542553 * long + 0.7936177850 * medium - 0.0040720468 * short,
        1.9779984951 * long - 2.4285922050 * medium + 0.4505937099 * short,
        0.0259040371 * long + 0.7827717662 * medium - 0.8086757660 * short,
    )


def _colour(lightness: float, a: float, b: float) -> str:
    long = (lightness + 0.3963377774 * a + 0.2158037573 * b) ** 3
    medium = (lightness - 0.1055613458 * a - 0.0638541728 * b) ** 3
    short = (lightness - 0.0894841775 * a - 1.2914855480 * b) ** 3
    parts = (
        4.0767416621 * long - 3.3077115913 * medium + 0.2309699292 * short,
        -1.2684380046 * long + 2.6097574011 * medium - 0.3413193965 * short,
        -0.0041960863 * long - 0.7034186147 * medium + 1.7076147010 * short,
    )
    return "#" + "".join(f"{round(255.0 * _gamma(min(max(part, 0.0), 1.0))):02x}" for part in parts)


def _linear(value: float) -> float:
    return value / 12.92 if value <= 0.04045 else float(((value + 0.055) / 1.055) ** 2.4)


def _gamma(value: float) -> float:
    return 12.92 * value if value <= 0.0031308 else float(1.055 * value ** (1.0 / 2.4) - 0.055)
