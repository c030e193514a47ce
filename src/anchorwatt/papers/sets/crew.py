"""The two pages for the crew: how to live with the system, and who does what when an alarm sounds."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING

from anchorwatt.papers.page import Content, Paragraph, Words, section, table
from anchorwatt.papers.said import about, asked, hours
from anchorwatt.simulation.runs import LONGEST_HOLD
from anchorwatt.units import System, show

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

LIVE = (
    "For whoever is aboard, engineer or not. Figures are those of the design's own weather and habits; a hotter night, "
    "more people or an open hatch takes more."
)
CALL = (
    "People first, then the boat, then the equipment. Call for help early: by radio (VHF channel 16 or the red button, "
    "from memory) or the emergency number of where you are. If in doubt, leave it off, keep out and call. These are "
    "plain cautions of practice, from memory; the makers' instructions, your training and licensed or certified people "
    "come first."
)
ROLES = (
    "The helm keeps the boat safe and the engine in hand. The skipper, or whom the skipper names, acts. Somebody else "
    "musters people in life jackets, counts them and holds the radio. Alone: steer or anchor first, then act. Agree "
    "on it before you need it:"
)


def living(assessment: Assessment, system: System) -> tuple[Content, ...]:
    """One page: the figures, what to switch, what to watch."""
    switch = tuple((Words(when, "strong"), what) for when, what in _switches(assessment))
    return (
        Paragraph(LIVE),
        table(("", ""), ("<", "<"), _figures(assessment, system), shares=(4, 13)),
        section("What to switch", table(("", ""), ("<", "<"), switch, shares=(4, 13))),
        section(
            "What to watch",
            table(("what", "as it should be", "act when"), ("<", "<", "<"), _watched(assessment), shares=(6, 4, 9)),
        ),
        section("Leave alone", Paragraph(LEAVE)),
    )


LEAVE = (
    "Covers of bank, inverter, charger and shore inlet; set points of regulators and battery management; anything with "
    "refrigerant in it. They are for qualified people. Nothing is stored on or against the bank, the inverter or the "
    "condensing unit: they need their air."
)


def _figures(assessment: Assessment, system: System) -> list[tuple[Words, str]]:
    brief, answers = assessment.specification.brief, {one.key: one for one in assessment.answers}
    hold = answers["hold_hours"].value
    sure = "at least" if hold >= LONGEST_HOLD else "about"
    start, reserve = show(brief.night_start, "clock time", "si"), show(brief.reserve, "share", "si")
    wanted = f"{asked(brief.hold)} were asked for."
    if hold < brief.hold:
        wanted += " It does not hold them: before that an engine or shore power has to help, or the cooling goes off."
    rows = [
        (
            Words("How long the night holds", "strong"),
            (
                f"From {start}, {sure} {hours(hold, down=True)} on the bank alone, until {reserve} is left: the "
                f"reserve that you keep. {wanted}"
            ),
        ),
        (
            Words("What is left at dawn", "strong"),
            (
                f"About {about(answers['charge_at_dawn_pct'].value, 'share', system)}, if the night began at "
                f"{show(brief.charge_at_start, 'share', 'si')}."
            ),
        ),
        (Words("Engine time to put it back", "strong"), _recharge(assessment, system)),
        (Words("At anchor, day after day", "strong"), _at_anchor(assessment, system)),
    ]
    cooled = [
        f"{cabin.name} {show(cabin.set_point, 'temperature', system)}"
        for cabin in assessment.cabins
        if not math.isnan(cabin.set_point)
    ]
    if cooled:
        rows.append((Words("Thermostats by night", "strong"), f"{', '.join(cooled)}. Each degree warmer saves charge."))
    return rows


def _recharge(assessment: Assessment, system: System) -> str:
    found = assessment.recharge
    if found is None:
        return "No engine carries an alternator: shore power or the sun puts it back."
    if math.isnan(found.engine_time):
        return f"More than the design's engine run, {found.doing}: use shore power, or run longer and watch the charge."
    fuel = "" if math.isnan(found.fuel_added) else f"; about {about(found.fuel_added, 'liquid volume', system)} of fuel"
    return f"About {hours(found.engine_time)}, {found.doing}{fuel} for it."


def _at_anchor(assessment: Assessment, system: System) -> str:
    least = assessment.week.shortest
    if not assessment.specification.engines or assessment.recharge is None:
        return "No engine charges: count on shore power before the reserve is reached."
    if math.isnan(least.time):
        return "No engine time a day that was tried keeps the boat going at anchor: plan for shore power."
    if least.time <= 0.0:
        return "No engine time is needed in the week that was reckoned."
    return (
        f"About {show(least.time, 'time', system)} of engine a day keep the boat going all week, started "
        f"at {show(least.start, 'clock time', 'si')}."
    )


def _switches(assessment: Assessment) -> list[tuple[str, str]]:
    specification = assessment.specification
    shore = specification.shore is not None
    cast_off = "Shore power off at the dock's breaker, then unplug; see that the inverter took over"
    back = "Breaker at the dock off, plug in, look at polarity and voltage, breaker on"
    return [
        ("evening", "Shut hatches and doors, blinds down. Look at the charge: is it what the night begins with?"),
        ("cooling on", "Seacock open, then the plant on, then the cabins' thermostats; look for water at its outlet."),
        ("cooling off", "Thermostats off; leave the plant its after-run; then the seacock, if you leave the boat."),
        *([("at the dock", f"{back}. Leaving: {cast_off[0].lower()}{cast_off[1:]}.")] if shore else []),
        (
            "leaving the boat",
            "Cooling and AC loads off, seacocks shut, bilge pump on automatic; for weeks: bank near half charge.",
        ),
    ]


def _watched(assessment: Assessment) -> list[tuple[Words, str, str]]:
    specification = assessment.specification
    reserve = show(specification.brief.reserve, "share", "si")
    rows = [
        (
            "charge of the bank",
            f"over {reserve}",
            f"near {reserve}: charge, or warm the cabins and switch off AC loads",
        ),
        (
            "water at the plant's outlet",
            "steady while it cools",
            "weak or none: plant off, seacock shut, clean strainer",
        ),
        ("bilge", "dry", "water: find where from before the pump hides it"),
        (
            "carbon-monoxide alarms",
            "lamp on, tested monthly",
            "it sounds: everybody out into the open, see the next page",
        ),
        ("condensate drains", "run free", "wet lockers or musty air: clear the drain"),
    ]
    if specification.shore is not None:
        rows.append(("shore plug and inlet", "cool, dry, clean", "warm or brown: dock's breaker off, have it replaced"))
    if assessment.recharge is not None:
        rows.append(("charge current with the engine on", "as in the settings", "far less, a squeal, or a smell: stop"))
    return [(Words(what, "strong"), right, act) for what, right, act in rows]


def emergencies(assessment: Assessment, system: System) -> tuple[Content, ...]:
    """One page: who does what when an alarm sounds, from the faults of this design where it has them."""
    told = {found.fault.key: {part: words for part, _, words in found.story(system)} for found in assessment.faults}

    def does(key: str, otherwise: str) -> str:
        return told[key]["does"] if key in told else otherwise

    low = does("shore-sags", "")
    sags = f" If the voltage is low and no more: {low[0].lower()}{low[1:]}" if low else ""
    rows = [
        (
            "smell, smoke or\nheat at the bank\nor a cable",
            "Helm: turn so that smoke blows clear. Muster: all on deck, to windward; hatches shut; distress call.",
            (
                "Charging off, inverter off, bank's switch off, but only if the way there is clear of smoke. "
                "Keep low, never alone. Fire aboard: fight it only with the way out behind you."
            ),
            (
                "Never open a smoking box or breathe its gas: it burns and poisons. Nor go back in, smoke gone or not, "
                "before it is aired and somebody qualified has looked."
            ),
        ),
        (
            "carbon monoxide\nalarm",
            (
                "Muster: everybody out into the open at once, asleep or not; count. Anyone dizzy, sick or "
                "drowsy: call for medical help."
            ),
            "From outside: engines and anything with a flame off; open up. Neighbour's exhaust? Move.",
            "Never silence it and sleep on. Never go back in before it is aired and the alarm stays quiet.",
        ),
        (
            "water in the\nbilge, at the\nthrough-hull",
            "Helm: shallow water or the slip. Muster: pumps on, life jackets, early call for help.",
            (
                "Cooling off, shut its seacock, then the others, an engine's only once it is stopped; bung or plug in "
                "the hole. Is it sea or condensate?"
            ),
            "Never put a hand into water that may touch a live cable before shore power is off at the dock.",
        ),
        (
            "battery\nmanagement\ndisconnects",
            "Helm: slow down, steer by hand; anchor ready. Muster: torches, hand-held radio, a lookout.",
            does(
                "contactor-opens",
                "Find on the display why. All charging and loads off; close again once, by the maker's "
                "instructions, when the cause is gone.",
            ),
            "Never bridge the contactor, close it again and again, or pull a battery lead with an engine charging.",
        ),
        (
            "shore-power\nfault",
            "Muster: nobody swims or touches metal at the dock: a fault puts current into the water.",
            (f"Dock's breaker off, then unplug; live on the bank until a licensed electrician has looked.{sags}"),
            "Never reset a breaker that trips again, nor use an inlet or plug that is warm, wet or brown.",
        ),
        (
            "compressor, high\npressure",
            "Helm: an engine on the same through-hull is watched for its own water.",
            does("seawater-stops", "Plant off; seacock shut; clean the strainer; open it; reset once."),
            "Never reset it again and again, nor open a line: refrigerant is for certified people.",
        ),
    ]
    lines = [(Words(alarm, "strong"), others, acts, Words(never)) for alarm, others, acts, never in rows]
    return (
        Paragraph(CALL),
        Paragraph(ROLES),
        table(
            ("", "helm", "acts", "radio and people"),
            ("<", "<", "<", "<"),
            [("who", BLANK, BLANK, BLANK)],
            shares=(2, 7, 7, 7),
        ),
        table(
            ("alarm", "helm and muster", "who acts", "what nobody does"),
            ("<", "<", "<", "<"),
            lines,
            shares=(8, 12, 17, 12),
        ),
    )


BLANK = "_" * 24
"""Room to write in: on paper, a line as wide as there is room."""
