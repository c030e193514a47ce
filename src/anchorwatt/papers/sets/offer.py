"""The offer, for who pays for the job, and its summary on one page for the broker.

Both show the customer's side of the price. Neither says more than the assessment does: where the bank does not hold
the night, or a figure is not known, that is what stands there.
"""

from __future__ import annotations

import datetime
import math
from typing import TYPE_CHECKING

from anchorwatt import drawings
from anchorwatt.checks import Verdict
from anchorwatt.papers import generator, price
from anchorwatt.papers.document import Chapter, Document, House, NewPage, Picture, Printed, Signatures
from anchorwatt.papers.page import Content, Paragraph, Side, Words, section, table
from anchorwatt.papers.said import about, asked, hours
from anchorwatt.papers.sets.chapters import paper
from anchorwatt.simulation.runs import LONGEST_HOLD
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.sizing.packages import Figures

SUBJECT = "Cooling and power by night: what it does, what it weighs, what it costs"
BROKER_SUBJECT = "Summary for the broker"
NO_TERMS = "No terms are printed here: both sides agree on them in writing before work begins."
NOT_OURS = "Parts that the yard's own files do not price carry prices of the generic catalogue, which are invented."
INVENTED = "Prices are those of the generic catalogue, which are invented: this is a sample, not yet an offer."
PICTURE = (
    "How to read the picture: on top, what is left in the bank from evening to morning; in the middle, how warm each "
    "cabin is; below, how much power the cooling takes."
)
UNSURE = (
    "All of this is reckoned from the boat's design file, not measured on the boat. Real nights differ with weather, "
    "seawater, people aboard and how the boat is used."
)
COMPARED = (
    "Mass of the design: bank, inverter, alternators and belts alone. What the whole installation weighs stands under "
    "“Weight and trim”."
)
SIGNED = ("The customer: name and signature", "The yard: name and signature")


def document(assessment: Assessment, system: System, house: House | None = None) -> Document:
    """The offer, of 2 to 6 pages; terms are the house's."""
    terms = house.terms if house is not None else ()
    picture = Picture(drawings.night_picture(assessment, system), "The night: charge, cabins and power", 0.95)
    body: tuple[Printed, ...] = (
        Chapter(
            "What it will feel like",
            (*map(Paragraph, _feels(assessment, system)), Paragraph(PICTURE), picture, _cabins(assessment, system)),
        ),
        Chapter("What it replaces", _replaces(assessment, system)),
        Chapter("Options side by side", _options(assessment, system)),
        Chapter("Weight and trim", _weight(assessment, system)),
        Chapter("Price and terms", _price(assessment, terms)),
        Chapter("Assumptions and limits", (*_assumptions(assessment, system), *_checks(assessment))),
        NewPage(),
        Chapter("What is not included", tuple(map(Paragraph, _left_out(assessment)))),
        Chapter("Take care", tuple(map(Paragraph, _cautions(assessment)))),
        Chapter("Agreed", (Paragraph("By signing, both accept this offer with its limits."), Signatures(SIGNED))),
    )
    return paper(assessment, system, "offer", "Offer", SUBJECT, body, contents=0, cover=False)


def broker(assessment: Assessment, system: System) -> Document:
    """The offer on one page, for the broker."""
    made = assessment.offer.priced
    rows = [
        ("The night", _night(assessment)),
        ("Comfort", _comfort(assessment)),
        ("Next day", _recharge(assessment)),
        ("Weight", _floats(assessment, system)),
        ("Price", _to_pay(assessment)),
        ("Other options", _options_in_short(assessment, system)),
        ("Checks", _checks_in_short(assessment)),
        ("Not included", " ".join(_left_out(assessment))),
    ]
    if not made.complete:
        rows.insert(5, ("Without a price", "; ".join(_some(made.unknown))))
    body: tuple[Printed, ...] = (
        table(("", ""), ("<", "<"), [(Words(name, "strong"), told) for name, told in rows], free=1),
        Picture(drawings.night_picture(assessment, system), "The night: charge, cabins and power", 0.7),
        Words(_prices_are(assessment), "aside"),
        Words(UNSURE, "aside"),
        *(Words(words, "aside") for words in assessment.cautions),
    )
    return paper(assessment, system, "broker", "Offer", BROKER_SUBJECT, body, contents=0, cover=False)


def _feels(assessment: Assessment, system: System) -> tuple[str, ...]:
    return (_night(assessment), _comfort(assessment), _recharge(assessment), _fuel(assessment, system))


