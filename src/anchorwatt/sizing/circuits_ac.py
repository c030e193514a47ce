"""Circuits of the AC side: shore inlet, transfer, inverter, transformer, panel, plant and loads."""

from __future__ import annotations

import math

from anchorwatt.sizing.circuit_list import CircuitList
from anchorwatt.sizing.circuits import FEEDER_DROP, ORDINARY_DROP
from anchorwatt.sizing.circuits_dc import drawn
from anchorwatt.sizing.ends import End
from anchorwatt.sizing.setting import Input

STARTING = 3.0
"""Current of a small pump motor as it starts over its running current. From memory."""


def alternating(made: CircuitList) -> None:
    """Put all circuits of the AC side on the list."""
    _shore(made)
    _supply(made)
    _plant(made)
    _loads(made)


def _shore(made: CircuitList) -> None:
    shore, ends = made.specification.shore, made.ends
    if shore is None:
        return
    poles = shore.legs + 1
    whole = shore.voltage * shore.legs
    flow = made.currents.shore_power
    inputs = (
        Input("rating of the service, each leg", shore.current, "current", "catalogue"),
        Input("set limit, each leg", shore.current_limit, "current", "typed or the rating"),
        Input("highest hour in the runs", flow.highest_hour / whole, "current", "computed"),
    )
    for start, end, words in (
        (ends.inlet, ends.breaker, "shore inlet"),
        (ends.breaker, ends.transfer, "shore to transfer switch"),
    ):
        made.add(
            start,
            end,
            words,
            system="ac",
            voltage=made.shore_voltage,
            continuous=shore.current,
            mean_square=flow.mean_square / whole**2,
            formula="rating of the service: anyone may draw it",
            inputs=inputs,
            highest_drop=FEEDER_DROP,
            source="shore",
            poles=poles,
            bundled=poles,
        )
    charger = made.specification.charger
    if charger is None or ends.charger is None:
        return
    made.add(
        ends.breaker,
        ends.charger,
        "charger supply",
        system="ac",
        voltage=shore.voltage,
        continuous=drawn(charger, charger.rated_power) / shore.voltage,
        mean_square=flow.mean_square / whole**2,
        formula="what the charger takes at its rating over the voltage of a leg",
        inputs=(Input("rated output", charger.rated_power, "power", "catalogue"),),
        highest_drop=FEEDER_DROP,
        source="shore",
        bundled=2,
    )


def _supply(made: CircuitList) -> None:
    specification, ends = made.specification, made.ends
    inverter, transformer = specification.inverter, specification.transformer
    flow = made.currents.inverter_power
    overload = max(inverter.overload_shares, default=1.0)
    current = inverter.rated_power / made.supply_voltage
    rating = Input("rated output of the inverter", inverter.rated_power, "power", "catalogue")
    made.add(
        ends.inverters,
        ends.transfer,
        "inverter output",
        system="ac",
        voltage=made.supply_voltage,
        continuous=current,
        peak=overload * current,
        mean_square=flow.mean_square / made.supply_voltage**2,
        formula="rated output over the voltage; peak is its highest overload",
        inputs=(
            rating,
            Input("highest hour in the runs", flow.highest_hour / made.supply_voltage, "current", "computed"),
        ),
        highest_drop=FEEDER_DROP,
        source="inverter",
        bundled=2,
    )
    if transformer is None or ends.transformer is None:
        ashore = 0.0 if specification.shore is None else specification.shore.current
        made.add(
            ends.transfer,
            ends.ac_panel,
            "AC panel feeder",
            system="ac",
            voltage=made.load_voltage,
            continuous=max(current, ashore),
            peak=overload * current,
            mean_square=flow.mean_square / made.load_voltage**2,
            formula="rating of inverter or shore service, whichever is larger",
            inputs=(rating,),
            highest_drop=FEEDER_DROP,
            source="inverter",
            bundled=2,
        )
        return
    size = Input("rated power of the transformer", transformer.rated_power, "apparent power", "catalogue")
    first = transformer.rated_power / transformer.primary_voltage
    made.add(
        ends.transfer,
        ends.transformer,
        "transformer supply",
        system="ac",
        voltage=transformer.primary_voltage,
        continuous=first,
        peak=first * max(1.0, transformer.inrush),
        mean_square=flow.mean_square / transformer.primary_voltage**2,
        formula="rated power over the primary voltage; peak is its inrush",
        inputs=(size, Input("inrush over the rated current", transformer.inrush, "ratio", "catalogue")),
        highest_drop=FEEDER_DROP,
        source="inverter" if specification.shore is None else "shore",
        bundled=2,
    )
    second = transformer.rated_power / transformer.secondary_voltage
    made.add(
        ends.transformer,
        ends.ac_panel,
        "AC panel feeder",
        system="ac",
        voltage=transformer.secondary_voltage,
        continuous=second,
        mean_square=flow.mean_square / transformer.secondary_voltage**2,
        formula="rated power over the secondary voltage",
        inputs=(size,),
        highest_drop=FEEDER_DROP,
        source="transformer",
        bundled=2,
    )


