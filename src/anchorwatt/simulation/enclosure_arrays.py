"""Enclosures as the kernel's arrays: their fabric, and what weather and schedules do to them through a year.

A window is a wall of two nodes without heat capacity, so that its inside film meets air and radiant star as any
other surface's does, and its outside film the air and the cold sky.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from anchorwatt.climate import PlaneIrradiance, Weather, irradiance_on
from anchorwatt.climate.shade import ground_left, sky_left, sunlit_share
from anchorwatt.errors import OutOfRange
from anchorwatt.physics.envelope import discretise, outside_convection, radiative_film
from anchorwatt.physics.moist_air import density, latent_heat
from anchorwatt.physics.ventilation import leakage_in_wind
from anchorwatt.physics.window import diffuse_modifier
from anchorwatt.simulation.arrays import (
    AT_ANCHOR,
    TO_CABIN,
    TO_NOTHING,
    TO_OUTSIDE,
    Boat,
    Fabric,
    Floats,
    Forcing,
    Integers,
    Plant,
    Power,
    Units,
)
from anchorwatt.simulation.compiled import compiled
from anchorwatt.simulation.enclosure import (
    AIR,
    HOURS,
    NOTHING,
    ROOM_TEMPERATURE,
    Enclosure,
    Face,
    Film,
    Window,
    by_hour,
    glass_conductance,
    inside_film,
    sun_on_faces,
)
from anchorwatt.simulation.outside import HOUR, sol_air_series, window_series
from anchorwatt.simulation.plant import CALLS, EVAPORATING_COUNT, SEA_COUNT

CONTACT = 1e5
"""W/(m² K) between a face and the constant temperature that it touches: as good as none."""

NO_FURNISHING = 1.0
"""J/K of furnishings that touch nothing, so that the network has a node for them."""

ANGLE_ROWS = 181
"""Rows into which a window's table of angles is read, over the cosine of incidence."""


@dataclass(frozen=True)
class Wall:
    """A wall of the kernel: a face or a window, in one of its cabins."""

    cabin: int
    kind: int
    far_cabin: int
    area: float
    capacities: Floats  # J/(m2 K)
    conductances: Floats  # W/(m2 K)
    near: tuple[float, float]  # W/(m2 K) of convection and radiation
    far: tuple[float, float]
    face: Face
    window: Window | None


def walls_of(enclosures: Sequence[Enclosure]) -> list[Wall]:
    """All faces and windows of some enclosures, in the kernel's order."""
    index = {enclosure.name: c for c, enclosure in enumerate(enclosures)}
    if len(index) < len(enclosures):
        raise OutOfRange("each enclosure has a name of its own; found some twice among", len(enclosures))
    walls = []
    for c, enclosure in enumerate(enclosures):
        for face in enclosure.faces:
            kind, far_cabin, far = TO_OUTSIDE, -1, (0.0, 0.0)
            if face.beyond == NOTHING:
                kind = TO_NOTHING
            elif isinstance(face.beyond, str) and face.beyond != AIR:
                if index.get(face.beyond, c) == c:
                    raise OutOfRange(
                        f'enclosure "{enclosure.name}": beyond "{face.name}" lies "{AIR}", "{NOTHING}", a temperature '
                        f'or another enclosure of this run; found "{face.beyond}"'
                    )
                kind, far_cabin, far = TO_CABIN, index[face.beyond], inside_film(face.outside_film, face.tilt)
            near = inside_film(face.inside_film, face.tilt)
            nodes = discretise([(x.thickness, x.conductivity, x.density, x.specific_heat) for x in face.layers])
            opaque = enclosure.opaque_areas[face.name]
            if opaque == 0.0:
                continue  # all glass
            walls.append(Wall(c, kind, far_cabin, opaque, nodes.capacities, nodes.conductances, near, far, face, None))
        for window in enclosure.windows:
            face = enclosure.face(window.face)
            near = inside_film(face.inside_film if window.inside_film is None else window.inside_film, face.tilt)
            glass = np.array([glass_conductance(window, face)])
            walls.append(Wall(c, TO_OUTSIDE, -1, window.area, np.zeros(2), glass, near, (0.0, 0.0), face, window))
    return walls


