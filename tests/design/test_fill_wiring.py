"""How a boat is wired, where the file says so and where it does not."""

from __future__ import annotations

import math
from typing import Any

import pytest
from tests.design.strategies import as_text
from tests.design.test_specify import minimal

from anchorwatt import design
from anchorwatt.design.specification import Regime, Wiring
from anchorwatt.errors import BadDesign


def filled(**section: Any) -> Wiring:
    return design.specify(design.parse(as_text(minimal(wiring=section)))).wiring


def refused(**section: Any) -> str:
    with pytest.raises(BadDesign) as caught:
        design.parse(as_text(minimal(wiring=section)))
    return str(caught.value)


def circuit(**entry: Any) -> dict[str, Any]:
    return {"circuits": {"W3": entry}}


def test_a_boat_measured_in_feet_follows_abyc_in_gauges() -> None:
    found = filled()
    assert (found.regime, found.metric, found.insulation) == (Regime.ABYC, False, 105.0)


@pytest.mark.parametrize(("regime", "metric"), [("33 CFR 183", False), ("ABYC E-11", False), ("ISO 13297", True)])
def test_sizes_follow_the_rules(regime: str, metric: bool) -> None:
    found = filled(regime=regime)
    assert (found.regime.value, found.metric) == (regime, metric)


def test_sizes_may_be_typed_over_the_rules() -> None:
    assert not filled(regime="ISO 13297", sizes="gauge").metric


def test_what_nobody_typed_is_among_the_estimates() -> None:
    keys = {one.key for one in design.specify(design.parse(as_text(minimal()))).estimates}
    assert {"wiring.regime", "wiring.insulation", "wiring.routing_factor", "wiring.energy_price"} <= keys


def test_a_circuit_is_taken_as_typed() -> None:
    typed = circuit(length="12 ft", conductor="2/0 AWG", parallel=2, fuse="300 A", family="class T", bundled=4)
    wish = filled(**typed, energy_price="0.36 EUR").wishes[0]
    assert (wish.tag, wish.conductor, wish.parallel, wish.fuse, wish.family) == ("W3", "2/0 AWG", 2, 300.0, "class T")
    assert math.isclose(wish.length, 12 * 0.3048)
    assert math.isnan(wish.highest_drop)


def test_the_price_of_energy_is_that_of_a_kilowatt_hour() -> None:
    assert math.isclose(filled(energy_price="0.36 EUR").energy_price, 1e-7)


@pytest.mark.parametrize("spelling", ["70 mm2", "70 mm²", " 70 mm² "])
def test_a_size_is_known_in_its_usual_spellings(spelling: str) -> None:
    assert filled(regime="ISO 13297", **circuit(conductor=spelling)).wishes[0].conductor == "70 mm²"


def test_a_gauge_is_known_however_it_is_written() -> None:
    assert filled(**circuit(conductor="AWG 4/0")).wishes[0].conductor == "4/0 AWG"


@pytest.mark.parametrize(
    ("section", "words"),
    [
        (circuit(length="-2 m"), 'wiring.circuits.W3.length: found "-2 m"'),
        (circuit(conductor="71 mm²"), "no standard size; nearest are 70 mm² and 95 mm²"),
        (circuit(conductor="5 AWG"), "no standard size; nearest are 6 AWG and 4 AWG"),
        (circuit(conductor="thick"), 'no size "thick"'),
        (circuit(conductor=70), "as a size"),
        (circuit(fuse="none"), "wiring.circuits.W3.fuse: found a loop without a fuse"),
        (circuit(fuse=False), "wiring.circuits.W3.fuse: found a loop without a fuse"),
        (circuit(conductor="70 mm²"), "70 mm² where the boat is wired in gauges"),
        ({"regime": "ISO 13297", "insulation": "75 °C"}, "allowed: one of: 60 °C, 70 °C"),
        ({"regime": "none"}, "wiring.regime"),
        ({"energy_price": "0.5 GBP"}, "a price in GBP"),
        ({"energy_price": "0.5"}, "wiring.energy_price"),
        ({"routing_factor": 0.5}, "wiring.routing_factor"),
    ],
)
def test_what_cannot_be_is_told_where_it_stands(section: dict[str, Any], words: str) -> None:
    message = refused(**section)
    assert words in message
    assert message.startswith("text:")
