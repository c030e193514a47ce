"""The register of serial numbers."""

from __future__ import annotations

import pytest

from anchorwatt.assessment import assess
from anchorwatt.design.editing import edit
from anchorwatt.errors import BadDesign
from tests.starters import assessed


def test_every_part_is_registered_where_it_stands() -> None:
    found = assessed("trawler-14m")
    assert [one.item for one in found.register] == list(found.specification.items)
    assert {one.item.tag: one.place for one in found.register}["G1"] == "bank box"


def test_a_part_in_no_space_stands_in_its_cabin() -> None:
    found = assessed("trawler-14m")
    loose = [one for one in found.register if one.item.space < 0 <= one.item.cabin]
    assert loose
    assert [one.place for one in loose] == [found.specification.cabins[one.item.cabin].name for one in loose]


def test_a_serial_number_goes_to_its_part_alone() -> None:
    named = assess(edit(assessed("cutter-12m").design, "serials", {"T1": "1234-AB"}))
    assert {one.item.tag: one.serial for one in named.register if one.serial} == {"T1": "1234-AB"}


def test_a_tag_that_no_part_has_is_told_with_its_line() -> None:
    design = edit(assessed("cutter-12m").design, "serials", {"T1": "1", "T99": "2"})
    line = next(n for n, text in enumerate(design.document.text.splitlines(), 1) if "T99" in text)
    with pytest.raises(BadDesign, match=rf":{line}: serials\.T99: found no part “T99”.*allowed: one of: .*T1"):
        assess(design).register  # noqa: B018
