"""What the power command shows as plain data for JSON."""

from __future__ import annotations

import math
from typing import TYPE_CHECKING, Any

from anchorwatt.papers import as_json
from anchorwatt.papers.keys import figure, in_unit
from anchorwatt.units import show_clock

if TYPE_CHECKING:
    from anchorwatt.assessment import Assessment
    from anchorwatt.sizing.converters import (
        ChargerFigures,
        Efficiency,
        EfficiencyPoint,
        EngineBatteryFigures,
        InverterFigures,
    )
    from anchorwatt.sizing.shore import ShoreFigures
    from anchorwatt.sizing.sun import SunDay
    from anchorwatt.sizing.transformer import TransformerFigures

Plain = dict[str, Any]


def plain(assessment: Assessment) -> Plain:
    """What `power` shows, as plain data."""
    story, found = assessment.ac_side, assessment.ac_side.figures
    return {
        "answers": {answer.key: figure(answer.key, answer.value, answer.dimension) for answer in story.answers},
        "why": [as_json.why(answer) for answer in story.answers],
        "inverter": _inverter(found.inverter),
        "transformer": None if found.transformer is None else _transformer(found.transformer),
        "shore": None if found.shore is None else _shore(found.shore),
        "charger": None if found.charger is None else _charger(found.charger),
        "sun": None if found.sun is None else _sun(found.sun),
        "engine_battery": None if found.engine_battery is None else _engine_battery(found.engine_battery),
        "cautions": [*story.cautions, *assessment.cautions],
    }


def _point(point: EfficiencyPoint) -> Plain:
    return {
        "load_pct": in_unit(point.share, "%", "share"),
        "output_W": in_unit(point.output, "W", "power"),
        "loss_W": in_unit(point.loss, "W", "power"),
        "efficiency_pct": in_unit(point.efficiency, "%", "share"),
    }


def _efficiency(efficiency: Efficiency) -> Plain:
    return {
        "curve": [_point(point) for point in efficiency.points],
        "best": _point(efficiency.best),
        "european_efficiency_pct": in_unit(efficiency.european, "%", "share"),
    }


def _endless(value: float, unit: str, dimension: str) -> float | None:
    """None for what has no end."""
    return None if math.isinf(value) else in_unit(value, unit, dimension)


def _inverter(found: InverterFigures) -> Plain:
    return {
        "name": found.name,
        "rated_power_W": in_unit(found.rated_power, "W", "power"),
        **_efficiency(found.efficiency),
        "hottest_air_C": in_unit(found.hottest_air, "°C", "temperature"),
        "rating_in_heat_W": in_unit(found.rating, "W", "power"),
        "highest_steps": [
            {
                "step": step.name,
                "at": show_clock(step.at),
                "power_W": in_unit(step.power, "W", "power"),
                "of_rating_there_pct": _endless(step.share, "%", "share"),
                "as_long_as_need_be": math.isinf(step.lasts),
                "given_for_s": _endless(step.lasts, "s", "time"),
            }
            for step in (*found.steps, found.at_once)
        ],
        "no_load_power_W": in_unit(found.no_load_power, "W", "power"),
        "night_no_load_kWh": in_unit(found.no_load_energy, "kWh", "energy"),
        "night_loss_kWh": in_unit(found.night_loss, "kWh", "energy"),
        "idle_hours": in_unit(found.idle_time, "h", "time"),
        "sleep_saving_kWh": in_unit(found.sleep_saving, "kWh", "energy"),
        "for_a_minute_W": in_unit(found.minute, "W", "power"),
        "surge_W": in_unit(found.surge, "W", "power"),
        "start_W": in_unit(found.start, "W", "power"),
        "self_contained_start_W": in_unit(found.alternative_start, "W", "power"),
    }


def _transformer(found: TransformerFigures) -> Plain:
    return {
        "name": found.name,
        "rated_power_VA": in_unit(found.rated_power, "VA", "apparent power"),
        "isolating": found.isolating,
        "transformed_share_pct": in_unit(found.transformed_share, "%", "share"),
        "curve": [_point(point) for point in found.points],
        "best": _point(found.best),
        "day_no_load_kWh": in_unit(found.no_load_energy, "kWh", "energy"),
        "night_loss_kWh": in_unit(found.night_loss, "kWh", "energy"),
        "primary_V": in_unit(found.primary_voltage, "V", "voltage"),
        "secondary_without_load_V": in_unit(found.secondary_voltage, "V", "voltage"),
        "secondary_at_highest_step_V": in_unit(found.secondary_loaded, "V", "voltage"),
        "highest_load_pct": in_unit(found.highest_share, "%", "share"),
        "rated_peak_A": in_unit(found.rated_peak, "A", "current"),
        "inrush_peak_A": in_unit(found.inrush, "A", "current"),
        "inrush_over_inverter_peak": in_unit(found.inrush_on_inverter, "", "ratio"),
        "inverter_bears_inrush": found.inrush_survived,
        "inrush_over_shore_breaker_peak": in_unit(found.inrush_on_breaker, "", "ratio"),
    }


