"""The people who may use a workbench that others can reach: names, password hashes, roles.

They are kept in one file, `people.json`, which is written whole or not at all and which only its owner on disk may
read. A password is kept as its argon2id hash (RFC 9106), never as itself.
"""

from __future__ import annotations

import base64
import contextlib
import json
import logging
import os
import secrets
import tempfile
import threading
import unicodedata
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from pathlib import Path
from types import MappingProxyType
from typing import Any

from argon2 import PasswordHasher, Type, extract_parameters
from argon2.exceptions import InvalidHashError, VerificationError

from anchorwatt.errors import AnchorwattError, CannotWrite

FOLDER = ".anchorwatt"
"""The folder beside the designs in which a workbench keeps its people."""
FILE = "people.json"
VERSION = 1

LONGEST_NAME = 60
SHORTEST_PASSWORD = 12
LONGEST_PASSWORD = 1000
PASSWORD_RULE = (
    f"A password has {SHORTEST_PASSWORD} characters or more, and is not the name. "
    "A few words that do not belong together are easy to keep in mind and hard to guess."
)
NAME_RULE = f"a name of 1 to {LONGEST_NAME} characters that can be seen"

_log = logging.getLogger(__name__)
_changing = threading.Lock()


class BadPeople(AnchorwattError):
    """The people cannot be read, or not be changed as asked; nothing was changed."""


class May(StrEnum):
    """What somebody may do."""

    read = "read every design"
    download = "take drawings, papers and tables along"
    change_designs = "change designs"
    manage_people = "add and remove people, and change their roles and passwords"


class Role(StrEnum):
    """What somebody is to the yard.

    A technician is to change the as-built facts of a boat, and nothing else of it. The workbench keeps no such facts
    yet, so a technician reads and downloads.
    """

    owner = "owner"
    designer = "designer"
    technician = "technician"
    viewer = "viewer"


MAY: Mapping[Role, frozenset[May]] = MappingProxyType(
    {
        Role.owner: frozenset(May),
        Role.designer: frozenset({May.read, May.download, May.change_designs}),
        Role.technician: frozenset({May.read, May.download}),
        Role.viewer: frozenset({May.read}),
    }
)


@dataclass(frozen=True)
class Person:
    """Somebody with an account."""

    name: str
    role: Role
    password_hash: str = field(repr=False)

    def may(self, what: May) -> bool:
        """Whether the role allows it."""
        return what in MAY[self.role]


