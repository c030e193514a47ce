"""Designs as values."""

from __future__ import annotations

import copy
import pickle

import pytest
from tests.design.sample import SAMPLE, changed

from anchorwatt import design
from anchorwatt.units import parse


def test_designs_are_equal_when_their_files_say_the_same() -> None:
    sample = design.parse(SAMPLE)
    assert sample == design.parse("# with a remark\n" + SAMPLE)
    assert hash(sample) == hash(design.parse(SAMPLE))
    assert sample != design.parse(changed("beam: 4 m", "beam: 4.1 m"))


@pytest.mark.parametrize("starter", design.starters())
def test_a_design_survives_copying_and_another_process(starter: str) -> None:
    made = design.parse(design.starter_text(starter))
    for again in (pickle.loads(pickle.dumps(made)), copy.deepcopy(made)):
        assert again == made
        assert repr(design.specify(again)) == repr(design.specify(made))


def test_a_design_never_changes() -> None:
    with pytest.raises(ValueError, match="frozen"):
        design.parse(SAMPLE).boat.beam = parse("5 m", "length")  # type: ignore[misc]
