"""Reading text strictly: what could hide or unfold is refused, at its line."""

from __future__ import annotations

from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from tests.design.sample import SAMPLE
from tests.design.strategies import as_text, designs

from anchorwatt.design.document import DEEPEST, LARGEST_FILE, _read_quickly, _read_with_care, load, scan
from anchorwatt.design.writing import starter_text, starters
from anchorwatt.errors import BadDesign, Problem


def refused(text: str) -> Problem:
    with pytest.raises(BadDesign) as caught:
        scan(text, "boat.yaml")
    return caught.value.problems[0]


def refused_file(path: Path) -> Problem:
    with pytest.raises(BadDesign) as caught:
        load(path)
    assert caught.value.problems[0].file == str(path)
    return caught.value.problems[0]


@pytest.mark.parametrize(
    ("text", "line", "found"),
    [
        pytest.param("a: 1\nb: [1, 2", 2, "not YAML", id="open bracket"),
        pytest.param("a: 1\n\tb: 2", 2, "not YAML", id="tab"),
        pytest.param("a: 1\n  b: 2", 2, "not YAML", id="wrong indentation"),
        pytest.param('a: "\\q"', 1, "not YAML", id="unknown escape"),
        pytest.param("a: 1\nb: 2\na: 3", 3, "a second “a”; the first is on line 1", id="duplicate key"),
        pytest.param("a:\n  b: 1\n  b: 2", 3, "a second “b”", id="duplicate inner key"),
        pytest.param("a: &x 1\nb: 2", 1, "an anchor &x", id="anchor"),
        pytest.param("a: 1\nb: *x", 2, "an alias *x", id="alias"),
        pytest.param("a: !!python/object:os.system x", 1, "a tag", id="tag"),
        pytest.param("a: !mine [1]", 1, "a tag", id="tag on a list"),
        pytest.param("a: 1\n---\nb: 2", 2, "a second document", id="two documents"),
        pytest.param("? [a, b]\n: 1", 1, "as a key", id="list as a key"),
        pytest.param("- 1\n- 2", 1, "no mapping", id="a list"),
        pytest.param("", 1, "nothing", id="empty"),
        pytest.param("# only a comment\n", 1, "nothing", id="comment only"),
        pytest.param("word", 1, "no mapping", id="a word"),
        pytest.param("a: " + "[" * 60 + "]" * 60, 1, f"nesting deeper than {DEEPEST}", id="deep nesting"),
        pytest.param("a: \x00", 1, "not YAML", id="null character"),
    ],
)
def test_what_could_hide_or_unfold_is_refused_at_its_line(text: str, line: int, found: str) -> None:
    problem = refused(text)
    assert found in problem.found
    assert problem.allowed
    assert problem.line == line


def test_a_million_brackets_are_refused_before_they_are_read() -> None:
    assert "nesting" in refused("[" * 1_000_000).found


def test_aliases_that_would_unfold_are_refused() -> None:
    bomb = "a: &a [x, x, x, x, x, x, x, x, x]\n"
    for name, before in zip("bcdefghi", "abcdefgh", strict=True):
        bomb += f"{name}: &{name} [{', '.join([f'*{before}'] * 9)}]\n"
    assert refused(bomb).found == "an anchor &a"


def test_a_large_file_is_refused_before_it_is_read(tmp_path: Path) -> None:
    path = tmp_path / "large.yaml"
    with path.open("wb") as file:
        file.truncate(50_000_000)
    problem = refused_file(path)
    assert "50.0 MB" in problem.found
    assert "at most 2 MB" in problem.allowed
    assert LARGEST_FILE == 2_000_000


def test_a_file_that_is_not_utf_8_is_refused_at_its_line(tmp_path: Path) -> None:
    path = tmp_path / "latin.yaml"
    path.write_bytes("name: a\nabout: 84 °F".encode("latin-1"))
    problem = refused_file(path)
    assert (problem.line, problem.found) == (2, "a byte 0xb0 that is not UTF-8")


def test_a_folder_and_a_missing_file_are_refused(tmp_path: Path) -> None:
    assert refused_file(tmp_path).found == "a folder"
    assert refused_file(tmp_path / "none.yaml").found == "no such file"


def test_values_follow_the_core_schema_of_yaml_1_2() -> None:
    document = scan("a: 21:00\nb: yes\nc: 1_000\nd: 0x1F\ne: true\nf: ~\ng: 1.5e3\nh: -7\ni: '7'\nj: .5\nk: 007")
    assert document.data == {
        "a": "21:00",
        "b": "yes",
        "c": "1_000",
        "d": "0x1F",
        "e": True,
        "f": None,
        "g": 1500.0,
        "h": -7,
        "i": "7",
        "j": 0.5,
        "k": 7,
    }


def test_every_key_knows_its_line_and_its_place() -> None:
    document = scan(SAMPLE)
    lines = SAMPLE.splitlines()
    for key, span in document.spans.items():
        if isinstance(key[-1], str):
            assert lines[span.line - 1].lstrip(" -{").startswith(key[-1]) or f"{key[-1]}:" in lines[span.line - 1]
            assert SAMPLE[span.key_start :].startswith(key[-1])
    span = document.spans[("cabins", "cabin", "floor_area")]
    assert SAMPLE[span.start : span.end] == "7 m2"


PIECES = (
    "a", "b: ", "c:", " ", "  ", "    ", "\n", "- ", "? ", ": ", "[", "]", "{", "}", ", ", "'", '"', "#", " # c", "|",
    ">", "12 V", "&a", "*a", "!t", "---", "...", "%", "é: ü", "😀", "\t", "\r\n", "\ufeff", "\x85", "\\q", "http://x",
    "{a:1}", "'a':1", "a:\n", "- a: 1\n  b: 2\n", "k: |\n  text\n",
    "k: 'it''s\n  long'\n", "k: two\n  lines\n", "k: {a: , b: [1,\n 2]}\n",
)  # fmt: skip
"""What a writer might type, well or badly."""


def same_by_both(text: str) -> bool:
    """Whether the quick parser left a text alone; where it did not, both must have found the same."""
    quick = _read_quickly(text, "text")
    if quick is None:
        return False
    careful = _read_with_care(text, "text")
    assert (careful.problems, careful.root, careful.spans) == ([], quick.root, quick.spans)
    return True


@given(st.lists(st.sampled_from(PIECES), min_size=1, max_size=20).map("".join))
@settings(max_examples=500, deadline=None)
def test_the_quick_parser_takes_only_what_the_careful_one_reads_alike(text: str) -> None:
    same_by_both(text + "\n")


@given(designs())
@settings(max_examples=20, deadline=None, suppress_health_check=list(HealthCheck))
def test_both_parsers_read_a_design_alike(drawn: dict[str, object]) -> None:
    same_by_both(as_text(drawn))


@pytest.mark.parametrize("name", starters())
def test_a_starter_is_read_by_the_quick_parser(name: str) -> None:
    assert same_by_both(starter_text(name))


@pytest.mark.parametrize("text", ["a:\nb: 1\n", "a: # x\nb: 1\n", "a: \nb: 1", "a: |\n  b\nc:\n"])
def test_an_empty_value_stands_at_its_colon(text: str) -> None:
    document = scan(text)
    empty = next(span for key, span in document.spans.items() if document.data[str(key[0])] is None)
    assert empty.start == empty.end
    assert text[empty.start - 1] == ":"
