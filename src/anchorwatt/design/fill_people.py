"""People by what they do, every gap filled."""

from __future__ import annotations

from anchorwatt.catalogue.person import Person as PersonRecord
from anchorwatt.design.specification import Person

MET = 58.2  # W/m2, ISO 7730
BODY = 1.8  # m2, of the mean adult that the heat of people is given for


def fill_person(person: PersonRecord) -> Person:
    """An activity, with the carbon dioxide that goes with its metabolic rate, at 20 °C and 101 325 Pa."""
    from anchorwatt.physics.carbon_dioxide import RESPIRATORY_QUOTIENT, generation_rate

    return Person(
        activity=person.name,
        sensible=float(person.sensible),
        latent=float(person.latent),
        shift=float(person.shift),
        metabolic_rate=person.metabolic_rate,
        clothing=person.clothing,
        carbon_dioxide=generation_rate(MET * BODY, person.metabolic_rate, RESPIRATORY_QUOTIENT, 20.0, 101_325.0),
    )
