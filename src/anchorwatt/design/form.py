"""A design as a form: every key that a person may type, with its unit, its range and where its value comes from.

The form is read off the types of the design file, so a new key has its field here at once.
"""

from __future__ import annotations

import re
import types
import typing
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from anchorwatt.catalogue.overlay import laid_over
from anchorwatt.catalogue.part import Part, names, raw, record_of
from anchorwatt.catalogue.slot import Slot
from anchorwatt.design.described import Kind, Told, described, metadata, of_type
from anchorwatt.design.design import Design
from anchorwatt.design.document import Key, child, dotted, scan
from anchorwatt.design.editing import edit, key_of
from anchorwatt.design.filling import specify
from anchorwatt.design.in_short import annotation
from anchorwatt.design.plain_value import written
from anchorwatt.errors import BadDesign

CABIN_NAMES = ("cabin", "thermostat")
ABOUT_A_PART = ("name", "source")  # words, not figures


@dataclass(frozen=True)
class Field:
    """One key and what may be written there."""

    key: str  # dotted, as in the file
    label: str
    about: str
    kind: Kind
    allowed: str  # in words
    choices: tuple[str, ...]  # of a choice; of a text, some that are usual
    typed: str | None  # what the file says; None where it says nothing
    used: str  # what is taken where the file says nothing; "" where that is nothing
    rule: str  # how that was found, with its source
    required: bool
    figures: tuple[Field, ...] = ()  # of the part that it names
    of_part: bool = False  # whether it is such a figure, which the file may type over
    in_catalogue: bool = False  # whether `used` is the catalogue's

    @property
    def basis(self) -> str:
        """Where the value comes from."""
        if self.typed is not None:
            return "typed"
        if not self.used:
            return "not given"
        return "catalogue" if self.in_catalogue else "estimated"


@dataclass(frozen=True)
class Group:
    """A mapping of the file: its fields, and the mappings in it."""

    key: str
    title: str
    about: str
    fields: tuple[Field, ...]
    groups: tuple[Group, ...]
    there: bool  # whether the file has it
    named: bool  # whether its entries are called as the writer likes, so that there can be more of them
    listed: bool = False  # whether they are a list, without names

    @property
    def name(self) -> str:
        """What the file calls it."""
        return self.key.rpartition(".")[2]

    def bare(self) -> Group:
        """The names of its entries only: to add one, or take one out."""
        return replace(self, groups=tuple(replace(one, fields=(), groups=()) for one in self.groups))

    def __iter__(self) -> Iterator[Field]:
        """All fields, those of the groups in it and the figures of parts too."""
        for field in self.fields:
            yield field
            yield from field.figures
        for group in self.groups:
            yield from group


def form(design: Design, key: str) -> Group:
    """The form of a part of a design.

    Parameters
    ----------
    key : dotted, of a mapping or list of the file: “boat”, “cabins.saloon”, “plan.0”

    Raises
    ------
    BadDesign
        The file has no such mapping.

    Example
    -------
    >>> from anchorwatt import design
    >>> trawler = design.parse(design.starter_text("trawler-14m"))
    >>> boat = form(trawler, "boat")
    >>> [(one.label, one.typed, one.basis) for one in boat.fields[:3]]
    [('length', '46 ft', 'typed'), ('beam', '14 ft 9 in', 'typed'), ('form', 'displacement trawler', 'typed')]
    """
    path = key_of(key, design.document)
    at: Any = Design
    about = ""
    for part in path:
        at, about = _below(at, part, about)
        if at is None:
            raise BadDesign((design.document.problem(path, f"no “{key}”", "a mapping of the design file"),))
    estimates = {one.key: (one.value, f"{one.rule} ({one.source})") for one in specify(design).estimates}
    with laid_over(design.overlay):
        return _Walk(design, estimates).group(at, path, about)


def retyped(design: Design, key: str, text: str | None) -> Design:
    """A design with what a form's field says now.

    Parameters
    ----------
    key : of a field
    text : as typed; None or nothing but spaces takes the key out, so that it is estimated again. Another part comes
        with its own figures; what was typed over those of the one before goes with it.

    Raises
    ------
    BadDesign
        The text does not fit; the design is unchanged.
    """
    path = key_of(key, design.document)
    if text is None or not text.strip():
        return edit(design, *_taken_out(design, path))
    with laid_over(design.overlay):
        value = _value(design, path, text.strip())
        if _slot(path) and _named(_typed(design, path)) == value:
            return design  # the same part, with the figures that are typed over it
        if _slot(path[:-1]) and _typed(design, path[:-1]) is None:
            path, value = path[:-1], {"like": _estimated(design, path[:-1]), str(path[-1]): value}
    return edit(design, *_put_in(design, path, value))


