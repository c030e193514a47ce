"""The messages of a language, ready to be looked for in a finished text."""

from __future__ import annotations

import re
from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cache, cached_property
from operator import attrgetter
from typing import Final

from anchorwatt.languages.messages import PLACE, Message
from anchorwatt.units import DIMENSIONS

WORD: Final = re.compile(r"[^\W\d_]{2,}(?![\d_])")
_IDENTIFIER: Final = re.compile(r"\b[a-z]+(?:-[a-z]*\d\w*)+")
"""A name of a sheet or a file, as wiring-2."""


@dataclass(frozen=True)
class Pattern:
    """A message with places, cut at them.

    Parameters
    ----------
    fixed : what stands before, between and behind its places
    said : the same in the other language, with places
    places : numbers of its places, in order
    """

    fixed: tuple[str, ...]
    said: str
    places: tuple[int, ...]

    @cached_property
    def letters(self) -> int:
        return sum(len(word) for part in self.fixed for word in WORD.findall(part))

    @cached_property
    def rank(self) -> int:
        """By which the longest comes first."""
        return -self.letters

    def filled(self, pieces: Sequence[str]) -> str:
        """The message in the other language with pieces in its places."""
        at = dict(zip(self.places, pieces, strict=True))
        return PLACE.sub(lambda place: at[int(place[1])], self.said)

    def cut(self, words: str) -> Iterator[tuple[str, ...]]:
        """What may stand in its places: with every fixed part as far left as can be, and as far right."""
        first, *middle, last = self.fixed
        if len(words) < len(first) + len(last):
            return
        inner = words[len(first) : len(words) - len(last)]
        left = list(_cut(inner, middle))
        if left:
            yield tuple(left)
            if middle:
                right = [one[::-1] for one in _cut(inner[::-1], [one[::-1] for one in reversed(middle)])][::-1]
                if right != left:
                    yield tuple(right)


def _cut(words: str, fixed: Sequence[str]) -> Iterator[str]:
    """Pieces between fixed parts, none where they are not all there."""
    pieces, start = [], 0
    for one in fixed:
        at = words.find(one, start)
        if at < 0:
            return
        pieces.append(words[start:at])
        start = at + len(one)
    yield from (*pieces, words[start:])


class Known:
    """The messages of a language, ready to be looked for.

    Parameters
    ----------
    decimal : the sign before tenths
    apart : signs that a space stands before
    """

    def __init__(self, messages: Iterable[Message], decimal: str, apart: str = "") -> None:
        self.decimal = decimal
        self.apart = apart
        self.whole: dict[str, str] = {}
        patterns = []
        for message in messages:
            if PLACE.search(message.source):
                patterns.append(_pattern(message))
            else:
                self.whole.setdefault(plain(message.source.strip()), message.said.strip())
        words = [_whole_words(one.fixed) for one in patterns]
        often = Counter(word for some in words for word in some)
        self._by_word: dict[str, list[Pattern]] = {}  # by the rarest of their words, "" = they have none
        for one, some in zip(patterns, words, strict=True):
            rarest = min(some, key=lambda word: (often[word], -len(word), word), default="")
            self._by_word.setdefault(rarest, []).append(one)

    def sign(self, signs: str) -> str:
        """Signs between two messages as the language sets them."""
        return f"\u00a0{signs}" if signs[:1] and signs[0] in self.apart else signs

    def likely(self, words: str, least: float) -> list[Pattern]:
        """Patterns of so many letters at least that words may have been made from, the longest first."""
        found = [
            one
            for word in {"", *WORD.findall(words)}
            for one in self._by_word.get(word, ())
            if one.letters >= least and words.startswith(one.fixed[0]) and words.endswith(one.fixed[-1])
        ]
        return sorted(found, key=_by_rank) if len(found) > 1 else found


_by_rank = attrgetter("rank")


def _whole_words(fixed: Sequence[str]) -> set[str]:
    """Words of a message that no place can lengthen."""
    found = set()
    for number, part in enumerate(fixed):
        for word in WORD.finditer(part):
            open_left = word.start() == 0 and number > 0
            open_right = word.end() == len(part) and number < len(fixed) - 1
            if not open_left and not open_right:
                found.add(word[0])
    return found


def _pattern(message: Message) -> Pattern:
    source = message.source.strip()
    return Pattern(
        tuple(plain(part) for part in PLACE.split(source)[::2]),
        message.said.strip(),
        tuple(int(number) for number in PLACE.findall(source)),
    )


def plain(words: str) -> str:
    """Words as they are looked for: a space is a space."""
    return words.replace("\u00a0", " ")


@cache
def _units() -> frozenset[str]:
    return frozenset(unit.symbol for dimension in DIMENSIONS.values() for unit in dimension.units)


def letters(words: str) -> int:
    """Letters of words, without signs of units and short names in capitals, which are the same in all languages."""
    return sum(
        len(word)
        for word in WORD.findall(_IDENTIFIER.sub("", words))
        if word not in _units() and not (word.isupper() and len(word) < 6)
    )


def is_figure(words: str) -> bool:
    """Whether words are one figure with a unit of ours."""
    found = re.fullmatch(r"[-−+±≥≤<>~ ]*\d[\d.,\u00a0 ]*(\D.*)", words)
    return found is not None and found[1].strip() in _units()
