"""The workbench as a server: which address shows which page."""

from __future__ import annotations

import gc
import ipaddress
import re
import sys
from collections.abc import Callable
from pathlib import Path
from typing import Any, Literal

from anchorwatt.web.lean import leave_out, without

# Clients of NiceGUI's libraries, where this is only ever a server, and models as pydantic 1 had them.
with without("aiohttp", "requests", "pydantic.v1"):
    from nicegui import app, ui

from fastapi import Request, Response
from fastapi.responses import FileResponse, HTMLResponse, RedirectResponse
from starlette.middleware.trustedhost import TrustedHostMiddleware

from anchorwatt.errors import AnchorwattError, BadDesign, CannotWrite
from anchorwatt.units import System
from anchorwatt.web.content import Asked
from anchorwatt.web.desk import Desks
from anchorwatt.web.escaped import part
from anchorwatt.web.pages import not_found_html, refused_html, unreadable_page
from anchorwatt.web.shell import ASSETS, page_foot
from anchorwatt.web.start import start_page

UNITS_COOKIE = "units"
A_YEAR = 365 * 24 * 3600
"""s for which a browser may keep a file that never changes."""


def system_of(request: Request) -> System:
    """The units that this reader chose."""
    return "us" if request.cookies.get(UNITS_COOKIE) == "us" else "si"


def _anybody(_: Request) -> bool:
    return True


def build(
    folder: Path,
    may_change: Callable[[Request], bool] = _anybody,
    may_download: Callable[[Request], bool] = _anybody,
) -> Desks:
    """Register every page for the designs of a folder.

    Parameters
    ----------
    folder : that holds the design files
    may_change, may_download : whether whoever asks may do so
    """
    desks = Desks(folder)
    app.add_static_files(ASSETS, Path(__file__).parent / "assets")

    @ui.page("/", response_timeout=30)
    async def start(request: Request) -> None:
        await start_page(desks, system_of(request), locked=not may_change(request))
        page_foot(request)

    @ui.page("/compare", response_timeout=30)
    async def compare(request: Request) -> None:
        from anchorwatt.web.compare import compare_page

        await compare_page(desks, system_of(request), request.query_params.getlist("d"))
        page_foot(request)

    @app.get("/fonts/{name}")
    def font(name: str) -> Response:
        from anchorwatt.drawings.font import BOLD, REGULAR

        file = {one.name: one for one in (REGULAR, BOLD)}.get(name)
        if file is None:
            return HTMLResponse(not_found_html(""), status_code=404)
        return FileResponse(file, media_type="font/ttf", headers={"Cache-Control": f"public, max-age={A_YEAR}"})

    @app.get("/units/{system}")
    def units(system: Literal["si", "us"], back: str = "/") -> Response:
        response = RedirectResponse(back if _is_here(back) else "/", status_code=303)
        response.set_cookie(UNITS_COOKIE, system, max_age=10 * 365 * 24 * 3600, samesite="strict", httponly=True)
        return response

    @app.get("/design/{name}")
    def first(name: str) -> Response:
        from anchorwatt.web.questions import QUESTIONS

        return RedirectResponse(f"/design/{part(name)}/{QUESTIONS[0].path}", status_code=303)

    @app.get("/design/{name}/picture/{picture}")
    async def picture(request: Request, name: str, picture: str) -> Response:
        if not may_download(request):
            return HTMLResponse(refused_html(), status_code=403)
        from anchorwatt.web.saving import picture_file

        return await picture_file(desks, name, picture, system_of(request), request.query_params)

    @app.get("/design/{name}/tables/{tables}")
    async def tables(request: Request, name: str, tables: str) -> Response:
        if not may_download(request):
            return HTMLResponse(refused_html(), status_code=403)
        from anchorwatt.web.saving import tables_file

        return await tables_file(desks, name, tables)

    @app.get("/design/{name}/sheets/{sheet}")
    async def sheets(request: Request, name: str, sheet: str) -> Response:
        if not may_download(request):
            return HTMLResponse(refused_html(), status_code=403)
        from anchorwatt.web.saving import sheets_file

        return await sheets_file(desks, name, sheet, system_of(request), request.query_params)

    @app.get("/design/{name}/papers/{paper}")
    async def papers(request: Request, name: str, paper: str) -> Response:
        if not (paper.endswith(".svg") or may_download(request)):  # the pages are what the page of the papers shows
            return HTMLResponse(refused_html(), status_code=403)
        from anchorwatt.web.saving import papers_file

        return await papers_file(desks, name, paper, system_of(request), request.query_params)

    @ui.page("/design/{name}/{path}", response_timeout=30)
    async def design(request: Request, name: str, path: str) -> Any:
        from anchorwatt.web.frame import View
        from anchorwatt.web.questions import question

        asked_for = question(path)
        try:
            desk = await desks.desk(name)
        except BadDesign as problem:
            unreadable_page(name, problem)
            return None
        if desk is None or asked_for is None:
            return HTMLResponse(not_found_html(name), status_code=404)
        asked = Asked(name, system_of(request), dict(request.query_params), folder)
        View(desk, asked_for, asked, locked=not may_change(request)).build()
        page_foot(request)
        return None

    @app.exception_handler(404)
    async def missing(_: Request, __: Exception) -> Response:
        return HTMLResponse(not_found_html(""), status_code=404)

    return desks


