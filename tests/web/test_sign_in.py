"""The guard: who passes, who does not, and for how long. Time is a number that the tests turn on."""

from __future__ import annotations

import html
import logging
import re
import warnings
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import quote

import httpx
import pytest
from argon2 import PasswordHasher
from starlette.applications import Starlette
from starlette.requests import Request
from starlette.responses import PlainTextResponse, Response
from starlette.routing import Route, WebSocketRoute
from starlette.websockets import WebSocket, WebSocketDisconnect

from anchorwatt.web.accounts import People, Role
from anchorwatt.web.sign_in import SignIn, current_person, form_token

with warnings.catch_warnings():
    # Starlette's test client asks for another library than the one that is installed with NiceGUI; both serve.
    warnings.filterwarnings("ignore", "Using `httpx` with `starlette.testclient`")
    from starlette.testclient import TestClient, WebSocketTestSession

CHEAP = PasswordHasher(time_cost=1, memory_cost=8, parallelism=1)
HERE = "http://yard.test"
GOOD = "seven brass cleats"
OTHER = "two teak ladders"
SOCKET = "ws://yard.test/_nicegui_ws/socket.io/?EIO=4&transport=websocket"
PAGE = {"accept": "text/html"}
ORIGIN = {"origin": HERE}
FOREIGN = [
    None,
    "null",
    "http://elsewhere.test",
    "https://yard.test",
    "http://yard.test:81",
    "http://yard.test.evil.test",
]


class Clock:
    """A clock that stands until it is turned on."""

    def __init__(self) -> None:
        self.now = 1_000_000.0

    def __call__(self) -> float:
        return self.now


def greet(request: Request) -> Response:
    person = current_person(request)
    return PlainTextResponse(f"hello {person.name if person else 'nobody'} {form_token(request)}")


async def echo(socket: WebSocket) -> None:
    await socket.accept()
    try:
        while True:
            await socket.send_text(await socket.receive_text())
    except WebSocketDisconnect:
        pass


class Yard:
    """A small workbench with its guard."""

    def __init__(self, folder: Path, origin: str | None = None) -> None:
        self.clock = Clock()
        self.people = People(folder, CHEAP)
        self.people.add("Mara", GOOD, Role.owner)
        routes = [
            WebSocketRoute("/_nicegui_ws/socket.io/", echo),
            Route("/{path:path}", greet, methods=["GET", "POST"]),
        ]
        self.guard = SignIn(Starlette(routes=routes), self.people, origin=origin, clock=self.clock)

    def browser(self, address: str = HERE, host: str = "192.0.2.1") -> TestClient:
        return TestClient(self.guard, base_url=address, follow_redirects=False, client=(host, 50_000))


@pytest.fixture
def yard(tmp_path: Path) -> Yard:
    return Yard(tmp_path)


@pytest.fixture
def browser(yard: Yard) -> TestClient:
    return yard.browser()


@pytest.fixture
def inside(yard: Yard) -> TestClient:
    """A browser in which Mara is signed in."""
    found = yard.browser()
    assert sign_in(found).status_code == 303
    return found


def hidden(page: str, name: str) -> str:
    (value,) = re.findall(rf'name="{name}" value="([^"]*)"', page)
    return html.unescape(value)


def sign_in(
    browser: TestClient, name: str = "Mara", password: str = GOOD, next_path: str = "/", **more: str
) -> httpx.Response:
    """Open the page and send its form as a browser does."""
    page = browser.get("/sign-in").text
    fields = {"token": hidden(page, "token"), "next": next_path, "name": name, "password": password} | more
    answer: httpx.Response = browser.post(
        "/sign-in", data=fields, headers={"origin": str(browser.base_url).rstrip("/")}
    )
    return answer


def session_of(browser: TestClient) -> str | None:
    found: str | None = browser.cookies.get("anchorwatt-session")
    return found


def said(answer: httpx.Response) -> str:
    """What the page says is wrong."""
    (words,) = re.findall(r'role="alert">(.*?)</p>', answer.text)
    return html.unescape(words)


# Who passes


@pytest.mark.parametrize(
    "path", ["/", "/designs", "/_nicegui/static/x.js", "/sign-in/x", "/sign-in/", "//sign-in", "/SIGN-IN"]
)
def test_a_stranger_gets_nothing(browser: TestClient, path: str) -> None:
    answer = browser.get(f"{HERE}{path}")
    assert answer.status_code == 401
    assert "hello" not in answer.text


