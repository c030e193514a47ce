"""Other languages than English, for papers and their drawings.

The rooms write plain English. Each text that they can write is a message of gettext: a sentence as it stands in the
source, with `{0}`, `{1}` where figures and names go in. A finished text is said in another language by finding the
message that it was made from. So no room knows of languages, and there is one assessment for all of them.

Translators work on `fr.po` with any editor of gettext files; `tools/write_messages.py` keeps it in step with the
source.
"""

from __future__ import annotations

from collections.abc import Collection, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from typing import Final, Protocol

from anchorwatt.languages.translation import translation

ENGLISH: Final = "en"
LANGUAGES: Final = {ENGLISH: "English", "fr": "français"}
"""Languages by their code of ISO 639-1, each by its own name."""


class Interpreter(Protocol):
    """Who says English words in another language."""

    def said(self, words: str) -> str:
        """The words in that language."""


_spoken: ContextVar[tuple[str, Interpreter | None]] = ContextVar("spoken", default=(ENGLISH, None))


class Said(str):
    """Words that are in the language spoken already."""

    __slots__ = ()


@contextmanager
def speaking(language: str, own: Collection[str] = ()) -> Iterator[None]:
    """Within this, texts are said in that language.

    Parameters
    ----------
    language : one of `LANGUAGES`
    own : names that a user gave to things: they stay as they are

    Raises
    ------
    KeyError
        no such language.
    """
    with interpreted(language, None if language == ENGLISH else translation(language, frozenset(own))):
        yield


@contextmanager
def interpreted(language: str, by: Interpreter | None) -> Iterator[None]:
    """Within this, texts are said in a language by that interpreter; None = left as they are."""
    before = _spoken.set((language, by))
    try:
        yield
    finally:
        _spoken.reset(before)


def language() -> str:
    """The code of the language that is spoken."""
    return _spoken.get()[0]


def said(words: str) -> str:
    """Words in the language that is spoken; what no message is known for stays as it is.

    Example
    -------
    >>> with speaking("fr"):
    ...     said("Contents")
    'Sommaire'
    """
    found = _spoken.get()[1]
    if found is None or not words or isinstance(words, Said):
        return words
    return Said(found.said(words))
