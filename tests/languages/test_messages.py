"""The files of messages: whole, in step with the source, and true to their English."""

from __future__ import annotations

import re
from collections import Counter
from functools import cache
from importlib import resources

import pytest
from babel.messages.catalog import Message
from babel.messages.pofile import read_po
from tools.write_messages import ROOMS, UNPRINTED, is_prose, of_formulas, of_source

from anchorwatt.languages import ENGLISH, LANGUAGES, said, speaking
from anchorwatt.languages.messages import PLACE

OTHERS = [code for code in LANGUAGES if code != ENGLISH]


@cache
def messages(language: str) -> tuple[tuple[str, str], ...]:
    with resources.files("anchorwatt.languages").joinpath(f"{language}.po").open("rb") as content:
        return tuple((str(one.id), str(one.string)) for one in read_po(content, locale=language) if one.id)


def figures(words: str) -> Counter[str]:
    return Counter(re.findall(r"\d+", PLACE.sub("", words)))


@pytest.mark.parametrize("language", OTHERS)
def test_every_message_is_translated(language: str) -> None:
    assert [source for source, said in messages(language) if not said] == []


@pytest.mark.parametrize("language", OTHERS)
def test_every_place_of_a_message_is_in_its_translation_once(language: str) -> None:
    wrong = [one for one in messages(language) if sorted(PLACE.findall(one[0])) != sorted(PLACE.findall(one[1]))]
    assert wrong == []


@pytest.mark.parametrize("language", OTHERS)
def test_a_translation_has_the_figures_of_its_message(language: str) -> None:
    assert [one for one in messages(language) if figures(one[0]) != figures(one[1])] == []


@pytest.mark.parametrize("language", OTHERS)
def test_a_translation_is_one_sentence_or_none_as_its_message_is(language: str) -> None:
    """Texts are put behind one another by their ends."""
    ends = ".?!"
    assert [one for one in messages(language) if (one[0][-1] in ends) != (one[1][-1] in ends)] == []


@pytest.mark.parametrize("language", OTHERS)
def test_no_prose_of_the_source_is_without_a_message(language: str) -> None:
    prose = {
        one.text.strip()
        for room in ROOMS
        for one in of_source(room)
        if is_prose(one.text) and not one.key and one.where not in UNPRINTED
    }
    prose |= {one.text for one in of_formulas() if is_prose(one.text)}
    assert sorted(prose - {source for source, _ in messages(language)}) == []


def test_a_message_file_can_be_read_by_any_editor_of_gettext_files() -> None:
    with resources.files("anchorwatt.languages").joinpath("fr.po").open("rb") as content:
        catalogue = read_po(content)
    assert str(catalogue.locale) == "fr"
    assert catalogue.charset == "utf-8"
    assert all(isinstance(one, Message) for one in catalogue)


@pytest.mark.parametrize("words", ["SHOCK CAN KILL", "TEST EVERY MONTH", "X1 BANK BUS"])
def test_what_labels_and_panels_say_in_capitals_is_said(words: str) -> None:
    with speaking("fr"):
        assert said(words) != words
