"""The messages of one language, from its gettext file."""

from __future__ import annotations

import re
from dataclasses import dataclass
from functools import cache
from importlib import resources
from typing import Final

PLACE: Final = re.compile(r"\{(\d+)\}")
"""Where something goes into a message."""


@dataclass(frozen=True)
class Message:
    """A text as the source has it, and how it is said.

    Parameters
    ----------
    source, said : with `{0}`, `{1}`, … where figures and names go in
    """

    source: str
    said: str


APART: Final = {"fr": ":;?!%»"}
"""Signs of a language that a space stands before, at which no line ends."""


@cache
def messages(language: str) -> tuple[Message, ...]:
    """All messages of a language that have been translated.

    Raises
    ------
    KeyError
        there is no file for it.
    """
    # Loaded where it is used: English papers need none of it.
    from babel.messages.pofile import read_po

    file = resources.files("anchorwatt.languages").joinpath(f"{language}.po")
    if not file.is_file():
        raise KeyError(language)
    with file.open("rb") as content:
        catalogue = read_po(content, locale=language, ignore_obsolete=True)
    apart = APART.get(language, "")
    space = re.compile(f" (?=[{apart}])|(?<=«) ") if apart else None
    return tuple(
        Message(one.id, space.sub("\u00a0", one.string) if space else one.string)
        for one in catalogue
        if isinstance(one.id, str) and one.id and isinstance(one.string, str) and one.string and not one.fuzzy
    )
