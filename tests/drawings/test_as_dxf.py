"""What a CAD program finds in the file, read back with ezdxf."""

from __future__ import annotations

import dataclasses
import os
import re
import subprocess
import sys

import pytest
from hypothesis import example, given, settings
from hypothesis import strategies as st
from tests.drawings.yard_sheet import CONDUCTOR, EXAMPLE, FIRST, FUSE, facts, fuse, read, sheet

from anchorwatt.drawings.as_dxf import TERMINALS, dxf
from anchorwatt.drawings.font import REGULAR, widths
from anchorwatt.drawings.sheet import Anchor, Arc, Attribute, Block, Path, Placed, Text
from anchorwatt.drawings.sheets.body import DC, LABELS, LAYERS, NOTES, SYMBOLS
from anchorwatt.drawings.signs import one_line

HOSTILE = (
    "50 %%d",
    "{\\P new}",
    "a^Jb",
    "^",
    "%%%",
    "%% %",
    "\\U+0041",
    "שלום",
    "\u202eback",
    "🦀",
    "two\nlines",
    "\ud800",
)
any_words = st.text(st.characters(), min_size=1, max_size=60)


def literal(words: str) -> str:
    """What is to be read back: as the writer tells, less the carets at the end, which ezdxf drops when it reads."""
    return re.sub(r"\\(?=[UM]\+)", r"\\ ", one_line(words), flags=re.IGNORECASE).rstrip("^")


def test_the_audit_finds_nothing() -> None:
    found = read(EXAMPLE).audit()
    assert not found.errors
    assert not found.fixes


def test_the_bytes_are_the_same_each_time() -> None:
    assert dxf(EXAMPLE) == dxf(EXAMPLE)


def test_the_bytes_are_the_same_in_every_run() -> None:
    written = "import sys; from tests.drawings.yard_sheet import EXAMPLE; from anchorwatt.drawings.as_dxf import dxf; "
    written += "sys.stdout.buffer.write(dxf(EXAMPLE))"
    runs = [
        subprocess.run([sys.executable, "-c", written], env={**os.environ, "PYTHONHASHSEED": seed}, capture_output=True)
        for seed in ("1", "2")
    ]
    assert runs[0].stdout
    assert runs[0].stdout == runs[1].stdout


def test_its_unit_is_the_millimetre() -> None:
    assert read(EXAMPLE).header["$INSUNITS"] == 4  # DXF reference, header variables: 4 = millimetres


def test_y_counts_upward() -> None:
    insert = read(EXAMPLE).modelspace().query("INSERT").first
    assert insert is not None
    assert tuple(insert.dxf.insert) == (50.0, 297.0 - 40.0, 0.0)


@pytest.mark.parametrize("name", LAYERS)
def test_each_layer_is_there(name: str) -> None:
    assert name in read(EXAMPLE).layers


def test_a_layer_has_its_true_colour() -> None:
    assert read(EXAMPLE).layers.get(DC).rgb == tuple(bytes.fromhex(LAYERS[DC].removeprefix("#")))


def test_a_conductor_takes_its_layers_colour() -> None:
    drawn = read(EXAMPLE).modelspace().query(f"LWPOLYLINE[layer=='{DC}']").first
    assert drawn is not None
    assert drawn.dxf.color == 256
    assert not drawn.dxf.hasattr("true_color")


def test_a_conductor_says_what_it_stands_for() -> None:
    drawn = read(EXAMPLE).modelspace().query(f"LWPOLYLINE[layer=='{DC}']").first
    assert drawn is not None
    assert facts(drawn) == {"key": CONDUCTOR.key, **dict(CONDUCTOR.data)}


