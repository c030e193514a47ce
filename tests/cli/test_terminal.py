from __future__ import annotations

import pytest

from anchorwatt.cli.terminal import show, written
from anchorwatt.papers.page import Paragraph, Words, page, section, table, unbroken


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
    show(section("Heading", table(("", ""), ("<", "<"), [("a", "long"), ("bbbb", "x")]), Words("end")))
    lines = printed.readouterr().out.splitlines()
    assert lines == [line.rstrip() for line in lines]


def test_nothing_is_coloured_in_a_pipe(printed: pytest.CaptureFixture[str]) -> None:
    show(section("Heading", Words("It fails.", "fails")))
    assert "\x1b" not in printed.readouterr().out


@pytest.fixture
def coloured(monkeypatch: pytest.MonkeyPatch) -> None:
    """As on a terminal that has colours."""
    monkeypatch.setenv("FORCE_COLOR", "1")
    monkeypatch.setenv("TERM", "xterm")
    monkeypatch.delenv("NO_COLOR", raising=False)


@pytest.mark.usefixtures("coloured")
def test_a_verdict_is_coloured_on_a_terminal() -> None:
    assert written(Words("It fails.", "fails")) == "\x1b[1;31mIt fails.\x1b[0m"


@pytest.mark.usefixtures("coloured")
def test_what_follows_strong_words_is_not_strong() -> None:
    assert written(Words("name", "strong").then(" and the rest")) == "\x1b[1mname\x1b[0m and the rest"


def test_a_caption_stands_above_its_table(printed: pytest.CaptureFixture[str]) -> None:
    show(table(("cabin",), ("<",), [("saloon",)], caption="Who sleeps where"))
    assert printed.readouterr().out.splitlines() == ["Who sleeps where", "cabin", "saloon"]


def test_parts_of_a_page_are_one_below_the_other(printed: pytest.CaptureFixture[str]) -> None:
    show(page(Words("first"), Words("second")))
    assert printed.readouterr().out == "first\nsecond\n"
