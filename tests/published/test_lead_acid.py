"""Lead-acid batteries against worked examples and published statements."""

from __future__ import annotations

import pytest

from anchorwatt.catalogue.lead_acid_battery import LeadAcidBattery
from anchorwatt.catalogue.part import names, typed
from anchorwatt.physics.lead_acid import lead_acid_acceptance, lead_acid_charge_time, peukert_time

AH = 3600.0


def test_electrotechnik_net_peukert_law_100_ah_exponent_1_2_gives_5_a_for_14_5_h() -> None:
    """Printed as t = C/I^k, the capacity being that at 1 A; at the 20 h rate it is 20 h of (100/20)^(1/1.2) A."""
    rated = (100.0 / 20.0) ** (1.0 / 1.2)
    assert peukert_time(5.0, 20.0 * rated * AH, 1.2) / AH == pytest.approx(14.5, abs=0.05)


def test_woodbridge_1935_current_in_amperes_is_at_most_the_charge_missing_in_ampere_hours() -> None:
    """As a public note on Woodbridge's law has it, and that an empty battery may begin at 80 % of its capacity."""
    assert lead_acid_acceptance(0.0, 100.0 * AH, 0.8 / 3600.0, 500.0) == pytest.approx(80.0)
    assert lead_acid_acceptance(0.7, 100.0 * AH, 0.8 / 3600.0, 500.0) == pytest.approx(30.0)


def test_woodbridge_1935_nine_tenths_take_2_to_3_h() -> None:
    """The note: 90 % of the charge comes back in 2 to 3 hours."""
    time = lead_acid_charge_time(0.0, 0.9, 100.0 * AH, 0.8 / 3600.0, 500.0, 1.0) / AH
    assert time == pytest.approx(2.5, abs=0.5)


def test_common_practice_no_source_the_last_fifth_takes_longer_than_the_fifth_before() -> None:
    def time(first: float, last: float) -> float:
        return lead_acid_charge_time(first, last, 100.0 * AH, 0.2 / 3600.0, 100.0, 0.85)

    assert time(0.79, 0.99) > 2.5 * time(0.59, 0.79)


@pytest.mark.parametrize("name", names("lead_acid_battery"), ids=lambda name: f"from-memory-{name}")
def test_rows_lie_within_what_such_batteries_are(name: str) -> None:
    """Exponent 1.05 to 1.3, 21 to 33 kg for each nominal kWh, 2.08 to 2.15 V a cell at rest when full."""
    battery = typed(LeadAcidBattery, name)
    cells = battery.nominal_voltage / 2.0
    assert 1.05 <= battery.peukert <= 1.3
    assert 21.0 <= battery.mass / (battery.nominal_voltage * battery.capacity / 3.6e6) <= 33.0
    assert 2.08 <= battery.full_voltage / cells <= 2.15