@pytest.mark.parametrize(
    "path", ["/%73ign-in/../designs", "/sign-in/../designs", "/sign-in%2f..%2fdesigns", "/sign-in;x"]
)
def test_no_spelling_of_the_sign_in_page_leads_past(browser: TestClient, path: str) -> None:
    assert "hello" not in browser.get(path).text


@pytest.mark.parametrize("method", ["POST", "PUT", "DELETE", "OPTIONS", "TRACE"])
def test_no_method_leads_past(browser: TestClient, method: str) -> None:
    answer = browser.request(method, "/designs", headers=ORIGIN)
    assert answer.status_code == 401


def test_a_page_leads_to_sign_in_and_back(browser: TestClient) -> None:
    answer = browser.get("/designs?boat=a%20b", headers=PAGE)
    assert answer.status_code == 303
    page = browser.get(answer.headers["location"])
    assert hidden(page.text, "next").startswith("/designs?boat=a%")


def test_the_right_password_lets_in(browser: TestClient) -> None:
    answer = sign_in(browser, next_path="/designs")
    assert answer.headers["location"] == "/designs"
    assert browser.get("/designs").text.startswith("hello Mara")


def test_a_wrong_password_does_not(browser: TestClient) -> None:
    answer = sign_in(browser, password=OTHER)
    assert answer.status_code == 403
    assert browser.get("/").status_code == 401


def test_unknown_name_and_wrong_password_read_alike(yard: Yard) -> None:
    assert said(sign_in(yard.browser(), password=OTHER)) == said(sign_in(yard.browser(), name="Nobody"))


def test_an_invented_identifier_is_no_session(browser: TestClient) -> None:
    browser.cookies.set("anchorwatt-session", "A" * 43)
    assert browser.get("/").status_code == 401


def test_without_accounts_there_is_no_current_person() -> None:
    assert current_person(Request({"type": "http"})) is None


def test_a_broken_file_of_people_lets_nobody_in_and_shows_no_path(
    yard: Yard, inside: TestClient, caplog: pytest.LogCaptureFixture
) -> None:
    yard.people.path.write_text("{", "utf-8")
    answer = inside.get("/")
    assert answer.status_code == 503
    assert "people.json" not in answer.text
    assert str(yard.people.path) in caplog.text


# The cookie


def cookie_line(answer: httpx.Response) -> str:
    (line,) = [one for one in answer.headers.get_list("set-cookie") if "-session=" in one]
    return line.lower()


@pytest.mark.parametrize("attribute", ["httponly", "samesite=strict", "path=/", "max-age=43200"])
def test_the_cookie_is_out_of_reach_of_scripts_and_sites(browser: TestClient, attribute: str) -> None:
    assert attribute in [part.strip() for part in cookie_line(sign_in(browser)).split(";")]


def test_without_tls_the_cookie_is_not_lost(browser: TestClient) -> None:
    assert "secure" not in cookie_line(sign_in(browser))


def test_with_tls_the_cookie_goes_over_tls_only_and_to_this_host_only(yard: Yard) -> None:
    line = cookie_line(sign_in(yard.browser("https://yard.test")))
    assert "; secure" in line
    assert line.startswith("__host-")
    assert "domain" not in line


def test_behind_a_proxy_the_origin_that_was_given_holds(tmp_path: Path) -> None:
    behind = Yard(tmp_path, origin="https://designs.yard.test")
    browser = behind.browser()
    page = browser.get("/sign-in")
    (line,) = page.headers.get_list("set-cookie")
    assert "; Secure" in line
    proof = line.split(";")[0]
    fields = {"token": hidden(page.text, "token"), "name": "Mara", "password": GOOD}
    headers = {"origin": "https://designs.yard.test", "cookie": proof}
    assert browser.post("/sign-in", data=fields, headers=headers).status_code == 303
    assert browser.post("/sign-in", data=fields, headers=headers | ORIGIN).status_code == 403


def test_an_identifier_has_256_bits_and_is_another_each_time(yard: Yard) -> None:
    found = set()
    for _ in range(5):
        browser = yard.browser()
        sign_in(browser)
        found.add(session_of(browser))
    assert len(found) == 5
    assert all(one is not None and len(one) == 43 for one in found)


def test_an_identifier_planted_before_is_not_the_session_after(browser: TestClient) -> None:
    browser.cookies.set("anchorwatt-session", "planted", domain="yard.test")
    sign_in(browser)
    assert session_of(browser) != "planted"


