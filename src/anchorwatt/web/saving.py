"""Pictures and tables as files."""

from __future__ import annotations

import io
import zipfile
from collections.abc import Callable, Mapping
from typing import TYPE_CHECKING, TypeVar
from urllib.parse import quote

from fastapi import Response
from fastapi.responses import HTMLResponse, PlainTextResponse

from anchorwatt.errors import AnchorwattError
from anchorwatt.units import System
from anchorwatt.web.desk import Desk, Desks, Overtaken
from anchorwatt.web.pages import not_found_html
from anchorwatt.web.pictures import PICTURES

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

Made = TypeVar("Made")

PNG_WIDTH = 1800  # px, enough for a page of print


async def picture_file(desks: Desks, name: str, file: str, system: System, query: Mapping[str, str]) -> Response:
    """A picture as SVG or PNG."""
    picture, _, ending = file.rpartition(".")
    if picture not in PICTURES or ending not in ("svg", "png"):
        return HTMLResponse(not_found_html(""), status_code=404)

    def draw(assessment: Assessment) -> bytes:
        drawn = PICTURES[picture](assessment, system, query)
        if ending == "svg":
            return drawn.encode("utf-8")
        from anchorwatt.drawings.as_png import as_png

        return as_png(drawn, PNG_WIDTH)

    return await _made(desks, name, draw, file, {"svg": "image/svg+xml", "png": "image/png"}[ending])


async def tables_file(desks: Desks, name: str, file: str) -> Response:
    """Tables as CSV, several of them packed together, or as a workbook."""
    asked, _, ending = file.rpartition(".")
    names = asked.split("+")
    if ending not in ("csv", "xlsx") or len(names) > 12:
        return HTMLResponse(not_found_html(""), status_code=404)

    def write(assessment: Assessment) -> bytes:
        from anchorwatt.papers.as_csv import csv_text, sheet, tables
        from anchorwatt.papers.as_xlsx import workbook

        found = {key: content for one in names for key, content in tables(assessment, one).items()}
        if ending == "xlsx":
            return workbook(assessment.design.name, {key[:31]: sheet(content) for key, content in found.items()})
        texts = {key: csv_text(content) for key, content in found.items()}
        if len(texts) == 1:
            return next(iter(texts.values())).encode("utf-8")
        packed = io.BytesIO()
        with zipfile.ZipFile(packed, "w", zipfile.ZIP_DEFLATED) as archive:
            for key, words in texts.items():
                archive.writestr(zipfile.ZipInfo(f"{key}.csv", (2000, 1, 1, 0, 0, 0)), words)
        return packed.getvalue()

    made = await _made(desks, name, write, file, "application/octet-stream")
    if made.status_code == 200 and bytes(made.body[:2]) == b"PK" and ending == "csv":
        made.headers["Content-Disposition"] = made.headers["Content-Disposition"].replace(".csv", ".zip")
    return made


async def sheets_file(desks: Desks, name: str, file: str, system: System, query: Mapping[str, str]) -> Response:
    """A sheet of the yard's drawings, or all of them."""
    from anchorwatt.web.sheets import FORMATS, SET, drawn, written

    kind = SET.get(file) or FORMATS.get(file.rpartition(".")[2])
    if kind is None:
        return HTMLResponse(not_found_html(""), status_code=404)
    return await _made(
        desks, name, lambda assessment: written(drawn(assessment, system, query, desks.folder), file), file, kind
    )


async def papers_file(desks: Desks, name: str, file: str, system: System, query: Mapping[str, str]) -> Response:
    """A paper of the job, its workbook, or one of its pages as a picture."""
    from anchorwatt.web.printed_papers import FORMATS, HARMLESS, written

    ending = file.rpartition(".")[2]
    if ending not in FORMATS:
        return HTMLResponse(not_found_html(""), status_code=404)

    def write(assessment: Assessment) -> bytes:
        return written(assessment, file, query, system, desks.folder)

    made = await _made(desks, name, write, file, FORMATS[ending])
    if ending == "svg" and made.status_code == 200:
        made.headers["Content-Disposition"] = "inline"
        made.headers["Content-Security-Policy"] = HARMLESS
    return made


async def _of_latest(desk: Desk, make: Callable[[Assessment], bytes]) -> bytes:
    """A file of the design as it is when the file is done."""
    while True:
        try:
            return await desk.work_out(make)
        except Overtaken:
            continue


async def _made(desks: Desks, name: str, make: Callable[[Assessment], bytes], file: str, kind: str) -> Response:
    try:
        desk = await desks.desk(name)
        if desk is None:
            return HTMLResponse(not_found_html(name), status_code=404)
        content = await _of_latest(desk, make)
    except KeyError:
        return HTMLResponse(not_found_html(""), status_code=404)
    except AnchorwattError as problem:
        return PlainTextResponse(f"{problem}\n", status_code=409)
    shown = f"attachment; filename*=UTF-8''{quote(f'{name}-{file}', safe='')}"
    return Response(content, media_type=kind, headers={"Content-Disposition": shown})
