"""One step of the electrical side: buses, bank, and alternators on their engines.

Plain functions that the kernel and the tests both call. Powers in W at the place named, currents positive
out of the bank.
"""

from __future__ import annotations

from anchorwatt.physics.alternator import (
    alternator_losses,
    alternator_temperatures,
    cold_current,
    current_for_shaft_power,
    fold_back,
    frame_cooling,
    frame_heat,
    hot_factor,
    shaft_power,
    winding_heat,
)
from anchorwatt.physics.battery import (
    acceptance,
    bank_resistance,
    current_for_power,
    highest_power,
    open_circuit_voltage,
    stored_energy,
)
from anchorwatt.physics.belt import belt_power_limit
from anchorwatt.physics.inverter import converter_input
from anchorwatt.physics.transformer import transformer_input
from anchorwatt.simulation.arrays import (
    ALTERNATOR_BAND,
    ALTERNATOR_BELT_POWER,
    ALTERNATOR_BELT_SPEED,
    ALTERNATOR_CURRENT,
    ALTERNATOR_EFFICIENCY,
    ALTERNATOR_FRAME_CAPACITY,
    ALTERNATOR_FRAME_CONDUCTANCE,
    ALTERNATOR_HOLD,
    ALTERNATOR_HOT_LOSS,
    ALTERNATOR_LIMIT,
    ALTERNATOR_RATED_SPEED,
    ALTERNATOR_WINDING_CAPACITY,
    ALTERNATOR_WINDING_CONDUCTANCE,
    BANK_ABSORB,
    BANK_CAPACITY,
    BANK_CHARGE_CURRENT,
    BANK_COLDEST,
    BANK_COLDEST_CHARGE,
    BANK_CUT_OFF_VOLTAGE,
    BANK_DISCHARGE_CURRENT,
    BANK_HOTTEST,
    BANK_HOTTEST_CHARGE,
    BANK_RESISTANCE,
    INVERTER_LINEAR,
    INVERTER_NO_LOAD,
    INVERTER_QUADRATIC,
    INVERTER_RATED,
    INVERTER_SLEEP,
    Floats,
)

# What holds an alternator's output, in the order in which ties are told.
HELD_BY_NOTHING, HELD_BY_BANK, HELD_BY_SETTING, HELD_BY_TEMPERATURE, HELD_BY_BELT, HELD_BY_ENGINE = (
    0,
    1,
    2,
    3,
    4,
    5,
)

BISECTIONS = 30
LEAST_PASSED = 1e-6
"""Change of charge below which the mean of the open-circuit voltage is that at its middle."""


def transformer_power(output: float, transformer: Floats) -> float:
    """W into the transformer, or the load itself where there is none (rated 0)."""
    if transformer[0] <= 0.0:
        return output
    return transformer_input(output, transformer[0], transformer[1], transformer[2])


def inverter_power(output: float, inverter: Floats) -> float:
    """W from the DC bus; an inverter with no load sleeps."""
    if output <= 0.0:
        asleep: float = inverter[INVERTER_SLEEP]
        return asleep
    return converter_input(
        output,
        inverter[INVERTER_RATED],
        inverter[INVERTER_NO_LOAD],
        inverter[INVERTER_LINEAR],
        inverter[INVERTER_QUADRATIC],
    )


def bank_point(
    charge: float,
    temperature: float,
    bank: Floats,
    points: Floats,
    voltages: Floats,
    factors: Floats,
    resistance_factor: float,
) -> tuple[float, float]:
    """Open-circuit voltage V and resistance ohm at a state of charge and a temperature of the cells."""
    voltage = open_circuit_voltage(charge, points, voltages)
    resistance = bank_resistance(bank[BANK_RESISTANCE] * resistance_factor, charge, points, factors, temperature)
    return voltage, resistance


def bank_step(
    charge: float,
    power: float,
    step: float,
    capacity: float,
    temperature: float,
    bank: Floats,
    points: Floats,
    voltages: Floats,
    factors: Floats,
    resistance_factor: float,
) -> tuple[float, float, float, float]:
    """Take `power` W from the bank's terminals (negative: put it in) for `step` s.

    The open-circuit voltage is the mean over the charge that passes, found by iteration, so that the energy
    taken from store is exactly the integral of the curve.

    Returns
    -------
    charge after the step, current A (mean), terminal voltage V, loss in the bank W
    """
    after = charge
    current, voltage, resistance = 0.0, 0.0, 0.0
    before = stored_energy(charge, points, voltages, capacity)
    for _ in range(6):
        voltage, resistance = bank_point(
            0.5 * (charge + after), temperature, bank, points, voltages, factors, resistance_factor
        )
        if abs(after - charge) > LEAST_PASSED:
            voltage = (stored_energy(after, points, voltages, capacity) - before) / (capacity * (after - charge))
        current = current_for_power(power, voltage, resistance)
        new = charge - current * step / capacity
        settled = abs(new - after) < 1e-13
        after = new
        if settled:
            break
    return after, current, voltage - current * resistance, current * current * resistance


def bank_capacity(bank: Floats, capacity_factor: float) -> float:
    """A·s that the bank holds."""
    capacity: float = bank[BANK_CAPACITY] * capacity_factor
    return capacity


def _held_voltage(
    charge: float,
    current: float,
    temperature: float,
    bank: Floats,
    points: Floats,
    voltages: Floats,
    factors: Floats,
    resistance_factor: float,
) -> float:
    """V at the terminals while A flow into a bank."""
    voltage, resistance = bank_point(charge, temperature, bank, points, voltages, factors, resistance_factor)
    return voltage + current * resistance


