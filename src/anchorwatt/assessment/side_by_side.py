"""Designs side by side: their deciding answers, and what their files say differently."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from anchorwatt.design.document import Key, dotted
from anchorwatt.design.plain_value import written

if TYPE_CHECKING:
    from anchorwatt.assessment import Answer, Assessment

SAME = 1e-9
"""Share by which two figures may be apart and still be the same: rounding."""


@dataclass(frozen=True)
class Compared:
    """One answer of all designs."""

    question: str
    answers: tuple[Answer | None, ...]  # one a design, None where it has no such answer
    differs: tuple[bool, ...]  # from the first design


@dataclass(frozen=True)
class Difference:
    """A key of the design file that does not say the same everywhere."""

    key: str
    typed: tuple[str | None, ...]  # one a design, None where it says nothing


@dataclass(frozen=True)
class SideBySide:
    names: tuple[str, ...]
    answers: tuple[Compared, ...]
    differences: tuple[Difference, ...]


def side_by_side(named: Sequence[tuple[str, Assessment]]) -> SideBySide:
    """Lay designs side by side; the first is what the others are held against.

    Parameters
    ----------
    named : each with what it is called
    """
    headlines = [{one.key: one for one in assessment.headline} for _, assessment in named]
    keys = dict.fromkeys(key for headline in headlines for key in headline)
    answers = tuple(_compared([headline.get(key) for headline in headlines]) for key in keys)
    said = [dict(_leaves(assessment.design.document.data, ())) for _, assessment in named]
    every = dict.fromkeys(key for one in said for key in one)
    typed = {key: tuple(one.get(key) for one in said) for key in every}
    differences = tuple(Difference(dotted(key), some) for key, some in typed.items() if len(set(some)) > 1)
    return SideBySide(tuple(name for name, _ in named), answers, differences)


def _compared(answers: Sequence[Answer | None]) -> Compared:
    first = answers[0]
    question = next(one.question for one in answers if one is not None)
    return Compared(question, tuple(answers), tuple(not _same(first, one) for one in answers))


def _same(one: Answer | None, other: Answer | None) -> bool:
    if one is None or other is None:
        return one is other
    return math.isclose(one.value, other.value, rel_tol=SAME) or (math.isnan(one.value) and math.isnan(other.value))


def _leaves(data: Any, key: Key) -> Iterator[tuple[Key, str]]:
    """Every value of a file with its key."""
    if isinstance(data, Mapping) and data:
        for name, value in data.items():
            yield from _leaves(value, (*key, str(name)))
    elif isinstance(data, list) and any(isinstance(one, dict | list) for one in data):
        for place, value in enumerate(data):
            yield from _leaves(value, (*key, place))
    else:
        yield key, data if isinstance(data, str) else str(written(data))
