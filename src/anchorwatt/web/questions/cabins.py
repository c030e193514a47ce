"""Cabins and heat: how warm each is through the night, where the heat comes from, and who is where when."""

from __future__ import annotations

from typing import TYPE_CHECKING

from anchorwatt.design import Design
from anchorwatt.design.form import form
from anchorwatt.papers import loads
from anchorwatt.web.content import Asked, Block, Choice, Form, Html, Question, Tables
from anchorwatt.web.escaped import text
from anchorwatt.web.paper_html import page_html
from anchorwatt.web.pictures import clock_of, hour_row, picture

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment


def _prepare(assessment: Assessment, asked: Asked) -> tuple[Block, ...]:
    night = assessment.night
    last, row = len(night.clock) - 1, hour_row(night, asked.query)
    at = text(clock_of(night, asked.query))
    return (
        Html(
            "hour",
            f'<div class="scrub"><label for="hour">Time of the night: <output>{at}</output></label>'
            f'<input type="range" id="hour" data-ask="row" min="0" max="{last}" step="10" value="{row}" '
            f'aria-valuetext="{at}"></div>',
        ),
        picture("cabin-plan", assessment, asked),
        picture("gains", assessment, asked),
        Tables("loads", page_html(loads.screen(assessment, asked.system)), ("cabins", "gains", "night")),
    )


def _forms(design: Design, asked: Asked) -> tuple[Form, ...]:
    cabins, periods = tuple(design.cabins), len(design.plan)
    cabin = asked.query.get("cabin", "")
    cabin = cabin if cabin in cabins else cabins[0]
    number = asked.query.get("period", "")
    period = number if number in {str(one) for one in range(periods)} else "0"
    times = tuple(
        (str(one), f"{each.start.text} to {each.end.text}, {each.doing}") for one, each in enumerate(design.plan)
    )
    rooms = tuple((name, name) for name in cabins)
    return (
        Form("One cabin", form(design, f"cabins.{cabin}"), Choice("cabin", "Cabin", rooms, cabin)),
        Form("The plan of the day", form(design, f"plan.{period}"), Choice("period", "Hours", times, period)),
        Form("All cabins", form(design, "cabins").bare()),
        Form("Between cabins", form(design, "neighbours")),
    )


CABINS = Question("cabins", "Cabins and heat", _prepare, _forms)
