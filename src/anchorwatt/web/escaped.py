"""HTML from text: everything that comes from a file is escaped here."""

from __future__ import annotations

from collections.abc import Iterable
from html import escape
from urllib.parse import quote


def text(words: object) -> str:
    """Words between tags, or in a quoted attribute.

    Example
    -------
    >>> text('<b title="x">')
    '&lt;b title=&quot;x&quot;&gt;'
    """
    return escape(str(words), quote=True)


def part(words: str) -> str:
    """Words as one part of an address.

    Example
    -------
    >>> part("a/b c")
    'a%2Fb%20c'
    """
    return quote(words, safe="")


def options(choices: Iterable[tuple[str, str]], chosen: str) -> str:
    """The options of a select: values with what is shown for them, one of them chosen."""
    return "".join(
        f'<option value="{text(value)}"{" selected" if value == chosen else ""}>{text(words)}</option>'
        for value, words in choices
    )
