"""Nobody past without a session: the sign-in page, the session cookie, and the guard before the whole workbench.

`SignIn` is ASGI middleware and must be the outermost. It answers the sign-in page itself, so no request of a stranger,
page or websocket, reaches what is behind it. Sessions and counts of failures are in this process: a restart signs
everybody out, and the workbench runs as one process.
"""

from __future__ import annotations

import hashlib
import hmac
import logging
import secrets
import time
from collections.abc import Callable
from urllib.parse import parse_qs, quote, urlsplit

import anyio
import anyio.to_thread
from starlette.datastructures import MutableHeaders
from starlette.requests import HTTPConnection, Request
from starlette.responses import HTMLResponse, PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Message, Receive, Scope, Send

from anchorwatt.web.accounts import BadPeople, People, Person, shown
from anchorwatt.web.attempts import Attempts
from anchorwatt.web.sessions import ABSOLUTE, IDLE, Sessions
from anchorwatt.web.sign_in_page import HEADERS, SIGN_IN, SIGN_OUT, refusal_page, sign_in_page

LARGEST_FORM = 16_384
"""Bytes of a form that are read; a name, a password and a path need far less."""
HASHED_AT_ONCE = 2
"""Passwords that are verified at the same time: each takes 64 MiB of memory while it is."""
FORM_LASTS = 3600
"""s for which a browser keeps the cookie that belongs to an open sign-in page."""
READS = frozenset({"GET", "HEAD", "OPTIONS"})

_PERSON = "anchorwatt.person"
_TOKEN = "anchorwatt.form_token"  # noqa: S105  # a key of the scope
_log = logging.getLogger(__name__)


def current_person(request: HTTPConnection) -> Person | None:
    """Who asks; None where the workbench runs without accounts."""
    person = request.scope.get(_PERSON)
    return person if isinstance(person, Person) else None


def form_token(request: HTTPConnection) -> str:
    """What a form must send as `token` to sign out; empty where the workbench runs without accounts."""
    return str(request.scope.get(_TOKEN, ""))


def local_path(asked: str) -> str:
    """Where to go after signing in: a path of this workbench, else its first page.

    Example
    -------
    >>> local_path("/designs/one?page=night"), local_path("//example.com"), local_path("https://example.com")
    ('/designs/one?page=night', '/', '/')
    """
    # Browsers read a backslash as a slash and drop tabs and line ends, so "/\t/example.com" would lead away.
    plain = asked.isprintable() and "\\" not in asked and len(asked) <= 2000
    if not plain or not asked.startswith("/") or asked.startswith("//"):
        return "/"
    try:
        parts = urlsplit(asked)
    except ValueError:
        return "/"
    if parts.scheme or parts.netloc or parts.path in (SIGN_IN, SIGN_OUT):
        return "/"
    return quote(asked, safe="/?&=%#:@!$'()*+,;~-._")


