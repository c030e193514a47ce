"""The schematics of seawater, refrigerant, air and condensate."""

from __future__ import annotations

import re
from collections import Counter
from dataclasses import replace
from functools import lru_cache

import pytest
from tests.drawings import measures

from anchorwatt import design
from anchorwatt.assessment import Assessment, assess
from anchorwatt.design.specification import Handler, Specification
from anchorwatt.drawings.sheet import Attribute, Item, Path, Placed, Text
from anchorwatt.drawings.sheets.beside import Listed, Words, beside
from anchorwatt.drawings.sheets.body import AIR, REFRIGERANT, WATER, Body, Reference
from anchorwatt.drawings.sheets.condensate import condensate_sheets
from anchorwatt.drawings.sheets.ducts import duct_sheets
from anchorwatt.drawings.sheets.frame import framed, titles
from anchorwatt.drawings.sheets.listing import Column, Row
from anchorwatt.drawings.sheets.paper import PAPERS, Paper, PaperName
from anchorwatt.drawings.sheets.refrigerant import refrigerant_sheets
from anchorwatt.drawings.sheets.seawater import seawater_sheets
from anchorwatt.drawings.sheets.sheet_set import Layout
from anchorwatt.units import System, show

STARTERS = ("trawler-14m", "catamaran-13m", "cutter-12m")
LAYOUTS: tuple[Layout, ...] = (seawater_sheets, refrigerant_sheets, duct_sheets, condensate_sheets)
BY_HANDLER: tuple[Layout, ...] = (refrigerant_sheets, duct_sheets, condensate_sheets)
A3 = PAPERS["A3"]
HOSTILE = '<b>&"%%c\\U+2205^J{=1+1}' + "W" * 200


@lru_cache(maxsize=8)
def assessed(starter: str) -> Assessment:
    return assess(design.parse(design.starter_text(starter)))


@lru_cache(maxsize=1)
def longer() -> Assessment:
    """The cutter with one handler more, at the end of the list."""
    text = design.starter_text("cutter-12m")
    last = "      aft cabin: {unit: air handler 4 kBtu/h, cabin: aft cabin}\n"
    assert text.count(last) == 1
    return assess(design.parse(text.replace(last, last + last.replace("aft cabin:", "second saloon:"))))


def changed(specification: Specification) -> Assessment:
    """The cutter with another specification; the condensate stays as it was, so that nothing is simulated anew."""
    made = assess(assessed("cutter-12m").design)
    made.__dict__["specification"] = specification
    made.evidence.__dict__["condensate"] = assessed("cutter-12m").condensate
    return made


def with_handlers(handlers: tuple[Handler, ...]) -> Assessment:
    boat = assessed("cutter-12m").specification
    return changed(replace(boat, plant=replace(boat.plant, handlers=handlers)))


@lru_cache(maxsize=1)
def crowd() -> Assessment:
    """As many handlers as a file may have, with hostile names."""
    one = assessed("trawler-14m").specification.plant.handlers[0]
    outlets = tuple(replace(one.outlets[0], name=f"{HOSTILE} {n}", share=1.0 / 12.0, cabin=0) for n in range(12))
    few, many = replace(one, cabin=0, outlets=outlets[:1]), replace(one, cabin=0, outlets=outlets)
    return with_handlers(tuple(replace(many if n % 7 else few, name=f"{HOSTILE} {n}") for n in range(60)))


def placed(bodies: tuple[Body, ...]) -> list[Placed]:
    return [item for body in bodies for item in body.items if isinstance(item, Placed)]


def keys(bodies: tuple[Body, ...]) -> Counter[str]:
    """How often each part stands on sheets; symbols in a line are the line's."""
    return Counter(item.key for item in placed(bodies) if not item.key.startswith(("line:", "air:")))


def words(bodies: tuple[Body, ...]) -> list[str]:
    return [text.name for body in bodies for text in measures.texts(body)]


def attribute(item: Placed, name: str) -> Attribute:
    return next(one for one in item.attributes if one.name == name)


def tags(assessment: Assessment) -> list[str]:
    """Tags of the handlers, read off the design's list of parts."""
    return [item.tag for item in assessment.specification.items if item.kind == "air_handler"]


