"""Air, refrigerant and water of an assessment as plain data for JSON."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from anchorwatt.papers.keys import in_unit
from anchorwatt.units import show_clock

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment

Plain = dict[str, Any]


def night_air(assessment: Assessment) -> Plain:
    """Comfort, air quality, condensate and dew of the night."""
    names = [cabin.name for cabin in assessment.specification.cabins]
    water = assessment.condensate
    return {
        "comfort": [
            {
                "cabin": names[hour.cabin],
                "from": show_clock(hour.start),
                "activity": hour.activity,
                "people": hour.people,
                "air_temperature_C": in_unit(hour.air, "°C", "temperature"),
                "operative_temperature_C": in_unit(hour.operative, "°C", "temperature"),
                "relative_humidity_pct": in_unit(hour.humidity, "%", "share"),
                "predicted_mean_vote": round(hour.vote, 3),
                "dissatisfied_pct": in_unit(hour.dissatisfied, "%", "share"),
                "within_standard": hour.within_standard,
            }
            for hour in assessment.comfort
        ],
        "carbon_dioxide": [
            {
                "cabin": names[air.cabin],
                "people": air.people,
                "highest_ppm": in_unit(air.highest, "ppm", "share by volume"),
                "at_end_ppm": in_unit(air.at_end, "ppm", "share by volume"),
                "outdoor_air_L_per_s": in_unit(air.outdoor_flow, "L/s", "volume flow"),
                "needed_for_1000_ppm_L_per_s": in_unit(air.needed[0], "L/s", "volume flow"),
            }
            for air in assessment.cabin_air
        ],
        "condensate": {
            "night_L": in_unit(water.night_volume, "L", "liquid volume"),
            "day_L": in_unit(water.day_volume, "L", "liquid volume"),
            "wettest_hour_L_per_h": in_unit(water.peak_flow, "L/h", "fuel flow"),
            "by_cabin": [
                {"cabin": names[one.cabin], "night_kg": in_unit(one.night, "kg", "mass")} for one in water.cabins
            ],
        },
        "surfaces": [
            {
                "cabin": names[surface.cabin],
                "least_margin_over_dew_K": round(surface.margin, 3),
                "at": show_clock(surface.at),
                "mean_surface_humidity_pct": in_unit(surface.humidity, "%", "share"),
            }
            for surface in assessment.surface_dew
        ],
    }


def pipes(assessment: Assessment) -> Plain:
    """Ducts, refrigerant and seawater."""
    names = [cabin.name for cabin in assessment.specification.cabins]
    limits, sea = assessment.refrigerant, assessment.seawater
    return {
        "handlers": [
            {
                "name": handler.name,
                "rated_airflow_L_per_s": in_unit(handler.rated_airflow, "L/s", "volume flow"),
                "airflow_L_per_s": in_unit(handler.airflow, "L/s", "volume flow"),
                "pressure_needed_Pa": round(handler.pressure_needed, 2),
                "fan_pressure_Pa": round(handler.spare_pressure, 2),
                "return_velocity_m_per_s": round(handler.return_velocity, 3),
                "outlets": [
                    {
                        "name": run.outlet,
                        "cabin": names[run.cabin],
                        "wanted_L_per_s": in_unit(run.wanted, "L/s", "volume flow"),
                        "airflow_L_per_s": in_unit(run.airflow, "L/s", "volume flow"),
                        "duct_velocity_m_per_s": round(run.velocity, 3),
                        "grille_velocity_m_per_s": round(run.grille_velocity, 3),
                        "pressure_loss_Pa": round(run.pressure, 2),
                    }
                    for run in handler.runs
                ],
            }
            for handler in assessment.handlers_air
        ],
        "refrigerant": None
        if limits is None
        else {
            "name": limits.refrigerant,
            "safety_class": limits.safety_class,
            "charge_kg": in_unit(limits.charge, "kg", "mass"),
            "smallest_cabin": names[limits.cabin],
            "concentration_kg_per_m3": in_unit(limits.concentration, "kg/m³", "density"),
            "practical_limit_kg_per_m3": in_unit(limits.practical_limit, "kg/m³", "density"),
            "limit_with_ventilation_kg_per_m3": in_unit(limits.limit_with_ventilation, "kg/m³", "density"),
            "limit_with_two_measures_kg_per_m3": in_unit(limits.limit_with_two_measures, "kg/m³", "density"),
            "remedies": list(limits.remedies),
        },
        "seawater": {
            "flow_L_per_min": in_unit(sea.flow, "L/min", "liquid flow"),
            "rise_K": round(sea.rise, 3),
            "hose_velocity_m_per_s": round(sea.hose_velocity, 3),
            "through_hull_velocity_m_per_s": round(sea.through_hull_velocity, 3),
            "pressure_needed_kPa": in_unit(sea.pressure_needed, "kPa", "pressure"),
            "pump_pressure_kPa": in_unit(sea.pump_pressure, "kPa", "pressure"),
        },
    }
