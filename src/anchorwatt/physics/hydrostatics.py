"""How a boat floats after masses were added, moved or taken out: heel, trim, sinkage and stability height.

Places are in the boat's own axes: forward of the aft end of the waterline, starboard of the centreline, up from the
waterline. All formulas are those of small changes: the waterplane stays as it is and angles stay small.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

SEAWATER_DENSITY = 1025.0
"""kg/m³, of the hydrostatics of ships."""

LARGEST_HEEL = math.radians(10.0)
"""rad beyond which the metacentre is not where it was."""

CENTIMETRE = 0.01


def gravity_shift(moment: float, displacement: float) -> float:
    """Shift of the boat's centre of gravity by a moment of masses.

    Parameters
    ----------
    moment : kg m: of a mass moved, its mass by the way; of masses added, the sum of mass by distance
    displacement : kg, with those masses

    Returns
    -------
    m, in the direction of the moment

    Raises
    ------
    OutOfRange
        displacement not positive.

    Source
    ------
    GG1 = w d / W: public-domain textbook of seamanship, chapter on stability.

    Example
    -------
    >>> gravity_shift(100.0 * 2.0, 10_000.0)
    0.02
    """
    if not displacement > 0.0:
        raise OutOfRange("the displacement must be positive; found kg", displacement)
    return moment / displacement


def heel_angle(moment: float, displacement: float, metacentric_height: float) -> float:
    """Heel under a transverse moment of masses.

    Parameters
    ----------
    moment : kg m, to starboard positive
    displacement : kg
    metacentric_height : m, GM

    Returns
    -------
    rad, starboard down positive

    Raises
    ------
    OutOfRange
        displacement or metacentric height not positive, or a heel beyond 10°, where the formula ends.

    Source
    ------
    tan φ = w d / (W GM), as in an inclining test: public-domain textbook of seamanship, chapter on stability.

    Example
    -------
    >>> import math
    >>> math.degrees(heel_angle(500.0, 14_000.0, 1.2))
    1.7
    """
    if not metacentric_height > 0.0:
        raise OutOfRange("a boat floats upright with a positive metacentric height only; found m", metacentric_height)
    angle = math.atan(gravity_shift(moment, displacement) / metacentric_height)
    if abs(angle) > LARGEST_HEEL:
        raise OutOfRange("the formula of small heel ends at 10°; found °", math.degrees(angle))
    return angle


def metacentric_height_from_heel(moment: float, displacement: float, heel: float) -> float:
    """Metacentric height from an inclining test.

    Parameters
    ----------
    moment : kg m, the mass moved by the way across the boat
    displacement : kg
    heel : rad, read from a pendulum

    Returns
    -------
    m

    Raises
    ------
    OutOfRange
        displacement not positive, or a heel of nothing or beyond 10°.

    Source
    ------
    GM = (w d / W) cot φ: public-domain textbook of seamanship, chapter on stability.

    Example
    -------
    >>> import math
    >>> metacentric_height_from_heel(500.0, 14_000.0, math.radians(1.7045))
    1.20
    """
    if not 0.0 < abs(heel) <= LARGEST_HEEL:
        raise OutOfRange("an inclining test heels the boat by 10° at most; found °", math.degrees(heel))
    return gravity_shift(moment, displacement) / math.tan(heel)


def mass_per_immersion(waterplane: float) -> float:
    """Mass that sinks the boat by one metre of draught; a hundredth of it is the tonnes per centimetre.

    Parameters
    ----------
    waterplane : m², area

    Returns
    -------
    kg/m

    Raises
    ------
    OutOfRange
        waterplane not positive.

    Source
    ------
    TPC = 1.025 Aw / 100: public teaching notes of seamanship.

    Example
    -------
    >>> mass_per_immersion(38.0) / 1000.0 / 100.0
    0.390
    """
    if not waterplane > 0.0:
        raise OutOfRange("the waterplane must be positive; found m²", waterplane)
    return SEAWATER_DENSITY * waterplane


def sinkage(mass: float, waterplane: float) -> float:
    """How much deeper the boat lies, all round.

    Parameters
    ----------
    mass : kg, added; negative = taken out
    waterplane : m², area

    Returns
    -------
    m, deeper positive

    Raises
    ------
    OutOfRange
        as `mass_per_immersion`.

    Source
    ------
    Mass over the tonnes per centimetre: public teaching notes of seamanship.

    Example
    -------
    >>> sinkage(390.0, 38.0) * 100.0
    1.0
    """
    return mass / mass_per_immersion(waterplane)


def moment_to_trim(displacement: float, longitudinal_metacentric_height: float, length: float) -> float:
    """Moment that changes the trim by one centimetre over the waterline.

    Parameters
    ----------
    displacement : kg
    longitudinal_metacentric_height : m, GML
    length : m, of the waterline

    Returns
    -------
    kg m for 1 cm

    Raises
    ------
    OutOfRange
        any of the three not positive.

    Source
    ------
    MCT1cm = W GML / (100 L): public teaching notes of seamanship.

    Example
    -------
    >>> moment_to_trim(15_000.0, 16.0, 13.0)
    184.6
    """
    for value in (displacement, longitudinal_metacentric_height, length):
        if not value > 0.0:
            raise OutOfRange(
                "displacement, longitudinal metacentric height and waterline must be positive; found", value
            )
    return displacement * longitudinal_metacentric_height / length * CENTIMETRE


def change_of_trim(moment: float, displacement: float, longitudinal_metacentric_height: float, length: float) -> float:
    """Change of trim under a fore-and-aft moment of masses about the centre of flotation.

    Parameters
    ----------
    moment : kg m, forward of the centre of flotation positive
    displacement : kg
    longitudinal_metacentric_height : m, GML
    length : m, of the waterline

    Returns
    -------
    m, bow down positive: draught gained at the bow and lost at the stern, together

    Raises
    ------
    OutOfRange
        as `moment_to_trim`.

    Source
    ------
    Moment over MCT1cm: public-domain textbook of seamanship, chapter on trim; public teaching notes.

    Example
    -------
    >>> change_of_trim(572.0, 15_000.0, 16.0, 13.0) * 100.0
    3.1
    """
    return moment / moment_to_trim(displacement, longitudinal_metacentric_height, length) * CENTIMETRE


def trim_at_bow(trim: float, flotation: float, length: float) -> float:
    """The bow's part of a change of trim; the stern's is this less the whole.

    Parameters
    ----------
    trim : m, bow down positive
    flotation : m of the centre of flotation from the aft end of the waterline
    length : m, of the waterline

    Returns
    -------
    m deeper at the bow

    Raises
    ------
    OutOfRange
        the centre of flotation beyond the ends of the waterline.

    Source
    ------
    The boat turns about the centre of flotation: similar triangles, any text of ship stability.

    Example
    -------
    >>> trim_at_bow(0.031, 5.85, 13.0) * 100.0, (trim_at_bow(0.031, 5.85, 13.0) - 0.031) * 100.0
    (1.7, -1.4)
    """
    if not 0.0 < flotation < length:
        raise OutOfRange("the centre of flotation lies between the ends of the waterline; found m", flotation)
    return trim * (length - flotation) / length


def gravity_height(height: float, displacement: float, mass: float, moment: float) -> float:
    """Height of the boat's centre of gravity after masses were added, KG in other axes.

    Parameters
    ----------
    height : m over the old waterline, before
    displacement : kg, before
    mass : kg, added less taken out
    moment : kg m, sum of the masses by their heights over the old waterline

    Returns
    -------
    m over the old waterline

    Raises
    ------
    OutOfRange
        no displacement left.

    Source
    ------
    Moments about the waterline.

    Example
    -------
    >>> gravity_height(0.5, 10_000.0, 200.0, 200.0 * -0.52)
    0.48
    """
    if not min(displacement, displacement + mass) > 0.0:
        raise OutOfRange("the displacement must be positive; found kg", displacement + mass)
    return (displacement * height + moment) / (displacement + mass)


def metacentric_height_after(
    metacentric_height: float, displacement: float, mass: float, moment: float, waterplane: float
) -> float:
    """Metacentric height after masses were added, in a boat whose sides stand upright at the waterline.

    Parameters
    ----------
    metacentric_height : m, GM before
    displacement : kg, before
    mass : kg, added less taken out
    moment : kg m, sum of the masses by their heights over the old waterline
    waterplane : m², area

    Returns
    -------
    m, GM after

    Raises
    ------
    OutOfRange
        no displacement left, or as `mass_per_immersion`.

    Source
    ------
    Thin layer of displacement over an unchanged waterplane: the layer's buoyancy acts half the sinkage over the old
    waterline, and the moment of inertia of the waterplane stays, so that W' GM' = W GM + w δ/2 - Σ w z with δ the
    sinkage and z heights over the old waterline. From memory; see any text of ship stability on adding a weight.

    Example
    -------
    >>> metacentric_height_after(1.10, 15_000.0, 200.0, 200.0 * -0.5, 38.0)
    1.092
    """
    after = displacement + mass
    if not min(displacement, after) > 0.0:
        raise OutOfRange("the displacement must be positive; found kg", after)
    layer = mass * 0.5 * sinkage(mass, waterplane)
    return (displacement * metacentric_height + layer - moment) / after


def waterplane_inertia_along(coefficient: float, length: float, beam: float) -> float:
    """Second moment of one hull's waterplane about its transverse axis, from its proportions.

    Parameters
    ----------
    coefficient : of the waterplane, its area over length by beam
    length : m, of the waterline
    beam : m, of the hull at the waterline

    Returns
    -------
    m⁴

    Raises
    ------
    OutOfRange
        coefficient outside 0.6 to 1, or length or beam not positive.

    Source
    ------
    I = (0.350 Cw² - 0.405 Cw + 0.146) L³ B, a handbook's fit to ships' lines. From memory.

    Example
    -------
    >>> waterplane_inertia_along(0.75, 13.0, 4.2)
    361.0
    """
    _proportions(coefficient, length, beam)
    return (0.350 * coefficient**2 - 0.405 * coefficient + 0.146) * length**3 * beam


def waterplane_inertia_across(coefficient: float, length: float, beam: float) -> float:
    """Second moment of one hull's waterplane about its own centreline, from its proportions.

    Parameters
    ----------
    coefficient : of the waterplane, its area over length by beam
    length : m, of the waterline
    beam : m, of the hull at the waterline

    Returns
    -------
    m⁴

    Raises
    ------
    OutOfRange
        coefficient outside 0.6 to 1, or length or beam not positive.

    Source
    ------
    I = (0.1216 Cw - 0.0410) L B³, a handbook's fit to ships' lines. From memory.

    Example
    -------
    >>> waterplane_inertia_across(0.75, 13.0, 4.2)
    48.4
    """
    _proportions(coefficient, length, beam)
    return (0.1216 * coefficient - 0.0410) * length * beam**3


def _proportions(coefficient: float, length: float, beam: float) -> None:
    if not 0.6 <= coefficient <= 1.0:
        raise OutOfRange("the fit holds for waterplane coefficients of 0.6 to 1; found", coefficient)
    if not min(length, beam) > 0.0:
        raise OutOfRange("length and beam must be positive; found m", min(length, beam))