def typed_at(design: Design, key: str) -> str | None:
    """What the file says at a key, as a form's field shows it; None where it says nothing."""
    path = key_of(key, design.document)
    typed = _typed(design, path)
    if _slot(path):
        typed = _named(typed)
    return None if typed is None else _plain(typed)


def allowed_in(model: type[BaseModel], name: str) -> str:
    """What may be typed in a field of a model, in words."""
    return described(model, name).allowed


def added(design: Design, key: str, name: str) -> Design:
    """A design with one more entry in a mapping or list of entries, begun as a copy of the last one there.

    Parameters
    ----------
    key : of the mapping or list: “cabins”, “plan.0.people”
    name : what the new entry is called; not for a list

    Raises
    ------
    BadDesign
        There is an entry of that name, or the design does not pass with the new one; it is unchanged.
    """
    path = key_of(key, design.document)
    at, there = _type_at(path), _typed(design, path)
    if isinstance(there, list):
        return edit(design, f"{key}.{len(there)}", there[-1] if there else _begun(design, at))
    if isinstance(there, dict) and name in there:
        raise BadDesign((design.document.problem((*path, name), f"a second “{name}”", "a name that is not taken"),))
    entry = list(there.values())[-1] if isinstance(there, dict) and there else _begun(design, at)
    full = (*path, name)
    return edit(design, *_put_in(design, full, entry))


def _begun(design: Design, at: Any) -> Any:
    """The first entry of a mapping or list: what must be said, as an example."""
    inner = typing.get_args(_bare(at))[-1 if typing.get_origin(_bare(at)) is dict else 0]
    model = _model(inner)
    if model is None:
        return of_type(inner).example
    with laid_over(design.overlay):
        return {
            field.alias or name: _example(design, model, name)
            for name, field in model.model_fields.items()
            if field.is_required()
        }


def _example(design: Design, model: type[BaseModel], name: str) -> Any:
    told = described(model, name)
    if name in CABIN_NAMES:
        return next(iter(design.cabins))
    if told.slot:
        return names(told.slot)[0]
    return told.choices[0] if told.choices else told.example


def _taken_out(design: Design, path: Key) -> tuple[str, Any]:
    """The key to take out: a mapping that is written in short goes with its one value.

    A part whose last figure goes is written by its name again.
    """
    part = _typed(design, path[:-1])
    if _slot(path[:-1]) and isinstance(part, dict) and set(part) == {"like", path[-1]}:
        return dotted(path[:-1]), part["like"]
    if path in design.document.spans:
        return dotted(path), None
    return dotted(path[:-1]), None


def _put_in(design: Design, path: Key, value: Any) -> tuple[str, Any]:
    """The highest key that must change, and its value: mappings that are not there yet are made."""
    at: Any = design.document.data
    model: Any = Design
    for depth, part in enumerate(path):
        if not isinstance(at, dict | list):
            if at is not None:
                # Written in one word: the name of a part, or the value of the one key that stands for the rest.
                short = _short(model)
                if part == short:
                    return dotted(path[:depth]), value
                value = {short or "like": at} | _nested(path[depth:], value)
            else:
                value = _nested(path[depth:], value)
            return dotted(path[:depth]), value
        model, _ = _below(model, part, "")
        at = child(at, part)
    return dotted(path), value


def _nested(path: Key, value: Any) -> dict[str, Any]:
    for part in reversed(path):
        value = {str(part): value}
    return dict(value)


def _value(design: Design, path: Key, text: str) -> Any:
    """What the file shall say for what was typed."""
    field = _field_at(path)
    kind = "written" if field is None else described(field[0], field[1]).kind
    if text[0] in "{[" and kind != "text":
        kind = "written"  # a part with some of its figures changed
    if kind == "flag":
        return {"true": True, "false": False, "yes": True, "no": False}.get(text.lower(), text)
    if kind in ("whole", "number"):
        plain = text.replace("−", "-")
        return int(plain) if re.fullmatch(r"-?[0-9]{1,18}", plain) else _number(plain)
    if kind == "written":
        document = scan(f"value: {text}\n", design.document.file)
        if set(document.data) != {"value"}:
            raise BadDesign((design.document.problem(path, f"“{text}”", "one value, as on one line of the file"),))
        return document.data["value"]
    return text


