"""An assessment as plain data for JSON."""

from __future__ import annotations

import json
import math
from pathlib import Path
from typing import TYPE_CHECKING, Any

from anchorwatt.papers.air_and_water_json import night_air
from anchorwatt.papers.keys import figure, in_unit
from anchorwatt.papers.select import hourly, worst_first
from anchorwatt.units import DIMENSIONS, show_clock

if TYPE_CHECKING:
    from anchorwatt.assessment import (
        Answer,
        Assessment,
        CabinAnswer,
        Comparison,
        Estimate,
        Finding,
        Recharge,
        Table,
    )

Plain = dict[str, Any]


def printed(content: Any) -> str:
    """The text of plain data."""
    return json.dumps(content, indent=2, ensure_ascii=False, allow_nan=False)


def assessment(assessment: Assessment, file: Path) -> Plain:
    """Everything that `assess` shows."""
    return {
        "design": {"name": assessment.specification.name, "file": str(file)},
        "headline": {answer.key: _headline(answer) for answer in assessment.headline},
        "cabins": [_cabin(cabin) for cabin in assessment.cabins],
        "night": _night(assessment, hourly(assessment.night)),
        "recharge": _recharge(assessment.recharge),
        "comparison": [comparison(row) for row in assessment.comparisons],
        "estimates": [_estimate(one) for one in assessment.estimates],
        "checks": [finding(one) for one in worst_first(assessment.checks)],
        "cautions": list(assessment.cautions),
    }


def loads(assessment: Assessment) -> Plain:
    """What `loads` shows."""
    return {
        "cabins": [{**_cabin(cabin), "gains_at_peak": _gains(cabin)} for cabin in assessment.cabins],
        "weather": assessment.weather_source,
        "cautions": list(assessment.cautions),
    }


def night(assessment: Assessment) -> Plain:
    """What `night` shows, minute by minute."""
    rows = range(len(assessment.night.clock))
    return {**_night(assessment, rows), **night_air(assessment), "cautions": list(assessment.cautions)}


def recharge(assessment: Assessment) -> Plain:
    """What `recharge` shows, minute by minute."""
    found = assessment.recharge
    if found is None:
        return {"recharge": None, "cautions": list(assessment.cautions)}
    rows = _rows(found.table, range(len(found.table.clock)))
    return {"recharge": {**(_recharge(found) or {}), "rows": rows}, "cautions": list(assessment.cautions)}


def why(answer: Answer) -> Plain:
    """One answer and how it was found."""
    return {
        "question": answer.question,
        answer.key: _headline(answer),
        "note": answer.note,
        "formula": answer.why.formula,
        "inputs": [
            {
                "name": one.name,
                "value": in_unit(one.value, si_unit(one.dimension), one.dimension),
                "unit": si_unit(one.dimension),
                "basis": one.basis,
            }
            for one in answer.why.inputs
        ],
        "source": answer.why.source,
        "changes_it": answer.why.changes_it,
    }


def _headline(answer: Answer) -> float | None:
    return in_unit(answer.value, answer.unit, answer.dimension)


def _cabin(cabin: CabinAnswer) -> Plain:
    return {
        "name": cabin.name,
        "use": cabin.use,
        "peak_sensible_W": figure("peak_sensible_W", cabin.peak_sensible, "heat flow"),
        "peak_latent_W": figure("peak_latent_W", cabin.peak_latent, "heat flow"),
        "peak_at": None if math.isnan(cabin.peak_at) else show_clock(cabin.peak_at),
        "handler_capacity_W": figure("handler_capacity_W", cabin.handler_capacity, "heat flow"),
        "night_set_point_C": figure("night_set_point_C", cabin.set_point, "temperature"),
        "night_max_air_temperature_C": figure("_C", cabin.night_highest_temperature, "temperature"),
        "night_max_relative_humidity_pct": figure("_pct", cabin.night_highest_humidity, "share"),
    }


def _gains(cabin: CabinAnswer) -> list[Plain]:
    return [{"cause": cause, "gain_W": figure("gain_W", gain, "heat flow")} for cause, gain in cabin.gains]


def _night(assessment: Assessment, rows: range | list[int]) -> Plain:
    table = assessment.night
    return {
        "weather": assessment.weather_source,
        "starts_at": show_clock(assessment.specification.brief.night_start),
        "ends_at": show_clock(table.clock[-1]),
        "rows": _rows(table, rows),
    }


def _rows(table: Table, rows: range | list[int]) -> list[Plain]:
    return [
        {
            "clock": show_clock(table.clock[row]),
            **{one.key: figure(one.key, float(one.values[row]), one.dimension) for one in table.columns},
        }
        for row in rows
    ]


def table_rows(table: Table) -> list[Plain]:
    """Every row of a table."""
    return _rows(table, range(len(table.clock)))


def _recharge(found: Recharge | None) -> Plain | None:
    if found is None:
        return None
    return {
        "doing": found.doing,
        "engine_hours": figure("engine_hours", found.engine_time, "time"),
        "fuel_added_L": figure("fuel_added_L", found.fuel_added, "liquid volume"),
        "fuel_burnt_L": figure("fuel_burnt_L", found.fuel_burnt, "liquid volume"),
        "mean_alternator_current_A": figure("_A", found.mean_alternator_current, "current"),
        "highest_winding_temperature_C": figure("_C", found.highest_winding, "temperature"),
        "held_by": [{"cause": cause, "time_pct": figure("time_pct", share, "share")} for cause, share in found.held_by],
    }


def comparison(row: Comparison) -> Plain:
    return {
        "plant": row.plant,
        "night_energy_kWh": figure("night_energy_kWh", row.night_energy, "energy"),
        "charge_at_dawn_pct": figure("charge_at_dawn_pct", row.charge_at_dawn, "share"),
        "peak_plant_power_W": figure("peak_plant_power_W", row.peak_plant_power, "power"),
        "mass_kg": figure("mass_kg", row.mass, "mass"),
        "warmest_over_set_point_K": in_unit(row.warmest, "K", "temperature difference"),
        "highest_relative_humidity_pct": figure("_pct", row.dampest, "share"),
        "starting": row.starting_current_note,
    }


def _estimate(one: Estimate) -> Plain:
    return {"key": one.key, "value": one.value, "rule": one.rule, "source": one.source}


def finding(one: Finding) -> Plain:
    """One check, as it stands in a list."""
    unit = si_unit(one.dimension)
    return {
        "id": one.id,
        "question": one.question,
        "subject": one.subject,
        "verdict": one.verdict.value,
        "value": in_unit(one.value, unit, one.dimension),
        "limit": in_unit(one.limit, unit, one.dimension),
        "unit": unit,
        "margin": in_unit(one.margin, si_unit(one.margin_dimension), one.margin_dimension),
        "margin_unit": si_unit(one.margin_dimension),
        "source": one.source,
        "remedy": one.remedy,
        "note": one.note,
    }


def si_unit(dimension: str) -> str:
    """The unit that figures of a dimension stand in."""
    if dimension in ("share", "share by volume"):
        return "%" if dimension == "share" else "ppm"
    return DIMENSIONS[dimension].si if dimension in DIMENSIONS else ""
