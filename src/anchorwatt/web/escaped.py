"""HTML from text: everything that comes from a file is escaped here."""

from __future__ import annotations

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