def type_at(path: Key) -> Any:
    """The type of what a key of the design may hold, bare of what is said of it; None where there is no such key."""
    return _bare(_type_at(path))


def _type_at(path: Key) -> Any:
    at: Any = Design
    for part in path:
        at, _ = _below(at, part, "")
    return at


def _slot(path: Key) -> str:
    """The kind of the catalogue that a key takes its part from; "" where it takes none."""
    return next((one.kind for one in metadata(_type_at(path)) if isinstance(one, Slot)), "")


def _named(typed: Any) -> Any:
    """What names a part: the row that it is like, where only some of its figures are typed."""
    return typed["like"] if isinstance(typed, dict) and isinstance(typed.get("like"), str) else typed


def _estimated(design: Design, path: Key) -> str:
    """The part that is taken where the file names none."""
    key = dotted(path)
    for one in specify(design).estimates:
        if one.key == key:
            return one.value
    raise BadDesign((design.document.problem(path, "no part yet", "a part of the catalogue, before its figures"),))


def _number(text: str) -> float | str:
    try:
        return float(text)
    except ValueError:
        return text


def _field_at(path: Key) -> tuple[type[BaseModel], str] | None:
    """Model and name of the field that reads a key; None inside a mapping of names."""
    at: Any = Design
    for part in path[:-1]:
        at, _ = _below(at, part, "")
    model = _model(at)
    name = None if model is None else _names(model).get(str(path[-1]))
    return None if model is None or name is None else (model, name)


class _Walk:
    def __init__(self, design: Design, estimates: Mapping[str, tuple[str, str]]) -> None:
        self.design = design
        self.data = design.document.data
        self.estimates = estimates

    def group(self, at: Any, path: Key, about: str) -> Group:
        typed = _typed(self.design, path)
        fields: list[Field] = []
        groups: list[Group] = []
        model = _model(at)
        named = model is None
        if model is not None:
            for name, field in model.model_fields.items():
                key = (*path, field.alias or name)
                if _is_mapping(field):
                    groups.append(self.group(field.annotation, key, field.description or ""))
                else:
                    fields.append(self.field(model, name, key))
        else:
            inner = typing.get_args(_bare(at))[-1 if typing.get_origin(_bare(at)) is dict else 0]
            entries = (typed or {}) if not isinstance(typed, list) else range(len(typed))
            for entry in entries:
                if _model(inner) is not None:
                    groups.append(self.group(inner, (*path, entry), ""))
                else:
                    fields.append(self.entry(inner, (*path, entry)))
        listed = named and typing.get_origin(_bare(at)) is tuple
        title = _title(path) if path else self.design.name
        return Group(dotted(path), title, about, tuple(fields), tuple(groups), typed is not None, named, listed)

    def field(self, model: type[BaseModel], name: str, path: Key) -> Field:
        told = described(model, name)
        field = model.model_fields[name]
        used, rule = self.estimates.get(dotted(path), ("", ""))
        if not used and field.default is not None and not field.is_required() and not callable(field.default_factory):
            plain = field.default
            if plain not in ("", ()):
                used, rule = _plain(plain), "what is taken when the file says nothing"
        return self._made(told, path, field.description or "", used, rule, field.is_required())

    def entry(self, inner: Any, path: Key) -> Field:
        used, rule = self.estimates.get(dotted(path), ("", ""))
        return self._made(of_type(inner), path, "", used, rule, False)

    def _made(self, told: Told, path: Key, about: str, used: str, rule: str, required: bool) -> Field:
        typed = _typed(self.design, path)
        figures: tuple[Field, ...] = ()
        choices = told.choices
        if told.slot:
            choices = names(told.slot)
            figures = self.figures(told.slot, path, typed, used)
            typed = _named(typed)
        elif path[-1] in CABIN_NAMES and told.kind == "text":
            choices = tuple(self.data.get("cabins", ()))
        kind = told.kind
        if isinstance(typed, dict | list):
            kind, choices = "written", ()
        elif choices and (told.slot or path[-1] in CABIN_NAMES):
            kind = "choice"
        return Field(
            dotted(path),
            str(path[-1]).replace("_", " "),
            about,
            kind,
            told.allowed,
            choices,
            None if typed is None else _plain(typed),
            used,
            rule,
            required,
            figures,
        )

    def figures(self, kind: str, path: Key, part: Any, used: str) -> tuple[Field, ...]:
        """What the catalogue says of a part, and what the file says in its place."""
        name = _named(used if part is None else part)
        row = raw(kind, name) if isinstance(name, str) and name in names(kind) else {}
        if not row and not isinstance(part, dict):
            return ()
        record = record_of(kind)
        own = [name for name in record.model_fields if name not in Part.model_fields]
        all_parts = [name for name in Part.model_fields if name not in ABOUT_A_PART]
        return tuple(self._figure(record, name, path, part, row) for name in (*own, *all_parts))

    def _figure(self, record: type[Part], name: str, path: Key, part: Any, row: Mapping[str, Any]) -> Field:
        field, told = record.model_fields[name], described(record, name)
        key = field.alias or name
        typed = part.get(key) if isinstance(part, dict) else None
        used, rule = row.get(key), str(row.get("source", ""))
        in_catalogue = used is not None
        if used is None and not field.is_required() and field.default not in (None, "", ()):
            used, rule = field.default, "what is taken where nothing is said"
        choices, of_kind = names(told.slot) if told.slot else told.choices, told.kind
        if isinstance(typed, dict | list) or isinstance(used, dict | list | tuple):
            choices, of_kind = (), "written"
        return Field(
            dotted((*path, key)),
            key.replace("_", " "),
            field.description or "",
            of_kind,
            told.allowed,
            choices,
            None if typed is None else _plain(typed),
            "" if used is None else _plain(used),
            rule,
            False,
            of_part=True,
            in_catalogue=in_catalogue,
        )


