from __future__ import annotations

import csv
import io
from pathlib import Path

import pytest
from tests.papers import fake

from anchorwatt.papers.as_csv import csv_files

EVERYTHING = ("assess", "cabins", "night", "day", "recharge")


def rows(text: str) -> list[dict[str, str]]:
    return list(csv.DictReader(io.StringIO(text)))


def test_each_table_is_a_file_of_its_own() -> None:
    names = {path.name for path in csv_files(fake.assessment(), Path("out"), EVERYTHING)}
    assert names == {
        *("headline.csv", "comparison.csv", "estimates.csv", "checks.csv"),
        *("cabins.csv", "night.csv", "day.csv", "recharge.csv"),
    }


def test_series_have_keys_as_headings_and_figures_in_their_units() -> None:
    (text,) = csv_files(fake.assessment(), Path(), ("night",)).values()
    last = rows(text)[-1]
    assert (last["clock"], last["time_s"]) == ("07:00", str(31 * 3600))
    assert float(last["charge_pct"]) == pytest.approx(36.0)
    assert float(last["outdoor_temperature_C"]) == pytest.approx(26.0)


def test_a_cabin_carries_its_gains_in_columns() -> None:
    (text,) = csv_files(fake.assessment(), Path(), ("cabins",)).values()
    assert rows(text)[0]["gain_W.sun through glass"] == "400.0"
    assert rows(text)[1]["gain_W.sun through glass"] == ""


def test_texts_with_commas_stay_in_one_field() -> None:
    (text,) = csv_files(fake.assessment(), Path(), ("cabins",)).values()
    assert rows(text)[0]["gain_W.walls, decks and neighbours"] == "-12.0"


def test_a_boat_without_an_alternator_has_no_recharge_file() -> None:
    assert csv_files(fake.assessment(recharge=None), Path(), ("recharge",)) == {}
