"""The boat as a whole, every gap filled from its proportions."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.catalogue.construction import Construction
from anchorwatt.catalogue.finish import Finish
from anchorwatt.catalogue.hull_form import HullForm
from anchorwatt.catalogue.part import typed
from anchorwatt.design.boat import Boat
from anchorwatt.design.ledger import MEMORY, Ledger
from anchorwatt.design.skin import SkinParts
from anchorwatt.units.quantity import Quantity

SEAWATER = 1025.0  # kg/m3, of the hydrostatics of ships


@dataclass(frozen=True)
class Hull:
    """A boat with every figure filled in."""

    length: float  # m
    beam: float  # m
    waterline: float  # m
    draught: float  # m of the hull body
    freeboard: float  # m
    displacement: float  # kg
    form: HullForm
    skins: dict[str, SkinParts]  # by what they cover: topsides, bottom, deck, superstructure, roof
    bulkheads: Construction
    soles: Construction


def fill_boat(boat: Boat, ledger: Ledger) -> Hull:
    """Fill in what the file does not say of the boat as a whole."""
    form = boat.form
    if form is None:
        form = typed(HullForm, "displacement trawler")
        ledger.note(("boat", "form"), form.name, "the usual case of this program", MEMORY)

    def of_length(name: str, given: float | None, share: Quantity) -> float:
        words = f"{share.text} of the length, {form.name}"
        return ledger.fill(given, ("boat", name), boat.length * share, "length", words, form.source)

    waterline = of_length("waterline", boat.waterline, form.waterline_share)
    draught = of_length("draught", boat.draught, form.draught_share)
    freeboard = of_length("freeboard", boat.freeboard, form.freeboard_share)
    box = form.hulls * waterline * boat.beam * form.hull_beam_share * draught
    displacement = ledger.fill(
        boat.displacement,
        ("boat", "displacement"),
        SEAWATER * form.block_coefficient * box,
        "mass",
        f"block coefficient {form.block_coefficient.text}, {form.name}",
        form.source,
    )
    return Hull(
        float(boat.length),
        float(boat.beam),
        waterline,
        draught,
        freeboard,
        displacement,
        form,
        _skins(boat, ledger),
        boat.bulkheads or _usual(ledger, "bulkheads", "plywood bulkhead"),
        boat.soles or _usual(ledger, "soles", "plywood sole"),
    )


def _usual(ledger: Ledger, key: str, name: str) -> Construction:
    ledger.note(("boat", key), name, "usual joinery", MEMORY)
    return typed(Construction, name)


def _skins(boat: Boat, ledger: Ledger) -> dict[str, SkinParts]:
    hull = boat.hull
    if hull.finish is None:
        ledger.note(("boat", "hull", "finish"), "white", "most boats are", MEMORY)
        hull = hull.model_copy(update={"finish": typed(Finish, "white")})
    topsides = _like(boat.topsides, "topsides", hull, "as the hull", ledger)
    superstructure = _like(boat.superstructure, "superstructure", hull, "as the hull", ledger)
    roof = _like(boat.roof, "roof", superstructure, "as the deckhouse", ledger)
    tread = hull.model_copy(update={"finish": typed(Finish, "light-grey non-skid")})
    deck = _like(boat.deck, "deck", tread, "as the hull, with a non-skid finish", ledger)
    cored = "core" in hull.construction.name or "foam" in hull.construction.name
    name = "foam-cored bottom and sole" if cored else "solid bottom and sole"
    under = SkinParts(construction=typed(Construction, name), finish=hull.finish)
    bottom = _like(boat.bottom, "bottom", under, "bottom, bilge and sole of such a hull", ledger)
    return {
        "topsides": topsides,
        "bottom": bottom,
        "deck": deck,
        "superstructure": superstructure,
        "roof": roof,
    }


def _like(given: SkinParts | None, key: str, other: SkinParts, rule: str, ledger: Ledger) -> SkinParts:
    if given is None:
        finish = other.finish.name if other.finish is not None else ""
        ledger.note(("boat", key), f"{other.construction.name}, {finish}", rule, MEMORY)
        return other
    if given.finish is None:
        finish = other.finish.name if other.finish is not None else ""
        ledger.note(("boat", key, "finish"), finish, rule, MEMORY)
        return given.model_copy(update={"finish": other.finish})
    return given
