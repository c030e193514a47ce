"""Libraries that others would take if they were there, left out where they would only cost time."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager


def leave_out(name: str) -> None:
    """Let the import of a module fail from now on, unless it is loaded already."""
    sys.modules.setdefault(name, None)  # type: ignore[arg-type]


@contextmanager
def without(*names: str) -> Iterator[None]:
    """Let imports of some modules fail for a while, as where they are not installed; what is loaded already stays.

    Example
    -------
    >>> with without("wave"):
    ...     import wave
    Traceback (most recent call last):
    ModuleNotFoundError: import of wave halted; None in sys.modules
    """
    left_out = [name for name in names if name not in sys.modules]
    for name in left_out:
        sys.modules[name] = None  # type: ignore[assignment]
    try:
        yield
    finally:
        for name in left_out:
            del sys.modules[name]
