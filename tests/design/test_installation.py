"""What somebody vouches for."""

from __future__ import annotations

import pytest

from anchorwatt.design.installation import NOTHING_SAID, Installation


def test_what_is_left_out_nobody_has_said() -> None:
    assert all(value is None for _, value in NOTHING_SAID)


def test_no_is_not_the_same_as_nothing() -> None:
    assert Installation(warning=False) != NOTHING_SAID


@pytest.mark.parametrize("text", ["perhaps", 1, "true"])
def test_only_yes_or_no_can_be_vouched_for(text: object) -> None:
    with pytest.raises(ValueError, match="valid boolean"):
        Installation.model_validate({"warning": text})


def test_an_unknown_key_is_refused() -> None:
    with pytest.raises(ValueError, match="not permitted"):
        Installation.model_validate({"fire_brigade": True})
