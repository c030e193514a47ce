"""The checks as a page: what fails first, then what cannot be told, then what is near, then what holds."""

from __future__ import annotations

from collections import Counter

from anchorwatt.assessment import Assessment, Finding, Verdict
from anchorwatt.papers import screens
from anchorwatt.papers.as_json import Plain, finding
from anchorwatt.papers.page import Content, Words, page, section, table
from anchorwatt.papers.select import worst_first
from anchorwatt.units import System, show

TITLES = {
    Verdict.FAILS: "Fails",
    Verdict.CANNOT_TELL: "Cannot tell",
    Verdict.NEAR: "Holds, with little to spare",
    Verdict.HOLDS: "Holds",
}


def screen(assessment: Assessment, system: System) -> Content:
    """All checks with their figures, grouped by verdict and then by subject."""
    found = worst_first(assessment.checks)
    counts = Counter(one.verdict for one in found)
    told = ", ".join(f"{counts[verdict]} {verdict.value}" for verdict in TITLES if counts[verdict])
    groups = [
        section(f"{title}: {counts[verdict]}", *_subjects([one for one in found if one.verdict is verdict], system))
        for verdict, title in TITLES.items()
        if counts[verdict]
    ]
    return page(
        screens.about(assessment), section(f"{len(found)} checks: {told}"), *groups, screens.cautions(assessment)
    )


def _subjects(found: list[Finding], system: System) -> list[Content]:
    parts: list[Content] = []
    for subject in dict.fromkeys(one.subject for one in found):
        rows = []
        for one in found:
            if one.subject == subject:
                value, limit = screens.found_and_limit(one, system)
                words = Words(one.id, "strong")
                words = words.then("\n").joined(screens.question(one))
                rows.append((words, value, limit, show(one.margin, one.margin_dimension, system)))
        parts.append(Words(subject, "subject"))
        parts.append(table(("", "found", "limit", "left"), ("<", ">", ">", ">"), rows, free=0, shares=(37, 7, 7, 5)))
    return parts


def plain(assessment: Assessment) -> list[Plain]:
    """All checks, worst first."""
    return [finding(one) for one in worst_first(assessment.checks)]
