"""Reference pages: the design file by its schema, the catalogue by its rows, the commands by their help."""

from __future__ import annotations

import re
from pathlib import Path
from typing import Any

from tools.markdown import GENERATED, cell, table

Node = dict[str, Any]

KEYS = (
    "Every key, what it means and what may be written there. Whatever may be left out is estimated or takes "
    "what is usual, and `anchorwatt assess` lists it as an estimate. The same facts stand in "
    "`anchorwatt.schema.json`, which `anchorwatt new` puts beside a new file so that an editor completes and "
    "checks it.\n"
)
RULES = (
    "`anchorwatt check FILE` asks these of a design and shows the figures; a check says nothing of a design that has "
    "nothing that it is about. Where a source is second-hand or from memory, it says so: certified people and local "
    "codes decide.\n"
)
QUANTITIES = (
    "A quantity is a number and a unit: `12 ft`, `1 1/2 in`, `24 kBtu/h`, `84 °F`. A bare number where a "
    "unit is needed is an error, and so is a key that is not in these tables.\n"
)
STATUSES = (
    "Data go to stdout; notes, progress and errors to stderr. The exit status is 0 when the command did what "
    "it was asked, 1 when `check` finds a check that fails, 2 when the input was at fault (nothing is then "
    "written), 130 when it was stopped.\n"
)


def pages() -> dict[Path, str]:
    """Texts of the reference pages by path."""
    return {
        Path("docs/reference/design-file.md"): design_file(),
        Path("docs/reference/command-line.md"): command_line(),
        Path("docs/reference/rules.md"): rule_list(),
        **catalogue(),
    }


def rule_list() -> str:
    """Every check: its question, where its limit is from, and what to do about it."""
    from anchorwatt.checks import rules

    parts = [GENERATED + "# The checks\n", RULES]
    for subject in dict.fromkeys(rule.subject for rule in rules()):
        rows = [
            (f"`{rule.id}`", cell(rule.question), cell(rule.source), cell(rule.remedy))
            for rule in rules()
            if rule.subject == subject
        ]
        parts += [f"## {subject.capitalize()}\n", table(("Check", "Question", "Source", "What to do"), rows)]
    return "\n".join(parts)


def design_file() -> str:
    """Every key of the design file: what it is and what may be written."""
    from anchorwatt.design import schema

    whole = schema()
    definitions: dict[str, Node] = whole["$defs"]
    sections = _reached(whole, definitions)
    parts = [GENERATED + "# The design file\n", KEYS, QUANTITIES, "## The file\n", _keys(whole, sections)]
    for name in sections:
        node = definitions[name]
        parts += [
            f"## {_title(name)}\n",
            f"{node.get('description', '').split(chr(10))[0]}\n",
            _keys(node, sections),
        ]
    return "\n".join(parts)


def _reached(whole: Node, definitions: dict[str, Node]) -> list[str]:
    """Sections in the order in which a reader meets them; the catalogue's records have pages of their own."""
    found: list[str] = []

    def visit(node: Any) -> None:
        if isinstance(node, list):
            for one in node:
                visit(one)
        if not isinstance(node, dict):
            return
        if _kind(node):
            return
        name = node.get("$ref", "").removeprefix("#/$defs/")
        if name and name not in found:
            found.append(name)
            visit(definitions[name])
        for key, one in node.items():
            if key not in ("$defs", "$ref"):
                visit(one)

    visit({key: one for key, one in whole.items() if key != "$defs"})
    return found


def _title(name: str) -> str:
    """A section's name in words: “CabinEntry” is a cabin."""
    return re.sub("(?<!^)([A-Z])", lambda letter: f" {letter[1].lower()}", name.removesuffix("Entry"))


def _kind(node: Node) -> str:
    """The catalogue kind that a slot takes, or nothing."""
    from anchorwatt import catalogue

    names = [one.get("enum") for one in node.get("anyOf", ()) if isinstance(one, dict)]
    return next((kind for kind in catalogue.kinds() if list(catalogue.names(kind)) in names), "")


def _keys(node: Node, sections: list[str]) -> str:
    needed = node.get("required", ())
    rows = []
    for key, one in node.get("properties", {}).items():
        about, _, _ = one.get("description", "").partition(" Write ")
        rows.append((f"`{key}`", "yes" if key in needed else "", about, _allowed(one, sections)))
    return table(("key", "needed", "what it is", "what may be written"), rows)