def _shore(found: ShoreFigures) -> Plain:
    highest = found.highest
    return {
        "name": found.name,
        "leg_voltage_V": in_unit(found.voltage, "V", "voltage"),
        "legs": found.legs,
        "frequency_Hz": in_unit(found.frequency, "Hz", "frequency"),
        "rated_current_A": in_unit(found.rated_current, "A", "current"),
        "current_limit_A": in_unit(found.current_limit, "A", "current"),
        "continuous_current_A": in_unit(found.continuous_current, "A", "current"),
        "apparent_power_VA": in_unit(found.apparent_power, "VA", "apparent power"),
        "continuous_power_W": in_unit(found.continuous_power, "W", "power"),
        "highest_step": {
            "at": show_clock(highest.at),
            "power_W": in_unit(highest.power, "W", "power"),
            "legs_A": [in_unit(current, "A", "current") for current in highest.legs],
            "neutral_A": in_unit(highest.neutral, "A", "current"),
            "legs_in_sag_A": [in_unit(current, "A", "current") for current in highest.sagged],
            "placed": [
                {"name": name, "power_W": in_unit(power, "W", "power"), "leg": "both" if leg < 0 else leg + 1}
                for name, power, leg in highest.placed
            ],
        },
        "periods": [
            {
                "from": show_clock(period.start),
                "to": show_clock(period.end),
                "loads_W": in_unit(period.loads, "W", "power"),
                "highest_W": in_unit(period.highest, "W", "power"),
                "left_for_charger_W": in_unit(period.left, "W", "power"),
            }
            for period in found.periods
        ],
        "refill_hours": in_unit(found.refill_time, "h", "time"),
        "refill_held_by": found.held_by,
        "sag_pct": in_unit(found.sag, "%", "share"),
        "sagged_voltage_V": in_unit(found.sagged_voltage, "V", "voltage"),
        "charger_gives_way_below_V": in_unit(found.gives_way_below, "V", "voltage"),
        "charger_gives_way": found.gives_way,
        "refill_in_sag_hours": in_unit(found.refill_time_in_sag, "h", "time"),
    }


def _charger(found: ChargerFigures) -> Plain:
    return {
        "name": found.name,
        "rated_power_W": in_unit(found.rated_power, "W", "power"),
        **_efficiency(found.efficiency),
        "hottest_air_C": in_unit(found.hottest_air, "°C", "temperature"),
        "rating_in_heat_W": in_unit(found.rating, "W", "power"),
        "current_at_absorb_voltage_A": in_unit(found.current, "A", "current"),
    }


def _sun(found: SunDay) -> Plain:
    return {
        "peak_power_W": in_unit(found.peak_power, "W", "power"),
        "full_sun_hours": in_unit(found.full_sun, "h", "time"),
        "at_25_degrees_unshaded_kWh": in_unit(found.without_losses, "kWh", "energy"),
        "lost_to_heat_kWh": in_unit(found.lost_to_heat, "kWh", "energy"),
        "delivered_share_pct": in_unit(found.delivered_share, "%", "share"),
        "offered_kWh": in_unit(found.offered, "kWh", "energy"),
        "taken_kWh": in_unit(found.taken, "kWh", "energy"),
        "hottest_cells_C": in_unit(found.hottest_cells, "°C", "temperature"),
    }


def _engine_battery(found: EngineBatteryFigures) -> Plain:
    return {
        "converter": found.name,
        "rated_power_W": in_unit(found.rated_power, "W", "power"),
        "rating_in_heat_W": in_unit(found.rating, "W", "power"),
        "mean_output_W": in_unit(found.mean_output, "W", "power"),
        "taken_W": in_unit(found.taken, "W", "power"),
        "day_kWh": in_unit(found.day_energy, "kWh", "energy"),
        "start_kWh": in_unit(found.start_energy, "kWh", "energy"),
        "standing_load_W": in_unit(found.standing_load, "W", "power"),
        "start_put_back_after_s": _endless(found.refilled_after, "s", "time"),
    }
