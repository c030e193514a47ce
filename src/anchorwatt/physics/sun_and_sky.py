"""Sun and sky on an outside face: clear-sky temperature, sol-air temperature, incidence, the sea's mirror."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.envelope import STEFAN_BOLTZMANN

SEA_REFRACTIVE_INDEX = 1.34
"""Sea water against air, visible light."""

DIFFUSE_SEA_REFLECTANCE = 0.08
"""Share of diffuse light that the sea gives back, mean over the sky. From memory."""


def sky_temperature(dry_bulb: float, dew_point: float, pressure: float) -> float:
    """Temperature of a black body that radiates as the clear sky does.

    Parameters
    ----------
    dry_bulb : °C
    dew_point : °C
    pressure : Pa, of the place: thin air hides less of the cold above it

    Returns
    -------
    °C, not above the dry bulb

    Raises
    ------
    OutOfRange
        dry bulb outside -60 to 60 °C, dew point outside -60 to 40 °C, pressure outside 50 to 110 kPa.

    Source
    ------
    P. Berdahl and M. Martin, "Emissivity of clear skies", Solar Energy 32 (1984) 663-664: emissivity 0.711 +
    0.56 (dew point / 100) + 0.73 (dew point / 100)² + 0.00012 (pressure in hPa - 1000), without its term for the
    hour (0.013). The term for pressure is from memory.

    Example
    -------
    >>> sky_temperature(28.0, 25.0, 101_325.0)
    20.1
    """
    if not -60.0 <= dry_bulb <= 60.0:
        raise OutOfRange("the dry bulb lies between -60 and 60 °C; found", dry_bulb)
    if not -60.0 <= dew_point <= 40.0:
        raise OutOfRange("the dew point lies between -60 and 40 °C; found", dew_point)
    if not 50_000.0 <= pressure <= 110_000.0:
        raise OutOfRange("the pressure lies between 50 and 110 kPa; found", pressure)
    hundredth = dew_point / 100.0
    # The parabola turns at -38 °C, below any weather it was fitted to; from there on it is kept level.
    hundredth = max(hundredth, -0.56 / (2.0 * 0.73))
    emissivity = 0.711 + 0.56 * hundredth + 0.73 * hundredth * hundredth + 0.00012 * (pressure / 100.0 - 1000.0)
    emissivity = min(1.0, emissivity)
    return (dry_bulb + 273.15) * math.pow(emissivity, 0.25) - 273.15


def sky_view(tilt: float) -> float:
    """Share of a face's view that is above the horizon.

    Parameters
    ----------
    tilt : rad, of the face's outward normal from straight up

    Returns
    -------
    1 for a deck, 0.5 for a side, 0 for a face that looks down

    Raises
    ------
    OutOfRange
        tilt outside 0 to pi.

    Source
    ------
    View factor of a tilted plane, any solar-energy text.

    Example
    -------
    >>> sky_view(math.pi / 2)
    0.5
    """
    if not 0.0 <= tilt <= 3.1415927:
        raise OutOfRange("tilt lies between 0 and pi; found", tilt)
    return 0.5 * (1.0 + math.cos(tilt))


def sky_share(tilt: float) -> float:
    """Share of a face's long-wave exchange that goes to the cold sky; the rest goes to air temperature.

    Near the horizon the sky is about as warm as the air, so that a side sees less of the cold than its view
    factor says.

    Parameters
    ----------
    tilt : rad, of the face's outward normal from straight up

    Returns
    -------
    1 for a deck, 0.354 for a side, 0 for a face that looks down

    Raises
    ------
    OutOfRange
        tilt outside 0 to pi.

    Source
    ------
    G. N. Walton, "Thermal Analysis Research Program Reference Manual", NBSIR 83-2655, 1983: the sky's view
    factor times its own square root (from memory).

    Example
    -------
    >>> sky_share(math.pi / 2)
    0.354
    """
    return math.pow(sky_view(tilt), 1.5)


def equivalent_outside_temperature(
    dry_bulb: float,
    sky_temperature: float,
    irradiance: float,
    absorptance: float,
    emittance: float,
    convection: float,
    radiation: float,
    tilt: float,
) -> float:
    """Sol-air temperature: what the air alone would have to be to give a face the same heat.

    Heat into the face is (convection + radiation) x (this - face), where the sea and whatever else is below
    the horizon is taken to radiate at air temperature.

    Parameters
    ----------
    dry_bulb : °C
    sky_temperature : °C
    irradiance : W/m² on the face
    absorptance : of the sun, 0 to 1
    emittance : long-wave, 0 to 1
    convection : W/(m² K)
    radiation : W/(m² K), with the emittance in it, see `envelope.radiative_film`
    tilt : rad, of the face's outward normal from straight up

    Returns
    -------
    °C

    Raises
    ------
    OutOfRange
        irradiance negative, absorptance or emittance outside 0 to 1, a coefficient negative or both 0, tilt
        outside 0 to pi, a temperature below absolute zero.

    Source
    ------
    ASHRAE Handbook - Fundamentals, sol-air temperature: t_o + alpha E/h_o - eps dR/h_o, with dR from the
    sky's temperature.

    Example
    -------
    >>> equivalent_outside_temperature(32.0, 32.0, 950.0, 0.45, 0.9, 11.5, 5.5, 0.0)
    57.1
    """
    if not irradiance >= 0.0:
        raise OutOfRange("irradiance is not negative; found", irradiance)
    if not 0.0 <= absorptance <= 1.0:
        raise OutOfRange("an absorptance lies between 0 and 1; found", absorptance)
    if not 0.0 <= emittance <= 1.0:
        raise OutOfRange("an emittance lies between 0 and 1; found", emittance)
    if not (convection >= 0.0 and radiation >= 0.0 and convection + radiation > 0.0):
        raise OutOfRange("coefficients are not negative, and not both 0; found", min(convection, radiation))
    if not (dry_bulb > -273.15 and sky_temperature > -273.15):
        raise OutOfRange("a temperature lies above -273.15 °C; found", min(dry_bulb, sky_temperature))
    air, sky = dry_bulb + 273.15, sky_temperature + 273.15
    lacking = STEFAN_BOLTZMANN * sky_share(tilt) * (air * air * air * air - sky * sky * sky * sky)
    return dry_bulb + (absorptance * irradiance - emittance * lacking) / (convection + radiation)


def fresnel_sea_reflectance(zenith: float) -> float:
    """Share of the sun's beam that a smooth sea mirrors.

    Parameters
    ----------
    zenith : rad, angle of the sun from straight up

    Returns
    -------
    0 to 1; 1 at the horizon and below

    Raises
    ------
    OutOfRange
        zenith outside 0 to pi.

    Source
    ------
    Fresnel's equations for unpolarised light, any optics text.

    Example
    -------
    >>> fresnel_sea_reflectance(math.radians(60.0))
    0.061
    """
    if not 0.0 <= zenith <= 3.1415927:
        raise OutOfRange("a zenith angle lies between 0 and pi; found", zenith)
    if zenith >= 0.5 * math.pi:
        return 1.0
    across, along = interface_reflectances(math.cos(zenith), SEA_REFRACTIVE_INDEX)
    return 0.5 * (across + along)


def interface_reflectances(cosine: float, refractive_index: float) -> tuple[float, float]:
    """Reflectance of a smooth surface for the two polarisations of light.

    Parameters
    ----------
    cosine : of the angle of incidence, 0 to 1
    refractive_index : of what lies behind the surface, over that before it

    Returns
    -------
    reflectance across the plane of incidence, and in it

    Raises
    ------
    OutOfRange
        cosine outside 0 to 1, refractive index not above 1.

    Source
    ------
    Fresnel's equations, any optics text.

    Example
    -------
    >>> interface_reflectances(1.0, 1.5)
    (0.04, 0.04)
    """
    if not 0.0 <= cosine <= 1.0:
        raise OutOfRange("the cosine of incidence lies between 0 and 1; found", cosine)
    if not refractive_index > 1.0:
        raise OutOfRange("the refractive index must lie above 1; found", refractive_index)
    behind = math.sqrt(1.0 - (1.0 - cosine * cosine) / (refractive_index * refractive_index))
    across = (cosine - refractive_index * behind) / (cosine + refractive_index * behind)
    along = (refractive_index * cosine - behind) / (refractive_index * cosine + behind)
    return across * across, along * along


def incidence_cosine(sun_elevation: float, sun_azimuth: float, tilt: float, bearing: float) -> float:
    """Cosine of the angle between the sun's beam and a face's outward normal.

    Parameters
    ----------
    sun_elevation : rad over the horizon
    sun_azimuth : rad, clockwise from true north
    tilt : rad, of the face's outward normal from straight up
    bearing : rad, clockwise from true north, to which the face looks

    Returns
    -------
    -1 to 1; negative with the sun behind the face

    Source
    ------
    Spherical trigonometry, any solar-energy text.

    Example
    -------
    >>> incidence_cosine(math.radians(30.0), 1.0, 0.0, 0.0)
    0.5
    """
    upward = math.sin(sun_elevation) * math.cos(tilt)
    return upward + math.cos(sun_elevation) * math.sin(tilt) * math.cos(sun_azimuth - bearing)
