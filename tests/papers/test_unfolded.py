from __future__ import annotations

from anchorwatt.papers.unfolded import unfolded


def test_what_is_nested_keeps_its_whole_key() -> None:
    assert unfolded("bank", {"life": {"cycles": 3000}}) == {"bank": [{"key": "life.cycles", "value": 3000}]}


def test_a_list_within_a_mapping_is_a_table_of_its_own() -> None:
    assert unfolded("power", {"inverter": {"curve": [{"W": 1.0}, {"W": 2.0}]}}) == {
        "power_inverter_curve": [{"W": 1.0}, {"W": 2.0}]
    }


def test_rows_of_a_list_within_a_list_say_what_they_are_of() -> None:
    found = unfolded("voltage", {"voltages": [{"V": 24, "runs": [{"A": 5}]}, {"V": 48, "runs": [{"A": 2.5}]}]})
    assert found["voltage_voltages_runs"] == [{"of.V": 24, "A": 5}, {"of.V": 48, "A": 2.5}]


def test_words_of_a_list_stay_in_one_cell() -> None:
    assert unfolded("bank", {"cautions": ["Fuse it.", "Insulate it."]})["bank"] == [
        {"key": "cautions", "value": "Fuse it.; Insulate it."}
    ]


def test_a_value_that_is_not_known_is_kept_as_such() -> None:
    assert unfolded("bank", {"price": None})["bank"] == [{"key": "price", "value": None}]
