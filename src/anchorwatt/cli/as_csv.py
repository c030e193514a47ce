"""An assessment as CSV: figures in the units that the headings end in, texts as they are."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING, Any

from anchorwatt.cli import as_json, fit, plant, price, recharge, regulator, week, weight, wiring
from anchorwatt.cli.keys import unit_of
from anchorwatt.units import convert, show_clock

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment, Table


def csv_files(assessment: Assessment, folder: Path, tables: Sequence[str]) -> dict[Path, str]:
    """The texts of the files that these tables make, by path.

    Parameters
    ----------
    tables : of "assess", "check", "cabins", "gains", "plant", "comparison", "ducts", "night", "day", "recharge",
        "regulator", "week", "weight", "fit", "faults", "price", "price_cost", "wiring"
    """
    texts: dict[str, str] = {}
    for name in tables:
        if name == "assess":
            plain = as_json.assessment(assessment, Path())
            texts["headline"] = _text(["key", "value"], plain["headline"].items())
            for part in ("comparison", "estimates", "checks"):
                texts[part] = _records(plain[part])
        elif name == "check":
            texts["checks"] = _records([as_json.finding(one) for one in assessment.checks])
        elif name == "cabins":
            texts["cabins"] = _records([_flat(cabin) for cabin in as_json.loads(assessment)["cabins"]])
        elif name == "gains":
            texts["gains"] = _gains(assessment)
        elif name == "plant":
            texts["plant"] = _records(plant.plain(assessment)["cooling"])
            texts["heating"] = _records(plant.plain(assessment)["heating"])
        elif name == "comparison":
            texts["comparison"] = _records(plant.plain(assessment)["comparison"])
        elif name == "ducts":
            handlers = plant.plain(assessment)["pipes"]["handlers"]
            texts["ducts"] = _records([{"handler": one["name"], **out} for one in handlers for out in one["outlets"]])
        elif name == "regulator":
            texts["regulator"] = _records(regulator.rows(assessment))
            texts["regulator_settings"] = _records(regulator.settings(assessment))
        elif name == "week":
            texts["week"] = _series(assessment.week.hours)
            texts["week_days"] = _records(week.days(assessment))
        elif name == "weight":
            texts["weight"] = _records(weight.rows(assessment))
        elif name == "fit":
            texts["fit"] = _records(fit.rows(assessment))
            texts["fit_spaces"] = _records(fit.spaces(assessment))
        elif name == "wiring":
            texts["wiring"] = _records(wiring.rows(assessment))
            texts["wiring_bars"] = _records(wiring.bars(assessment))
        elif name == "faults":
            texts |= {f"fault_{found.fault.key}": _series(found.minutes) for found in assessment.faults}
        elif name == "price":
            texts["parts"] = _records(price.bill(assessment, cost=False))
            texts["packages"] = _records(price.packages(assessment))
        elif name == "price_cost":
            texts["bill"] = _records(price.bill(assessment, cost=True))
            texts["labour"] = _records(price.labour(assessment))
        elif name == "recharge_speeds":
            if assessment.recharging is not None:
                texts["recharge_speeds"] = _records(recharge.rows(assessment))
        elif name == "recharge":
            if assessment.recharge is not None:
                texts["recharge"] = _series(assessment.recharge.table)
        else:
            texts[name] = _series(assessment.night if name == "night" else assessment.day)
    return {folder / f"{name}.csv": text for name, text in texts.items()}


def _gains(assessment: Assessment) -> str:
    """A row a cabin and hour."""
    names = [cabin.name for cabin in assessment.specification.cabins]
    rows = [
        {
            "cabin": names[cabin.cabin],
            "from": show_clock(3600.0 * hour),
            **{f"gain_W.{cause}": float(f"{values[hour]:.6g}") for cause, values in cabin.causes},
            "total_W": float(f"{cabin.total[hour]:.6g}"),
        }
        for cabin in assessment.gains.cabins
        for hour in range(24)
    ]
    return _records(rows)


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
    return _text(heads, ([row.get(head) for head in heads] for row in rows))


def _text(heads: Sequence[str], rows: Iterable[Sequence[Any]]) -> str:
    text = io.StringIO()
    writer = csv.writer(text)
    writer.writerow(heads)
    writer.writerows(rows)
    return text.getvalue()
