"""Price and options: what the customer pays, what it costs the yard, when to order, and packages."""

from __future__ import annotations

from typing import TYPE_CHECKING

from anchorwatt.design import Design
from anchorwatt.design.form import form
from anchorwatt.papers import price
from anchorwatt.web.content import Asked, Block, Form, Question, Tables
from anchorwatt.web.paper_html import page_html

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment


def _prepare(assessment: Assessment, asked: Asked) -> tuple[Block, ...]:
    today = price.day(None)
    customer = page_html(price.screen(assessment, today, cost=False, system=asked.system))
    yard = page_html(price.screen(assessment, today, cost=True, system=asked.system))
    return (Tables("price", customer, ("price",)), Tables("cost", yard, ("price_cost",)))


def _forms(design: Design, _: Asked) -> tuple[Form, ...]:
    return (Form("How it is priced", form(design, "offer")),)


PRICE = Question("price", "Price and options", _prepare, _forms)
