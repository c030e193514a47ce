"""A design: one boat, its plant, its power and the day it must live through."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field, PrivateAttr

from anchorwatt.catalogue.generator import GeneratorSlot
from anchorwatt.catalogue.overlay import NOTHING, Overlay
from anchorwatt.design.boat import Boat
from anchorwatt.design.cabins import CabinEntry, Neighbour
from anchorwatt.design.charging import Charging
from anchorwatt.design.cooling import Cooling
from anchorwatt.design.day import Brief, PeriodEntry
from anchorwatt.design.document import Document
from anchorwatt.design.drawings import DrawingsSection
from anchorwatt.design.installation import Installation
from anchorwatt.design.offer import Offer
from anchorwatt.design.place import Place
from anchorwatt.design.places import PlaceEntry
from anchorwatt.design.power import AlternatingSide, DirectSide
from anchorwatt.design.section import Name, Section, Text
from anchorwatt.design.spaces import SpaceEntry
from anchorwatt.design.specification import Specification
from anchorwatt.design.week import LONGEST_WEEK, PlannedDay
from anchorwatt.design.wiring import WiringSection

CatalogueFile = Annotated[str, Field(min_length=1, max_length=400)]
Serial = Annotated[str, Field(min_length=1, max_length=400)]


class Design(Section):
    """A design file, read. It never changes: an edit makes a new one.

    What the file leaves out is None here; `specify` fills it in.
    """

    anchorwatt: Literal[1] = Field(description="Version of the shape of this file.")
    name: Annotated[str, Field(min_length=1, max_length=120)] = Field(description="What the boat is called.")
    about: Text = Field(default="", description="Anything worth knowing.")
    boat: Boat = Field(description="The boat as a whole.")
    place: Place = Field(description="Where and when.")
    cabins: dict[Name, CabinEntry] = Field(min_length=1, max_length=60, description="Cabins by name.")
    places: dict[Name, PlaceEntry] = Field(
        default_factory=dict, max_length=200, description="Where parts stand, by their tags or by what they are."
    )
    spaces: dict[Name, SpaceEntry] = Field(
        default_factory=dict, max_length=60, description="Lockers and other spaces where parts go, by name."
    )
    neighbours: tuple[Neighbour, ...] = Field(default=(), max_length=200, description="What lies between cabins.")
    cooling: Cooling = Field(description="The cooling plant.")
    ac: AlternatingSide = Field(description="The AC side.")
    dc: DirectSide = Field(description="The DC side.")
    charging: Charging = Field(description="Engines and alternators.")
    generator: GeneratorSlot | None = Field(
        default=None, description="Generating set to compare with; it is not part of the design."
    )
    plan: tuple[PeriodEntry, ...] = Field(
        min_length=1, max_length=96, description="The day, period after period, 24 h in all."
    )
    brief: Brief = Field(description="The brief: what must hold.")
    week: tuple[PlannedDay, ...] | None = Field(
        default=None, min_length=1, max_length=LONGEST_WEEK, description="The week ahead, day after day."
    )

    wiring: WiringSection | None = Field(default=None, description="How the boat is wired.")
    catalogue: tuple[CatalogueFile, ...] = Field(
        default=(), max_length=20, description="The yard's own catalogue files, laid over the generic one."
    )
    offer: Offer | None = Field(default=None, description="How it is priced.")
    installation: Installation | None = Field(default=None, description="What somebody vouches for aboard.")
    serials: dict[Name, Serial] = Field(
        default_factory=dict, max_length=400, description="Serial numbers of parts, by their tags."
    )
    drawings: DrawingsSection | None = Field(
        default=None, description="The title block of the drawings, and their revisions."
    )

    _document: Document = PrivateAttr()
    _overlay: Overlay = PrivateAttr(default=NOTHING)
    _specification: Specification = PrivateAttr()

    @property
    def document(self) -> Document:
        """The text that it was read from, with the place of every key."""
        return self._document

    @property
    def path(self) -> Path | None:
        """The file that it was read from; None for a text."""
        return self._document.path

    @property
    def overlay(self) -> Overlay:
        """What the yard's own catalogue files lay over the generic catalogue."""
        return self._overlay

    @property
    def specification(self) -> Specification:
        """The design with every name looked up and every gap filled, as reading it checked it."""
        return self._specification

    def __eq__(self, other: object) -> bool:
        """Two designs are the same when their files say the same, comments and spacing aside."""
        if not isinstance(other, Design):
            return False
        return self._document.data == other._document.data and self._overlay == other._overlay

    def __hash__(self) -> int:
        return hash(self.name)
