"""What stands in the title block of every drawing, and its revisions."""

from __future__ import annotations

from typing import Annotated

from pydantic import Field

from anchorwatt.design.offer import Date
from anchorwatt.design.section import Section

Words = Annotated[str, Field(max_length=120)]


class RevisionEntry(Section):
    """One revision of the drawings."""

    date: Date | None = Field(default=None, description="The day that it was given out.")
    about: Words = Field(default="", description="What changed.")
    by: Words = Field(default="", description="Who made it.")


class DrawingsSection(Section):
    """The title block of every drawing."""

    yard: Words = Field(default="", description="Who does the work.")
    job: Words = Field(default="", description="Number of the job.")
    drawn: Words = Field(default="", description="Who drew it.")
    checked: Words = Field(default="", description="Who checked it.")
    revisions: dict[Annotated[str, Field(min_length=1, max_length=8)], RevisionEntry] = Field(
        default_factory=dict, max_length=30, description="Revisions by their letters, the latest last."
    )
