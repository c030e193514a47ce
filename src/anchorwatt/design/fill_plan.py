"""The plan of the day, every gap filled."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise

from anchorwatt.design import specification as spec
from anchorwatt.design.cooling import PlantEntry
from anchorwatt.design.day import DAY, PeriodEntry
from anchorwatt.design.document import Key
from anchorwatt.design.fill_people import fill_person
from anchorwatt.design.ledger import Ledger
from anchorwatt.units import show_clock


def fill_plan(
    plan: Sequence[PeriodEntry],
    cabins: Mapping[str, int],
    loads: Sequence[spec.Load],
    duties: Mapping[str, float],
    engines: Sequence[spec.Engine],
    ledger: Ledger,
) -> list[spec.Period]:
    """The periods of the day; names that are not known are left out."""
    fastest = min((engine.boat_speed for engine in engines), default=math.inf)
    periods = []
    for number, entry in enumerate(plan):
        key: Key = ("plan", number)
        if entry.doing == "motoring" and entry.speed is None:
            ledger.refuse(key, "motoring without a speed", "speed: such as 7 kn")
        if entry.speed is not None and entry.doing != "motoring":
            ledger.refuse((*key, "speed"), f"a speed {entry.doing}", "a speed only when motoring")
        if entry.speed is not None and entry.speed > fastest * (1.0 + 1e-9):
            ledger.refuse(
                (*key, "speed"),
                f'"{entry.speed.text}"',
                f"at most {fastest * 3600 / 1852:.1f} kn, the speed at rated engine speed",
            )
        occupants = tuple(
            spec.Occupants(cabins[people.cabin], people.count, fill_person(people.doing))
            for people in entry.people
            if people.cabin in cabins
        )
        running = tuple(float(entry.running.get(load.name, duties[load.name])) for load in loads)
        for start, end in _stretches(entry):
            periods.append(
                spec.Period(
                    start=start,
                    end=end,
                    doing=spec.Doing(entry.doing),
                    boat_speed=float(entry.speed or 0.0),
                    set_points=tuple(float(entry.cool.get(name, math.nan)) for name in cabins),
                    warm_points=tuple(float(entry.heat.get(name, math.nan)) for name in cabins),
                    openings=tuple(float(entry.ajar.get(name, 0.0)) for name in cabins),
                    occupants=occupants,
                    running=running,
                )
            )
    return periods


def check_hours(plan: Sequence[PeriodEntry], ledger: Ledger) -> None:
    """Refuse a plan with a hole or an overlap: periods follow each other through 24 hours."""
    order = sorted(range(len(plan)), key=lambda number: plan[number].start % DAY)
    if len(plan) > 1:
        for number in order:
            if plan[number].start % DAY == plan[number].end % DAY:
                ledger.refuse(
                    ("plan", number),
                    f"a period from {plan[number].start.text} to {plan[number].end.text}",
                    "a period of less than 24 h, when there are others",
                )
                return
    for before, after in pairwise([*order, order[0]]):
        first, second = plan[before], plan[after]
        length = (first.end - first.start) % DAY or DAY
        until = (second.start - first.start) % DAY
        if before == after:
            until = DAY
        if math.isclose(length, until, abs_tol=0.5):
            continue
        kind = "a hole" if length < until else "an overlap"
        ends = show_clock(first.end % DAY), show_clock(second.start % DAY)
        start, end = ends if length < until else ends[::-1]
        ledger.refuse(
            ("plan", after, "start"),
            f"{kind} from {start} to {end}",
            f"periods that follow each other through 24 h; period {before + 1} ends at {first.end.text}",
        )


def check_heating(plan: Sequence[PeriodEntry], ledger: Ledger) -> None:
    """Refuse a period that cools and heats: one plant does one of them at a time."""
    for number, entry in enumerate(plan):
        both = [name for name in entry.heat if name in entry.cool]
        for name in both:
            found = f"heating to {entry.heat[name].text} and cooling to {entry.cool[name].text} in {name}"
            ledger.refuse(("plan", number, "heat", name), found, "one of cool and heat in a period")
        if entry.heat and entry.cool and not both:
            found = "heating and cooling in one period"
            ledger.refuse(("plan", number, "heat"), found, "one of cool and heat in a period: one plant serves both")


def check_reverse(plan: Sequence[PeriodEntry], plant: PlantEntry, ledger: Ledger) -> None:
    """Refuse heating by a plant that does not reverse."""
    if plant.unit.reversible:
        return
    for number, entry in enumerate(plan):
        if entry.heat:
            found = f"heating by {plant.unit.name or 'a condensing unit'}, which does not reverse"
            ledger.refuse(("plan", number, "heat"), found, "a condensing unit that is reversible; or no heat")


def check_openings(plan: Sequence[PeriodEntry], glazed: Mapping[str, float], ledger: Ledger) -> None:
    """Refuse more m2 left open than a cabin has windows and hatches."""
    for number, entry in enumerate(plan):
        for name, area in entry.ajar.items():
            if name not in glazed or area <= glazed[name] * (1.0 + 1e-9):
                continue
            most = f"at most the {ledger.show(glazed[name], 'area')} of windows and hatches in {name}"
            allowed = most if glazed[name] > 0.0 else f"a cabin with windows or hatches; {name} has none"
            ledger.refuse(("plan", number, "ajar", name), f'"{area.text}"', allowed)


def check_followers(plan: Sequence[PeriodEntry], plant: PlantEntry, ledger: Ledger) -> None:
    """Note which cabins follow another one's thermostat; refuse to serve one where that thermostat is off."""
    called = {entry.thermostat or entry.cabin: name for name, entry in plant.handlers.items()}
    leaders: dict[str, str] = {}
    for name, entry in plant.handlers.items():
        for cabin in [outlet.cabin for outlet in (entry.outlets or {}).values()] or [entry.cabin]:
            if cabin not in called:
                leaders.setdefault(cabin, name)
    followed: dict[str, list[str]] = {}
    for number, period in enumerate(plan):
        for kind, points in (("cool", period.cool), ("heat", period.heat)):
            for cabin in points:
                if cabin not in leaders:
                    continue
                handler = plant.handlers[leaders[cabin]]
                thermostat = handler.thermostat or handler.cabin
                if thermostat in points:
                    followed.setdefault(leaders[cabin], [])
                    if cabin not in followed[leaders[cabin]]:
                        followed[leaders[cabin]].append(cabin)
                    continue
                ledger.refuse(
                    ("plan", number, kind, cabin),
                    f"{kind} in {cabin}, which follows the thermostat of {thermostat}, without {kind} there",
                    f"{kind} in {thermostat} as well, which calls handler {leaders[cabin]}",
                )
    for name, cabins in followed.items():
        handler = plant.handlers[name]
        if handler.thermostat is None:
            ledger.note(
                ("cooling", "plant", "handlers", name, "thermostat"),
                handler.cabin,
                f"{', '.join(cabins)} has no thermostat of its own and follows the thermostat of {handler.cabin}",
                "as the file leaves it",
            )


def _stretches(entry: PeriodEntry) -> list[tuple[float, float]]:
    start, end = entry.start % DAY, float(entry.end)
    if start == end % DAY:
        # A period of a whole day, told as one that ends at midnight and one that begins there.
        return [(start, DAY)] if start == 0.0 else [(start, DAY), (0.0, start)]
    return [(start, end)]
