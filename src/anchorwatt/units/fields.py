"""Types for pydantic models: a field of a design that holds a quantity, a time of day, a price or a gauge.

A field takes the writer's text and gives a `Quantity`; it refuses a bare number and says what is allowed;
it is dumped as the text that was read; its JSON Schema lets an editor check the text while one types.
"""

from __future__ import annotations

from typing import Annotated, Any

from anchorwatt.units import clock, money, wire_gauge
from anchorwatt.units.pattern import pattern_of
from anchorwatt.units.quantity import Quantity
from anchorwatt.units.reading import allowed, parse
from anchorwatt.units.refusal import Refused, quoted
from anchorwatt.units.schema import gathered, text_schema
from anchorwatt.units.table import DIMENSIONS, dimension_named
from anchorwatt.units.written import Written, above, within


def _quantity(dimension: str) -> Written:
    kind = dimension_named(dimension)

    def read(value: Any) -> Quantity:
        if isinstance(value, Quantity):
            other = DIMENSIONS.get(value.dimension)
            if other is not None and (other.kin or other.name) == (kind.kin or kind.name):
                return Quantity(value, value.text, dimension, value.unit)
            phrase = other.phrase if other else f"a {value.dimension}"
            raise Refused(f"{quoted(value.text)}, which is {phrase}", allowed(dimension))
        return parse(value, dimension)

    schema = text_schema(dimension, pattern_of(dimension), kind.example, allowed(dimension))
    return Written(read, schema, dimension)


def _read_clock(value: Any) -> Quantity:
    if isinstance(value, Quantity) and value.dimension == "clock time":
        return value
    return clock.parse_clock(value)


def _read_money(value: Any) -> money.Money:
    return value if isinstance(value, money.Money) else money.Money.parse(value)


def _read_gauge(value: Any) -> wire_gauge.WireGauge:
    return value if isinstance(value, wire_gauge.WireGauge) else wire_gauge.WireGauge.parse(value)


def _whole(pattern: str) -> str:
    return f"^\\s*(?:{pattern})\\s*$"


Length = Annotated[Quantity, _quantity("length")]
Area = Annotated[Quantity, _quantity("area")]
CrossSection = Annotated[Quantity, _quantity("cross-section")]
Volume = Annotated[Quantity, _quantity("volume")]
LiquidVolume = Annotated[Quantity, _quantity("liquid volume")]
Mass = Annotated[Quantity, _quantity("mass")]
Time = Annotated[Quantity, _quantity("time")]
Temperature = Annotated[Quantity, _quantity("temperature")]
TemperatureDifference = Annotated[Quantity, _quantity("temperature difference")]
Power = Annotated[Quantity, _quantity("power")]
HeatFlow = Annotated[Quantity, _quantity("heat flow")]
ShaftPower = Annotated[Quantity, _quantity("shaft power")]
ApparentPower = Annotated[Quantity, _quantity("apparent power")]
Energy = Annotated[Quantity, _quantity("energy")]
Charge = Annotated[Quantity, _quantity("charge")]
Current = Annotated[Quantity, _quantity("current")]
Voltage = Annotated[Quantity, _quantity("voltage")]
Resistance = Annotated[Quantity, _quantity("resistance")]
LinearResistance = Annotated[Quantity, _quantity("linear resistance")]
Speed = Annotated[Quantity, _quantity("speed")]
Velocity = Annotated[Quantity, _quantity("velocity")]
VolumeFlow = Annotated[Quantity, _quantity("volume flow")]
LiquidFlow = Annotated[Quantity, _quantity("liquid flow")]
FuelFlow = Annotated[Quantity, _quantity("fuel flow")]
MassFlow = Annotated[Quantity, _quantity("mass flow")]
Pressure = Annotated[Quantity, _quantity("pressure")]
RotationalSpeed = Annotated[Quantity, _quantity("rotational speed")]
Angle = Annotated[Quantity, _quantity("angle")]
Latitude = Annotated[Quantity, _quantity("latitude")]
Longitude = Annotated[Quantity, _quantity("longitude")]
Share = Annotated[Quantity, _quantity("share")]
PerKelvin = Annotated[Quantity, _quantity("per kelvin")]
Frequency = Annotated[Quantity, _quantity("frequency")]
AirChanges = Annotated[Quantity, _quantity("air changes")]
Conductivity = Annotated[Quantity, _quantity("conductivity")]
Density = Annotated[Quantity, _quantity("density")]
SpecificHeat = Annotated[Quantity, _quantity("specific heat")]
ThermalTransmittance = Annotated[Quantity, _quantity("thermal transmittance")]
HeatCapacity = Annotated[Quantity, _quantity("heat capacity")]
ThermalConductance = Annotated[Quantity, _quantity("thermal conductance")]
ArealMass = Annotated[Quantity, _quantity("areal mass")]
LinearMass = Annotated[Quantity, _quantity("linear mass")]
ShareByVolume = Annotated[Quantity, _quantity("share by volume")]
Force = Annotated[Quantity, _quantity("force")]
HeatFlux = Annotated[Quantity, _quantity("heat flux")]
ClockTime = Annotated[
    Quantity, Written(_read_clock, text_schema("clock time", _whole(clock.CLOCK), "21:30", clock.ALLOWED))
]
Price = Annotated[
    money.Money, Written(_read_money, text_schema("money", _whole(money.MONEY), "65 000 USD", money.ALLOWED))
]
Gauge = Annotated[
    wire_gauge.WireGauge,
    Written(_read_gauge, text_schema("wire gauge", _whole(wire_gauge.GAUGE), "4/0 AWG", wire_gauge.ALLOWED)),
]

__all__ = [
    "AirChanges",
    "Angle",
    "ApparentPower",
    "Area",
    "ArealMass",
    "Charge",
    "ClockTime",
    "Conductivity",
    "CrossSection",
    "Current",
    "Density",
    "Energy",
    "Force",
    "Frequency",
    "FuelFlow",
    "Gauge",
    "HeatCapacity",
    "HeatFlow",
    "HeatFlux",
    "Latitude",
    "Length",
    "LinearMass",
    "LinearResistance",
    "LiquidFlow",
    "LiquidVolume",
    "Longitude",
    "Mass",
    "MassFlow",
    "PerKelvin",
    "Power",
    "Pressure",
    "Price",
    "Resistance",
    "RotationalSpeed",
    "ShaftPower",
    "Share",
    "ShareByVolume",
    "SpecificHeat",
    "Speed",
    "Temperature",
    "TemperatureDifference",
    "ThermalConductance",
    "ThermalTransmittance",
    "Time",
    "Velocity",
    "Voltage",
    "Volume",
    "VolumeFlow",
    "above",
    "gathered",
    "within",
]