def test_signing_in_again_ends_the_session_before(yard: Yard, inside: TestClient) -> None:
    before = session_of(inside) or ""
    sign_in(inside)
    thief = yard.browser()
    thief.cookies.set("anchorwatt-session", before)
    assert thief.get("/").status_code == 401


def test_what_is_behind_is_not_kept_by_the_browser(inside: TestClient) -> None:
    assert inside.get("/").headers["cache-control"] == "no-store"


# How long


def test_a_session_ends_when_unused(yard: Yard, inside: TestClient) -> None:
    yard.clock.now += 2 * 3600 + 1
    assert inside.get("/").status_code == 401


def test_use_keeps_a_session(yard: Yard, inside: TestClient) -> None:
    for _ in range(3):
        yard.clock.now += 3600
        assert inside.get("/").status_code == 200


def test_a_session_ends_after_half_a_day_however_used(yard: Yard, inside: TestClient) -> None:
    for _ in range(11):
        yard.clock.now += 3600
        assert inside.get("/").status_code == 200
    yard.clock.now += 3600
    assert inside.get("/").status_code == 401


def test_who_is_removed_is_out_at_once(yard: Yard, browser: TestClient) -> None:
    yard.people.add("Ivo", OTHER, Role.viewer)
    sign_in(browser, "Ivo", OTHER)
    yard.people.remove("Ivo")
    assert browser.get("/").status_code == 401


def test_a_new_password_ends_what_the_old_began(yard: Yard, inside: TestClient) -> None:
    yard.people.set_password("Mara", OTHER)
    assert inside.get("/").status_code == 401


def test_a_new_role_holds_at_once(yard: Yard) -> None:
    yard.people.add("Ivo", OTHER, Role.viewer)
    seen = []

    def note(request: Request) -> Response:
        person = current_person(request)
        seen.append(person.role if person else None)
        return PlainTextResponse("")

    guard = SignIn(Starlette(routes=[Route("/", note)]), yard.people, clock=yard.clock)
    browser = TestClient(guard, base_url=HERE, follow_redirects=False)
    sign_in(browser, "Ivo", OTHER)
    browser.get("/")
    yard.people.set_role("Ivo", Role.designer)
    browser.get("/")
    assert seen == [Role.viewer, Role.designer]


def test_a_table_of_sessions_does_not_grow_without_end(yard: Yard) -> None:
    for _ in range(25):
        sign_in(yard.browser())
    assert len(yard.guard.sessions) == 20


def test_signing_out_ends_the_session(yard: Yard, inside: TestClient) -> None:
    identifier = session_of(inside) or ""
    token = inside.get("/").text.split()[-1]
    answer = inside.post("/sign-out", data={"token": token}, headers=ORIGIN)
    assert (answer.status_code, answer.headers["location"]) == (303, "/sign-in")
    thief = yard.browser()
    thief.cookies.set("anchorwatt-session", identifier)
    assert thief.get("/").status_code == 401


def test_a_link_does_not_sign_out(inside: TestClient) -> None:
    assert inside.get("/sign-out").status_code == 405
    assert inside.get("/").status_code == 200


@pytest.mark.parametrize("token", ["", "0" * 64, "é"])
def test_signing_out_wants_the_token(inside: TestClient, token: str) -> None:
    assert inside.post("/sign-out", data={"token": token}, headers=ORIGIN).status_code == 403
    assert inside.get("/").status_code == 200


# Forms from elsewhere


@pytest.mark.parametrize("origin", FOREIGN)
def test_a_post_from_elsewhere_is_not_done(inside: TestClient, origin: str | None) -> None:
    answer = inside.post("/designs", headers={} if origin is None else {"origin": origin})
    assert answer.status_code == 403
    assert "hello" not in answer.text


def test_a_post_from_here_is_done(inside: TestClient) -> None:
    assert inside.post("/designs", headers=ORIGIN).status_code == 200


@pytest.mark.parametrize("token", ["", "0" * 64, "é"])
def test_signing_in_wants_the_token(browser: TestClient, token: str) -> None:
    answer = sign_in(browser, token=token)
    assert answer.status_code == 403
    assert session_of(browser) is None


def test_a_token_is_worth_nothing_in_another_browser(yard: Yard, browser: TestClient) -> None:
    token = hidden(yard.browser().get("/sign-in").text, "token")
    assert sign_in(browser, token=token).status_code == 403