def _night(assessment: Assessment) -> str:
    brief = assessment.specification.brief
    hold, dawn = assessment.answer("hold_hours").value, assessment.answer("charge_at_dawn_pct").value
    wanted, start = asked(brief.hold), show(brief.night_start, "clock time", "si")
    reserve = show(brief.reserve, "share", "si")
    if hold < brief.hold:
        return (
            f"The bank does not hold the night that was asked for: from {start} it lasts about "
            f"{hours(hold, down=True)}, {wanted} are asked. After that it is down to its reserve of {reserve}, and an "
            "engine or shore power has to help, or the cooling stops."
        )
    return (
        f"From {start} the bank alone runs the boat for {_lasts(hold, 'about ')}, down to its reserve of "
        f"{reserve}; {wanted} are asked. At dawn about {show(dawn, 'share', 'si', digits=2)} is left in it."
    )


def _lasts(hold: float, sure: str = "") -> str:
    """How long a bank lasts; the reckoning ends at some time, and a bank may outlast it."""
    return f"{'at least ' if hold >= LONGEST_HOLD else sure}{hours(hold, down=True)}"


def _comfort(assessment: Assessment) -> str:
    found = {answer.key: answer for answer in assessment.answers}.get("comfortable_cabins")
    if found is None:
        return "The design says nobody sleeps aboard, so nothing is said of comfort in bed."
    return (
        f"Cabins in which sleepers are comfortable all night: {found.value:.0f} {found.note}. This is a guide from a "
        "comfort standard, not a promise: people differ."
    )


def _recharge(assessment: Assessment) -> str:
    found = assessment.recharge
    if found is None:
        return "No engine of this design carries an alternator: none puts the night back."
    time = assessment.answer("engine_hours_to_recharge").value
    if math.isnan(time):
        return f"The engine does not put the night back into the bank within a day ({found.doing})."
    return f"Next day the engine puts it back in about {hours(time)} ({found.doing})."


def _fuel(assessment: Assessment, system: System) -> str:
    burnt = assessment.answer("recharge_fuel_L").value
    if math.isnan(burnt):
        return "What fuel that costs cannot be told."
    return f"It takes about {about(burnt, 'liquid volume', system)} of fuel for the alternators."


def _cabins(assessment: Assessment, system: System) -> Content:
    def shown(value: float, dimension: str) -> str:
        return show(value, dimension, system, digits=2 if dimension == "share" else None)

    rows = [
        (
            one.name,
            shown(one.set_point, "temperature"),
            shown(one.night_highest_temperature, "temperature"),
            shown(one.night_highest_humidity, "share"),
        )
        for one in assessment.cabins
        if not math.isnan(one.set_point)
    ]
    heads = ("cabins cooled by night", "set to", "warmest", "most humid")
    return table(heads, ("<", ">", ">", ">"), rows)


def _replaces(assessment: Assessment, system: System) -> tuple[Printed, ...]:
    removed = assessment.specification.removed
    named = ", ".join(f"{one.name} ({about(one.mass, 'mass', system)})" for one in removed)
    words = f"Taken ashore: {named}." if removed else "Nothing that is aboard is taken ashore for it."
    parts: list[Printed] = [Paragraph(words)]
    story = assessment.generator
    if story is None:
        return (*parts, Paragraph("No generating set of the catalogue is large enough to set beside it."))
    points = tuple(one for one in story.points if one.dimension != "money")  # what parts cost is the yard's
    caption = f"Beside a generating set: {story.comparison.generator.name}"
    parts.append(generator.side_by_side(points, story.comparison.currency, system, caption))
    parts.append(Paragraph(COMPARED))
    if not story.comparison.night_served:
        parts.append(Paragraph("The design's own bank does not serve the night to its end; the set would."))
    both = generator.fair(story.comparison, system)
    if assessment.answer("hold_hours").value < assessment.specification.brief.hold:
        both = both[:1]  # a bank that is too small has no quiet night to its credit
    return (*parts, *map(Paragraph, both))


def _options(assessment: Assessment, system: System) -> tuple[Printed, ...]:
    story, brief = assessment.offer, assessment.specification.brief
    if not story.packages:
        return (Paragraph("This design is offered as it is, without other packages."),)
    currency = story.priced.offer.currency

    def row(name: str, found: Figures) -> tuple[str | Words, ...]:
        holds = found.hold >= brief.hold
        return (
            name,
            "not all priced" if found.total is None else price.amount(found.total),
            Words(_lasts(found.hold)).then("" if holds else "\ntoo short", "fails"),
            about(found.mass, "mass", system),
            "not within a day" if math.isnan(found.engine_time) else hours(found.engine_time),
        )

    rows = [row("as designed", story.base), *(row(one.package.name, one.figures) for one in story.packages)]
    heads = ("", f"to pay\n{currency}", "bank lasts", "weight\nbrought aboard", "engine to\nrecharge")
    sides: tuple[Side, ...] = ("<", ">", ">", ">", ">")
    told = [
        Paragraph(f"{one.package.name.capitalize()}: {one.package.about.rstrip('. ')}.")
        for one in story.packages
        if one.package.about
    ]
    wanted = f"Each is worked out by itself. The bank is asked to last {asked(brief.hold)}."
    return (table(heads, sides, rows), *told, Paragraph(wanted))