def serve(folder: Path, host: str, port: int, origin: str | None = None) -> None:
    """Serve the workbench until it is stopped.

    Parameters
    ----------
    host : address to listen at; one that others reach demands accounts
    origin : what browsers have in their address line where a proxy stands before it; that demands accounts too

    Raises
    ------
    AnchorwattError
        The folder cannot be made, or others could reach the address and nobody has an account.
    """
    leave_out("pydantic.v1")
    app.on_startup(gc.enable)
    try:
        folder.mkdir(parents=True, exist_ok=True)
    except OSError as error:
        raise CannotWrite(folder, error.strerror or str(error)) from None
    if _own_machine(host) and origin is None:
        build(folder)
        # A page elsewhere whose name is made to point here is not let in.
        app.add_middleware(TrustedHostMiddleware, allowed_hosts=["localhost", "127.0.0.1", "[::1]", host])
    else:
        _behind_accounts(folder, origin)
    print(f"Anchorwatt: the workbench is at http://{_in_address(host)}:{port}/ until Ctrl-C", file=sys.stderr)  # noqa: T201
    ui.run(
        host=host,
        port=port,
        title="Anchorwatt",
        reload=False,
        show=False,
        show_welcome_message=False,
        language="en-GB",
        tailwind=False,
        favicon=Path(__file__).parent / "assets" / "anchor.svg",
    )


def _behind_accounts(folder: Path, origin: str | None) -> None:
    from anchorwatt.web.accounts import May, People, beside
    from anchorwatt.web.sign_in import SignIn, current_person

    def may(what: May) -> Callable[[Request], bool]:
        def asked(request: Request) -> bool:
            person = current_person(request)
            return person is not None and person.may(what)

        return asked

    people = People(beside(folder))
    if not people.all():
        raise AnchorwattError(
            "others could reach the workbench there, and nobody has an account yet; "
            f"begin with an owner: anchorwatt people add {folder} NAME --role owner"
        )
    build(folder, may(May.change_designs), may(May.download))
    app.add_middleware(SignIn, people=people, origin=origin)


def _own_machine(host: str) -> bool:
    """Whether only this machine reaches an address.

    Example
    -------
    >>> _own_machine("localhost"), _own_machine("127.0.0.1"), _own_machine("::1"), _own_machine("0.0.0.0")
    (True, True, True, False)
    """
    try:
        return ipaddress.ip_address(host).is_loopback
    except ValueError:
        return host == "localhost"


def _in_address(host: str) -> str:
    return f"[{host}]" if ":" in host else host


def _is_here(back: str) -> bool:
    """Whether an address is a page of this server, not one of another that looks like it."""
    return re.fullmatch(r"/(?![/\\])[^\s\\]*", back) is not None
