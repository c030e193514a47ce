from __future__ import annotations

import threading

import pytest
import typer

from anchorwatt.cli import console
from anchorwatt.errors import BadDesign, Problem


def test_each_problem_is_a_line_and_the_status_is_2(capsys: pytest.CaptureFixture[str]) -> None:
    problems = (
        Problem("boat.yaml", 3, "boat.beam", "-4 m", "from 1 m"),
        Problem("boat.yaml", 9, "ac", "5", "W"),
    )
    with pytest.raises(typer.Exit) as ended, console.reported():
        raise BadDesign(problems)
    assert ended.value.exit_code == 2
    said = capsys.readouterr()
    assert said.out == ""
    assert said.err.splitlines() == [
        "anchorwatt: boat.yaml:3: boat.beam: found -4 m; allowed: from 1 m",
        "anchorwatt: boat.yaml:9: ac: found 5; allowed: W",
    ]


def test_an_interrupt_ends_quietly(capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(typer.Exit) as ended, console.reported():
        raise KeyboardInterrupt
    assert ended.value.exit_code == 130
    assert capsys.readouterr().err == "anchorwatt: stopped\n"


def test_a_fault_of_ours_is_not_hidden() -> None:
    with pytest.raises(ZeroDivisionError), console.reported():
        _ = 1 / 0


def test_short_work_says_nothing_in_a_pipe(capsys: pytest.CaptureFixture[str]) -> None:
    with console.working("reading"):
        pass
    assert capsys.readouterr().err == ""


def test_long_work_is_announced_once_in_a_pipe(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(console, "PATIENCE", 0.0)
    with console.working("reading"):
        for thread in threading.enumerate():
            if isinstance(thread, threading.Timer):
                thread.join()
    assert capsys.readouterr().err == "reading …\n"
