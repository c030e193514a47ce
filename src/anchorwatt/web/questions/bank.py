"""The bank and the night: what the night takes, what carries it, and what the AC side asks of it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from anchorwatt.design import Design
from anchorwatt.design.form import form
from anchorwatt.papers import bank, power, screens
from anchorwatt.web.content import Asked, Block, Form, Question, Tables
from anchorwatt.web.paper_html import page_html
from anchorwatt.web.pictures import picture

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment


def _prepare(assessment: Assessment, asked: Asked) -> tuple[Block, ...]:
    system = asked.system
    return (
        picture("night", assessment, asked),
        Tables("hours", page_html(screens.night(assessment, system)), ("night", "day")),
        Tables("bank", page_html(bank.screen(assessment, system)), ("bank",)),
        Tables("power", page_html(power.screen(assessment, system)), ("power",)),
    )


def _forms(design: Design, _: Asked) -> tuple[Form, ...]:
    return (Form("The DC side", form(design, "dc")), Form("The AC side", form(design, "ac")))


BANK = Question("bank", "The bank and the night", _prepare, _forms)
