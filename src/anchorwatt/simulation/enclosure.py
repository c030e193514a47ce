"""A room of any kind, described for `ideal_loads`: its faces, windows, air, gains and set points.

Everything is SI: m, m², m³, W, °C, rad, s. Azimuths are from true north, clockwise; tilts are of the outward normal
from straight up, 0 a roof, π/2 a wall, π a floor.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field

from anchorwatt.design.specification import Layer
from anchorwatt.errors import OutOfRange
from anchorwatt.physics.envelope import INSIDE_RADIATION, discretise, inside_convection, radiative_film

AIR, NOTHING = "air", "nothing"
"""What a face may look at, besides a constant temperature and another enclosure."""

HOURS = 24
FLOOR_TILT = 0.75 * math.pi
"""rad, from which on an outward normal points so far down that the inside is a floor."""

LEAST_AREA = 1e-9
"""m² under which a face is all glass."""

UPRIGHT = 0.01
"""rad from the upright within which a face may bear overhangs and fins."""

RATED_OUTSIDE, RATED_INSIDE = 1.0 / 0.04, 1.0 / 0.13
"""W/(m² K) that a window's U-value is taken to have been stated with where its films are ours: EN ISO 10077-1 (from
memory)."""

ROOM_TEMPERATURE = 20.0
"""°C about which the radiant part of a combined inside film is taken."""

MOST_RADIANT = 0.8
"""Of a combined inside film."""

LEAST_GLASS = 1e-3
"""m² K/W between the two faces of a window. A U-value that leaves less does not hold its own films."""

FAR_ABSORPTANCE = 0.6
"""Solar, of the far side of a neighbour's face."""

Schedule = float | Sequence[float]
"""One figure, or 24: the first holds from midnight to 1 h of local standard time."""


def by_hour(what: str, schedule: Schedule) -> tuple[float, ...]:
    """The 24 figures of a schedule."""
    if isinstance(schedule, (int, float)):
        return (float(schedule),) * HOURS
    figures = tuple(float(each) for each in schedule)
    if len(figures) != HOURS:
        raise OutOfRange(f"{what}: a schedule holds one figure or {HOURS}; found", len(figures))
    return figures


def within(what: str, value: float, low: float, high: float) -> None:
    """Refuse a value outside its bounds, and one that is no number."""
    if not low <= value <= high:
        raise OutOfRange(f"{what} lies between {low:g} and {high:g}; found", value)


def positive(what: str, value: float) -> None:
    if not 0.0 < value < math.inf:
        raise OutOfRange(f"{what} must be positive; found", value)


def not_negative(what: str, value: float) -> None:
    if not 0.0 <= value < math.inf:
        raise OutOfRange(f"{what} is not negative; found", value)


@dataclass(frozen=True)
class Film:
    """Heat transfer at a surface, in its two parts.

    Attributes
    ----------
    convection : W/(m² K) to the air
    radiation : W/(m² K) long-wave to what surrounds it; left out, it follows from emittance and temperature
    """

    convection: float
    radiation: float | None = None

    def __post_init__(self) -> None:
        not_negative("a film's convection", self.convection)
        if self.radiation is not None:
            not_negative("a film's radiation", self.radiation)
        if self.convection + (1.0 if self.radiation is None else self.radiation) <= 0.0:
            raise OutOfRange("a film lets some heat through; found", 0.0)


