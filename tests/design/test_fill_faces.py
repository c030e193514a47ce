"""Awnings over faces, and blinds in windows."""

from __future__ import annotations

import math
from typing import Any

import pytest
from tests.design.strategies import as_text
from tests.design.test_specify import minimal

from anchorwatt import design
from anchorwatt.design.specification import Cabin

HATCH = {"surface": "deck", "glazing": "smoked acrylic 12 mm hatch", "area": "0.2 m2"}


def cabin(hatch: dict[str, Any], **changes: Any) -> Cabin:
    cabins = minimal()["cabins"]
    cabins["cabin"] = {**cabins["cabin"], "windows": {"hatch": {**HATCH, **hatch}}, **changes}
    return design.specify(design.parse(as_text(minimal(cabins=cabins)))).cabins[1]


def test_an_awning_leaves_its_share_of_the_sun_and_of_the_sky() -> None:
    faces = {face.name: face for face in cabin({}, surfaces={"deck": {"cover": "awning"}}).surfaces}
    assert (faces["deck"].sun_left, faces["deck"].sky_left) == (0.22, 0.25)
    assert (faces["port side"].sun_left, faces["port side"].sky_left) == (1.0, 1.0)


def test_a_cover_that_says_nothing_of_the_sky_leaves_all_of_it() -> None:
    faces = {face.name: face for face in cabin({}, surfaces={"deck": {"cover": {"factor": "40 %"}}}).surfaces}
    assert (faces["deck"].sun_left, faces["deck"].sky_left) == (0.4, 1.0)


@pytest.mark.parametrize(
    ("hatch", "factor"),
    [
        ({}, 1.0),
        ({"cover": "outside cover"}, 0.12),
        ({"blind": "plain curtain"}, 0.72),
        ({"cover": "outside cover", "blind": "plain curtain"}, 0.12 * 0.72),
    ],
)
def test_cover_and_blind_multiply(hatch: dict[str, Any], factor: float) -> None:
    (window,) = cabin(hatch).windows
    assert math.isclose(window.cover_factor, factor)


def test_a_window_is_under_its_faces_awning_too() -> None:
    (window,) = cabin({"blind": "plain curtain"}, surfaces={"deck": {"cover": "awning"}}).windows
    assert math.isclose(window.cover_factor, 0.22 * 0.72)
