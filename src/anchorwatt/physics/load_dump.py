"""Load dump: an alternator at full output loses the battery that held its voltage down.

Its field takes tenths of a second to die away, and until then it drives its current into whatever is left. ISO 16750-2
describes that as a voltage source that decays, behind a resistance.
"""

from __future__ import annotations

import math

from anchorwatt.errors import OutOfRange

LOWEST_NOMINAL, HIGHEST_NOMINAL = 10.0, 32.0
"""V nominal between which the standard's 12 and 24 V systems lie, with margin."""

UNSUPPRESSED = {12: (79.0, 101.0), 24: (151.0, 202.0)}
"""V, lowest and highest peak of a machine without suppression."""
SUPPRESSED = {12: 35.0, 24: 58.0}
"""V, to which a suppressor in the machine holds it."""
DURATION = {12: (0.040, 0.400), 24: (0.100, 0.350)}
"""s, shortest and longest, to a tenth of the peak over the running voltage."""


def _system(nominal_voltage: float) -> int:
    if nominal_voltage < LOWEST_NOMINAL or nominal_voltage > HIGHEST_NOMINAL:
        raise OutOfRange("ISO 16750-2 tells of 12 and 24 V systems; found", nominal_voltage)
    return 12 if nominal_voltage < 18.0 else 24


def source_resistance(nominal_voltage: float, speed: float, rated_current: float) -> float:
    """Resistance behind an alternator that loses its battery.

    Parameters
    ----------
    nominal_voltage : V
    speed : rad/s of the rotor
    rated_current : A

    Returns
    -------
    ohm

    Raises
    ------
    OutOfRange
        voltage or rated current not positive, or speed negative.

    Source
    ------
    ISO 16750-2, load dump: Ri = 10 Un n / (0.8 IR 12000), n in revolutions a minute; read second-hand.

    Example
    -------
    >>> source_resistance(12.0, 4000 * 2 * math.pi / 60, 200.0)
    0.25
    """
    if nominal_voltage <= 0.0:
        raise OutOfRange("voltage must be positive; found", nominal_voltage)
    if rated_current <= 0.0:
        raise OutOfRange("rated current must be positive; found", rated_current)
    if speed < 0.0:
        raise OutOfRange("rotor speed must not be negative; found", speed)
    return 10.0 * nominal_voltage * (speed * 30.0 / math.pi) / (0.8 * rated_current * 12_000.0)


def unsuppressed_peak(nominal_voltage: float) -> float:
    """Highest voltage of a load dump that nothing holds down. Not for the kernel.

    Parameters
    ----------
    nominal_voltage : V, of a 12 or a 24 V system

    Returns
    -------
    V, the upper end of the standard's range

    Raises
    ------
    OutOfRange
        another system: the standard says nothing of 48 V.

    Source
    ------
    ISO 16750-2, test A: 79 to 101 V at 12 V, 151 to 202 V at 24 V; read second-hand.

    Example
    -------
    >>> unsuppressed_peak(24.0)
    202.0
    """
    return UNSUPPRESSED[_system(nominal_voltage)][1]


def suppressed_peak(nominal_voltage: float) -> float:
    """Voltage to which a suppressor holds a load dump. Not for the kernel.

    Parameters
    ----------
    nominal_voltage : V, of a 12 or a 24 V system

    Returns
    -------
    V, that equipment for such a system is tested with

    Raises
    ------
    OutOfRange
        another system: the standard says nothing of 48 V.

    Source
    ------
    ISO 16750-2, test B: 35 V at 12 V, about 58 V at 24 V; read second-hand.

    Example
    -------
    >>> suppressed_peak(12.0)
    35.0
    """
    return SUPPRESSED[_system(nominal_voltage)]


def longest_dump(nominal_voltage: float) -> float:
    """How long a load dump lasts at most. Not for the kernel.

    Parameters
    ----------
    nominal_voltage : V, of a 12 or a 24 V system

    Returns
    -------
    s, until a tenth of the rise is left

    Raises
    ------
    OutOfRange
        another system: the standard says nothing of 48 V.

    Source
    ------
    ISO 16750-2, test A: 40 to 400 ms at 12 V, 100 to 350 ms at 24 V; read second-hand.

    Example
    -------
    >>> longest_dump(12.0)
    0.4
    """
    return DURATION[_system(nominal_voltage)][1]


def voltage_across(peak: float, source_resistance: float, load_resistance: float) -> float:
    """Voltage of a load dump across what is still connected.

    Parameters
    ----------
    peak : V of the source
    source_resistance : ohm
    load_resistance : ohm; infinite when nothing is left

    Returns
    -------
    V

    Raises
    ------
    OutOfRange
        a resistance negative, or both 0.

    Source
    ------
    Voltage divider.

    Example
    -------
    >>> voltage_across(100.0, 0.25, 0.25)
    50.0
    """
    if source_resistance < 0.0:
        raise OutOfRange("source resistance must not be negative; found", source_resistance)
    if load_resistance < 0.0 or load_resistance + source_resistance <= 0.0:
        raise OutOfRange("load resistance must be positive; found", load_resistance)
    if math.isinf(load_resistance):
        return peak
    return peak * load_resistance / (load_resistance + source_resistance)


def clamped_energy(
    peak: float, running_voltage: float, source_resistance: float, clamp_voltage: float, duration: float
) -> float:
    """Energy that a clamp must take while it holds a load dump down.

    Parameters
    ----------
    peak : V of the source at the start
    running_voltage : V before, to which the source decays
    source_resistance : ohm
    clamp_voltage : V that the clamp holds
    duration : s until a tenth of the rise is left

    Returns
    -------
    J; 0 when the clamp lies above the peak

    Raises
    ------
    OutOfRange
        resistance or duration not positive, or a clamp not above the running voltage.

    Source
    ------
    Exponential decay u(t) = UA + (US - UA) e^(-t ln 10 / td) of ISO 16750-2, and the clamp's power
    UC (u - UC) / Ri, integrated until u has fallen to UC.

    Example
    -------
    >>> clamped_energy(101.0, 14.0, 0.5, 35.0, 0.4)
    439.6
    """
    if source_resistance <= 0.0:
        raise OutOfRange("source resistance must be positive; found", source_resistance)
    if duration <= 0.0:
        raise OutOfRange("duration must be positive; found", duration)
    if clamp_voltage <= running_voltage:
        raise OutOfRange("a clamp must lie above the running voltage; found", clamp_voltage)
    if peak <= clamp_voltage:
        return 0.0
    decay = duration / math.log(10.0)
    rise, over = peak - running_voltage, clamp_voltage - running_voltage
    last = decay * math.log(rise / over)
    return clamp_voltage / source_resistance * (decay * (rise - over) - over * last)
