"""Writes a sheet as DXF R2010 for any CAD program: layers, symbols as blocks with attributes, real text in modelspace.

One sheet is one file in millimetres of paper, y upward from its lower left corner. The bytes of one sheet are always
the same: they hold no clock and no chance.

What an entity stands for is its extended data of the application ANCHORWATT: for each fact a list that holds its name
and its words, in as many strings as they need. The facts are the item's `key`, what is `told` of it and its `data`, and
the name of each `terminal`, a point on the layer TERMINALS of a symbol.

Text is written so that a CAD program reads it literally: a caret as `^ `, two percent signs or more as `%%%` each (both
are DXF's own way to say them). Only `\\U+` and `\\M+`, which some programs turn into another sign, get a space after
the backslash; and the signs that no drawing may hold become a square (`signs`).

Ink is colour 7, which a CAD program shows black on white and white on black; white areas hide what lies below them
whatever the ground's colour is.
"""

from __future__ import annotations

import io
import math
import re
from collections.abc import Iterable, Mapping, Sequence
from functools import cache
from itertools import chain, count
from typing import TYPE_CHECKING, Any

from anchorwatt.drawings.font import BOLD, CAPITAL, FAMILY, REGULAR
from anchorwatt.drawings.sheet import INK, Anchor, Arc, Attribute, Block, Path, Placed, Point, Sheet, Text
from anchorwatt.drawings.sheets.body import LABELS, LAYERS, SYMBOLS
from anchorwatt.drawings.signs import one_line

if TYPE_CHECKING:
    from ezdxf.document import Drawing
    from ezdxf.entities.dxfgfx import DXFGraphic
    from ezdxf.layouts.base import BaseLayout

APPLICATION = "ANCHORWATT"
"""Whose extended data they are, and the text style's name."""

TERMINALS = "TERMINALS"
"""The layer of the points where conductors end on symbols; it is not plotted."""

_VERSION = "R2010"
_MILLIMETRES = 4  # of $INSUNITS
_PAPER = "#ffffff"
_WIDTHS = (0, 5, 9, 13, 15, 18, 20, 25, 30, 35, 40, 50, 53, 60, 70, 80, 90, 100, 106, 120, 140, 158, 200, 211)
"""Widths of lines that DXF knows, hundredths of a mm."""

_PIECE = 60
"""Signs in one string of extended data: it holds 255 bytes, and a sign takes four at most."""

_CODED = re.compile(r"(\\)(?=[UuMm]\+)")
_PERCENTS = re.compile("%{2,}")

_NEVER = 2451544.5  # 2000-01-01 as a Julian date, in place of a clock
_NOBODY = "{00000000-0000-0000-0000-000000000000}"

_UNSEEN = 1  # of the flags of an attribute
_BY_LAYER = 256

_ALIGNED: dict[Anchor, int] = {"start": 0, "middle": 1, "end": 2}

Attributes = dict[str, Any]


def dxf(sheet: Sheet) -> bytes:
    """The sheet as the bytes of a DXF file. A sheet in pixels, a picture, is written without a unit.

    Example
    -------
    >>> from anchorwatt.drawings.sheet import Sheet, Text
    >>> dxf(Sheet(420, 297, "A sheet", "", (Text((20, 20), "Main bus", 3.0),), unit="mm")).startswith(b"  0")
    True
    """
    # Loaded where it is used: it takes half a second.
    from ezdxf.filemanagement import new

    file = new(_VERSION, units=_MILLIMETRES if sheet.unit == "mm" else 0)
    placed = [item for item in sheet.items if isinstance(item, Placed)]
    names = _names(item.block for item in placed)
    _set_up(file, sheet, names)
    for block, name in names.items():
        _define(file.blocks.new(name), block, [item for item in placed if item.block == block])
    space = file.modelspace()
    for item in sheet.items:
        if isinstance(item, Placed):
            _insert(space, item, names[item.block], sheet.height)
        else:
            _draw(space, item, sheet.height)
    return _bytes(file)


def _names(blocks: Iterable[Block]) -> dict[Block, str]:
    """What each block is called in the file, where upper and lower case are one."""
    names: dict[Block, str] = {}
    taken: set[str] = set()
    for block in blocks:
        if block not in names:
            others = (f"{block.name}-{number}" for number in count(2))
            names[block] = next(name for name in chain([block.name], others) if name.lower() not in taken)
            taken.add(names[block].lower())
    return names


