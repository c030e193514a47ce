"""The float that remembers its author's text."""

from __future__ import annotations

import copy
import json
import pickle

import pytest

from anchorwatt.units import Quantity, parse

HEIGHT = parse("6 ft 4 in", "length")


def facts(quantity: Quantity) -> tuple[float, str, str, str]:
    return float(quantity), quantity.text, quantity.dimension, quantity.unit


def test_it_is_its_si_value() -> None:
    assert HEIGHT == 1.9304
    assert HEIGHT + 1 == 1.9304 + 1
    assert isinstance(HEIGHT, float)


def test_arithmetic_forgets_the_text() -> None:
    assert type(HEIGHT * 2) is float
    assert type(-HEIGHT) is float


@pytest.mark.parametrize("protocol", range(pickle.HIGHEST_PROTOCOL + 1))
def test_pickle_keeps_all(protocol: int) -> None:
    assert facts(pickle.loads(pickle.dumps(HEIGHT, protocol))) == facts(HEIGHT)


def test_copies_keep_all() -> None:
    assert facts(copy.copy(HEIGHT)) == facts(HEIGHT)
    assert facts(copy.deepcopy([HEIGHT])[0]) == facts(HEIGHT)


def test_repr_gives_it_back() -> None:
    assert facts(eval(repr(HEIGHT), {"Quantity": Quantity})) == facts(HEIGHT)


def test_as_text_it_is_what_was_written_and_with_a_format_its_value() -> None:
    assert f"{HEIGHT}" == str(HEIGHT) == "6 ft 4 in"
    assert f"{HEIGHT:.2f}" == "1.93"


def test_json_holds_its_value() -> None:
    assert json.dumps([HEIGHT]) == "[1.9304]"


def test_it_equals_and_hashes_by_value() -> None:
    same = parse("1.9304 m", "length")
    assert same == HEIGHT
    assert hash(HEIGHT) == hash(same)


@pytest.mark.parametrize("name", ["text", "dimension", "unit", "other"])
def test_it_cannot_change(name: str) -> None:
    with pytest.raises(AttributeError, match="cannot change"):
        setattr(HEIGHT, name, "x")
    with pytest.raises(AttributeError, match="cannot change"):
        delattr(HEIGHT, name)