class People:
    """The accounts of one folder. Each question looks whether the file has changed since it was last read.

    Parameters
    ----------
    folder : where `people.json` is, or will be; made when the first person is added
    hasher : how passwords are hashed; left out, argon2id at the cost that its library recommends
    """

    def __init__(self, folder: Path, hasher: PasswordHasher | None = None) -> None:
        self.path = folder / FILE
        self._hasher = hasher or PasswordHasher()
        self._nobody = _hash_of_nothing(self._hasher)
        self._read: tuple[tuple[int, ...], tuple[Person, ...]] | None = None

    def all(self) -> tuple[Person, ...]:
        """Everybody, in the order in which they were added.

        Raises
        ------
        BadPeople
            The file is broken; the message names it.
        """
        try:
            with self.path.open("rb") as file:
                found = os.fstat(file.fileno())
                mark = (found.st_ino, found.st_mtime_ns, found.st_size)
                known = self._read
                if known is not None and known[0] == mark:
                    return known[1]
                people = _people(self.path, file.read())
        except FileNotFoundError:
            return ()
        except OSError as error:
            raise BadPeople(f"{self.path}: cannot read the people: {error.strerror or error}") from None
        self._read = (mark, people)
        return people

    def person(self, name: str) -> Person | None:
        """Somebody by name, whatever its capitals."""
        key = name_key(name)
        return next((one for one in self.all() if name_key(one.name) == key), None)

    def add(self, name: str, password: str, role: Role) -> Person:
        """Give somebody an account.

        Raises
        ------
        BadPeople
            The name is taken or cannot be kept, the password is too weak, or there would be no owner.
        CannotWrite
            The disk refuses; nothing was changed.
        """
        name = clean_name(name)
        person = Person(name, role, self._hash(name, password))

        def added(people: tuple[Person, ...]) -> tuple[Person, ...]:
            _check_new(people, name, role)
            return (*people, person)

        self._change(added)
        return person

    def may_add(self, name: str, role: Role) -> None:
        """Refuse what `add` would refuse whatever the password, so that nobody types one in vain."""
        _check_new(self.all(), clean_name(name), role)

    def known(self, name: str) -> Person:
        """Somebody by name.

        Raises
        ------
        BadPeople
            Nobody has that name.
        """
        return self._there(self.all(), name)

    def set_password(self, name: str, password: str) -> Person:
        """Give somebody another password, which ends the sessions begun with the one before. Raises as `add` does."""
        person = self.known(name)
        hashed = self._hash(person.name, password)
        return self._changed(name, lambda one: replace(one, password_hash=hashed))

    def set_role(self, name: str, role: Role) -> Person:
        """Give somebody another role. Raises as `add` does; the last owner stays owner."""
        return self._changed(name, lambda one: replace(one, role=role))

    def remove(self, name: str) -> None:
        """Take somebody's account away. Raises as `add` does; the last owner stays."""

        def removed(people: tuple[Person, ...]) -> tuple[Person, ...]:
            gone = self._there(people, name)
            return tuple(one for one in people if one is not gone)

        self._change(removed)

    def verify(self, name: str, password: str) -> Person | None:
        """Somebody whose name and password are right, else None.

        An unknown name costs the same work as a known one, so that the time of the answer does not tell names. A hash
        of another cost than today's is made anew.
        """
        person = self.person(name)
        kept = self._nobody if person is None else person.password_hash
        try:
            self._hasher.verify(kept, _bytes(password[: LONGEST_PASSWORD + 1]))
        except (VerificationError, InvalidHashError):
            return None
        if person is None or len(password) > LONGEST_PASSWORD:
            return None
        return self._rehashed(person, password)

    def _rehashed(self, person: Person, password: str) -> Person:
        if not self._hasher.check_needs_rehash(person.password_hash):
            return person
        renewed = replace(person, password_hash=self._hasher.hash(_bytes(password)))
        try:
            # Only where it is still the hash that was verified: a password set meanwhile must stay.
            self._change(lambda people: tuple(renewed if one == person else one for one in people))
        except (BadPeople, CannotWrite) as error:
            _log.warning("the password hash of %s was not made anew: %s", shown(person.name), error)
            return person
        return self.person(person.name) or person

    def _hash(self, name: str, password: str) -> str:
        check_password(name, password)
        return self._hasher.hash(_bytes(password))

    def _there(self, people: tuple[Person, ...], name: str) -> Person:
        found = next((one for one in people if name_key(one.name) == name_key(name)), None)
        if found is None:
            known = ", ".join(shown(one.name) for one in people) or "nobody yet"
            raise BadPeople(f"{self.path}: found no {shown(name)}; allowed: {known}")
        return found

    def _changed(self, name: str, change: Callable[[Person], Person]) -> Person:
        def after(people: tuple[Person, ...]) -> tuple[Person, ...]:
            before = self._there(people, name)
            return tuple(change(one) if one is before else one for one in people)

        return self._there(self._change(after), name)

    def _change(self, change: Callable[[tuple[Person, ...]], tuple[Person, ...]]) -> tuple[Person, ...]:
        """Change what the file holds at this moment, one writer at a time."""
        with _one_writer(self.path):
            before = self.all()
            after = change(before)
            if _owners(before) and not _owners(after):
                raise BadPeople(
                    f"{self.path}: found the last owner; allowed: to remove an owner, or change the role, while "
                    "another owner is there"
                )
            if after != before:
                _write(self.path, after)
        return after


def beside(designs: Path) -> Path:
    """The folder in which the people of a folder of designs are kept.

    Example
    -------
    >>> beside(Path("designs")).as_posix()
    'designs/.anchorwatt'
    """
    return designs / FOLDER


def role_named(words: str) -> Role:
    """A role by its name.

    Raises
    ------
    BadPeople
        There is no such role.
    """
    try:
        return Role(words.strip().lower())
    except ValueError:
        raise BadPeople(f"found the role {shown(words)}; allowed: {', '.join(Role)}") from None


def clean_name(name: str) -> str:
    """A name as it is kept: accents composed, blanks at its ends taken off.

    Raises
    ------
    BadPeople
        It is empty, too long, or holds what cannot be seen: control characters, marks that turn the direction.

    Example
    -------
    >>> clean_name("  Mara ")
    'Mara'
    """
    if len(name) <= 4 * LONGEST_NAME:
        clean = unicodedata.normalize("NFC", name.strip())
        if 0 < len(clean) <= LONGEST_NAME and clean.isprintable():
            return clean
    raise BadPeople(f"found the name {shown(name)}; allowed: {NAME_RULE}")


def name_key(name: str) -> str:
    """What two spellings of one name share; it is short whatever came in.

    Example
    -------
    >>> name_key("MARA") == name_key(" mara")
    True
    """
    return unicodedata.normalize("NFKC", name.strip()[: 4 * LONGEST_NAME].casefold())


def check_password(name: str, password: str) -> None:
    """Refuse a password that is easy to guess.

    Raises
    ------
    BadPeople
        It is too short, too long, one character over and over, or the name; the message never shows it.
    """
    if len(password) < SHORTEST_PASSWORD:
        raise BadPeople(f"found a password of {len(password)} characters; allowed: {SHORTEST_PASSWORD} or more")
    if len(password) > LONGEST_PASSWORD:
        raise BadPeople(f"found a password of {len(password)} characters; allowed: at most {LONGEST_PASSWORD}")
    if len(set(password)) == 1:
        raise BadPeople("found a password that is one character over and over; allowed: one that is hard to guess")
    if not password.casefold().replace(name.casefold(), "").strip():
        raise BadPeople("found the name as the password; allowed: a password that is not the name")