def test_a_conductor_ends_on_the_terminals_that_the_file_names() -> None:
    file = read(EXAMPLE)
    ends = {}
    for insert in file.modelspace().query("INSERT"):
        for point in file.blocks.get(insert.dxf.name).query("POINT"):
            assert point.dxf.layer == TERMINALS
            ends[facts(insert)["key"], facts(point)["terminal"]] = insert.dxf.insert + point.dxf.location
    drawn = file.modelspace().query(f"LWPOLYLINE[layer=='{DC}']").first
    assert drawn is not None
    corners = list(drawn.vertices_in_wcs())
    assert corners[0].isclose(ends["F1", "load"])
    assert corners[-1].isclose(ends["F2", "line"])


def test_a_block_is_defined_once_for_all_its_places() -> None:
    file = read(EXAMPLE)
    assert [insert.dxf.name for insert in file.modelspace().query("INSERT")] == [FUSE.name, FUSE.name]
    assert [block.name for block in file.blocks if not block.name.startswith("*")] == [FUSE.name]


def test_two_symbols_of_one_name_are_told_apart() -> None:
    other = Block("FUSE", (Arc((0, 0), 3.0),), (), (-3, -3, 3, 3))
    file = read(sheet(FIRST, Placed(other, (120, 120))))
    assert {len(file.blocks.get(insert.dxf.name).query("LWPOLYLINE")) for insert in file.modelspace()} == {0, 1}


def test_a_blocks_attributes_are_defined_in_it() -> None:
    block = read(EXAMPLE).blocks.get(FUSE.name)
    assert [attribute.dxf.tag for attribute in block.query("ATTDEF")] == ["TAG", "PART"]


def test_an_attribute_that_is_not_shown_is_invisible_yet_there() -> None:
    insert = read(EXAMPLE).modelspace().query("INSERT").first
    assert insert is not None
    assert {one.dxf.tag: (one.dxf.text, one.is_invisible) for one in insert.attribs} == {
        "TAG": ("F1", False),
        "PART": ("Fuse of the house bank", True),
    }


@pytest.mark.parametrize("anchor", ["start", "middle", "end"])
def test_an_attribute_stands_at_its_place(anchor: Anchor) -> None:
    one = Attribute("TAG", "F1", (3, 5), 3.0, anchor)
    insert = read(sheet(Placed(FUSE, (50, 40), (one,)))).modelspace().query("INSERT").first
    assert insert is not None
    _, at, _ = insert.attribs[0].get_placement()
    assert (at.x, at.y) == (53.0, 297.0 - 45.0)


@pytest.mark.parametrize("anchor", ["start", "middle", "end"])
def test_an_attribute_is_defined_at_its_place_from_the_origin(anchor: Anchor) -> None:
    one = Attribute("TAG", "F1", (3, 5), 3.0, anchor)
    defined = read(sheet(Placed(FUSE, (50, 40), (one,)))).blocks.get(FUSE.name).query("ATTDEF").first
    assert defined is not None
    _, at, _ = defined.get_placement()
    assert (at.x, at.y) == (3.0, -5.0)


def test_a_text_is_as_high_as_its_capitals() -> None:
    from fontTools.ttLib import TTFont

    with TTFont(REGULAR) as font:
        capital = font["OS/2"].sCapHeight / font["head"].unitsPerEm
    written = read(EXAMPLE).modelspace().query("TEXT").first
    assert written is not None
    assert written.dxf.height == pytest.approx(3.0 * capital, abs=1e-4)


def test_a_text_that_ends_at_its_point_is_aligned_there() -> None:
    written = read(EXAMPLE).modelspace().query("TEXT").first
    assert written is not None
    kind, at, _ = written.get_placement()
    assert (kind.name, at.x, at.y) == ("RIGHT", 400.0, 47.0)


def test_the_letters_are_of_the_shipped_font() -> None:
    assert read(EXAMPLE).styles.get("ANCHORWATT").dxf.font == REGULAR.name


