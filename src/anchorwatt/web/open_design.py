"""A design file that is open in the workbench, however many people and tabs look at it.

Every change is written to disk at once; the texts before it are kept, so that one can go back as far as one
likes. What somebody else did to the file meanwhile is taken in first, so that no edit is ever lost.
"""

from __future__ import annotations

import threading
from collections.abc import Callable
from dataclasses import dataclass, field
from pathlib import Path

from anchorwatt.design import Design, read, write
from anchorwatt.design.document import scan
from anchorwatt.design.form import retyped, typed_at
from anchorwatt.design.reading import designed
from anchorwatt.errors import AnchorwattError, BadDesign, CannotWrite, Problem

OUTSIDE = "the file was changed outside the workbench"


class ChangedMeanwhile(AnchorwattError):
    """Somebody else changed the same key after it was shown here; nothing was changed."""

    def __init__(self, key: str, theirs: str, yours: str) -> None:
        super().__init__(f"{key} was changed meanwhile, to “{theirs}”; yours, “{yours}”, was not written")
        self.key = key
        self.theirs = theirs
        self.yours = yours


class Unreadable(AnchorwattError):
    """The file on disk cannot be used at present; what was last good is kept here, and nothing was written."""

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        told = "\n".join(str(problem) for problem in problems)
        super().__init__(f"the file on disk cannot be used, so nothing was written:\n{told}")
        self.problems = problems


class OutOfEdits(AnchorwattError):
    """There is nothing to take back, or nothing to do again."""


@dataclass(frozen=True)
class Version:
    """The design at some moment."""

    number: int  # counts up with every change, also going back
    design: Design
    what: str  # what was done, in words


@dataclass
class OpenDesign:
    """One design file. Methods may be called from any thread."""

    path: Path
    version: Version
    unsaved: str = ""  # why what is here is not on disk; "" = it is
    _back: list[tuple[str, str]] = field(default_factory=list)  # text before, and what was done to it
    _forth: list[tuple[str, str]] = field(default_factory=list)
    _on_disk: bytes = b""
    _lock: threading.RLock = field(default_factory=threading.RLock)
    _listeners: list[Callable[[], None]] = field(default_factory=list)

    @property
    def design(self) -> Design:
        """The design as it is now."""
        return self.version.design

    @property
    def can_undo(self) -> bool:
        return bool(self._back)

    @property
    def can_redo(self) -> bool:
        return bool(self._forth)

    def listen(self, listener: Callable[[], None]) -> Callable[[], None]:
        """Call a function after every change, from whatever thread makes it; returns what ends that."""
        with self._lock:
            self._listeners.append(listener)

        def end() -> None:
            with self._lock:
                if listener in self._listeners:
                    self._listeners.remove(listener)

        return end

    def change(self, key: str, text: str | None, seen: str | None) -> Version:
        """Say something else at a key.

        Parameters
        ----------
        key : dotted
        text : what was typed; None or blank takes the key out
        seen : what stood there when the change was begun; None where nothing did

        Raises
        ------
        ChangedMeanwhile
            Somebody else changed that key after it was seen.
        Unreadable
            The file on disk has become one that cannot be used.
        BadDesign
            The text does not fit.
        """
        with self._lock:
            self.look_at_disk()
            now = typed_at(self.design, key)
            wanted = None if text is None or not text.strip() else text.strip()
            if now == wanted:
                return self.version
            if now != seen:
                raise ChangedMeanwhile(key, now or "", wanted or "")
            return self._take(retyped(self.design, key, wanted), f"{key}: {wanted or 'taken out'}")

    def change_all(self, make: Callable[[Design], Design], what: str) -> Version:
        """Make a change that is more than one key, such as moving a part; all of it or nothing."""
        with self._lock:
            self.look_at_disk()
            return self._take(make(self.design), what)

    def undo(self) -> Version:
        """Take the last change back."""
        return self._step(self._back, self._forth, "taken back")

    def redo(self) -> Version:
        """Do again what was taken back."""
        return self._step(self._forth, self._back, "done again")

    def look_at_disk(self) -> bool:
        """Take in what somebody else wrote into the file; True when there was something.

        Raises
        ------
        Unreadable
            It cannot be used; what is here stays.
        """
        with self._lock:
            if self.unsaved:
                self._save()
                return False
            try:
                content = self.path.read_bytes()
            except FileNotFoundError:
                self.unsaved = "the file is gone; it is kept here, and written again with the next change"
                return False
            except OSError as error:
                raise Unreadable((Problem(str(self.path), None, "", str(error.strerror), "a readable file"),)) from None
            if content == self._on_disk:
                return False
            try:
                design = read(self.path)
            except BadDesign as problem:
                raise Unreadable(problem.problems) from None
            self._on_disk = content
            self._push(design, OUTSIDE)
            return True

    def put_back(self) -> None:
        """Write what is here over a file that became unusable; that file is kept beside it."""
        with self._lock:
            if self.path.exists():
                beside = self.path.with_name(f"{self.path.name}.unusable")
                number = 1
                while beside.exists():
                    number += 1
                    beside = self.path.with_name(f"{self.path.name}.unusable-{number}")
                try:
                    self.path.rename(beside)
                except OSError as error:
                    raise CannotWrite(self.path, error.strerror or str(error)) from None
            self._save()
            self._tell()

    def _step(self, source: list[tuple[str, str]], target: list[tuple[str, str]], words: str) -> Version:
        with self._lock:
            self.look_at_disk()
            if not source:
                raise OutOfEdits("there is nothing to take back" if words == "taken back" else "nothing to do again")
            text, what = source.pop()
            design = designed(scan(text, self.design.document.file, self.path))
            target.append((self.design.document.text, what))
            self.version = Version(self.version.number + 1, design, f"{words}: {what}")
            self._save()
            self._tell()
            return self.version

    def _take(self, design: Design, what: str) -> Version:
        self._push(design, what, tell=False)
        self._save()
        self._tell()
        return self.version

    def _push(self, design: Design, what: str, tell: bool = True) -> None:
        self._back.append((self.design.document.text, what))
        self._forth.clear()
        self.version = Version(self.version.number + 1, design, what)
        if tell:
            self._tell()

    def _save(self) -> None:
        try:
            write(self.design, self.path)
        except CannotWrite as problem:
            self.unsaved = str(problem)
            return
        self._on_disk = self.design.document.text.encode("utf-8")
        self.unsaved = ""

    def _tell(self) -> None:
        for listener in tuple(self._listeners):
            listener()


def open_design(path: Path) -> OpenDesign:
    """Open a design file.

    Raises
    ------
    BadDesign
        It cannot be read.
    """
    content = path.read_bytes() if path.is_file() else b""
    design = read(path)
    opened = OpenDesign(path, Version(1, design, "opened"))
    opened._on_disk = content
    return opened
