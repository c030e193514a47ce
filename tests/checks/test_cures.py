"""Every check says where in the design file its cure begins."""

from __future__ import annotations

import pytest

from anchorwatt.checks import rules
from anchorwatt.checks.cures import CURES
from anchorwatt.design import parse, starter_text
from anchorwatt.design.form import form


def test_every_rule_has_a_cure_and_no_other_has_one() -> None:
    assert set(CURES) == {rule.id for rule in rules()}


@pytest.mark.parametrize("key", sorted(set(CURES.values())))
def test_a_cure_is_a_key_of_the_design_file(key: str) -> None:
    trawler = parse(starter_text("trawler-14m"))
    above, _, last = key.rpartition(".")
    if above:
        group = form(trawler, above)
        assert key in [*(one.key for one in group.fields), *(one.key for one in group.groups)]
    else:
        assert form(trawler, last).key == last
