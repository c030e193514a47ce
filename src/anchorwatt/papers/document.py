"""A printed paper: pages' content, and what only paper has.

What the terminal and the browser show is printed as it is; a document puts such pages one behind the other, under a
cover.
"""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.papers.page import Content


@dataclass(frozen=True)
class Picture:
    """A picture as wide as the text.

    Parameters
    ----------
    svg : text of an SVG file of ours
    told : what it shows, for those who cannot see it
    width : share of the text's width
    """

    svg: str
    told: str
    width: float = 1.0


@dataclass(frozen=True)
class FullSheet:
    """A drawing on a page of its own, at its true size.

    Parameters
    ----------
    svg : text of an SVG file in millimetres
    width, height : mm
    """

    svg: str
    title: str
    told: str
    width: float
    height: float


@dataclass(frozen=True)
class NewPage:
    """What follows begins on a new page."""


@dataclass(frozen=True)
class Signatures:
    """A line to sign on for each of some people, with one for the date."""

    who: tuple[str, ...]


@dataclass(frozen=True)
class Behind:
    """A list of files that are bound in behind the paper's last page, with the page on which each begins.

    Parameters
    ----------
    heads : of the columns: the file, its pages, where it begins
    files : name and number of pages, in their order
    """

    heads: tuple[str, str, str]
    files: tuple[tuple[str, int], ...]


@dataclass(frozen=True)
class Chapter:
    """A heading of the highest kind, with all that stands under it."""

    heading: str
    body: tuple[Printed, ...]


Printed = Content | Picture | FullSheet | NewPage | Signatures | Behind | Chapter


@dataclass(frozen=True)
class House:
    """Who gives out the papers: what a settings file says of the yard.

    Parameters
    ----------
    logo : an SVG or PNG file's bytes, None = none
    logo_kind : "svg" or "png"
    colour : "#rrggbb" of headings and rules
    terms : of business, in paragraphs
    """

    name: str = ""
    address: str = ""
    logo: bytes | None = None
    logo_kind: str = ""
    colour: str = "#0b4f8a"
    terms: tuple[str, ...] = ()


@dataclass(frozen=True)
class Document:
    """One paper, ready to be set."""

    name: str  # of its file, without its ending
    title: str
    subject: str  # one line under the title
    boat: str
    date: str  # ISO 8601, "" = not dated
    paper: str  # "a4" or "us-letter"
    body: tuple[Printed, ...]
    contents: int = 2  # kinds of headings in the table of contents behind the cover, 0 = no such table
    cover: bool = True  # whether the title has a page to itself
    language: str = "en"  # ISO 639-1
    own: frozenset[str] = frozenset()  # names that are the same in every language
    whole: float = 0.3  # share of a page up to which a section is not parted by the end of one
