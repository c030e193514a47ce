"""A value as it is written into a design file, on one line."""

from __future__ import annotations

import json
import re
from typing import Any

from anchorwatt.design.document import scan
from anchorwatt.errors import BadDesign

# What may stand without quotation marks inside braces too.
_PLAIN = re.compile(r"[A-Za-z0-9°½¼¾µΩ.+-](?:[^\n,\[\]{}#:&*!|>'\"%@`]|%|:(?=[0-9])|'(?=[a-z]))*")


def written(value: Any) -> str:
    """A value on one line, as it may stand anywhere in the file.

    Example
    -------
    >>> print(written({"like": "lithium 12.8 V 200 Ah", "mass": "21 kg"}))
    {like: lithium 12.8 V 200 Ah, mass: 21 kg}
    """
    if isinstance(value, dict):
        return "{" + ", ".join(f"{written(key)}: {written(one)}" for key, one in value.items()) + "}"
    if isinstance(value, list):
        return "[" + ", ".join(written(one) for one in value) + "]"
    if isinstance(value, bool) or value is None:
        return json.dumps(value)
    if isinstance(value, (int, float)):
        return repr(value)
    text = str(value)
    if _PLAIN.fullmatch(text) and text == text.strip() and _reads_back(text):
        return text
    return json.dumps(text, ensure_ascii=False)


def _reads_back(text: str) -> bool:
    try:  # with the end of the line that a file has there, else the quick parser leaves it to the careful one
        return bool(scan(f"a: {text}\n").data["a"] == text)
    except BadDesign:  # such as “- a”, a list to the parser
        return False


def read_back(text: str) -> Any:
    """The value that was written.

    Example
    -------
    >>> read_back(written(["21 kg", 3, None]))
    ['21 kg', 3, None]
    """
    return scan(f"a: {text}\n").data["a"]