def air_density(weather: Weather) -> float:
    """kg of dry air in each m³ at a room's temperature and the place's pressure."""
    return density(ROOM_TEMPERATURE, float(np.mean(weather.humidity_ratio)), float(np.mean(weather.pressure)))


def sun_takers(enclosures: Sequence[Enclosure], walls: Sequence[Wall]) -> tuple[Floats, Floats, Floats]:
    """Shares of each cabin's kept sun on every wall and on its star, and the share of all its sun that it keeps."""
    on_wall, star, kept = np.zeros(len(walls)), np.ones(len(enclosures)), np.ones(len(enclosures))
    for c, enclosure in enumerate(enclosures):
        through = [w.solar_gain * diffuse_share(w) * float(np.mean(by_hour("", w.shading))) for w in enclosure.windows]
        far_side = sum(wall.area for wall in walls if wall.far_cabin == c)
        shares, far = sun_on_faces(enclosure, through, far_side)
        kept[c] = math.fsum(shares.values()) + far
        if kept[c] <= 0.0:
            continue
        star[c] = far / kept[c]
        for w, wall in enumerate(walls):
            if wall.cabin == c and wall.window is None:
                on_wall[w] = shares.get(wall.face.name, 0.0) / kept[c]
    return on_wall, star, kept


def enclosure_boat(enclosures: Sequence[Enclosure], walls: Sequence[Wall], dry_air: float) -> tuple[Boat, Floats]:
    """The enclosures as a boat without machinery, and the share of its sun that each cabin keeps."""
    first = [0]
    capacities: list[float] = []
    conductances: list[float] = []
    for wall in walls:
        capacities.extend(wall.area * wall.capacities)
        conductances.extend([*(wall.area * wall.conductances), 0.0])
        first.append(len(capacities))
    cabins = len(enclosures)
    on_wall, star, kept = sun_takers(enclosures, walls)
    loose = [max(NO_FURNISHING, enclosure.furnishing_heat_capacity) for enclosure in enclosures]
    blown, shone = inside_film(None, math.pi / 2)
    air_mass = np.array([[enclosure.volume * dry_air for enclosure in enclosures]])
    fabric = Fabric(
        wall_first=np.array(first, dtype=np.int64),
        wall_kind=np.array([wall.kind for wall in walls], dtype=np.int64),
        wall_cabin=np.array([wall.cabin for wall in walls], dtype=np.int64),
        wall_far_cabin=np.array([wall.far_cabin for wall in walls], dtype=np.int64),
        node_capacity=np.array([capacities]),
        node_conductance=np.array([conductances]),
        near_convection=np.array([[wall.area * wall.near[0] for wall in walls]]),
        near_radiation=np.array([[wall.area * wall.near[1] for wall in walls]]),
        far_convection=np.array([[wall.area * wall.far[0] for wall in walls]]),
        far_radiation=np.array([[wall.area * wall.far[1] for wall in walls]]),
        air_mass=air_mass,
        moisture_mass=air_mass.copy(),
        furnishing_capacity=np.array([loose]),
        furnishing_convection=np.array([[blown * enclosure.furnishing_area for enclosure in enclosures]]),
        furnishing_radiation=np.array([[shone * enclosure.furnishing_area for enclosure in enclosures]]),
        window_conductance=np.zeros((1, cabins)),
        sun_wall=on_wall[None],
        sun_furnishing=np.zeros((1, cabins)),
        sun_star=star[None],
        exchange=np.zeros((1, cabins, cabins)),
    )
    return Boat(fabric, no_plant(), no_plant(), no_units(), no_power()), kept


def no_plant() -> Plant:
    """A plant without handlers, in the shape that the kernel knows."""
    none, figure = np.empty(0, dtype=np.int64), np.zeros(1)
    handlers, table, plant_map = (
        np.zeros((1, 0)),
        np.zeros((1, 0, CALLS)),
        np.zeros((1, EVAPORATING_COUNT, SEA_COUNT, 1)),
    )
    return Plant(
        none, handlers, none, none, handlers, table, table, table, handlers, handlers, handlers,
        figure, figure, figure, figure, figure, plant_map, plant_map,
    )  # fmt: skip


