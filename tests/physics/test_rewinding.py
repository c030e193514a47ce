"""The same alternator wound for another voltage."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt.errors import OutOfRange
from anchorwatt.physics.alternator import RECTIFIER_DROP, REFERENCE_SPEED, alternator_losses
from anchorwatt.physics.rewinding import rewound_current, rewound_efficiency

volts = st.sampled_from([14.1, 28.2, 56.4])
efficiencies = st.floats(0.5, 0.8)


@given(volts, volts, efficiencies)
def test_losses_change_by_the_rectifiers_alone(voltage: float, other: float, efficiency: float) -> None:
    """At the same output and speed, cold: copper, iron, field and bearings as before."""
    amps = 150.0
    changed, found = rewound_current(amps, voltage, other), rewound_efficiency(efficiency, voltage, other)
    before = alternator_losses(0.5 * amps, voltage, REFERENCE_SPEED, 25.0, amps, efficiency)
    after = alternator_losses(0.5 * changed, other, REFERENCE_SPEED, 25.0, changed, found)
    assert before - after == pytest.approx(RECTIFIER_DROP * 0.5 * (amps - changed), abs=1e-6)


@given(volts, volts, efficiencies)
def test_there_and_back_is_the_same_machine(voltage: float, other: float, efficiency: float) -> None:
    there = rewound_efficiency(efficiency, voltage, other)
    assert rewound_efficiency(there, other, voltage) == pytest.approx(efficiency)


@given(efficiencies)
def test_a_higher_voltage_wastes_less(efficiency: float) -> None:
    assert efficiency < rewound_efficiency(efficiency, 14.1, 28.2) < rewound_efficiency(efficiency, 14.1, 56.4)


@given(volts, volts)
def test_the_rated_output_stays(voltage: float, other: float) -> None:
    assert rewound_current(100.0, voltage, other) * other == pytest.approx(100.0 * voltage)


@pytest.mark.parametrize(("voltage", "other"), [(0.0, 14.1), (14.1, 0.0)])
def test_a_voltage_must_be_positive(voltage: float, other: float) -> None:
    with pytest.raises(OutOfRange):
        rewound_current(100.0, voltage, other)
    with pytest.raises(OutOfRange):
        rewound_efficiency(0.67, voltage, other)
