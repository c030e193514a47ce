"""What the loss of each single part leaves: cooling, hours on the bank, charging, direct current, the way home.

All of it is closed-form, from what night, hold and recharge came to on the sound boat; minute by minute, a few of these
losses are told by the faults. Bars, switches, cables and pipes are not gone through: each is a single part too.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Literal

import numpy as np

from anchorwatt.design.specification import Handler, Specification
from anchorwatt.physics.transformer import transformer_input
from anchorwatt.simulation.runs import LONGEST_HOLD, Simulation
from anchorwatt.sizing.converters import taken_by

Fed = Literal["the bank", "the engines' battery", "nothing"]
Alternating = Literal["all", "on shore power", "none"]
Home = Literal["yes", "on the others", "no", "cannot tell"]


@dataclass(frozen=True)
class Loss:
    """One part lost, all others sound."""

    key: str
    part: str
    stops: tuple[str, ...]  # in words, most weighty first; empty = nothing at once
    goes_on: tuple[str, ...]  # in words
    cooling: float  # share of the night's cooling, on the bank
    hold: float  # s from the start of the night to the reserve, `LONGEST_HOLD` = so long or longer, 0 = no bank
    charging: float  # share of all charging: engines as in the recharge, sun at its peak, shore; nan = none described
    at_anchor: float  # W of charging that is left without shore power
    ashore: float  # W that the charger gives
    direct: Fed  # what feeds lights, navigation and bilge
    alternating: Alternating
    home: Home  # whether the boat comes home by engine


@dataclass(frozen=True)
class _State:
    """What is left of the boat; as it stands here, nothing is lost."""

    stops: tuple[str, ...] = ()
    bank: float = 1.0  # share of its energy and of its currents
    inverter: float = 1.0  # share of its rating
    transformer: bool = True
    cooling: float = 1.0
    charger: float = 1.0
    sun: bool = True
    alternators: frozenset[int] = field(default_factory=frozenset)  # lost
    home: Home = "yes"


@dataclass(frozen=True)
class Redundancy:
    """The sound boat, and every single part of it lost."""

    sound: Loss
    losses: tuple[Loss, ...]  # in the order of cooling, supply, charging and engines


def redundancy(specification: Specification, simulation: Simulation) -> Redundancy:
    """What the loss of every single part that the design names leaves."""
    boat = _Sound(specification, simulation)
    parts = (*_cooling(specification, simulation), *_supply(specification), *_charging(specification))
    return Redundancy(boat.left(*NOTHING), tuple(boat.left(*part) for part in parts))


Part = tuple[str, str, _State]
"""Key, name, and the state of the boat without it."""

NOTHING: Part = ("nothing", "nothing", _State())


def _cooling(specification: Specification, simulation: Simulation) -> Iterator[Part]:
    plant = specification.plant
    everything = ("all cooling and drying",)
    yield "condensing-unit", f"condensing unit, {plant.name}", _State(everything, cooling=0.0)
    yield "seawater-pump", "seawater pump or its strainer", _State(everything, cooling=0.0)
    shares = _handler_shares(specification, simulation)
    for number, (handler, share) in enumerate(zip(plant.handlers, shares, strict=True), 1):
        cabins = ", ".join(specification.cabins[cabin].name for cabin in _served(handler))
        state = _State((f"its part of the cooling: {cabins}",), cooling=1.0 - share)
        yield f"handler-{number}", f"air handler, {handler.name}", state


def _served(handler: Handler) -> dict[int, float]:
    """W of a handler's capacity by cabin."""
    if not handler.outlets:
        return {handler.cabin: handler.rated_capacity}
    found: dict[int, float] = {}
    for outlet in handler.outlets:
        found[outlet.cabin] = found.get(outlet.cabin, 0.0) + outlet.share * handler.rated_capacity
    return found


def _handler_shares(specification: Specification, simulation: Simulation) -> list[float]:
    """Share of the night's cooling that each handler gives; handlers of one cabin by their capacity."""
    served = [_served(handler) for handler in specification.plant.handlers]
    summary = simulation.night.summary
    taken = summary.sensible_energy[0] + summary.latent_energy[0]
    offered = [math.fsum(one.get(cabin, 0.0) for one in served) for cabin in range(len(specification.cabins))]
    given = [
        math.fsum(float(taken[cabin]) * watts / offered[cabin] for cabin, watts in one.items() if offered[cabin] > 0.0)
        for one in served
    ]
    whole = math.fsum(given)
    if whole <= 0.0:  # a night without cooling: by their capacity
        given = [math.fsum(one.values()) for one in served]
        whole = math.fsum(given)
    return [one / whole for one in given]