def no_units() -> Units:
    """No self-contained units."""
    units = np.zeros((1, 0))
    maps = np.zeros((1, 0, EVAPORATING_COUNT, SEA_COUNT, 1))
    return Units(np.empty(0, dtype=np.int64), units, units, units, units, units, maps, maps, np.zeros(1))


def no_power() -> Power:
    """An electrical side from which nothing is drawn and that warms no cabin."""
    none = np.empty(0, dtype=np.int64)
    return Power(
        transformer=np.zeros((1, 3)),
        inverter=np.zeros((1, 8)),
        overload_share=np.zeros((1, 0)),
        overload_time=np.zeros((1, 0)),
        charger=np.zeros((1, 4)),
        shore_power=np.zeros(1),
        bank=np.ones((1, 14)),
        bank_charge=np.array([[0.0, 1.0]]),
        bank_voltage=np.ones((1, 2)),
        bank_factor=np.ones((1, 2)),
        solar=np.zeros((1, 4)),
        engine=np.zeros((1, 0, 9)),
        engine_speeds=np.zeros((1, 0, 1)),
        engine_powers=np.zeros((1, 0, 1)),
        heat_cabin=np.full(4, -1, dtype=np.int64),
        engine_cabin=none,
        engine_block=np.zeros((1, 0, 3)),
        alternator_engine=none,
        alternator=np.zeros((1, 0, 15)),
        alternator_speeds=np.zeros((1, 0, 1)),
        alternator_currents=np.zeros((1, 0, 1)),
    )


def angle_table(window: Window) -> tuple[Floats, Floats]:
    """Share of the gain at normal incidence over the rising cosine of incidence, from the window's table."""
    angles, shares = np.array([angle for angle, _ in window.angles]), np.array([share for _, share in window.angles])
    if angles[-1] < math.pi / 2:
        angles, shares = np.append(angles, math.pi / 2), np.append(shares, 0.0)
    cosine = np.linspace(0.0, 1.0, ANGLE_ROWS)
    return cosine, np.interp(np.arccos(cosine), angles, shares)


def diffuse_share(window: Window) -> float:
    """Gain for light from all sides alike over that at normal incidence."""
    if window.diffuse_share is not None:
        return window.diffuse_share
    if window.angles:
        cosine, shares = angle_table(window)
        return float(2.0 * np.trapezoid(shares * cosine, cosine))
    return diffuse_modifier(window.panes)


