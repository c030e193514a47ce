"""Finds the message that a finished text was made from, and says it in another language.

A text is one message, or a message with others within it, or several behind one another with signs between them. Of all
ways to read it the one is taken that leaves the fewest letters for which no message is known; of those the one of the
fewest pieces. Every step is a search for fixed words from left to right, so no text can make it slow.
"""

from __future__ import annotations

import re
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass, replace
from functools import cache, lru_cache
from itertools import pairwise
from typing import Final

from anchorwatt.languages.known import Known, is_figure, letters, plain
from anchorwatt.languages.messages import APART, messages

# Numbers of sections keep their point.
_DECIMAL: Final = re.compile(r"(?<![\w.])(?<!NEC )(?<!CFR )(\d+)\.(\d+)(?![\w.]*\d)")
_SEPARATORS: Final = tuple(
    re.compile(one.replace(" ", "[ \u00a0]"))
    for one in (
        r"\n+",
        r"(?<=[.!?]) ",
        r"(?<=[:;]) ",
        r" · ",
        r" ?→ ",
        r", ",
        r"; |: ",
        r" [+×=→] ",
        r" \(|\)(?: |$)",
        r" (?=[-−+]?\d)",
        r"(?<=\b[A-Z]\d) |(?<=\b[A-Z]\d\d) |(?<=\b[A-Z]\d\d\d) ",
        r"[,;:()/+=\[\]→|]|\.(?!\d)",
        r" ",
    )
)
"""What may stand between two messages, what parts most before what parts least."""
_AFTER: Final = re.compile(r"(?<=\S)[:;](?=[ \u00a0]|$)")
_TAG: Final = re.compile(r"[A-Z]\d{1,3}")
_MOST: Final = 12
"""Pieces of a text up to which every run of them is looked at as one message."""
_END: Final = ".:,;?!"
_LONGEST: Final = 4000
"""Signs of a text that is looked at as a whole; longer ones only by their lines and sentences."""


@dataclass(frozen=True)
class Reading:
    """One way to say a text.

    Parameters
    ----------
    unknown : pieces of it for which no message is known
    letters : how many letters these have
    pieces : messages and names that it was read as, figures left out
    sure : whether one message has most of its letters
    """

    words: str
    unknown: tuple[str, ...] = ()
    letters: int = 0
    pieces: int = 1
    sure: bool = False

    @property
    def rank(self) -> tuple[int, int]:
        """By which the best comes first: what most is known of, in the fewest pieces."""
        return self.letters, self.pieces