@dataclass(frozen=True)
class Face:
    """One side of an enclosure.

    Attributes
    ----------
    name : its own among the enclosure's faces
    area : m², whatever windows are in it counted in
    layers : outside first (of a face to another enclosure: that enclosure's side first)
    azimuth : rad from true north, clockwise, to which a wall looks; of no account where it looks straight up or down
    tilt : rad, of the outward normal from straight up: 0 a roof, π/2 a wall, π a floor
    beyond : "air", "nothing" (no heat passes), a constant temperature in °C (the ground), or another enclosure's name
    absorptance : solar, outside
    emittance : long-wave, outside; 0 leaves the cold sky out
    inside_absorptance : solar, inside
    outside_film : W/(m² K) of convection and radiation together, or a `Film`; left out, convection in the wind and
        radiation at the outdoor temperature to air; to a constant temperature, contact without a film; to another
        enclosure, as inside
    inside_film : W/(m² K) together (the radiant part is then about 5.1), or a `Film`; left out, as in a cabin
    """

    name: str
    area: float
    layers: Sequence[Layer]
    azimuth: float = 0.0
    tilt: float = math.pi / 2
    beyond: str | float = AIR
    absorptance: float = 0.6
    emittance: float = 0.9
    inside_absorptance: float = 0.6
    outside_film: float | Film | None = None
    inside_film: float | Film | None = None

    def __post_init__(self) -> None:
        what = f'face "{self.name}"'
        positive(f"{what}: the area", self.area)
        within(f"{what}: the tilt", self.tilt, 0.0, math.pi + 1e-6)
        if not math.isfinite(self.azimuth):
            raise OutOfRange(f"{what}: an azimuth is a number; found", self.azimuth)
        for name, share in (
            ("absorptance", self.absorptance),
            ("emittance", self.emittance),
            ("inside absorptance", self.inside_absorptance),
        ):
            within(f"{what}: the {name}", share, 0.0, 1.0)
        if not isinstance(self.beyond, str):
            within(f"{what}: the temperature beyond", self.beyond, -60.0, 90.0)
        for film in (self.outside_film, self.inside_film):
            if film is not None and not isinstance(film, Film):
                positive(f"{what}: a film", film)
        try:
            discretise([(x.thickness, x.conductivity, x.density, x.specific_heat) for x in self.layers])
        except OutOfRange as error:
            raise OutOfRange(f"{what}: {error}") from None


@dataclass(frozen=True)
class Shade:
    """What stands out from an upright wall round each of its windows.

    Attributes
    ----------
    height, width : m, of one window
    overhang : m by which a projection over it stands out; it is taken as long
    above : m from the window's top up to the overhang
    fins : m by which an upright fin on each side stands out; taken as tall
    beside : m from the window's edge to the fin
    """

    height: float
    width: float
    overhang: float = 0.0
    above: float = 0.0
    fins: float = 0.0
    beside: float = 0.0

    def __post_init__(self) -> None:
        positive("a shaded window's height", self.height)
        positive("a shaded window's width", self.width)
        for name in ("overhang", "above", "fins", "beside"):
            not_negative(f"a shade: {name}", getattr(self, name))


@dataclass(frozen=True)
class Window:
    """Glazing in a face, all of a kind together.

    Attributes
    ----------
    face : name of the face that it is in, whose direction it shares
    area : m², glass and frame
    u_value : W/(m² K), its own films counted in
    solar_gain : solar heat gain coefficient at normal incidence, transmitted and absorbed-and-given-inward together
    panes : 1 or 2, how the gain falls with the angle of incidence where no table is given
    shading : what curtains and the like leave of the gain, 1 = none; one figure or 24
    shade : an overhang or fins; none left out
    angles : (rad, share of the gain at normal incidence), rising; the published table of a glazing, 0 at 90°
    diffuse_share : the same for light from all sides alike; left out, it follows from the table or the panes
    emittance : long-wave, of the outside pane; 0 leaves the cold sky out
    outside_film, inside_film : as a face's; left out, those of its face. What remains of the U-value without them is
        the glass. Where a face's film is ours, the U-value is taken as stated with 25 and 7.7 W/(m² K).
    """

    face: str
    area: float
    u_value: float
    solar_gain: float
    panes: int = 2
    shading: Schedule = 1.0
    shade: Shade | None = None
    angles: Sequence[tuple[float, float]] = ()
    diffuse_share: float | None = None
    emittance: float = 0.84
    outside_film: float | Film | None = None
    inside_film: float | Film | None = None

    def __post_init__(self) -> None:
        what = f'window in "{self.face}"'
        positive(f"{what}: the area", self.area)
        positive(f"{what}: the U-value", self.u_value)
        within(f"{what}: the solar gain", self.solar_gain, 0.0, 1.0)
        within(f"{what}: the emittance", self.emittance, 0.0, 1.0)
        if self.panes not in (1, 2):
            raise OutOfRange(f"{what}: it has 1 or 2 panes; found", self.panes)
        for share in by_hour(f"{what}: shading", self.shading):
            within(f"{what}: the shading", share, 0.0, 1.0)
        if self.diffuse_share is not None:
            within(f"{what}: the diffuse share", self.diffuse_share, 0.0, 1.5)
        last = -1.0
        for angle, share in self.angles:
            within(f"{what}: an angle of incidence", angle, 0.0, math.pi / 2 + 1e-6)
            within(f"{what}: a share of the gain", share, 0.0, 1.5)
            if angle <= last:
                raise OutOfRange(f"{what}: angles of incidence rise; found", angle)
            last = angle