class Year:
    """Weather and schedules as they bear on some enclosures."""

    def __init__(self, enclosures: Sequence[Enclosure], walls: Sequence[Wall], weather: Weather) -> None:
        self.enclosures = enclosures
        self.walls = walls
        self.weather = weather
        time = weather.time
        self.hour: Integers = np.floor((time[:-1] - time[0]) / HOUR + 1e-9).astype(np.int64)
        self.hours = int(self.hour[-1]) + 1
        self.clock = np.floor(time[:-1] % 86_400.0 / HOUR + 1e-9).astype(np.int64)
        """Hour of the day, 0 to 23, that each step lies in."""
        self.clock_of_hour = (round(float(time[0]) / HOUR) + np.arange(self.hours)) % HOURS
        self.planes: dict[tuple[float, float, float | None], PlaneIrradiance] = {}

    def by_hours(self, values: Floats) -> Floats:
        """Mean of each hour of a figure at the starts of the steps."""
        count = np.bincount(self.hour, minlength=self.hours)
        return np.asarray(np.bincount(self.hour, values[:-1], self.hours) / count)

    def plane(self, face: Face, ground: float | None) -> PlaneIrradiance:
        """Sun on a face's plane, worked out once for all that share it."""
        level = math.isclose(math.sin(face.tilt), 0.0, abs_tol=1e-6)
        azimuth = 0.0 if level else face.azimuth % (2.0 * math.pi)
        key = (face.tilt, azimuth, ground)
        if key not in self.planes:
            self.planes[key] = irradiance_on(self.weather, min(face.tilt, math.pi), azimuth, ground)
        return self.planes[key]

    def outside_film(self, wall: Wall, outdoor: Floats, wind: Floats) -> Floats:
        """W/(m² K) of a wall's outside film, an hour each; one figure where it is the same in all."""
        film = wall.face.outside_film
        emittance = wall.face.emittance
        if wall.window is not None:
            film = film if wall.window.outside_film is None else wall.window.outside_film
            emittance = wall.window.emittance
        if wall.face.beyond != AIR:
            if film is None:
                return np.full(1, CONTACT)
            total = film.convection + (film.radiation or 0.0) if isinstance(film, Film) else film
            return np.full(1, total)
        if film is not None and not isinstance(film, Film):
            return np.full(1, float(film))
        if film is not None and film.radiation is not None:
            return np.full(1, film.convection + film.radiation)
        radiation = np.array([radiative_film(emittance, t) for t in outdoor.tolist()])
        if film is not None:
            return np.asarray(film.convection + radiation)
        return np.asarray([outside_convection(v) for v in wind.tolist()] + radiation)

    def far_sides(self) -> tuple[Floats, list[Floats]]:
        """°C that each wall meets outside at every instant, and its film in W/K by the hour (or one figure)."""
        weather = self.weather
        temperatures = np.zeros((len(self.walls), weather.time.size))
        films = []
        outdoor, wind = self.by_hours(weather.dry_bulb), self.by_hours(weather.wind_speed)
        sol_air = compiled(sol_air_series)
        dark = np.zeros(weather.time.size)
        for w, wall in enumerate(self.walls):
            if wall.kind != TO_OUTSIDE:
                films.append(np.zeros(1))
                continue
            film = self.outside_film(wall, outdoor, wind)
            films.append(wall.area * film)
            if isinstance(wall.face.beyond, str):
                absorptance, emittance, irradiance = wall.face.absorptance, wall.face.emittance, dark
                if wall.window is not None:
                    absorptance, emittance = 0.0, wall.window.emittance
                else:
                    sun = self.plane(wall.face, self.ground(wall))
                    irradiance = sun.beam + sun.diffuse
                sol_air(
                    weather.dry_bulb, weather.sky_temperature, irradiance, self.hour,
                    np.ascontiguousarray(np.broadcast_to(film, self.hours)), 0.0, float(absorptance),
                    float(emittance), float(min(wall.face.tilt, math.pi)), temperatures[w],
                )  # fmt: skip
            else:
                temperatures[w] = wall.face.beyond
        return temperatures, films

    def solar_gain(self, kept: Floats) -> Floats:
        """W of sun through the windows that each cabin keeps, at every instant."""
        gain = np.zeros((len(self.enclosures), self.weather.time.size))
        clock = np.append(self.clock, self.clock[-1])
        for wall in self.walls:
            window = wall.window
            if window is None:
                continue
            beam, diffuse, cosine = self.sun_at(wall, window)
            through = np.zeros(self.weather.time.size)
            if window.angles:
                through += beam * np.interp(cosine, *angle_table(window)) + diffuse * diffuse_share(window)
            else:
                compiled(window_series)(
                    beam, diffuse, cosine, int(window.panes), float(diffuse_share(window)), 1.0, through
                )
            shading = np.array(by_hour("shading", window.shading))[clock]
            gain[wall.cabin] += kept[wall.cabin] * window.area * window.solar_gain * shading * through
        return gain

    def sun_at(self, wall: Wall, window: Window) -> tuple[Floats, Floats, Floats]:
        """Sun on a window that comes from where the sun stands, the rest, and the cosine of its incidence.

        The bright patch round the sun comes in as the sun does.
        """
        sun, weather, shade = self.plane(wall.face, self.ground(wall)), self.weather, window.shade
        beam, even = sun.beam + sun.around_sun, sun.diffuse - sun.around_sun
        # Twilight has no sun to strike from anywhere.
        dark = sun.cosine <= 0.0
        even, beam = np.where(dark, even + beam, even), np.where(dark, 0.0, beam)
        if shade is not None:
            beam = beam * sunlit_share(
                weather.sun_elevation, weather.sun_azimuth, wall.face.azimuth, shade.height, shade.width,
                shade.overhang, shade.above, shade.fins, shade.beside,
            )  # fmt: skip
            sky = sky_left(shade.height, shade.width, shade.overhang, shade.above, shade.fins, shade.beside)
            below = ground_left(shade.width, shade.fins, shade.beside)
            even = sky * (even - sun.from_below) + below * sun.from_below
        return beam, even, sun.cosine

    def ground(self, wall: Wall) -> float | None:
        """Reflectance of the land outside a wall's enclosure."""
        return self.enclosures[wall.cabin].ground_reflectance

    def outdoor_flows(self, dry_air: float) -> Floats:
        """kg/s of outdoor dry air into each cabin, by the hour."""
        flows = np.empty((self.hours, len(self.enclosures)))
        outdoor, wind = self.by_hours(self.weather.dry_bulb), self.by_hours(self.weather.wind_speed)
        for c, enclosure in enumerate(self.enclosures):
            changes = np.full(self.hours, enclosure.leakage)
            if enclosure.leakage_follows_wind:
                pairs = zip(wind.tolist(), (outdoor - ROOM_TEMPERATURE).tolist(), strict=True)
                changes = np.array([leakage_in_wind(enclosure.leakage, v, d) for v, d in pairs])
            fan = np.array(by_hour("ventilation", enclosure.ventilation))[self.clock_of_hour]
            flows[:, c] = dry_air * (changes * enclosure.volume + fan)
        return flows

    def scheduled(self, tables: Sequence[Sequence[float]]) -> Floats:
        """(1, C, T) of 24 figures a cabin."""
        return np.ascontiguousarray(np.array(tables)[None, :, self.clock])

    def forcing(self, dry_air: float, kept: Floats) -> Forcing:
        """All that drives the enclosures through the weather's instants."""
        weather, cabins, steps = self.weather, len(self.enclosures), self.hour.size
        temperatures, films = self.far_sides()
        flows = self.outdoor_flows(dry_air)
        by_hours = np.column_stack([np.broadcast_to(film, self.hours) for film in films])
        # Hours alike in films and flows share a row: the kernel factors the network anew at every other.
        table = np.column_stack([by_hours, flows])
        changed = np.append(True, np.any(table[1:] != table[:-1], axis=1))
        row = np.cumsum(changed) - 1
        gains = self.gains()
        none, quiet = np.zeros((1, cabins, steps)), np.zeros((1, steps))
        return Forcing(
            dry_bulb=weather.dry_bulb[None].copy(),
            humidity_ratio=weather.humidity_ratio[None].copy(),
            sea=weather.dry_bulb[None].copy(),
            pressure=np.array([float(np.mean(weather.pressure))]),
            far_temperature=temperatures[None],
            film_row=row[self.hour],
            far_film=by_hours[None, changed].copy(),
            outdoor_flow=flows[None, changed].copy(),
            renewed_flow=flows[None, changed].copy(),
            solar_gain=self.solar_gain(kept)[None],
            panel_irradiance=np.zeros((1, steps + 1)),
            air_gain=gains[0],
            radiant_gain=gains[1],
            moisture_gain=gains[2],
            people_sensible=none,
            people_latent=none,
            people_shift=none,
            set_point=self.scheduled([e.set_points(e.cooling, "cooling") for e in self.enclosures]),
            warm_point=self.scheduled([e.set_points(e.heating, "heating") for e in self.enclosures]),
            ac_load=quiet,
            dc_load=quiet,
            doing=np.full(steps, AT_ANCHOR, dtype=np.int64),
            engine_speed=np.zeros((1, 0, steps)),
            propelling=np.zeros(steps, dtype=np.int64),
        )

    def gains(self) -> tuple[Floats, Floats, Floats]:
        """W to the air, W radiant and kg/s of moisture, through the steps."""
        air, radiant, moisture = [], [], []
        for enclosure in self.enclosures:
            still, shone, damp = np.zeros(HOURS), np.zeros(HOURS), np.zeros(HOURS)
            for gain in enclosure.gains:
                sensible = np.array(by_hour("sensible", gain.sensible))
                still += (1.0 - gain.radiant_share) * sensible
                shone += gain.radiant_share * sensible
                damp += np.array(by_hour("latent", gain.latent)) / latent_heat(ROOM_TEMPERATURE)
            air.append(still.tolist())
            radiant.append(shone.tolist())
            moisture.append(damp.tolist())
        return self.scheduled(air), self.scheduled(radiant), self.scheduled(moisture)
