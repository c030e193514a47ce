"""Hold points: their names are those that a file may write, and what they look at are usual tasks."""

from __future__ import annotations

from typing import get_args

from anchorwatt.design.fill_offer import USUAL_TASKS
from anchorwatt.design.hold_points import HOLD_POINTS, HoldPointName


def test_every_name_that_a_file_may_write_is_one_point() -> None:
    assert sorted(point.name for point in HOLD_POINTS) == sorted(get_args(HoldPointName))


def test_every_point_looks_at_usual_tasks() -> None:
    usual = {task.name for task in USUAL_TASKS}
    assert all(point.looks_at and set(point.looks_at) <= usual for point in HOLD_POINTS)
