from __future__ import annotations

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.drawings.labels import Labels
from anchorwatt.drawings.sheet import Path, Text

spot = st.tuples(st.floats(20.0, 380.0), st.floats(20.0, 180.0))


@given(st.lists(spot, min_size=1, max_size=25))
def test_no_label_lies_over_another_or_over_a_mark(marks: list[tuple[float, float]]) -> None:
    labels = Labels((0.0, 0.0, 400.0, 200.0))
    for x, y in marks:
        labels.taken.append((x - 4.0, y - 4.0, x + 4.0, y + 4.0))
    for number, mark in enumerate(marks):
        labels.beside(f"T{number}", 11.0, mark, (4.0, 4.0))
    put = labels.taken[len(marks) :]
    for one, other in combinations(put, 2):
        assert one[2] <= other[0] or other[2] <= one[0] or one[3] <= other[1] or other[3] <= one[1]


def test_a_label_that_stands_off_is_led_to_its_mark() -> None:
    labels = Labels((0.0, 0.0, 400.0, 200.0), [(170.0, 70.0, 230.0, 130.0)])
    drawn = labels.beside("G1", 11.0, (200.0, 100.0), (4.0, 4.0))
    assert [type(item) for item in drawn] == [Path, Text]


def test_there_is_no_label_where_there_is_no_room() -> None:
    labels = Labels((0.0, 0.0, 400.0, 200.0), [(0.0, 0.0, 400.0, 200.0)])
    assert labels.beside("G1", 11.0, (200.0, 100.0), (4.0, 4.0)) == []


def test_a_label_keeps_off_a_line_where_there_is_room_elsewhere() -> None:
    labels = Labels((0.0, 0.0, 400.0, 200.0), lines=[(210.0, 0.0, 210.0, 200.0)])
    (label,) = labels.beside("G1", 11.0, (200.0, 100.0), (4.0, 4.0))
    assert isinstance(label, Text)
    assert label.at[0] < 200.0
