"""The days after, and what happens when something fails."""

from __future__ import annotations

from typing import TYPE_CHECKING

from anchorwatt.design import Design
from anchorwatt.design.form import form
from anchorwatt.papers import faults, generator, voltage, week
from anchorwatt.web.content import Asked, Block, Form, Question, Tables
from anchorwatt.web.paper_html import page_html

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment


def _prepare(assessment: Assessment, asked: Asked) -> tuple[Block, ...]:
    system = asked.system
    return (
        Tables("week", page_html(week.screen(assessment, system)), ("week",)),
        Tables("faults", page_html(faults.screen(assessment, system)), ("faults",)),
        Tables("generator", page_html(generator.screen(assessment, system)), ("generator",)),
        Tables("voltage", page_html(voltage.screen(assessment, system)), ("voltage",)),
    )


def _forms(design: Design, _: Asked) -> tuple[Form, ...]:
    return (Form("The week", form(design, "week")),)


DAYS = Question("days", "Days, failures, other ways", _prepare, _forms)
