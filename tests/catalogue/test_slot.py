"""A slot takes a name, a name with changes, or a full record."""

from __future__ import annotations

from typing import Annotated, Any

import pytest
from pydantic import TypeAdapter, ValidationError

from anchorwatt.catalogue.cover import Cover
from anchorwatt.catalogue.slot import Slot
from anchorwatt.catalogue.transformer import Transformer, TransformerSlot

COVER: TypeAdapter[Cover] = TypeAdapter(Annotated[Cover, Slot("cover")])
TRANSFORMER: TypeAdapter[Transformer] = TypeAdapter(TransformerSlot)


def test_a_name_takes_the_row() -> None:
    assert COVER.validate_python("awning").factor.text == "22 %"


def test_a_change_keeps_the_other_figures_and_says_so_in_the_source() -> None:
    made = TRANSFORMER.validate_python({"like": "isolation transformer 5 kVA", "core_loss": "30 W"})
    assert (made.core_loss, made.copper_loss) == (30.0, 140.0)
    assert made.source == "invented; core_loss typed in the design file"


def test_a_full_record_needs_no_row() -> None:
    made = COVER.validate_python({"factor": "41 %"})
    assert (made.factor.text, made.source) == ("41 %", "typed in the design file")


@pytest.mark.parametrize(
    ("value", "place", "words"),
    [
        ("awnig", (), "perhaps “awning”"),
        ({"like": "awnig"}, ("like",), "perhaps “awning”"),
        ({"like": 7}, ("like",), "the name of a cover"),
        ({"like": "awning", "faktor": "3 %"}, ("faktor",), ""),
        ({"like": "awning", "factor": "3 m"}, ("factor",), "3 m"),
        ({}, ("factor",), ""),
        (7, (), ""),
    ],
)
def test_what_is_wrong_is_told_where_it_stands(value: Any, place: tuple[str, ...], words: str) -> None:
    with pytest.raises(ValidationError) as caught:
        COVER.validate_python(value)
    error = caught.value.errors()[0]
    assert error["loc"] == place
    assert words in error["msg"]
