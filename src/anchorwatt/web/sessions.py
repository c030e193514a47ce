"""Who is signed in: a table in this process, by random identifiers that only the browser holds."""

from __future__ import annotations

import hashlib
import secrets
from collections.abc import Callable
from dataclasses import dataclass

IDLE = 2 * 3600.0
"""s without a sign of use after which a session ends."""
ABSOLUTE = 12 * 3600.0
"""s after which a session ends however much it is used."""
MOST = 1000
MOST_A_PERSON = 20


@dataclass
class Session:
    """One browser that is signed in. The hash tells whether the password is still the one that was typed."""

    name: str
    password_hash: str
    began: float
    used: float


class Sessions:
    """The table of sessions. It keeps digests of the identifiers, so that a look into it opens no session.

    Parameters
    ----------
    clock : s, seconds of any clock that goes on while the machine sleeps
    idle, absolute : s, as the constants of this module
    """

    def __init__(self, clock: Callable[[], float], idle: float = IDLE, absolute: float = ABSOLUTE) -> None:
        self._clock, self._idle, self.absolute = clock, idle, absolute
        self._table: dict[str, Session] = {}

    def begin(self, name: str, password_hash: str) -> str:
        """Sign a browser in; returns its new identifier, 256 random bits.

        Where there are too many sessions, of this person or in all, the oldest ends.
        """
        now = self._clock()
        self._table = {key: one for key, one in self._table.items() if self._lives(one, now)}
        of_person = [key for key, one in self._table.items() if one.name == name]
        for key in of_person[: max(0, len(of_person) - MOST_A_PERSON + 1)]:
            del self._table[key]
        for key in list(self._table)[: max(0, len(self._table) - MOST + 1)]:
            del self._table[key]
        identifier = secrets.token_urlsafe(32)
        self._table[_key(identifier)] = Session(name, password_hash, now, now)
        return identifier

    def find(self, identifier: str, used: bool = True) -> Session | None:
        """The session of an identifier, if it lives; `used` starts its idle time anew."""
        now = self._clock()
        session = self._table.get(_key(identifier))
        if session is None:
            return None
        if not self._lives(session, now):
            del self._table[_key(identifier)]
            return None
        if used:
            session.used = now
        return session

    def end(self, identifier: str) -> None:
        """Sign a browser out."""
        self._table.pop(_key(identifier), None)

    def __len__(self) -> int:
        return len(self._table)

    def _lives(self, session: Session, now: float) -> bool:
        return now - session.used < self._idle and now - session.began < self.absolute


def _key(identifier: str) -> str:
    return hashlib.sha256(identifier.encode("utf-8", "surrogatepass")).hexdigest()
