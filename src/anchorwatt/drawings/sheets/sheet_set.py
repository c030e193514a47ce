"""The whole set of drawings of a design, numbered through, and each of its subjects by name."""

from __future__ import annotations

from collections.abc import Callable, Collection
from dataclasses import dataclass
from typing import TYPE_CHECKING

from anchorwatt.drawings.sheet import Sheet
from anchorwatt.drawings.sheets.arrangement import arrangement_sheets
from anchorwatt.drawings.sheets.body import Body
from anchorwatt.drawings.sheets.cable_routes import cable_route_sheets
from anchorwatt.drawings.sheets.condensate import condensate_sheets
from anchorwatt.drawings.sheets.duct_routes import duct_route_sheets
from anchorwatt.drawings.sheets.ducts import duct_sheets
from anchorwatt.drawings.sheets.frame import framed, titles
from anchorwatt.drawings.sheets.labels import label_sheets
from anchorwatt.drawings.sheets.one_lines import ac_sheets, bonding_sheets, control_sheets, dc_sheets
from anchorwatt.drawings.sheets.panels import panel_sheets
from anchorwatt.drawings.sheets.paper import PAPERS, Paper, PaperName
from anchorwatt.drawings.sheets.refrigerant import refrigerant_sheets
from anchorwatt.drawings.sheets.revised import revised
from anchorwatt.drawings.sheets.seawater import seawater_sheets
from anchorwatt.drawings.sheets.wiring import wiring_sheets
from anchorwatt.units import System

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

Layout = Callable[["Assessment", Paper, System], tuple[Body, ...]]


@dataclass(frozen=True)
class Subject:
    """One subject of the set: its sheets are named after it."""

    name: str
    title: str
    layout: Layout


SUBJECTS: tuple[Subject, ...] = (
    Subject("dc-one-line", "Direct current, one-line diagram", dc_sheets),
    Subject("ac-one-line", "Alternating current, one-line diagram", ac_sheets),
    Subject("control", "Control and network", control_sheets),
    Subject("bonding", "Bonding", bonding_sheets),
    Subject("wiring", "Wiring, terminal by terminal", wiring_sheets),
    Subject("seawater", "Seawater", seawater_sheets),
    Subject("refrigerant", "Refrigerant", refrigerant_sheets),
    Subject("ducts", "Ducts and grilles", duct_sheets),
    Subject("condensate", "Condensate", condensate_sheets),
    Subject("arrangement", "Arrangement", arrangement_sheets),
    Subject("cable-routes", "Cable routes", cable_route_sheets),
    Subject("ducts-and-pipes", "Ducts and pipes aboard", duct_route_sheets),
    Subject("panels", "Panels", panel_sheets),
    Subject("labels", "Labels", label_sheets),
)
"""In the order of the sheets."""

NAMES = tuple(subject.name for subject in SUBJECTS)


def sheet_set(
    assessment: Assessment,
    paper: PaperName,
    system: System,
    *,
    only: Collection[str] = (),
    since: Assessment | None = None,
) -> tuple[Sheet, ...]:
    """Draw the set, or some subjects of it; sheets keep the numbers that they have in the whole set.

    Parameters
    ----------
    only : names of subjects, all where it is empty
    since : an earlier revision; what differs from it gets a cloud

    Raises
    ------
    KeyError
        no such subject.
    """
    for name in only:
        if name not in NAMES:
            raise KeyError(name)
    size = PAPERS[paper]
    bodies: list[Body] = []
    wanted: set[str] = set()
    for subject in SUBJECTS:
        drawn = subject.layout(assessment, size, system)
        if since is not None:
            drawn = revised(drawn, subject.layout(since, size, system), _called(since))
        bodies += drawn
        if not only or subject.name in only:
            wanted |= {body.name for body in drawn}
    sheets = framed(bodies, titles(assessment.design), size)
    return tuple(sheet for sheet in sheets if sheet.name in wanted)


def _called(since: Assessment) -> str:
    said = titles(since.design)
    if said.revision == "–":
        return "the earlier design file"
    return f"revision {said.revision}" + ("" if said.date == "–" else f" of {said.date}")