class SignIn:
    """Lets nobody past without a session.

    Parameters
    ----------
    app : what is behind
    people : who may sign in
    origin : what browsers have in their address line, e.g. `https://designs.yard.example`; give it where a proxy
        stands before the workbench. Left out, it is what each request says of itself.
    clock : s, one that goes on while the machine sleeps
    idle, absolute : s, how long a session lasts unused, and at most
    """

    def __init__(
        self,
        app: ASGIApp,
        people: People,
        *,
        origin: str | None = None,
        clock: Callable[[], float] = time.time,
        idle: float = IDLE,
        absolute: float = ABSOLUTE,
    ) -> None:
        self._app, self._people = app, people
        self._origin = None if origin is None else _origin(origin)
        self.sessions = Sessions(clock, idle, absolute)
        self.attempts = Attempts(clock)
        self._key = secrets.token_bytes(32)
        self._hashing = anyio.CapacityLimiter(HASHED_AT_ONCE)

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Answer, or pass on what may pass."""
        if scope["type"] == "lifespan":
            await self._app(scope, receive, send)
        elif scope["type"] == "websocket":
            await self._websocket(scope, receive, send)
        elif scope["type"] == "http":
            await self._http(scope, receive, send)

    async def _http(self, scope: Scope, receive: Receive, send: Send) -> None:
        request = Request(scope, receive)
        try:
            answer = await self._answer(request)
        except BadPeople as problem:
            _log.error("%s", problem)  # the message says all; a traceback would only fill the log
            words = "The list of people cannot be read. Whoever runs this workbench finds the reason in its log."
            answer = _html(refusal_page("Out of order", words), 503)
        if answer is not None:
            await answer(scope, receive, send)
            return

        async def kept_private(message: Message) -> None:
            if message["type"] == "http.response.start":
                MutableHeaders(scope=message).setdefault("Cache-Control", "no-store")
            await send(message)

        await self._app(scope, receive, kept_private)

    async def _answer(self, request: Request) -> Response | None:
        """The guard's own answer; None lets the request pass, with its person in the scope."""
        if request.method not in READS and not self._same_origin(request):
            return _html(refusal_page("Not done", "The request came from another site, so it was not done."), 403)
        identifier = self._cookie(request, "session")
        person = self._person(identifier)
        path = request.scope["path"]
        if path == SIGN_IN:
            if request.method == "POST":
                return await self._try(request, identifier)
            return self._form(request, request.query_params.get("next", "/"))
        if person is None:
            return _stranger(request)
        if path == SIGN_OUT:
            return await self._sign_out(request, identifier)
        request.scope[_PERSON], request.scope[_TOKEN] = person, self._token(identifier)
        return None

    async def _try(self, request: Request, identifier: str) -> Response:
        """Sign in by a form that was sent."""
        form = await _sent(request)
        if form is None:
            return self._form(request, "/", "That was too much for a name and a password.", 413)
        next_path, name = form.get("next", "/"), form.get("name", "")
        proof = self._cookie(request, "form")
        if not proof or not _same(form.get("token", ""), self._token(proof)):
            words = "This page was open too long, or the browser keeps no cookies. Please sign in once more."
            return self._form(request, next_path, words, 403, name)
        address = request.client.host if request.client else ""
        wait = self.attempts.begin(name, address)
        if wait:
            seconds = "1 second" if wait == 1 else f"{wait} seconds"
            words = f"There were too many wrong tries. Wait {seconds}, then try again."
            return self._form(request, next_path, words, 429, name, {"Retry-After": str(wait)})
        password = form.get("password", "")
        person = await anyio.to_thread.run_sync(self._people.verify, name, password, limiter=self._hashing)
        if person is None:
            _log.warning("%s could not sign in from %s", shown(name), shown(address))
            return self._form(request, next_path, "The name or the password is not right.", 403, name)
        self.attempts.succeeded(name, address)
        # A new identifier always, so that none which somebody planted before can become a session.
        self.sessions.end(identifier)
        answer = RedirectResponse(local_path(next_path), 303, headers={"Cache-Control": "no-store"})
        new = self.sessions.begin(person.name, person.password_hash)
        self._set_cookie(request, answer, "session", new, int(self.sessions.absolute))
        self._set_cookie(request, answer, "form", "", 0)
        return answer

    async def _sign_out(self, request: Request, identifier: str) -> Response:
        if request.method != "POST":
            return PlainTextResponse("Sign out by the button.", 405, headers={"Allow": "POST"})
        form = await _sent(request)
        if form is None or not _same(form.get("token", ""), self._token(identifier)):
            return _html(refusal_page("Not done", "Reload the page, then sign out once more."), 403)
        self.sessions.end(identifier)
        answer = RedirectResponse(SIGN_IN, 303, headers={"Cache-Control": "no-store"})
        self._set_cookie(request, answer, "session", "", 0)
        return answer

    def _form(
        self,
        request: Request,
        next_path: str,
        problem: str = "",
        status: int = 200,
        name: str = "",
        headers: dict[str, str] | None = None,
    ) -> Response:
        # The same proof as long as the browser has one, so that the page may be open twice.
        proof = self._cookie(request, "form") or secrets.token_urlsafe(32)
        content = sign_in_page(self._token(proof), local_path(next_path), problem, name)
        answer = _html(content, status, headers)
        self._set_cookie(request, answer, "form", proof, FORM_LASTS)
        return answer

    async def _websocket(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Pass a websocket of a session on, for as long as the session lives."""
        connection = HTTPConnection(scope)
        identifier = self._cookie(connection, "session")
        person = self._safely(identifier) if self._same_origin(connection) else None
        if person is None:
            if (await receive())["type"] == "websocket.connect":
                await send({"type": "websocket.close", "code": 1008, "reason": "sign in first"})
            return
        scope[_PERSON], scope[_TOKEN] = person, self._token(identifier)
        ended = False

        async def end() -> None:
            nonlocal ended
            ended = True
            await send({"type": "websocket.close", "code": 1008, "reason": "signed out"})

        async def received() -> Message:
            message = await receive()
            if message["type"] == "websocket.receive" and not ended:
                if self._safely(identifier, used=_by_hand(message)) is not None:
                    return message
                await end()
            if message["type"] == "websocket.receive":
                return {"type": "websocket.disconnect", "code": 1008, "reason": "signed out"}
            return message

        async def sent(message: Message) -> None:
            if ended:
                return
            if self._safely(identifier, used=False) is not None or message["type"] == "websocket.close":
                await send(message)
            else:
                await end()

        await self._app(scope, received, sent)

    def _person(self, identifier: str, used: bool = True) -> Person | None:
        """Whose session it is. It ends with the account, and with the password that it was begun with."""
        session = self.sessions.find(identifier, used)
        if session is None:
            return None
        person = self._people.person(session.name)
        if person is None or not _same(person.password_hash, session.password_hash):
            self.sessions.end(identifier)
            return None
        return person

    def _safely(self, identifier: str, used: bool = True) -> Person | None:
        """The same where no page can tell a problem: nobody passes."""
        try:
            return self._person(identifier, used)
        except BadPeople as problem:
            _log.error("%s", problem)
            return None

    def _same_origin(self, connection: HTTPConnection) -> bool:
        found = connection.headers.get("origin", "")
        return bool(found) and _origin(found) == self._own_origin(connection)

    def _own_origin(self, connection: HTTPConnection) -> str:
        if self._origin is not None:
            return self._origin
        scheme = {"ws": "http", "wss": "https"}.get(connection.scope["scheme"], connection.scope["scheme"])
        return _origin(f"{scheme}://{connection.headers.get('host', '')}")

    def _cookie(self, connection: HTTPConnection, what: str) -> str:
        return connection.cookies.get(self._cookie_name(connection, what), "")

    def _cookie_name(self, connection: HTTPConnection, what: str) -> str:
        # With this prefix a browser takes the cookie from this very host only, and over TLS only (RFC 6265bis).
        return f"__Host-anchorwatt-{what}" if self._secure(connection) else f"anchorwatt-{what}"

    def _secure(self, connection: HTTPConnection) -> bool:
        return self._own_origin(connection).startswith("https://")

    def _set_cookie(self, request: Request, answer: Response, what: str, value: str, lasts: int) -> None:
        answer.set_cookie(
            self._cookie_name(request, what),
            value,
            max_age=lasts,
            path="/",
            secure=self._secure(request),
            httponly=True,
            samesite="strict",
        )

    def _token(self, of: str) -> str:
        return hmac.new(self._key, of.encode("utf-8", "surrogatepass"), hashlib.sha256).hexdigest()


def _origin(address: str) -> str:
    """Scheme, host and port in one spelling; empty when it is no address.

    Example
    -------
    >>> _origin("HTTPS://Yard.Example:443/"), _origin("http://localhost:8080"), _origin("null")
    ('https://yard.example', 'http://localhost:8080', '')
    """
    try:
        parts = urlsplit(address)
        port = parts.port
    except ValueError:
        return ""
    if parts.scheme not in ("http", "https") or not parts.hostname:
        return ""
    host = f"[{parts.hostname}]" if ":" in parts.hostname else parts.hostname
    usual = {"http": 80, "https": 443}[parts.scheme]
    return f"{parts.scheme}://{host}" if port in (None, usual) else f"{parts.scheme}://{host}:{port}"


def _stranger(request: Request) -> Response:
    if request.method in ("GET", "HEAD") and "text/html" in request.headers.get("accept", ""):
        path = request.scope["path"]
        query = request.scope.get("query_string", b"").decode("latin-1")
        back = local_path(f"{path}?{query}" if query else path)
        return RedirectResponse(f"{SIGN_IN}?next={quote(back, safe='')}", 303, headers={"Cache-Control": "no-store"})
    return PlainTextResponse("Sign in first.", 401, headers={"Cache-Control": "no-store"})


async def _sent(request: Request) -> dict[str, str] | None:
    """The fields of a form; None when it is too large."""
    body = b""
    async for chunk in request.stream():
        body += chunk
        if len(body) > LARGEST_FORM:
            return None
    try:
        fields = parse_qs(body.decode("utf-8", "replace"), keep_blank_values=True, max_num_fields=20, errors="replace")
    except ValueError:
        return None
    return {key: values[0] for key, values in fields.items()}


def _html(content: str, status: int = 200, headers: dict[str, str] | None = None) -> Response:
    return HTMLResponse(content, status, headers=HEADERS | (headers or {}))


def _same(one: str, other: str) -> bool:
    return hmac.compare_digest(one.encode("utf-8", "surrogatepass"), other.encode("utf-8", "surrogatepass"))


def _by_hand(message: Message) -> bool:
    """Whether a message of a socket.io connection comes from somebody's doing, not from the connection's own talk.

    Source
    ------
    Engine.IO protocol 4: a packet begins with its type, 4 for a message, others for opening, pings and the like. An
    event "ack" is how a NiceGUI page says that it got what it was sent.
    """
    words = message.get("text") or ""
    if not words:
        return message.get("bytes") is not None
    return words.startswith("4") and not words.startswith('42["ack"')
