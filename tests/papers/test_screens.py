from __future__ import annotations

import math
from collections.abc import Callable

import pytest
from tests.papers import fake

from anchorwatt.assessment import Verdict
from anchorwatt.cli.terminal import show
from anchorwatt.errors import AnchorwattError
from anchorwatt.papers import loads, plant, recharge, screens
from anchorwatt.papers.page import Content

Printed = Callable[[Content], str]


@pytest.fixture
def printed(capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch) -> Printed:
    monkeypatch.setenv("COLUMNS", "80")

    def out(page: Content) -> str:
        show(page)
        return capsys.readouterr().out

    return out


def test_every_page_fits_80_columns(printed: Printed) -> None:
    many = fake.assessment(cabins=tuple(fake.cabin(f"a cabin with a long name {n}") for n in range(8)))
    for page in (screens.assessment, loads.screen, plant.screen, screens.night, recharge.screen):
        assert max(len(line) for line in printed(page(many, "us")).splitlines()) <= 80
    assert max(len(line) for line in printed(screens.estimates(many)).splitlines()) <= 80


def test_the_answers_come_first_and_the_cautions_with_them(printed: Printed) -> None:
    page = printed(screens.assessment(fake.assessment(), "si"))
    assert page.index("12.5 h") < page.index(fake.CAUTIONS[0]) < page.index("Checks so far")
    assert page.rindex(fake.CAUTIONS[1]) > page.index("Estimates made")


def test_what_fails_comes_first_with_its_remedy(printed: Printed) -> None:
    page = printed(screens.assessment(fake.assessment(), "si"))
    assert page.index("fails  Is it dry enough?") < page.index("→ a larger bank") < page.index("1 hold: some-rule")
    assert page.count("→") == 1


def test_figures_follow_the_units_asked_for(printed: Printed) -> None:
    assert "908 lb" in printed(screens.assessment(fake.assessment(), "us"))
    assert "412 kg" in printed(screens.assessment(fake.assessment(), "si"))


def test_every_estimate_is_named_with_its_value(printed: Printed) -> None:
    page = printed(screens.assessment(fake.assessment(), "si"))
    for words in ("boat: waterline 42 ft", "surfaces.roof.area 12.0 m²", "dc.bank: temperature 30 °C"):
        assert words in page


def test_estimates_in_full_say_how(printed: Printed) -> None:
    page = printed(screens.estimates(fake.assessment()))
    assert "92 % of the length (from memory)" in page


def test_what_cannot_be_told_is_a_dash(printed: Printed) -> None:
    page = printed(screens.assessment(fake.assessment(headline=fake.answers(recharge=math.nan)), "si"))
    assert "—  How long must the engine run?" in page


def test_a_figure_just_over_its_limit_is_told_from_it(printed: Printed) -> None:
    page = printed(screens.assessment(fake.assessment(checks=(fake.finding(Verdict.FAILS, value=0.2012),)), "si"))
    assert "20.12 %" in page
    assert "20.00 %" in page


def test_a_check_that_cannot_tell_shows_what_to_do(printed: Printed) -> None:
    unknown = fake.finding(Verdict.CANNOT_TELL, value=math.nan)
    page = printed(screens.assessment(fake.assessment(checks=(unknown,)), "si"))
    assert "cannot tell" in page
    assert "→ a larger bank" in page


def test_cabins_that_are_not_cooled_by_night_are_left_out_of_the_hourly_table(printed: Printed) -> None:
    page = printed(screens.night(fake.assessment(), "si"))
    assert "owner's cabin" in page
    assert "saloon" not in page


def test_the_hours_of_the_night_are_whole(printed: Printed) -> None:
    page = printed(screens.night(fake.assessment(), "si"))
    assert [f"{hour:02d}:00" in page for hour in (22, 23, 0, 1, 7)] == [True] * 5
    assert "21:01" not in page


def test_loads_show_what_goes_out_with_a_minus(printed: Printed) -> None:
    assert "−20" in printed(loads.screen(fake.assessment(), "si"))


def test_a_boat_without_cooled_cabins_says_so(printed: Printed) -> None:
    never = fake.assessment(cabins=(fake.cabin("saloon", math.nan),), gains=fake.gains(0), load_story=None)
    page = printed(loads.screen(never, "si"))
    assert "No cabin of this design is ever cooled." in page


def test_a_boat_without_an_alternator_says_so(printed: Printed) -> None:
    page = printed(recharge.screen(fake.assessment(recharge=None), "si"))
    assert "No engine of this design carries an alternator." in page


def test_recharge_names_what_held_it_back(printed: Printed) -> None:
    page = printed(recharge.screen(fake.assessment(), "si"))
    assert "temperature 80 %, the bank 20 %" in page
    assert "port" in page


def test_why_shows_formula_inputs_basis_source_and_what_changes_it(printed: Printed) -> None:
    page = printed(screens.why(fake.answers()[0], "si"))
    for words in ("12.5 h", "bank over load", "12.0 kWh  typed", "Source: arithmetic", "a larger bank"):
        assert words in page


def test_an_unknown_answer_names_the_nearest() -> None:
    with pytest.raises(AnchorwattError, match="perhaps “hold_hours”"):
        screens.answer_named(fake.answers(), "holdhours")
