"""The replaced lead-acid bank: what fits the boat's voltage, and what is refused."""

from __future__ import annotations

from typing import Any

import pytest
from tests.design.strategies import as_text
from tests.design.test_specify import minimal

from anchorwatt import catalogue, design
from anchorwatt.design.specification import LeadAcidBank
from anchorwatt.errors import BadDesign


def parsed(**replaced: Any) -> design.Design:
    dc = {**minimal()["dc"], "replaced_bank": replaced}
    return design.parse(as_text(minimal(dc=dc)))


def made(**replaced: Any) -> LeadAcidBank:
    found = design.specify(parsed(**replaced)).replaced
    assert found is not None
    return found


def refused(**replaced: Any) -> str:
    with pytest.raises(BadDesign) as caught:
        parsed(**replaced)
    return str(caught.value)


def test_series_adds_voltage_and_parallel_adds_capacity() -> None:
    bank = made(battery="AGM 6 V 220 Ah", series=4, parallel=2)
    assert bank.nominal_voltage == 24.0
    assert bank.capacity == pytest.approx(440.0 * 3600.0)
    assert bank.resistance == pytest.approx(4.0 * 1.6e-3 / 2.0)
    assert bank.full_voltage == pytest.approx(25.6)
    assert bank.mass == pytest.approx(8.0 * 33.0)
    assert bank.charge_rate * 3600.0 == pytest.approx(0.35)


def test_none_is_named_none_is_compared() -> None:
    assert design.specify(design.parse(as_text(minimal()))).replaced is None


@pytest.mark.parametrize("name", catalogue.names("lead_acid_battery"))
@pytest.mark.parametrize("series", [1, 2, 3, 4, 5, 8])
def test_only_what_makes_the_boats_voltage_is_taken(name: str, series: int) -> None:
    battery = catalogue.find("lead_acid_battery", name)
    voltage = float(battery.nominal_voltage)  # type: ignore[attr-defined]
    if series * voltage == 24.0:
        assert made(battery=name, series=series, parallel=1).nominal_voltage == 24.0
    else:
        text = refused(battery=name, series=series, parallel=1)
        assert "dc.replaced_bank.series" in text
        assert f"{24.0 / voltage:g} in series" in text


def test_a_voltage_that_no_series_makes_says_so() -> None:
    """9 V is not one of the catalogue's."""
    odd = {
        "like": "flooded 6 V 225 Ah",
        "nominal_voltage": "9 V",
        "full_voltage": "9.5 V",
        "empty_voltage": "8.8 V",
        "absorb_voltage": "11 V",
    }
    assert "batteries whose voltage divides it" in refused(battery=odd, series=3, parallel=1)


def test_too_many_strings_are_refused() -> None:
    assert "at most 4 in parallel" in refused(battery="AGM 12 V 105 Ah", series=2, parallel=5)


@pytest.mark.parametrize("count", [0, -1, 2.5, "two"])
def test_an_impossible_count_is_refused(count: Any) -> None:
    assert "dc.replaced_bank.series" in refused(battery="AGM 12 V 105 Ah", series=count, parallel=1)


def test_a_mixed_bank_is_refused() -> None:
    """A bank is of one battery; a list of several is none."""
    text = refused(battery=["AGM 12 V 105 Ah", "flooded 12 V 110 Ah"], series=2, parallel=1)
    assert "dc.replaced_bank.battery" in text


def test_a_name_that_is_not_there_gets_the_nearest() -> None:
    assert "perhaps “AGM 12 V 105 Ah”" in refused(battery="AGM 12 V 106 Ah", series=2, parallel=1)


def test_voltages_that_do_not_fit_each_other_are_refused() -> None:
    wrong = {"like": "AGM 12 V 105 Ah", "absorb_voltage": "12.5 V"}
    assert "empty below full below absorb voltage" in refused(battery=wrong, series=2, parallel=1)
    wrong = {"like": "AGM 12 V 105 Ah", "full_voltage": "14 V"}
    assert "about 12.72 V" in refused(battery=wrong, series=2, parallel=1)