def test_two_open_sign_in_pages_both_work(browser: TestClient) -> None:
    first = browser.get("/sign-in").text
    browser.get("/sign-in")
    fields = {"token": hidden(first, "token"), "name": "Mara", "password": GOOD}
    assert browser.post("/sign-in", data=fields, headers=ORIGIN).status_code == 303


def test_a_form_without_end_is_not_read(browser: TestClient) -> None:
    assert sign_in(browser, password="x" * 20_000).status_code == 413


@pytest.mark.parametrize("body", [b"\xff\xfe=%ff&name=%00", b"&".join(b"a=b" for _ in range(50)), b"", b"{"])
def test_a_form_that_is_none_is_refused(browser: TestClient, body: bytes) -> None:
    headers = ORIGIN | {"content-type": "application/x-www-form-urlencoded"}
    assert browser.post("/sign-in", content=body, headers=headers).status_code in (403, 413)


# Where to go next

AWAY = [
    "//elsewhere.test",
    "https://elsewhere.test",
    "/\\elsewhere.test",
    "\\\\elsewhere.test",
    "/\t/elsewhere.test",
    "/\n/elsewhere.test",
    " //elsewhere.test",
    "javascript:alert(1)",
    "///elsewhere.test",
    "elsewhere.test",
    "http:elsewhere.test",
    "/\r\nSet-Cookie: a=b",
    "",
    "/sign-out",
    "/sign-in?next=/",
    "/" + "x" * 3000,
]


@pytest.mark.parametrize("target", AWAY)
def test_signing_in_leads_nowhere_else(browser: TestClient, target: str) -> None:
    assert sign_in(browser, next_path=target).headers["location"] == "/"


@pytest.mark.parametrize("target", AWAY)
def test_the_form_carries_nowhere_else(browser: TestClient, target: str) -> None:
    assert hidden(browser.get(f"/sign-in?next={quote(target)}").text, "next") == "/"


@pytest.mark.parametrize(
    "target", ["/designs/a%20b?page=night&x=1#top", "/designs/m%C3%BCnster", "/a//b", "/@elsewhere.test"]
)
def test_a_path_of_the_workbench_is_kept(browser: TestClient, target: str) -> None:
    assert sign_in(browser, next_path=target).headers["location"] == target


# The page

HOSTILE = ['"><script>alert(1)</script>', "'\"&<>", "</title><b>", "x" * 200, "a\x00\x1bb", "mara\u202egpj"]


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_name_comes_back_as_text(browser: TestClient, name: str) -> None:
    answer = sign_in(browser, name=name)
    assert answer.status_code == 403
    assert answer.text.count("<") == browser.get("/sign-in").text.count("<") + len(["<p", "</p"])


@pytest.mark.parametrize("name", HOSTILE)
def test_a_hostile_name_is_one_plain_line_of_the_log(
    browser: TestClient, name: str, caplog: pytest.LogCaptureFixture
) -> None:
    with caplog.at_level(logging.WARNING, "anchorwatt"):
        sign_in(browser, name=name)
    (line,) = [record.getMessage() for record in caplog.records if record.name.startswith("anchorwatt")]
    assert line.isprintable()
    assert len(line) < 200


def test_a_password_never_comes_back(browser: TestClient, caplog: pytest.LogCaptureFixture) -> None:
    answer = sign_in(browser, password="wrong but mine")
    assert "wrong but mine" not in answer.text + caplog.text


def test_the_page_needs_no_script_and_no_second_file(browser: TestClient) -> None:
    page = browser.get("/sign-in").text
    assert not re.search(r"<script|<link|<img|\bon\w+=|src=|url\(", page)


def test_the_page_allows_only_its_own_style(browser: TestClient) -> None:
    import base64
    import hashlib

    page = browser.get("/sign-in")
    (style,) = re.findall(r"<style>(.*?)</style>", page.text, re.DOTALL)
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    policy = page.headers["content-security-policy"]
    assert f"style-src 'sha256-{digest}'" in policy
    assert "default-src 'none'" in policy


def test_the_page_cannot_be_framed(browser: TestClient) -> None:
    assert "frame-ancestors 'none'" in browser.get("/sign-in").headers["content-security-policy"]


def luminance(colour: str) -> float:
    """Relative luminance of an sRGB colour: WCAG 2.2, definition "relative luminance"."""
    parts = [int(colour[n : n + 2], 16) / 255 for n in (1, 3, 5)]
    r, g, b = (one / 12.92 if one <= 0.04045 else ((one + 0.055) / 1.055) ** 2.4 for one in parts)
    return 0.2126 * r + 0.7152 * g + 0.0722 * b


