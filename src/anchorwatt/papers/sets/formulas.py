"""Every equation that the answers rest on, with its source, as the code itself says it."""

from __future__ import annotations

import ast
import re
from dataclasses import dataclass
from importlib import resources
from pathlib import PurePath

_SOURCE = re.compile(r"^Source\n-+\n(.*?)(?=^\w[\w ]*\n-{3,}\n|\Z)", re.MULTILINE | re.DOTALL)

_NAMED = re.compile(r"`(?:[a-z_]+\.)?(\w+)`")
_OF_THE_CODE = " Not for the kernel."  # which concerns nobody who reads the paper


@dataclass(frozen=True)
class Formula:
    """One equation of the physics room."""

    subject: str
    name: str
    about: str  # what it gives, in a sentence
    source: str


def formulas() -> tuple[Formula, ...]:
    """All equations, by subject, from the docstrings of `anchorwatt.physics`."""
    found = []
    files = [one for one in resources.files("anchorwatt.physics").iterdir() if one.name.endswith(".py")]
    for file in sorted(files, key=lambda one: one.name):
        if file.name.startswith("_"):
            continue
        subject = PurePath(file.name).stem.replace("_", " ")
        for node in ast.parse(file.read_text("utf-8")).body:
            told = ast.get_docstring(node) if isinstance(node, ast.FunctionDef) else None
            if isinstance(node, ast.FunctionDef) and not node.name.startswith("_") and told:
                source = _SOURCE.search(told)
                about = _read(told.split("\n\n")[0]).removesuffix(_OF_THE_CODE)
                words = _read(source.group(1)) if source else ""
                found.append(Formula(subject, node.name.replace("_", " "), about, words))
    return tuple(found)


def _read(told: str) -> str:
    """What a docstring tells, in one line, with functions by the names that they have here."""
    return _NAMED.sub(lambda found: f"“{found[1].replace('_', ' ').lower()}”", " ".join(told.split()))
