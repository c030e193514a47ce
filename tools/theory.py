"""Theory pages: one for each module of `physics`, from its docstrings and its code.

A docstring has sections whose names are underlined with dashes. The equation is shown as it runs, so that
there is no second copy of it to keep true.
"""

from __future__ import annotations

import ast
import re
from pathlib import Path

from tools.markdown import GENERATED

PHYSICS = Path("src/anchorwatt/physics")
INTRODUCTION = (
    "Every equation of Anchorwatt, each with its source. An equation exists once: what is shown here is the "
    "code that the time kernel compiles and the tests check. Everything is in SI units; temperatures are in "
    "°C, angles in rad, shares from 0 to 1."
)
SOURCES = (
    "Where a source says “from memory” or “common practice, no source”, the figure is an editable default "
    "and no more. [What was checked against the outside](../outside-checks.md) has the values."
)
TOGETHER = "How the parts are stepped together, and what each run of an assessment is: [one clock](../one-clock.md)."
_SECTION = re.compile(r"^(\w[\w ]*)\n-{3,}\n", re.MULTILINE)


def pages(root: Path) -> dict[Path, str]:
    """Texts of the theory pages by path."""
    modules = sorted(path for path in (root / PHYSICS).glob("*.py") if path.stem != "__init__")
    found = {Path("docs/theory") / f"{path.stem}.md": _page(path) for path in modules}
    found[Path("docs/theory/README.md")] = _contents(modules)
    return found


def _contents(modules: list[Path]) -> str:
    lines = ["# Theory", "", INTRODUCTION, "", SOURCES, "", TOGETHER, ""]
    for path in modules:
        first = (ast.get_docstring(ast.parse(path.read_text("utf-8"))) or "").split("\n\n")[0].replace("\n", " ")
        lines.append(f"- [{path.stem.replace('_', ' ')}]({path.stem}.md): {first}")
    return GENERATED + "\n".join(lines) + "\n"


def _page(path: Path) -> str:
    text = path.read_text("utf-8")
    tree = ast.parse(text)
    parts = [f"# {path.stem.replace('_', ' ').capitalize()}\n", (ast.get_docstring(tree) or "") + "\n"]
    constants = _constants(tree)
    if constants:
        parts.append("## Constants\n\n" + "\n".join(f"- `{name}`: {about}" for name, about in constants) + "\n")
    for node in tree.body:
        if isinstance(node, ast.FunctionDef) and not node.name.startswith("_"):
            parts.append(_function(node, text))
        if isinstance(node, ast.ClassDef) and not node.name.startswith("_"):
            parts.append(f"## {node.name}\n\n{ast.get_docstring(node) or ''}\n\n{_code(node, text)}")
    return GENERATED + "\n".join(parts)


def _constants(tree: ast.Module) -> list[tuple[str, str]]:
    """Public constants that a text beneath explains."""
    found = []
    for node, after in zip(tree.body, tree.body[1:], strict=False):
        explained = isinstance(after, ast.Expr) and isinstance(after.value, ast.Constant)
        if isinstance(node, ast.Assign) and explained and isinstance(node.targets[0], ast.Name):
            name = node.targets[0].id
            value = ast.unparse(node.value)
            if not name.startswith("_") and len(value) < 60:
                about = " ".join(str(after.value.value).split())  # type: ignore[attr-defined]
                found.append((f"{name} = {value}", about))
    return found


def _function(node: ast.FunctionDef, text: str) -> str:
    sections = _sections(ast.get_docstring(node) or "")
    arguments = ", ".join(one.arg for one in node.args.args)
    parts = [f"## {node.name}({arguments})\n", sections.pop("", "").strip() + "\n"]
    source = sections.pop("Source", "")
    example = sections.pop("Example", "")
    for name, body in sections.items():
        parts.append(f"**{name}**\n\n{_listed(body)}\n")
    parts.append(_code(node, text))
    if example:
        parts.append(f"**Example**\n\n```python\n{example.strip()}\n```\n")
    parts.append(f"**Source.** {' '.join(source.split())}\n")
    return "\n".join(parts)


def _sections(docstring: str) -> dict[str, str]:
    pieces = _SECTION.split(docstring)
    return {"": pieces[0], **dict(zip(pieces[1::2], pieces[2::2], strict=True))}


def _listed(body: str) -> str:
    """Lines that begin an entry become points; lines set in go on with the one before."""
    points: list[str] = []
    for line in body.strip().split("\n"):
        if line.startswith(" ") and points:
            points[-1] += f"{':' if points[-1] == 'OutOfRange' else ''} {line.strip()}"
        elif line.strip():
            points.append(line.strip())
    return "\n".join(f"- {point}" for point in points)


def _code(node: ast.FunctionDef | ast.ClassDef, text: str) -> str:
    """The source of a function or class without its docstring."""
    lines = text.split("\n")
    body = node.body[1:] if ast.get_docstring(node) is not None else node.body
    head = lines[node.lineno - 1 : node.body[0].lineno - 1]
    rest = lines[body[0].lineno - 1 : node.end_lineno] if body else []
    if body and isinstance(body[0], (ast.FunctionDef, ast.ClassDef)) and body[0].decorator_list:
        rest = lines[body[0].decorator_list[0].lineno - 1 : node.end_lineno]
    return "```python\n" + "\n".join([*head, *rest]).rstrip() + "\n```\n"
