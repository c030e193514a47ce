"""Checks of an open design: they rest while nobody looks."""

from __future__ import annotations

import asyncio
from collections.abc import Callable, Iterator
from importlib import import_module
from pathlib import Path

import pytest

from anchorwatt.design import starter_text
from anchorwatt.web.desk import Desk, Desks

RULES = 5
LATE = 10.0  # s


class Checked:
    """Stands for an assessment with a few rules, and notes each that was asked."""

    def __init__(self) -> None:
        self.asked: list[int] = []

    def check_in_turn(self) -> Iterator[tuple[int, int]]:
        for number in range(RULES):
            self.asked.append(number)
            yield number, RULES


@pytest.fixture
def checked(monkeypatch: pytest.MonkeyPatch) -> Checked:
    made = Checked()
    monkeypatch.setattr(import_module("anchorwatt.assessment"), "assess", lambda _: made)
    return made


@pytest.fixture
async def desk(checked: Checked, tmp_path: Path) -> Desk:
    (tmp_path / "boat.yaml").write_text(starter_text("cutter-12m"), encoding="utf-8")
    opened = await Desks(tmp_path).desk("boat")
    assert opened is not None
    return opened


async def until(holds: Callable[[], object]) -> None:
    async with asyncio.timeout(LATE):
        while not holds():
            await asyncio.sleep(0.001)


async def test_all_rules_are_asked_while_somebody_looks(desk: Desk, checked: Checked) -> None:
    desk.watch(lambda: None)
    desk.check()
    await until(lambda: desk.checking.finished)
    assert checked.asked == list(range(RULES))


async def test_the_checks_rest_once_nobody_looks_any_more(desk: Desk, checked: Checked) -> None:
    desk.watch(lambda: None)()
    desk.check()
    await until(lambda: desk._task is not None and desk._task.done())
    assert checked.asked == [0]
    assert not desk.checking.finished


async def test_whoever_comes_next_has_them_taken_up(desk: Desk, checked: Checked) -> None:
    desk.check()
    await until(lambda: desk._task is not None and desk._task.done())
    desk.watch(lambda: None)
    desk.check()
    await until(lambda: desk.checking.finished)
    assert desk.checking.of == RULES
