"""Ideal loads of plain rooms against physics that is worked out by other means, and against laws."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import replace
from pathlib import Path
from typing import Any

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.integrate import solve_ivp

from anchorwatt import design
from anchorwatt.climate import Weather, weather, weather_year
from anchorwatt.climate.plane import irradiance_on
from anchorwatt.design.specification import Layer, Outside, Place
from anchorwatt.errors import BadWeather, OutOfRange
from anchorwatt.physics.envelope import STEFAN_BOLTZMANN, periodic_thermal_transmittance, u_value
from anchorwatt.physics.moist_air import CP_AIR, density
from anchorwatt.physics.sun_and_sky import sky_share
from anchorwatt.physics.window import angle_modifier, diffuse_modifier
from anchorwatt.simulation.arrays import Floats
from anchorwatt.simulation.enclosure import Enclosure, Face, Film, Gain, Shade, Window, sun_on_faces
from anchorwatt.simulation.enclosure_arrays import Year, air_density, enclosure_boat, walls_of
from anchorwatt.simulation.ideal_loads import IdealLoads, ideal_loads, run_smoothly
from tests.simulation import boats

DAY, HOUR = 86_400.0, 3600.0
TEMPERATE = "pvlib:723170TYA.CSV"
BOARDS = (Layer("boards", 0.02, 0.14, 530.0, 900.0), Layer("fibre", 0.07, 0.04, 12.0, 840.0))
CONCRETE = (Layer("foam", 0.06, 0.04, 20.0, 1400.0), Layer("concrete", 0.2, 1.4, 2300.0, 900.0))
UPRIGHT = math.pi / 2


def steady(
    days: int,
    dry_bulb: float = 0.0,
    swing: float = 0.0,
    sky: float | None = None,
    pressure: float = 101_325.0,
    step: float = 900.0,
    lead_in: int = 10,
) -> Weather:
    """Weather made for a test: a daily sine, the sky as warm as the air unless told, no sun, no wind."""
    time = np.arange(round((days + lead_in) * DAY / step) + 1, dtype=np.float64) * step - lead_in * DAY
    air = dry_bulb + swing * np.sin(2.0 * np.pi * time / DAY)
    zero = np.zeros_like(time)
    return Weather(
        place_name="nowhere",
        source="made for a test",
        latitude=0.7,
        longitude=0.0,
        year=2023,
        month=1,
        day=1,
        step=step,
        time=time,
        dry_bulb=air,
        dew_point=zero - 20.0,
        humidity_ratio=zero + 0.0007,
        pressure=zero + pressure,
        wind_speed=zero,
        wind_direction=zero,
        direct_normal=zero,
        diffuse_horizontal=zero,
        global_horizontal=zero,
        sky_temperature=air if sky is None else zero + sky,
        sun_elevation=zero - 0.5,
        sun_azimuth=zero,
        sea_temperature=zero + 15.0,
    )


def faces(layers: tuple[Layer, ...] = BOARDS, beyond: float | str = "air", **films: Any) -> list[Face]:
    """A cube of 3 m."""
    sides = [Face(n, 9.0, layers, azimuth=a * UPRIGHT, beyond=beyond, **films) for a, n in enumerate("NESW")]
    return [
        *sides,
        Face("roof", 9.0, layers, tilt=0.0, beyond=beyond, **films),
        Face("floor", 9.0, layers, tilt=math.pi, beyond=beyond, **films),
    ]


def cube(layers: tuple[Layer, ...] = BOARDS, **changes: Any) -> Enclosure:
    """A cube of 3 m held between 20 and 26 °C."""
    return Enclosure("cube", 27.0, **{"faces": faces(layers), "heating": 20.0, "cooling": 26.0, **changes})


SUNNY = weather_year(TEMPERATE)


@pytest.fixture(scope="module")
def fortnight() -> Weather:
    """Two weeks of spring with real sun, and a week before them."""
    return weather(Place(math.nan, math.nan, math.nan, TEMPERATE, 4, 10, None, (15.0,) * 12, math.nan), 7, 13, 900.0)


# ---- steady state


def test_steady_heating_is_conductance_times_difference() -> None:
    """Walls, window, leakage: every W/K by hand. Between surfaces alike nothing radiates."""
    film = Film(8.0, 0.0)
    room = cube(
        faces=faces(outside_film=25.0, inside_film=film),
        windows=[Window("S", 2.0, 2.8, 0.7)],
        leakage=0.5 / HOUR,
        ventilation=0.01,
        gains=[Gain(100.0, 0.0)],
    )
    layers = [(x.thickness, x.conductivity, x.density, x.specific_heat) for x in BOARDS]
    air = density(20.0, 0.0007, 101_325.0) * (0.5 / HOUR * 27.0 + 0.01) * CP_AIR
    conductance = u_value(layers, 25.0, 8.0) * 52.0 + 2.8 * 2.0 + air
    found = ideal_loads(room, steady(1, dry_bulb=-5.0))
    assert found.heating[0] == pytest.approx(conductance * 25.0 - 100.0, rel=1e-5)
    assert found.cooling.max() == 0.0
    assert found.temperature[0] == pytest.approx(20.0)


def test_a_given_film_is_kept_whole_however_it_splits() -> None:
    """Walls alike all round: the star has no part, so that only the convective part carries heat."""
    layers = [(x.thickness, x.conductivity, x.density, x.specific_heat) for x in BOARDS]
    for film, convective in ((Film(3.1, 5.1), 3.1), (8.2, 8.2 - 5.143)):
        found = ideal_loads(cube(faces=faces(outside_film=20.0, inside_film=film)), steady(1, dry_bulb=0.0))
        assert found.heating[0] == pytest.approx(u_value(layers, 20.0, convective) * 54.0 * 20.0, rel=1e-4)


def test_radiant_heat_meets_the_surfaces() -> None:
    """Half of a gain that is all radiant leaves through the walls before it warms the air."""
    shone = ideal_loads(cube(gains=[Gain(500.0, 1.0)]), steady(1)).heating[0, -1]
    blown = ideal_loads(cube(gains=[Gain(500.0, 0.0)]), steady(1)).heating[0, -1]
    assert shone > blown + 20.0


def test_the_air_is_thinner_on_a_mountain() -> None:
    alone = [Face("only", 1.0, BOARDS, beyond="nothing")]
    room = cube(faces=alone, leakage=1.0 / HOUR)
    low, high = (ideal_loads(room, steady(1, pressure=p)).heating[0, -1] for p in (101_325.0, 83_400.0))
    assert high / low == pytest.approx(83_400.0 / 101_325.0, rel=1e-3)


def test_the_ground_is_touched_without_a_film() -> None:
    layers = [(x.thickness, x.conductivity, x.density, x.specific_heat) for x in BOARDS]
    room = cube(faces=faces(beyond=5.0, inside_film=Film(6.0, 0.0)))
    assert ideal_loads(room, steady(1, dry_bulb=-30.0)).heating[0, -1] == pytest.approx(
        u_value(layers, math.inf, 6.0) * 54.0 * 15.0, rel=1e-3
    )


def test_nothing_passes_an_adiabatic_room() -> None:
    found = ideal_loads(cube(faces=faces(beyond="nothing"), heating=None, cooling=None), steady(3, dry_bulb=-20.0))
    assert found.temperature[0] == pytest.approx(20.0)


@pytest.mark.parametrize("film", [25.0, Film(20.0, 5.0)])
def test_the_cold_sky_draws_its_heat_through_the_film(film: float | Film) -> None:
    """A roof without inside film: the flow follows from the sol-air temperature by hand."""
    roof = Face("roof", 10.0, BOARDS, tilt=0.0, emittance=0.8, outside_film=film, inside_film=Film(8.0, 0.0))
    found = ideal_loads(cube(faces=[roof]), steady(1, dry_bulb=0.0, sky=-25.0))
    lacking = 0.8 * STEFAN_BOLTZMANN * sky_share(0.0) * (273.15**4 - 248.15**4)
    layers = [(x.thickness, x.conductivity, x.density, x.specific_heat) for x in BOARDS]
    wanted = 10.0 * u_value(layers, 25.0, 8.0) * (20.0 + lacking / 25.0)
    assert found.heating[0, -1] == pytest.approx(wanted, rel=1e-4)


def test_a_window_sees_the_cold_sky_too() -> None:
    wall = Face("S", 10.0, BOARDS, outside_film=25.0, inside_film=Film(8.0, 0.0), emittance=0.0)
    glass = Window("S", 10.0, 2.0, 0.7, emittance=0.84)
    found = ideal_loads(cube(faces=[wall], windows=[glass]), steady(1, dry_bulb=0.0, sky=-25.0))
    lacking = 0.84 * STEFAN_BOLTZMANN * sky_share(UPRIGHT) * (273.15**4 - 248.15**4)
    assert found.heating[0, -1] == pytest.approx(10.0 * 2.0 * (20.0 + lacking / 25.0), rel=1e-4)


# ---- daily swing


@pytest.mark.parametrize("layers", [BOARDS, CONCRETE], ids=["boards", "concrete"])
def test_a_daily_wave_comes_through_as_iso_13786_says(layers: tuple[Layer, ...]) -> None:
    """Amplitude and lag of the heat into a room at constant temperature, by the exact transfer matrix."""
    film = Film(8.0, 0.0)
    room = cube(
        layers, faces=faces(layers, outside_film=25.0, inside_film=film, emittance=0.0), heating=20.0, cooling=20.0
    )
    found = ideal_loads(room, steady(2, dry_bulb=20.0, swing=10.0, lead_in=20))
    into = (found.cooling - found.heating)[0, -24:]
    phase = np.exp(-2.0j * np.pi * (np.arange(24) + 0.5) / 24.0)
    wave = 2.0 * np.mean(into * phase) * 1.0j  # of the sine
    spread = math.sin(math.pi / 24.0) / (math.pi / 24.0)  # an hour's mean of a wave of a day
    material = [(x.thickness, x.conductivity, x.density, x.specific_heat) for x in layers]
    exact = periodic_thermal_transmittance(material, DAY, 25.0, 8.0) * 54.0 * 10.0 * spread
    assert abs(wave) == pytest.approx(abs(exact), rel=0.02)
    assert float(np.angle(wave / exact)) == pytest.approx(0.0, abs=0.05)


# ---- the whole balance against an integrator of other people's


def cells(layer: Layer, count: int) -> tuple[float, float]:
    """Heat capacity and conductance of each of many equal cells, for each m²."""
    cell = layer.thickness / count
    return cell * layer.density * layer.specific_heat, layer.conductivity / cell


def test_a_floating_room_against_solve_ivp(fortnight: Weather) -> None:
    """A roof, a floor on nothing and a window, written out anew with forty cells a layer."""
    foam, slab = CONCRETE
    roof = Face("roof", 12.0, (foam,), tilt=0.0, outside_film=20.0, inside_film=Film(2.0, 5.0))
    floor = Face("floor", 12.0, (slab,), tilt=math.pi, beyond="nothing", inside_film=Film(1.5, 5.0))
    south = Face("south", 3.0, (foam,), azimuth=math.pi, outside_film=20.0, inside_film=Film(2.5, 5.0))
    room = Enclosure(
        "room",
        30.0,
        [roof, floor, south],
        [Window("south", 3.0, 2.5, 0.7)],
        leakage=1.0 / HOUR,
        gains=[Gain(80.0, 0.5)],
        sun_shares={"floor": 0.9},
    )
    found = ideal_loads(room, fortnight)

    table, many = fortnight, 40
    flow = air_density(table) * 30.0 / HOUR * CP_AIR
    air_capacity = air_density(table) * 30.0 * CP_AIR
    glass = 1.0 / (1.0 / 2.5 - 1.0 / 20.0 - 1.0 / 7.5)
    roof_capacity, roof_conductance = cells(foam, many)
    slab_capacity, slab_conductance = cells(slab, many)
    level, upright = irradiance_on(table, 0.0, 0.0, 0.2), irradiance_on(table, UPRIGHT, math.pi, 0.2)
    strike = upright.beam + upright.around_sun
    angled = np.array([angle_modifier(c, 2) for c in upright.cosine.tolist()])
    rest = upright.diffuse - upright.around_sun
    spread = np.where(upright.cosine > 0.0, rest, upright.diffuse) * diffuse_modifier(2)
    sun = 0.9 * 3.0 * 0.7 * (strike * angled + spread)
    lacking = STEFAN_BOLTZMANN * ((table.dry_bulb + 273.15) ** 4 - (table.sky_temperature + 273.15) ** 4)
    roof_far = table.dry_bulb + (0.6 * (level.beam + level.diffuse) - 0.9 * lacking) / 20.0
    glass_far = table.dry_bulb - 0.84 * sky_share(UPRIGHT) * lacking / 20.0

    drives = np.stack((table.dry_bulb, roof_far, glass_far, sun))
    start = float(table.time[0])
    outer = 1.0 / (1.0 / 20.0 + 1.0 / glass)
    # The pane stores nothing: its inside surface and the star follow from the rest.
    weights = np.linalg.inv(np.array([[2.5 + 5.0 + outer, -5.0], [-5.0 * 3.0, 5.0 * (3.0 + 24.0)]]))
    half = np.ones(many + 1)
    half[[0, -1]] = 0.5

    def rates(t: float, y: Floats) -> Floats:
        row, part = divmod((t - start) / table.step, 1.0)
        now = drives[:, int(row)]
        outdoor, top, pane_far, shining = now + part * (drives[:, int(row) + 1] - now)
        air, up, down = y[0], y[1 : many + 2], y[many + 2 :]
        known = np.array([2.5 * air + outer * pane_far, 5.0 * 12.0 * (up[-1] + down[-1]) + 40.0])
        pane, star = weights @ known
        into_up, into_down = np.zeros(many + 1), np.zeros(many + 1)
        for into, node, conductance in ((into_up, up, roof_conductance), (into_down, down, slab_conductance)):
            passed = conductance * np.diff(node)
            into[:-1] += passed
            into[1:] -= passed
        into_up[0] += 20.0 * (top - up[0])
        into_up[-1] += 2.0 * (air - up[-1]) + 5.0 * (star - up[-1])
        into_down[-1] += 1.5 * (air - down[-1]) + 5.0 * (star - down[-1]) + shining / 12.0
        into_air = 12.0 * (2.0 * (up[-1] - air) + 1.5 * (down[-1] - air)) + 3.0 * 2.5 * (pane - air)
        into_air += flow * (outdoor - air) + 40.0
        into_up /= half * roof_capacity
        into_down /= half * slab_capacity
        return np.concatenate([[into_air / air_capacity], into_up, into_down])

    ends = np.arange(1, 4 * 24 + 1) * HOUR
    within = np.concatenate([start + 900.0 * np.arange(1, round((4 * DAY) / 900.0) + 1)])
    # The balance is linear: its Jacobian is the same at all times, one column for each node.
    still = rates(start, np.zeros(2 * many + 3))
    jacobian = np.column_stack([rates(start, one) - still for one in np.eye(2 * many + 3)])
    answer = solve_ivp(
        rates,
        (start, start + 4 * DAY),
        np.full(2 * many + 3, 20.0),
        method="BDF",
        jac=jacobian,
        t_eval=within,
        rtol=1e-6,
        atol=1e-6,
        max_step=900.0,
    )
    from_start = ideal_loads(room, replace(table, time=table.time - start))
    hourly = np.concatenate([[20.0], answer.y[0]])
    means = (0.5 * (hourly[1:] + hourly[:-1])).reshape(len(ends), 4).mean(axis=1)
    # Away from the first hours, in which everything starts at 20 °C at once.
    assert np.abs(from_start.temperature[0, 6 : len(ends)] - means[6:]).max() < 0.1
    assert found.temperature.shape == (1, 14 * 24)


def test_what_comes_in_is_stored_or_leaves() -> None:
    """Over the year and its lead-in: all heat, that of the plant counted in, against what the fabric keeps."""
    room = [cube(CONCRETE, windows=[Window("S", 4.0, 2.8, 0.7)], gains=[Gain(150.0, 0.6)], leakage=0.5 / HOUR)]
    walls = walls_of(room)
    dry_air = air_density(SUNNY)
    boat, kept = enclosure_boat(room, walls, dry_air)
    run = run_smoothly(boat, Year(room, walls, SUNNY).forcing(dry_air, kept), SUNNY, ["cube"])
    passed = float(np.abs(run.heating - run.cooling).sum() * SUNNY.step)
    assert float(run.summary.heat_in[0] - run.summary.heat_stored[0]) == pytest.approx(0.0, abs=1e-6 * passed)


def test_sun_shares_make_one() -> None:
    room = cube(windows=[Window("S", 4.0, 2.8, 0.7)])
    shares, far = sun_on_faces(room, [0.62], 3.0)
    kept = math.fsum(shares.values()) + far
    assert 0.9 < kept < 1.0
    assert shares["floor"] == max(shares.values())
    lost, _ = sun_on_faces(replace(room, sun_lost=0.2), [0.62], 0.0)
    assert math.fsum(lost.values()) == pytest.approx(0.8)


# ---- schedules and steps


def test_a_step_of_a_minute_finds_the_same(fortnight: Weather) -> None:
    """A set-back and ventilation by the clock, in a light room whose air moves by kelvins a minute."""
    place = Place(math.nan, math.nan, math.nan, TEMPERATE, 4, 10, None, (15.0,) * 12, math.nan)
    room = cube(
        heating=[12.0] * 7 + [20.0] * 16 + [12.0],
        windows=[Window("S", 4.0, 2.8, 0.7)],
        ventilation=[0.0] * 12 + [0.05] * 12,
        leakage=0.5 / HOUR,
    )
    coarse, fine = ideal_loads(room, fortnight), ideal_loads(room, weather(place, 7, 13, 60.0))
    assert coarse.heating_energy[0] == pytest.approx(fine.heating_energy[0], rel=0.01)
    assert coarse.cooling_energy[0] == pytest.approx(fine.cooling_energy[0], rel=0.01)
    assert coarse.peak_heating[0].power == pytest.approx(fine.peak_heating[0].power, rel=0.02)
    assert coarse.peak_heating[0].hour == fine.peak_heating[0].hour


def test_a_set_back_ends_at_its_hour() -> None:
    room = cube(heating=[12.0] * 7 + [20.0] * 16 + [12.0], cooling=None)
    found = ideal_loads(room, steady(2))
    assert found.temperature[0, 7:23] == pytest.approx(20.0, abs=2.0)
    assert found.heating[0, 7] == found.heating[0].max()
    assert found.heating[0, 23] < found.heating[0, 22]
    assert found.cooling.max() == 0.0


def test_the_air_never_passes_a_jump_of_the_set_point() -> None:
    """Heated from 12 to 20 °C within a step, and not a joule beyond."""
    light = cube(faces=[Face("only", 9.0, BOARDS[1:])], heating=[12.0] * 7 + [20.0] * 17, cooling=26.0)
    found = ideal_loads(light, steady(2))
    assert found.temperature.max() <= 20.0 + 1e-6
    assert found.cooling.max() == 0.0


def test_cooling_off_by_night_is_nan() -> None:
    always = cube(gains=[Gain(300.0)], cooling=26.0)
    by_day = replace(always, cooling=[math.nan] * 7 + [26.0] * 17)
    found = ideal_loads(by_day, steady(1, dry_bulb=24.0))
    assert found.cooling[0, :7].max() == 0.0
    assert found.temperature[0, 3] > 26.0
    assert ideal_loads(always, steady(1, dry_bulb=24.0)).cooling[0, 3] > 0.0


def test_24_equal_figures_are_one(fortnight: Weather) -> None:
    one = cube(gains=[Gain(300.0, latent=50.0)], ventilation=0.01, windows=[Window("S", 2.0, 2.8, 0.7, shading=0.5)])
    many = cube(
        gains=[Gain([300.0] * 24, latent=[50.0] * 24)],
        ventilation=[0.01] * 24,
        heating=[20.0] * 24,
        windows=[Window("S", 2.0, 2.8, 0.7, shading=[0.5] * 24)],
    )
    a, b = ideal_loads(one, fortnight), ideal_loads(many, fortnight)
    assert a.heating == pytest.approx(b.heating)
    assert a.latent == pytest.approx(b.latent)


# ---- rooms that touch


def test_two_rooms_share_a_wall() -> None:
    """Heat through the wall between, by hand: one room heated, the other held cool."""
    film = Film(8.0, 0.0)
    inner = Face("between", 9.0, BOARDS, beyond="cold room", outside_film=film, inside_film=film)
    warm = Enclosure("warm room", 20.0, [inner], heating=24.0)
    cold = Enclosure("cold room", 20.0, [Face("dead end", 9.0, BOARDS, beyond="nothing")], cooling=10.0)
    found = ideal_loads([warm, cold], steady(1))
    layers = [(x.thickness, x.conductivity, x.density, x.specific_heat) for x in BOARDS]
    wanted = u_value(layers, 8.0, 8.0) * 9.0 * 14.0
    assert found.heating[0, -1] == pytest.approx(wanted, rel=1e-4)
    assert found.cooling[1, -1] == pytest.approx(wanted, rel=1e-4)


# ---- laws


def thicker(extra: float) -> tuple[Layer, ...]:
    return (*BOARDS, Layer("more", 0.001 + extra, 0.04, 12.0, 840.0))


@settings(max_examples=12, deadline=None)
@given(thin=st.floats(0.0, 0.1), more=st.floats(0.01, 0.2))
def test_more_insulation_is_less_heating(fortnight: Weather, thin: float, more: float) -> None:
    bare, warm = (ideal_loads(cube(thicker(x), cooling=None), fortnight) for x in (thin, thin + more))
    assert warm.heating_energy[0] < bare.heating_energy[0]


@settings(max_examples=12, deadline=None)
@given(low=st.floats(10.0, 22.0), high=st.floats(22.0, 30.0), wider=st.floats(0.1, 5.0))
def test_a_wider_band_takes_less(fortnight: Weather, low: float, high: float, wider: float) -> None:
    room = cube(CONCRETE, windows=[Window("S", 4.0, 2.8, 0.7)], gains=[Gain(150.0)])
    tight = ideal_loads(room, fortnight, heating=low, cooling=high)
    wide = ideal_loads(room, fortnight, heating=low - wider, cooling=high + wider)
    assert wide.heating_energy[0] <= tight.heating_energy[0] + 1.0
    assert wide.cooling_energy[0] <= tight.cooling_energy[0] + 1.0
    assert tight.temperature.min() >= low - 1e-6
    assert tight.temperature.max() <= high + 1e-6


MORE: dict[str, Callable[[Enclosure], Enclosure]] = {
    "gains": lambda room: replace(room, gains=[Gain(400.0)]),
    "glass": lambda room: replace(room, windows=[replace(room.windows[0], solar_gain=0.8)]),
    "ground": lambda room: replace(room, ground_reflectance=0.6),
    "absorptance": lambda room: replace(room, faces=[replace(f, absorptance=0.9) for f in room.faces]),
    "no sky": lambda room: replace(room, faces=[replace(f, emittance=0.0) for f in room.faces]),
}


@pytest.mark.parametrize("name", MORE)
def test_what_warms_a_room_adds_cooling_and_spares_heating(fortnight: Weather, name: str) -> None:
    room = cube(windows=[Window("S", 4.0, 2.8, 0.6)], gains=[Gain(150.0)])
    before, after = ideal_loads(room, fortnight), ideal_loads(MORE[name](room), fortnight)
    assert after.heating_energy[0] < before.heating_energy[0]
    assert after.cooling_energy[0] > before.cooling_energy[0]


def test_shade_and_curtains_keep_sun_out(fortnight: Weather) -> None:
    def cooled(**window: Any) -> float:
        glass = Window("S", 4.0, 2.8, 0.7, **window)
        return float(ideal_loads(cube(windows=[glass]), fortnight).cooling_energy[0])

    bare = cooled()
    assert cooled(shade=Shade(2.0, 2.0)) == pytest.approx(bare)
    assert cooled(shade=Shade(2.0, 2.0, overhang=1.0)) < 0.9 * bare
    assert cooled(shading=0.5) < 0.7 * bare
    assert cooled(angles=[(0.0, 1.0), (1.0, 0.5)]) < bare
    table = [(math.radians(a), angle_modifier(math.cos(math.radians(a)), 2)) for a in range(0, 90, 2)]
    assert cooled(angles=table) == pytest.approx(bare, rel=2e-3)


def test_sun_on_a_heavy_floor_is_kept_better_than_on_a_light_roof(fortnight: Weather) -> None:
    light = [replace(face, layers=CONCRETE if face.name == "floor" else BOARDS) for face in faces()]
    room = cube(faces=light, windows=[Window("S", 4.0, 2.8, 0.7)], cooling=26.0)
    on_floor, on_roof = (ideal_loads(replace(room, sun_shares={n: 1.0}), fortnight) for n in ("floor", "roof"))
    assert on_floor.peak_cooling[0].power < on_roof.peak_cooling[0].power


def test_light_rooms_swing_wider_than_heavy_ones(fortnight: Weather) -> None:
    light, heavy = (ideal_loads(cube(x, heating=None, cooling=None), fortnight) for x in (BOARDS, CONCRETE))
    assert light.highest_temperature[0] > heavy.highest_temperature[0]
    assert light.lowest_temperature[0] < heavy.lowest_temperature[0]
    assert light.mean_temperature[0] == pytest.approx(heavy.mean_temperature[0], abs=2.0)


# ---- the record


@pytest.fixture(scope="module")
def year() -> IdealLoads:
    return ideal_loads(cube(windows=[Window("S", 4.0, 2.8, 0.7)]), TEMPERATE)


def test_a_year_has_its_hours(year: IdealLoads) -> None:
    assert year.heating.shape == year.cooling.shape == year.temperature.shape == year.latent.shape == (1, 8760)
    assert year.heating_energy[0] == pytest.approx(year.heating[0].sum() * HOUR)
    assert year.names == ("cube",)


def test_peaks_know_their_hour(year: IdealLoads) -> None:
    peak = year.peak_heating[0]
    assert year.heating[0, peak.hour - 1] == peak.power == year.heating[0].max()
    assert (peak.month, peak.day, peak.clock) == year.date(peak.hour)
    assert peak.month in (12, 1, 2)
    # Glass to the south lets most in when the sun stands low.
    assert year.peak_cooling[0].clock in (12, 13, 14)


@pytest.mark.parametrize(
    ("hour", "date"), [(1, (1, 1, 1)), (24, (1, 1, 24)), (25, (1, 2, 1)), (1417, (3, 1, 1)), (8760, (12, 31, 24))]
)
def test_hours_have_dates(year: IdealLoads, hour: int, date: tuple[int, int, int]) -> None:
    assert year.date(hour) == date


def test_set_points_may_be_given_with_the_call(fortnight: Weather) -> None:
    free = cube(heating=None, cooling=None)
    assert ideal_loads(free, fortnight).heating.max() == 0.0
    held = ideal_loads(free, fortnight, heating=21.0, cooling=[25.0] * 24)
    assert held.temperature.min() == pytest.approx(21.0)


# ---- boats


def test_a_design_goes_the_same_way(tmp_path: Path) -> None:
    design.new("cutter-12m", tmp_path / "boat.yaml")
    found = ideal_loads(design.read(tmp_path / "boat.yaml"), "pvlib:12839.tm2", cooling=24.0, heating=18.0)
    assert found.heating.shape[1] == 8760
    held = found.cooling_energy > 0.0
    assert held.sum() >= 3
    assert found.temperature[held].max() <= 24.0 + 1e-4
    assert found.temperature[held].min() >= 18.0 - 1e-4


def test_a_specification_and_an_enclosure_agree() -> None:
    """One cabin that is all walls: by the boat's way and by the room's."""
    made = boats.boat(1)
    cabin = replace(boats.cabin("box", glass=0.0), leakage=0.0, fresh_air=0.0, furnishing_area=0.0)
    cabin = replace(cabin, surfaces=tuple(s for s in cabin.surfaces if s.outside is not Outside.SEA))
    quiet = tuple(replace(period, occupants=()) for period in boats.plan(1, 0))
    # A boat's windows and air would differ: their films are within the boat's own U-value and density.
    boat = replace(made, cabins=(cabin,), loads=(), plan=quiet)
    bearing = 0.4
    boat = replace(boat, place=replace(boat.place, heading=bearing))
    like = [
        Face(s.name, s.area, s.layers, s.faces + bearing, s.tilt, s.outside.value, s.absorptance, s.emittance)
        for s in cabin.surfaces
    ]
    room = Enclosure("box", cabin.volume, like, heating=20.0, cooling=25.0, ground_reflectance=None)
    as_room = ideal_loads(room, SUNNY)
    as_boat = ideal_loads(boat, SUNNY, heating=20.0, cooling=25.0)
    # The boat's outside radiation is taken at 30 °C all year, a room's at the outdoor temperature.
    assert as_boat.heating_energy[0] == pytest.approx(as_room.heating_energy[0], rel=0.02)
    assert as_boat.cooling_energy[0] == pytest.approx(as_room.cooling_energy[0], rel=0.05)


# ---- refusals


WRONG: dict[str, tuple[Callable[[], object], str]] = {
    "glass too large": (lambda: cube(windows=[Window("S", 9.5, 2.8, 0.7)]), 'face "S" of 9 m² has windows of m² 9.5'),
    "no faces": (lambda: cube(faces=[]), "at least one face"),
    "no thickness": (lambda: Face("S", 9.0, [Layer("x", 0.0, 1.0, 1.0, 1.0)]), 'face "S".*thickness'),
    "no conductivity": (lambda: Face("S", 9.0, [Layer("x", 0.1, 0.0, 1.0, 1.0)]), 'face "S".*conductivity'),
    "no layers": (lambda: Face("S", 9.0, []), 'face "S".*at least one layer'),
    "no area": (lambda: Face("S", 0.0, BOARDS), "area must be positive"),
    "band": (lambda: cube(heating=24.0, cooling=20.0), "heating up to 24 °C and cooling down to 20 °C"),
    "band by the hour": (lambda: cube(heating=[20.0] * 12 + [28.0] * 12), "found in hour 12"),
    "23 hours": (lambda: cube(heating=[20.0] * 23), "one figure or 24; found 23"),
    "twice": (lambda: cube(faces=[*faces(), faces()[0]]), "found twice N"),
    "window nowhere": (lambda: cube(windows=[Window("X", 1.0, 2.8, 0.7)]), 'found "X"'),
    "window underground": (
        lambda: cube(faces=faces(beyond=10.0), windows=[Window("S", 1.0, 2.8, 0.7)]),
        "a window is in a face to the air",
    ),
    "panes": (lambda: Window("S", 1.0, 2.8, 0.7, panes=3), "1 or 2 panes"),
    "gain": (lambda: Window("S", 1.0, 2.8, 1.7), "solar gain"),
    "sun": (lambda: cube(sun_shares={"floor": 0.8, "roof": 0.3}), "make 1 at most"),
    "sun nowhere": (lambda: cube(sun_shares={"ceiling": 0.8}), 'found "ceiling"'),
    "sun twice lost": (lambda: cube(sun_shares={"floor": 0.8}, sun_lost=0.1), "one too many"),
    "no volume": (lambda: replace(cube(), volume=0.0), "volume must be positive"),
    "nan volume": (lambda: replace(cube(), volume=math.nan), "volume must be positive"),
    "film": (lambda: Face("S", 1.0, BOARDS, inside_film=0.0), "a film must be positive"),
    "radiant": (lambda: Gain(1.0, 1.5), "radiant share"),
    "step": (lambda: ideal_loads(cube(), TEMPERATE, step=700.0), "whole part of an hour"),
    "no one": (lambda: ideal_loads([], TEMPERATE), "at least one enclosure"),
    "beyond nowhere": (lambda: ideal_loads(cube(faces=faces(beyond="attic")), steady(1)), 'found "attic"'),
    "namesakes": (lambda: ideal_loads([cube(), cube()], steady(1)), "a name of its own"),
    "u-value": (
        lambda: ideal_loads(cube(windows=[Window("S", 1.0, 7.0, 0.7)]), steady(1)),
        "films of 25 and 7.69",
    ),
    "overhang on a roof": (
        lambda: cube(windows=[Window("roof", 1.0, 2.8, 0.7, shade=Shade(1.0, 1.0, 0.5))]),
        "upright faces",
    ),
    "a furnace": (lambda: ideal_loads(cube(gains=[Gain(1e6)], cooling=None), steady(3)), "cube: the run left"),
    "a boat by the hour": (
        lambda: ideal_loads(boats.boat(1), SUNNY, cooling=[20.0] * 12 + [25.0] * 12),
        "one set point",
    ),
}


@pytest.mark.parametrize("name", WRONG)
def test_what_cannot_be_is_refused(name: str) -> None:
    make, message = WRONG[name]
    with pytest.raises(OutOfRange, match=message):
        make()


def test_weather_that_is_not_there_is_refused() -> None:
    with pytest.raises(BadWeather, match=r"nowhere\.epw"):
        ideal_loads(cube(), "nowhere.epw")
    with pytest.raises(BadWeather, match="found none"):
        ideal_loads(cube())
    with pytest.raises(BadWeather, match="a year needs one"):
        ideal_loads(boats.boat(1))
