"""The pattern that an editor checks a text with."""

from __future__ import annotations

import re

import pytest

from anchorwatt.units import DIMENSIONS
from anchorwatt.units.pattern import pattern_of


@pytest.mark.parametrize("dimension", sorted(DIMENSIONS))
def test_it_has_only_what_javascript_has_too(dimension: str) -> None:
    pattern = pattern_of(dimension)
    assert set(re.findall(r"\\(.)", pattern)) <= set("s^$.*+?()[]{}|\\/")
    assert set(re.findall(r"\(\?(.)", pattern)) <= {":"}


@pytest.mark.parametrize("dimension", sorted(DIMENSIONS))
@pytest.mark.parametrize("text", ["", "12", "12.5", "twelve", "12 furlong", "12 m s", "1 ft; rm", "nan", "0,5 m"])
def test_it_marks_what_the_reader_refuses(dimension: str, text: str) -> None:
    assert not re.search(pattern_of(dimension), text)


@pytest.mark.parametrize("text", ["1" * 50_000, "1 " * 25_000, "1 ft " * 10_000, "1/" * 25_000, "½" * 50_000])
def test_a_long_text_does_not_hang_it(text: str) -> None:
    assert not re.search(pattern_of("length"), text[:2000] + "!")
