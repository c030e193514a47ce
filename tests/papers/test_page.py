from __future__ import annotations

import ast
from pathlib import Path

import pytest

from anchorwatt import papers
from anchorwatt.papers.page import Words, figures, table


def test_words_keep_the_meaning_of_each_part() -> None:
    words = Words("a", "strong").then("b").joined(Words("c").then("d", "aside"))
    assert [(one.text, one.meaning) for one in words.parts()] == [
        ("a", "strong"),
        ("b", ""),
        ("c", ""),
        ("d", "aside"),
    ]


def test_a_key_stays_with_the_words_when_others_follow() -> None:
    assert Words("bank", key="dc.bank").then(" of two").key == "dc.bank"


def test_a_row_with_a_cell_too_few_is_refused() -> None:
    with pytest.raises(ValueError, match="2 columns"):
        table(("", "A"), figures(("", "A")), [("bank",)])


def test_pages_know_of_no_writer() -> None:
    writers = {"rich", "html", "anchorwatt.cli", "anchorwatt.web"}
    found = set()
    for path in Path(str(papers.__file__)).parent.glob("*.py"):
        for node in ast.walk(ast.parse(path.read_text("utf-8"))):
            if isinstance(node, ast.ImportFrom):
                found.add(node.module or "")
            elif isinstance(node, ast.Import):
                found |= {one.name for one in node.names}
    assert "anchorwatt.units" in found
    assert not {one for one in found if any(one == name or one.startswith(f"{name}.") for name in writers)}