def _options_in_short(assessment: Assessment, system: System) -> str:
    story, brief = assessment.offer, assessment.specification.brief
    told = []
    for one in story.packages:
        found, currency = one.figures, story.priced.offer.currency
        paid = "not all of it priced" if found.total is None else f"{price.amount(found.total)} {currency} to pay"
        short = "" if found.hold >= brief.hold else ", too short"
        mass = about(found.mass, "mass", system)
        told.append(f"{one.package.name}: {paid}, bank lasts {_lasts(found.hold)}{short}, {mass} aboard")
    return "; ".join(told) + "." if told else "None."


def _floats(assessment: Assessment, system: System) -> str:
    return f"{assessment.weight.finding(system)}."


def _weight(assessment: Assessment, system: System) -> tuple[Printed, ...]:
    rows = [(Words(value, "strong"), words) for value, words in assessment.weight.readings(system)]
    cautions = map(Paragraph, assessment.weight.cautions)
    return (Paragraph(_floats(assessment, system)), table(("", ""), (">", "<"), rows), *cautions)


def _price(assessment: Assessment, terms: tuple[str, ...]) -> tuple[Printed, ...]:
    story = assessment.offer
    made = story.priced
    each = [line for line in made.lines if line.unit == "each"]
    rows = [(line.name, price.kind_told(line.kind), f"{line.count:f}", str(line.spares or "")) for line in each]
    parts: list[Printed] = [
        *price.customer(story),
        Paragraph(_prices_are(assessment)),
        table(("what you get", "which is", "count", "spares"), ("<", "<", ">", ">"), rows),
        Paragraph("Cables between them, as the drawings show, are within the price."),
    ]
    if made.offer.arrival and made.offer.date:
        parts.append(Paragraph(price.time_told(story, datetime.date.fromisoformat(made.offer.date))))
    paragraphs = terms or (NO_TERMS,)
    return (*parts, section("Terms", *map(Paragraph, paragraphs)))


def _prices_are(assessment: Assessment) -> str:
    return NOT_OURS if assessment.specification.overlay else INVENTED


def _to_pay(assessment: Assessment) -> str:
    made = assessment.offer.priced
    least = "" if made.complete else "At least "
    tax = "no tax is named" if not made.offer.tax else f"tax of {show(made.offer.tax, 'share', 'si')} is in it"
    return f"{least}{price.amount(made.total)} {made.offer.currency} to pay; {tax}."


def _assumptions(assessment: Assessment, system: System) -> tuple[Printed, ...]:
    brief = assessment.specification.brief
    charge, reserve = show(brief.charge_at_start, "share", system), show(brief.reserve, "share", system)
    words = (
        UNSURE,
        f"Weather: {assessment.weather_source}.",
        f"The night begins with {charge} in the bank; {reserve} is kept as a reserve.",
        f"{len(assessment.estimates)} figures that nobody gave are estimated; the engineering file names each.",
        *((f"Exchange rates: {'; '.join(assessment.offer.rates)}.",) if assessment.offer.rates else ()),
    )
    return tuple(map(Paragraph, words))


def _checks_in_short(assessment: Assessment) -> str:
    def count(verdict: Verdict) -> int:
        return sum(one.verdict is verdict for one in assessment.checks)

    return (
        f"Of {len(assessment.checks)} checks {count(Verdict.FAILS)} fail, {count(Verdict.CANNOT_TELL)} cannot be told, "
        f"{count(Verdict.NEAR)} are near their limit and {count(Verdict.HOLDS)} hold."
    )


def _checks(assessment: Assessment) -> tuple[Printed, ...]:
    """What fails and what cannot be told, by its question; all of them stand in the engineering file."""
    parts: list[Printed] = [Paragraph(_checks_in_short(assessment))]
    for verdict, meaning in ((Verdict.FAILS, "These fail"), (Verdict.CANNOT_TELL, "These cannot be told yet")):
        some = [one for one in assessment.checks if one.verdict is verdict]
        if some:
            questions = " ".join(dict.fromkeys(f"{one.question}" for one in some))
            parts.append(Paragraph(f"{meaning}: {questions}"))
    return tuple(parts)


def _left_out(assessment: Assessment) -> tuple[str, ...]:
    weight = assessment.answer("mass_added_kg").note
    return (*assessment.offer.not_counted, *((f"In the weight, {weight}.",) if weight else ()))


def _cautions(assessment: Assessment) -> tuple[str, ...]:
    story = assessment.generator
    return (*assessment.cautions, *(story.cautions if story is not None else ()))


def _some(names: tuple[str, ...]) -> tuple[str, ...]:
    """A few names, and how many more there are."""
    return names if len(names) <= 4 else (*names[:3], f"and {len(names[3:])} more")
