from __future__ import annotations

import pytest
from rich.text import Text

from anchorwatt.cli.page import Paragraph, section, show, table, unbroken


@pytest.fixture
def printed(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> pytest.CaptureFixture[str]:
    monkeypatch.setenv("COLUMNS", "80")
    return capsys


def test_figures_stay_with_their_units(printed: pytest.CaptureFixture[str]) -> None:
    show(Paragraph(" ".join(["word"] * 16) + " " + unbroken("5.3 %")))
    lines = printed.readouterr().out.splitlines()
    assert lines[1] == "5.3 %"


def test_brackets_in_a_name_are_shown(printed: pytest.CaptureFixture[str]) -> None:
    show(table(("cabin",), ("<",), [("[bold]saloon[/bold]",)]))
    assert "[bold]saloon[/bold]" in printed.readouterr().out


def test_no_line_ends_in_blanks(printed: pytest.CaptureFixture[str]) -> None:
    show(section("Heading", table(("", ""), ("<", "<"), [("a", "long"), ("bbbb", "x")]), Text("end")))
    lines = printed.readouterr().out.splitlines()
    assert lines == [line.rstrip() for line in lines]


def test_nothing_is_coloured_in_a_pipe(printed: pytest.CaptureFixture[str]) -> None:
    show(section("Heading", Text("red", style="bold red")))
    assert "\x1b" not in printed.readouterr().out