class Translation:
    """One language, and the names that stay as they are in it."""

    def __init__(self, known: Known, own: Iterable[str] = ()) -> None:
        self._messages = known
        self._own = frozenset(shown for name in own for shown in (plain(name), plain(name).replace("_", " ")))
        self._read_before: dict[str, Reading] = {}

    def said(self, words: str) -> str:
        """The words in this language."""
        return self.read(words).words

    def unknown(self, words: str) -> tuple[str, ...]:
        """Pieces of the words for which no message is known."""
        return self.read(words).unknown

    def read(self, words: str) -> Reading:
        """The best way to say the words."""
        found = self._read_before.get(words)
        if found is None:
            core = words.strip()
            if core == words:
                found = self._read(words)
            else:
                at = words.find(core) if core else 0
                inner = self.read(core) if core else Reading("", pieces=0)
                found = replace(inner, words=words[:at] + inner.words + words[at + len(core) :])
            self._read_before[words] = found
        return found

    def _read(self, words: str) -> Reading:
        if not letters(words) or is_figure(words):
            return self._short(words)
        if self._is_own(plain(words)):
            return Reading(words)
        best = Reading(self._figures(words), (words,), letters(words))
        for one in self._readings(words):
            if one.rank < best.rank:
                best = one
            if best.rank <= (0, 1) or (not best.letters and best.sure):
                break
        return best

    def _short(self, words: str) -> Reading:
        """Figures, or short words in capitals, perhaps behind a tag, as "X1 BANK BUS"."""
        known = self._messages.whole
        tag, space, name = words.partition(" ")
        if plain(words) in known:
            return Reading(known[plain(words)])
        if plain(name) in known and _TAG.fullmatch(tag):
            return Reading(f"{tag}{space}{known[plain(name)]}")
        return Reading(self._figures(words), pieces=0)

    def _is_own(self, words: str) -> bool:
        """Whether words are a name of the user's, or a sentence without its stop, perhaps at the start of one of ours.

        A word of ours that a user wrote small, as "port", is said all the same: it stands in our own texts, too.
        """
        ways = [one for first in (words, words[0].swapcase() + words[1:]) for one in (first, f"{first}.")]
        found = next((one for one in ways if one in self._own), "")
        return bool(found) and (found[0].isupper() or self._messages.whole.keys().isdisjoint(ways))

    def _readings(self, words: str) -> Iterator[Reading]:
        """Ways to say the words, the longest messages first."""
        if len(words) <= _LONGEST:
            turned = words[0].swapcase() + words[1:]
            yield from self._as_message(words)
            for one in self._as_message(turned):
                yield replace(one, words=one.words[:1].swapcase() + one.words[1:])
            for one in self._as_message(f"{words}."):
                yield replace(one, words=one.words.removesuffix("."))
            if words[-1] in _END:
                yield _behind([self.read(words[:-1]), Reading(self._messages.sign(words[-1]), pieces=0)])
            label, colon, rest = words.partition(": ")
            if rest:
                yield _behind([self.read(label), self.read(rest)], [self._messages.sign(colon)])
        for separator in _SEPARATORS:
            pieces = separator.split(words)
            if len(pieces) > 1:
                yield self._joined(pieces, separator.findall(words), separator is _SEPARATORS[-1])
            if len(words) > _LONGEST:
                return

    def _as_message(self, words: str, share: float = 0.05) -> Iterator[Reading]:
        """Ways to read words as one message that has at least that share of their letters."""
        text = plain(words)
        if text in self._messages.whole:
            yield Reading(self._messages.whole[text])
        elif (flat := text.replace("\n", " ")) in self._messages.whole:
            yield Reading(_in_two(self._messages.whole[flat]))
        total = letters(text)
        for pattern in self._messages.likely(text, share * total):
            for pieces in pattern.cut(text):
                inner = [self.read(piece) for piece in pieces]
                read = _behind(inner)
                said = pattern.filled([one.words for one in inner])
                yield replace(read, words=said, pieces=read.pieces + 1, sure=2 * pattern.letters >= total)

    def _joined(self, pieces: Sequence[str], between: Sequence[str], spaced: bool) -> Reading:
        """Pieces one behind the other: the longest run of them that is one message, or else each by itself.

        Where only spaces part them, each place between two counts as a piece: words in a row are no sentence.
        """
        found, signs, start = [], [], 0
        while start < len(pieces):
            if start:
                signs.append(between[start - 1])
            furthest = min(len(pieces), start + _MOST) - (start == 0)
            for end in range(furthest, start + 1, -1):
                one = self._as_one(_whole(pieces[start:end], between[start : end - 1]))
                if one is not None:
                    break
            else:
                end, one = start + 1, self.read(pieces[start])
            found.append(one)
            start = end
        read = _behind(found, [one if one in (":", ";") else self._messages.sign(one) for one in signs])
        cut = sum(one.pieces > 0 < other.pieces for one, other in pairwise(found)) if spaced else 0
        return replace(read, pieces=read.pieces + cut)

    def _as_one(self, words: str) -> Reading | None:
        """Words as one message all of which is known, None where they are none."""
        return next((one for one in self._as_message(words, share=0.25) if not one.letters), None)

    def _figures(self, words: str) -> str:
        said = _DECIMAL.sub(rf"\1{self._messages.decimal}\2", words)
        return _AFTER.sub(lambda found: self._messages.sign(found[0]), said)


def _whole(pieces: Sequence[str], between: Sequence[str]) -> str:
    return pieces[0] + "".join(sign + piece for sign, piece in zip(between, pieces[1:], strict=True))


def _behind(readings: Sequence[Reading], between: Sequence[str] = ()) -> Reading:
    """Readings one behind the other, with nothing between them unless it is given."""
    words = _whole([one.words for one in readings], between or [""] * (len(readings) - 1))
    unknown = tuple(left for one in readings for left in one.unknown)
    return Reading(
        words,
        unknown,
        sum(one.letters for one in readings),
        sum(one.pieces for one in readings),
    )


def _in_two(words: str) -> str:
    """Words in two lines of about the same length, as a heading of a narrow column is."""
    spaces = [at for at, sign in enumerate(words) if sign == " "]
    middle = min(spaces, key=lambda at: abs(2 * at - len(words)), default=-1)
    return words if middle < 0 else f"{words[:middle]}\n{words[middle + 1 :]}"


@cache
def _known(language: str) -> Known:
    # Loaded where it is used, as the messages are.
    from babel.numbers import get_decimal_symbol

    return Known(messages(language), get_decimal_symbol(language), APART.get(language, ""))


@lru_cache(maxsize=8)
def translation(language: str, own: frozenset[str] = frozenset()) -> Translation:
    """The translation into a language, with names that stay as they are.

    Raises
    ------
    KeyError
        no such language.
    """
    return Translation(_known(language), own)