def test_an_arc_runs_the_same_way_as_on_the_sheet() -> None:
    arc = Arc((100, 100), 10.0, 20.0, 110.0)
    drawn = read(sheet(arc)).modelspace().query("ARC").first
    assert drawn is not None
    # Clockwise on the sheet is counter-clockwise where y counts upward, so its ends change places.
    for point, degrees in ((drawn.end_point, arc.start), (drawn.start_point, arc.end)):
        x, y = arc.at(degrees)
        assert (point.x, point.y) == pytest.approx((x, 297.0 - y))


def test_dashes_are_a_line_type_of_their_lengths() -> None:
    file = read(EXAMPLE)
    drawn = file.modelspace().query(f"LWPOLYLINE[layer=='{NOTES}']").first
    assert drawn is not None
    pattern = file.linetypes.get(drawn.dxf.linetype).pattern_tags
    assert [tag.value for tag in pattern.tags if tag.code == 49] == [2.0, -1.0]


def test_a_filled_area_is_a_solid_hatch_of_its_colour() -> None:
    area = Path(((10, 10), (30, 10), (30, 30)), fill="#b00000", layer=SYMBOLS)
    drawn = read(sheet(area)).modelspace().query("HATCH").first
    assert drawn is not None
    assert drawn.dxf.solid_fill == 1
    assert drawn.rgb == (0xB0, 0, 0)


def test_a_white_area_hides_what_lies_below_on_any_ground() -> None:
    area = Path(((10, 10), (30, 10), (30, 30)), fill="#ffffff", layer=SYMBOLS)
    assert len(read(sheet(area)).modelspace().query("WIPEOUT")) == 1


def test_a_path_without_length_is_left_out() -> None:
    file = read(sheet(Path((), "#000000"), Path(((1, 1),), "#000000", fill="#000000")))
    assert len(file.modelspace()) == 0


@pytest.mark.parametrize("words", HOSTILE)
def test_hostile_words_do_no_harm(words: str) -> None:
    found = read(sheet(fuse(words, words, (50, 50)), Text((9, 9), words, 3.0, key=words), title=words)).audit()
    assert not found.errors


@settings(max_examples=40)
@given(any_words)
@example("50 %%d")
@example("a^Jb ^ ^")
@example("%%%")
@example("% %% %%%%u")
def test_words_read_back_as_they_were(words: str) -> None:
    written = read(sheet(Text((9, 9), words, 3.0, layer=LABELS))).modelspace().query("TEXT").first
    assert written is not None
    assert written.plain_text() == literal(words)


@settings(max_examples=40)
@given(any_words)
def test_attributes_read_back_as_they_were(words: str) -> None:
    insert = read(sheet(fuse(words, words, (50, 50)))).modelspace().query("INSERT").first
    assert insert is not None
    assert insert.attribs[1].plain_text() == literal(words)


@pytest.mark.parametrize(("words", "stored"), [("a^", "a^ "), ("100 %%", "100 %%%%%%"), ("5 %", "5 %")])
def test_what_dxf_reads_as_a_code_is_stored_as_dxf_says_it(words: str, stored: str) -> None:
    written = read(sheet(Text((9, 9), words, 3.0))).modelspace().query("TEXT").first
    assert written is not None
    assert written.dxf.text == stored


def test_two_hundred_letters_are_kept_in_the_facts() -> None:
    name = "ü" * 200
    drawn = read(sheet(dataclasses.replace(CONDUCTOR, key=name))).modelspace().query("LWPOLYLINE").first
    assert drawn is not None
    assert facts(drawn)["key"] == name


def test_no_string_of_the_facts_is_longer_than_dxf_allows() -> None:
    drawn = read(sheet(dataclasses.replace(CONDUCTOR, key="🦀" * 200))).modelspace().query("LWPOLYLINE").first
    assert drawn is not None
    longest = max(len(str(tag.value).encode()) for tag in drawn.get_xdata("ANCHORWATT"))
    assert longest <= 255  # DXF reference, group code 1000


def test_the_font_has_what_stands_in_for_a_barred_sign() -> None:
    assert ord(one_line("\x07")) in widths()
