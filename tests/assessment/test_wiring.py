"""The wire schedule of an assessment."""

from __future__ import annotations

from dataclasses import replace

import pytest

from anchorwatt import design
from anchorwatt.assessment.wiring import wiring_story
from anchorwatt.errors import BadDesign
from anchorwatt.sizing.wiring import wiring
from tests.design.strategies import as_text
from tests.design.test_specify import minimal
from tests.sizing.test_circuits import WISH, rich, simulation


def test_a_circuit_that_is_not_there_is_told_where_it_stands() -> None:
    read = design.parse(as_text(minimal(wiring={"circuits": {"W999": {"length": "2 m"}}})))
    specification = rich()
    wished = replace(specification, wiring=replace(specification.wiring, wishes=(replace(WISH, tag="W999"),)))
    with pytest.raises(BadDesign, match=r"wiring\.circuits\.W999: found no circuit “W999”.*a tag from W1 to W"):
        wiring_story(read, wished, wiring(wished, simulation()))


def test_every_end_is_explained() -> None:
    specification = rich()
    story = wiring_story(design.parse(as_text(minimal())), specification, wiring(specification, simulation()))
    tags = dict(story.ends)
    for one in story.wiring.circuits:
        assert {one.circuit.start, one.circuit.end} <= set(tags)
