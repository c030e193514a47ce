"""A lithium bank as open-circuit voltage behind a resistance, both read by state of charge.

Current is positive when the bank discharges. Voltages, resistances and currents are those of whatever the
caller means, a cell or the whole bank, as long as all of one call are of the same thing.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.interpolation import Table, integral, interpolate

OHMIC_SHARE = 0.4  # of the resistance at 25 °C; the rest is charge transfer. From memory.
ACTIVATION_ENERGY = 39570.0  # J/mol, of the charge transfer
SLOWEST = 1e-12  # share of its difference that a body loses in a step, below which it loses none
GAS_CONSTANT = 8.314462618  # J/(mol K), SI 2019
TAPER = 5.0  # K inside the limits of temperature over which the charging current is brought down. From memory.


def open_circuit_voltage(charge: float, charge_points: Table, voltages: Table) -> float:
    """Open-circuit voltage at a state of charge.

    Parameters
    ----------
    charge : state of charge, 0 to 1
    charge_points : states of charge, rising
    voltages : V, at the points

    Returns
    -------
    V, held at the end values outside the points

    Raises
    ------
    Nothing.

    Source
    ------
    A table of rest voltages, e.g. that of the 2013 LFP parameter set of PyBaMM (Prada et al., J. Electrochem.
    Soc. 160 A616). Hysteresis is left out.

    Example
    -------
    >>> open_circuit_voltage(0.45, (0.40, 0.50), (3.253, 3.266))
    3.2595
    """
    return interpolate(charge, charge_points, voltages)


def resistance_factor(temperature: float) -> float:
    """Resistance of a lithium iron phosphate cell over its resistance at 25 °C.

    Parameters
    ----------
    temperature : °C, of the cells

    Returns
    -------
    ratio, 1 at 25 °C

    Raises
    ------
    OutOfRange
        temperature outside -60 to 120 °C, far beyond where such a cell may work.

    Source
    ------
    Charge transfer by Arrhenius with 39 570 J/mol, as in PyBaMM's 2013 LFP parameter set; that it is 60 % of
    the resistance at 25 °C, and that the ohmic 40 % does not change, are from memory.

    Example
    -------
    >>> resistance_factor(0.0)
    2.99
    """
    if temperature < -60.0 or temperature > 120.0:
        raise OutOfRange("temperature of the cells must be within -60 and 120 °C; found", temperature)
    exponent = ACTIVATION_ENERGY / GAS_CONSTANT * (1.0 / (temperature + 273.15) - 1.0 / 298.15)
    return OHMIC_SHARE + (1.0 - OHMIC_SHARE) * math.exp(exponent)


def bank_resistance(
    resistance: float, charge: float, charge_points: Table, factors: Table, temperature: float
) -> float:
    """Resistance of the bank at a state of charge and a temperature.

    Parameters
    ----------
    resistance : ohm, at 25 °C in mid charge
    charge : state of charge, 0 to 1
    charge_points : states of charge, rising
    factors : ratio to the resistance in mid charge, at the points
    temperature : °C, of the cells

    Returns
    -------
    ohm

    Raises
    ------
    OutOfRange
        resistance negative, or the temperature outside what `resistance_factor` allows.

    Source
    ------
    Product of the two factors: an assumption, that charge and temperature act independently.

    Example
    -------
    >>> bank_resistance(0.010, 0.5, (0.0, 0.5, 1.0), (1.6, 1.0, 1.1), 25.0)
    0.010
    """
    if resistance < 0.0:
        raise OutOfRange("resistance must not be negative; found", resistance)
    return resistance * interpolate(charge, charge_points, factors) * resistance_factor(temperature)


def terminal_voltage(current: float, open_circuit_voltage: float, resistance: float) -> float:
    """Voltage at the terminals while a current flows.

    Parameters
    ----------
    current : A, positive when discharging
    open_circuit_voltage : V
    resistance : ohm

    Returns
    -------
    V

    Raises
    ------
    Nothing.

    Source
    ------
    Kirchhoff: V = E - I R.

    Example
    -------
    >>> terminal_voltage(100.0, 26.0, 0.01)
    25.0
    """
    return open_circuit_voltage - current * resistance


def current_for_power(power: float, open_circuit_voltage: float, resistance: float) -> float:
    """Current at which the terminals carry a given power, solved exactly.

    Parameters
    ----------
    power : W at the terminals, positive when discharging
    open_circuit_voltage : V
    resistance : ohm, may be 0

    Returns
    -------
    A, positive when discharging: of the two roots the smaller, on which a real bank works

    Raises
    ------
    OutOfRange
        open-circuit voltage not positive, resistance negative, or a power beyond E²/(4 R), which no
        current gives.

    Source
    ------
    R I² - E I + P = 0, in the form 2 P / (E + sqrt(E² - 4 R P)) that loses no digits when R is small.

    Example
    -------
    >>> current_for_power(2500.0, 26.0, 0.01)
    100.0
    """
    if open_circuit_voltage <= 0.0:
        raise OutOfRange("open-circuit voltage must be positive; found", open_circuit_voltage)
    if resistance < 0.0:
        raise OutOfRange("resistance must not be negative; found", resistance)
    discriminant = open_circuit_voltage * open_circuit_voltage - 4.0 * resistance * power
    if discriminant < 0.0:
        raise OutOfRange("power must not pass what the bank can give, E²/(4 R); found", power)
    return 2.0 * power / (open_circuit_voltage + math.sqrt(discriminant))


def highest_power(open_circuit_voltage: float, resistance: float, current_limit: float, lowest_voltage: float) -> float:
    """Power that can be drawn without passing the current limit or the lowest terminal voltage.

    Parameters
    ----------
    open_circuit_voltage : V
    resistance : ohm, may be 0
    current_limit : A of discharge
    lowest_voltage : V at the terminals, where the bank disconnects

    Returns
    -------
    W, 0 when the open-circuit voltage itself is not above the lowest voltage

    Raises
    ------
    OutOfRange
        resistance or current limit negative.

    Source
    ------
    P = I (E - I R) at the least of the current limit, (E - lowest)/R and E/(2 R), where P peaks.

    Example
    -------
    >>> highest_power(26.0, 0.01, 200.0, 25.0)
    2500.0
    """
    if resistance < 0.0:
        raise OutOfRange("resistance must not be negative; found", resistance)
    if current_limit < 0.0:
        raise OutOfRange("current limit must not be negative; found", current_limit)
    room = open_circuit_voltage - max(lowest_voltage, 0.5 * open_circuit_voltage)
    if room <= 0.0:
        return 0.0
    current = current_limit
    if current * resistance > room:
        current = room / resistance
    return current * (open_circuit_voltage - current * resistance)


def acceptance(
    open_circuit_voltage: float,
    resistance: float,
    current_limit: float,
    absorb_voltage: float,
    temperature: float,
    lowest_temperature: float,
    highest_temperature: float,
) -> float:
    """Charge current that the bank takes: limited by current, then by voltage, whose decline is the tail.

    Parameters
    ----------
    open_circuit_voltage : V
    resistance : ohm, may be 0
    current_limit : A of charge
    absorb_voltage : V held at the terminals by whatever charges
    temperature : °C, of the cells
    lowest_temperature : °C, at and below which nothing is taken: charging cold plates lithium
    highest_temperature : °C, at and above which nothing is taken

    Returns
    -------
    A, 0 or more, counted positive into the bank

    Raises
    ------
    OutOfRange
        resistance or current limit negative.

    Source
    ------
    Constant current, then constant voltage: I = (V - E)/R. Limits of temperature as on cell and pack makers'
    sheets, mostly 0 and 45 °C; that the current comes down over the last 5 K is from memory.

    Example
    -------
    >>> acceptance(27.0, 0.01, 150.0, 28.0, 25.0, 0.0, 45.0)
    100.0
    """
    if resistance < 0.0:
        raise OutOfRange("resistance must not be negative; found", resistance)
    if current_limit < 0.0:
        raise OutOfRange("current limit must not be negative; found", current_limit)
    share = min(1.0, (temperature - lowest_temperature) / TAPER, (highest_temperature - temperature) / TAPER)
    room = absorb_voltage - open_circuit_voltage
    if room <= 0.0 or share <= 0.0:
        return 0.0
    if current_limit * share * resistance > room:
        return room / resistance
    return current_limit * share


def stored_energy(charge: float, charge_points: Table, voltages: Table, capacity: float) -> float:
    """Energy held between empty and a state of charge, at no current.

    Parameters
    ----------
    charge : state of charge, 0 to 1
    charge_points : states of charge, rising
    voltages : V, open circuit, at the points
    capacity : A s

    Returns
    -------
    J, the exact integral of `open_circuit_voltage`

    Raises
    ------
    OutOfRange
        capacity not positive.

    Source
    ------
    E = Q ∫ U dz, with U piecewise linear.

    Example
    -------
    >>> stored_energy(1.0, (0.0, 1.0), (3.0, 3.4), 360_000.0)
    1152000.0
    """
    if capacity <= 0.0:
        raise OutOfRange("capacity must be positive; found", capacity)
    return capacity * integral(charge, charge_points, voltages)


def change_of_charge(current: float, duration: float, capacity: float) -> float:
    """Change of the state of charge, counted in ampere-seconds.

    Parameters
    ----------
    current : A, positive when discharging
    duration : s
    capacity : A s

    Returns
    -------
    share of the capacity, negative when discharging

    Raises
    ------
    OutOfRange
        capacity not positive.

    Source
    ------
    Charge conservation, with a coulombic efficiency of 1 (Batteries 2019 5(3) 57: close to 1 even at 0.8 C).

    Example
    -------
    >>> change_of_charge(10.0, 3600.0, 360_000.0)
    -0.1
    """
    if capacity <= 0.0:
        raise OutOfRange("capacity must be positive; found", capacity)
    return -current * duration / capacity


def bank_temperature(
    temperature: float, surroundings: float, loss: float, heat_capacity: float, conductance: float, step: float
) -> float:
    """Temperature of the cells after a time with a constant loss in them, exactly.

    Parameters
    ----------
    temperature : °C, at the start
    surroundings : °C, of the air round the modules
    loss : W turned into heat in them
    heat_capacity : J/K of all modules
    conductance : W/K from the cells to the surroundings, 0 or more
    step : s

    Returns
    -------
    °C

    Raises
    ------
    OutOfRange
        heat capacity not positive, or conductance negative.

    Source
    ------
    One lump: C dT/dt = loss - G (T - surroundings).

    Example
    -------
    >>> bank_temperature(30.0, 30.0, 100.0, 100e3, 10.0, 3600.0)
    33.0
    """
    if heat_capacity <= 0.0:
        raise OutOfRange("heat capacity must be positive; found", heat_capacity)
    if conductance < 0.0:
        raise OutOfRange("conductance must not be negative; found", conductance)
    share = conductance * step / heat_capacity
    lasting = -math.expm1(-share) / share if share > SLOWEST else 1.0
    return temperature + (loss - conductance * (temperature - surroundings)) * lasting * step / heat_capacity
