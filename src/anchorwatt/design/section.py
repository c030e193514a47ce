"""What all parts of a design file have in common."""

from __future__ import annotations

from typing import Annotated, ClassVar

from pydantic import BaseModel, ConfigDict, StringConstraints

Name = Annotated[str, StringConstraints(pattern=r"^[^.\s]([^.]*[^.\s])?$", max_length=60)]
"""What the writer calls a cabin, a load or a part of the boat: any text without a full stop."""

Text = Annotated[str, StringConstraints(max_length=4000)]


class Section(BaseModel):
    """A mapping of the design file: its keys are closed, and it never changes."""

    model_config = ConfigDict(frozen=True, extra="forbid", populate_by_name=True, allow_inf_nan=False)

    in_short: ClassVar[str] = ""
    """The one key whose value may stand for the whole mapping; none where empty."""
