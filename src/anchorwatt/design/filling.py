"""From a design to its specification: every name looked up, every gap filled, every estimate listed."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Any

from anchorwatt.catalogue.overlay import current
from anchorwatt.design.design import Design
from anchorwatt.design.document import Document
from anchorwatt.design.fill_cabins import fill_cabins
from anchorwatt.design.fill_charging import check_engines, fill_engines
from anchorwatt.design.fill_cooling import check_cooling, fill_alternative, fill_chilled, fill_plant
from anchorwatt.design.fill_day import fill_brief, fill_place
from anchorwatt.design.fill_engine_battery import (
    LOAD,
    check_engine_battery,
    engine_battery_load,
    fill_engine_battery,
)
from anchorwatt.design.fill_fed import fill_fed
from anchorwatt.design.fill_generator import check_generator, fill_generator, night_period
from anchorwatt.design.fill_hydrostatics import fill_hydrostatics
from anchorwatt.design.fill_items import fill_items
from anchorwatt.design.fill_lead_acid import fill_lead_acid
from anchorwatt.design.fill_offer import check_offer, fill_offer
from anchorwatt.design.fill_partitions import fill_partitions
from anchorwatt.design.fill_places import amidships, fill_places
from anchorwatt.design.fill_plan import (
    check_followers,
    check_heating,
    check_hours,
    check_openings,
    check_reverse,
    fill_plan,
)
from anchorwatt.design.fill_power import (
    check_bank,
    check_converters,
    fill_bank,
    fill_charger,
    fill_inverter,
    fill_loads,
    fill_shore,
    fill_solar,
    fill_transformer,
)
from anchorwatt.design.fill_spaces import check_spaces, fill_spaces
from anchorwatt.design.fill_week import fill_week
from anchorwatt.design.fill_wiring import fill_wiring
from anchorwatt.design.hull import fill_boat
from anchorwatt.design.installation import NOTHING_SAID
from anchorwatt.design.ledger import Ledger
from anchorwatt.design.removed import taken_out
from anchorwatt.design.specification import Specification
from anchorwatt.units import System


def specify(design: Design) -> Specification:
    """The design with every gap filled; reading it has filled them already."""
    return design.specification


def fill(sections: Mapping[str, Any], ledger: Ledger) -> Specification | None:
    """Fill and check those sections that there are; the whole specification when there are all."""

    def have(name: str) -> Any:
        return sections.get(name)

    boat, charging, cooling, dc, ac = (have(name) for name in ("boat", "charging", "cooling", "dc", "ac"))
    cabins, plan = have("cabins") or {}, have("plan")
    names = {name: number for number, name in enumerate(cabins)}
    hull = fill_boat(boat, ledger) if boat else None
    floats = fill_hydrostatics(boat, hull, ledger) if hull else None
    place = fill_place(have("place"), ledger) if have("place") else None
    neighbours = have("neighbours") or ()
    rooms = fill_cabins(cabins, neighbours, hull, ledger) if hull and cabins else []
    partitions = fill_partitions(neighbours, rooms, hull, ledger) if hull else []
    if cooling:
        check_cooling(cooling, ledger)
    plant = fill_plant(cooling.plant, cabins, hull, ledger) if cooling and hull else None
    alternative = fill_alternative(cooling.alternative, cabins, ledger) if cooling else None
    chilled = fill_chilled(cooling.chilled_water, plant, cabins, hull, ledger) if plant and cooling and hull else None
    if dc:
        check_bank(dc, ledger)
    if dc:
        check_engine_battery(ac, dc, ledger)
    if dc and ac:
        check_converters(ac, dc.nominal_voltage, ledger)
    if dc and charging:
        check_engines(charging, dc.nominal_voltage, ledger)
    engines = fill_engines(charging, cabins, hull, ledger) if charging and hull else []
    if have("generator"):
        check_generator(have("generator"), ledger)
    check_offer(have("offer"), ledger)
    loads = fill_loads(ac, dc, names) if ac and dc else []
    entries = {**ac.loads, **dc.loads} if ac and dc else {}
    duties = {name: float(entry.appliance.duty) for name, entry in entries.items()}
    battery = fill_engine_battery(dc, charging, names, ledger) if dc and charging else None
    if battery is not None:
        loads.append(engine_battery_load(battery))
        duties[LOAD] = 1.0
    periods = []
    if plan:
        check_hours(plan, ledger)
        check_heating(plan, ledger)
        glazed = {room.cabin.name: sum(window.area for window in room.cabin.windows) for room in rooms}
        check_openings(plan, glazed, ledger)
        periods = fill_plan(plan, names, loads, duties, engines, ledger)
    if plan and cooling:
        check_reverse(plan, cooling.plant, ledger)
        check_followers(plan, cooling.plant, ledger)
    brief = fill_brief(have("brief"), ledger) if have("brief") else None
    week = fill_week(have("week"), brief, ledger)
    bank = fill_bank(dc.bank, names, ledger) if dc else None
    replaced = fill_lead_acid(dc, ledger) if dc else None
    solar = fill_solar(dc.solar, ledger) if dc else None
    if not (hull and floats and place and plant and ac and bank and brief and rooms and periods and engines):
        return None
    shore, transformer = fill_shore(ac, ledger), fill_transformer(ac, names)
    night = night_period(periods, brief.night_start)
    generator = fill_generator(have("generator"), plant, loads, night, transformer, shore, ledger)
    within = tuple(room.cabin for room in rooms)
    spaces = fill_spaces(have("spaces") or {}, names, within, hull, ledger)
    listed = fill_items(cooling, ac, dc, charging, names, [one.centre for one in within], amidships(hull))
    places = have("places") or {}
    items = fill_places(listed, places, spaces, within, hull, ledger)
    check_spaces(items, spaces, within, ledger)
    compared = generator if have("generator") else None
    removed = taken_out(boat, places, items, within, compared, replaced, hull, ledger)
    offer = fill_offer(have("offer"), items, ledger)
    return Specification(
        name=have("name") or "",
        length=hull.length,
        beam=hull.beam,
        waterline=hull.waterline,
        draught=hull.draught,
        hulls=hull.form.hulls,
        hull_beam=hull.beam * hull.form.hull_beam_share,
        block_coefficient=float(hull.form.block_coefficient),
        metacentric_height=floats.metacentric_height,
        longitudinal_metacentric_height=floats.longitudinal_metacentric_height,
        waterplane=floats.waterplane,
        flotation=floats.flotation,
        gravity_up=floats.gravity_up,
        displacement=hull.displacement,
        place=place,
        cabins=within,
        partitions=tuple(partitions),
        spaces=spaces,
        items=items,
        removed=removed,
        wiring=fill_wiring(have("wiring"), offer.currency, ledger),
        plant=plant,
        alternative=alternative,
        chilled=chilled,
        loads=tuple(loads),
        fed=fill_fed(cooling, ac),
        shore=shore,
        charger=fill_charger(ac, names),
        transformer=transformer,
        inverter=fill_inverter(ac, names),
        bank=bank,
        replaced=replaced,
        solar=solar,
        engine_battery=battery,
        engines=tuple(engines),
        generator=generator,
        plan=tuple(periods),
        week=week,
        brief=brief,
        offer=offer,
        installation=have("installation") or NOTHING_SAID,
        overlay=current(),
        estimates=tuple(ledger.estimates),
    )


def ledger_for(document: Document, boat: Any) -> Ledger:
    """An empty ledger that shows figures in the system of units that the file's writer uses."""
    return Ledger(document, _system(boat))


def _system(boat: Any) -> System:
    return "us" if boat is not None and boat.length.unit in ("ft", "in", "yd") else "si"
