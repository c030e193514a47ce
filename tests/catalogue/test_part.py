"""The register of kinds and the look-up of rows."""

from __future__ import annotations

import pytest

from anchorwatt import catalogue
from anchorwatt.catalogue import NotInCatalogue, Part, kind

KINDS = catalogue.kinds()


@pytest.mark.parametrize("name", KINDS)
def test_every_row_of_a_kind_is_a_record_with_a_name_and_a_source(name: str) -> None:
    rows = catalogue.rows(name)
    assert rows
    for title, row in rows.items():
        assert row.name == title
        assert row.source
        assert row.source != Part.model_fields["source"].default


PARTS = (
    "air_handler",
    "alternator",
    "battery_module",
    "charger",
    "chilled_water_unit",
    "condensing_unit",
    "engine",
    "generator",
    "inverter",
    "self_contained_unit",
    "solar_panel",
    "transformer",
)


@pytest.mark.parametrize("name", PARTS)
def test_parts_that_one_could_buy_are_invented_and_say_so(name: str) -> None:
    assert all(row.source.startswith("invented") for row in catalogue.rows(name).values())


def test_a_kind_cannot_be_registered_twice() -> None:
    with pytest.raises(ValueError, match="has a kind 'transformer' already"):

        @kind("transformer")
        class Another(Part):
            pass


def test_an_unknown_kind_and_an_unknown_row_are_refused_with_the_nearest() -> None:
    with pytest.raises(NotInCatalogue, match="no kind “transfomer”, perhaps “transformer”; allowed: "):
        catalogue.rows("transfomer")
    with pytest.raises(NotInCatalogue, match="no cover “awnig”, perhaps “awning”; allowed: one of: none"):
        catalogue.find("cover", "awnig")


def test_a_record_never_changes() -> None:
    with pytest.raises(ValueError, match="frozen"):
        catalogue.find("cover", "awning").name = "tent"  # type: ignore[misc]