def _supply(specification: Specification) -> Iterator[Part]:
    inverters = _count(specification, "inverter")
    yield (
        "inverter",
        f"{'the' if inverters == 1 else f'one of {inverters}'} inverter{'' if inverters == 1 else 's'}",
        _State(("AC loads and cooling away from the dock",) if inverters == 1 else (), inverter=1.0 - 1.0 / inverters),
    )
    if specification.transformer is not None:
        yield "transformer", "transformer", _State(("AC loads and cooling, ashore too",), transformer=False)
    strings = specification.bank.parallel
    if strings == 1:
        yield (
            "bank-string",
            "a module of the bank, and with it its only string",
            _State(("all that runs from the bank, AC and DC",), bank=0.0, home=_started_apart(specification)),
        )
    else:
        yield (
            "bank-string",
            f"a module of the bank, and with it one of {strings} strings",
            _State((), bank=1.0 - 1.0 / strings),
        )


def _started_apart(specification: Specification) -> Home:
    """Whether engines start without the bank."""
    return "cannot tell" if specification.engine_battery is None else "yes"


def _charging(specification: Specification) -> Iterator[Part]:
    if specification.shore is not None:
        yield "shore", "shore power", _State(("charging ashore",), charger=0.0)
    if specification.charger is not None:
        chargers = _count(specification, "charger")
        yield (
            "charger",
            "charger" if chargers == 1 else f"one of {chargers} chargers",
            _State(("charging ashore",) if chargers == 1 else (), charger=1.0 - 1.0 / chargers),
        )
    if specification.solar is not None:
        yield "sun", "solar panels or their controller", _State(("charging from the sun",), sun=False)
    first, engines = 0, specification.engines
    for number, engine in enumerate(engines, 1):
        own = frozenset(range(first, first + len(engine.alternators)))
        for a, machine in zip(sorted(own), engine.alternators, strict=True):
            state = _State(("its charging",), alternators=frozenset({a}))
            yield f"alternator-{a + 1}", f"{machine.name} or its belt", state
        home: Home = "no" if len(engines) == 1 else "on the others"
        yield (
            f"engine-{number}",
            engine.name,
            _State(("its propeller, and charging by it",), alternators=own, home=home),
        )
        first += len(own)
    if specification.engine_battery is not None:
        yield "engine-battery-converter", "converter to the engines' battery", _State(("what keeps that battery full",))
        yield (
            "engine-battery",
            "the engines' battery",
            _State(("starting the engines, and their charging",), alternators=frozenset(range(first)), home="no"),
        )


def _count(specification: Specification, kind: str) -> int:
    """How many of a kind work side by side."""
    return max(1, sum(item.count for item in specification.items if item.kind == kind))