@pytest.mark.parametrize(
    ("selector", "behind", "least"),
    [
        ("body", None, 4.5),  # WCAG 2.2, 1.4.3: text
        ("p", "#ffffff", 4.5),
        ("p.problem", None, 4.5),
        ("button, a.button", None, 4.5),
    ],
)
def test_text_stands_out_from_what_is_behind_it(
    browser: TestClient, selector: str, behind: str | None, least: float
) -> None:
    style = browser.get("/sign-in").text
    (rule,) = re.findall(rf"^{re.escape(selector)} {{(.*?)}}", style, re.DOTALL | re.MULTILINE)
    ink = re.findall(r"(?<!-)\bcolor: (#\w{6})", rule)[0]
    ground = behind or re.findall(r"background: (#\w{6})", rule)[0]
    dark, light = sorted((luminance(ink), luminance(ground)))
    assert (light + 0.05) / (dark + 0.05) >= least


# How often


def wait_told(answer: httpx.Response) -> int:
    (seconds,) = re.findall(r"Wait (\d+) second", said(answer))
    assert answer.headers["retry-after"] == seconds
    return int(seconds)


def fail(yard: Yard, times: int, host: str = "192.0.2.1", name: str = "Mara") -> httpx.Response:
    """Fail so many times, waiting as told."""
    for _ in range(times):
        answer = sign_in(yard.browser(host=host), name, OTHER)
        if answer.status_code == 429:
            yard.clock.now += wait_told(answer)
            answer = sign_in(yard.browser(host=host), name, OTHER)
        assert answer.status_code == 403
    return answer


def test_a_few_slips_cost_nothing(yard: Yard, browser: TestClient) -> None:
    fail(yard, 3)
    assert sign_in(browser).status_code == 303


def test_after_too_many_even_the_right_password_waits(yard: Yard, browser: TestClient) -> None:
    fail(yard, 4)
    assert sign_in(browser).status_code == 429


def test_after_the_wait_the_right_password_lets_in(yard: Yard, browser: TestClient) -> None:
    fail(yard, 6)
    yard.clock.now += wait_told(sign_in(browser))
    assert sign_in(browser).status_code == 303


def test_the_wait_grows(yard: Yard, browser: TestClient) -> None:
    waits = []
    for failures in (4, 1, 1, 1):
        fail(yard, failures)
        waits.append(wait_told(sign_in(browser)))
    assert waits == sorted(set(waits))


def test_a_name_never_waits_longer_than_a_minute(yard: Yard) -> None:
    for number in range(30):
        yard.clock.now += 60
        fail(yard, 1, f"198.51.100.{number}")
    assert 0 < wait_told(sign_in(yard.browser(host="203.0.113.1"))) <= 60


def test_another_name_from_elsewhere_does_not_wait(yard: Yard) -> None:
    yard.people.add("Ivo", OTHER, Role.viewer)
    fail(yard, 5)
    assert sign_in(yard.browser(host="203.0.113.1"), "Ivo", OTHER).status_code == 303


def test_one_address_that_tries_many_names_waits(yard: Yard) -> None:
    for number in range(11):
        fail(yard, 1, name=f"name {number}")
    assert sign_in(yard.browser()).status_code == 429
    assert sign_in(yard.browser(host="203.0.113.1")).status_code == 303


def test_one_line_of_version_6_is_one_address(yard: Yard) -> None:
    for number in range(11):
        fail(yard, 1, f"2001:db8::{number + 1}", f"name {number}")
    assert sign_in(yard.browser(host="2001:db8::ffff")).status_code == 429


def test_an_account_of_ones_own_does_not_clear_the_address(yard: Yard) -> None:
    yard.people.add("Ivo", OTHER, Role.viewer)
    for number in range(10):
        fail(yard, 1, name=f"name {number}")
    assert sign_in(yard.browser(), "Ivo", OTHER).status_code == 303
    fail(yard, 1, name="one more")
    assert sign_in(yard.browser()).status_code == 429


def test_an_hour_of_quiet_clears(yard: Yard, browser: TestClient) -> None:
    fail(yard, 8)
    yard.clock.now += 3600
    assert sign_in(browser).status_code == 303