def _title(path: Key) -> str:
    """What a mapping is called; entries of a list are counted from one."""
    return f"{_title(path[:-1])} {path[-1] + 1}" if isinstance(path[-1], int) else path[-1].replace("_", " ")


def _typed(design: Design, path: Key) -> Any:
    """What the file says at a key; what stands for a mapping in short is the value of its one key."""
    at: Any = design.document.data
    model: Any = Design
    for depth, part in enumerate(path):
        if isinstance(at, str | int | float):
            return at if depth == len(path) - 1 and part == _short(model) else None
        at = child(at, part)
        model, _ = _below(model, part, "")
        if at is None:
            return None
    return at


def _is_mapping(field: FieldInfo) -> bool:
    """Whether a field is a mapping or list of mappings of its own, rather than one value."""
    if any(isinstance(one, Slot) for one in metadata(annotation(field))):
        return False
    bare = _bare(field.annotation)
    if _model(bare) is not None:
        return not _in_one_word(bare)
    origin = typing.get_origin(bare)
    if origin is dict:
        return typing.get_args(bare)[1] is not Any  # names of keys with full stops in them are told in one field
    return origin is tuple and _model(typing.get_args(bare)[0]) is not None


def _in_one_word(model: Any) -> bool:
    """Whether a mapping is, to its writer, one value: what a hull is built of, or a point in the boat."""
    return model.__name__ in ("SkinParts",)


def _model(kind: Any) -> type[BaseModel] | None:
    bare = _bare(kind)
    return bare if isinstance(bare, type) and issubclass(bare, BaseModel) else None


def _bare(kind: Any) -> Any:
    while typing.get_origin(kind) in (typing.Annotated, typing.Union, types.UnionType):
        kind = next(one for one in typing.get_args(kind) if one is not type(None))
    return kind


def _names(model: type[BaseModel]) -> dict[str, str]:
    return {field.alias or name: name for name, field in model.model_fields.items()}


def _short(kind: Any) -> str:
    model = _model(kind)
    return str(getattr(model, "in_short", "")) if model is not None else ""


def _below(at: Any, part: str | int, about: str) -> tuple[Any, str]:
    """Type and description of what stands at a key of a mapping; None where there is nothing."""
    model = _model(at)
    if model is not None:
        name = _names(model).get(str(part))
        if name is None:
            short = _short(at)
            return _below(model.model_fields[short].annotation, part, about) if short else (None, "")
        field = model.model_fields[name]
        return annotation(field), field.description or ""
    bare = _bare(at)
    origin = typing.get_origin(bare)
    if origin is dict:
        return typing.get_args(bare)[1], about
    if origin is tuple:
        return typing.get_args(bare)[0], about
    return None, ""


def _plain(value: Any) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if isinstance(value, str | int | float):
        return str(value)
    return str(written(list(value) if isinstance(value, tuple) else value))
