"""Tasks with their stops, as the build file shows them."""

from __future__ import annotations

from dataclasses import replace
from types import SimpleNamespace
from typing import cast

import pytest
from tests.starters import STARTERS, assessed

from anchorwatt.assessment import Assessment
from anchorwatt.design.hold_points import ALTERNATORS, HOLD_POINTS
from anchorwatt.papers.page import Section, Table
from anchorwatt.papers.sets.tasks import ALSO_HEADING, in_order, rows


def without(task: str) -> Assessment:
    story = assessed("trawler-14m").offer
    kept = tuple(one for one in story.priced.labour if one.name != task)
    return cast(Assessment, SimpleNamespace(offer=replace(story, priced=replace(story.priced, labour=kept))))


def cells(table: Table) -> list[str]:
    return ["".join(part.text for part in row[1].parts()) for row in table.rows]


def tables(assessment: Assessment) -> dict[str, list[str]]:
    parts = in_order(assessment)
    (listed,) = [part for part in parts if isinstance(part, Table)]
    found = {"": cells(listed)}
    for one in parts:
        if isinstance(one, Section):
            found[one.heading] = [words for part in one.body if isinstance(part, Table) for words in cells(part)]
    return found


@pytest.mark.parametrize("starter", STARTERS)
def test_every_stop_of_a_starter_stands_between_its_tasks_with_what_must_hold(starter: str) -> None:
    (found,) = tables(assessed(starter)).values()
    assert not [point for point in HOLD_POINTS if f"{point.stop}:\n{point.holds}" not in found]


def test_a_stop_that_no_task_asks_for_stands_under_its_own_heading() -> None:
    found = tables(without(ALTERNATORS))
    (alone,) = found[ALSO_HEADING]
    assert alone.startswith("Stop before an alternator is belted up")
    assert not [words for words in found[""] if "belted up" in words]


def test_a_task_says_what_is_left_alone_until_a_stop_further_down() -> None:
    (found,) = tables(assessed("trawler-14m")).values()
    (task,) = [words for words in found if words.startswith(ALTERNATORS)]
    assert "belts stay off" in task


def test_the_workbook_has_every_stop_too() -> None:
    stops = [row["hold_point"] for row in rows(without(ALTERNATORS)) if row["hold_point"]]
    assert sorted(stops) == sorted(point.stop for point in HOLD_POINTS)
