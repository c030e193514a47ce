"""Where in the design file the parts of the drawings are said, by their tags."""

from __future__ import annotations

from anchorwatt.design.fill_engine_battery import LOAD
from anchorwatt.design.specification import Load, Specification
from anchorwatt.sizing.ends import End, Ends


def part_keys(specification: Specification) -> dict[str, str]:
    """The dotted key of each part that the file has a word for; buses and panels follow from the rest and have none.

    Keys are as deep as the part itself: the file may say it, or a mapping above it, or leave it to be estimated.
    """
    found = {item.tag: item.key for item in specification.items}
    ends = Ends(specification)

    def put(end: End | None, key: str) -> None:
        if end is not None:
            found.setdefault(end.tag, key)

    machines = [item.key.rpartition(".")[0] for item in specification.items if item.kind == "alternator"]
    for regulator, machine in zip(ends.regulators, machines, strict=False):
        put(regulator, f"{machine}.current_limit")
    for thermostat, handler in zip(ends.thermostats, specification.plant.handlers, strict=True):
        put(thermostat, f"cooling.plant.handlers.{handler.name}.thermostat")
    for end, load in zip(ends.loads, specification.loads, strict=True):
        put(end, _load_key(load))
    put(ends.pump, "cooling.plant.unit")
    for end in (ends.inlet, ends.breaker):
        put(end, "ac.shore")
    put(ends.engine_battery, "dc.engine_battery.voltage")
    put(ends.controller, "dc.solar.panel")
    for end in (ends.management, ends.monitor):
        put(end, "dc.bank.module")
    return found


def _load_key(load: Load) -> str:
    if load.name == LOAD and not load.alternating:
        return "dc.engine_battery.unit"
    return f"{'ac' if load.alternating else 'dc'}.loads.{load.name}"
