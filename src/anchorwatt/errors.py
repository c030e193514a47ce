"""Everything that Anchorwatt raises on purpose.

AnchorwattError              catch this one
├── OutOfRange               a physics function was asked something outside what it is valid for
├── BadQuantity              a text is not a quantity of the wanted kind
├── BadDesign                a design file cannot be read; holds one or more problems
├── BadPrices                a price list cannot be taken; holds one or more problems
├── BadResults               a table of commissioning results cannot be taken; holds one or more problems
├── BadWeather               a weather file is missing, damaged or does not cover the day
└── CannotWrite              a file could not be written; nothing was changed
"""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path


class AnchorwattError(Exception):
    """Base of all errors raised on purpose; its text is meant for the user."""


class OutOfRange(AnchorwattError, ValueError):
    """A physics function was asked something outside what it is valid for.

    Raised as ``OutOfRange("what is allowed; found", value)`` so that compiled code can raise it too.
    """

    def __str__(self) -> str:
        return " ".join(f"{part:g}" if isinstance(part, float) else str(part) for part in self.args)


class BadQuantity(AnchorwattError, ValueError):
    """A text is not a quantity of the wanted kind."""


@dataclass(frozen=True)
class Problem:
    """One thing wrong in a file: where it is, what was found, what is allowed."""

    file: str
    line: int | None
    key: str
    found: str
    allowed: str

    def __str__(self) -> str:
        place = self.file if self.line is None else f"{self.file}:{self.line}"
        key = f" {self.key}:" if self.key else ""
        return f"{place}:{key} found {self.found}; allowed: {self.allowed}"


class BadDesign(AnchorwattError):
    """A design file cannot be used. ``problems`` says everything that is wrong with it."""

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = problems


class BadPrices(AnchorwattError):
    """A price list cannot be taken. ``problems`` says everything that is wrong with it; nothing was written."""

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = problems


class BadResults(AnchorwattError):
    """A table of commissioning results cannot be taken. ``problems`` says everything that is wrong with it."""

    def __init__(self, problems: tuple[Problem, ...]) -> None:
        super().__init__("\n".join(str(problem) for problem in problems))
        self.problems = problems


class BadWeather(AnchorwattError):
    """A weather file is missing, damaged or does not cover the day."""


class CannotWrite(AnchorwattError):
    """A file could not be written; what was there before is unchanged."""

    def __init__(self, path: Path, reason: str) -> None:
        super().__init__(f"{path}: cannot write: {reason}; nothing was changed")
        self.path = path
