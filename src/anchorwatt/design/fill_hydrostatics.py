"""How stiffly the boat floats, estimated from its proportions where nobody measured it."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.design.boat import Boat
from anchorwatt.design.hull import SEAWATER, Hull
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.physics.hydrostatics import waterplane_inertia_across, waterplane_inertia_along


@dataclass(frozen=True)
class Hydrostatics:
    """What heel and trim are computed from."""

    waterplane: float  # m2
    flotation: float  # m forward of the aft end of the waterline
    gravity_up: float  # m over the waterline
    metacentric_height: float  # m
    longitudinal_metacentric_height: float  # m


def fill_hydrostatics(boat: Boat, hull: Hull, ledger: Ledger) -> Hydrostatics:
    """Waterplane, its centre, and both metacentric heights."""
    form, key = hull.form, "boat"
    coefficient = float(form.waterplane_coefficient)
    beam = hull.beam * form.hull_beam_share * form.waterline_beam_share
    waterplane = ledger.fill(
        boat.waterplane,
        (key, "waterplane"),
        form.hulls * coefficient * hull.waterline * beam,
        "area",
        f"waterplane coefficient {form.waterplane_coefficient.text}, beam on the waterline "
        f"{ledger.show(beam, 'length')} a hull, {form.name}",
        form.source,
    )
    flotation = ledger.fill(
        boat.flotation,
        (key, "flotation"),
        form.flotation_share * hull.waterline,
        "length",
        f"{form.flotation_share.text} of the waterline, {form.name}",
        form.source,
    )
    if not 0.0 < flotation < hull.waterline:
        ledger.refuse(
            (key, "flotation"),
            f"a centre of flotation {ledger.show(flotation, 'length')} forward",
            f"less than the waterline of {ledger.show(hull.waterline, 'length')}",
        )
    gravity = ledger.fill(
        boat.gravity_height,
        (key, "gravity_height"),
        form.gravity_share * hull.length,
        "length",
        f"{form.gravity_share.text} of the length, over the waterline, {form.name}",
        form.source,
    )
    volume = hull.displacement / SEAWATER
    # Morrish: the centre of buoyancy of a hull body lies T (1/6 + Cb / 3 Cw) below the waterline.
    buoyancy = -hull.draught * (1.0 / 6.0 + form.block_coefficient / (3.0 * coefficient))
    across, rule = _across(hull, coefficient, beam, waterplane, volume, buoyancy - gravity)
    along = form.hulls * waterplane_inertia_along(coefficient, hull.waterline, beam) / volume + buoyancy - gravity
    return Hydrostatics(
        waterplane=waterplane,
        flotation=flotation,
        gravity_up=gravity,
        metacentric_height=ledger.fill(
            boat.metacentric_height,
            (key, "metacentric_height"),
            across,
            "length",
            rule,
            form.source,
        ),
        longitudinal_metacentric_height=ledger.fill(
            boat.longitudinal_metacentric_height,
            (key, "longitudinal_metacentric_height"),
            max(along, 0.5 * hull.waterline),
            "length",
            "second moment of the waterplane along over the displaced volume, less the height of the centre of gravity "
            "over that of buoyancy; at least half of the waterline",
            MEMORY,
        ),
    )


def _across(
    hull: Hull, coefficient: float, beam: float, waterplane: float, volume: float, lever: float
) -> tuple[float, str]:
    """The metacentric height and how it was found; `lever` is m from the centre of gravity up to that of buoyancy."""
    form = hull.form
    if form.metacentric_share is not None:
        return form.metacentric_share * hull.beam, f"{form.metacentric_share.text} of the beam, {form.name}"
    own = form.hulls * waterplane_inertia_across(coefficient, hull.waterline, beam)
    apart = 0.5 * hull.beam * (1.0 - form.hull_beam_share)  # m, of an outer hull from the middle
    outer = min(form.hulls, 2) / form.hulls if form.hulls > 1 else 0.0
    height = (own + outer * waterplane * apart**2) / volume + lever
    lowest = 0.1 * hull.beam
    return max(height, lowest), (
        "second moment of the hulls' waterplanes across over the displaced volume, less the height of the centre of "
        "gravity over that of buoyancy; at least a tenth of the beam"
    )
