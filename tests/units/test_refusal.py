"""How a refusal reads."""

from __future__ import annotations

import pickle

import pytest

from anchorwatt.units.refusal import Refused, name_of_kind, quoted


def test_it_survives_pickle() -> None:
    refusal = pickle.loads(pickle.dumps(Refused('"x"', "a length")))
    assert (refusal.found, refusal.allowed, str(refusal)) == (
        '"x"',
        "a length",
        'found "x"; allowed: a length',
    )


@pytest.mark.parametrize(
    ("text", "shown"),
    [("12 ft", '"12 ft"'), ("a\nb\x1b", '"a\\nb\\x1b"'), ("x" * 41, '"' + "x" * 40 + '…"')],
)
def test_what_was_written_is_quoted_on_one_short_line(text: str, shown: str) -> None:
    assert quoted(text) == shown


@pytest.mark.parametrize(
    ("value", "name"),
    [
        (True, "a yes/no value"),
        (12, "the bare number 12"),
        (0.5, "the bare number 0.5"),
        (10**400, "the bare number a huge integer"),
        (None, "nothing"),
        ([1], "a list"),
        ({1: 2}, "a mapping"),
        (b"x", "a bytes"),
    ],
)
def test_what_is_no_text_is_named(value: object, name: str) -> None:
    assert name_of_kind(value) == name
