"""What the papers of the starters say, and which texts of the source they are made from."""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator
from functools import cache

import anchorwatt
from anchorwatt.assessment import Assessment
from anchorwatt.design import parse, starter_text, starters
from anchorwatt.languages import interpreted
from anchorwatt.languages.known import Known
from anchorwatt.languages.messages import PLACE, Message
from anchorwatt.languages.translation import Translation
from anchorwatt.papers.as_xlsx import workbook
from anchorwatt.papers.document import House
from anchorwatt.papers.own_names import own_names
from anchorwatt.papers.printed import PAPERS, Wishes
from anchorwatt.papers.typeset import as_data
from anchorwatt.units import System

_MARK = re.compile("⟦(\\d+)⟧")


_EVERYTHING = Wishes(cost=True)


class Listener:
    """Writes down what it is asked to say."""

    def __init__(self) -> None:
        self.heard: dict[str, None] = {}

    def said(self, words: str) -> str:
        """The words, as they are."""
        self.heard[words] = None
        return words


def heard(assessment: Assessment, system: System) -> tuple[str, ...]:
    """Every text of all papers of a design, in the order in which they come up."""
    listener = Listener()
    with interpreted("en", listener):
        for paper in PAPERS:
            document = paper.document(assessment, system, _EVERYTHING)
            as_data(document, House(), by=listener)
    # Headings of a workbook are words in other languages only.
    with interpreted("", listener):
        for paper in PAPERS:
            if paper.tables is not None:
                workbook("", paper.tables(assessment, system, _EVERYTHING))
    return tuple(listener.heard)


@cache
def _assessments() -> tuple[Assessment, ...]:
    return tuple(anchorwatt.assess(parse(starter_text(name))) for name in starters())


def used(texts: Collection[str]) -> set[str]:
    """Those of the source's texts that papers of the starters are made from."""
    candidates = sorted(texts)
    known = Known([Message(text, _marked(number, text)) for number, text in enumerate(candidates)], ".")
    found: set[str] = set()
    for assessment in _assessments():
        reader = Translation(known, own_names(assessment.design))
        for system in _SYSTEMS:
            for words in heard(assessment, system):
                found.update(candidates[int(number)] for number in _MARK.findall(reader.said(words)))
    return found


_SYSTEMS: tuple[System, ...] = ("si", "us")


def _marked(number: int, text: str) -> str:
    return f"⟦{number}⟧ " + " ".join(f"{{{place}}}" for place in PLACE.findall(text))


def unknown(reader: Translation, assessment: Assessment, system: System) -> Iterator[tuple[str, str]]:
    """Pieces that a language has no message for, each with the text that it stands in."""
    for words in heard(assessment, system):
        for piece in reader.unknown(words):
            yield piece, words
