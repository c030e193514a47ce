"""The page on which one signs in: plain HTML with its style inside, so that it needs no script and no second file."""

from __future__ import annotations

import base64
import hashlib

from anchorwatt.web.accounts import LONGEST_NAME, LONGEST_PASSWORD
from anchorwatt.web.escaped import text

SIGN_IN = "/sign-in"
SIGN_OUT = "/sign-out"

_STYLE = """
:root { color-scheme: light; }
* { box-sizing: border-box; }
body { margin: 0; min-height: 100vh; display: grid; place-items: center; background: #f2f4f6; color: #1f1f1f;
  font: 1rem/1.5 system-ui, sans-serif; overflow-wrap: anywhere; }
main { width: min(24rem, 100vw); padding: 2rem; background: #ffffff; border-top: 0.25rem solid #0072b2; }
h1 { margin: 0 0 0.25rem; font-size: 1.5rem; line-height: 1.2; }
p { margin: 0 0 1rem; color: #555555; }
p.problem { padding: 0.5rem 0.75rem; border-left: 0.25rem solid #d55e00; background: #fdf1ea; color: #1f1f1f; }
label { display: block; margin: 0 0 1rem; font-weight: 600; }
input { display: block; width: 100%; margin-top: 0.25rem; padding: 0.5rem; font: inherit; color: inherit;
  background: #ffffff; border: 1px solid #707070; border-radius: 0.25rem; }
button, a.button { display: block; width: 100%; padding: 0.625rem; font: inherit; font-weight: 600; text-align: center;
  text-decoration: none; color: #ffffff; background: #0072b2; border: 0; border-radius: 0.25rem; cursor: pointer; }
:focus-visible { outline: 3px solid #1f1f1f; outline-offset: 2px; }
"""
_STYLE_HASH = base64.b64encode(hashlib.sha256(_STYLE.encode()).digest()).decode()

HEADERS = {
    "Cache-Control": "no-store",
    "Content-Security-Policy": (
        f"default-src 'none'; style-src 'sha256-{_STYLE_HASH}'; form-action 'self'; frame-ancestors 'none'; "
        "base-uri 'none'"
    ),
    # Not "no-referrer", with which a browser sends a form with the origin "null" (Fetch standard, from memory).
    "Referrer-Policy": "same-origin",
    "X-Content-Type-Options": "nosniff",
}
"""What a browser is told beside each page of this module."""


def sign_in_page(token: str, next_path: str, problem: str = "", name: str = "") -> str:
    """The form. `token` proves that the form came from here; `problem` is said above it, `name` is filled in."""
    said = f'<p class="problem" role="alert">{text(problem)}</p>' if problem else ""
    return _page(
        "Sign in",
        "<h1>Anchorwatt</h1><p>Sign in to see the designs of this yard.</p>"
        f'{said}<form method="post" action="{SIGN_IN}">'
        f'<input type="hidden" name="token" value="{text(token)}">'
        f'<input type="hidden" name="next" value="{text(next_path)}">'
        f'<label>Name<input name="name" value="{text(name)}" autocomplete="username" dir="auto" required '
        f'maxlength="{LONGEST_NAME}" autocapitalize="none" spellcheck="false"></label>'
        '<label>Password<input name="password" type="password" autocomplete="current-password" required '
        f'maxlength="{LONGEST_PASSWORD}"></label>'
        "<button>Sign in</button></form>",
    )


def refusal_page(title: str, words: str) -> str:
    """A page that says why something was not done, with the way to the sign-in page."""
    return _page(
        title, f'<h1>{text(title)}</h1><p>{text(words)}</p><a class="button" href="{SIGN_IN}">To the sign-in page</a>'
    )


def sign_out_form(token: str) -> str:
    """A button that signs out, for the pages of the workbench; `token` is `sign_in.form_token(request)`."""
    return (
        f'<form method="post" action="{SIGN_OUT}"><input type="hidden" name="token" value="{text(token)}">'
        "<button>Sign out</button></form>"
    )


def _page(title: str, body: str) -> str:
    return (
        '<!doctype html><html lang="en"><head><meta charset="utf-8">'
        '<meta name="viewport" content="width=device-width, initial-scale=1">'
        f"<title>{text(title)} · Anchorwatt</title><style>{_STYLE}</style></head>"
        f"<body><main>{body}</main></body></html>"
    )