def bank_limits(
    charge: float,
    step: float,
    capacity: float,
    temperature: float,
    bank: Floats,
    points: Floats,
    voltages: Floats,
    factors: Floats,
    resistance_factor: float,
) -> tuple[float, float, float]:
    """What the bank may give and take through a step; never more than is in it, or has room in it.

    Returns
    -------
    W that may be drawn, A that it accepts, and W at its terminals when it takes them
    """
    voltage, resistance = bank_point(charge, temperature, bank, points, voltages, factors, resistance_factor)
    gives = highest_power(voltage, resistance, bank[BANK_DISCHARGE_CURRENT], bank[BANK_CUT_OFF_VOLTAGE])
    if temperature < bank[BANK_COLDEST] or temperature > bank[BANK_HOTTEST]:
        gives = 0.0
    gives = min(gives, max(0.0, charge) * capacity / step * bank[BANK_CUT_OFF_VOLTAGE])
    takes = acceptance(
        voltage,
        resistance,
        bank[BANK_CHARGE_CURRENT],
        bank[BANK_ABSORB],
        temperature,
        bank[BANK_COLDEST_CHARGE],
        bank[BANK_HOTTEST_CHARGE],
    )
    takes = min(takes, max(0.0, 1.0 - charge) * capacity / step)
    low, high = 0.0, takes
    if takes > 0.0 and _held_voltage(charge + takes * step / capacity, takes, temperature, bank, points, voltages,
                                     factors, resistance_factor) > bank[BANK_ABSORB]:  # fmt: skip
        # The step's own charge lifts the voltage: take what leaves it at the absorb voltage when the step ends.
        for _ in range(BISECTIONS):
            takes = 0.5 * (low + high)
            if _held_voltage(charge + takes * step / capacity, takes, temperature, bank, points, voltages, factors,
                             resistance_factor) > bank[BANK_ABSORB]:  # fmt: skip
                high = takes
            else:
                low = takes
        takes = low
    return gives, takes, takes * (voltage + takes * resistance)


def heated(
    current: float,
    voltage: float,
    speed: float,
    winding: float,
    frame: float,
    air: float,
    step: float,
    machine: Floats,
) -> tuple[float, float]:
    """Winding and frame temperature after a step at that current, °C."""
    losses = 0.0
    if current > 0.0:
        losses = alternator_losses(
            current, voltage, speed, winding, machine[ALTERNATOR_CURRENT], machine[ALTERNATOR_EFFICIENCY]
        )
    cooling = frame_cooling(machine[ALTERNATOR_FRAME_CONDUCTANCE], speed, machine[ALTERNATOR_RATED_SPEED])
    return alternator_temperatures(
        winding,
        frame,
        air,
        winding_heat(losses),
        frame_heat(losses),
        machine[ALTERNATOR_WINDING_CONDUCTANCE],
        cooling,
        machine[ALTERNATOR_WINDING_CAPACITY],
        machine[ALTERNATOR_FRAME_CAPACITY],
        step,
    )


def alternator_current(
    wanted: float,
    voltage: float,
    speed: float,
    spare: float,
    winding: float,
    frame: float,
    air: float,
    step: float,
    machine: Floats,
    speeds: Floats,
    currents: Floats,
) -> tuple[float, int]:
    """What the regulator lets the alternator give through a step.

    The least of what is wanted, the curve at this speed and winding temperature, the setting, the belt's and
    the engine's power, and the fold-back at the frame temperature that the step itself would reach.

    Parameters
    ----------
    wanted : A that bank and loads would take from this machine
    voltage : V
    speed : rad/s of the rotor
    spare : W of shaft power that the engine leaves for this machine
    winding, frame, air : °C at the start of the step
    step : s
    machine, speeds, currents : rows of `Boat.alternator` and its curve

    Returns
    -------
    A, and what held it (HELD_BY_…)
    """
    rated = machine[ALTERNATOR_CURRENT]
    able = cold_current(speed, speeds, currents, rated) * hot_factor(winding, machine[ALTERNATOR_HOT_LOSS])
    least, held = able, HELD_BY_NOTHING
    if machine[ALTERNATOR_LIMIT] < least:
        least, held = machine[ALTERNATOR_LIMIT], HELD_BY_SETTING
    belt = belt_power_limit(machine[ALTERNATOR_BELT_POWER], machine[ALTERNATOR_BELT_SPEED], speed)
    if least > 0.0 and shaft_power(least, voltage, speed, winding, rated, machine[ALTERNATOR_EFFICIENCY]) > min(
        belt, spare
    ):
        at_power = current_for_shaft_power(
            min(belt, spare), voltage, speed, winding, rated, machine[ALTERNATOR_EFFICIENCY]
        )
        least = min(least, at_power)
        held = HELD_BY_BELT if belt <= spare else HELD_BY_ENGINE
    unfolded = least
    _, after = heated(unfolded, voltage, speed, winding, frame, air, step, machine)
    if least > 0.0 and fold_back(after, machine[ALTERNATOR_HOLD], machine[ALTERNATOR_BAND]) < 1.0:
        # Fold-back acts faster than a step: find the share that agrees with the temperature it leads to.
        low, high = 0.0, 1.0
        for _ in range(30):
            share = 0.5 * (low + high)
            _, after = heated(share * unfolded, voltage, speed, winding, frame, air, step, machine)
            if fold_back(after, machine[ALTERNATOR_HOLD], machine[ALTERNATOR_BAND]) >= share:
                low = share
            else:
                high = share
        least = low * unfolded
        held = HELD_BY_TEMPERATURE
    if wanted < least:
        return max(0.0, wanted), HELD_BY_BANK
    return least, held
