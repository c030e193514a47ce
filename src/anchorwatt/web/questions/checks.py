"""Checks: what holds and what does not, worst first, each with its remedy."""

from __future__ import annotations

from typing import TYPE_CHECKING

from anchorwatt.checks.cures import CURES
from anchorwatt.checks.finding import Finding, Verdict
from anchorwatt.papers.screens import found_and_limit
from anchorwatt.papers.select import worst_first
from anchorwatt.web.addresses import where
from anchorwatt.web.content import Asked, Block, Html, Question, Tables
from anchorwatt.web.escaped import text

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

HEADS = {
    Verdict.FAILS: ("✗", "These fail"),
    Verdict.CANNOT_TELL: ("?", "These cannot be told yet"),
    Verdict.NEAR: ("≈", "These hold with little to spare"),
    Verdict.HOLDS: ("✓", "These hold"),
}


def _prepare(assessment: Assessment, asked: Asked) -> tuple[Block, ...]:
    if not assessment.checked:
        return (Html("wait", '<p class="empty">The checks are being done; they appear here when they are.</p>'),)
    found = worst_first(assessment.checks)
    groups = {verdict: [one for one in found if one.verdict is verdict] for verdict in HEADS}
    told = "".join(_group(verdict, some, asked) for verdict, some in groups.items())
    return (Tables("checks", told, ("check",)),)


def _group(verdict: Verdict, found: list[Finding], asked: Asked) -> str:
    sign, title = HEADS[verdict]
    body = "".join(_finding(one, asked) for one in found) or '<p class="empty">None.</p>'
    return f'<section class="verdict {verdict.name.lower()}"><h2>{sign} {title}: {len(found)}</h2>{body}</section>'


def _finding(one: Finding, asked: Asked) -> str:
    found, limit = found_and_limit(one, asked.system)
    remedy = ""
    if one.verdict is not Verdict.HOLDS and one.remedy:
        link = f'<a href="{where(asked.design, CURES[one.id])}">Go to {text(CURES[one.id].replace("_", " "))}</a>'
        remedy = f'<p class="remedy">{text(one.remedy)} {link}</p>'
    note = f'<p class="note">{text(one.note)}</p>' if one.note else ""
    return (
        f'<article class="finding" id="check-{text(one.id)}"><h3>{text(one.question)}</h3>'
        f"<p>Found <strong>{text(found)}</strong>, limit <strong>{text(limit)}</strong></p>{note}{remedy}"
        f'<p class="source">{text(one.subject)} · {text(one.id)} · {text(one.source)}</p></article>'
    )


CHECKS = Question("checks", "Checks", _prepare, needs_checks=True)