def test_a_clock_that_is_set_back_does_not_lengthen_the_wait(yard: Yard, browser: TestClient) -> None:
    fail(yard, 4)
    yard.clock.now -= 86_400
    assert wait_told(sign_in(browser)) == 1


def test_failures_do_not_fill_the_memory() -> None:
    from anchorwatt.web.attempts import Attempts

    attempts = Attempts(Clock(), most=100)
    for number in range(1000):
        attempts.begin(f"{number}" * 1000, f"198.51.{number % 250}.{number // 250}")
    assert len(attempts) == 200


def test_tries_at_the_same_moment_do_not_slip_through() -> None:
    from anchorwatt.web.attempts import Attempts

    attempts = Attempts(Clock())
    assert sum(attempts.begin("Mara", "192.0.2.1") == 0 for _ in range(50)) == 4


# Websockets


@pytest.fixture
def socket(inside: TestClient) -> Iterator[WebSocketTestSession]:
    with inside.websocket_connect(SOCKET, headers=ORIGIN) as opened:
        yield opened


def refused(browser: TestClient, headers: dict[str, str]) -> int:
    with pytest.raises(WebSocketDisconnect) as closed, browser.websocket_connect(SOCKET, headers=headers):
        pass
    return closed.value.code


def test_a_stranger_gets_no_websocket(browser: TestClient) -> None:
    assert refused(browser, ORIGIN) == 1008


@pytest.mark.parametrize("origin", FOREIGN)
def test_a_websocket_from_another_site_is_refused(inside: TestClient, origin: str | None) -> None:
    assert refused(inside, {} if origin is None else {"origin": origin}) == 1008


def test_a_stranger_gets_no_polling_either(browser: TestClient) -> None:
    assert browser.get("/_nicegui_ws/socket.io/?EIO=4&transport=polling").status_code == 401


def test_who_is_signed_in_gets_a_websocket(socket: WebSocketTestSession) -> None:
    socket.send_text("42hello")
    assert socket.receive_text() == "42hello"


def closed_after(socket: WebSocketTestSession, words: str) -> int:
    socket.send_text(words)
    with pytest.raises(WebSocketDisconnect) as closed:
        socket.receive_text()
    return closed.value.code


def test_signing_out_closes_what_is_open(inside: TestClient, socket: WebSocketTestSession) -> None:
    token = inside.get("/").text.split()[-1]
    inside.post("/sign-out", data={"token": token}, headers=ORIGIN)
    assert closed_after(socket, "42hello") == 1008


def test_a_new_password_closes_what_is_open(yard: Yard, socket: WebSocketTestSession) -> None:
    yard.people.set_password("Mara", OTHER)
    assert closed_after(socket, "42hello") == 1008


def test_a_broken_file_of_people_closes_what_is_open(yard: Yard, socket: WebSocketTestSession) -> None:
    yard.people.path.write_text("{", "utf-8")
    assert closed_after(socket, "42hello") == 1008


def test_work_on_a_websocket_keeps_the_session(yard: Yard, inside: TestClient, socket: WebSocketTestSession) -> None:
    yard.clock.now += 5000
    socket.send_text('42["event",{}]')
    socket.receive_text()
    yard.clock.now += 5000
    assert inside.get("/").status_code == 200


@pytest.mark.parametrize("talk", ["2", "3", "2probe", '42["ack",{"next":4}]'])
def test_an_open_page_that_nobody_uses_does_not(
    yard: Yard, inside: TestClient, socket: WebSocketTestSession, talk: str
) -> None:
    yard.clock.now += 5000
    socket.send_text(talk)
    socket.receive_text()
    yard.clock.now += 5000
    assert inside.get("/").status_code == 401


def test_nothing_is_told_to_who_signed_out(yard: Yard) -> None:
    """What the workbench sends by itself does not go out either, though the browser says nothing."""
    import anyio

    async def push(socket: WebSocket) -> None:
        await socket.accept()
        yard.people.set_password("Mara", OTHER)
        await anyio.sleep(0)
        await socket.send_text("42secret")

    guard = SignIn(Starlette(routes=[WebSocketRoute("/push", push)]), yard.people, clock=yard.clock)
    browser = TestClient(guard, base_url=HERE, follow_redirects=False)
    sign_in(browser)
    address = "ws://yard.test/push"
    with browser.websocket_connect(address, headers=ORIGIN) as opened, pytest.raises(WebSocketDisconnect) as closed:
        opened.receive_text()
    assert closed.value.code == 1008
