"""The cooling plant: what it gives and draws, its air, its water and its refrigerant."""

from __future__ import annotations

from typing import TYPE_CHECKING

from anchorwatt.design import Design
from anchorwatt.design.form import form
from anchorwatt.papers import plant
from anchorwatt.web.content import Asked, Block, Form, Question, Tables
from anchorwatt.web.paper_html import page_html
from anchorwatt.web.pictures import picture

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment


def _prepare(assessment: Assessment, asked: Asked) -> tuple[Block, ...]:
    told = page_html(plant.screen(assessment, asked.system))
    return (
        picture("plant", assessment, asked),
        Tables("plant", told, ("plant", "ducts", "comparison")),
    )


def _forms(design: Design, _: Asked) -> tuple[Form, ...]:
    return (Form("The plant and its air handlers", form(design, "cooling")),)


PLANT = Question("plant", "The cooling plant", _prepare, _forms)
