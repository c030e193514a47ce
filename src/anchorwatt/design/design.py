"""A design: one boat, its plant, its power and the day it must live through."""

from __future__ import annotations

from pathlib import Path
from typing import Annotated, Literal

from pydantic import Field, PrivateAttr

from anchorwatt.catalogue.generator import GeneratorSlot
from anchorwatt.design.boat import Boat
from anchorwatt.design.cabins import CabinEntry, Neighbour
from anchorwatt.design.charging import Charging
from anchorwatt.design.cooling import Cooling
from anchorwatt.design.day import Brief, PeriodEntry
from anchorwatt.design.document import Document
from anchorwatt.design.place import Place
from anchorwatt.design.power import AlternatingSide, DirectSide
from anchorwatt.design.section import Name, Section, Text
from anchorwatt.design.week import LONGEST_WEEK, PlannedDay


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

    _document: Document = PrivateAttr()

    @property
    def document(self) -> Document:
        """The text that it was read from, with the place of every key."""
        return self._document

    @property
    def path(self) -> Path | None:
        """The file that it was read from; None for a text."""
        return self._document.path

    def __eq__(self, other: object) -> bool:
        """Two designs are the same when their files say the same, comments and spacing aside."""
        return isinstance(other, Design) and self._document.data == other._document.data

    def __hash__(self) -> int:
        return hash(self.name)
