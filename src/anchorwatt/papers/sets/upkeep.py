"""What keeps the system well after hand-over: a calendar of practice, and what is warranted."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING, Final

from anchorwatt.papers.page import Content, Paragraph, Words, table
from anchorwatt.papers.sets.crew import BLANK
from anchorwatt.units import show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

MEMORY: Final = (
    "From memory of practice; the maker's manual decides. Whichever comes first, the time or the engine hours. Work on "
    "bank, shore power, refrigerant, running engines and through-hulls is for people who are qualified for it."
)


@dataclass(frozen=True)
class Task:
    """One thing that is done again and again."""

    what: str
    every: str
    who: str
    kinds: tuple[str, ...] = ()  # of parts one of which must be aboard; empty = always


CALENDAR: Final = (
    Task("Strainer of the plant's seawater looked at and cleaned", "week in use, 50 h of cooling", "crew"),
    Task("Charge of the bank and its management's messages written down", "week in use", "crew", ("battery_module",)),
    Task("Carbon-monoxide and smoke alarms tested; bilge pump and its float tried", "month", "crew"),
    Task("Earth-fault device tried with its button", "month on shore power", "crew", ("charger", "transformer")),
    Task("Return-air filters washed; condensate pans and drains flushed", "month in use", "crew", ("air_handler",)),
    Task("Seacock turned through its travel; hoses and both clips looked at", "3 months", "crew", ("condensing_unit",)),
    Task(
        "Belts looked at: tension, dust, cracks; first after 10 h of a new belt",
        "3 months, 100 engine h",
        "crew",
        ("belt", "alternator"),
    ),
    Task("Shore plug, inlet and lead looked at for heat marks", "3 months", "crew", ("charger", "transformer")),
    Task("Fans and air ways of inverter and charger cleaned, power off", "6 months", "crew", ("inverter", "charger")),
    Task("Torque of lugs and bars, and a thermal look under load", "12 months, first after a season", "electrician"),
    Task(
        "Regulator settings read back; case temperature and current measured through an hour",
        "12 months, 250 engine h",
        "qualified",
        ("alternator",),
    ),
    Task("Alternator bearings, brushes and brackets", "24 months, 1000 engine h", "qualified", ("alternator",)),
    Task("Bank: restraint, terminals, gaskets, disconnection tried", "12 months", "qualified", ("battery_module",)),
    Task(
        "Condenser descaled; zincs looked at; refrigerant searched for leaks",
        "12 months, 1000 h of cooling",
        "certified",
        ("condensing_unit",),
    ),
    Task("Insulation and polarity measured; bonding and neutral looked at", "12 months", "electrician"),
    Task("A night on the bank, shore power unplugged, held against this file", "12 months", "crew"),
    Task("Through-hull, hoses and clips out of the water; hoses replaced by age", "24 months", "qualified"),
    Task("Expiry of alarms, extinguishers and flares", "12 months", "crew"),
    Task("Laid up: bank near half charge, dry and over freezing; plant drained", "season", "crew"),
)


def calendar(assessment: Assessment) -> tuple[Content, ...]:
    """The tasks that this design's parts ask for, with room to sign."""
    aboard = {item.kind for item in assessment.specification.items}
    rows = [
        (Words(task.what, "strong"), task.every, task.who, BLANK)
        for task in CALENDAR
        if not task.kinds or aboard.intersection(task.kinds)
    ]
    heads = ("what", "every", "who", "last done, by whom")
    return (Paragraph(MEMORY), table(heads, ("<", "<", "<", "<"), rows, shares=(16, 9, 5, 9)))


def warranty(assessment: Assessment) -> tuple[Content, ...]:
    """What the design knows of warranties, and room for what it does not."""
    bank = assessment.specification.bank
    left = show(bank.warranted_share, "share", "si")
    known = f"{bank.warranted_years:g} years, until {left} of the capacity is left"
    rows = [
        (
            Words(item.tag, "strong"),
            item.counted,
            known if item.kind == "battery_module" else BLANK,
            BLANK,
            BLANK,
        )
        for item in assessment.specification.items
    ]
    return (
        Paragraph(KEPT),
        table(
            ("", "part", "warranted", "from", "papers kept at"),
            ("<", "<", "<", "<", "<"),
            rows,
            shares=(2, 8, 7, 5, 7),
        ),
    )


KEPT: Final = (
    "The catalogue's figures are invented unless the yard's own catalogue gives them: the maker's certificate decides, "
    "and what it asks for (heat, charge, who worked on it) must be kept. Lines are for what this file does not know."
)