def _set_up(file: Drawing, sheet: Sheet, blocks: Mapping[Block, str]) -> None:
    file.appids.add(APPLICATION)
    shapes = [*sheet.items, *chain.from_iterable(block.items for block in blocks)]
    for name in dict.fromkeys([*LAYERS, *(shape.layer for shape in shapes if shape.layer)]):
        file.layers.add(name, **_colour(LAYERS.get(name, INK)))
    file.layers.add(TERMINALS, color=8, plot=False)
    for bold, path in ((False, REGULAR), (True, BOLD)):
        file.styles.add(_style(bold), font=path.name).set_extended_font_data(FAMILY, bold=bold)
    for dashes in sorted({shape.dashes for shape in shapes if isinstance(shape, Path) and shape.dashes}):
        strokes = dashes if len(dashes) % 2 == 0 else 2 * dashes
        signed = [one if number % 2 == 0 else -one for number, one in enumerate(strokes)]
        file.linetypes.add(_linetype(dashes), [sum(strokes), *signed])
    space = file.modelspace()
    space.reset_extents((0.0, 0.0, 0.0), (sheet.width, sheet.height, 0.0))
    space.reset_limits((0.0, 0.0), (sheet.width, sheet.height))
    file.set_modelspace_vport(1.05 * sheet.height, (0.5 * sheet.width, 0.5 * sheet.height))
    file.header["$LTSCALE"] = 1.0
    file.header["$LWDISPLAY"] = 1
    file.header.custom_vars.append("TITLE", _spaced(sheet.title))


def _bytes(file: Drawing) -> bytes:
    """The file as `Drawing.write` writes it, but for the clock and the random numbers."""
    from ezdxf.lldxf.tagwriter import TagWriter

    file.commit_pending_changes()
    for kind in sorted(file.entitydb.dxf_types_in_use()):  # update_all would take them as the hashes of a run fall
        file.classes.add_class(kind)
    file.update_all()
    for name in ("$TDCREATE", "$TDUCREATE", "$TDUPDATE", "$TDUUPDATE"):
        file.header[name] = _NEVER
    for name in ("$FINGERPRINTGUID", "$VERSIONGUID"):
        file.header[name] = _NOBODY
    said = file.ezdxf_metadata()
    for name in ("CREATED_BY_EZDXF", "WRITTEN_BY_EZDXF"):
        said.discard(name)
    text = io.StringIO()
    file.export_sections(TagWriter(text, dxfversion=file.dxfversion))
    return file.encode(text.getvalue())


def _define(block: BaseLayout, symbol: Block, uses: Sequence[Placed]) -> None:
    for item in symbol.items:
        _draw(block, item, 0.0)
    for name, at in symbol.terminals:
        point = block.add_point(_up(at, 0.0), dxfattribs={"layer": TERMINALS})
        _say(point, [("terminal", name)])
    first: dict[str, Attribute] = {}
    for one in chain.from_iterable(use.attributes for use in uses):
        first.setdefault(one.name, one)
    for name, one in first.items():
        marks = _attribute(one, (0.0, 0.0), 0.0)
        block.add_attdef(name, marks["insert"], text="", dxfattribs={"prompt": name, **marks})


def _insert(space: BaseLayout, placed: Placed, name: str, height: float) -> None:
    insert = space.add_blockref(name, _up(placed.at, height), dxfattribs={"layer": placed.layer or SYMBOLS})
    for one in placed.attributes:
        marks = _attribute(one, placed.at, height)
        insert.add_attrib(one.name, _literal(one.words), marks["insert"], dxfattribs=marks)
    _say(insert, [("key", placed.key), ("told", placed.told), *placed.data])


def _attribute(one: Attribute, origin: Point, height: float) -> Attributes:
    at = origin[0] + one.at[0], origin[1] + one.at[1]
    return {
        **_lettered(at, one.size, one.bold, one.anchor, height),
        **_colour(one.colour, LABELS),
        "layer": LABELS,
        "flags": 0 if one.shown else _UNSEEN,
    }


def _draw(space: BaseLayout, item: Path | Arc | Text, height: float) -> None:
    match item:
        case Path():
            _path(space, item, height)
        case Arc():
            _arc(space, item, height)
        case Text() if item.words:
            marks = {
                **_lettered(item.at, item.size, item.bold, item.anchor, height),
                **_colour(item.colour, item.layer),
                "layer": item.layer or "0",
            }
            _say(space.add_text(_literal(item.words), dxfattribs=marks), [("key", item.key)])


