"""Two to four designs, or packages of them, side by side."""

from __future__ import annotations

import asyncio
from collections.abc import Sequence
from typing import TYPE_CHECKING

from nicegui import background_tasks, ui

from anchorwatt.errors import AnchorwattError
from anchorwatt.units import System
from anchorwatt.web.desk import Desks
from anchorwatt.web.escaped import part, text
from anchorwatt.web.shell import head, notice_html, picture_html, plain_top

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

LEAST, MOST = 2, 4
BETWEEN = " + "
"""Between the name of a design and that of its package."""


async def compare_page(desks: Desks, system: System, chosen: Sequence[str]) -> None:
    """Choose designs, and see how they differ."""
    head("Compare")
    plain_top(system)
    known = await _known(desks)
    chosen = [one for one in dict.fromkeys(chosen) if one in known][:MOST]
    ticks = "".join(
        f'<li><label><input type="checkbox" name="d" value="{text(one)}"{" checked" if one in chosen else ""}> '
        f"{text(one)}</label></li>"
        for one in known
    )
    with ui.element("div").classes("page plain").props('id="main" tabindex="-1"'):
        ui.html(
            "<h1>Compare</h1><p>Tick two to four designs, or packages of them. The first is what the others are "
            f'held against.</p><form method="get" action="/compare" class="ticks"><ul>{ticks}</ul>'
            '<button type="submit">Lay side by side</button></form>',
            sanitize=False,
        )
        shown = ui.html("", sanitize=False).props('role="status"')
    if not LEAST <= len(chosen) <= MOST:
        if chosen:
            shown.set_content('<p class="empty">One more is needed.</p>')
        return
    shown.set_content('<p class="empty">Working it out …</p>')

    async def work_out() -> None:
        try:
            content = await _side_by_side(desks, chosen, system)
        except AnchorwattError as problem:
            content = notice_html("These cannot be laid side by side.", problem)
        shown.set_content(content)

    background_tasks.create(work_out())


async def _known(desks: Desks) -> list[str]:
    """Designs that can be read, each followed by its packages."""
    known = []
    for name in desks.names():
        try:
            desk = await desks.desk(name)
        except AnchorwattError:
            continue
        if desk is not None:
            known.append(name)
            offer = desk.open.design.offer
            known += [f"{name}{BETWEEN}{package}" for package in (offer.packages if offer is not None else ())]
    return known


async def _side_by_side(desks: Desks, chosen: Sequence[str], system: System) -> str:
    named = [(one, await _assessment(desks, one)) for one in chosen]
    return await asyncio.to_thread(_html, named, system)


async def _assessment(desks: Desks, chosen: str) -> Assessment:
    name, _, package = chosen.partition(BETWEEN)
    desk = await desks.desk(name)
    if desk is None:
        raise AnchorwattError(f"there is no design “{name}” any more")
    if not package:
        return desk.assessment

    def make(assessment: Assessment) -> Assessment:
        from anchorwatt.assessment import assess
        from anchorwatt.sizing.packages import changed_by

        packages = {one.name: one for one in assessment.specification.offer.packages}
        if package not in packages:
            raise AnchorwattError(f"{name} has no package “{package}” any more")
        return assess(changed_by(assessment.design, packages[package]))

    return await desk.work_out(make)


def _html(named: list[tuple[str, Assessment]], system: System) -> str:
    from anchorwatt.assessment.side_by_side import side_by_side
    from anchorwatt.drawings.compare_picture import compare_picture
    from anchorwatt.papers.screens import figure

    found = side_by_side(named)
    heads = "".join(f'<th scope="col" class="figure">{_link(name)}</th>' for name in found.names)
    rows = []
    for one in found.answers:
        cells = [
            _cell("—" if answer is None else figure(answer.value, answer.dimension, system), differs)
            for answer, differs in zip(one.answers, one.differs, strict=True)
        ]
        rows.append(f'<tr><th scope="row">{text(one.question)}</th>{"".join(cells)}</tr>')
    typed = []
    for difference in found.differences:
        cells = [_cell(words or "—", words != difference.typed[0]) for words in difference.typed]
        typed.append(f'<tr><th scope="row">{text(difference.key)}</th>{"".join(cells)}</tr>')
    return (
        f"{picture_html(compare_picture(named, system))}"
        f"{_table('What decides the job', heads, rows)}"
        f"{_table('What the files say differently', heads, typed)}"
    )


def _table(title: str, heads: str, rows: Sequence[str]) -> str:
    body = "".join(rows)
    if not body:
        return f'<section class="tables"><h2>{text(title)}</h2><p class="empty">Nothing.</p></section>'
    return (
        f'<section class="tables"><h2>{text(title)}</h2><div class="wide" tabindex="0" role="region" '
        f'aria-label="{text(title)}"><table class="compared"><thead><tr><td></td>{heads}</tr></thead>'
        f"<tbody>{body}</tbody></table></div></section>"
    )


def _cell(words: str, differs: bool) -> str:
    if not differs:
        return f'<td class="figure">{text(words)}</td>'
    return f'<td class="figure differs"><strong>{text(words)}</strong><span class="sign" title="differs"> ≠</span></td>'


def _link(name: str) -> str:
    design, _, package = name.partition(BETWEEN)
    return f'<a href="/design/{part(design)}">{text(design)}</a>{text(BETWEEN + package) if package else ""}'
