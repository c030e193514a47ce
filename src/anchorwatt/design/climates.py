"""Climates that an intake may name: each is a place section of a design file that needs no file of the user's."""

from __future__ import annotations

from dataclasses import dataclass

MEMORY = "figures of the day from memory: no record stands behind them"


@dataclass(frozen=True)
class Climate:
    """A place section, and what a customer would call it."""

    name: str
    section: str  # YAML under `place:`
    source: str


def _day(name: str, day: str, dry: str, span: str, dew: str, where: tuple[str, str], zone: str, sea: str) -> Climate:
    latitude, longitude = where
    return Climate(
        name,
        f"design_day: {{highest_dry_bulb: {dry}, daily_range: {span}, dew_point: {dew}}}\n"
        f"day: {day}\nlatitude: {latitude}\nlongitude: {longitude}\ntime_zone: {zone}\nsea: {sea}",
        MEMORY,
    )


CLIMATES: dict[str, Climate] = {
    climate.name: climate
    for climate in (
        _day("Mediterranean", "20 July", "33 °C", "8 K", "21 °C", ("37.5° N", "23.5° E"), "UTC+2", "Saronic Gulf"),
        _day("Balearics", "1 August", "32 °C", "8 K", "22 °C", ("39.5° N", "2.5° E"), "UTC+1", "Balearics"),
        _day(
            "South-west Turkey",
            "1 August",
            "37 °C",
            "10 K",
            "21 °C",
            ("36.7° N", "28.5° E"),
            "UTC+3",
            "South-west Turkey",
        ),
        _day("Caribbean", "20 August", "32 °C", "5 K", "25 °C", ("17.5° N", "62.5° W"), "UTC-4", "Leeward Islands"),
        _day("Bahamas", "10 August", "33 °C", "6 K", "25 °C", ("24.5° N", "76.5° W"), "UTC-5", "Bahamas"),
        Climate(
            "Miami, hottest night of a typical year",
            "weather: pvlib:12839.tm2\nday: warmest night\nsea: Miami Beach",
            "a typical year of a coastal station at 25.8° N, 80.3° W, in the weather file that pvlib carries",
        ),
        _day("Chesapeake Bay", "20 July", "34 °C", "9 K", "23 °C", ("38.5° N", "76.3° W"), "UTC-5", "Chesapeake Bay"),
        _day(
            "Northern Red Sea",
            "1 August",
            "39 °C",
            "10 K",
            "20 °C",
            ("27.2° N", "33.9° E"),
            "UTC+2",
            "Northern Red Sea",
        ),
        _day("Arabian Gulf", "1 August", "42 °C", "9 K", "28 °C", ("25.2° N", "55.2° E"), "UTC+4", "Arabian Gulf"),
        _day("Phuket", "20 April", "35 °C", "8 K", "25 °C", ("7.8° N", "98.3° E"), "UTC+7", "Phuket"),
    )
}
"""By name, the usual one first."""