class _Sound:
    """Figures of the sound boat, and what is left of them."""

    def __init__(self, specification: Specification, simulation: Simulation) -> None:
        self.specification = specification
        night, held = simulation.night.summary, simulation.hold
        reached = float(held.summary.reserve_at[0])
        self.hold = LONGEST_HOLD if math.isnan(reached) else reached
        # Means until the reserve is reached: hours times their sum is then the energy that the bank gave.
        drawing = slice(0, max(1, round(self.hold / held.step)))
        self.direct = float(held.series.dc_load[0, drawing].mean())
        self.inverter_input = float(held.series.inverter_input[0, drawing].mean())
        self.loads = float(held.forcing.ac_load[0, drawing].mean())
        self.peak_plant = float(night.peak_plant_power[0])
        self.peak_inverter = float(night.peak_inverter_power[0])
        self.peak_direct = float(held.series.dc_load[0, drawing].max())
        self.engines = _alternator_powers(simulation)
        shore, charger, solar = specification.shore, specification.charger, specification.solar
        self.charger = 0.0
        if shore is not None and charger is not None:
            self.charger = min(charger.rated_power, shore.continuous_power)
        self.sun = 0.0 if solar is None else solar.peak_power * solar.delivered_share

    def left(self, key: str, part: str, state: _State) -> Loss:
        """What one lost part leaves."""
        fed = self._fed(state)
        alternating = self._alternating(state)
        cooling = self._cooling(state) if alternating == "all" else 0.0
        engines, sun, ashore = self._sources(state)
        whole = math.fsum(self._sources(_State()))
        return Loss(
            key=key,
            part=part,
            stops=state.stops,
            goes_on=self._goes_on(state, fed, alternating, cooling),
            cooling=cooling,
            hold=self._hold(state, cooling, alternating),
            charging=(engines + sun + ashore) / whole if whole > 0.0 else math.nan,
            at_anchor=engines + sun,
            ashore=ashore,
            direct=fed,
            alternating=alternating,
            home=state.home,
        )

    def _fed(self, state: _State) -> Fed:
        if state.bank > 0.0:
            return "the bank"
        return "nothing" if self.specification.engine_battery is None else "the engines' battery"

    def _alternating(self, state: _State) -> Alternating:
        if not state.transformer:
            return "none"
        if state.inverter > 0.0 and state.bank > 0.0:
            return "all"
        return "none" if self.specification.shore is None else "on shore power"

    def _cooling(self, state: _State) -> float:
        """Share of the plant that is left, no more than what inverter and bank still carry beside the other loads."""
        if self.peak_plant <= 0.0:
            return state.cooling
        inverter, bank = self.specification.inverter, self.specification.bank
        carried = min(
            inverter.rated_power * state.inverter,
            bank.discharge_current * state.bank * bank.nominal_voltage - self.peak_direct,
        )
        if carried >= self.peak_inverter:
            return state.cooling
        others = max(0.0, self.peak_inverter - self.peak_plant)
        return min(state.cooling, max(0.0, carried - others) / self.peak_plant)

    def _sources(self, state: _State) -> tuple[float, float, float]:
        """W of engines, sun and charger that still reach the bank, within what it may take."""
        bank = self.specification.bank
        takes = bank.charge_current * state.bank * bank.absorb_voltage
        engines = math.fsum(power for a, power in enumerate(self.engines) if a not in state.alternators)
        sun = self.sun if state.sun else 0.0
        at_anchor = min(engines + sun, takes)
        share = at_anchor / (engines + sun) if engines + sun > 0.0 else 0.0
        return engines * share, sun * share, min(self.charger * state.charger, takes)

    def _hold(self, state: _State, cooling: float, alternating: Alternating) -> float:
        """The sound boat's hold, by what is left of the bank and by what still draws on it."""
        sound = self.inverter_input + self.direct
        drawn = self.direct + self._inverter_draws(cooling, alternating, state)
        if drawn <= 0.0:
            return LONGEST_HOLD if state.bank > 0.0 else 0.0
        return min(LONGEST_HOLD, self.hold * state.bank * sound / drawn)

    def _inverter_draws(self, cooling: float, alternating: Alternating, state: _State) -> float:
        if state.inverter <= 0.0 or alternating == "on shore power":
            return 0.0
        inverter = self.specification.inverter
        if alternating == "none":
            return inverter.sleep_power
        unit, loads = self.specification.transformer, self.loads
        if unit is not None:
            loads = transformer_input(loads, unit.rated_power, unit.core_loss, unit.copper_loss)
        bare = taken_by(inverter, loads)
        return bare + cooling * max(0.0, self.inverter_input - bare)

    def _goes_on(self, state: _State, fed: Fed, alternating: Alternating, cooling: float) -> tuple[str, ...]:
        words = []
        if fed == "the bank":
            words.append("lights, navigation and bilge")
        elif fed == "the engines' battery":
            words.append("lights, navigation and bilge where the engines' battery can feed them")
        if alternating == "on shore power":
            words.append("AC loads and cooling at the dock")
        elif alternating == "all":
            words.append("AC loads")
            if cooling > 0.0:
                words.append("cooling" if cooling >= 1.0 - 1e-9 else "the rest of the cooling")
        engines, sun, ashore = self._sources(state)
        names = (("the engines", engines), ("the sun", sun), ("the dock", ashore))
        sources = [name for name, power in names if power > 0.0]
        if sources:
            words.append(f"charging from {', '.join(sources)}")
        return tuple(words)


def _alternator_powers(simulation: Simulation) -> tuple[float, ...]:
    """W of each alternator, mean of the recharge, counted over all engines."""
    run = simulation.recharge
    if run is None:
        return ()
    means = np.mean(run.series.alternator_current[0] * run.series.voltage[0], axis=-1)
    return tuple(float(one) for one in means)
