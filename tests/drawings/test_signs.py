from __future__ import annotations

from xml.etree import ElementTree
from xml.sax.saxutils import escape

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.drawings.signs import STANDS_IN, one_line


@given(st.text(st.characters(), max_size=60))
def test_what_is_left_can_be_encoded(words: str) -> None:
    assert one_line(words).encode().decode() == one_line(words)


@given(st.text(st.characters(), max_size=60))
def test_what_is_left_is_well_formed_xml(words: str) -> None:
    root = ElementTree.fromstring(f"<a>{escape(one_line(words))}</a>")
    assert (root.text or "") == one_line(words)


@given(st.text(st.characters(), max_size=60))
def test_what_is_left_stays(words: str) -> None:
    assert one_line(one_line(words)) == one_line(words)


@pytest.mark.parametrize("words", ["Möwe", "漢字", "שלום", "🦀", "5 Ω ≥ 3 µ"])
def test_letters_of_any_script_are_left_alone(words: str) -> None:
    assert one_line(words) == words


@pytest.mark.parametrize("sign", ["\x00", "\x07", "\x7f", "\u202e", "\u2066", "\ud800", "\ufffe"])
def test_a_barred_sign_is_seen_to_have_been_there(sign: str) -> None:
    assert one_line(f"a{sign}b") == f"a{STANDS_IN}b"


@pytest.mark.parametrize("sign", ["\n", "\r\n", "\t", "\u2028"])
def test_a_break_becomes_a_space(sign: str) -> None:
    assert one_line(f"a{sign}b") == "a b"