def shown(words: str) -> str:
    """Words of a stranger as they may stand in a message: short, and without what cannot be seen.

    Example
    -------
    >>> print(shown("a\\x1b[2J"))
    “a\\x1b[2J”
    """
    short = words if len(words) <= LONGEST_NAME else f"{words[:20]}…"
    return f"“{''.join(one if one.isprintable() else ascii(one)[1:-1] for one in short)}”"


def _check_new(people: tuple[Person, ...], name: str, role: Role) -> None:
    if any(name_key(one.name) == name_key(name) for one in people):
        raise BadPeople(f"found {shown(name)}, who has an account; allowed: a name that nobody has yet")
    if role is not Role.owner and not _owners(people):
        raise BadPeople(f"found {role} where there is no owner; allowed: owner first, who then adds the others")


def _owners(people: tuple[Person, ...]) -> bool:
    return any(one.role is Role.owner for one in people)


def _bytes(password: str) -> bytes:
    # Composed or not, an accent is the same key on another keyboard; a terminal may hand over half a character.
    return unicodedata.normalize("NFKC", password).encode("utf-8", "surrogatepass")


def _hash_of_nothing(hasher: PasswordHasher) -> str:
    """A hash that no password has, at the cost of the hasher; made without its work."""

    def random(length: int) -> str:
        return base64.b64encode(secrets.token_bytes(length)).decode().rstrip("=")

    cost = f"m={hasher.memory_cost},t={hasher.time_cost},p={hasher.parallelism}"
    return f"$argon2id$v=19${cost}${random(hasher.salt_len)}${random(hasher.hash_len)}"


def _people(path: Path, content: bytes) -> tuple[Person, ...]:
    def broken(found: str, allowed: str) -> BadPeople:
        return BadPeople(f"{path}: found {found}; allowed: {allowed}. Nobody can sign in until it is mended")

    try:
        whole: Any = json.loads(content)
    except (ValueError, RecursionError):
        raise broken("what is not JSON", "the file as it was last written") from None
    if not isinstance(whole, dict) or set(whole) != {"version", "people"} or not isinstance(whole["people"], list):
        raise broken("other content", 'an object of "version" and "people", a list')
    if whole["version"] != VERSION:
        raise broken(f"version {shown(str(whole['version']))}", f"version {VERSION}")
    people: dict[str, Person] = {}
    for number, one in enumerate(whole["people"], start=1):
        try:
            person = _person(one)
        except BadPeople as problem:
            raise BadPeople(f"{path}: person {number}: {problem}. Nobody can sign in until it is mended") from None
        if name_key(person.name) in people:
            raise broken(f"{shown(person.name)} twice", "each name once")
        people[name_key(person.name)] = person
    return tuple(people.values())


def _person(plain: Any) -> Person:
    keys = {"name", "role", "password"}
    if not isinstance(plain, dict) or set(plain) != keys or not all(isinstance(one, str) for one in plain.values()):
        raise BadPeople('found other content; allowed: "name", "role" and "password", each a text')
    try:
        if extract_parameters(plain["password"]).type is not Type.ID:
            raise InvalidHashError
    except InvalidHashError:
        raise BadPeople(
            "found a password that is no argon2id hash; allowed: what `anchorwatt people password` writes"
        ) from None
    return Person(clean_name(plain["name"]), role_named(plain["role"]), plain["password"])


def _write(path: Path, people: tuple[Person, ...]) -> None:
    """Write the file whole beside its place, then move it there; the temporary file is its owner's alone (0600)."""
    plain = [{"name": one.name, "role": str(one.role), "password": one.password_hash} for one in people]
    text = json.dumps({"version": VERSION, "people": plain}, ensure_ascii=False, indent=2) + "\n"
    beside_it: Path | None = None
    try:
        handle, name = tempfile.mkstemp(prefix=f".{path.name}.", dir=path.parent)
        beside_it = Path(name)
        with os.fdopen(handle, "wb") as file:
            file.write(text.encode("utf-8"))
            file.flush()
            os.fsync(file.fileno())
        beside_it.replace(path)
    except OSError as error:
        if beside_it is not None:
            beside_it.unlink(missing_ok=True)
        raise CannotWrite(path, error.strerror or str(error)) from None


@contextlib.contextmanager
def _one_writer(path: Path) -> Iterator[None]:
    """Hold off other threads, and other programs where the system can: the command line may run beside a workbench."""
    try:
        path.parent.mkdir(mode=0o700, parents=True, exist_ok=True)
        with _changing, path.with_name(f".{path.name}.lock").open("a") as lock:
            with contextlib.suppress(ImportError):
                import fcntl

                fcntl.flock(lock, fcntl.LOCK_EX)
            yield
    except OSError as error:
        raise CannotWrite(path, error.strerror or str(error)) from None
