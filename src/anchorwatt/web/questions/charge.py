"""The engine and the charge: what the propeller leaves, what the belts carry, what to set in the regulators."""

from __future__ import annotations

from typing import TYPE_CHECKING

from anchorwatt.design import Design
from anchorwatt.design.form import form
from anchorwatt.papers import recharge, regulator
from anchorwatt.web.content import Asked, Block, Form, Question, Tables
from anchorwatt.web.paper_html import page_html
from anchorwatt.web.pictures import picture

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment


def _prepare(assessment: Assessment, asked: Asked) -> tuple[Block, ...]:
    system = asked.system
    speeds = ("recharge", "recharge_speeds")
    return (
        picture("engine", assessment, asked),
        Tables("recharge", page_html(recharge.screen(assessment, system)), speeds),
        Tables("regulator", page_html(regulator.screen(assessment, system)), ("regulator",)),
    )


def _forms(design: Design, _: Asked) -> tuple[Form, ...]:
    return (Form("Engines and alternators", form(design, "charging")),)


CHARGE = Question("charge", "The engine and the charge", _prepare, _forms)
