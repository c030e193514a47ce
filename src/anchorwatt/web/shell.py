"""What all pages have round them: look, scripts, the top line, the cautions."""

from __future__ import annotations

import json
from typing import Any

from fastapi import Request
from nicegui import Client, ui

from anchorwatt.cautions import CAUTIONS
from anchorwatt.web.content import Asked
from anchorwatt.web.escaped import part, text
from anchorwatt.web.sign_in import current_person, form_token
from anchorwatt.web.sign_in_page import sign_out_form

ASSETS = "/look"


def head(title: str) -> None:
    """Title, look and scripts of a page; nothing comes from elsewhere."""
    ui.page_title(f"{title} – Anchorwatt")
    ui.add_head_html(
        f'<link rel="stylesheet" href="{ASSETS}/look.css"><script src="{ASSETS}/bench.js"></script>'
        '<meta name="referrer" content="same-origin">'
    )
    ui.html('<a class="skip" href="#main">To the page</a>', sanitize=False)


def call_script(client: Client, function: str, *given: Any) -> None:
    """Call a function of bench.js in a tab, with plain data."""
    said = ", ".join(json.dumps(one).replace("<", "\\u003c") for one in given)
    with client:
        ui.run_javascript(f"{function}({said})")


def notice_html(words: str, problem: Exception | None = None) -> str:
    """Something that must be told, and what was wrong, word for word."""
    more = "" if problem is None else f'<p class="problem">{text(problem)}</p>'
    return f'<div class="notice"><p>{text(words)}</p>{more}</div>'


def picture_html(svg: str, below: str = "") -> str:
    """A picture that keeps a size at which it can be read, and scrolls by itself where the screen is smaller."""
    drawn = f'<div class="wide" tabindex="0" role="region" aria-label="Picture">{svg}</div>'
    caption = f"<figcaption>{below}</figcaption>" if below else ""
    return f'<figure class="picture">{drawn}{caption}</figure>'


def page_top(name: str, asked: Asked, undo: bool, redo: bool, unsaved: str, last: str) -> str:
    """Name of the boat, whether it is saved, undo and redo, units."""
    state = (
        f'<span class="state bad" role="alert">Not saved: {text(unsaved)}</span>'
        if unsaved
        else f'<span class="state">Saved<span class="last"> · {text(last)}</span></span>'
    )
    return (
        '<header class="top"><a class="home" href="/">Anchorwatt</a>'
        f'<a href="/compare?d={part(asked.design)}">Compare</a><strong class="boat">{text(name)}</strong>{state}'
        f'<span class="tools">{_button("undo", "Undo", undo)}{_button("redo", "Redo", redo)}'
        f"{units_switch(asked.system)}</span></header>"
    )


def plain_top(system: str) -> None:
    """The top line of a page that is not about one design."""
    ui.html(
        '<header class="top"><a class="home" href="/">Anchorwatt</a><a href="/">Designs</a>'
        f'<a href="/compare">Compare</a><span class="state"></span>'
        f'<span class="tools">{units_switch(system)}</span></header>',
        sanitize=False,
    )


def page_foot(request: Request) -> None:
    """The cautions, and who is signed in."""
    person = current_person(request)
    who = ""
    if person is not None:
        who = (
            f'<div class="who"><span>Signed in as {text(person.name)}, {text(person.role)}</span>'
            f"{sign_out_form(form_token(request))}</div>"
        )
    words = "".join(f"<p>{text(one)}</p>" for one in CAUTIONS)
    ui.html(f'<footer class="foot">{words}{who}</footer>', sanitize=False)


def units_switch(system: str) -> str:
    """A link to the same page in the other units."""
    other, name = ("us", "feet, Btu/h, °F") if system == "si" else ("si", "metres, kW, °C")
    return f'<a class="units" href="/units/{part(other)}" data-units="{other}">Show {text(name)}</a>'


def _button(do: str, label: str, able: bool) -> str:
    return f'<button type="button" data-do="{do}"{"" if able else " disabled"}>{label}</button>'
