"""A form of the design file as HTML: native fields, so that keyboard, tablet and screen reader work by themselves."""

from __future__ import annotations

import hashlib
from typing import Any

from anchorwatt.design.form import Field, Group
from anchorwatt.web.content import Choice, Form
from anchorwatt.web.escaped import options, text

MANY = 30
"""Fields of a form beyond which what is in it is folded at first."""
FEW = 6
"""Groups of a form that are not folded, however many fields they hold."""


def form_html(form: Form, locked: bool) -> str:
    """Fields with label, unit and range, origin and what is allowed; groups in it can be folded.

    Parameters
    ----------
    locked : the reader may not change anything
    """
    group = form.group
    body = _group_body(group, locked, 3, opened=_own(group) <= MANY or len(group.groups) <= FEW)
    choice = _choice(form.choice) if form.choice is not None else ""
    return (
        f'<section class="form" id="{group_id(group.key)}" tabindex="-1"><h2>{text(form.title)}</h2>{choice}'
        f"{_about(group)}{body}{_add(group, locked)}</section>"
    )


def group_id(key: str) -> str:
    """The identifier of a mapping's place on the page."""
    return f"g-{field_id(key)}"


def facts(group: Group) -> list[dict[str, Any]]:
    """What a form shows, field by field, to bring one that is on the screen up to date."""
    return [
        {
            "id": field_id(one.key),
            "typed": one.typed or "",
            "hint": _hint(one),
            "basis": one.basis,
            "origin": _origin(one),
        }
        for one in group
    ]


def keys(group: Group) -> tuple[str, ...]:
    """Which fields a form has, and what can be chosen in them: a form with others is drawn anew."""
    return tuple(f"{one.key}|{one.kind}|{'|'.join(one.choices)}" for one in group)


def field_id(key: str) -> str:
    """The identifier of a key's field on the page: keys hold signs that identifiers may not."""
    return "f-" + hashlib.sha256(key.encode()).hexdigest()[:16]


def _own(group: Group) -> int:
    """How many fields a form has without the figures of parts."""
    return sum(not one.of_part for one in group)


def _group_body(group: Group, locked: bool, level: int, opened: bool) -> str:
    fields = "".join(_field(one, locked) for one in group.fields)
    grid = f'<div class="fields">{fields}</div>' if fields else ""
    return grid + "".join(_inner(one, locked, level, group, opened) for one in group.groups)


def _inner(group: Group, locked: bool, level: int, above: Group, opened: bool) -> str:
    removable, listed = above.named, above.listed
    body = _group_body(group, locked, min(level + 1, 6), opened=False)
    more = _add(group, locked)
    mine = removable and group.there
    if not body and not more and not mine:
        return ""
    there = " open" if group.there and opened else ""
    none = "" if group.there else ' <span class="none">none</span>'
    remove = ""
    if mine and not locked:
        name = f"Take out {text(group.title)}"
        remove = f'<button type="button" class="small" data-do="remove" data-key="{text(group.key)}">{name}</button>'
        remove = ("" if listed else _rename(group)) + remove
    return (
        f'<details class="group" id="{group_id(group.key)}"{there}>'
        f"<summary>{text(group.title)}{none}</summary>{_about(group)}{body}{more}{remove}</details>"
    )


def _choice(choice: Choice) -> str:
    name = field_id(f"choice {choice.name}")
    return (
        f'<div class="field choose"><label for="{name}">{text(choice.label)}</label>'
        f'<select id="{name}" data-ask="{text(choice.name)}">{options(choice.options, choice.chosen)}</select></div>'
    )


def _add(group: Group, locked: bool) -> str:
    """A way to begin one more entry where entries are called as one likes."""
    if not group.named or locked:
        return ""
    key = text(group.key)
    if group.listed:
        return (
            f'<button type="button" class="small" data-do="add" data-kind="list" data-key="{key}">Add one more</button>'
        )
    name = field_id(f"add {group.key}")
    return (
        f'<div class="add"><label for="{name}">One more in {text(group.title)}, called</label>'
        f'<input type="text" id="{name}" maxlength="60" autocomplete="off">'
        f'<button type="button" data-do="add" data-key="{key}">Add</button></div>'
    )


