"""Refrigerant that may leak into a cabin: the circuit's charge, its concentration, and how much is allowed."""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

FLOOR_RELEASE = 0.6
"""m, release height of a unit on the floor, and the least that counts (IEC 60335-2-40:2018, annex GG, as two
installation manuals print it)."""

AREA_FACTOR = 2.5
"""Of the rule for a room in which leaking gas settles (IEC 60335-2-40:2018, annex GG; as above)."""

MIXED_SHARE = 0.75
"""Share of the flammable limit up to which the layer under the release may fill (as above)."""

NO_AREA_RULE = 6.0
"""m³: times the flammable limit, the charge of a mildly flammable refrigerant under which that standard sets no
floor area (as above)."""


def circuit_charge(charge: float, charged_length: float, line_length: float, charge_per_length: float) -> float:
    """Refrigerant in a circuit whose lines are longer than the unit was charged for.

    Parameters
    ----------
    charge : kg in the unit as delivered
    charged_length : m of line that it is charged for
    line_length : m of line, one way, all handlers together
    charge_per_length : kg for each metre beyond

    Returns
    -------
    kg; shorter lines take nothing away

    Raises
    ------
    OutOfRange
        charge not positive, a length or the charge for each metre negative.

    Source
    ------
    Every maker's charging instruction.

    Example
    -------
    >>> circuit_charge(1.5, 10.0, 16.0, 0.05)
    1.8
    """
    if not charge > 0.0:
        raise OutOfRange("a charge must be positive; found", charge)
    if not min(charged_length, line_length, charge_per_length) >= 0.0:
        least = min(charged_length, line_length, charge_per_length)
        raise OutOfRange("lengths and the charge for each metre are not negative; found", least)
    return charge + charge_per_length * max(0.0, line_length - charged_length)


def leak_concentration(charge: float, volume: float) -> float:
    """Concentration of the whole charge, leaked into one closed space and mixed there.

    Parameters
    ----------
    charge : kg in the circuit
    volume : m³ of the space

    Returns
    -------
    kg/m³

    Raises
    ------
    OutOfRange
        charge negative, volume not positive.

    Source
    ------
    EN 378-1 and ASHRAE 15: the whole charge of a circuit counts, in the smallest space that it can reach (from
    memory).

    Example
    -------
    >>> leak_concentration(3.0, 8.0)
    0.375
    """
    if not charge >= 0.0:
        raise OutOfRange("a charge is not negative; found", charge)
    if not volume > 0.0:
        raise OutOfRange("a space's volume must be positive; found", volume)
    return charge / volume


def largest_charge(flammable_limit: float, floor_area: float, release_height: float = FLOOR_RELEASE) -> float:
    """Largest charge of a flammable refrigerant over a floor without ventilation.

    Parameters
    ----------
    flammable_limit : kg/m³, lower limit
    floor_area : m² of the room
    release_height : m, where the gas comes out over the floor; counted as at least `FLOOR_RELEASE`

    Returns
    -------
    kg

    Raises
    ------
    OutOfRange
        flammable limit or area not positive, release height negative.

    Source
    ------
    IEC 60335-2-40:2018, annex GG: the lesser of 2.5 LFL^(5/4) h sqrt(A) and 0.75 LFL h A, as two installation manuals
    print it.

    Example
    -------
    >>> largest_charge(0.307, 7.0, 0.6)
    0.907
    >>> largest_charge(0.307, 6.0, 0.6)
    0.829
    """
    height = _checked(flammable_limit, release_height)
    if not floor_area > 0.0:
        raise OutOfRange("a floor's area must be positive; found", floor_area)
    settled = AREA_FACTOR * math.pow(flammable_limit, 1.25) * height * math.sqrt(floor_area)
    return min(settled, MIXED_SHARE * flammable_limit * height * floor_area)


def least_floor_area(flammable_limit: float, charge: float, release_height: float = FLOOR_RELEASE) -> float:
    """Least floor area for a charge of a flammable refrigerant: `largest_charge` turned over.

    Parameters
    ----------
    flammable_limit : kg/m³, lower limit
    charge : kg
    release_height : m, where the gas comes out over the floor; counted as at least `FLOOR_RELEASE`

    Returns
    -------
    m²

    Raises
    ------
    OutOfRange
        flammable limit or charge not positive, release height negative.

    Source
    ------
    As `largest_charge`.

    Example
    -------
    >>> least_floor_area(0.307, 1.84, 0.6)
    28.81
    """
    height = _checked(flammable_limit, release_height)
    if not charge > 0.0:
        raise OutOfRange("a charge must be positive; found", charge)
    settled = charge / (AREA_FACTOR * math.pow(flammable_limit, 1.25) * height)
    return max(settled * settled, charge / (MIXED_SHARE * flammable_limit * height))


def charge_without_area_rule(flammable_limit: float) -> float:
    """Charge of a mildly flammable refrigerant under which the appliance standard sets no floor area.

    It is meant for dwellings: in a boat's cabin that charge is still a great part of what burns.

    Parameters
    ----------
    flammable_limit : kg/m³, lower limit

    Returns
    -------
    kg

    Raises
    ------
    OutOfRange
        flammable limit not positive.

    Source
    ------
    IEC 60335-2-40:2018: 6 m³ times the lower flammable limit, as two installation manuals print it.

    Example
    -------
    >>> charge_without_area_rule(0.307)
    1.84
    """
    _checked(flammable_limit, 0.0)
    return NO_AREA_RULE * flammable_limit


def _checked(flammable_limit: float, release_height: float) -> float:
    """The height that counts."""
    if not flammable_limit > 0.0:
        raise OutOfRange("a flammable limit must be positive; found", flammable_limit)
    if not release_height >= 0.0:
        raise OutOfRange("a release height is not negative; found", release_height)
    return max(FLOOR_RELEASE, release_height)
