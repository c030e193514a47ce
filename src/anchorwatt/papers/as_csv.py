"""An assessment as CSV: figures in the units that the headings end in, texts as they are."""

from __future__ import annotations

import csv
import io
import math
from collections.abc import Callable, Iterable, Sequence
from pathlib import Path
from typing import Any

from anchorwatt.assessment import Assessment, Table
from anchorwatt.drawings.sheets.labels import label_rows
from anchorwatt.papers import (
    as_json,
    bank,
    faults,
    fit,
    generator,
    plant,
    power_json,
    price,
    recharge,
    regulator,
    voltage,
    week,
    weight,
    wiring,
)
from anchorwatt.papers.keys import unit_of
from anchorwatt.papers.unfolded import unfolded
from anchorwatt.units import convert, show_clock

Content = Sequence[as_json.Plain] | Table

FORMULA = ("=", "+", "-", "@", "\t", "\r")
"""What a cell begins with that spreadsheets take for a formula."""


def tables(assessment: Assessment, name: str) -> dict[str, Content]:
    """The tables of a name, by what their files are called: rows, or a run through time.

    Raises
    ------
    KeyError
        no such name; `TABLES` has those that there are.
    """
    return TABLES[name](assessment)


def csv_files(assessment: Assessment, folder: Path, names: Sequence[str]) -> dict[Path, str]:
    """The texts of the files that these tables make, by path.

    Parameters
    ----------
    names : of `TABLES`
    """
    found = [item for name in names for item in tables(assessment, name).items()]
    return {folder / f"{name}.csv": csv_text(content) for name, content in found}


def csv_text(content: Content) -> str:
    """A table as CSV."""
    return _series(content) if isinstance(content, Table) else _records(content)


def sheet(content: Content) -> Sequence[as_json.Plain]:
    """A table as rows for a workbook, figures as figures."""
    if not isinstance(content, Table):
        return content
    columns = {one.key: convert(one.values, unit_of(one.key), one.dimension) for one in content.columns}
    return [
        {"clock": show_clock(time), "time_s": float(time)}
        | {key: None if math.isnan(values[row]) else float(f"{values[row]:.6g}") for key, values in columns.items()}
        for row, time in enumerate(content.clock)
    ]


def _assess(assessment: Assessment) -> dict[str, Content]:
    plain = as_json.assessment(assessment, Path())
    headline = [{"key": key, "value": value} for key, value in plain["headline"].items()]
    return {"headline": headline, **{part: plain[part] for part in ("comparison", "estimates", "checks")}}


def _plant(assessment: Assessment) -> dict[str, Content]:
    plain = plant.plain(assessment)
    return {"plant": plain["cooling"], "heating": plain["heating"]}


def _ducts(assessment: Assessment) -> dict[str, Content]:
    handlers = plant.plain(assessment)["pipes"]["handlers"]
    return {"ducts": [{"handler": one["name"], **out} for one in handlers for out in one["outlets"]]}


def _faults(assessment: Assessment) -> dict[str, Content]:
    runs: dict[str, Content] = {f"fault_{found.fault.key}": found.minutes for found in assessment.faults}
    return {**runs, "single_losses": faults.losses(assessment)}


def _recharge(assessment: Assessment) -> dict[str, Content]:
    return {} if assessment.recharge is None else {"recharge": assessment.recharge.table}


def _recharge_speeds(assessment: Assessment) -> dict[str, Content]:
    return {} if assessment.recharging is None else {"recharge_speeds": recharge.rows(assessment)}


TABLES: dict[str, Callable[[Assessment], dict[str, Content]]] = {
    "assess": _assess,
    "check": lambda found: {"checks": [as_json.finding(one) for one in found.checks]},
    "cabins": lambda found: {"cabins": [_flat(cabin) for cabin in as_json.loads(found)["cabins"]]},
    "gains": lambda found: {"gains": _gains(found)},
    "plant": _plant,
    "comparison": lambda found: {"comparison": plant.plain(found)["comparison"]},
    "ducts": _ducts,
    "regulator": lambda found: {
        "regulator": regulator.rows(found),
        "regulator_settings": regulator.settings(found),
    },
    "week": lambda found: {"week": found.week.hours, "week_days": week.days(found)},
    "weight": lambda found: {"weight": weight.rows(found)},
    "fit": lambda found: {"fit": fit.rows(found), "fit_spaces": fit.spaces(found)},
    "wiring": lambda found: {"wiring": wiring.rows(found), "wiring_bars": wiring.bars(found)},
    "labels": lambda found: {"labels": label_rows(found, "si")},
    "faults": _faults,
    "price": lambda found: {"parts": price.bill(found, cost=False), "packages": price.packages(found)},
    "price_cost": lambda found: {"bill": price.bill(found, cost=True), "labour": price.labour(found)},
    "recharge_speeds": _recharge_speeds,
    "recharge": _recharge,
    "night": lambda found: {"night": found.night},
    "day": lambda found: {"day": found.day},
    "bank": lambda found: {**unfolded("bank", bank.plain(found)), "bank_night": found.bank.night},
    "power": lambda found: {**unfolded("power", power_json.plain(found))},
    "generator": lambda found: {**unfolded("generator", generator.plain(found))},
    "voltage": lambda found: {**unfolded("voltage", voltage.plain(found))},
}
"""Tables by the name under which a command or a page asks for them."""


def _gains(assessment: Assessment) -> list[as_json.Plain]:
    """A row a cabin and hour."""
    names = [cabin.name for cabin in assessment.specification.cabins]
    return [
        {
            "cabin": names[cabin.cabin],
            "from": show_clock(3600.0 * hour),
            **{f"gain_W.{cause}": float(f"{values[hour]:.6g}") for cause, values in cabin.causes},
            "total_W": float(f"{cabin.total[hour]:.6g}"),
        }
        for cabin in assessment.gains.cabins
        for hour in range(24)
    ]


def _flat(cabin: as_json.Plain) -> as_json.Plain:
    gains = {f"gain_W.{gain['cause']}": gain["gain_W"] for gain in cabin["gains_at_peak"]}
    return {**{key: value for key, value in cabin.items() if key != "gains_at_peak"}, **gains}


def _series(table: Table) -> str:
    columns = [convert(one.values, unit_of(one.key), one.dimension) for one in table.columns]
    rows = (
        [show_clock(time), f"{time:.0f}", *(f"{column[row]:.6g}" for column in columns)]
        for row, time in enumerate(table.clock)
    )
    return _text(["clock", "time_s", *(one.key for one in table.columns)], rows)


def _records(rows: Sequence[as_json.Plain]) -> str:
    heads = list(dict.fromkeys(key for row in rows for key in row))
    return _text(heads, ([_plain(row.get(head)) for head in heads] for row in rows))


def _plain(value: Any) -> Any:
    """A value as it goes into a cell; a text that a spreadsheet would read as a formula is marked as text."""
    return f"'{value}" if isinstance(value, str) and value.startswith(FORMULA) else value


def _text(heads: Sequence[str], rows: Iterable[Sequence[Any]]) -> str:
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(heads)
    writer.writerows(rows)
    return text.getvalue()