def _path(space: BaseLayout, path: Path, height: float) -> None:
    points = [_up(point, height) for point in path.points]
    drawn: list[DXFGraphic] = []
    if path.fill and len(points) > 2:
        drawn.append(_area(space, points, path.fill, path.layer, path.fill_opacity))
    if path.colour and len(points) > 1:
        marks = {**_colour(path.colour, path.layer), "layer": path.layer or "0", "lineweight": _weight(path.width)}
        if path.dashes:
            marks["linetype"] = _linetype(path.dashes)
        ends_meet = len(points) > 2 and points[0] == points[-1]
        corners = points[:-1] if ends_meet else points
        outline = space.add_lwpolyline(corners, close=ends_meet or bool(path.fill), dxfattribs=marks)
        # The pattern of dashes runs on round the corners.
        outline.dxf.flags |= 128
        drawn.append(outline)
    if drawn:
        _say(drawn[-1], [("key", path.key), ("told", path.told), *path.data])


def _arc(space: BaseLayout, arc: Arc, height: float) -> None:
    centre = _up(arc.centre, height)
    if arc.whole and arc.fill:
        x, y = centre
        _area(space, [(x - arc.radius, y, 1.0), (x + arc.radius, y, 1.0)], arc.fill, arc.layer)
    if arc.colour:
        marks = {**_colour(arc.colour, arc.layer), "layer": arc.layer or "0", "lineweight": _weight(arc.width)}
        if arc.whole:
            space.add_circle(centre, arc.radius, dxfattribs=marks)
        else:
            space.add_arc(centre, arc.radius, -arc.end % 360.0, -arc.start % 360.0, dxfattribs=marks)


def _area(
    space: BaseLayout, corners: Sequence[tuple[float, ...]], fill: str, layer: str, opacity: float = 1.0
) -> DXFGraphic:
    """A filled area; a corner's third number bulges the side after it, 1 to half a circle."""
    if fill == _PAPER and opacity == 1.0 and all(len(corner) == 2 for corner in corners):
        return space.add_wipeout(corners, dxfattribs={"layer": layer or "0"})
    marks = {**_colour(fill, layer), "layer": layer or "0"}
    hatch = space.add_hatch(marks.pop("color", _BY_LAYER), dxfattribs=marks)
    hatch.paths.add_polyline_path(corners, is_closed=True)
    if opacity < 1.0:
        hatch.transparency = 1.0 - opacity
    return hatch


def _lettered(at: Point, size: float, bold: bool, anchor: Anchor, height: float) -> Attributes:
    """How a text is put down; DXF counts its height by the capitals."""
    place = _up(at, height)
    marks: Attributes = {"insert": place, "height": round(size * CAPITAL, 4), "style": _style(bold)}
    return marks if anchor == "start" else {**marks, "halign": _ALIGNED[anchor], "align_point": place}


def _say(entity: DXFGraphic, facts: Iterable[tuple[str, str]]) -> None:
    tags: list[tuple[int, str]] = []
    for name, words in facts:
        if words:
            said = _spaced(words)
            pieces = [said[start : start + _PIECE] for start in range(0, len(said), _PIECE)]
            tags += [(1002, "{"), (1000, name), *((1000, piece) for piece in pieces), (1002, "}")]
    if tags:
        entity.set_xdata(APPLICATION, tags)


def _up(point: Point, height: float) -> Point:
    """A point of the sheet as DXF counts it, to a ten-thousandth."""
    return round(point[0], 4), round(height - point[1], 4)


def _spaced(words: str) -> str:
    return _CODED.sub(r"\1 ", one_line(words))


def _literal(words: str) -> str:
    return _PERCENTS.sub(lambda run: 3 * run[0], _spaced(words)).replace("^", "^ ")


def _style(bold: bool) -> str:
    return f"{APPLICATION}-BOLD" if bold else APPLICATION


def _linetype(dashes: tuple[float, ...]) -> str:
    return "-".join(["DASH", *(f"{one:g}" for one in dashes)])


def _weight(width: float) -> int:
    return min(_WIDTHS, key=lambda known: abs(known - 100.0 * width))


def _colour(colour: str, layer: str = "") -> Attributes:
    """What says this colour; nothing where the layer does."""
    if LAYERS.get(layer) == colour:
        return {}
    if colour == INK:
        return {"color": 7}
    index, true = _numbers(colour)
    return {"color": index, "true_color": true}


@cache
def _numbers(colour: str) -> tuple[int, int]:
    """The nearest colour of the index that every program knows, and the true one."""
    from ezdxf.colors import aci2rgb

    sought = bytes.fromhex(colour.removeprefix("#"))
    nearest = min(range(1, 256), key=lambda index: math.dist(aci2rgb(index), sought))
    return nearest, int.from_bytes(sought)
