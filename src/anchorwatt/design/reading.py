"""From a file to a design: everything that is wrong with it is found in one go."""

from __future__ import annotations

from pathlib import Path

from pydantic import ValidationError

from anchorwatt.catalogue.overlay import laid_over
from anchorwatt.design.checked import problems_of_names, sections_of
from anchorwatt.design.design import Design
from anchorwatt.design.document import Document, load, scan
from anchorwatt.design.filling import fill, ledger_for
from anchorwatt.design.problems import as_problem, one_each
from anchorwatt.design.yard import overlay_of
from anchorwatt.errors import BadDesign, Problem


def read(path: str | Path) -> Design:
    """Read a design file.

    Parameters
    ----------
    path : the file

    Raises
    ------
    BadDesign
        The file cannot be used; its problems say where, what was found and what is allowed.
    """
    return designed(load(Path(path)))


def parse(text: str, file: str = "text") -> Design:
    """Read a design from a text; `file` is what messages call it."""
    return designed(scan(text, file))


def designed(document: Document) -> Design:
    """Turn a document into a design that has passed every check on names, areas, voltages and hours."""
    overlay, problems = overlay_of(document)
    if problems:  # what the design takes from those files would be told wrong
        raise BadDesign(_in_order(problems))
    problems = problems_of_names(document)
    with laid_over(overlay):
        try:
            design = Design.model_validate(document.data)
        except ValidationError as error:
            problems += [as_problem(one, document, Design) for one in one_each(error.errors(include_url=False))]
            sections = sections_of(document)
        else:
            design._document = document
            design._overlay = overlay
            sections = {name: getattr(design, name) for name in Design.model_fields}
        ledger = ledger_for(document, sections.get("boat"))
        specification = fill(sections, ledger)
    problems += ledger.problems
    if problems or specification is None:
        raise BadDesign(_in_order(problems))
    design._specification = specification
    return design


def _in_order(problems: list[Problem]) -> tuple[Problem, ...]:
    return tuple(sorted(dict.fromkeys(problems), key=lambda problem: (problem.file, problem.line or 0)))