@dataclass(frozen=True)
class Gain:
    """Heat from people, lamps or machines.

    Attributes
    ----------
    sensible : W; one figure or 24
    radiant_share : of the sensible part; the rest goes to the air
    latent : W as moisture; one figure or 24
    """

    sensible: Schedule
    radiant_share: float = 0.5
    latent: Schedule = 0.0

    def __post_init__(self) -> None:
        within("a gain's radiant share", self.radiant_share, 0.0, 1.0)
        for name, schedule in (("sensible", self.sensible), ("latent", self.latent)):
            for power in by_hour(f"a gain's {name} part", schedule):
                not_negative(f"a gain's {name} part", power)


@dataclass(frozen=True)
class Enclosure:
    """A room of one air temperature.

    Attributes
    ----------
    name : its own among those of a run
    volume : m³ of air
    faces : all that close it in, each area with its windows
    windows : glazing in those faces
    leakage : air changes by itself, 1/s (0.5 an hour is 0.5 / 3600), of air at the room's temperature and the
        place's pressure; the same in every wind, unless `leakage_follows_wind`
    leakage_follows_wind : `leakage` is then that in the breeze of `physics.ventilation`
    ventilation : m³/s of outdoor air besides, at the room's temperature and the place's pressure; one figure or 24
    gains : heat set free inside
    heating : °C under which the room is not let fall; one figure or 24, nan = not heated in that hour; None = never
    cooling : °C over which it is not let rise; the same way
    sun_shares : share of the sun through the windows that each face takes up in the end, by face name; what they
        lack of 1 goes out through the glass again. Left out: the sun falls on the floor, or on all faces alike where
        there is none; what a face does not take up is thrown back to the others, panes too, until all is taken up
    sun_lost : share of the sun that goes out through the glass again, in place of the one so worked out
    furnishing_heat_capacity : J/K of what stands in it
    furnishing_area : m² of that, exposed to the air
    ground_reflectance : of the land outside; None = the sea
    """

    name: str
    volume: float
    faces: Sequence[Face]
    windows: Sequence[Window] = ()
    leakage: float = 0.0
    leakage_follows_wind: bool = False
    ventilation: Schedule = 0.0
    gains: Sequence[Gain] = ()
    heating: Schedule | None = None
    cooling: Schedule | None = None
    sun_shares: Mapping[str, float] | None = None
    sun_lost: float | None = None
    furnishing_heat_capacity: float = 0.0
    furnishing_area: float = 0.0
    ground_reflectance: float | None = 0.2
    opaque_areas: Mapping[str, float] = field(init=False, repr=False, compare=False)

    def __post_init__(self) -> None:
        what = f'enclosure "{self.name}"'
        positive(f"{what}: the volume", self.volume)
        not_negative(f"{what}: the leakage", self.leakage)
        not_negative(f"{what}: the furnishings' heat capacity", self.furnishing_heat_capacity)
        not_negative(f"{what}: the furnishings' area", self.furnishing_area)
        for flow in by_hour(f"{what}: ventilation", self.ventilation):
            not_negative(f"{what}: the ventilation", flow)
        if self.furnishing_area > 0.0 and self.furnishing_heat_capacity == 0.0:
            raise OutOfRange(f"{what}: furnishings of some area have a heat capacity; found", 0.0)
        if self.ground_reflectance is not None:
            within(f"{what}: the ground's reflectance", self.ground_reflectance, 0.0, 1.0)
        if not self.faces:
            raise OutOfRange(f"{what}: it has at least one face; found", 0)
        object.__setattr__(self, "opaque_areas", self._opaque_areas(what))
        self._check_sun(what)
        self.check_band()

    def _opaque_areas(self, what: str) -> dict[str, float]:
        """m² of each face without its windows."""
        areas: dict[str, float] = {}
        for face in self.faces:
            if face.name in areas:
                raise OutOfRange(f"{what}: each face has a name of its own; found twice", face.name)
            areas[face.name] = face.area
        for window in self.windows:
            if window.face not in areas:
                raise OutOfRange(f'{what}: a window is in one of its faces; found "{window.face}"')
            if self.face(window.face).beyond != AIR:
                raise OutOfRange(f'{what}: a window is in a face to the air; found "{window.face}"')
            if window.shade is not None and abs(self.face(window.face).tilt - 0.5 * math.pi) > UPRIGHT:
                raise OutOfRange(
                    f'{what}: overhangs and fins stand on upright faces; found a tilt of rad, "{window.face}":',
                    self.face(window.face).tilt,
                )
            areas[window.face] -= window.area
        for face in self.faces:
            if areas[face.name] < -LEAST_AREA:
                glass = face.area - areas[face.name]
                raise OutOfRange(f'{what}: face "{face.name}" of {face.area:g} m² has windows of m²', glass)
            if areas[face.name] < LEAST_AREA:
                areas[face.name] = 0.0
        return areas

    def _check_sun(self, what: str) -> None:
        if self.sun_lost is not None:
            within(f"{what}: the share of the sun that is lost again", self.sun_lost, 0.0, 1.0)
            if self.sun_shares is not None:
                raise OutOfRange(
                    f"{what}: what the sun shares lack of 1 is lost; a lost share besides is one too many; found",
                    self.sun_lost,
                )
        for name, share in (self.sun_shares or {}).items():
            if name not in self.opaque_areas:
                raise OutOfRange(f'{what}: the sun falls on its faces; found "{name}"')
            within(f'{what}: the share of the sun on "{name}"', share, 0.0, 1.0)
            if share > 0.0 and self.opaque_areas[name] == 0.0:
                raise OutOfRange(f'{what}: "{name}" is all glass and takes up no sun; found a share of', share)
        total = math.fsum((self.sun_shares or {}).values())
        if total > 1.0 + 1e-9:
            raise OutOfRange(f"{what}: shares of the sun make 1 at most; found", total)

    def check_band(self) -> None:
        """Refuse set points that ask for heating and cooling at once."""
        what = f'enclosure "{self.name}"'
        warm, cold = self.set_points(self.heating, "heating"), self.set_points(self.cooling, "cooling")
        for hour, (low, high) in enumerate(zip(warm, cold, strict=True)):
            for name, point in (("heating", low), ("cooling", high)):
                if not math.isnan(point):
                    within(f"{what}: the {name} set point", point, -50.0, 60.0)
            if low > high:
                raise OutOfRange(
                    f"{what}: heating up to {low:g} °C and cooling down to {high:g} °C at once; found in hour", hour
                )

    def set_points(self, schedule: Schedule | None, name: str) -> tuple[float, ...]:
        """24 set points, nan where there is none."""
        return (math.nan,) * HOURS if schedule is None else by_hour(f'enclosure "{self.name}": {name}', schedule)

    def face(self, name: str) -> Face:
        """The face of that name."""
        return next(face for face in self.faces if face.name == name)


