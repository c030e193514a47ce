"""Transformer efficiency against the energy rules of the United States."""

from __future__ import annotations

import pytest

from anchorwatt.physics.transformer import efficiency, load_of_best_efficiency


@pytest.mark.parametrize(
    ("rating", "printed"),
    [(15e3, 97.70), (25e3, 98.00), (37.5e3, 98.20), (50e3, 98.30)],
    ids=lambda value: f"WAC-51-11C-40507-single-phase-dry-{value:g}",
)
def test_required_efficiency_is_reached_by_the_losses_that_it_implies(rating: float, printed: float) -> None:
    """The rule states it at 35 % load, where such a transformer is best: core loss = copper loss there."""
    losses = 0.35 * rating * (100.0 / printed - 1.0)
    core = 0.5 * losses
    copper = 0.5 * losses / 0.35**2
    assert load_of_best_efficiency(core, copper) == pytest.approx(0.35, rel=1e-12)
    assert 100.0 * efficiency(0.35 * rating, rating, core, copper) == pytest.approx(printed, abs=0.005)
    assert efficiency(rating, rating, core, copper) < efficiency(0.35 * rating, rating, core, copper)


def test_from_memory_marine_isolation_transformer_of_5_kva_is_95_to_97_percent_at_full_load() -> None:
    """No-load loss 25 to 75 W for 5 kVA, also from memory; copper loss here 140 W."""
    assert 0.95 <= efficiency(5000.0, 5000.0, 50.0, 140.0) <= 0.97
