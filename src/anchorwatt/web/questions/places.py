"""Places: what the parts weigh, how the boat floats with them, and whether they fit where they go."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, Any

from anchorwatt.design import Design
from anchorwatt.design.form import form
from anchorwatt.design.moving import moved
from anchorwatt.papers import fit, weight
from anchorwatt.web.content import Asked, Block, Form, Html, Question, Tables
from anchorwatt.web.paper_html import page_html
from anchorwatt.web.pictures import picture

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

HOW = (
    '<p class="about">Drag a part to move it, seen from above or from the side; its place below takes figures too. '
    "Its space stays as it is typed.</p>"
)


def _prepare(assessment: Assessment, asked: Asked) -> tuple[Block, ...]:
    system = asked.system
    return (
        Html("how", HOW),
        picture("places", assessment, asked),
        picture("heel-trim", assessment, asked),
        Tables("weight", page_html(weight.screen(assessment, system)), ("weight",)),
        Tables("fit", page_html(fit.screen(assessment, system)), ("fit",)),
    )


def _forms(design: Design, _: Asked) -> tuple[Form, ...]:
    return (Form("Where parts stand", form(design, "places")), Form("Spaces", form(design, "spaces")))


def _act(_: Design, said: Mapping[str, Any]) -> tuple[Callable[[Design], Design], str] | None:
    if said.get("act") != "move":
        return None
    key, view = str(said.get("key", "")), str(said.get("view", ""))
    try:
        at = {name: float(said[name]) for name in ("forward", "starboard", "up")}
        right, down = float(said["right"]), float(said["down"])
    except (KeyError, TypeError, ValueError):
        return None
    return (lambda design: moved(design, key, view, at, right, down)), f"{key}: moved"


PLACES = Question("places", "Places, weight and fit", _prepare, _forms, _act)
