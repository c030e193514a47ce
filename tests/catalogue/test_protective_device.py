"""What makes a family of protective devices."""

from __future__ import annotations

from itertools import pairwise

import pytest

from anchorwatt.catalogue import rows
from anchorwatt.catalogue.protective_device import ProtectiveDevice

ROW = {
    "device": "fuse",
    "current_kind": "direct",
    "ratings": ["10 A", "20 A"],
    "voltages": ["32 V", "58 V"],
    "interrupting": ["5 kA", "2 kA"],
    "carries_peak": 2,
    "trips_by": 4,
    "source": "tests",
}


@pytest.mark.parametrize(("voltage", "current"), [(14.0, 5e3), (32.0, 5e3), (33.0, 2e3), (58.0, 2e3), (58.1, 0.0)])
def test_it_interrupts_less_at_a_higher_voltage_and_nothing_above_its_highest(voltage: float, current: float) -> None:
    assert ProtectiveDevice.model_validate(ROW).interrupts(voltage) == current


@pytest.mark.parametrize(
    ("changes", "words"),
    [
        ({"ratings": ["20 A", "10 A"]}, "ratings that rise"),
        ({"voltages": ["32 V"]}, "two lists of the same length"),
        ({"voltages": ["58 V", "32 V"]}, "voltages that rise"),
        ({"interrupting": ["2 kA", "5 kA"]}, "no more at a higher voltage"),
        ({"residual": "30 mA"}, "earth-fault device only"),
        ({"device": "earth-fault device"}, "earth-fault device only"),
        ({"trip_time": "0.1 s"}, "earth-fault device only"),
        ({"device": "hope"}, "fuse"),
    ],
)
def test_a_row_that_does_not_hang_together_is_refused(changes: dict[str, object], words: str) -> None:
    with pytest.raises(ValueError, match=words):
        ProtectiveDevice.model_validate({**ROW, **changes})


@pytest.mark.parametrize("row", rows("protective_device").values(), ids=lambda row: row.name)
def test_a_family_opens_above_what_it_carries_for_a_second(row: ProtectiveDevice) -> None:
    assert row.trips_by > row.carries_peak
    assert row.price is not None


def test_there_is_a_direct_current_family_for_every_rating_up_to_600_a_that_interrupts_20_ka() -> None:
    """Of a 48 V bank's charging voltage: no load is left without a device because the bank is near."""
    able = [
        row
        for row in rows("protective_device").values()
        if isinstance(row, ProtectiveDevice) and row.current_kind == "direct" and row.interrupts(58.4) >= 20e3
    ]
    ratings = sorted({float(rating) for row in able for rating in row.ratings})
    assert ratings[0] <= 1.0
    assert ratings[-1] >= 600.0
    assert max(b / a for a, b in pairwise(ratings)) <= 2.0