def _allowed(node: Node, sections: list[str]) -> str:
    kind = _kind(node)
    if kind:
        others = [
            one for one in node["anyOf"] if "$ref" not in one and "properties" not in one and one.get("type") != "null"
        ]
        extra = "".join(f"; or {_allowed(one, sections)}" for one in others if not _is_names(one))
        return f"a name of the [catalogue](catalogue/{kind}.md), `like:` one with changes, or all in full{extra}"
    if "anyOf" in node:
        words = [_allowed(one, sections) for one in node["anyOf"] if one.get("type") != "null"]
        return "; or ".join(dict.fromkeys(words))
    name = node.get("$ref", "").removeprefix("#/$defs/")
    if name in sections:
        return f"a section: [{_title(name)}](#{_title(name).lower().replace(' ', '-')})"
    if "const" in node:
        return f"`{node['const']}`"
    if "enum" in node:
        return ", ".join(f"`{one}`" for one in node["enum"])
    if "patternProperties" in node:
        (inside,) = node["patternProperties"].values()
        return f"names, each with {_allowed(inside, sections)}"
    if node.get("type") == "array":
        inside = node.get("items") or (node.get("prefixItems") or [{}])[0]
        return f"a list, each {_allowed(inside, sections)}"
    return _plain(node)


def _is_names(node: Node) -> bool:
    return "enum" in node


def _plain(node: Node) -> str:
    """What a text, a quantity or a bare number may be."""
    if "quantity" in node:
        words = node.get("description", "")
        return cell(words.partition(" Write ")[2] or words).rstrip(".")
    if "examples" in node:
        return "such as " + " or ".join(f"`{one}`" for one in node["examples"])
    if node.get("type") == "string" and node.get("pattern") and node.get("description"):
        words = node["description"].rstrip(".")
        return str(words[0].lower() + words[1:])
    limits = [
        f"from {node['minimum']:g}" if "minimum" in node else "",
        f"to {node['maximum']:g}" if "maximum" in node else "",
    ]
    kinds = {
        "integer": "a whole number",
        "number": "a number",
        "string": "a text",
        "boolean": "`true` or `false`",
    }
    return " ".join(word for word in (kinds.get(str(node.get("type")), "a text"), *limits) if word)


def catalogue() -> dict[Path, str]:
    """A page for each kind of the catalogue, and their contents."""
    from anchorwatt import catalogue
    from anchorwatt.papers.catalogue import INVENTED, shown

    folder = Path("docs/reference/catalogue")
    texts = {}
    points = []
    for kind in catalogue.kinds():
        record = catalogue.record_of(kind)
        about = (record.__doc__ or "").strip().split("\n")[0]
        parts = [GENERATED + f"# {kind.replace('_', ' ').capitalize()}\n", f"{about}\n"]
        fields = {name: field for name, field in record.model_fields.items() if name != "name"}
        parts.append(table(("field", "what it is"), ((f"`{n}`", f.description or "") for n, f in fields.items())))
        for name, row in catalogue.rows(kind).items():
            told = (field for field in fields if field != "supplier" or row.supplier)
            figures = ((f"`{field}`", shown(getattr(row, field), "si")) for field in told)
            parts.append(f"## {name}\n\n" + table(("field", "value"), (one for one in figures if one[1])))
        texts[folder / f"{kind}.md"] = "\n".join(parts)
        points.append(f"- [{kind.replace('_', ' ')}]({kind}.md), {len(catalogue.names(kind))} rows: {about}")
    head = f"# Catalogue\n\n{INVENTED}\n\nA design names a row, or changes some of its figures (`like:`).\n\n"
    texts[folder / "README.md"] = GENERATED + head + "\n".join(points) + "\n"
    return texts


def command_line() -> str:
    """The help of the program and of each command."""
    import typer
    from typer.testing import CliRunner

    from anchorwatt.cli import app

    runner = CliRunner()
    parts = [GENERATED + "# Command line\n", STATUSES]
    group = typer.main.get_command(app)
    for name in ("", *group.commands):  # type: ignore[attr-defined]
        arguments = [name, "--help"] if name else ["--help"]
        text = runner.invoke(app, arguments, env={"COLUMNS": "80"}, prog_name="anchorwatt").stdout
        parts.append(f"## {f'anchorwatt {name}'.strip()}\n\n```console\n{text.strip()}\n```\n")
    return "\n".join(parts)
