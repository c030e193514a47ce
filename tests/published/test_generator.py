"""Generating sets and what diesel gives, against published figures."""

from __future__ import annotations

import pytest

from anchorwatt import catalogue
from anchorwatt.catalogue.generator import Generator
from anchorwatt.physics.combustion import carbon_dioxide_emitted
from anchorwatt.physics.engine import DIESEL_HEATING_VALUE, fuel_volume
from anchorwatt.physics.generator import D2_LOADS, D2_WEIGHTS, cycle_specific_fuel, generator_fuel_flow

HOUR = 3600.0
BANDS = {1.00: (235, 260), 0.75: (230, 250), 0.50: (240, 265), 0.25: (280, 330), 0.10: (420, 550)}
"""g/kWh at the shaft of small diesels of 20 to 60 kW. From memory."""


def flow(name: str, load: float) -> tuple[float, float]:
    """W at the terminals and kg/s of a set of the catalogue at a share of its rating."""
    made = catalogue.find("generator", name)
    assert isinstance(made, Generator)
    power = load * made.rated_power
    figures = (made.efficiency, made.speed, made.displacement, made.friction_pressure, made.indicated_efficiency)
    return power, generator_fuel_flow(power, *(float(one) for one in figures))


def litres_an_hour(name: str, load: float) -> float:
    return 1000.0 * fuel_volume(flow(name, load)[1] * HOUR)


@pytest.mark.parametrize(
    ("load", "weight"),
    list(zip((1.00, 0.75, 0.50, 0.25, 0.10), (0.05, 0.25, 0.30, 0.30, 0.10), strict=True)),
    ids=[f"NOx-Technical-Code-3.2-cycle-D2-{load}" for load in (100, 75, 50, 25, 10)],
)
def test_cycle_of_auxiliary_engines_of_constant_speed(load: float, weight: float) -> None:
    """At that load alone the cycle burns what the load burns, weighted as printed."""
    row = D2_LOADS.index(load)
    powers = [1000.0 * one for one in D2_LOADS]
    flows = [1e-4 if number == row else 0.0 for number in range(len(D2_LOADS))]
    mean_load = 0.05 * 1.00 + 0.25 * 0.75 + 0.30 * 0.50 + 0.30 * 0.25 + 0.10 * 0.10
    assert cycle_specific_fuel(flows, powers) * mean_load * 1000.0 / 1e-4 == pytest.approx(weight, abs=1e-9)
    assert sum(D2_WEIGHTS) == pytest.approx(1.0, abs=1e-9)


def test_eu_2020_728_a_litre_of_diesel_is_2640_g_of_carbon_dioxide() -> None:
    assert 1000.0 * carbon_dioxide_emitted(0.001) == pytest.approx(2640.0, abs=0.5)


def test_public_8_kw_generator_chart_at_full_load_is_30_9_percent() -> None:
    """Trade chart, maker withheld: 2.61 L/h at 8 kW; within the half point that the list of checks allows."""
    ours, burnt = flow("diesel set 8 kW 60 Hz", 1.0)
    assert ours / (burnt * DIESEL_HEATING_VALUE) == pytest.approx(0.309, abs=0.005)


@pytest.mark.parametrize(
    ("name", "load", "litres"),
    [
        pytest.param("diesel set 8 kW 60 Hz", 0.50, 1.48, id="public-8-kW-chart-50"),
        pytest.param("diesel set 8 kW 60 Hz", 0.75, 2.05, id="public-8-kW-chart-75"),
        pytest.param("diesel set 8 kW 60 Hz", 1.00, 2.61, id="public-8-kW-chart-100"),
        pytest.param("diesel set 10 kW 50 Hz", 0.50, 2.01, id="public-10-kW-chart-50"),
        pytest.param("diesel set 10 kW 50 Hz", 0.75, 2.46, id="public-10-kW-chart-75"),
        pytest.param("diesel set 10 kW 50 Hz", 1.00, 3.33, id="public-10-kW-chart-100"),
    ],
)
def test_the_catalogues_sets_burn_what_trade_charts_say(name: str, load: float, litres: float) -> None:
    """Makers withheld. Within a tenth: our sets are others than those, and the 10 kW chart is no straight line."""
    assert litres_an_hour(name, load) == pytest.approx(litres, rel=0.10)


@pytest.mark.parametrize("name", catalogue.names("generator"), ids=lambda name: f"from-memory-{name}")
@pytest.mark.parametrize("load", BANDS)
def test_specific_fuel_at_the_shaft_lies_in_the_bands_of_small_diesels(load: float, name: str) -> None:
    lowest, highest = BANDS[load]
    made = catalogue.find("generator", name)
    assert isinstance(made, Generator)
    power, burnt = flow(name, load)
    assert lowest <= burnt / (power / made.efficiency) * 3.6e9 <= highest


@pytest.mark.parametrize(
    ("name", "lowest", "highest"),
    [
        pytest.param("diesel set 6 kW 50 Hz", 170.0, 300.0, id="from-memory-6-kW"),
        pytest.param("diesel set 10 kW 50 Hz", 240.0, 400.0, id="from-memory-10-kW"),
    ],
)
def test_noise_service_life_and_mass_of_marine_sets(name: str, lowest: float, highest: float) -> None:
    """60 to 67 dB(A) at 1 m shielded, oil every 150 to 250 h, overhaul at 3000 to 6000 h; 170 to 220 kg of 6 kW and 240
    to 300 kg of 10 kW, to which exhaust, mounts and fuel lines come."""
    made = catalogue.find("generator", name)
    assert isinstance(made, Generator)
    assert 60.0 <= made.noise <= 67.0
    assert 150.0 <= made.service_interval / HOUR <= 250.0
    assert 3000.0 <= made.life / HOUR <= 6000.0
    assert lowest <= made.mass <= highest
