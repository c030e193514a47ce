"""What a page of the workbench is made of: blocks that are prepared in a thread and shown by the frame."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any

from anchorwatt.units import System

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.design import Design
    from anchorwatt.design.form import Group


@dataclass(frozen=True)
class Html:
    """Something of the page's own; `content` is escaped already. Keys are those of `actions` in bench.js."""

    name: str
    content: str


@dataclass(frozen=True)
class Picture:
    """A drawing, with ways to save it."""

    name: str  # of `pictures.PICTURES`, in the address of what is saved
    svg: str
    query: Mapping[str, str]  # what it was asked for, such as an hour


@dataclass(frozen=True)
class Tables:
    """Tables and words, with ways to save the tables."""

    name: str
    content: str  # HTML
    saved: tuple[str, ...]  # tables of `papers.as_csv.TABLES` that can be saved; none


@dataclass(frozen=True)
class Choice:
    """A choice of what a form shows, such as one cabin of many."""

    name: str  # under which the page is asked for another
    label: str
    options: tuple[tuple[str, str], ...]  # value and words
    chosen: str


@dataclass(frozen=True)
class Form:
    """Fields of the design file."""

    title: str
    group: Group
    choice: Choice | None = None


Block = Html | Picture | Tables


@dataclass(frozen=True)
class Asked:
    """What a page is asked for, beside the design."""

    design: str  # name of the file, as in addresses
    system: System
    query: Mapping[str, str]  # of the address
    folder: Path = Path()  # that holds the design files

    def also(self, name: str, value: str) -> Asked:
        """The same page asked for something else as well."""
        return replace(self, query={**self.query, name: value})


Forms = Callable[["Design", Asked], tuple[Form, ...]]
"""The fields of a page; they are there even when the design cannot be worked out."""

Act = Callable[["Design", Mapping[str, Any]], tuple[Callable[["Design"], "Design"], str] | None]
"""What a page does when it is told something of its own, such as that a part was moved: the change, and it in words."""

Prepare = Callable[["Assessment", Asked], tuple[Block, ...]]


@dataclass(frozen=True)
class Question:
    """A page of the workbench: a question of the job."""

    path: str  # in the address
    title: str  # in the list of questions
    prepare: Prepare  # runs in a thread; no arithmetic, only what the assessment tells
    forms: Forms | None = None
    act: Act | None = None
    needs_checks: bool = False  # shown again as the checks get further
