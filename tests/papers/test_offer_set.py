"""The offer and the broker's summary say what the assessment says, and nothing of what the job costs the yard."""

from __future__ import annotations

import io

import pypdf
import pytest
from tests.starters import assess_once, assessed

from anchorwatt import design
from anchorwatt.papers import price
from anchorwatt.papers.document import Document, House
from anchorwatt.papers.sets import offer
from anchorwatt.papers.typeset import pdf
from anchorwatt.simulation.runs import LONGEST_HOLD
from anchorwatt.units import System

TERMS = ("Half on signing.", "#set text(red) *half* on hand-over.")
HOUSE = House("Heronsgate Boatyard", "Slip Lane 1, invented", terms=TERMS)
LONGEST = tuple(("terms as long as they may be " * 40)[:1000] for _ in range(12))


def pages(document: Document) -> list[str]:
    reader = pypdf.PdfReader(io.BytesIO(pdf(document, HOUSE)))
    return [plain(page.extract_text()) for page in reader.pages]


def plain(words: str) -> str:
    """Words without what a line's end does to them."""
    return "".join(words.replace("\u200b", "").replace("\u00ad", "").replace("-", "").split())


def both(starter: str, system: System = "si") -> list[str]:
    made = assessed(starter)
    return ["".join(pages(offer.document(made, system, HOUSE))), "".join(pages(offer.broker(made, system)))]


def test_the_hours_asked_for_are_those_of_the_brief() -> None:
    assert all(plain("9½ hours are asked") in paper for paper in both("catamaran-13m"))


@pytest.mark.parametrize(("starter", "system"), [("trawler-14m", "si"), ("catamaran-13m", "us")])
def test_the_offer_has_two_to_six_pages_and_the_summary_one(starter: str, system: System) -> None:
    made = assessed(starter)
    for terms in ((), LONGEST):
        assert 2 <= len(pages(offer.document(made, system, House(terms=terms)))) <= 6
    assert len(pages(offer.broker(made, system))) == 1


@pytest.mark.parametrize("starter", ["trawler-14m"])
def test_the_total_is_the_assessments(starter: str) -> None:
    made = assessed(starter).offer.priced
    for paper in both(starter):
        assert plain(f"{price.amount(made.total)} {made.offer.currency}") in paper


@pytest.mark.parametrize("starter", ["trawler-14m"])
def test_every_package_and_caution_is_there(starter: str) -> None:
    made = assessed(starter)
    assert made.offer.packages
    for paper in both(starter):
        for package in made.offer.packages:
            assert plain(package.package.name) in paper
            assert plain(price.amount(package.figures.total)) in paper
        for caution in (*made.cautions, *made.offer.not_counted):
            assert plain(caution) in paper


@pytest.mark.parametrize("starter", ["trawler-14m"])
def test_nothing_of_the_yards_cost_is_in_either(starter: str) -> None:
    made = assessed(starter).offer.priced
    secrets = (made.parts_cost, made.labour_cost, made.cost, made.parts_margin, made.labour_margin, made.net)
    shown = {price.amount(one) for one in (made.customer_parts, made.customer_labour, made.price, made.total)}
    told = {price.amount(one) for one in (*secrets, made.commission) if one} - shown
    assert told
    costs = {price.amount(line.cost) for line in made.lines if line.cost and line.cost > 100}
    for paper in both(starter):
        assert not [one for one in told | costs if plain(one) in paper]
        assert "margin" not in paper.lower().replace("wheremarginsaresmall", "")
        assert "commission" not in paper.lower()


def test_the_terms_are_the_houses() -> None:
    paper = both("cutter-12m")[0]
    assert all(plain(one) in paper for one in TERMS)
    assert plain(offer.NO_TERMS) in "".join(pages(offer.document(assessed("cutter-12m"), "si")))


def test_a_bank_that_does_not_hold_the_night_is_said_to() -> None:
    small = assess_once(design.edit(assessed("trawler-14m").design, "brief.hold", "23 h"))
    for made in (offer.document(small, "si", HOUSE), offer.broker(small, "si")):
        paper = "".join(pages(made))
        assert plain("The bank does not hold the night that was asked for") in paper
        assert plain("no engine runs while people sleep") not in paper
        assert plain("the bank alone runs the boat") not in paper


@pytest.mark.parametrize("name", ['#read("/etc/passwd") *x*', "W" * 60, "مرحبا 🛥 </svg>", "$x$ <a> @b"])
def test_a_hostile_name_is_but_a_name(name: str) -> None:
    made = assess_once(design.edit(assessed("cutter-12m").design, "name", name))
    for document in (offer.document(made, "si", HOUSE), offer.broker(made, "si")):
        told = pages(document)
        assert len(told) <= 6
        letters = [sign for sign in name if sign.isascii() and not sign.isspace() and sign != "-"]
        assert "".join(letters)[:8].replace("□", "") in told[0]


def test_a_bank_that_outlasts_the_reckoning_is_said_to_last_at_least_so_long() -> None:
    (package,) = assessed("catamaran-13m").offer.packages
    assert package.figures.hold == LONGEST_HOLD
    for paper in both("catamaran-13m"):
        assert plain("at least 48 hours") in paper