def inside_film(film: float | Film | None, tilt: float) -> tuple[float, float]:
    """Convection and radiation of an inside surface, W/(m² K)."""
    if film is None:
        return inside_convection(tilt), INSIDE_RADIATION
    if isinstance(film, Film):
        return film.convection, INSIDE_RADIATION if film.radiation is None else film.radiation
    radiation = min(radiative_film(0.9, ROOM_TEMPERATURE), MOST_RADIANT * film)
    return film - radiation, radiation


def glass_conductance(window: Window, face: Face) -> float:
    """W/(m² K) between the two faces of a window: what its U-value leaves without the films."""
    outside = face.outside_film if window.outside_film is None else window.outside_film
    inside = face.inside_film if window.inside_film is None else window.inside_film
    films = []
    for film, rated in ((outside, RATED_OUTSIDE), (inside, RATED_INSIDE)):
        if isinstance(film, Film):
            films.append(rated if film.radiation is None else film.convection + film.radiation)
        else:
            films.append(rated if film is None else film)
    left = 1.0 / window.u_value - 1.0 / films[0] - 1.0 / films[1]
    if left < LEAST_GLASS:
        raise OutOfRange(
            f'window in "{window.face}": with films of {films[0]:.3g} and {films[1]:.3g} W/(m² K) the U-value lies '
            f"under {1.0 / (1.0 / films[0] + 1.0 / films[1] + LEAST_GLASS):.3g} W/(m² K); found",
            window.u_value,
        )
    return 1.0 / left


