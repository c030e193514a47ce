from __future__ import annotations

import json

import pytest

from anchorwatt import catalogue as parts
from anchorwatt.catalogue import NotInCatalogue
from anchorwatt.cli.terminal import show
from anchorwatt.papers import catalogue
from anchorwatt.papers.as_json import printed


@pytest.mark.parametrize("kind", parts.kinds())
def test_every_kind_can_be_shown_and_put_into_json(kind: str, capsys: pytest.CaptureFixture[str]) -> None:
    found = catalogue.content(kind, None)
    show(catalogue.screen(found, "us"))
    assert parts.names(kind)[0].split()[0] in capsys.readouterr().out
    assert len(json.loads(printed(catalogue.plain(found)))["rows"]) == len(parts.names(kind))


def test_the_list_of_kinds_names_them_all(capsys: pytest.CaptureFixture[str]) -> None:
    show(catalogue.screen(catalogue.content(None, None), "si"))
    out = capsys.readouterr().out
    assert all(kind in out for kind in parts.kinds())


def test_one_row_shows_where_it_is_from(capsys: pytest.CaptureFixture[str]) -> None:
    show(catalogue.screen(catalogue.content("inverter", parts.names("inverter")[0]), "si"))
    assert "invented" in capsys.readouterr().out


def test_a_kind_may_be_written_with_blanks() -> None:
    assert catalogue.content("air handler", None).kind == "air_handler"


def test_a_quantity_in_json_has_figure_unit_and_what_was_written() -> None:
    (row,) = catalogue.plain(catalogue.content("inverter", "inverter 24 V 5 kW"))["rows"]
    assert row["rated_power"] == {"value": 5000.0, "unit": "W", "written": "5 kW"}


def test_an_unknown_kind_names_the_nearest() -> None:
    with pytest.raises(NotInCatalogue, match="perhaps “inverter”"):
        catalogue.content("invertor", None)
