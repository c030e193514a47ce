"""A mapping that may be written as the value of one of its keys: ``transformer: NAME`` for ``{unit: NAME}``."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any

from pydantic import BaseModel, GetCoreSchemaHandler, TypeAdapter, ValidatorFunctionWrapHandler
from pydantic.fields import FieldInfo
from pydantic_core import CoreSchema, core_schema

from anchorwatt.design.section import Section


def annotation(field: FieldInfo) -> Any:
    """A field's type with all that is said of it, put together again."""
    return Annotated[field.annotation, *field.metadata] if field.metadata else field.annotation


class InShort:
    """Marks a section that its key `in_short` may stand for: ``Annotated[Parts, InShort(Parts)]``.

    A mapping with a key of the section, or with no key of that one value, is the section; anything else is that value.
    Messages keep the key and the line of what was written.
    """

    def __init__(self, section: type[Section]) -> None:
        self.section = section
        field = section.model_fields[section.in_short]
        self.keys: tuple[str, ...] = ()
        if isinstance(field.annotation, type) and issubclass(field.annotation, BaseModel):
            self.keys = ("like", *field.annotation.model_fields)
        self.part: TypeAdapter[Any] = TypeAdapter(annotation(field))

    def read(self, value: Any, _: ValidatorFunctionWrapHandler) -> Any:
        """Read the long form or the short one."""
        if isinstance(value, self.section):
            return value
        if isinstance(value, Mapping) and (
            any(name in value for name in self.section.model_fields) or not any(name in value for name in self.keys)
        ):
            # The wrapped schema is the choice of both forms, for the JSON Schema; a choice would tell faults twice.
            return self.section.model_validate(value)
        return self.section.model_validate({self.section.in_short: self.part.validate_python(value)})

    def __get_pydantic_core_schema__(self, source: Any, handler: GetCoreSchemaHandler) -> CoreSchema:
        field = self.section.model_fields[self.section.in_short]
        part = handler.generate_schema(annotation(field))
        return core_schema.no_info_wrap_validator_function(self.read, core_schema.union_schema([part, handler(source)]))
