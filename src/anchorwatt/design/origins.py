"""Where a figure of a design comes from."""

from __future__ import annotations

from typing import Any, Literal

from pydantic import BaseModel

from anchorwatt.design.design import Design
from anchorwatt.design.document import Key, child
from anchorwatt.design.editing import key_of
from anchorwatt.design.filling import specify
from anchorwatt.design.problems import in_short, keys_of
from anchorwatt.errors import BadDesign

Origin = Literal["typed", "catalogue", "estimated"]


def origin(design: Design, key: str) -> Origin:
    """Say whether somebody typed a figure, or it is from the catalogue, or it was estimated.

    Parameters
    ----------
    key : dotted, as in the file: “cabins.saloon.height”

    Raises
    ------
    BadDesign
        The design has no such key.

    Example
    -------
    >>> from anchorwatt import design
    >>> trawler = design.parse(design.starter_text("trawler-14m"))
    >>> [origin(trawler, key) for key in ("boat.length", "dc.bank.module.capacity", "boat.waterline")]
    ['typed', 'catalogue', 'estimated']
    """
    document = design.document
    path = key_of(key, document)
    span = document.spans.get(path)
    if span is not None and span.start != span.end:
        return "typed"
    if any(estimate.key == key for estimate in specify(design).estimates):
        return "estimated"
    at: Any = design
    for depth, part in enumerate(path):
        if isinstance(at, BaseModel):
            names = _names(at)
            short = in_short(type(at))
            if short and part in names and part != short and child(_typed(document.data, path[:depth]), part) is None:
                return "estimated"
            if short and part not in names:
                at = getattr(at, short)
                names = _names(at)
            if part not in names:
                known = ", ".join(keys_of(type(at)))
                raise BadDesign((document.problem(path[: depth + 1], f"no key “{part}”", f"one of: {known}"),))
            at = getattr(at, names[str(part)])
            continue
        at = child(list(at) if isinstance(at, tuple) else at, part)
        if at is None:
            problem = document.problem(path[: depth + 1], f"no “{part}” here", "a key of the design")
            raise BadDesign((problem,))
    # What the file names only in a word above stands in the catalogue; the rest are its shape's defaults.
    above: Any = document.data
    for part in path:
        if isinstance(above, str) or (isinstance(above, dict) and "like" in above and part not in above):
            return "catalogue"
        above = child(above, part)
    return "estimated"


def _names(model: BaseModel) -> dict[str, str]:
    """Field of each key that a mapping of the file may have there."""
    return {field.alias or name: name for name, field in type(model).model_fields.items()}


def _typed(data: Any, path: Key) -> Any:
    """What the file says at a key; None where nothing does."""
    for part in path:
        data = child(data, part)
    return data