def grilles(assessment: Assessment) -> list[str]:
    return [
        f"{tag}.{number}"
        for tag, handler in zip(tags(assessment), assessment.specification.plant.handlers, strict=True)
        for number in range(1, len(handler.outlets) + 1)
    ]


def line_words(bodies: tuple[Body, ...], tag: str) -> list[str]:
    """What stands over and under the line to a thing, or of that tag."""
    found = [item for body in bodies for item in body.items if isinstance(item, Text)]
    return [item.words for item in found if item.key.partition(":")[2] == tag]


def metres(told: str) -> list[float]:
    """Lengths in words in SI units, m."""
    scales = {"mm": 0.001, "m": 1.0}
    return [float(number) * scales[unit] for number, unit in re.findall(r"([\d.]+) (mm|m)\b(?!/|²|³)", told)]


@pytest.mark.parametrize("layout", LAYOUTS)
@pytest.mark.parametrize("system", ["si", "us"])
@pytest.mark.parametrize("paper", PAPERS)
@pytest.mark.parametrize("starter", STARTERS)
def test_nothing_overlaps_and_every_line_ends_on_what_it_joins(
    starter: str, paper: PaperName, system: System, layout: Layout
) -> None:
    for body in layout(assessed(starter), PAPERS[paper], system):
        assert measures.faults(body, PAPERS[paper]) == []
        assert measures.loose(body) == []
        assert measures.crossings(body) == 0


@pytest.mark.parametrize("layout", BY_HANDLER)
@pytest.mark.parametrize("starter", STARTERS)
def test_every_handler_appears_exactly_once(starter: str, layout: Layout) -> None:
    assessment = assessed(starter)
    drawn = keys(layout(assessment, A3, "si"))
    assert {tag: drawn[tag] for tag in tags(assessment)} == dict.fromkeys(tags(assessment), 1)


@pytest.mark.parametrize("starter", STARTERS)
def test_every_grille_and_every_return_grille_appears_exactly_once(starter: str) -> None:
    assessment = assessed(starter)
    drawn = keys(duct_sheets(assessment, A3, "si"))
    wanted = [*grilles(assessment), *(f"{tag}.0" for tag in tags(assessment))]
    assert drawn - Counter(tags(assessment)) == Counter(wanted)


@pytest.mark.parametrize("starter", STARTERS)
def test_every_handler_has_a_liquid_and_a_suction_line_with_a_valve_each(starter: str) -> None:
    assessment = assessed(starter)
    bodies = refrigerant_sheets(assessment, A3, "si")
    valves = Counter(item.key for item in placed(bodies) if item.block.name == "VALVE")
    assert valves == Counter(f"line:{tag}.W{number}" for tag in tags(assessment) for number in (1, 2))


@pytest.mark.parametrize("starter", STARTERS)
def test_refrigerant_lines_are_as_long_as_the_design_says_and_have_no_invented_size(starter: str) -> None:
    assessment = assessed(starter)
    bodies = refrigerant_sheets(assessment, A3, "si")
    for tag, handler in zip(tags(assessment), assessment.specification.plant.handlers, strict=True):
        for number in (1, 2):
            above, below = line_words(bodies, f"{tag}.W{number}")
            assert metres(above) == [pytest.approx(handler.line_length, abs=0.005)]
            assert metres(below) == []


@pytest.mark.parametrize("starter", STARTERS)
def test_ducts_have_the_size_and_the_length_of_the_design(starter: str) -> None:
    assessment = assessed(starter)
    bodies = duct_sheets(assessment, A3, "si")
    ducts = [outlet.duct for handler in assessment.specification.plant.handlers for outlet in handler.outlets]
    for tag, duct in zip(grilles(assessment), ducts, strict=True):
        handler, _, number = tag.partition(".")
        above, _ = line_words(bodies, f"{handler}.W{3 + int(number)}")
        assert metres(above) == [pytest.approx(duct.diameter, abs=0.0005), pytest.approx(duct.length, abs=0.005)]


@pytest.mark.parametrize("starter", STARTERS)
def test_ducts_carry_the_air_that_the_assessment_finds(starter: str) -> None:
    assessment = assessed(starter)
    bodies = duct_sheets(assessment, A3, "si")
    runs = [run for handler in assessment.handlers_air for run in handler.runs]
    for tag, run in zip(grilles(assessment), runs, strict=True):
        handler, _, number = tag.partition(".")
        _, below = line_words(bodies, f"{handler}.W{3 + int(number)}")
        found = re.match(r"(\d+) m³/h, ([\d.]+) m/s", below)
        assert found is not None
        assert float(found[1]) == pytest.approx(3600.0 * run.airflow, abs=0.5)
        assert float(found[2]) == pytest.approx(run.velocity, abs=0.05)