def _plant(made: CircuitList) -> None:
    plant, ends, voltage = made.specification.plant, made.ends, made.load_voltage
    flow = made.currents.plant_power
    fans = sum(handler.fan_power for handler in plant.handlers)
    rated = plant.circuit.rated_power + plant.pump_power + plant.standby_power + fans
    most = max(rated, flow.highest)
    made.add(
        ends.ac_panel,
        ends.plant,
        "cooling plant",
        system="ac",
        voltage=voltage,
        continuous=most / voltage,
        mean_square=flow.mean_square / voltage**2,
        formula="its power at the rating point with pump, fans and controls, or its highest minute in the runs; "
        "a variable-speed compressor starts slowly, without a peak",
        inputs=(
            Input("at the rating point", rated, "power", "catalogue"),
            Input("highest minute in the runs", flow.highest, "power", "computed"),
        ),
        highest_drop=FEEDER_DROP,
        source="transformer",
        bundled=2,
    )
    if plant.pump_power > 0.0:
        _motor(made, ends.pump, "seawater pump", plant.pump_power, "power", bundled=2)
    for number, handler in enumerate(plant.handlers):
        name, end = f"fan, {handler.name}", ends.handlers[number]
        _motor(made, end, name, handler.fan_power, "power at full fan", highest_drop=FEEDER_DROP)


def _motor(
    made: CircuitList,
    end: End,
    name: str,
    power: float,
    words: str,
    *,
    highest_drop: float = ORDINARY_DROP,
    bundled: int = 0,
) -> None:
    """What turns while the plant runs, fed from it."""
    current = power / made.load_voltage
    made.add(
        made.ends.plant,
        end,
        name,
        system="ac",
        voltage=made.load_voltage,
        continuous=current,
        peak=STARTING * current,
        mean_square=current**2 * made.currents.cooling_share,
        formula=f"its {words} over the voltage; peak is its start",
        inputs=(
            Input(words, power, "power", "catalogue"),
            Input("starting over running current", STARTING, "ratio", "estimated"),
        ),
        highest_drop=highest_drop,
        source="transformer",
        bundled=bundled,
    )


def _loads(made: CircuitList) -> None:
    for number, load in enumerate(made.specification.loads):
        if not load.alternating:
            continue
        current = load.power / made.load_voltage
        made.add(
            made.ends.ac_panel,
            made.ends.loads[number],
            load.name,
            system="ac",
            voltage=made.load_voltage,
            continuous=current,
            peak=math.nan,
            mean_square=current**2 * made.currents.running(number),
            formula="its power while it runs over the voltage",
            inputs=(
                Input("power", load.power, "power", "catalogue"),
                Input("share of the day that it runs", made.currents.running(number), "share", "computed"),
            ),
            highest_drop=ORDINARY_DROP,
            source="transformer",
        )
