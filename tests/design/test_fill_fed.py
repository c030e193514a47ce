"""What takes alternating current aboard, and what nobody said of it."""

from __future__ import annotations

import math
from pathlib import Path

import pytest
from tests.design.sample import SAMPLE

from anchorwatt import design
from anchorwatt.design.specification import Fed, FedFrom, Specification
from anchorwatt.errors import BadDesign


def specified(*changes: tuple[str, str]) -> Specification:
    text = SAMPLE
    for old, new in changes:
        assert text.count(old) == 1
        text = text.replace(old, new)
    return design.specify(design.parse(text))


def transformer(unit: str, shore: str = "") -> tuple[str, str]:
    return "ac:\n", f"ac:\n{shore}  transformer: {unit}\n"


def named(made: Specification, name: str) -> Fed:
    (one,) = [one for one in made.fed if one.name == name]
    return one


def test_the_charger_hangs_at_the_inlet_and_loads_at_the_panel() -> None:
    made = specified()
    assert named(made, "charger").fed_from is FedFrom.SHORE
    assert {one.fed_from for one in made.fed if one.key.startswith(("ac.loads", "cooling"))} == {FedFrom.PANEL}


def test_what_is_only_compared_with_is_not_fed() -> None:
    assert not any("alternative" in one.key for one in specified().fed)


def test_a_row_that_says_nothing_stays_unknown() -> None:
    made = specified(("appliance: television and chargers", "appliance: water heater"))
    (silent,) = [one for one in made.fed if one.key.startswith("ac.loads")]
    assert all(math.isnan(end) for end in silent.voltages)


def test_a_transformer_bears_a_tenth_either_way_of_the_primary_voltage_that_is_typed() -> None:
    made = specified(transformer("{unit: {like: isolation transformer 2 kVA, primary_voltage: 120 V}}"))
    assert named(made, "transformer").voltages == pytest.approx((108.0, 132.0))


def test_a_transformer_whose_primary_voltage_nobody_typed_stays_unknown() -> None:
    made = specified(transformer("isolation transformer 2 kVA", "  shore: 230 V 16 A\n"))
    assert all(math.isnan(end) for end in named(made, "transformer").voltages)
    assert made.transformer is not None
    assert not made.transformer.primary_said


def test_an_inverter_that_says_nothing_of_its_output_stays_unknown() -> None:
    assert math.isnan(specified().inverter.output_voltage)


def test_the_output_of_an_inverter_is_taken_as_typed() -> None:
    made = specified(("    unit: inverter 24 V 3 kW\n", "    unit: inverter 24 V 3 kW\n    output_voltage: 230 V\n"))
    assert made.inverter.output_voltage == 230.0


def test_a_frequency_of_shore_power_that_nobody_typed_is_an_estimate_and_says_so() -> None:
    shore = "  shore: {voltage: 230 V, current: 16 A, continuous_share: 80 %}\n"
    made = specified(("ac:\n", f"ac:\n{shore}"))
    assert made.shore is not None
    assert (made.shore.frequency, made.shore.frequency_said) == (50.0, False)
    assert "ac.shore.frequency" in [one.key for one in made.estimates]


def test_a_range_that_falls_is_refused_with_its_place() -> None:
    backwards = "{like: charger 24 V 1.7 kW, voltage_range: [240 V, 100 V]}"
    with pytest.raises(BadDesign, match="the lowest first"):
        specified(("    unit: charger 24 V 1.7 kW\n", f"    unit: {backwards}\n"))


def test_a_wish_knows_its_line(tmp_path: Path) -> None:
    path = tmp_path / "boat.yaml"
    path.write_text(SAMPLE + "wiring:\n  circuits:\n    W999: {fuse: 10 A}\n", "utf-8")
    (wish,) = design.read(path).specification.wiring.wishes
    line = path.read_text("utf-8").splitlines().index("    W999: {fuse: 10 A}") + 1
    assert wish.where.endswith(f"boat.yaml:{line}")
