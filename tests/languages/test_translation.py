"""How a finished text is said: the message that it was made from is found, and what goes into it is said in turn."""

from __future__ import annotations

import time

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from anchorwatt.languages import ENGLISH, LANGUAGES, Said, language, said, speaking
from anchorwatt.languages.known import Known
from anchorwatt.languages.messages import Message
from anchorwatt.languages.translation import Translation

KNOWN = Known(
    [
        Message("bank", "parc"),
        Message("engine", "moteur"),
        Message("night", "nuit"),
        Message("The {0} holds for {1}.", "{0} : tient {1}."),
        Message("{0} of {1}", "{0} de {1}"),
        Message("Anchorwatt advises; it does not certify. Local codes decide.", "Conseil, non certificat. Codes."),
        Message("outdoor air", "air extérieur"),
        Message("port", "bâbord"),
    ],
    decimal=",",
    apart=":;",
)


def read(words: str, *own: str) -> str:
    return Translation(KNOWN, own).said(words)


@pytest.mark.parametrize(
    ("english", "french"),
    [
        ("bank", "parc"),
        ("Bank", "Parc"),
        ("The bank holds for 9.5 h.", "parc : tient 9,5 h."),
        ("The bank holds for 9.5 h", "parc : tient 9,5 h"),
        ("bank, engine", "parc, moteur"),
        ("bank: engine", "parc\u00a0: moteur"),
        ("bank (engine)", "parc (moteur)"),
        ("  bank\nengine ", "  parc\nmoteur "),
        ("outdoor\nair", "air\nextérieur"),
        ("T2 bank", "T2 parc"),
        ("bank 12.8 V", "parc 12,8 V"),
        (
            "Night. Anchorwatt advises; it does not certify. Local codes decide.",
            "Nuit. Conseil, non certificat. Codes.",
        ),
        ("12.5 kWh", "12,5 kWh"),
        ("X1.2 and 3.4.5", "X1.2 and 3.4.5"),
        ("", ""),
    ],
)
def test_a_text_is_said(english: str, french: str) -> None:
    assert read(english) == french


def test_the_longest_message_wins_where_several_leave_nothing() -> None:
    known = Known(
        [Message("{0} of {1}", "?"), Message("state of charge", "état de charge"), Message("state", "?")], "."
    )
    assert Translation(known).said("state of charge") == "état de charge"


def test_names_of_the_user_stay_as_they_are() -> None:
    assert read("The Engine holds for 9.5 h.", "Engine") == "Engine : tient 9,5 h."


def test_a_small_word_of_ours_is_said_although_a_user_wrote_it_too() -> None:
    assert read("port", "port") == "bâbord"


def test_a_message_is_found_although_a_part_of_it_is_a_name() -> None:
    known = Known([Message("lights, navigation and bilge", "éclairage et cale"), Message("{0} and {1}", "?")], ".")
    assert Translation(known, ["lights", "navigation"]).said("lights, navigation and bilge") == "éclairage et cale"


def test_a_name_of_several_words_is_not_said_word_by_word() -> None:
    words = ("forward", "cabin", "through the day", "through", "the", "day")
    known = Known([Message("{0} through the day", "{0} : le jour"), *(Message(one, "?") for one in words)], ".")
    assert Translation(known, ["forward cabin"]).said("forward cabin through the day") == "forward cabin : le jour"


def test_what_no_message_is_known_for_is_told() -> None:
    found = Translation(KNOWN).read("The bank holds for ever, sailor.")
    assert found.unknown == ("ever, sailor",)
    assert found.letters == len("eversailor")


@given(st.text(max_size=300))
def test_any_words_can_be_said(words: str) -> None:
    assert isinstance(read(words), str)


@settings(max_examples=200)
@given(st.text(st.sampled_from(" of{}0:;,.ab\n"), max_size=80))
def test_words_without_a_message_keep_their_signs(words: str) -> None:
    assert "".join(read(words).split()).replace(",", ".") == "".join(words.split()).replace(",", ".")


@pytest.mark.parametrize("words", ["of " * 3000, "a, " * 3000, "The bank holds for " * 400, "x" * 200_000, "(" * 5000])
def test_no_text_is_slow(words: str) -> None:
    """A limit that only a search which grows with the square or worse would pass: it is minutes then."""
    start = time.process_time()
    read(words)
    assert time.process_time() - start < 20.0


def test_english_is_left_as_it_is() -> None:
    with speaking(ENGLISH):
        assert said("Contents") == "Contents"
    assert language() == ENGLISH


def test_what_was_said_is_not_said_again() -> None:
    with speaking("fr"):
        once = said("Contents")
        assert isinstance(once, Said)
        assert said(once) is once


def test_the_language_ends_with_its_block_even_by_an_error() -> None:
    with pytest.raises(ZeroDivisionError), speaking("fr"):
        raise ZeroDivisionError
    assert language() == ENGLISH


def test_a_language_that_there_is_not_is_refused() -> None:
    with pytest.raises(KeyError), speaking("xx"):
        pass  # pragma: no cover
    assert "xx" not in LANGUAGES
