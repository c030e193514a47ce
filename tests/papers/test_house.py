"""The yard's settings file: read whole, or refused with line and key."""

from __future__ import annotations

import struct
import zlib
from pathlib import Path

import pytest

from anchorwatt.errors import BadDesign
from anchorwatt.papers.document import Document
from anchorwatt.papers.house import LARGEST_LOGO, read_house
from anchorwatt.papers.typeset import pdf

HEAD = '<svg xmlns="http://www.w3.org/2000/svg" xmlns:xlink="http://www.w3.org/1999/xlink" viewBox="0 0 9 9">'
GOOD = HEAD + '<rect width="9" height="9" fill="url(#a)"/></svg>'


def png(width: int = 2, height: int = 2, *, whole: bool = True) -> bytes:
    def chunk(kind: bytes, content: bytes) -> bytes:
        return struct.pack(">I", len(content)) + kind + content + struct.pack(">I", zlib.crc32(kind + content))

    rows = zlib.compress(b"\0\xff\0\0\0\xff\0" * 2) if whole else b"\0\0"
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", rows) + chunk(b"IEND", b"")


def settings(folder: Path, text: str, logo: str | bytes = GOOD) -> Path:
    (folder / "logo").write_bytes(logo if isinstance(logo, bytes) else logo.encode())
    path = folder / "yard.yaml"
    path.write_text(text, "utf-8")
    return path


def problems(path: Path) -> list[str]:
    with pytest.raises(BadDesign) as refused:
        read_house(path)
    return [f"{one.line} {one.key}: {one.found}; {one.allowed}" for one in refused.value.problems]


@pytest.mark.parametrize(("logo", "kind"), [(GOOD, "svg"), (png(), "png")])
def test_all_of_it_is_read(tmp_path: Path, logo: str | bytes, kind: str) -> None:
    text = 'name: Heronsgate\naddress: |\n  Slip 1\n  Here\nlogo: logo\ncolour: "#A40000"\nterms:\n  - One.\n  - Two.\n'
    house = read_house(settings(tmp_path, text, logo))
    assert (house.name, house.address.split(), house.terms) == ("Heronsgate", ["Slip", "1", "Here"], ("One.", "Two."))
    assert (house.logo_kind, house.colour) == (kind, "#a40000")
    assert pdf(Document("t", "T", "", "B", "", "a4", ()), house).startswith(b"%PDF")


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("name: A\nlogos: logo\n", "2 logos: an unknown key"),
        ("name: A\nterms: pay\n", "2 terms: "),
        ("name: A\ncolour: red\n", '2 colour: "red"; a colour as “#rrggbb”'),
        ('name: A\ncolour: "#ffffee"\n', "2 colour: a colour too pale"),
        ("name: A\nlogo: none.svg\n", "2 logo: no such file"),
        ("name: A\nlogo: ../logo\n", "2 logo: a file elsewhere"),
        ("- a\n", "1 : no mapping"),
    ],
)
def test_what_is_wrong_is_told_with_its_line_and_key(tmp_path: Path, text: str, told: str) -> None:
    (found,) = problems(settings(tmp_path, text))
    assert found.startswith(told)


@pytest.mark.parametrize(
    ("logo", "told"),
    [
        (HEAD + "<script>alert(1)</script></svg>", "a script"),
        (HEAD + '<rect onload="x()"/></svg>', 'a script in "onload"'),
        (HEAD + '<a xlink:href="http://a.invalid/"/></svg>', "points outside"),
        (HEAD + '<image href="/etc/passwd"/></svg>', '"image"'),
        (HEAD + '<rect style="fill:url(http://a.invalid)"/></svg>', "points outside"),
        (HEAD + "<style>@imp</style><style>ort 'a'</style></svg>", "styles point outside"),
        (HEAD + "<foreignObject/></svg>", '"foreignObject"'),
        (HEAD + '<g id="a"/><use href="#a"/></svg>', '"use"'),
        ('<!DOCTYPE svg [<!ENTITY a "b">]>' + GOOD, "a document type"),
        ('<?xml-stylesheet href="a.css"?>' + GOOD, "an instruction"),
        (HEAD + "<g>" * 5000 + "</g>" * 5000 + "</svg>", "too many elements"),
        (HEAD + "<rect>", "damaged"),
        ("hello", "neither SVG nor PNG"),
        ("<html/>", "neither SVG nor PNG"),
        (b"", "neither SVG nor PNG"),
        (b"\x89PNG\r\n\x1a\n", "damaged"),
        (png(whole=False), "cannot be drawn"),
        (png(60_000, 60_000), "60000 × 60000 pixels"),
        (b" " * (LARGEST_LOGO + 1), "a file of 5.0 MB"),
    ],
)
def test_a_hostile_logo_is_refused(tmp_path: Path, logo: str | bytes, told: str) -> None:
    (found,) = problems(settings(tmp_path, "name: A\nlogo: logo\n", logo))
    assert found.startswith("2 logo: ")
    assert told in found
