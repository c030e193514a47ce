"""Keeps the messages of every language in step with the texts of the source.

A message is a text that a paper can show. What a room may write is read off its source: every string, and
every f-string with its expressions as places. Those count that are words, and those that papers of the starters are
made from. Translations stay; messages that are gone are dropped; new ones are left for a translator.
"""

from __future__ import annotations

import ast
import re
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po, write_po

from anchorwatt.catalogue import kinds
from anchorwatt.catalogue.part import generic_rows
from anchorwatt.languages import ENGLISH, LANGUAGES
from anchorwatt.papers.sets.formulas import formulas

SOURCE = Path("src/anchorwatt")
ROOMS = ("papers", "drawings", "assessment", "checks", "sizing", "simulation", "climate", "cautions.py")
"""Whose prose papers show, all of it."""
UNPRINTED = (
    "papers/house.py",
    "papers/select.py",
    "papers/drawn.py",
    "papers/as_csv.py",
    "papers/as_json.py",
    "papers/as_xlsx.py",
    "climate/formats.py",
    "assessment/intake.py",
    "drawings/svg.py",
    "drawings/as_dxf.py",
    "drawings/as_pdf.py",
)
"""Files whose prose is for screens, problems and file formats alone."""
OTHER_ROOMS = ("design", "catalogue", "units", "physics")
"""Of whose texts papers show some."""
HEADER = """# Messages of Anchorwatt's papers. `tools/write_messages.py` keeps them in step with the source.
msgid ""
msgstr ""
"Language: {}\\n"
"Content-Type: text/plain; charset=utf-8\\n"
"Content-Transfer-Encoding: 8bit\\n"

"""

_ERRORS = re.compile(r"Error$|^BadDesign$|^OutOfRange$|^Refused$|^BadQuantity$|^NotInCatalogue$")
_FIELD = re.compile(r"\{[a-z_]+\}")
_KEY = re.compile(r"[A-Za-z0-9{}]+(?:_[A-Za-z0-9{}]+)+")
_PROSE = re.compile(r"[^\W\d_]{2,}")


@dataclass(frozen=True)
class Found:
    """A text of the source, and where it stands."""

    text: str
    where: str
    key: bool = False  # whether it is one of our keys, which only a workbook shows


def of_source(room: str) -> Iterator[Found]:
    """Every text of a room, or of one file."""
    path = SOURCE / room
    for file in [path] if path.is_file() else sorted(path.rglob("*.py")):
        yield Found(file.stem.replace("_", " "), file.relative_to(SOURCE).as_posix())
        tree = ast.parse(file.read_text("utf-8"))
        skipped = set(_skipped(tree))
        for node in ast.walk(tree):
            if id(node) not in skipped:
                text = _template(node)
                if text is not None and _PROSE.search(text):
                    where = file.relative_to(SOURCE).as_posix()
                    yield Found(text, where)
                    yield from (Found(piece, where) for piece in _listed(text))
                    if _KEY.fullmatch(text):
                        yield Found(text.replace("_", " "), where, key=True)


def _listed(text: str) -> list[str]:
    """Single words of a list of such, as of colours."""
    pieces = text.split(", ")
    return pieces if len(pieces) > 1 and all(re.fullmatch(r"[\w-]+", piece) for piece in pieces) else []


def _skipped(tree: ast.AST) -> Iterator[int]:
    """Docstrings, pieces of f-strings, and what errors say: papers show none of it."""
    for node in ast.walk(tree):
        if isinstance(node, ast.Expr) and isinstance(node.value, ast.Constant):
            yield id(node.value)
        elif isinstance(node, ast.JoinedStr):
            for value in node.values:
                if isinstance(value, ast.Constant):
                    yield id(value)
                elif isinstance(value, ast.FormattedValue) and value.format_spec is not None:
                    yield from map(id, ast.walk(value.format_spec))
        elif isinstance(node, ast.Raise) or (
            isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and _ERRORS.search(node.func.id)
        ):
            yield from map(id, ast.walk(node))
        elif isinstance(node, ast.AnnAssign):
            yield from map(id, ast.walk(node.annotation))