def sun_on_faces(enclosure: Enclosure, through: Sequence[float], far_side: float) -> tuple[dict[str, float], float]:
    """Where the sun that has come in ends: the share of each face, and of far sides of other rooms' faces.

    Parameters
    ----------
    enclosure : the room
    through : share of the light from all sides that each window lets out
    far_side : m² of faces that belong to a neighbour's description

    Returns
    -------
    shares that make 1 less what goes out through the glass, by face; and the share of the far sides

    The sun first falls on the floor. What the floor throws back meets the other surfaces in proportion to their
    area; from then on every surface sees every one, as in an integrating sphere.
    """
    shares = enclosure.sun_shares
    if shares is not None:
        return dict(shares), 0.0
    inside = {face.name: enclosure.opaque_areas[face.name] for face in enclosure.faces}
    absorbs = {face.name: face.inside_absorptance for face in enclosure.faces}
    glass = sum(window.area for window in enclosure.windows)
    glass_takes = sum(w.area * share for w, share in zip(enclosure.windows, through, strict=True))
    floors = [f.name for f in enclosure.faces if f.tilt >= FLOOR_TILT and inside[f.name] > 0.0]
    # Each a row of areas on faces, far sides and glass that shares of light fall on in proportion.
    everything = dict(inside), far_side, glass
    others = {name: 0.0 if name in floors else area for name, area in inside.items()}, far_side, glass
    struck = ({name: inside[name] for name in floors}, 0.0, 0.0) if floors else everything
    taken = dict.fromkeys(inside, 0.0)
    far, lost, light = 0.0, 0.0, 1.0
    for areas, far_area, glass_area in (struck, others if sum(others[0].values()) > 0.0 else everything):
        total = sum(areas.values()) + far_area + glass_area
        left = 0.0
        for name, area in areas.items():
            taken[name] += light * area / total * absorbs[name]
            left += light * area / total * (1.0 - absorbs[name])
        far += light * far_area / total * FAR_ABSORPTANCE
        left += light * far_area / total * (1.0 - FAR_ABSORPTANCE)
        passed = glass_takes / glass if glass > 0.0 else 0.0
        lost += light * glass_area / total * passed
        light = left + light * glass_area / total * (1.0 - passed)
    takes = sum(area * absorbs[name] for name, area in inside.items()) + far_side * FAR_ABSORPTANCE + glass_takes
    if takes > 0.0:
        for name, area in inside.items():
            taken[name] += light * area * absorbs[name] / takes
        far += light * far_side * FAR_ABSORPTANCE / takes
        lost += light * glass_takes / takes
    kept = math.fsum(taken.values()) + far
    if enclosure.sun_lost is not None and kept > 0.0:
        scale = (1.0 - enclosure.sun_lost) / kept
        taken, far = {name: scale * share for name, share in taken.items()}, scale * far
    return taken, far
