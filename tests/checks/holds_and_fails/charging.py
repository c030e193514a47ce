"""Charging at the engine."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from anchorwatt.design.specification import Specification
from tests.checks.holds_and_fails.case import Case
from tests.simulation import boats


def machines(count: int = 1, engine: dict[str, Any] | None = None, **changes: Any) -> Specification:
    machine = replace(boats.alternator(), **changes)
    one = replace(boats.engine((machine,) * count), **(engine or {}))
    return replace(boats.boat(1), engines=(one,))


def side_load_limit(limit: float) -> Specification:
    return machines(engine={"side_load_limit": limit})


def direct_load(power: float) -> Specification:
    """A small machine with a direct-current load that always draws."""
    boat = machines(rated_current=20.0, current_limit=20.0)
    fridge = replace(boat.loads[0], power=power, cabin=-1)
    plan = tuple(replace(period, running=(1.0, *period.running[1:])) for period in boat.plan)
    return replace(boat, loads=(fridge, *boat.loads[1:]), plan=plan)


CASES = {
    "belt-at-charging-speed": Case(machines(belt_power=20e3), machines(belt_power=3e3)),
    "crank-side-load": Case(
        machines(engine={"side_load_limit": 5e3}), machines(engine={"side_load_limit": 200.0}), machines()
    ),
    "hold-keeps-winding": Case(machines(), machines(highest_winding=100.0)),
    "mid-range-power-spare": Case(machines(), machines(engine={"propeller_power": 19e3, "rated_power": 20e3})),
    "alternators-turn-fast-enough": Case(machines(), machines(pulley_ratio=1.0)),
    "alternators-within-bank": Case(machines(2), machines(3)),
    "load-dump": Case(machines(clamp_voltage=50.0), machines(clamp_voltage=80.0), machines()),
    "one-alternator-lost": Case(machines(2), machines(2, rated_current=10.0, current_limit=10.0)),
}
