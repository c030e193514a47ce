"""What the trials came to, for the hand-over file: what failed first, then every reading by system."""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING, Final

from anchorwatt.papers.page import Content, Meaning, Paragraph, Words, section, table
from anchorwatt.papers.sets.crew import BLANK

if TYPE_CHECKING:
    from anchorwatt.assessment.commissioning import Trial
    from anchorwatt.assessment.trial_results import Filled, Outcome, TrialResults, Verdict

TOLD: Final = (
    "As whoever tested wrote it down, on the day named; what was to be accepted is for the sea and the air of the "
    "sheet that they had. A verdict is theirs: this file only repeats it."
)
TO_FILL_IN: Final = (
    "Not given when this was printed: fill in from the commissioning file, and sign each. Its table, filled in and "
    "given back, is printed here instead."
)
FAILED: Final = "Mend and test these again before the boat is used, and what follows from them."
FOREIGN: Final = (
    "The table has these, but the design, as it is now, has no such trial or reading: it was changed since, or a name "
    "was."
)
DOUBTED: Final = "Passed, but to be looked at again"
MEANINGS: Final[dict[Verdict, Meaning]] = {
    "pass": "holds",
    "fail": "fails",
    "no verdict": "near",
    "not tested": "cannot_tell",
    "written down": "",
}
ALWAYS: Final = ("pass", "fail", "not tested")
SHOWN: Final = {"pass": "passes", "fail": "fails"}


def to_fill_in(trials: Sequence[Trial]) -> list[Content]:
    """A line for each trial, where nobody gave results."""
    rows = [(Words(one.name, "strong").then(f"\n{one.system}", "aside"), BLANK, BLANK, BLANK) for one in trials]
    heads = ("trial", "found", "verdict", "date, by whom")
    return [Paragraph(TO_FILL_IN), table(heads, ("<", "<", "<", "<"), rows, shares=(12, 7, 4, 8))]


def told(results: TrialResults) -> list[Content]:
    """What failed, what is in doubt, all readings by system, and what belongs to none."""
    failed, doubtful = results.of("fail"), results.doubtful
    parts: list[Content] = [Paragraph(TOLD), _counts(results)]
    if failed:
        parts.append(section("Failed", Paragraph(FAILED), _readings(failed, named=True)))
    if doubtful:
        rows = [(_named(one), _accepted(one), _found(one), one.doubt) for one in doubtful]
        heads = ("reading", "accepted", "found", "why")
        parts.append(section(DOUBTED, table(heads, ("<", "<", "<", "<"), rows, shares=(13, 8, 8, 11))))
    systems = dict.fromkeys(one.trial.system for one in results.outcomes)
    of_systems = (
        section(name, _readings([one for one in results.outcomes if one.trial.system == name], named=False))
        for name in systems
    )
    parts.append(section("All readings, by system", *of_systems))
    if results.foreign:
        rows = [(_both(one.trial, one.reading), one.found, one.verdict, _when(one)) for one in results.foreign]
        heads = ("reading", "found", "verdict", "date, by whom")
        others = table(heads, ("<", "<", "<", "<"), rows, shares=(13, 12, 5, 8))
        parts.append(section("Not of this design", Paragraph(FOREIGN), others))
    return parts


def _counts(results: TrialResults) -> Content:
    rows = [
        (Words(SHOWN.get(verdict, verdict), meaning), str(len(results.of(verdict))))
        for verdict, meaning in MEANINGS.items()
        if verdict in ALWAYS or results.of(verdict)
    ]
    return table(("verdict", "readings"), ("<", ">"), rows)


def _readings(some: Sequence[Outcome], *, named: bool) -> Content:
    """A row a reading; its trial's name in each row, or above the first of it."""
    rows, before = [], ""
    for one in some:
        first = named or one.trial.name != before
        before = one.trial.name
        verdict = Words(SHOWN.get(one.verdict, one.verdict), MEANINGS[one.verdict])
        when = _when(one.filled) if one.filled is not None else ""
        rows.append((_named(one) if first else Words(one.reading.what), _accepted(one), _found(one), verdict, when))
    heads = ("reading", "accepted", "found", "verdict", "date, by whom")
    return table(heads, ("<", "<", "<", "<", "<"), rows, shares=(13, 8, 7, 4, 8))


def _named(one: Outcome) -> Words:
    return _both(one.trial.name, one.reading.what)


def _both(trial: str, reading: str) -> Words:
    return Words(trial, "strong").then(f"\n{reading}")


def _accepted(one: Outcome) -> str:
    said = one.filled
    if said is None:
        return ""
    if said.accept_from and said.accept_from == said.to:
        return f"{said.to} {said.unit}".strip()
    if said.accept_from and said.to:
        return f"{said.accept_from} to {said.to} {said.unit}".strip()
    if said.accept_from:
        return f"at least {said.accept_from} {said.unit}".strip()
    if said.to:
        return f"at most {said.to} {said.unit}".strip()
    return f"{said.expected} {said.unit}".strip()


def _found(one: Outcome) -> str:
    said = one.filled
    if said is None or not said.found:
        return ""
    # Whoever wrote a bare figure meant the row's unit.
    return f"{said.found} {said.unit}" if said.unit and said.found[-1:].isdigit() else said.found


def _when(said: Filled) -> str:
    return "\n".join(part for part in (said.date, said.by) if part)
