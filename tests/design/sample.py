"""A small sound design, as text, that tests break in one way each."""

from __future__ import annotations

SAMPLE = """\
anchorwatt: 1
name: Sample
boat:
  length: 12 m
  beam: 4 m
  hull: foam-cored, white
place:
  weather: pvlib:12839.tm2
  day: 17 July
  sea: Miami Beach
cabins:
  saloon:
    use: saloon
    deck: main
    floor_area: 11 m2
    sides: [port, starboard]
    windows:
      port windows:
        surface: port side
        glazing: clear acrylic 10 mm
        area: 0.5 m2
        count: 2
  cabin:
    use: sleeping
    deck: below
    floor_area: 7 m2 # with the berth
    sides: [port, starboard]
    windows: {}
neighbours:
  - between: [saloon, cabin]
    door: closed
cooling:
  plant:
    unit: variable-speed 12 kBtu/h
    handlers:
      main: {unit: air handler 6 kBtu/h, cabin: cabin}
  alternative:
    units:
      old unit: {unit: self-contained 7 kBtu/h, cabin: cabin}
ac:
  inverter:
    unit: inverter 24 V 3 kW
  charger:
    unit: charger 24 V 1.7 kW
  loads:
    television: {appliance: television and chargers, cabin: saloon}
dc:
  nominal_voltage: 24 V
  bank:
    module:
      like: lithium 12.8 V 200 Ah
      charge_current: 100 A
    series: 2
    parallel: 2
  loads:
    refrigerator: {appliance: refrigerator, cabin: saloon}
charging:
  engines:
    engine:
      engine: diesel 42 kW
      boat_speed: 8 kn
      charging_speed: 1400 rpm
      alternators:
        alternator:
          alternator: high-output 24 V 110 A
          belt: six-rib PK
          pulley_ratio: 2.2
plan:
  - start: 21:00
    end: 07:00
    doing: at anchor
    cool:
      cabin: 76 °F
    people:
      - {cabin: cabin, count: 2, doing: asleep}
  - start: 07:00
    end: 16:00
    doing: at anchor
    running:
      television: 10 %
  - start: 16:00
    end: 21:00
    doing: motoring
    speed: 6 kn
brief:
  hold: 10 h
  night_start: 21:00
  reserve: 20 %
  recharge: 4 h
"""


def line_of(text: str, part: str) -> int:
    """Number of the one line that holds a part."""
    lines = [number for number, line in enumerate(text.splitlines(), start=1) if part in line]
    assert len(lines) == 1, f"{part!r} stands on lines {lines}"
    return lines[0]


def changed(old: str, new: str) -> str:
    """The sample with one part replaced."""
    assert SAMPLE.count(old) == 1, f"{old!r} stands {SAMPLE.count(old)} times in the sample"
    return SAMPLE.replace(old, new)
