"""Work that takes long, watched by whoever waits for it: they are told how far it is, and may give it up.

What is watched is what one thread does within a block; work that nobody watches goes on to its end.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass

from anchorwatt.errors import AnchorwattError


@dataclass(frozen=True)
class Progress:
    """How far a piece of work is."""

    words: str
    done: int
    of: int


Going = Callable[[Progress | None], bool]
"""Told how far the work is, None where there is nothing new to tell; its answer False gives the work up."""

_going: ContextVar[Going | None] = ContextVar("going", default=None)


class GivenUp(AnchorwattError):
    """Whoever waited for some work wants it no longer; what is not whole is forgotten."""

    def __init__(self) -> None:
        super().__init__("the work was given up")


@contextmanager
def watched(going: Going) -> Iterator[None]:
    """Watch what is worked out within a block.

    Raises
    ------
    GivenUp
        From within the block, at the next run, once `going` says so.

    Example
    -------
    >>> told = []
    >>> with watched(lambda progress: told.append(progress) is None):
    ...     tell("a week", 2, 7)
    >>> told[0].words, told[0].done, told[0].of
    ('a week', 2, 7)
    """
    token = _going.set(going)
    try:
        yield
    finally:
        _going.reset(token)


def tell(words: str, done: int, of: int) -> None:
    """Tell whoever watches how far the work is."""
    _ask(Progress(words, done, of))


def go_on() -> None:
    """Give the work up here if whoever watches wants it no longer."""
    _ask(None)


def _ask(progress: Progress | None) -> None:
    going = _going.get()
    if going is not None and not going(progress):
        raise GivenUp
