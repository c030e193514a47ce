"""The engines' own battery, and the shade on solar panels."""

from __future__ import annotations

from typing import Any

import pytest
from tests.design.strategies import as_text
from tests.design.test_specify import SIDES, minimal

from anchorwatt import catalogue, design
from anchorwatt.design.fill_engine_battery import LOAD, mean_output
from anchorwatt.design.specification import EngineBattery, Specification
from anchorwatt.errors import BadDesign

UNIT = "dc-dc 24 to 12 V 20 A"
ENGINE_ROOM = {"use": "machinery", "deck": "below", "floor_area": "5 m2", "sides": SIDES}


def text(battery: dict[str, Any] | None, **dc: Any) -> str:
    parts = {**minimal()["dc"], **dc}
    if battery is not None:
        parts["engine_battery"] = battery
    return as_text(minimal(dc=parts, cabins={**minimal()["cabins"], "engine room": ENGINE_ROOM}))


def specified(battery: dict[str, Any] | None, **dc: Any) -> Specification:
    return design.specify(design.parse(text(battery, **dc)))


def made(**battery: Any) -> EngineBattery:
    found = specified({"unit": UNIT, **battery}).engine_battery
    assert found is not None
    return found


def problems(battery: dict[str, Any] | None, **dc: Any) -> str:
    with pytest.raises(BadDesign) as caught:
        design.parse(text(battery, **dc))
    return str(caught.value)


def test_there_is_none_unless_the_file_says_so() -> None:
    boat = specified(None)
    assert boat.engine_battery is None
    assert LOAD not in [load.name for load in boat.loads]


def test_what_is_typed_is_taken() -> None:
    found = made(standing_load="9 W", start_energy="12 kJ", starts_per_day=6)
    assert (found.standing_load, found.start_energy, found.starts_per_day) == (9.0, 12e3, 6.0)
    assert mean_output(found) == 9.0 + 72e3 / 86_400.0


def test_what_is_not_typed_is_on_the_list_of_estimates() -> None:
    def told(**battery: Any) -> set[str]:
        boat = specified({"unit": UNIT, **battery})
        return {one.key for one in boat.estimates if one.key.startswith("dc.engine_battery")}

    names = {"standing_load", "start_energy", "starts_per_day"}
    assert told() == {f"dc.engine_battery.{name}" for name in names}
    assert told(standing_load="9 W") == {f"dc.engine_battery.{name}" for name in names - {"standing_load"}}


def test_a_larger_engine_takes_more_to_start() -> None:
    """1.2 kW for each litre through 4 s, from memory: 4.5 L take 6 Wh."""
    assert made().start_energy == pytest.approx(4.5 * 1200.0 * 4.0)


def test_it_hangs_on_the_direct_current_bus_day_and_night() -> None:
    boat = specified({"unit": UNIT})
    (load,) = [load for load in boat.loads if load.name == LOAD]
    assert not load.alternating
    assert load.power > mean_output(made()) + 5.0
    row = boat.loads.index(load)
    assert all(period.running[row] == 1.0 for period in boat.plan)


def test_its_losses_and_no_more_warm_its_compartment() -> None:
    found = made(cabin="engine room")
    boat = specified({"unit": UNIT, "cabin": "engine room"})
    (load,) = [load for load in boat.loads if load.name == LOAD]
    assert load.cabin == found.converter.cabin == 2
    assert load.power * load.sensible_share == pytest.approx(load.power - mean_output(found))


def test_a_converter_for_another_bank_is_refused() -> None:
    told = problems({"unit": "dc-dc 48 to 12 V 20 A"})
    assert "dc.engine_battery.unit" in told
    assert "from 48 V" in told
    assert "24 V" in told


def test_a_converter_for_another_battery_is_refused() -> None:
    assert "to 24 V" in problems({"unit": "dc-dc 24 to 24 V 12 A"})
    assert made(unit="dc-dc 24 to 24 V 12 A", voltage="24 V").voltage == 24.0


def test_a_compartment_that_is_not_there_is_refused() -> None:
    assert "engine rom" in problems({"unit": UNIT, "cabin": "engine rom"})


def test_a_load_of_the_same_name_is_refused() -> None:
    assert "another name" in problems({"unit": UNIT}, loads={LOAD: {"appliance": "anchor light"}})


@pytest.mark.parametrize("name", catalogue.names("dc_dc"))
def test_a_converter_is_named_after_what_it_does(name: str) -> None:
    unit = catalogue.find("dc_dc", name)
    ends = f"{unit.input_voltage:g} to {unit.output_voltage:g} V"  # type: ignore[attr-defined]
    assert ends in name


PANELS = {"panel": "rigid panel 400 W", "count": 2}


class TestShading:
    def share(self, **changes: Any) -> float:
        found = specified(None, solar={**PANELS, **changes}).solar
        assert found is not None
        return found.delivered_share

    def test_it_multiplies_what_comes_after_it(self) -> None:
        assert self.share(shading="80 %", delivered_share="90 %") == pytest.approx(0.72)

    def test_by_itself_it_leaves_dirt_and_wiring_to_be_estimated(self) -> None:
        assert self.share(shading="80 %") == pytest.approx(0.8 * 0.88)
        (told,) = [
            one
            for one in specified(None, solar={**PANELS, "shading": "80 %"}).estimates
            if one.key == "dc.solar.delivered_share"
        ]
        assert told.value == "88 %"
        assert "shading" in told.rule

    def test_without_it_the_estimate_counts_shade_in(self) -> None:
        assert self.share() == 0.75
        assert self.share() < 0.88
