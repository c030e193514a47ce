"""Makers' manuals behind a paper: one PDF with a bookmark to each.

Manuals are what their makers made them, so the whole can be no PDF/A, and its file no longer says that it is one.
"""

from __future__ import annotations

import io
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Final

from pypdf import PageObject, PdfReader, PdfWriter
from pypdf.errors import PyPdfError
from pypdf.generic import ArrayObject, DictionaryObject

from anchorwatt.drawings.signs import one_line
from anchorwatt.errors import AnchorwattError

NOT_ARCHIVAL: Final = "With makers' manuals behind it this file is no PDF/A: they are as their makers made them."
BOOKMARK: Final = "Makers' manuals"
LARGEST: Final = 200_000_000
"""Bytes of one manual."""

_TAIL = 4096  # bytes at the end of a file within which a PDF says that it ends
_ACTS = ("/JavaScript", "/Launch", "/SubmitForm", "/ImportData")
"""What a manual's annotation must not do when somebody clicks on it."""


@dataclass(frozen=True)
class Manual:
    """A maker's manual, read and found whole."""

    name: str  # of its file
    content: bytes
    pages: int


@dataclass(frozen=True)
class Merged:
    """A paper with the manuals behind it."""

    file: bytes
    told: str  # what cannot be promised of it, "" = nothing is lost


def manuals(paths: Sequence[Path]) -> tuple[Manual, ...]:
    """Read manuals, all of them or none.

    Raises
    ------
    AnchorwattError
        one or more are missing, damaged, locked or no PDF; the text has a line for each, by its file's name.
    """
    found, wrong = [], []
    for path in paths:
        try:
            found.append(_read(path))
        except AnchorwattError as error:
            wrong.append(str(error))
    if wrong:
        raise AnchorwattError("\n".join(wrong))
    return tuple(found)


def merged(paper: bytes, behind: Sequence[Manual]) -> Merged:
    """The paper with manuals behind it and a bookmark to each; without any, the paper as it is."""
    if not behind:
        return Merged(paper, "")
    writer = PdfWriter(clone_from=io.BytesIO(paper))
    # It says that the file is PDF/A, which it now is not.
    writer.root_object.pop("/Metadata", None)
    parent = None
    for manual in behind:
        first = len(writer.pages)
        writer.append(io.BytesIO(manual.content), import_outline=False)
        for page in writer.pages[first:]:
            _tame(page)
        if parent is None:
            parent = writer.add_outline_item(title=BOOKMARK, page_number=first)
        writer.add_outline_item(title=one_line(manual.name), page_number=first, parent=parent)
    made = io.BytesIO()
    writer.write(made)
    return Merged(made.getvalue(), NOT_ARCHIVAL)


def _read(path: Path) -> Manual:
    name = one_line(path.name)
    try:
        if path.stat().st_size > LARGEST:
            raise AnchorwattError(f"manual {name}: found more than {LARGEST // 1_000_000} MB; allowed: less")
        content = path.read_bytes()
    except OSError as error:
        raise AnchorwattError(f"manual {name}: cannot be read: {error.strerror or error}") from error
    if b"%PDF-" not in content[:1024]:
        raise AnchorwattError(f"manual {name}: found a file that is no PDF; allowed: a PDF")
    if b"%%EOF" not in content[-_TAIL:]:
        raise AnchorwattError(f"manual {name}: found a damaged PDF whose end is missing; allowed: a whole one")
    try:
        reader = PdfReader(io.BytesIO(content))
        if reader.is_encrypted:
            raise AnchorwattError(f"manual {name}: found an encrypted PDF; allowed: one without a password or lock")
        for page in reader.pages:
            page.get_contents()
        pages = len(reader.pages)
        if pages:
            merged_alone = PdfWriter()
            merged_alone.append(io.BytesIO(content), import_outline=False)
            merged_alone.write(io.BytesIO())
    except (PyPdfError, LookupError, TypeError, ValueError, AttributeError, RecursionError, NotImplementedError) as bad:
        # What a broken file makes the reader trip over has no one kind.
        raise AnchorwattError(f"manual {name}: found a damaged PDF; allowed: a whole one") from bad
    if not pages:
        raise AnchorwattError(f"manual {name}: found a PDF without pages; allowed: one with pages")
    return Manual(path.name, content, pages)


def _tame(page: PageObject) -> None:
    """Take out what would act by itself or reach out of the file."""
    page.pop("/AA", None)
    if page.annotations:
        page.annotations = ArrayObject(one for one in page.annotations if not _acts(one.get_object()))


def _acts(annotation: object) -> bool:
    if not isinstance(annotation, DictionaryObject):
        return False
    action = annotation.get("/A")
    target = action.get_object() if action is not None else None
    return "/AA" in annotation or (isinstance(target, DictionaryObject) and target.get("/S") in _ACTS)
