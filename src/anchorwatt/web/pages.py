"""Pages that say that something is not to be had."""

from __future__ import annotations

from nicegui import ui

from anchorwatt.errors import BadDesign
from anchorwatt.web.escaped import text
from anchorwatt.web.shell import ASSETS, head


def unreadable_page(name: str, problem: BadDesign) -> None:
    """A design file that cannot be read: everything that is wrong with it."""
    head(f"{name} cannot be read")
    lines = "".join(
        f"<li><strong>Line {one.line or 1}</strong> {text(one.key)}: found {text(one.found)}; "
        f"allowed: {text(one.allowed)}</li>"
        for one in problem.problems
    )
    ui.html(
        f'<div id="main" class="page plain"><h1>{text(name)} cannot be read</h1>'
        f"<p>Nothing was changed. Mend these in the file, then load this page again.</p><ul>{lines}</ul>"
        '<p><a href="/">All designs</a></p></div>',
        sanitize=False,
    )


def not_found_html(name: str) -> str:
    """A page for an address that leads nowhere."""
    there = f"There is no design “{name}” in this folder." if name else "There is nothing at this address."
    return _bare("Not found", there)


def refused_html() -> str:
    """A page for what a role may not do."""
    return _bare("Not allowed", "Your role may read, but not take files along.")


def _bare(title: str, words: str) -> str:
    return (
        f'<!doctype html><html lang="en"><head><meta charset="utf-8"><title>{text(title)} – Anchorwatt</title>'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f'<link rel="stylesheet" href="{ASSETS}/look.css"></head><body><main class="page plain"><h1>{text(title)}</h1>'
        f'<p>{text(words)}</p><p><a href="/">All designs</a></p></main></body></html>'
    )
