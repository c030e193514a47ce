"""The loss form of a converter against measured inverters and handbook-like figures.

pvlib carries the Sandia inverter model fitted to the California Energy Commission's measurements of 3264
solar inverters. If the three losses are the right form, constants exist that give each of those curves back.
"""

from __future__ import annotations

import numpy as np
import pvlib
import pytest
from scipy.optimize import minimize_scalar

from anchorwatt.physics.inverter import converter_input, converter_output, output_of_best_efficiency
from anchorwatt.physics.weighted_efficiency import EUROPEAN, european_efficiency


def test_cec_measured_inverters_via_pvlib_sandia_model_are_of_this_form() -> None:
    """Every sixteenth of the database, 10 to 100 % load: 95 of 100 within 0.05 points of efficiency."""
    database = pvlib.pvsystem.retrieve_sam("cecinverter")
    worst = []
    for name in database.columns[::16]:
        row = database[name]
        rated = float(row["Paco"])
        taken = np.linspace(0.1, 1.0, 10) * float(row["Pdco"])
        given = np.asarray(pvlib.inverter.sandia(float(row["Vdco"]), taken, row))
        share = given / rated
        terms = np.stack([np.ones_like(share), share, share**2], axis=1)
        fixed, slope, quadratic = np.linalg.lstsq(terms * rated / taken[:, None], np.ones(10))[0]
        ours = [
            output / converter_input(output, rated, fixed * rated, slope - 1.0, quadratic) for output in given.tolist()
        ]
        worst.append(np.abs(np.array(ours) - given / taken).max())
    assert len(worst) > 200
    assert np.quantile(worst, 0.95) < 0.0005


@pytest.mark.parametrize(
    ("load", "efficiency"),
    [(0.05, 83.9), (0.10, 89.7), (0.20, 92.6), (0.30, 93.3), (0.50, 93.4), (0.75, 92.8), (1.00, 91.9)],
    ids=lambda value: f"from-memory-boat-inverter-{value}",
)
def test_generic_boat_inverter(load: float, efficiency: float) -> None:
    """No-load 0.8 % of rating, linear 0.03, quadratic 0.05; printed to 0.1 point. Constants from memory."""
    output = load * 3000.0
    taken = converter_input(output, 3000.0, 24.0, 0.03, 0.05)
    assert 100.0 * output / taken == pytest.approx(efficiency, abs=0.051)
    assert converter_output(taken, 3000.0, 24.0, 0.03, 0.05) == pytest.approx(output, rel=1e-12)


def test_from_memory_inverters_are_best_at_a_quarter_to_a_half_of_their_rating() -> None:
    assert 0.25 <= output_of_best_efficiency(3000.0, 24.0, 0.05) / 3000.0 <= 0.50


@pytest.mark.parametrize(
    ("no_load", "linear", "quadratic"),
    [(24.0, 0.03, 0.05), (12.0, 0.028, 0.042), (45.0, 0.05, 0.09)],
    ids=lambda value: f"scipy-minimize_scalar-{value}",
)
def test_output_of_best_efficiency_is_where_scipy_finds_it(no_load: float, linear: float, quadratic: float) -> None:
    """scipy.optimize.minimize_scalar on the efficiency itself; the analytic place is fixed = quadratic loss."""
    found = minimize_scalar(
        lambda output: -output / converter_input(output, 3000.0, no_load, linear, quadratic),
        bounds=(1.0, 3000.0),
        method="bounded",
        options={"xatol": 1e-6},
    )
    # The curve is flat at its top: its height is found to 1e-12, its place to the root of that.
    assert output_of_best_efficiency(3000.0, no_load, quadratic) == pytest.approx(found.x, rel=1e-4)


def test_from_memory_european_weights_are_those_of_six_loads_and_make_one() -> None:
    """0.03, 0.06, 0.13, 0.10, 0.48 and 0.20 at 5, 10, 20, 30, 50 and 100 %, from memory."""
    assert dict(EUROPEAN) == {0.05: 0.03, 0.10: 0.06, 0.20: 0.13, 0.30: 0.10, 0.50: 0.48, 1.00: 0.20}
    assert sum(weight for _, weight in EUROPEAN) == pytest.approx(1.0, abs=1e-12)


def test_from_memory_european_efficiency_of_the_generic_boat_inverter() -> None:
    """The table of `test_generic_boat_inverter`, printed to 0.1 point, under those weights."""
    printed = 0.03 * 83.9 + 0.06 * 89.7 + 0.13 * 92.6 + 0.10 * 93.3 + 0.48 * 93.4 + 0.20 * 91.9
    assert 100.0 * european_efficiency(3000.0, 24.0, 0.03, 0.05) == pytest.approx(printed, abs=0.051)
