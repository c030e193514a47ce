"""The papers of open designs: set once a version, and shown and saved from there."""

from __future__ import annotations

import threading
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from hashlib import sha256
from pathlib import Path
from typing import TYPE_CHECKING, Any
from weakref import WeakKeyDictionary

from anchorwatt.errors import AnchorwattError, BadDesign, Problem
from anchorwatt.languages import LANGUAGES
from anchorwatt.units import System
from anchorwatt.web.sheets import make_room
from anchorwatt.web.yaml_files import houses

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.papers.document import House
    from anchorwatt.papers.printed import Edition, Paper, Wishes
    from anchorwatt.papers.typeset import Leaf

FORMATS = {
    "pdf": "application/pdf",
    "csv": "text/csv; charset=utf-8",
    "xlsx": "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet",
    "svg": "image/svg+xml",
}
"""What the files of a paper are, by their endings; each SVG file is one page."""

HARMLESS = "default-src 'none'; style-src 'unsafe-inline'; img-src data:; sandbox"
"""What a page that is opened by itself may do: show what it holds."""

_KEPT = 3  # editions of one assessment
_SETTING = threading.Lock()

Wanted = tuple[str, System, "Wishes"]

_set: WeakKeyDictionary[Assessment, dict[Wanted, Edition]] = WeakKeyDictionary()


@dataclass(frozen=True)
class Order:
    """A paper that is asked for.

    Parameters
    ----------
    said : by names of `READERS`, the words that were used
    told : by the same names, what is wrong with those that were not
    """

    paper: Paper
    wishes: Wishes
    said: Mapping[str, str]
    told: Mapping[str, str]


def ordered(query: Mapping[str, str], system: System, folder: Path) -> Order:
    """What an address asks for; the first of all papers where it names none."""
    from anchorwatt.papers.printed import PAPERS, Wishes

    paper = next((one for one in PAPERS if one.name == query.get("paper")), PAPERS[0])
    found: dict[str, Any] = {}
    said: dict[str, str] = {}
    told: dict[str, str] = {}
    for name, read in READERS.items():
        words = query.get(name, "").strip()
        if not words or (name in TRIALS and not paper.takes_temperatures):
            continue
        try:
            found[name] = read(name, words, system, folder)
            said[name] = words
        except BadDesign as problem:
            told[name] = "\n".join(_line(one) for one in problem.problems)
        except AnchorwattError as problem:
            words = str(problem)
            told[name] = f"{words[0].upper()}{words[1:]}"
    return Order(paper, Wishes(**found), said, told)


def _line(one: Problem) -> str:
    return f"Line {one.line or 1}: {one.key and f'{one.key}: '}found {one.found}; allowed: {one.allowed}"


def _house(_: str, words: str, __: System, folder: Path) -> House:
    from anchorwatt.papers.house import read_house

    if words not in houses(folder):
        raise AnchorwattError(f"there is no settings file “{words}” in this folder")
    return read_house(folder / f"{words}.yaml")


def _temperature(name: str, words: str, system: System, _: Path) -> float:
    from anchorwatt.papers.printed import OUTSIDE

    (outside,) = (one for one in OUTSIDE if one.name == name)
    return outside.read(words, system)


def _language(_: str, words: str, __: System, ___: Path) -> str:
    if words not in LANGUAGES:
        raise AnchorwattError(f"found “{words}”; allowed: one of: {', '.join(LANGUAGES)}")
    return words


TRIALS = ("sea", "air")
"""What only papers of a day of trials ask for."""

READERS: Mapping[str, Callable[[str, str, System, Path], Any]] = {
    "house": _house,
    "language": _language,
    "sea": _temperature,
    "air": _temperature,
}
"""How words of an address become one of the `Wishes`, by its name."""


def edition(assessment: Assessment, order: Order, system: System) -> Edition:
    """A paper of a design, from the shelf where it was set before.

    Raises
    ------
    AnchorwattError
        The design cannot be worked out.
    """
    from anchorwatt.papers import printed

    shelf = _set.setdefault(assessment, {})
    wanted: Wanted = (order.paper.name, system, order.wishes)
    made = shelf.get(wanted)
    if made is None:
        with _SETTING:  # who asks for the same meanwhile waits for it
            made = shelf.get(wanted)
            if made is None:
                made = printed.edition(assessment, order.paper, system, order.wishes)
                made.pages  # noqa: B018 - set while nobody else sets it
                make_room(shelf, _KEPT)
                shelf[wanted] = made
    return made


def page_name(paper: str, number: int) -> str:
    """Name of the file that is a page of a paper; pages count from 1."""
    return f"{paper}-{number}.svg"


def mark_of_page(page: Leaf) -> str:
    """The same for pages that look the same."""
    return sha256(page.svg).hexdigest()[:12]


def written(assessment: Assessment, file: str, query: Mapping[str, str], system: System, folder: Path) -> bytes:
    """A file of a paper: the paper's name and pdf, xlsx or csv, or a `page_name`.

    Raises
    ------
    KeyError
        There is no such file.
    AnchorwattError
        The paper cannot be made as asked.
    """
    from anchorwatt.papers.printed import tables, to_fill_in

    stem, _, ending = file.rpartition(".")
    paper = stem.rpartition("-")[0] if ending == "svg" else stem
    order = ordered({**query, "paper": paper}, system, folder)
    if order.paper.name != paper or ending not in FORMATS:
        raise KeyError(file)
    if order.told:
        raise AnchorwattError("\n".join(f"{name}: {words}" for name, words in order.told.items()))
    if ending == "xlsx":
        return tables(assessment, order.paper, system, order.wishes)
    if ending == "csv":
        return to_fill_in(assessment, order.paper, system, order.wishes)
    made = edition(assessment, order, system)
    if ending == "pdf":
        return made.pdf
    pages = {page_name(paper, at): page.svg for at, page in enumerate(made.pages, 1)}
    return pages[file]
