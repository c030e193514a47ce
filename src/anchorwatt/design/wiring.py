"""How the boat is wired: the rules it follows, the sizes it is bought in, and what is laid down for single circuits."""

from __future__ import annotations

from typing import Annotated, Any, Literal

from pydantic import Field
from pydantic.functional_validators import BeforeValidator
from pydantic.json_schema import WithJsonSchema

from anchorwatt.catalogue.conductor import Conductor
from anchorwatt.catalogue.part import names, nearest, rows
from anchorwatt.design.section import Name, Section
from anchorwatt.errors import BadQuantity
from anchorwatt.units.fields import Current, Length, Price, Share, Temperature, within
from anchorwatt.units.reading import parse
from anchorwatt.units.refusal import Refused, name_of_kind, quoted
from anchorwatt.units.wire_gauge import WireGauge

SIZE = "a standard size by name, such as 70 mm² or 2/0 AWG"
FUSE = 'its rating, such as "80 A"; left out, it is worked out'
NONE = ("none", "no", "without", "0", "")


def _read_size(value: Any) -> str:
    if not isinstance(value, str):
        raise Refused(f"{name_of_kind(value)} as a size", SIZE)
    known = names("conductor")
    tidy = value.strip().replace("mm2", "mm²")
    if tidy in known:
        return tidy
    area, gauge = _area(tidy)
    if area is None:
        raise Refused(f"no size {quoted(value)}{nearest(tidy, known)}", SIZE)
    among = [
        row for row in rows("conductor").values() if isinstance(row, Conductor) and (row.gauge is not None) == gauge
    ]
    exact = next((row for row in among if gauge and abs(row.area / area - 1.0) < 1e-6), None)
    if exact is not None:
        return exact.name
    below, above = [row for row in among if row.area < area], [row for row in among if row.area > area]
    about = [*sorted(below, key=lambda row: row.area)[-1:], *sorted(above, key=lambda row: row.area)[:1]]
    near = " and ".join(row.name for row in about)
    raise Refused(f"{quoted(value)}, which is no standard size; nearest are {near}", SIZE)


def _area(text: str) -> tuple[float | None, bool]:
    """m² that a text says, and whether as a gauge; None when it says no size."""
    try:
        return WireGauge.parse(text).area, True
    except BadQuantity:
        pass
    try:
        return float(parse(text, "cross-section")), False
    except BadQuantity:
        return None, False


def _read_fuse(value: Any) -> Any:
    if value is False or (isinstance(value, str) and value.strip().lower() in NONE):
        raise Refused("a loop without a fuse", FUSE)
    return value


Size = Annotated[
    str, BeforeValidator(_read_size), WithJsonSchema({"type": "string", "examples": ["70 mm²", "2/0 AWG"]})
]


class CircuitEntry(Section):
    """What the design says of one circuit over what is worked out."""

    length: Annotated[Length, within("0 m", "200 m")] | None = Field(
        default=None, description="One way; left out, from where its ends are."
    )
    conductor: Size | None = Field(default=None, description="Standard size of each conductor.")
    parallel: Annotated[int, Field(ge=1, le=8, strict=True)] | None = Field(
        default=None, description="Conductors side by side for each pole; at least that many where no size is typed."
    )
    fuse: Annotated[Annotated[Current, within("0.5 A", "2000 A")] | None, BeforeValidator(_read_fuse)] = Field(
        default=None, description="Rating of its fuse or breaker; left out, it is worked out."
    )
    family: Annotated[str, Field(min_length=1, max_length=80)] | None = Field(
        default=None, description="Family of its fuse or breaker, of the catalogue."
    )
    bundled: Annotated[int, Field(ge=1, le=200, strict=True)] | None = Field(
        default=None, description="Conductors that carry current in its bundle, its own counted."
    )
    highest_drop: Annotated[Share, within("0.5 %", "20 %")] | None = Field(
        default=None, description="Share of the voltage that it may lose."
    )


class WiringSection(Section):
    """How the boat is wired."""

    regime: Literal["33 CFR 183", "ISO 13297", "ABYC E-11"] | None = Field(
        default=None, description="Rules that sizes and fuses follow; left out, by where the file's units are used."
    )
    sizes: Literal["gauge", "metric"] | None = Field(
        default=None, description="Sizes that cable is bought in; left out, metric with ISO 13297, else gauges."
    )
    insulation: Annotated[Temperature, within("60 °C", "200 °C")] | None = Field(
        default=None, description="Highest temperature of the cable's insulation."
    )
    routing_factor: Annotated[float, Field(ge=1.0, le=4.0)] | None = Field(
        default=None, description="Length of a run over the distance between its ends along the boat's axes."
    )
    slack: Annotated[Length, within("0 m", "10 m")] | None = Field(
        default=None, description="Added to each run, both ends together."
    )
    bundled: Annotated[int, Field(ge=1, le=200, strict=True)] | None = Field(
        default=None, description="Conductors that carry current in an ordinary bundle."
    )
    years: Annotated[float, Field(gt=0.0, le=60.0)] | None = Field(
        default=None, description="Years over which a cable's cost is looked at."
    )
    energy_price: Price | None = Field(default=None, description="Of 1 kWh from the bank, in the offer's currency.")
    mass_price: Price | None = Field(
        default=None, description="Of 1 kg carried for those years, in the offer's currency."
    )
    circuits: dict[Name, CircuitEntry] = Field(
        default_factory=dict,
        max_length=1000,
        description="What is laid down for single circuits, by their tags; “anchorwatt wiring” shows those.",
    )