def test_a_duct_that_was_typed_has_no_mark_of_an_estimate_and_its_neighbour_has() -> None:
    bodies = duct_sheets(assessed("trawler-14m"), A3, "us")
    port, starboard = line_words(bodies, "E2.W4"), line_words(bodies, "E2.W5")
    assert [told.count("≈") for told in port] == [2, 1]
    assert [told.count("≈") for told in starboard] == [0, 0]


@pytest.mark.parametrize("starter", STARTERS)
def test_seawater_passes_each_part_once_in_this_order(starter: str) -> None:
    (body,) = seawater_sheets(assessed(starter), A3, "si")
    across = sorted(placed((body,)), key=lambda item: item.at[0])
    assert [item.block.name.partition("-")[0] for item in across] == [
        "THROUGH",
        "VALVE",
        "STRAINER",
        "PUMP",
        "HEAT",
        "OVERBOARD",
    ]


@pytest.mark.parametrize("starter", STARTERS)
def test_seawater_hoses_have_the_size_flow_and_velocity_of_the_assessment(starter: str) -> None:
    assessment = assessed(starter)
    bodies = seawater_sheets(assessment, A3, "si")
    for number in range(1, 5):
        above, below = line_words(bodies, f"E1.W{number}")
        assert metres(above) == [pytest.approx(assessment.specification.plant.sea.diameter, abs=0.0005)]
        flow, velocity = re.findall(r"[\d.]+", below)
        assert float(flow) == pytest.approx(60000.0 * assessment.seawater.flow, abs=0.05)
        assert float(velocity) == pytest.approx(assessment.seawater.hose_velocity, abs=0.05)


@pytest.mark.parametrize("starter", STARTERS)
def test_the_charge_and_the_smallest_cabin_are_those_of_the_assessment(starter: str) -> None:
    assessment = assessed(starter)
    limits = assessment.refrigerant
    assert limits is not None
    told = words(refrigerant_sheets(assessment, A3, "si"))
    cabin = assessment.specification.cabins[limits.cabin].name
    assert told[told.index("charge with those lines") + 1] == show(limits.charge, "mass", "si")
    assert f"smallest cabin: {cabin}" in told


@pytest.mark.parametrize("starter", STARTERS)
def test_litres_by_cabin_add_up_to_those_of_the_boat(starter: str) -> None:
    bodies = condensate_sheets(assessed(starter), A3, "si")
    rows: dict[str, list[str]] = {}
    for body in bodies:
        for item in body.items:
            if isinstance(item, Text) and item.key.startswith("condensate:"):
                rows.setdefault(item.key, []).append(item.words)
    days = {name: float(cells[2].removesuffix(" L")) for name, cells in rows.items()}
    boat = days.pop("condensate:the boat")
    assert sum(days.values()) == pytest.approx(boat, abs=0.05 * len(days) + 0.05)
    assert boat == pytest.approx(assessed(starter).condensate.day, abs=0.05)


def test_all_advice_on_drains_stands_there_with_its_source() -> None:
    assessment = assessed("cutter-12m")
    told = " ".join(words(condensate_sheets(assessment, A3, "si")))
    for one in assessment.drain_advice:
        assert f"{one.text} ({one.source})" in told


@pytest.mark.parametrize(
    ("layout", "layer"),
    [(seawater_sheets, WATER), (refrigerant_sheets, REFRIGERANT), (duct_sheets, AIR), (condensate_sheets, WATER)],
)
def test_lines_lie_on_the_layer_of_what_they_carry(layout: Layout, layer: str) -> None:
    bodies = layout(assessed("cutter-12m"), A3, "si")
    assert {path.layer for body in bodies for path in measures.conductors(body)} == {layer}


