"""The tasks of a job in order, with the hold points at their places between them."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from anchorwatt.design.hold_points import HOLD_POINTS, HoldPoint
from anchorwatt.sizing.offer import Labour


@dataclass(frozen=True)
class JobOrder:
    """What is done, and where work stops.

    Parameters
    ----------
    steps : tasks and hold points, one behind the other
    also : hold points that no task of the job asks for
    """

    steps: tuple[Labour | HoldPoint, ...]
    also: tuple[HoldPoint, ...]


def job_order(tasks: Sequence[Labour]) -> JobOrder:
    """Put the hold points between tasks that come in this order.

    A point stands before each task that names it; where none does, behind the last usual task whose work it looks
    at, if the job has the task that it is about.
    """
    names = [task.name for task in tasks]
    before: list[list[HoldPoint]] = [[] for _ in range(len(tasks) + 1)]
    also: list[HoldPoint] = []
    for point in HOLD_POINTS:
        named = [place for place, task in enumerate(tasks) if point.name in task.hold_points]
        if not named and point.looks_at[0] in names:
            named = [max(place for place, name in enumerate(names, 1) if name in point.looks_at)]
        for place in named:
            before[place].append(point)
        if not named:
            also.append(point)
    steps: list[Labour | HoldPoint] = []
    for points, task in zip(before, tasks, strict=False):
        steps += [*points, task]
    return JobOrder((*steps, *before[-1]), tuple(also))
