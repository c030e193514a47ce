"""Papers: what customer, yard and technician hold in their hands, seen before it is saved."""

from __future__ import annotations

from typing import TYPE_CHECKING
from urllib.parse import urlencode

from anchorwatt.errors import AnchorwattError
from anchorwatt.languages import LANGUAGES
from anchorwatt.simulation.watched import GivenUp
from anchorwatt.units import show
from anchorwatt.web.content import Asked, Block, Html, Question
from anchorwatt.web.escaped import options, part, text
from anchorwatt.web.printed_papers import Order, edition, mark_of_page, ordered, page_name
from anchorwatt.web.shell import notice_html
from anchorwatt.web.yaml_files import houses

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.papers.printed import Edition

LARGER = (
    '<p class="larger"><label><input type="checkbox" id="larger" checked> Large enough to read; '
    "slide a page to see all of it</label></p>"
)
NO_HOUSE = (
    "Papers carry the yard of the drawings' title block. A settings file beside the designs, with the yard's name, "
    "address, logo, colour and terms, can be chosen here."
)


def _prepare(assessment: Assessment, asked: Asked) -> tuple[Block, ...]:
    order = ordered(asked.query, asked.system, asked.folder)
    choose = Html("choose", _choose(assessment, order, asked))
    try:
        made = edition(assessment, order, asked.system)
    except GivenUp:
        raise
    except AnchorwattError as problem:  # another paper may well be made of this design
        return (choose, Html("refused", notice_html("This paper cannot be made of the design as it stands.", problem)))
    return (
        choose,
        Html("larger", LARGER),
        Html("pages", _pages(made, order, asked)),
        Html("save", _save(made, order, asked)),
    )


def _choose(assessment: Assessment, order: Order, asked: Asked) -> str:
    from anchorwatt.papers.printed import PAPERS

    papers = [(one.name, one.title) for one in PAPERS]
    fields = _select("paper", "Paper", papers, order.paper.name, order.paper.about)
    if names := houses(asked.folder):
        givers = [("", "the yard of the drawings"), *((name, name) for name in names)]
        chosen = asked.query.get("house", "")
        if chosen and chosen not in names:
            givers.append((chosen, chosen))
        fields += _select("house", "Given out by", givers, chosen, told=_refused(order.told.get("house", "")))
    fields += _select(
        "language", "Language", list(LANGUAGES.items()), order.wishes.language, told=order.told.get("language", "")
    )
    about = "" if names else f'<p class="about">{text(NO_HOUSE)}</p>'
    return f'<div class="chosen">{fields}{_temperatures(assessment, order, asked)}</div>{about}'


def _refused(told: str) -> str:
    return told and f"Not used, and the paper is given out by the yard of the drawings:\n{told}"


def _select(name: str, label: str, choices: list[tuple[str, str]], chosen: str, about: str = "", told: str = "") -> str:
    marks = _marks(name, told)
    return _field(name, label, f"<select {marks}>{options(choices, chosen)}</select>", about, told)


def _temperatures(assessment: Assessment, order: Order, asked: Asked) -> str:
    if not order.paper.takes_temperatures:
        return ""
    from anchorwatt.assessment.commissioning import warmest
    from anchorwatt.papers.printed import OUTSIDE

    fields = ""
    for outside, design_day in zip(OUTSIDE, warmest(assessment), strict=True):
        told = order.told.get(outside.name, "")
        usual = show(design_day, "temperature", asked.system)
        typed = text(asked.query.get(outside.name, ""))
        box = f'<input type="text" value="{typed}" placeholder="{text(usual)}" {_marks(outside.name, told)}>'
        used = "Not used, the design day's is" if told else "Left empty, it is the design day's"
        fields += _field(outside.name, outside.label, box, f"{used}: {usual}", told)
    return fields


def _marks(name: str, told: str) -> str:
    """What makes a control one that asks the page for something else, and says what is wrong with that."""
    return (
        f'id="ask-{name}" data-ask="{name}" aria-describedby="ask-{name}-told ask-{name}-about" '
        f'aria-invalid="{"true" if told else "false"}" autocomplete="off"'
    )


def _field(name: str, label: str, control: str, about: str, told: str) -> str:
    return (
        f'<div class="field"><label for="ask-{name}">{text(label)}</label>{control}'
        f'<span class="told" id="ask-{name}-told" role="status">{text(told)}</span>'
        f'<span class="about" id="ask-{name}-about">{text(about)}</span></div>'
    )


def _address(file: str, order: Order, asked: Asked, **also: str) -> str:
    said = {**order.said, **also}
    end = f"?{urlencode(said)}" if said else ""
    return text(f"/design/{part(asked.design)}/papers/{part(file)}{end}")


def _save(made: Edition, order: Order, asked: Asked) -> str:
    name = order.paper.name
    files = [("PDF", f"{name}.pdf")]
    if order.paper.tables is not None:
        files.append(("XLSX", f"{name}.xlsx"))
    if order.paper.comes_back:
        files.append(("CSV to fill in", f"{name}.csv"))
    links = ", ".join(f'<a href="{_address(file, order, asked)}" download>{kind}</a>' for kind, file in files)
    return f'<div class="paper-bar"><p>Save as {links}</p>{_jump(len(made.pages))}</div>'


def _jump(count: int) -> str:
    """Which page is in sight, and a way to any other."""
    if count == 1:
        return ""
    pages = "".join(f'<option value="leaf-{number}">{number} of {count}</option>' for number in range(1, count + 1))
    return f'<p class="jump"><label for="jump">Go to page</label> <select id="jump" data-jump>{pages}</select></p>'


def _pages(made: Edition, order: Order, asked: Asked) -> str:
    title, count = made.document.title, len(made.pages)
    shown = ""
    for number, page in enumerate(made.pages, 1):
        address = _address(page_name(order.paper.name, number), order, asked, of=mark_of_page(page))
        shape = "across" if page.width > page.height else "upright"
        shown += (
            f'<li class="{shape}" id="leaf-{number}" tabindex="-1"><img src="{address}" loading="lazy" '
            f'width="{page.width:.0f}" height="{page.height:.0f}" alt="Page {number} of {text(title)}">'
            f'<p class="about">Page {number} of {count} · <a href="{address}" target="_blank" '
            f'aria-label="Page {number} by itself, in another tab">by itself</a></p></li>'
        )
    return (
        f'<h2>{text(title)}</h2><div class="wide leaves" tabindex="0" role="region" '
        f'aria-label="Pages of {text(title)}"><ol>{shown}</ol></div>'
    )


PAPERS = Question("papers", "Papers", _prepare)