@pytest.mark.parametrize("starter", STARTERS)
def test_no_tag_is_that_of_another_thing(starter: str) -> None:
    """Handlers, the condensing unit and the pump are parts of the design; all others are new."""
    assessment = assessed(starter)
    parts = {"E1", "L0", *tags(assessment)}
    seen: Counter[str] = Counter()
    for layout in LAYOUTS:
        own = {attribute(item, "TAG").words for item in placed(layout(assessment, A3, "si"))}
        lines = {
            path.key.partition(":")[2]
            for body in layout(assessment, A3, "si")
            for path in measures.conductors(body)
            if path.key.startswith("line:")
        }
        seen.update((own | lines) - parts)
    assert [tag for tag, count in seen.items() if count > 1] == []
    assert not [tag for tag in seen if not re.fullmatch(r"E\d+\.([CHQRWX]?\d+)", tag)]


def _unmoved(item: Item | Reference, root: str) -> bool:
    """Whether an item is a part other than the one in the middle, or a line."""
    return (isinstance(item, Placed) and item.key != root) or (isinstance(item, Path) and item.key != "")


@pytest.mark.parametrize(
    ("layout", "root"),
    [(seawater_sheets, ""), (refrigerant_sheets, "E1"), (duct_sheets, ""), (condensate_sheets, "E1.C1")],
)
def test_a_handler_added_at_the_end_moves_nothing(layout: Layout, root: str) -> None:
    (before,), (after,) = (layout(one, A3, "si") for one in (assessed("cutter-12m"), longer()))
    drawn = [item for item in before.items if _unmoved(item, root)]
    assert drawn
    assert [item for item in drawn if item not in after.items] == []


@pytest.mark.parametrize("layout", BY_HANDLER)
def test_a_plant_without_handlers_gives_one_sheet_that_says_so(layout: Layout) -> None:
    bodies = layout(with_handlers(()), A3, "si")
    assert len(bodies) == 1
    assert any("nothing that this sheet would show" in told for told in words(bodies))
    assert measures.faults(bodies[0], A3) == []


def test_a_handler_without_an_outlet_still_stands_there() -> None:
    one = replace(assessed("cutter-12m").specification.plant.handlers[0], outlets=())
    bodies = duct_sheets(with_handlers((one,)), A3, "si")
    assert set(keys(bodies)) == {"E2", "E2.0"}


@pytest.mark.parametrize("paper", PAPERS.values(), ids=lambda paper: paper.name)
@pytest.mark.parametrize("layout", BY_HANDLER)
def test_sixty_handlers_with_hostile_names_fill_further_sheets(layout: Layout, paper: Paper) -> None:
    assessment = crowd()
    bodies = layout(assessment, paper, "us")
    assert len({body.name for body in bodies}) == len(bodies) > 1
    assert [fault for body in bodies for fault in measures.faults(body, paper)] == []
    assert len(framed(bodies, titles(assessment.design), paper)) == len(bodies)


def test_sixty_handlers_have_each_of_their_grilles_once() -> None:
    assessment = crowd()
    drawn = keys(duct_sheets(assessment, A3, "si"))
    count = sum(len(handler.outlets) for handler in assessment.specification.plant.handlers)
    assert sum(1 for key in drawn if "." in key and not key.endswith(".0")) == count
    assert {number for key, number in drawn.items() if "." in key} == {1}


def test_a_refrigerant_that_burns_shows_the_largest_charge_over_the_smallest_floor() -> None:
    boat = assessed("cutter-12m").specification
    burning = replace(boat.plant.safety, name="R-32", safety_class="A2L", flammable_limit=0.307)
    assessment = changed(replace(boat, plant=replace(boat.plant, safety=burning)))
    limits = assessment.refrigerant
    assert limits is not None
    told = words(refrigerant_sheets(assessment, A3, "si"))
    assert told[told.index("largest charge, as it burns") + 1] == show(limits.largest_charge, "mass", "si")


def test_what_does_not_fit_beside_the_schematic_goes_on_a_further_sheet() -> None:
    rows = tuple(Row((f"{number}",), f"{number}") for number in range(200))
    bodies = beside((Body("a", "A", "", ()),), A3, (Words("one " * 400), Listed("many", (Column("n", 20.0),), rows)))
    found = [item.key for body in bodies for item in body.items if isinstance(item, Text) and item.key]
    assert found == [row.key for row in rows]
    assert len(bodies) > 1
    assert [fault for body in bodies for fault in measures.faults(body, A3)] == []
