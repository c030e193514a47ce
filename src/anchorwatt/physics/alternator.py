"""An alternator: what it gives by speed and heat, what it asks of the shaft, how hot it gets.

The loss model has three parts, scaled so that the reference point comes out right:

    rectifier      1.8 V x I                            two of six diodes in series, about 0.9 V each
    copper         share of the rest, x I² x resistance of copper at the winding's temperature
    turning        the remainder, x (field share + speed share x (n / n_reference)^1.5)

Reference point: half the rated current, 6000 rpm of the rotor, windings at 25 °C; one of the four points of
the EU's efficiency test to ISO 8854. The thermal model has two nodes, winding and frame.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.interpolation import Table, interpolate

REFERENCE_SPEED = 6000.0 * 2.0 * math.pi / 60.0  # rad/s of the rotor
REFERENCE_SHARE = 0.5  # of the rated current
COLD_WINDING = 25.0  # °C
HOT_WINDING = 120.0  # °C, at which the hot loss is stated
LOWEST_HOT_FACTOR = 0.2
RECTIFIER_DROP = 1.8  # V; two silicon diodes in series carry the whole current. From memory.
COPPER_COEFFICIENT = 0.00393  # 1/K from 20 °C, annealed copper (IEC 60028)
COPPER_SHARE = 0.6  # of the losses at the reference point, rectifier left out. From memory.
FIELD_SHARE = 0.2  # of the turning losses at the reference point: excitation, at any speed. From memory.
TURNING_EXPONENT = 1.5  # of iron, windage, friction: hysteresis alone 1, eddy currents 2. From memory.
WINDING_SHARE = 0.6  # of all heat: stator copper and the iron round it; the rest is rectifier and rotor
FAN_EXPONENT = 0.7  # of forced convection, between laminar (0.5) and turbulent (0.8)
STILL_AIR = 0.12  # of the rated cooling, by still air, radiation and the bracket. From memory.
STRONGEST_COOLING = 2.0  # of the rated cooling: the fan's flow stops growing with speed


def cold_current(speed: float, speeds: Table, currents: Table, rated_current: float) -> float:
    """Current that a cold alternator can give at a rotor speed.

    Parameters
    ----------
    speed : rad/s of the rotor
    speeds : rad/s, rising; below the first the machine does not excite
    currents : shares of the rated current, at those speeds
    rated_current : A

    Returns
    -------
    A

    Raises
    ------
    OutOfRange
        speed or rated current negative.

    Source
    ------
    The maker's cold curve (ISO 8854), read linearly.

    Example
    -------
    >>> cold_current(250.0, (100.0, 200.0, 300.0), (0.0, 0.6, 0.8), 150.0)
    105.0
    """
    if speed < 0.0:
        raise OutOfRange("rotor speed must not be negative; found", speed)
    if rated_current < 0.0:
        raise OutOfRange("rated current must not be negative; found", rated_current)
    if speed < speeds[0]:
        return 0.0
    return rated_current * interpolate(speed, speeds, currents)


def hot_factor(winding_temperature: float, hot_loss: float) -> float:
    """What heat leaves of the cold output.

    Parameters
    ----------
    winding_temperature : °C
    hot_loss : share of the output lost with the winding at 120 °C

    Returns
    -------
    ratio: 1 at and below 25 °C, linear through 1 - hot_loss at 120 °C, never below 0.2

    Raises
    ------
    OutOfRange
        hot_loss outside 0 to 1.

    Source
    ------
    Linear between the cold and the hot curve that makers print; common practice, no source.

    Example
    -------
    >>> hot_factor(120.0, 0.25)
    0.75
    """
    if hot_loss < 0.0 or hot_loss > 1.0:
        raise OutOfRange("hot loss must be within 0 and 1; found", hot_loss)
    factor = 1.0 - hot_loss * (winding_temperature - COLD_WINDING) / (HOT_WINDING - COLD_WINDING)
    return max(LOWEST_HOT_FACTOR, min(1.0, factor))


def scaled_drop(voltage: float, efficiency: float) -> float:
    """Losses at the reference point for each ampere, the rectifier left out.

    Parameters
    ----------
    voltage : V, at regulation
    efficiency : output over shaft power at the reference point

    Returns
    -------
    V (W for each A)

    Raises
    ------
    OutOfRange
        voltage not positive, or an efficiency that is not positive or leaves no room for the rectifier's
        drop: at 14.3 V it must lie below 89 %.

    Source
    ------
    Definition of efficiency: losses for each ampere = V (1/efficiency - 1).

    Example
    -------
    >>> scaled_drop(14.3, 0.67)
    5.24
    """
    if voltage <= 0.0:
        raise OutOfRange("voltage must be positive; found", voltage)
    if efficiency <= 0.0:
        raise OutOfRange("efficiency must be positive; found", efficiency)
    drop = voltage * (1.0 / efficiency - 1.0) - RECTIFIER_DROP
    if drop <= 0.0:
        raise OutOfRange("efficiency must leave room for a rectifier drop of 1.8 V; found", efficiency)
    return drop


def copper_resistance(voltage: float, winding_temperature: float, rated_current: float, efficiency: float) -> float:
    """Resistance that, carrying the output current, has the copper losses of the windings.

    Parameters
    ----------
    voltage : V, at regulation
    winding_temperature : °C
    rated_current : A
    efficiency : at the reference point

    Returns
    -------
    ohm

    Raises
    ------
    OutOfRange
        rated current not positive, winding temperature outside -100 to 400 °C, or as `scaled_drop`.

    Source
    ------
    Joule's law with the temperature coefficient of annealed copper, 0.00393 1/K from 20 °C (IEC 60028).

    Example
    -------
    >>> copper_resistance(14.3, 25.0, 100.0, 0.67)
    0.0629
    """
    if rated_current <= 0.0:
        raise OutOfRange("rated current must be positive; found", rated_current)
    if winding_temperature < -100.0 or winding_temperature > 400.0:
        raise OutOfRange("winding temperature must be within -100 and 400 °C; found", winding_temperature)
    cold = COPPER_SHARE * scaled_drop(voltage, efficiency) / (REFERENCE_SHARE * rated_current)
    hot = 1.0 + COPPER_COEFFICIENT * (winding_temperature - 20.0)
    return cold * hot / (1.0 + COPPER_COEFFICIENT * (COLD_WINDING - 20.0))


def turning_losses(voltage: float, speed: float, rated_current: float, efficiency: float) -> float:
    """Losses that do not depend on the output current: excitation, iron, windage and friction.

    Parameters
    ----------
    voltage : V, at regulation
    speed : rad/s of the rotor
    rated_current : A
    efficiency : at the reference point

    Returns
    -------
    W; excitation is counted even when no current is drawn, which costs a little too much at idle

    Raises
    ------
    OutOfRange
        speed negative, rated current not positive, or as `scaled_drop`.

    Source
    ------
    Iron losses between the first power of speed (hysteresis) and the second (eddy currents); from memory.

    Example
    -------
    >>> turning_losses(14.3, REFERENCE_SPEED, 100.0, 0.67)
    104.9
    """
    if speed < 0.0:
        raise OutOfRange("rotor speed must not be negative; found", speed)
    if rated_current <= 0.0:
        raise OutOfRange("rated current must be positive; found", rated_current)
    reference = (1.0 - COPPER_SHARE) * scaled_drop(voltage, efficiency) * REFERENCE_SHARE * rated_current
    turning = math.pow(speed / REFERENCE_SPEED, TURNING_EXPONENT)
    return reference * (FIELD_SHARE + (1.0 - FIELD_SHARE) * turning)


def alternator_losses(
    current: float,
    voltage: float,
    speed: float,
    winding_temperature: float,
    rated_current: float,
    efficiency: float,
) -> float:
    """Power that an alternator turns into heat.

    Parameters
    ----------
    current : A of output
    voltage : V, at regulation
    speed : rad/s of the rotor
    winding_temperature : °C
    rated_current : A
    efficiency : output over shaft power at half the rated current, 6000 rpm, winding at 25 °C; 0.67 is the
        baseline of Decision (EU) 2017/785

    Returns
    -------
    W

    Raises
    ------
    OutOfRange
        current or speed negative, a value not positive, or as `scaled_drop` and `copper_resistance`.

    Source
    ------
    Sum of rectifier, copper and turning losses; see the head of this module.

    Example
    -------
    >>> alternator_losses(50.0, 14.3, REFERENCE_SPEED, 25.0, 100.0, 0.67)
    352.2
    """
    if current < 0.0:
        raise OutOfRange("current must not be negative; found", current)
    copper = copper_resistance(voltage, winding_temperature, rated_current, efficiency) * current * current
    return RECTIFIER_DROP * current + copper + turning_losses(voltage, speed, rated_current, efficiency)


def shaft_power(
    current: float,
    voltage: float,
    speed: float,
    winding_temperature: float,
    rated_current: float,
    efficiency: float,
) -> float:
    """Power that an alternator takes from its shaft.

    Parameters
    ----------
    current : A of output
    voltage : V, at regulation
    speed : rad/s of the rotor
    winding_temperature : °C
    rated_current : A
    efficiency : at the reference point

    Returns
    -------
    W

    Raises
    ------
    OutOfRange
        as `alternator_losses`.

    Source
    ------
    Balance: output and losses.

    Example
    -------
    >>> shaft_power(50.0, 14.3, REFERENCE_SPEED, 25.0, 100.0, 0.67) / 50.0
    21.3
    """
    losses = alternator_losses(current, voltage, speed, winding_temperature, rated_current, efficiency)
    return current * voltage + losses


def current_for_shaft_power(
    power: float,
    voltage: float,
    speed: float,
    winding_temperature: float,
    rated_current: float,
    efficiency: float,
) -> float:
    """Current at which an alternator takes a given power from its shaft: the inverse of `shaft_power`.

    Parameters
    ----------
    power : W at the shaft, e.g. what the belt or the engine allows
    voltage : V, at regulation
    speed : rad/s of the rotor
    winding_temperature : °C
    rated_current : A
    efficiency : at the reference point

    Returns
    -------
    A, 0 when the power does not cover the turning losses; not limited to what the machine can give

    Raises
    ------
    OutOfRange
        as `shaft_power`.

    Source
    ------
    The positive root of R I² + (V + drop) I + turning losses - P = 0.

    Example
    -------
    >>> current_for_shaft_power(1067.2, 14.3, REFERENCE_SPEED, 25.0, 100.0, 0.67)
    50.0
    """
    left = power - turning_losses(voltage, speed, rated_current, efficiency)
    if left <= 0.0:
        return 0.0
    resistance = copper_resistance(voltage, winding_temperature, rated_current, efficiency)
    slope = voltage + RECTIFIER_DROP
    return 2.0 * left / (slope + math.sqrt(slope * slope + 4.0 * resistance * left))


def frame_cooling(conductance: float, speed: float, rated_speed: float) -> float:
    """Heat that the frame gives to the air round it for each kelvin, by its fan and by itself.

    Parameters
    ----------
    conductance : W/K at the rated speed
    speed : rad/s of the rotor
    rated_speed : rad/s of the rotor at which the conductance is stated

    Returns
    -------
    W/K, between 0.12 and 2 times the stated one

    Raises
    ------
    OutOfRange
        speed negative, or conductance or rated speed not positive.

    Source
    ------
    Forced convection by a fan on the shaft, speed^0.7; floor and cap from memory.

    Example
    -------
    >>> frame_cooling(10.0, 314.16, 628.32)
    6.16
    """
    if conductance <= 0.0:
        raise OutOfRange("conductance must be positive; found", conductance)
    if rated_speed <= 0.0:
        raise OutOfRange("rated speed must be positive; found", rated_speed)
    if speed < 0.0:
        raise OutOfRange("rotor speed must not be negative; found", speed)
    share = math.pow(speed / rated_speed, FAN_EXPONENT)
    return conductance * max(STILL_AIR, min(STRONGEST_COOLING, share))


def winding_heat(losses: float) -> float:
    """Part of the losses that heats the winding: stator copper and the iron that it lies in.

    Parameters
    ----------
    losses : W

    Returns
    -------
    W

    Raises
    ------
    Nothing.

    Source
    ------
    A share of 0.6, rounded from the split at the reference point: copper 45 % and half of iron and windage.

    Example
    -------
    >>> winding_heat(1000.0)
    600.0
    """
    return WINDING_SHARE * losses


def frame_heat(losses: float) -> float:
    """Part of the losses that heats the frame: rectifier, rotor, bearings.

    Parameters
    ----------
    losses : W

    Returns
    -------
    W, what `winding_heat` leaves

    Raises
    ------
    Nothing.

    Source
    ------
    Balance with `winding_heat`.

    Example
    -------
    >>> frame_heat(1000.0)
    400.0
    """
    return losses - winding_heat(losses)


def steady_temperatures(
    air: float,
    winding_heat: float,
    frame_heat: float,
    winding_conductance: float,
    frame_conductance: float,
) -> tuple[float, float]:
    """Temperatures of winding and frame after a long time with the same heat.

    Parameters
    ----------
    air : °C round the alternator
    winding_heat : W
    frame_heat : W
    winding_conductance : W/K, winding to frame
    frame_conductance : W/K, frame to air

    Returns
    -------
    °C of the winding, °C of the frame

    Raises
    ------
    OutOfRange
        a conductance not positive.

    Source
    ------
    All heat leaves through the frame; the winding's own passes to the frame first.

    Example
    -------
    >>> steady_temperatures(50.0, 600.0, 400.0, 20.0, 20.0)
    (130.0, 100.0)
    """
    if winding_conductance <= 0.0:
        raise OutOfRange("conductance from winding to frame must be positive; found", winding_conductance)
    if frame_conductance <= 0.0:
        raise OutOfRange("conductance from frame to air must be positive; found", frame_conductance)
    frame = air + (winding_heat + frame_heat) / frame_conductance
    return frame + winding_heat / winding_conductance, frame


def alternator_temperatures(
    winding: float,
    frame: float,
    air: float,
    winding_heat: float,
    frame_heat: float,
    winding_conductance: float,
    frame_conductance: float,
    winding_capacity: float,
    frame_capacity: float,
    step: float,
) -> tuple[float, float]:
    """Temperatures of winding and frame after a time with constant heat, exactly.

    Being the exact solution, it is the same in one step or in many, never swings, and conserves energy to
    rounding: heat given = heat stored + heat passed to the air through the step.

    Parameters
    ----------
    winding : °C at the start
    frame : °C at the start
    air : °C round the alternator
    winding_heat : W
    frame_heat : W
    winding_conductance : W/K, winding to frame
    frame_conductance : W/K, frame to air
    winding_capacity : J/K
    frame_capacity : J/K
    step : s

    Returns
    -------
    °C of the winding, °C of the frame

    Raises
    ------
    OutOfRange
        a conductance or capacity not positive, or step negative.

    Source
    ------
    Two linear first-order equations, solved by the exponential of their 2 x 2 matrix.

    Example
    -------
    >>> alternator_temperatures(50.0, 50.0, 50.0, 600.0, 400.0, 20.0, 20.0, 4000.0, 12000.0, 600.0)
    (94.76, 73.10)
    """
    if winding_capacity <= 0.0:
        raise OutOfRange("heat capacity of the winding must be positive; found", winding_capacity)
    if frame_capacity <= 0.0:
        raise OutOfRange("heat capacity of the frame must be positive; found", frame_capacity)
    if step < 0.0:
        raise OutOfRange("step must not be negative; found", step)
    last_winding, last_frame = steady_temperatures(
        air, winding_heat, frame_heat, winding_conductance, frame_conductance
    )
    # x' = A x for the distances x from the steady state, A = [[-a, a], [b, -(b + c)]].
    a = winding_conductance / winding_capacity
    b = winding_conductance / frame_capacity
    c = frame_conductance / frame_capacity
    mean = -0.5 * (a + b + c)
    spread = math.sqrt(0.25 * (a - b - c) * (a - b - c) + a * b)
    # The product of both rates is a c: dividing keeps the digits of the slow one, a subtraction loses them.
    slow = math.exp(-a * c / (spread - mean) * step)
    fast = math.exp((mean - spread) * step)
    even = 0.5 * (slow + fast)
    odd = -slow * math.expm1(-2.0 * spread * step) / (2.0 * spread)
    away_winding = winding - last_winding
    away_frame = frame - last_frame
    new_winding = even * away_winding + odd * ((-a - mean) * away_winding + a * away_frame)
    new_frame = even * away_frame + odd * (b * away_winding + (-b - c - mean) * away_frame)
    return last_winding + new_winding, last_frame + new_frame


def fold_back(frame_temperature: float, hold_temperature: float, band: float) -> float:
    """Share of the output that the regulator leaves when the frame is hot.

    Parameters
    ----------
    frame_temperature : °C
    hold_temperature : °C at which the regulator begins to fold back
    band : K over which it folds back to nothing; 0 makes it a switch

    Returns
    -------
    share: 1 up to the hold temperature, 0 from hold plus band on, linear between

    Raises
    ------
    OutOfRange
        band negative.

    Source
    ------
    Proportional control, common practice for regulators with a temperature probe, no source.

    Example
    -------
    >>> fold_back(105.0, 100.0, 10.0)
    0.5
    """
    if band < 0.0:
        raise OutOfRange("band must not be negative; found", band)
    if frame_temperature <= hold_temperature:
        return 1.0
    if frame_temperature >= hold_temperature + band:
        return 0.0
    return 1.0 - (frame_temperature - hold_temperature) / band