def _rename(group: Group) -> str:
    """A way to call an entry otherwise."""
    name, key = field_id(f"rename {group.key}"), text(group.key)
    called = text(group.name)
    return (
        f'<div class="add"><label for="{name}">Called</label>'
        f'<input type="text" id="{name}" maxlength="60" autocomplete="off" value="{called}">'
        f'<button type="button" data-do="rename" data-key="{key}">Rename {called}</button></div>'
    )


def _about(group: Group) -> str:
    return f'<p class="about">{text(group.about)}</p>' if group.about else ""


def _field(one: Field, locked: bool) -> str:
    name = field_id(one.key)
    about = f'<span class="about" id="{name}-about">{text(_sentence(one))}</span>'
    marks = (
        f'id="{name}" name="{text(one.key)}" '
        f'data-seen="{text(one.typed or "")}" data-typed="{int(one.typed is not None)}" '
        f'aria-describedby="{name}-about {name}-origin {name}-told" autocomplete="off" spellcheck="false"'
        f"{' disabled' if locked else ''}{' required' if one.required else ''}"
    )
    return (
        f'<div class="field" data-basis="{text(one.basis)}"><label for="{name}">{text(one.label)}</label>'
        f'{_input(one, name, marks)}<span class="origin" id="{name}-origin">{text(_origin(one))}</span>{about}'
        f'<span class="told" id="{name}-told" role="alert"></span>{_back(one, locked)}{_figures(one, locked)}</div>'
    )


def _figures(part: Field, locked: bool) -> str:
    """What a part is reckoned with; what is typed over is seen at once."""
    if not part.figures:
        return ""
    opened = " open" if any(one.typed is not None for one in part.figures) else ""
    fields = "".join(_field(one, locked) for one in part.figures)
    return (
        f'<details class="figures"{opened}><summary>Figures of {text(part.label)}'
        f'<span class="over">, some typed over</span></summary><div class="fields">{fields}</div></details>'
    )


def _back(one: Field, locked: bool) -> str:
    """A way to take a figure of the catalogue again; shown where another is typed."""
    if not one.of_part or locked:
        return ""
    words = f'Back to the catalogue<span class="unseen">: {text(one.label)}</span>'
    return f'<button type="button" class="small back" data-do="back" data-key="{text(one.key)}">{words}</button>'


def _input(one: Field, name: str, marks: str) -> str:
    typed = one.typed or ""
    if one.kind in ("choice", "flag"):
        choices = one.choices if one.kind == "choice" else ("yes", "no")
        if typed and typed not in choices:
            choices = (typed, *choices)
        listed = options([(choice, choice) for choice in choices], typed)
        first = "" if one.required and typed else f'<option value="">{text(_hint(one))}</option>'
        return f"<select {marks}>{first}{listed}</select>"
    usual = ""
    if one.choices:
        listed = "".join(f'<option value="{text(choice)}"></option>' for choice in one.choices)
        usual = f'<datalist id="{name}-usual">{listed}</datalist>'
        marks += f' list="{name}-usual"'
    if one.kind in ("number", "whole"):
        marks += ' inputmode="decimal"'
    return f'<input type="text" maxlength="4000" {marks} value="{text(typed)}" placeholder="{text(_hint(one))}">{usual}'


def _hint(one: Field) -> str:
    return one.used or ("" if one.required else "not given")


def _origin(one: Field) -> str:
    if one.basis in ("estimated", "catalogue"):
        return f"{one.basis}: {one.rule}"
    if one.in_catalogue:
        return f"typed; the catalogue says {one.used}"
    return "" if one.basis == "not given" else one.basis


def _sentence(one: Field) -> str:
    allowed = f"{one.allowed[0].upper()}{one.allowed[1:]}." if one.allowed and one.kind != "choice" else ""
    return " ".join(part for part in (one.about, allowed) if part)
