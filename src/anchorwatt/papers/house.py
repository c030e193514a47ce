"""The yard's settings file: its name, address, logo, colour and terms, as its papers show them.

A logo is taken as it is or refused, never repaired. An SVG may hold shapes, text, gradients and clips that it draws by
itself; scripts, what points outside, and what can unfold into endless work are refused by name.
"""

from __future__ import annotations

import re
import struct
from pathlib import Path
from typing import Annotated, Final, NoReturn
from xml.parsers import expat

from pydantic import Field, StringConstraints, ValidationError

from anchorwatt.design import Design
from anchorwatt.design.document import Document as SettingsText
from anchorwatt.design.document import load
from anchorwatt.design.problems import as_problem, one_each, shown
from anchorwatt.design.section import Section
from anchorwatt.errors import BadDesign, Problem
from anchorwatt.papers.document import Document, House
from anchorwatt.papers.typeset import pdf

KIND: Final = "a settings file of the yard"
BEGINS: Final = "a mapping of name, address, logo, colour and terms"

LARGEST_LOGO: Final = 5_000_000  # bytes
LARGEST_SETTINGS: Final = 100_000
"""Bytes of a file within which its keys tell whether it is one of settings."""
MOST_PIXELS: Final = 25_000_000
MOST_ELEMENTS: Final = 20_000
DEEPEST: Final = 40
LOWEST_CONTRAST: Final = 3.0
"""Of headings on white: WCAG 2.2, 1.4.3, large text."""

_PNG = b"\x89PNG\r\n\x1a\n"
_SHAPED = ("path", "rect", "circle", "ellipse", "line", "polyline", "polygon", "text", "tspan")
_HELD = ("svg", "g", "a", "defs", "title", "desc", "metadata", "style", "linearGradient", "radialGradient", "stop")
_DRAWN = frozenset((*_SHAPED, *_HELD, "clipPath"))
_SVG = "http://www.w3.org/2000/svg"
_OUTSIDE = re.compile(r"@import|url\(\s*[\"']?\s*(?!#)|\\", re.IGNORECASE)
_ALLOWED_LOGO = "an SVG or PNG file beside the settings file"
_SHAPES = "shapes, text, gradients and clips alone; save the logo as plain paths, or as PNG"

_Colour = Annotated[str, StringConstraints(max_length=40)]
_Paragraph = Annotated[str, StringConstraints(min_length=1, max_length=1000)]


class Settings(Section):
    """What the file may say."""

    name: Annotated[str, StringConstraints(max_length=120)] = Field("", description="the yard's name")
    address: Annotated[str, StringConstraints(max_length=400)] = Field("", description="of the yard, in lines")
    logo: Annotated[str, StringConstraints(min_length=1, max_length=200)] | None = Field(
        None, description="name of an SVG or PNG file beside this one"
    )
    colour: _Colour = Field(House().colour, description="of headings and rules, as #rrggbb")
    terms: Annotated[tuple[_Paragraph, ...], Field(max_length=12)] = Field((), description="of business, in paragraphs")


_OWN_KEYS = frozenset(Settings.model_fields) - frozenset(Design.model_fields)
_KEYS = re.compile(rb"^([a-z_]+)[ \t]*:", re.MULTILINE)


def is_house(path: Path) -> bool:
    """Whether a file is meant to be a settings file, also where something is wrong with it.

    A design begins with `anchorwatt: 1`; settings have no such key, but one or more of their own, or a name alone.
    """
    try:
        with path.open("rb") as file:
            keys = {key.decode() for key in _KEYS.findall(file.read(LARGEST_SETTINGS))}
    except OSError:
        return False
    return "anchorwatt" not in keys and (bool(keys & _OWN_KEYS) or keys == {"name"})


class _Refused(Exception):
    def __init__(self, found: str, allowed: str) -> None:
        super().__init__(found)
        self.found, self.allowed = found, allowed


def read_house(path: Path) -> House:
    """Who gives out the papers, from a settings file.

    Raises
    ------
    BadDesign
        Something is wrong with it or with its logo; every problem is told with its line and key.
    """
    document = load(path, KIND, BEGINS)
    try:
        settings = Settings.model_validate(document.data)
    except ValidationError as error:
        found = one_each(error.errors(include_url=False))
        raise BadDesign(tuple(as_problem(one, document, Settings) for one in found)) from None
    problems = []
    if not re.fullmatch(r"#[0-9a-fA-F]{6}", settings.colour):
        problems.append(document.problem(("colour",), shown(settings.colour), "a colour as “#rrggbb”, in quotes"))
    elif contrast_on_white(settings.colour) < LOWEST_CONTRAST:
        found_colour = f"a colour too pale to read on white, contrast {contrast_on_white(settings.colour):.1f}"
        problems.append(document.problem(("colour",), found_colour, f"a contrast of at least {LOWEST_CONTRAST:g}"))
    house = House(settings.name, settings.address, terms=settings.terms)
    if settings.logo is not None:
        try:
            house = _with_logo(house, document, settings.logo)
        except _Refused as refused:
            problems.append(_problem(document, refused))
    if problems:
        raise BadDesign(tuple(problems))
    return House(house.name, house.address, house.logo, house.logo_kind, settings.colour.lower(), house.terms)


def contrast_on_white(colour: str) -> float:
    """Contrast ratio of a colour and white.

    Source
    ------
    WCAG 2.2, definitions of contrast ratio and relative luminance.

    Example
    -------
    >>> contrast_on_white("#ffffff"), round(contrast_on_white("#000000"), 1)
    (1.0, 21.0)
    """
    channels = [int(colour[at : at + 2], 16) / 255.0 for at in (1, 3, 5)]
    red, green, blue = (one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in channels)
    return 1.05 / (0.2126 * red + 0.7152 * green + 0.0722 * blue + 0.05)


