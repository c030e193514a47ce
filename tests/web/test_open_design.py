"""A design that is open: nothing that anybody typed is ever lost."""

from __future__ import annotations

from pathlib import Path

import pytest

from anchorwatt.design import read, starter_text
from anchorwatt.errors import BadDesign
from anchorwatt.web.open_design import OUTSIDE, ChangedMeanwhile, OpenDesign, OutOfEdits, Unreadable, open_design

KEY = "brief.hold"


@pytest.fixture
def opened(tmp_path: Path) -> OpenDesign:
    path = tmp_path / "boat.yaml"
    path.write_text(starter_text("cutter-12m"), encoding="utf-8")
    return open_design(path)


def hold(opened: OpenDesign) -> str:
    return opened.design.brief.hold.text


def elsewhere(opened: OpenDesign, old: str, new: str) -> None:
    text = opened.path.read_text(encoding="utf-8")
    assert old in text
    opened.path.write_text(text.replace(old, new, 1), encoding="utf-8")


def test_a_change_is_on_disk_at_once_and_the_rest_stays_to_the_byte(opened: OpenDesign) -> None:
    before, was = opened.path.read_text(encoding="utf-8"), hold(opened)
    opened.change(KEY, "9.25 h", was)
    after = opened.path.read_text(encoding="utf-8")
    assert read(opened.path).brief.hold.text == "9.25 h"
    assert after.replace("9.25 h", was, 1) == before


def test_undo_goes_back_to_the_beginning_and_redo_to_the_end(opened: OpenDesign) -> None:
    before = opened.path.read_bytes()
    for hours in range(5, 12):
        opened.change(KEY, f"{hours} h", hold(opened))
    after = opened.path.read_bytes()
    for _ in range(7):
        opened.undo()
    assert opened.path.read_bytes() == before
    with pytest.raises(OutOfEdits):
        opened.undo()
    for _ in range(7):
        opened.redo()
    assert opened.path.read_bytes() == after
    with pytest.raises(OutOfEdits):
        opened.redo()


def test_a_new_change_after_undo_ends_what_could_be_done_again(opened: OpenDesign) -> None:
    opened.change(KEY, "9.25 h", hold(opened))
    opened.undo()
    opened.change(KEY, "7 h", hold(opened))
    assert not opened.can_redo


def test_two_tabs_with_different_keys_both_keep_their_edit(opened: OpenDesign) -> None:
    reserve = opened.design.brief.reserve.text
    opened.change(KEY, "9.25 h", hold(opened))
    opened.change("brief.reserve", "33 %", reserve)
    again = read(opened.path)
    assert (again.brief.hold.text, again.brief.reserve.text) == ("9.25 h", "33 %")


def test_the_later_of_two_tabs_with_one_key_is_told(opened: OpenDesign) -> None:
    seen = hold(opened)
    opened.change(KEY, "9.25 h", seen)
    with pytest.raises(ChangedMeanwhile) as told:
        opened.change(KEY, "7 h", seen)
    assert told.value.theirs == "9.25 h"
    assert read(opened.path).brief.hold.text == "9.25 h"
    opened.change(KEY, "7 h", "9.25 h")
    assert hold(opened) == "7 h"


def test_what_does_not_fit_changes_nothing(opened: OpenDesign) -> None:
    before = opened.path.read_bytes()
    with pytest.raises(BadDesign):
        opened.change(KEY, "long", hold(opened))
    assert opened.path.read_bytes() == before
    assert opened.version.number == 1


def test_a_change_in_an_editor_is_taken_in_and_can_be_taken_back(opened: OpenDesign) -> None:
    was = hold(opened)
    elsewhere(opened, f"hold: {was}", "hold: 6.5 h")
    opened.change("brief.reserve", "33 %", opened.design.brief.reserve.text)
    assert hold(opened) == "6.5 h"
    assert opened._back[0][1] == OUTSIDE
    opened.undo()
    assert hold(opened) == "6.5 h"
    opened.undo()
    assert hold(opened) == was


def test_a_change_of_a_key_that_an_editor_changed_is_told(opened: OpenDesign) -> None:
    seen = hold(opened)
    elsewhere(opened, f"hold: {seen}", "hold: 6.5 h")
    with pytest.raises(ChangedMeanwhile):
        opened.change(KEY, "7 h", seen)
    assert read(opened.path).brief.hold.text == "6.5 h"


def test_a_file_broken_on_disk_is_told_and_not_written_over(opened: OpenDesign) -> None:
    good = opened.design
    opened.path.write_text("boat: [", encoding="utf-8")
    with pytest.raises(Unreadable) as told:
        opened.change(KEY, "7 h", hold(opened))
    assert "cannot be used" in str(told.value)
    assert opened.path.read_text(encoding="utf-8") == "boat: ["
    assert opened.design is good


def test_what_was_last_good_can_be_written_back_and_the_broken_file_is_kept(opened: OpenDesign) -> None:
    before = opened.path.read_bytes()
    opened.path.write_text("boat: [", encoding="utf-8")
    opened.put_back()
    assert opened.path.read_bytes() == before
    assert opened.path.with_name("boat.yaml.unusable").read_text(encoding="utf-8") == "boat: ["


def test_a_deleted_file_is_written_again_with_the_next_change(opened: OpenDesign) -> None:
    opened.path.unlink()
    opened.change(KEY, "7 h", hold(opened))
    assert read(opened.path).brief.hold.text == "7 h"
    assert opened.unsaved == ""


def test_a_change_that_cannot_be_written_is_kept_and_told_and_written_later(opened: OpenDesign) -> None:
    opened.path.unlink()
    opened.path.mkdir()  # nobody, not even root, can write a file there
    opened.unsaved = "as if it had been gone"
    opened.change(KEY, "7 h", hold(opened))
    assert "folder" in opened.unsaved
    assert hold(opened) == "7 h"
    opened.path.rmdir()
    opened.change("brief.reserve", "33 %", opened.design.brief.reserve.text)
    assert opened.unsaved == ""
    assert read(opened.path).brief.hold.text == "7 h"


def test_listeners_hear_of_every_change_until_they_stop(opened: OpenDesign) -> None:
    heard: list[int] = []
    end = opened.listen(lambda: heard.append(opened.version.number))
    opened.change(KEY, "9.25 h", hold(opened))
    opened.undo()
    end()
    opened.redo()
    assert heard == [2, 3]
