"""A short intake: the few things that somebody knows before there is a design file."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Annotated, Any, Literal

from pydantic import AfterValidator, Field, ValidationError, model_validator

from anchorwatt.catalogue import names
from anchorwatt.design.climates import CLIMATES
from anchorwatt.design.document import Document
from anchorwatt.design.intake_layout import Room, estimated_beam, most_cabins, rooms
from anchorwatt.design.problems import as_problem
from anchorwatt.design.section import Section
from anchorwatt.errors import BadDesign, Problem
from anchorwatt.units import Refused
from anchorwatt.units.fields import Length, Mass, Price, Temperature, Time, within
from anchorwatt.units.refusal import quoted

INTAKE = "the intake"
CHOOSE = "choose"
NO_SHORE = "none"
ALL_CABINS = "all sleeping cabins"
LIVED_IN = ("sleeping", "saloon", "galley", "pilothouse")
MOST_CABINS, MOST_HEADS = 12, 6


def _one_of(allowed: tuple[str, ...]) -> AfterValidator:
    def check(value: str) -> str:
        if value not in allowed:
            raise Refused(quoted(value), "one of: " + ", ".join(allowed))
        return value

    return AfterValidator(check)


def _printable(value: str) -> str:
    if not value.strip() or not value.isprintable():
        raise Refused(quoted(value), "a name of 1 to 120 signs that can be seen")
    return value.strip()


HULL_FORMS, ENGINES = names("hull_form"), names("engine")
SHORES = (*names("shore_service"), NO_SHORE)

BoatName = Annotated[str, Field(max_length=120), AfterValidator(_printable)]
Form = Annotated[str, _one_of(HULL_FORMS)]
ClimateName = Annotated[str, _one_of(tuple(CLIMATES))]
EngineName = Annotated[str, _one_of(ENGINES)]
ShoreName = Annotated[str, _one_of(SHORES)]


class Intake(Section):
    """What is asked. Quantities keep the units in which they were typed."""

    name: BoatName = Field(description="Name of the boat.")
    form: Form = Field(description="Kind of boat.")
    length: Annotated[Length, within("7 m", "30 m")] = Field(description="Length of the hull.")
    beam: Annotated[Length, within("1.5 m", "16 m")] | None = Field(
        default=None, description="Beam over all hulls; left out, it is estimated from the length."
    )
    sleeping: Annotated[int, Field(ge=0, le=MOST_CABINS)] = Field(default=2, description="Sleeping cabins.")
    saloon: bool = Field(default=True, description="A saloon.")
    galley: bool = Field(default=True, description="A galley of its own; else it is part of the saloon.")
    pilothouse: bool = Field(default=False, description="A pilothouse.")
    heads: Annotated[int, Field(ge=0, le=MOST_HEADS)] = Field(default=1, description="Heads.")
    climate: ClimateName = Field(default=next(iter(CLIMATES)), description="Where the boat must live.")
    engine: EngineName = Field(description="Engine.")
    engines: Annotated[int, Field(ge=1, le=2)] = Field(default=1, description="How many engines.")
    cooled: Annotated[str, Field(max_length=400)] = Field(
        default=ALL_CABINS,
        validate_default=True,
        description="Cabins that are cooled by night: their numbers from the bow, such as 1, 3; saloon, too.",
    )
    temperature: Annotated[Temperature, within("18 °C", "30 °C")] = Field(
        default="25 °C", validate_default=True, description="To what they are cooled by night."
    )
    hold: Annotated[Time, within("1 h", "23 h")] = Field(
        default="9 h", validate_default=True, description="How long the bank must carry the night."
    )
    recharge: Annotated[Time, within("0.5 h", "12 h")] = Field(
        default="4 h", validate_default=True, description="Engine hours allowed to put the charge back."
    )
    voltage: Literal["choose", "12 V", "24 V", "48 V"] = Field(
        default="choose", description="Voltage of the bank; “choose” leaves it to the intake."
    )
    shore: ShoreName = Field(default=SHORES[0], description="Shore service; it decides the voltage aboard.")
    price_limit: Price | None = Field(default=None, description="Most that it may cost.")
    mass_limit: Annotated[Mass, within("50 kg", "20 t")] | None = Field(
        default=None, description="Most that the installation may weigh."
    )

    @property
    def beam_used(self) -> float:
        """m, typed or estimated."""
        return estimated_beam(self.form, float(self.length)) if self.beam is None else float(self.beam)

    @property
    def rooms(self) -> tuple[Room, ...]:
        """Cabins and compartments, with their floors estimated."""
        return rooms(
            self.form,
            float(self.length),
            self.beam_used,
            self.sleeping,
            tuple(use for use in ("pilothouse", "galley", "saloon") if getattr(self, use)),
            self.heads,
            self.engines,
        )

    @property
    def cooled_by_night(self) -> tuple[str, ...]:
        """Names of the cabins that are cooled by night."""
        return _cooled(self.cooled, self.rooms)

    @model_validator(mode="after")
    def _hangs_together(self) -> Intake:
        length, beam = float(self.length), self.beam_used
        if not 0.14 * length <= beam <= 0.8 * length:
            found = f"a beam of {beam:.3g} m on a length of {length:.3g} m"
            raise _At("beam", found, "from 14 % to 80 % of the length")
        if not (self.sleeping or self.saloon or self.galley or self.pilothouse):
            raise _At("sleeping", "no cabin at all", "a sleeping cabin, saloon, galley or pilothouse")
        most = most_cabins(self.form, length, beam, self.saloon, self.galley, self.heads)
        if self.sleeping > most:
            found = f"{self.sleeping} sleeping cabins in such a boat"
            raise _At("sleeping", found, f"at most {most}: each needs the floor of a berth")
        try:
            _cooled(self.cooled, self.rooms)
        except Refused as refused:
            raise _At("cooled", refused.found, refused.allowed) from None
        return self


class _At(Refused):
    """Something wrong that only several answers together show, told at one of them."""

    def __init__(self, key: str, found: str, allowed: str) -> None:
        super().__init__(found, allowed)
        self.key = key


def read_intake(said: Mapping[str, Any]) -> Intake:
    """An intake from what was typed, by the name of the question; blanks count as left out.

    Raises
    ------
    BadDesign
        Problems by question; nothing was made.
    """
    given = {key: value for key, value in said.items() if not (isinstance(value, str) and not value.strip())}
    try:
        return Intake.model_validate({key: v.strip() if isinstance(v, str) else v for key, v in given.items()})
    except ValidationError as error:
        problems = []
        for one in error.errors(include_url=False):
            raised = one.get("ctx", {}).get("error")
            if isinstance(raised, _At):
                problems.append(Problem(INTAKE, None, raised.key, raised.found, raised.allowed))
            else:
                told = as_problem(one, Document("", INTAKE), Intake)
                problems.append(Problem(INTAKE, None, told.key, told.found, told.allowed))
        raise BadDesign(tuple(problems)) from None


def _cooled(wish: str, there: tuple[Room, ...]) -> tuple[str, ...]:
    """Names of the cabins of a wish.

    Raises
    ------
    Refused
        There is no such cabin.
    """
    can = [room.name for room in there if room.use in LIVED_IN]
    sleeping = [room.name for room in there if room.use == "sleeping"]
    found: list[str] = []
    for part in (one.strip().lower() for one in wish.split(",")):
        name = f"cabin {part}" if part.isdecimal() else part
        if part == ALL_CABINS:
            found += sleeping or can[-1:]  # who sleeps aboard without a cabin sleeps in the saloon
        elif name in can:
            found.append(name)
        else:
            raise Refused(quoted(part), f"{ALL_CABINS}; or among: " + ", ".join(can))
    return tuple(dict.fromkeys(found))
