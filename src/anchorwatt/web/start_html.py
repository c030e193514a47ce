"""The HTML of the first page: a design in short, and the two ways to begin one."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path
from typing import Any

from pydantic_core import PydanticUndefined

from anchorwatt.design import starters
from anchorwatt.design.climates import CLIMATES
from anchorwatt.design.described import described
from anchorwatt.design.intake import ENGINES, HULL_FORMS, SHORES, Intake
from anchorwatt.units import System
from anchorwatt.web.escaped import part, text
from anchorwatt.web.file_name import LONGEST
from anchorwatt.web.overview import Entry

CHOICES = {
    "form": HULL_FORMS,
    "climate": tuple(CLIMATES),
    "engine": ENGINES,
    "shore": SHORES,
    "voltage": ("choose", "12 V", "24 V", "48 V"),
}
GROUPS = (
    ("The boat", ("name", "form", "length", "beam", "climate")),
    ("Cabins", ("sleeping", "heads", "saloon", "galley", "pilothouse")),
    ("The night", ("cooled", "temperature", "hold", "recharge")),
    ("Power", ("engine", "engines", "voltage", "shore")),
    ("Limits", ("mass_limit", "price_limit")),
)
LABELS = {
    "name": "Name of the boat",
    "form": "Kind of boat",
    "climate": "Climate",
    "sleeping": "Sleeping cabins",
    "cooled": "Cooled by night",
    "temperature": "Night temperature",
    "hold": "Hours to hold",
    "recharge": "Engine hours to recharge",
    "engines": "Engines",
    "engine": "Engine",
    "voltage": "Bank voltage",
    "shore": "Shore service",
    "mass_limit": "Mass limit",
    "price_limit": "Budget",
}


def entry_html(entry: Entry, path: Path, system: System) -> str:
    """A design with its few deciding answers, as far as they are known."""
    name = seen(entry.name)
    try:
        changed = datetime.fromtimestamp(path.stat().st_mtime).astimezone().strftime("%Y-%m-%d %H:%M")
    except OSError:
        changed = "no longer there"
    boat = entry.boat or name
    try:
        title = f'<a href="/design/{part(entry.name)}">{text(boat)}</a>'
    except UnicodeEncodeError:
        return (
            f'<h2>{text(name)}</h2><p class="problem">Its file name holds signs that no address can hold: '
            "rename the file.</p>"
        )
    head = f'<h2>{title}</h2><p class="about">{text(name)}.yaml · changed {text(changed)}</p>'
    if entry.problems:
        more = f"all {entry.problems} problems" if entry.problems > 1 else "the problem"
        return (
            f'{head}<p class="problem">Cannot be read. {text(entry.wrong)}</p>'
            f'<p><a href="/design/{part(entry.name)}">See {more} of {text(name)}</a></p>'
        )
    if entry.wrong:
        return f'{head}<p class="problem">Cannot be worked out. {text(entry.wrong)}</p>'
    if not entry.answers:
        return f'{head}<p class="empty">Working it out …</p>'
    rest = "" if entry.checked else '<div><dt>How many checks fail?</dt><dd class="empty">checking …</dd></div>'
    return f"{head}<dl>{''.join(_answer(one, system) for one in entry.answers)}{rest}</dl>"


def _answer(answer: Any, system: System) -> str:
    from anchorwatt.papers.screens import figure

    mark = ""
    if answer.key == "checks_failed":
        mark = ' class="fails"' if answer.value else ' class="holds"'
    note = f' <span class="note">{text(answer.note)}</span>' if answer.dimension in ("money", "count") else ""
    value = text(figure(answer.value, answer.dimension, system))
    return f"<div><dt>{text(answer.question)}</dt><dd{mark}>{value}{note}</dd></div>"


def seen(name: str) -> str:
    """A file name as it can be sent to a browser, whatever bytes it is made of."""
    return name.encode("utf-8", "replace").decode("utf-8")


def starter_form(locked: bool) -> str:
    """Begin from a starter boat."""
    options = "".join(f'<option value="{text(name)}">{text(name)}</option>' for name in starters())
    select = f'<select id="s-starter" name="starter"{_disabled(locked)}>{options}</select>'
    name = f'<input type="text" id="s-file" name="file" maxlength="400" {_usual("s-file")}{_disabled(locked)}>'
    return (
        '<form class="form" id="new-starter" data-do="starter"><h2>New from a starter boat</h2>'
        '<p>A whole invented boat, to change into yours.</p><div class="fields">'
        f"{_field('s-starter', 'starter', 'Starter boat', select, '')}"
        f"{_field('s-file', 'file', 'File name', name, f'A name of at most {LONGEST} letters, without .yaml.')}</div>"
        f'<button type="submit"{_disabled(locked)}>Make the design</button></form>'
    )


def intake_form(locked: bool) -> str:
    """Begin from a short intake: every question with its range and units."""
    groups = "".join(
        f'<fieldset><legend>{text(title)}</legend><div class="fields">'
        f"{''.join(_question(name, locked) for name in names)}</div></fieldset>"
        for title, names in GROUPS
    )
    file = f'<input type="text" id="i-file" name="file" maxlength="400" {_usual("i-file")}{_disabled(locked)}>'
    about = f"At most {LONGEST} letters, without .yaml; left out, the name of the boat."
    return (
        '<form class="form" id="new-intake" data-do="intake"><h2>New from a short intake</h2>'
        "<p>Answer what you know. The intake chooses cooling, bank, inverter and alternators from the catalogue, "
        "and marks what it chose; this takes some seconds.</p>"
        f'{groups}<div class="fields">{_field("i-file", "file", "File name", file, about)}</div>'
        f'<button type="submit"{_disabled(locked)}>Make the design</button></form>'
    )


def progress_html(words: str) -> str:
    """How far an intake is, with the button that stops it."""
    return f'<div class="notice going"><p>{text(words)}</p><button type="button" data-do="cancel">Cancel</button></div>'


def _question(name: str, locked: bool) -> str:
    field, there = Intake.model_fields[name], f"i-{name}"
    label = LABELS.get(name, name.capitalize())
    usual = "" if field.default is PydanticUndefined or field.default is None else field.default
    marks = f'id="{there}" name="{name}" {_usual(there)}{_disabled(locked)}'
    allowed = "" if name in CHOICES or isinstance(usual, bool) else described(Intake, name).allowed
    about = "" if str(field.description).rstrip(".") == label else str(field.description)
    if allowed and allowed != "a text":
        about += f" {allowed[:1].upper()}{allowed[1:]}."
    if name in CHOICES:
        options = "".join(
            f'<option value="{text(one)}"{" selected" if one == usual else ""}>{text(one)}</option>'
            for one in CHOICES[name]
        )
        return _field(there, name, label, f"<select {marks}>{options}</select>", about)
    if isinstance(usual, bool):
        box = f'<input type="checkbox" value="on" {marks}{" checked" if usual else ""}>'
        return _field(there, name, label, box, "", " tick")
    numeric = ' inputmode="numeric"' if isinstance(usual, int) else ""
    return _field(
        there, name, label, f'<input type="text" maxlength="400" {marks}{numeric} value="{text(usual)}">', about
    )


def _field(there: str, name: str, label: str, control: str, about: str, kind: str = "") -> str:
    return (
        f'<div class="field{kind}"><label for="{there}">{text(label)}</label>{control}'
        f'<span class="about" id="{there}-about">{text(about)}</span>'
        f'<span class="told" id="{there}-told" data-for="{name}" role="alert"></span></div>'
    )


def _usual(there: str) -> str:
    return f'autocomplete="off" spellcheck="false" aria-describedby="{there}-about {there}-told"'


def _disabled(locked: bool) -> str:
    return " disabled" if locked else ""