def _problem(document: SettingsText, refused: _Refused) -> Problem:
    return document.problem(("logo",), refused.found, refused.allowed)


def _with_logo(house: House, document: SettingsText, name: str) -> House:
    content = _content(document, name)
    if content.startswith(_PNG):
        kind = "png"
        _look_at_png(content)
    else:
        kind = "svg"
        _look_at_svg(content)
    made = House(house.name, house.address, content, kind, house.colour, house.terms)
    try:  # what neither look found, such as a damaged picture, shows when it is set once
        pdf(Document("trial", "Trial", "", "Trial", "", "a4", (), contents=False, cover=False), made)
    except RuntimeError:  # typst's own error is one
        raise _Refused("a picture that cannot be drawn", "an SVG or PNG file that is whole") from None
    return made


def _content(document: SettingsText, name: str) -> bytes:
    folder = document.path.parent if document.path is not None else Path()
    try:
        path = (folder / name).resolve()
        if not path.is_relative_to(folder.resolve()):
            raise _Refused(f"a file elsewhere: {shown(name)}", _ALLOWED_LOGO)
        if not path.is_file():
            raise _Refused(f"{'a folder' if path.is_dir() else 'no such file'}: {shown(name)}", _ALLOWED_LOGO)
        size = path.stat().st_size
        if size > LARGEST_LOGO:
            raise _Refused(f"a file of {size / 1e6:.1f} MB", f"at most {LARGEST_LOGO / 1e6:g} MB")
        return path.read_bytes()
    except (OSError, ValueError):
        raise _Refused(f"a file that cannot be read: {shown(name)}", _ALLOWED_LOGO) from None


def _look_at_png(content: bytes) -> None:
    if content[12:16] != b"IHDR" or len(content) < 24:
        raise _Refused("a PNG file that is damaged", "a PNG file that is whole")
    width, height = struct.unpack(">II", content[16:24])
    if width * height > MOST_PIXELS:
        raise _Refused(f"a picture of {width} × {height} pixels", f"at most {MOST_PIXELS / 1e6:g} million pixels")


def _look_at_svg(content: bytes) -> None:
    """Read every element and attribute once, so that nothing is left to trust."""
    look = _SvgLook()
    parser = expat.ParserCreate(namespace_separator=" ")
    parser.StartDoctypeDeclHandler = look.doctype
    parser.ProcessingInstructionHandler = look.instruction
    parser.StartElementHandler = look.start
    parser.EndElementHandler = look.end
    parser.CharacterDataHandler = look.words
    try:
        parser.Parse(content, True)
    except expat.ExpatError as error:
        if not look.count:
            raise _Refused("a file that is neither SVG nor PNG", _ALLOWED_LOGO) from None
        raise _Refused(f"an SVG file that is damaged ({error})", "an SVG file that is whole") from None
    look.styles()


class _SvgLook:
    def __init__(self) -> None:
        self.count = 0
        self.open: list[str] = []
        self.style: list[str] = []

    def doctype(self, *_declared: object) -> NoReturn:
        raise _Refused("an SVG file with a document type, which can hold entities", _SHAPES)

    def instruction(self, target: str, _data: str) -> NoReturn:
        raise _Refused(f"an SVG file with an instruction {shown(target)}", _SHAPES)

    def start(self, qualified: str, attributes: dict[str, str]) -> None:
        space, _, name = qualified.rpartition(" ")
        self.count += 1
        if self.count == 1 and (space, name) != (_SVG, "svg"):
            raise _Refused("a file that is neither SVG nor PNG", _ALLOWED_LOGO)
        drawn = space in ("", _SVG)
        if name.lower() == "script":
            raise _Refused("an SVG file with a script", _SHAPES)
        if drawn and name not in _DRAWN:
            raise _Refused(f"an SVG file with {shown(name)}", _SHAPES)
        if self.count > MOST_ELEMENTS or len(self.open) >= DEEPEST:
            allowed = f"at most {MOST_ELEMENTS} elements, {DEEPEST} deep"
            raise _Refused("an SVG file of too many elements", allowed)
        for key, value in attributes.items():
            self._attribute(key.rpartition(" ")[2], value)
        self.open.append(name)

    def _attribute(self, name: str, value: str) -> None:
        if name.lower().startswith("on"):
            raise _Refused(f"an SVG file with a script in {shown(name)}", _SHAPES)
        if name in ("href", "src") and not value.strip().startswith("#"):
            raise _Refused(f"an SVG file that points outside, to {shown(value)}", _SHAPES)
        if _OUTSIDE.search(value):
            raise _Refused(f"an SVG file that points outside, in {shown(name)}", _SHAPES)
        clips = name == "clip-path" or (name == "style" and "clip-path" in value)
        if clips and "clipPath" in self.open:
            raise _Refused("an SVG file with clips inside clips", _SHAPES)

    def end(self, _qualified: str) -> None:
        self.open.pop()

    def words(self, text: str) -> None:
        if self.open[-1] == "style":
            self.style.append(text)

    def styles(self) -> None:
        """Refuse what style sheets point to outside, once all of their text is there."""
        style = "".join(self.style)
        if _OUTSIDE.search(style) or "clip-path" in style:
            raise _Refused("an SVG file whose styles point outside or clip", _SHAPES)
