"""How a pydantic model treats our own value types where no field type says more: taken as they are, dumped as text.

pydantic asks a class for this when it needs it, so that nothing here loads pydantic by itself.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from pydantic_core import CoreSchema


class DumpedAsText:
    """A value that a pydantic model takes as an instance only and dumps as its text."""

    __slots__ = ()

    @classmethod
    def __get_pydantic_core_schema__(cls, source: object, handler: object) -> CoreSchema:
        from pydantic_core import core_schema

        return core_schema.is_instance_schema(cls, serialization=core_schema.to_string_ser_schema())
