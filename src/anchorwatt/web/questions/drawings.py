"""Drawings: the sheets that a yard builds from, what stands behind each line of them, and their title block."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING
from urllib.parse import urlencode

from anchorwatt.design import Design
from anchorwatt.design.form import form
from anchorwatt.drawings.sheets.paper import PAPERS
from anchorwatt.errors import AnchorwattError
from anchorwatt.papers import drawn_part, wiring
from anchorwatt.papers.drawn import TRUE_SCALE
from anchorwatt.simulation.watched import GivenUp
from anchorwatt.web.addresses import field_there, where
from anchorwatt.web.content import Asked, Block, Form, Html, Question
from anchorwatt.web.escaped import options, part, text
from anchorwatt.web.form_html import field_id
from anchorwatt.web.paper_html import paper_html
from anchorwatt.web.sheets import FORMATS, Drawn, drawn, others, paper_of

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

CIRCUIT = "circuit:"
"""Before the function of a circuit, in the key of what shows it."""

STEPS = (
    ("+", "Closer", "+"),
    ("-", "Further", "−"),
    ("0", "Whole sheet", "Whole sheet"),
    ("ArrowLeft", "To the left", "←"),
    ("ArrowUp", "Up", "↑"),
    ("ArrowDown", "Down", "↓"),
    ("ArrowRight", "To the right", "→"),
)
"""Keys that change what of a sheet is seen, the names of their buttons, and what these show."""

HOW = (
    "Press a conductor or a part to see what stands behind it. Wheel or pinch: closer; drag: move; keys + − 0 ← ↑ ↓ →."
)


def _prepare(assessment: Assessment, asked: Asked) -> tuple[Block, ...]:
    made, refused = _drawn(assessment, asked)
    sheet = made.named(asked.query.get("sheet", ""))
    return (
        Html("choose", _choose(made, sheet.name, asked, refused)),
        Html("sheet", _viewer(made.html(sheet.name), sheet.title, f"{sheet.name} {paper_of(asked.query)}")),
        Html("thing", _thing(assessment, made, asked)),
        Html("save", _save(sheet.name, asked)),
    )


def _drawn(assessment: Assessment, asked: Asked) -> tuple[Drawn, str]:
    """The set; without clouds, and why, where the earlier design cannot be used."""
    assessment.wiring  # noqa: B018 - what is wrong with this design is told before what is wrong with the other
    try:
        return drawn(assessment, asked.system, asked.query, asked.folder), ""
    except GivenUp:
        raise
    except AnchorwattError as problem:
        if not asked.query.get("since"):
            raise
        return drawn(assessment, asked.system, {**asked.query, "since": ""}, asked.folder), str(problem)


def _choose(made: Drawn, sheet: str, asked: Asked, refused: str) -> str:
    boat = made.sheets[0].title.partition(": ")[2]
    names = [
        (one.name, f"{number}. {one.title.removesuffix(f': {boat}')}") for number, one in enumerate(made.sheets, 1)
    ]
    counted: dict[str, int] = {}
    for place, (name, words) in enumerate(names):
        counted[words.partition(". ")[2]] = again = counted.get(words.partition(". ")[2], 0) + 1
        names[place] = (name, words if again == 1 else f"{words}, {again}")
    files = [("", "nothing"), *((one, one) for one in others(asked.folder, asked.design))]
    told = f'<p class="problem">Not compared: {text(refused)}</p>' if refused else ""
    return (
        f'<div class="chosen">{_select("sheet", "Sheet", names, sheet)}'
        f"{_select('paper', 'Paper', [(one, one) for one in PAPERS], paper_of(asked.query))}"
        f"{_select('since', 'Clouds round what changed since', files, asked.query.get('since', ''))}</div>{told}"
    )


def _select(name: str, label: str, choices: list[tuple[str, str]], chosen: str) -> str:
    return (
        f'<div class="field"><label for="ask-{name}">{text(label)}</label>'
        f'<select id="ask-{name}" data-ask="{name}">{options(choices, chosen)}</select></div>'
    )


def _viewer(drawing: str, title: str, which: str) -> str:
    buttons = "".join(
        f'<button type="button" class="small" data-step="{key}" aria-label="{name}" title="{name}">{shown}</button>'
        for key, name, shown in STEPS
    )
    return (
        f'<div class="sheet"><div class="steps" role="group" aria-label="View of the sheet">{buttons}'
        '<a class="past" href="#save">Past the sheet</a></div>'
        f'<div class="viewer" tabindex="0" role="region" aria-label="{text(title)}" data-which="{text(which)}">'
        f'{drawing}</div><p class="about">{text(HOW)}</p></div>'
    )


def _save(sheet: str, asked: Asked) -> str:
    said = {name: asked.query[name] for name in ("paper", "since") if asked.query.get(name)}
    end = f"?{text(urlencode(said))}" if said else ""
    here = f"/design/{part(asked.design)}/sheets"
    ones = ", ".join(f'<a href="{here}/{part(sheet)}.{kind}{end}" download>{kind.upper()}</a>' for kind in FORMATS)
    whole = (
        f'<a href="{here}/drawings.pdf{end}" download>one PDF</a>, '
        f'<a href="{here}/drawings.zip{end}" download>ZIP of DXF</a>'
    )
    return (
        f'<div class="saved" id="save" tabindex="-1"><p class="save">Save this sheet as {ones}. All sheets as {whole}.'
        f'</p><p class="about">{text(TRUE_SCALE)}</p></div>'
    )


def _thing(assessment: Assessment, made: Drawn, asked: Asked) -> str:
    """What was pressed, and all that stands behind it; nothing where nothing was."""
    key = asked.query.get("about", "")
    circuits = {f"{CIRCUIT}{one.circuit.function}": one.tag for one in assessment.wiring.wiring.circuits}
    if key in circuits:
        body, name = _circuit(assessment, circuits[key], asked), circuits[key]
    elif key in made.told:
        body, name = _part(assessment, key, made.told[key], asked), made.told[key]
    else:
        return ""
    close = '<button type="button" class="small" data-do="ask" data-name="about" data-value="">Close</button>'
    return (
        f'<div class="thing tables" tabindex="-1" role="region" aria-label="{text(name)}" data-of="{text(key)}">'
        f"{close}{body}</div>"
    )


def _circuit(assessment: Assessment, tag: str, asked: Asked) -> str:
    made = assessment.wiring
    why = made.why(tag)
    ends = dict.fromkeys((why.wired.circuit.start, why.wired.circuit.end))
    key = f"wiring.circuits.{tag}"
    here = f"/design/{part(asked.design)}/circuits?circuit={part(tag)}#{field_id(key)}"
    return (
        f"{paper_html(wiring.why_screen(why, made.currency, asked.system))}"
        f'<p><a href="{here}">Type what you know of {text(tag)}</a></p>{_near("Between", {end: end for end in ends})}'
    )


def _part(assessment: Assessment, tag: str, told: str, asked: Asked) -> str:
    found = drawn_part.circuits_at(assessment, tag)
    circuits = {f"{CIRCUIT}{one.circuit.function}": f"{one.tag} {one.circuit.function}" for one in found}
    links = "".join(
        f'<li><a href="{where(asked.design, there)}">{text(words)}: {text(there)}</a></li>'
        for words, key in drawn_part.keys_of(assessment, tag).items()
        if (there := field_there(assessment.design, key)) is not None
    )
    listed = f"<ul>{links}</ul>" if links else ""
    return (
        f"{paper_html(drawn_part.part_screen(assessment, tag, told, asked.system))}"
        f"{listed}{_near('Its circuits', circuits)}"
    )


def _near(title: str, things: Mapping[str, str]) -> str:
    """Other things to look at, by their keys."""
    buttons = " ".join(
        f'<button type="button" class="small" data-do="ask" data-name="about" data-value="{text(key)}">'
        f"{text(words)}</button>"
        for key, words in things.items()
    )
    return f"<h3>{text(title)}</h3><p>{buttons}</p>" if things else ""


def _forms(design: Design, _: Asked) -> tuple[Form, ...]:
    return (Form("The title block", form(design, "drawings")),)


DRAWINGS = Question("drawings", "Drawings", _prepare, _forms)