def _template(node: ast.AST) -> str | None:
    """A string's text, an f-string's with its places; places with no word between are one."""
    if isinstance(node, ast.Constant) and isinstance(node.value, str):
        return numbered(_FIELD.sub("{}", node.value))
    if isinstance(node, ast.JoinedStr):
        return numbered(
            "".join(_FIELD.sub("{}", str(one.value)) if isinstance(one, ast.Constant) else "{}" for one in node.values)
        )
    return None


def numbered(text: str) -> str:
    """A text with `{}` for each place, its places numbered, without the signs that join it to others."""
    text = re.sub(r"^(?:[,;:·→).]*\s+)+|^[,;:·→)]+|[\s,;:·→(]+$", "", text)
    pieces = re.split(r"\{\}(?:\s*\{\})*", text)
    return "".join(piece + (f"{{{number}}}" if number < len(pieces) - 1 else "") for number, piece in enumerate(pieces))


def of_formulas() -> Iterator[Found]:
    """What the engineering file tells of each equation."""
    for one in formulas():
        for text in (one.subject, one.name, one.about, one.source):
            yield Found(text, "physics")


def of_rows() -> Iterator[Found]:
    """What rows of the catalogue say beside figures: sources, and what they are for."""
    for kind in kinds():
        for row in generic_rows(kind).values():
            for key, words in row.items():
                if key != "name" and isinstance(words, str) and is_prose(words) and not re.match(r"\d", words):
                    yield Found(words, f"catalogue/{kind}.yaml")


def of_catalogue() -> Iterator[Found]:
    """Names of generic parts, figures as places."""
    for kind in kinds():
        for name in generic_rows(kind):
            yield Found(numbered(re.sub(r"\d+(?:\.\d+)?", "{}", name)), f"catalogue/{kind}.yaml")
        yield Found(kind.replace("_", " "), f"catalogue/{kind}.yaml")


def is_prose(text: str) -> bool:
    """Whether a text is written for readers: it has words, and is no key, path or pattern."""
    words = _PROSE.findall(text)
    if not words or re.search(r"[<>\\^$#]|https?:|\{\{|__|^\.|\w\(|==", text):
        return False
    return " " in text.strip() and not re.fullmatch(r"[\w.\[\]-]+", text.strip())


def wanted(used: Iterable[str]) -> dict[str, set[str]]:
    """Messages with where they stand: all prose, and of the rest what is used."""
    seen = set(used)
    found: dict[str, set[str]] = {}
    prose = [one for room in ROOMS for one in of_source(room)]
    rest = [*(one for room in OTHER_ROOMS for one in of_source(room)), *of_rows()]
    certain = [*of_formulas(), *of_catalogue()]
    for one in prose:
        if (is_prose(one.text) and not one.key and one.where not in UNPRINTED) or one.text.strip() in seen:
            found.setdefault(one.text.strip(), set()).add(one.where)
    for one in rest:
        if one.text.strip() in seen:
            found.setdefault(one.text.strip(), set()).add(one.where)
    for one in certain:
        if _PROSE.search(one.text):
            found.setdefault(one.text.strip(), set()).add(one.where)
    return found


def write(language: str, messages: Mapping[str, set[str]]) -> int:
    """Write a language's file; gives how many messages wait for a translator."""
    path = SOURCE / "languages" / f"{language}.po"
    with path.open("rb") as content:
        before = {one.id: one.string for one in read_po(content, locale=language) if isinstance(one.id, str)}
    made = Catalog(locale=language, fuzzy=False)
    waiting = 0
    for text, where in sorted(messages.items(), key=lambda one: (min(one[1]), one[0])):
        string = before.get(text, "")
        waiting += not string
        made.add(text, string, auto_comments=sorted(where))
    with path.open("wb") as content:
        content.write(HEADER.format(language).encode())
        write_po(content, made, width=110, omit_header=True)
    return waiting


def main() -> None:
    """Write the messages of every language."""
    from tools.heard import used

    every = [one for room in (*ROOMS, *OTHER_ROOMS) for one in of_source(room)]
    messages = wanted(used({one.text.strip() for one in (*every, *of_formulas(), *of_catalogue(), *of_rows())}))
    for language in LANGUAGES:
        if language != ENGLISH:
            waiting = write(language, messages)
            print(f"{language}: {len(messages)} messages, {waiting} not translated")


if __name__ == "__main__":
    main()
