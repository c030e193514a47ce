from __future__ import annotations

from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.drawings.lettering import text_width, wrapped

words = st.lists(st.sampled_from(["bank", "of", "the", "compressor", "°C", "12.5", "—"]), min_size=1, max_size=30)


@given(words, st.floats(60.0, 300.0))
def test_wrapped_lines_fit_and_lose_nothing(some: list[str], width: float) -> None:
    text = " ".join(some)
    lines = wrapped(text, 12.0, width)
    assert " ".join(lines) == text
    assert all(text_width(line, 12.0) <= width or " " not in line for line in lines)


def test_bold_is_wider() -> None:
    assert text_width("bank", 12.0, bold=True) > text_width("bank", 12.0)


def test_a_sign_that_is_not_known_is_not_thought_narrow() -> None:
    assert text_width("漢", 10.0) > text_width("W", 10.0)
