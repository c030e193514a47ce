"""Circuits: the wire schedule, and one circuit's whole calculation."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from anchorwatt.design import Design
from anchorwatt.design.form import form
from anchorwatt.papers import wiring
from anchorwatt.web.content import Asked, Block, Form, Html, Question, Tables
from anchorwatt.web.escaped import text
from anchorwatt.web.paper_html import page_html, paper_html

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment


TAG = re.compile("W[0-9]{1,4}")


def _prepare(assessment: Assessment, asked: Asked) -> tuple[Block, ...]:
    made, tag = assessment.wiring, asked.query.get("circuit", "")
    tags = [one.tag for one in made.wiring.circuits]
    blocks: list[Block] = [Html("schedule", _schedule(assessment, asked))]
    if tag in tags:
        told = paper_html(wiring.why_screen(made.why(tag), made.currency, asked.system))
        close = '<button type="button" data-do="ask" data-name="circuit" data-value="">Close</button>'
        blocks.insert(0, Html("why", f'<div class="tables" id="circuit">{told}{close}</div>'))
    blocks.append(Tables("wiring", page_html(wiring.around(assessment, asked.system)), ("wiring",)))
    return tuple(blocks)


def _schedule(assessment: Assessment, asked: Asked) -> str:
    heads, rows = wiring.schedule(assessment, asked.system)
    head = "".join(f'<th scope="col">{text(one)}</th>' for one in heads)
    body = "".join(
        f'<tr><th scope="row"><button type="button" class="small" data-do="ask" data-name="circuit" '
        f'data-value="{text(row[0])}" aria-label="Calculation of {text(row[0])}">{text(row[0])}</button></th>'
        f"{''.join(f'<td>{text(cell)}</td>' for cell in row[1:])}</tr>"
        for row in rows
    )
    return (
        '<div class="tables filtered"><label for="filter">Show circuits with </label>'
        '<input type="search" id="filter" data-filter autocomplete="off"> '
        f'<span class="left" role="status">{len(rows)} shown</span>'
        '<div class="wide" tabindex="0" role="region" aria-label="Wire schedule"><table>'
        f"<thead><tr>{head}</tr></thead><tbody>{body}</tbody></table></div></div>"
    )


def _forms(design: Design, asked: Asked) -> tuple[Form, ...]:
    shown = [Form("How it is wired", form(design, "wiring")), Form("What is vouched for", form(design, "installation"))]
    tag = asked.query.get("circuit", "")
    if TAG.fullmatch(tag) and (design.wiring is None or tag not in design.wiring.circuits):
        # What is not in the file has no fields in the form above.
        shown.insert(0, Form(f"What you know of {tag}", form(design, f"wiring.circuits.{tag}")))
    return tuple(shown)


CIRCUITS = Question("circuits", "Circuits", _prepare, _forms)
