"""The measures of yard drawings find what they are there to find."""

from __future__ import annotations

from tests.drawings import measures

from anchorwatt.drawings.sheet import Attribute, Block, Path, Placed, Point, Text
from anchorwatt.drawings.sheets.body import DC, Body, Reference
from anchorwatt.drawings.sheets.paper import PAPERS

BOX = Block("box", (), (("1", (0.0, 5.0)), ("2", (10.0, 5.0)), ("deep", (3.0, 0.0))), (0.0, 0.0, 10.0, 10.0))


def body(*items: Path | Text | Placed | Reference) -> Body:
    return Body("a", "a", "a", items)


def box(x: float, y: float, tag: str = "A1") -> Placed:
    return Placed(BOX, (x, y), (Attribute("TAG", tag, (1.0, 5.0), 2.6),))


def wire(*points: Point) -> Path:
    return Path(points, "#000000", layer=DC)


def test_two_blocks_side_by_side_do_not_overlap() -> None:
    assert not measures.overlaps(body(box(50, 50), box(60, 50, "A2")))


def test_two_blocks_over_one_another_are_found_with_the_words_of_both() -> None:
    assert len(measures.overlaps(body(box(50, 50), box(59, 50, "A2")))) == 1


def test_a_block_may_hold_its_own_attribute_but_no_free_text() -> None:
    assert not measures.overlaps(body(box(50, 50)))
    assert measures.overlaps(body(box(50, 50), Text((51, 59), "loose", 2.6)))


def test_two_attributes_of_one_block_may_not_overlap() -> None:
    both = (Attribute("TAG", "A1", (1.0, 5.0), 2.6), Attribute("PART", "pump", (2.0, 5.5), 2.6))
    assert measures.overlaps(body(Placed(BOX, (50, 50), both)))


def test_an_attribute_that_is_not_shown_covers_nothing() -> None:
    both = (Attribute("TAG", "A1", (1.0, 5.0), 2.6), Attribute("PART", "pump", (1.0, 5.0), 2.6, shown=False))
    assert not measures.overlaps(body(Placed(BOX, (50, 50), both)))


def test_a_reference_covers_what_the_widest_place_would() -> None:
    assert measures.overlaps(body(Reference((50, 50), "b"), Text((56, 50), "x", 2.6)))


def test_a_conductor_may_end_on_a_terminal() -> None:
    assert not measures.struck(body(box(50, 50), wire((20, 55), (50, 55))))
    assert not measures.struck(body(Placed(BOX, (50, 50)), wire((53, 20), (53, 50))))


def test_a_conductor_through_a_block_is_found_even_where_it_ends_on_a_terminal_beyond() -> None:
    assert measures.struck(body(Placed(BOX, (50, 50)), wire((20, 55), (60, 55))))
    assert measures.struck(body(Placed(BOX, (50, 50)), wire((20, 55), (90, 55))))


def test_a_conductor_along_the_edge_of_a_block_is_not_through_it() -> None:
    assert not measures.struck(body(box(50, 50), wire((20, 50), (90, 50))))


def test_a_conductor_through_a_text_is_found() -> None:
    assert measures.struck(body(Text((50, 50), "words", 2.6), wire((20, 49), (90, 49))))
    assert not measures.struck(body(Text((50, 50), "words", 2.6), wire((20, 51), (90, 51))))


def test_a_slanted_conductor_is_found() -> None:
    assert measures.slanted(body(wire((20, 50), (90, 51))))
    assert not measures.slanted(body(wire((20, 50), (90, 50), (90, 60))))


def test_what_leaves_the_paper_is_found() -> None:
    paper = PAPERS["A3"]
    left, top, right, bottom = paper.body
    assert not measures.outside(body(box(left, top), box(right - 10, bottom - 10)), paper)
    assert len(measures.outside(body(Placed(BOX, (right - 9, top)), wire((left - 1, top), (left, top))), paper)) == 2


def test_an_end_on_no_terminal_is_loose() -> None:
    assert len(measures.loose(body(box(50, 50), wire((20, 55), (50, 55))))) == 1
    assert not measures.loose(body(box(50, 50), box(80, 50, "A2"), wire((60, 55), (80, 55))))


def test_crossings_are_counted_and_joints_are_not() -> None:
    level = wire((20, 50), (90, 50))
    assert measures.crossings(body(level, wire((30, 20), (30, 90)), wire((40, 20), (40, 90)))) == 2
    assert measures.crossings(body(level, wire((30, 20), (30, 50)))) == 0


def test_conductors_on_top_of_one_another_are_found() -> None:
    level = wire((20, 50), (90, 50))
    assert measures.along(body(level, wire((80, 50), (120, 50))))
    assert not measures.along(body(level, wire((90, 50), (120, 50))))
