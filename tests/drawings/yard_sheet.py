"""A small yard sheet with one of everything, and how to read what the DXF writer says of an entity."""

from __future__ import annotations

import io

import ezdxf.filemanagement
from ezdxf.document import Drawing
from ezdxf.entities.dxfentity import DXFEntity

from anchorwatt.drawings.as_dxf import APPLICATION, dxf
from anchorwatt.drawings.sheet import INK, Arc, Attribute, Block, Item, Path, Placed, Sheet, Text
from anchorwatt.drawings.sheets.body import DC, LABELS, LAYERS, LINE, NOTES, SYMBOLS

FUSE = Block(
    "fuse",
    (
        Path(((-4, -2), (4, -2), (4, 2), (-4, 2)), INK, LINE, fill="#ffffff", layer=SYMBOLS),
        Arc((0, 0), 1.5, 0.0, 90.0, width=LINE, layer=SYMBOLS),
        Arc((0, 0), 0.5, width=LINE, fill="#b00000", layer=SYMBOLS),
        Text((0, 1), "F", 2.6, anchor="middle", layer=SYMBOLS),
    ),
    (("line", (-4, 0)), ("load", (4, 0))),
    (-4, -2, 4, 2),
)


def fuse(tag: str, part: str, at: tuple[float, float]) -> Placed:
    """A fuse at a point, its part's name not shown."""
    attributes = (
        Attribute("TAG", tag, (0, 5), 3.0, "middle", bold=True),
        Attribute("PART", part, (0, 8), 2.6, "middle", shown=False),
    )
    return Placed(FUSE, at, attributes, key=tag, told=part, data=(("kind", "fuse"),), layer=SYMBOLS)


FIRST, SECOND = fuse("F1", "Fuse of the house bank", (50, 40)), fuse("F2", "Fuse of the inverter", (90, 60))
CONDUCTOR = Path(
    (FIRST.terminal("load"), (70, 40), (70, 60), SECOND.terminal("line")),
    LAYERS[DC],
    0.7,
    key="circuit:house bank",
    data=(("circuit", "W1"), ("from", "F1"), ("to", "F2")),
    layer=DC,
)
DASHED = Path(((20, 100), (60, 100)), INK, LINE, dashes=(2.0, 1.0), layer=NOTES)
WORDS = Text((400, 250), "Main bus", 3.0, anchor="end", layer=LABELS)


def sheet(*items: Item, name: str = "dc-one-line", title: str = "DC one-line: Heron") -> Sheet:
    """A sheet of A3 with these items."""
    return Sheet(420, 297, title, "What feeds what", items, unit="mm", name=name)


EXAMPLE = sheet(FIRST, SECOND, CONDUCTOR, DASHED, WORDS)


def read(written: Sheet) -> Drawing:
    """The sheet's DXF file, read."""
    return ezdxf.filemanagement.read(io.StringIO(dxf(written).decode()))


def facts(entity: DXFEntity) -> dict[str, str]:
    """What an entity's extended data say it stands for."""
    said: dict[str, str] = {}
    strings: list[str] = []
    for code, words in entity.get_xdata(APPLICATION)[1:] if entity.has_xdata(APPLICATION) else ():
        match code, words:
            case 1002, "{":
                strings = []
            case 1002, "}":
                said[strings[0]] = "".join(strings[1:])
            case _:
                strings.append(words)
    return said
