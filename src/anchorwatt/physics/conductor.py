"""A copper conductor: resistance by area and temperature, what it drops, loses, weighs and may carry.

Lengths of a circuit are those of the whole loop, out and back, unless a text says otherwise.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

COPPER_RESISTIVITY = 1e-6 / 58.0  # ohm m at 20 °C, annealed copper (IEC 60028)
COPPER_COEFFICIENT = 0.00393  # 1/K from 20 °C (IEC 60028)
COPPER_DENSITY = 8890.0  # kg/m³ at 20 °C (IEC 60028)
LAY = 1.02  # length of the strands over that of the conductor, usual of stranded ones. From memory.
STATED_AT = 20.0  # °C at which standards state resistances
RATED_AMBIENT = 30.0  # °C for which the ampacity tables of small craft are stated
COLDEST, HOTTEST = -100.0, 400.0  # °C between which the straight line holds


def resistance_ratio(temperature: float) -> float:
    """Resistance of copper over its resistance at 20 °C.

    Parameters
    ----------
    temperature : °C

    Returns
    -------
    ratio

    Raises
    ------
    OutOfRange
        temperature outside -100 to 400 °C.

    Source
    ------
    IEC 60028: 0.00393 1/K from 20 °C.

    Example
    -------
    >>> resistance_ratio(75.0)
    1.216
    """
    if not COLDEST <= temperature <= HOTTEST:
        raise OutOfRange("temperature of a conductor must be within -100 and 400 °C; found", temperature)
    return 1.0 + COPPER_COEFFICIENT * (temperature - STATED_AT)


def resistance_per_length(area: float, lay: float = LAY) -> float:
    """Resistance of one metre of copper conductor at 20 °C.

    Parameters
    ----------
    area : m², of the metal
    lay : length of the strands over that of the conductor, 1 = solid

    Returns
    -------
    ohm/m

    Raises
    ------
    OutOfRange
        area not positive, or lay below 1.

    Source
    ------
    IEC 60028: 1/58 ohm mm²/m. Strands 2 % longer than the conductor are usual, from memory.

    Example
    -------
    >>> 1e6 * resistance_per_length(53.48e-6)
    328.8
    """
    if not area > 0.0:
        raise OutOfRange("a conductor's area must be positive; found", area)
    if not lay >= 1.0:
        raise OutOfRange("strands are not shorter than their conductor; found a ratio of", lay)
    return COPPER_RESISTIVITY * lay / area


def voltage_drop(current: float, length: float, resistance: float, temperature: float = STATED_AT) -> float:
    """Voltage that a circuit loses in its conductors.

    Parameters
    ----------
    current : A
    length : m of the loop, out and back
    resistance : ohm/m at 20 °C
    temperature : °C of the conductor

    Returns
    -------
    V, of the current's sign

    Raises
    ------
    OutOfRange
        length or resistance negative, or as `resistance_ratio`.

    Source
    ------
    Ohm's law.

    Example
    -------
    >>> voltage_drop(250.0, 5.0, 0.272e-3)
    0.340
    """
    if not length >= 0.0:
        raise OutOfRange("length must not be negative; found", length)
    if not resistance >= 0.0:
        raise OutOfRange("resistance must not be negative; found", resistance)
    return current * length * resistance * resistance_ratio(temperature)


def conductor_loss(current: float, length: float, resistance: float, temperature: float = STATED_AT) -> float:
    """Power that a circuit turns into heat in its conductors.

    Parameters
    ----------
    current : A
    length : m of the loop, out and back
    resistance : ohm/m at 20 °C
    temperature : °C of the conductor

    Returns
    -------
    W

    Raises
    ------
    OutOfRange
        as `voltage_drop`.

    Source
    ------
    Joule's law.

    Example
    -------
    >>> conductor_loss(250.0, 5.0, 0.272e-3)
    85.0
    """
    return current * voltage_drop(current, length, resistance, temperature)


def area_for_drop(
    current: float, length: float, drop: float, temperature: float = STATED_AT, lay: float = LAY
) -> float:
    """Area of copper at which a circuit loses no more than a given voltage.

    Parameters
    ----------
    current : A
    length : m of the loop, out and back
    drop : V
    temperature : °C of the conductor
    lay : length of the strands over that of the conductor

    Returns
    -------
    m²

    Raises
    ------
    OutOfRange
        current or length negative, drop not positive, or as `resistance_ratio`.

    Source
    ------
    Ohm's law, solved for the area.

    Example
    -------
    >>> 1e6 * area_for_drop(200.0, 3.048, 0.36, 75.0)
    36.21
    """
    if not current >= 0.0:
        raise OutOfRange("current must not be negative; found", current)
    if not length >= 0.0:
        raise OutOfRange("length must not be negative; found", length)
    if not drop > 0.0:
        raise OutOfRange("a voltage drop that is allowed must be positive; found", drop)
    return COPPER_RESISTIVITY * lay * resistance_ratio(temperature) * current * length / drop


def copper_mass(area: float, length: float, lay: float = LAY) -> float:
    """Mass of the copper of a conductor.

    Parameters
    ----------
    area : m², of the metal
    length : m of conductor
    lay : length of the strands over that of the conductor

    Returns
    -------
    kg

    Raises
    ------
    OutOfRange
        area or length negative.

    Source
    ------
    IEC 60028: 8890 kg/m³.

    Example
    -------
    >>> copper_mass(70e-6, 1.0, 1.0)
    0.622
    """
    if not area >= 0.0:
        raise OutOfRange("area must not be negative; found", area)
    if not length >= 0.0:
        raise OutOfRange("length must not be negative; found", length)
    return COPPER_DENSITY * area * length * lay


def ambient_factor(insulation: float, ambient: float) -> float:
    """What warmer surroundings leave of a conductor's ampacity stated for 30 °C.

    Parameters
    ----------
    insulation : °C, highest of the insulation
    ambient : °C round the conductor

    Returns
    -------
    ratio, 1 at and below 30 °C, 0 where the surroundings are as hot as the insulation may be

    Raises
    ------
    OutOfRange
        insulation not above 30 °C.

    Source
    ------
    Heat given off grows with the difference of temperatures, heat made with the square of the current: the ratio is
    the root of (insulation - ambient) over (insulation - 30). It gives note 1 of 33 CFR 183.425 table 5 within 0.01
    up to the class of 125 °C; for 200 °C the note is milder.

    Example
    -------
    >>> ambient_factor(75.0, 50.0)
    0.745
    """
    if not insulation > RATED_AMBIENT:
        raise OutOfRange("insulation must bear more than the 30 °C of the tables; found", insulation)
    if ambient >= insulation:
        return 0.0
    return min(1.0, math.sqrt((insulation - ambient) / (insulation - RATED_AMBIENT)))


def conductor_temperature(current: float, ampacity: float, insulation: float, ambient: float) -> float:
    """Temperature that a conductor reaches in the end at a current.

    Parameters
    ----------
    current : A
    ampacity : A at which it reaches its insulation's limit in those surroundings
    insulation : °C, highest of the insulation
    ambient : °C round the conductor

    Returns
    -------
    °C

    Raises
    ------
    OutOfRange
        ampacity not positive, or surroundings not cooler than the insulation may be.

    Source
    ------
    The rise over the surroundings grows with the square of the current, as behind `ambient_factor`.

    Example
    -------
    >>> conductor_temperature(100.0, 200.0, 105.0, 50.0)
    63.75
    """
    if not ampacity > 0.0:
        raise OutOfRange("an ampacity must be positive; found", ampacity)
    if not ambient < insulation:
        raise OutOfRange("surroundings must be cooler than the insulation may be; found", ambient)
    share = current / ampacity
    return ambient + (insulation - ambient) * share * share
