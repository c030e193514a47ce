"""The headline: the answers that decide the job, always in sight, each with its why."""

from __future__ import annotations

from typing import TYPE_CHECKING

from anchorwatt.papers.screens import figure
from anchorwatt.units import System
from anchorwatt.web.desk import Checking
from anchorwatt.web.escaped import text

if TYPE_CHECKING:
    from anchorwatt.assessment import Answer, Assessment


def headline_html(assessment: Assessment, checking: Checking, system: System) -> str:
    """A button an answer; one that is pressed opens its why."""
    tiles = [_tile(one, system) for one in assessment.answers]
    tiles.append(_checks_tile(assessment, checking, system))
    return f'<ul class="answers">{"".join(tiles)}</ul>'


def why_html(answer: Answer, system: System) -> str:
    """How an answer was found."""
    rows = "".join(
        f'<tr><th scope="row">{text(one.name)}</th>'
        f'<td class="figure">{text(figure(one.value, one.dimension, system))}</td><td>{text(one.basis)}</td></tr>'
        for one in answer.why.inputs
    )
    inputs = (
        '<table><thead><tr><th scope="col">from</th><th scope="col" class="figure">value</th>'
        f'<th scope="col">which is</th></tr></thead><tbody>{rows}</tbody></table>'
        if rows
        else ""
    )
    return (
        f'<section class="why" aria-label="{text(answer.question)}">'
        f"<h2>{text(answer.question)} <strong>{text(figure(answer.value, answer.dimension, system))}</strong></h2>"
        f"<p>{text(answer.note)}</p><p>How: {text(answer.why.formula)}.</p>{inputs}"
        f"<p>Source: {text(answer.why.source)}.</p><p>What changes it: {text(answer.why.changes_it)}.</p>"
        '<button type="button" data-do="why" data-with="">Close</button></section>'
    )


def _tile(answer: Answer, system: System) -> str:
    return _button(answer.key, figure(answer.value, answer.dimension, system), answer.question, answer.note)


def _button(key: str, value: str, question: str, note: str, more: str = "") -> str:
    title = f' title="{text(note)}"' if note else ""
    told = f'<span class="noted">{text(note)}</span>' if note else ""
    return (
        f'<li><button type="button" class="answer{more}" data-do="why" data-with="{text(key)}"{title}>'
        f'<span class="value">{text(value)}</span><span class="asked">{text(question)}</span>{told}</button></li>'
    )


def _checks_tile(assessment: Assessment, checking: Checking, system: System) -> str:
    if checking.refused:
        return _button("", "—", "How many checks fail?", checking.refused)
    if not checking.finished:
        of = f"{checking.done} of {checking.of}" if checking.of else ""
        words = f"Checks stopped {of}" if checking.stopped else f"Checking {of} …"
        do = "check-again" if checking.stopped else "stop-checking"
        label = "Go on" if checking.stopped else "Stop"
        return (
            f'<li><div class="answer waiting"><span class="value">…</span><span class="asked">{text(words)}</span>'
            f'<button type="button" class="small" data-do="{do}">{label}</button></div></li>'
        )
    answer = assessment.answer("checks_failed")
    more = " fails" if answer.value else " holds"
    return _button(answer.key, figure(answer.value, answer.dimension, system), answer.question, answer.note, more)
