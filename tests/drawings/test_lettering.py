from __future__ import annotations

import string
import subprocess
import sys

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.drawings import font
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


@pytest.mark.parametrize("bold", [False, True])
@pytest.mark.parametrize("sign", [*string.printable.split()[0], *" °·²³µ×–—−…éäß\u00a0½±≥≤öüÄÖÜ‘’“”Ωя"])
def test_a_width_is_the_fonts_own(sign: str, bold: bool) -> None:
    assert text_width(sign, 1000.0, bold) == pytest.approx(font.widths(bold)[ord(sign)], abs=0.51)


@pytest.mark.parametrize("bold", [False, True])
def test_a_sign_that_the_font_lacks_counts_as_the_widest(bold: bool) -> None:
    assert text_width("漢", 1000.0, bold) >= max(*font.widths(False).values(), *font.widths(True).values()) - 0.51


def test_common_words_are_measured_without_the_fonts_file() -> None:
    asked = "from anchorwatt.drawings.lettering import text_width; text_width('5 °C × 3 – “bank”', 9.0)"
    code = f"import sys; {asked}; print('fontTools' in sys.modules)"
    assert subprocess.run([sys.executable, "-c", code], capture_output=True, text=True, check=True).stdout == "False\n"
