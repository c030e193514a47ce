"""Packages: each is the design with its changes, worked out again; the design stays as it is."""

from __future__ import annotations

from decimal import Decimal

import pytest

from anchorwatt import design
from anchorwatt.errors import BadDesign
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.offer import bought, priced
from anchorwatt.sizing.packages import Figures, Offered, changed_by, figures, offered
from anchorwatt.sizing.weight import cables_at, weight
from anchorwatt.sizing.wiring import wiring
from tests.design.sample import SAMPLE


def boat(changes: str) -> design.Design:
    return design.parse(f"{SAMPLE}\noffer:\n  packages:\n    larger:\n      about: More.\n      changes: {changes}\n")


def base(made: design.Design) -> Figures:
    specification = made.specification
    simulation = Simulation(specification)
    wired = wiring(specification, simulation)
    return figures(
        simulation,
        priced(specification, bought(wired, specification.overlay)),
        weight(specification, cables_at(specification, wired)),
    )


def packages(made: design.Design) -> tuple[Offered, ...]:
    return offered(made, made.specification.offer.packages, base(made))


def test_a_package_is_worked_out_from_its_own_design() -> None:
    made = boat("{dc.bank.parallel: 4}")
    before = made.document.text
    (one,) = packages(made)
    assert (one.design.dc.bank.parallel, made.dc.bank.parallel) == (4, 2)
    assert made.document.text == before
    assert one.more_hold > 0.0
    modules = [item for item in design.specify(made).items if item.kind == "battery_module"]
    by_hand = base(one.design)
    assert one.figures.total == by_hand.total
    assert one.figures.mass == by_hand.mass
    assert one.more_mass >= modules[0].count * modules[0].mass  # cables grow with the bank
    assert one.more_to_pay is not None
    assert one.more_to_pay > Decimal(modules[0].count) * Decimal(str(modules[0].price))  # labour and margin too


def test_changes_that_only_pass_together_are_made_together() -> None:
    module = "{like: lithium 25.6 V 200 Ah, price: 2 000 EUR}"
    made = boat(f'{{dc.bank.series: 1, dc.bank.module: "{module}"}}'.replace('"', ""))
    (one,) = design.specify(made).offer.packages
    changed = changed_by(made, one)
    assert changed.dc.bank.series == 1
    assert str(changed.dc.bank.module.price) == "2 000 EUR"


def test_a_key_without_a_value_is_taken_out() -> None:
    made = boat("{dc.bank.module.charge_current: }")
    (one,) = design.specify(made).offer.packages
    assert changed_by(made, one).dc.bank.module.charge_current != made.dc.bank.module.charge_current


def test_a_package_that_does_not_pass_is_told_at_its_place() -> None:
    made = boat("{dc.bank.series: 7}")
    line = made.document.text.splitlines().index("    larger:") + 1
    with pytest.raises(BadDesign, match=rf":{line}: offer.packages.larger: found a package that does not pass: dc"):
        packages(made)


def test_a_difference_to_an_unknown_price_is_unknown() -> None:
    made = boat('{dc.bank.module: "{like: lithium 12.8 V 200 Ah, price: 900 USD}"}'.replace('"', ""))
    (one,) = packages(made)
    assert one.figures.total is None
    assert one.more_to_pay is None
