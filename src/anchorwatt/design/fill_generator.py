"""The generating set that the design is compared with: the one that the file names, else the smallest that would do."""

from __future__ import annotations

import math
from collections.abc import Sequence

from anchorwatt.catalogue import names
from anchorwatt.catalogue.generator import Generator as GeneratorRecord
from anchorwatt.catalogue.part import CURRENCY, typed
from anchorwatt.design.day import DAY
from anchorwatt.design.document import Key
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.specification import Generator, Load, Period, SharedPlant, Shore, Transformer

KEY: Key = ("generator",)

STARTING = 1.25
"""Rating over what runs at once, for what starts and for a set that should not run flat out all night."""


def fill_generator(
    given: GeneratorRecord | None,
    plant: SharedPlant,
    loads: Sequence[Load],
    night: Period,
    transformer: Transformer | None,
    shore: Shore | None,
    ledger: Ledger,
) -> Generator | None:
    """The set that the file names, or the smallest of the catalogue that carries the night; None when none does."""
    if given is not None:
        return _made(given)
    needed = STARTING * night_peak(plant, loads, night, transformer)
    fitting = [record for record in map(_record, names("generator")) if _fits(record, shore)]
    able = [record for record in fitting if record.rated_power >= needed]
    if not able:
        return None
    smallest = min(able, key=lambda record: float(record.rated_power))
    ledger.note(
        KEY,
        smallest.name,
        f"smallest of the catalogue that gives {ledger.show(needed, 'power')}: plant and AC loads of the night all "
        f"running at once, and {STARTING - 1.0:.0%} for starting",
        MEMORY,
    )
    return _made(smallest)


def check_generator(given: GeneratorRecord, ledger: Ledger) -> None:
    """Refuse prices in another currency than the catalogue's, with which they are shown together."""
    for field, money in (("service_price", given.service_price), ("price", given.price)):
        if money is not None and money.currency != CURRENCY:
            ledger.refuse((*KEY, field), f"“{money}”", f"a price in {CURRENCY}, as the catalogue has them")


def night_period(plan: Sequence[Period], clock: float) -> Period:
    """The period of a filled plan, which covers the day, that holds at a time of day, s after midnight."""
    holding = (one for one in plan if (clock - one.start) % DAY < ((one.end - one.start) % DAY or DAY))
    return next(holding, plan[0])  # a plan with a hole has been refused by then


def night_peak(plant: SharedPlant, loads: Sequence[Load], night: Period, transformer: Transformer | None) -> float:
    """W of plant and AC loads if all that the night's period lets run did so at once, as their plates say."""
    fans = sum(handler.fan_power for handler in plant.handlers)
    whole = plant.circuit.rated_power + plant.pump_power + plant.standby_power + fans
    whole += sum(
        load.power for load, share in zip(loads, night.running, strict=True) if load.alternating and share > 0.0
    )
    return whole + (0.0 if transformer is None else transformer.core_loss + transformer.copper_loss)


def _record(name: str) -> GeneratorRecord:
    return typed(GeneratorRecord, name)


def _fits(record: GeneratorRecord, shore: Shore | None) -> bool:
    """Whether its frequency is that of the boat's AC loads, as far as the shore service tells."""
    return shore is None or math.isclose(record.frequency, shore.frequency, abs_tol=1.0)


def _made(record: GeneratorRecord) -> Generator:
    return Generator(
        name=record.name,
        rated_power=float(record.rated_power),
        efficiency=float(record.efficiency),
        speed=float(record.speed),
        displacement=float(record.displacement),
        indicated_efficiency=float(record.indicated_efficiency),
        friction_pressure=float(record.friction_pressure),
        lowest_load=float(record.lowest_load),
        noise=record.noise,
        service_interval=float(record.service_interval),
        service_price=float(record.service_price.amount),
        life=float(record.life),
        price=math.nan if record.price is None else float(record.price.amount),
        mass=float(record.mass),
    )
