"""The boat and the brief: what is built, where it lies, what must hold."""

from __future__ import annotations

from typing import TYPE_CHECKING

from anchorwatt.design import Design
from anchorwatt.design.form import form
from anchorwatt.web.content import Asked, Block, Form, Question
from anchorwatt.web.pictures import picture

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment


def _prepare(assessment: Assessment, asked: Asked) -> tuple[Block, ...]:
    return (picture("night", assessment, asked),)


def _forms(design: Design, _: Asked) -> tuple[Form, ...]:
    return tuple(
        Form(title, form(design, key))
        for title, key in (("The brief", "brief"), ("The boat", "boat"), ("Where it lies", "place"))
    )


BOAT = Question("boat", "The boat and the brief", _prepare, _forms)
