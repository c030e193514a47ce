"""The pages of the workbench, in the order in which a job asks for them."""

from __future__ import annotations

from anchorwatt.web.content import Question
from anchorwatt.web.questions.bank import BANK
from anchorwatt.web.questions.boat import BOAT
from anchorwatt.web.questions.cabins import CABINS
from anchorwatt.web.questions.charge import CHARGE
from anchorwatt.web.questions.checks import CHECKS
from anchorwatt.web.questions.circuits import CIRCUITS
from anchorwatt.web.questions.days import DAYS
from anchorwatt.web.questions.drawings import DRAWINGS
from anchorwatt.web.questions.papers import PAPERS
from anchorwatt.web.questions.places import PLACES
from anchorwatt.web.questions.plant import PLANT
from anchorwatt.web.questions.price import PRICE

QUESTIONS: tuple[Question, ...] = (
    BOAT,
    CABINS,
    PLANT,
    BANK,
    CHARGE,
    DAYS,
    CIRCUITS,
    PLACES,
    DRAWINGS,
    PRICE,
    CHECKS,
    PAPERS,
)


def question(path: str) -> Question | None:
    """The page of that address; None where there is none."""
    return next((one for one in QUESTIONS if one.path == path), None)
