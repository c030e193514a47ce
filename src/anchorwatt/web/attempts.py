"""Failed attempts to sign in: the more there were, the longer the wait before the next; memory is bounded."""

from __future__ import annotations

import hashlib
import ipaddress
import math
from collections import OrderedDict
from collections.abc import Callable
from dataclasses import dataclass

from anchorwatt.web.accounts import name_key

MOST = 10_000
"""Names, and addresses, that are kept; beyond, the one that was longest quiet is forgotten."""
FORGOTTEN = 3600.0
"""s of quiet after which failures are forgotten."""


@dataclass(frozen=True)
class Patience:
    """How many failures are free, and the longest wait, s; after the free ones the wait doubles from 1 s."""

    free: int
    longest: float

    def wait(self, failures: int) -> float:
        """The wait after so many failures, s.

        Example
        -------
        >>> [Patience(3, 60.0).wait(n) for n in (3, 4, 5, 6, 100)]
        [0.0, 1.0, 2.0, 4.0, 60.0]
        """
        if failures <= self.free:
            return 0.0
        return min(self.longest, 2.0 ** min(failures - self.free - 1, 30))


BY_NAME = Patience(free=3, longest=60.0)
"""A stranger can make the true owner of a name wait, so the wait stays short."""
BY_ADDRESS = Patience(free=10, longest=900.0)
"""A yard may be behind one address, so more failures are free; then it becomes long."""


class Attempts:
    """Counts attempts by name and by address.

    Parameters
    ----------
    clock : s
    most : how many names, and addresses, are kept
    """

    def __init__(self, clock: Callable[[], float], most: int = MOST) -> None:
        self._clock = clock
        self._names = _Failures(BY_NAME, most)
        self._addresses = _Failures(BY_ADDRESS, most)

    def begin(self, name: str, address: str) -> int:
        """Begin an attempt; returns the seconds to wait instead, 0 when it may go on.

        What goes on counts as failed at once, so that many attempts at the same moment do not slip through.
        """
        now = self._clock()
        name, address = _digest(name_key(name)), _network(address)
        wait = max(self._names.wait(name, now), self._addresses.wait(address, now))
        if wait > 0.0:
            return math.ceil(wait)
        self._names.count(name, now)
        self._addresses.count(address, now)
        return 0

    def succeeded(self, name: str, address: str) -> None:
        """The attempt was right: the name is clear; the address loses this attempt only, not those at other names."""
        self._names.forget(_digest(name_key(name)))
        self._addresses.take_back(_network(address))

    def __len__(self) -> int:
        return len(self._names) + len(self._addresses)


class _Failures:
    """Failures by key, the one that was longest quiet first."""

    def __init__(self, patience: Patience, most: int) -> None:
        self._patience, self._most = patience, most
        self._found: OrderedDict[str, tuple[int, float]] = OrderedDict()

    def wait(self, key: str, now: float) -> float:
        failures, last = self._found.get(key, (0, now))
        if now - last >= FORGOTTEN:
            self._found.pop(key, None)
            return 0.0
        # A clock that was set back must not lengthen the wait.
        return self._patience.wait(failures) - max(0.0, now - last)

    def count(self, key: str, now: float) -> None:
        failures, _ = self._found.pop(key, (0, now))
        self._found[key] = (failures + 1, now)
        while len(self._found) > self._most:
            self._found.popitem(last=False)

    def take_back(self, key: str) -> None:
        failures, last = self._found.get(key, (0, 0.0))
        if failures > 1:
            self._found[key] = (failures - 1, last)
        else:
            self._found.pop(key, None)

    def forget(self, key: str) -> None:
        self._found.pop(key, None)

    def __len__(self) -> int:
        return len(self._found)


def _digest(words: str) -> str:
    return hashlib.sha256(words.encode("utf-8", "surrogatepass")).hexdigest()


def _network(address: str) -> str:
    """An address as it is counted: of version 6 the /64, since one line has all of it.

    Example
    -------
    >>> _network("2001:db8::1") == _network("2001:db8::2"), _network("192.0.2.1") == _network("192.0.2.2")
    (True, False)
    """
    try:
        found = ipaddress.ip_address(address.partition("%")[0])
    except ValueError:
        return _digest(address)
    if isinstance(found, ipaddress.IPv4Address):
        return str(found)
    if found.ipv4_mapped is not None:
        return str(found.ipv4_mapped)
    return str(ipaddress.ip_network((found, 64), strict=False))
