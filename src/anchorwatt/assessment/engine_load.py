"""What each engine gives over its speed, and what the propeller and the alternators' belts take of it."""

from __future__ import annotations

from collections.abc import Sequence, Set
from dataclasses import dataclass

import numpy as np

from anchorwatt.assessment.records import Input, Why
from anchorwatt.assessment.weight import Basis
from anchorwatt.design.specification import Engine, Specification
from anchorwatt.physics.alternator import shaft_power
from anchorwatt.physics.engine import full_load_power, spare_power
from anchorwatt.physics.propeller import propeller_demand
from anchorwatt.sizing.regulator import ENGINE, RegulatorSheet

POINTS = 49
APART = 0.005
"""Share of a speed within which another counts as the same."""


@dataclass(frozen=True)
class LoadPoint:
    """One engine at one speed."""

    speed: float  # rad/s
    gives: float  # W at full load
    allowed: float  # W of that, less the margin that is never asked for
    propeller: float  # W
    left: float  # W that propeller and margin leave for the belts
    belts: float  # W of shaft that the alternators take at their settings, the propeller turning


@dataclass(frozen=True)
class EngineLoad:
    """One engine over its speeds, from idle to rated."""

    name: str
    key: str  # in the design file
    points: tuple[LoadPoint, ...]
    margin: float  # share of full load that is never asked for
    charging_speed: float  # rad/s, when it charges at anchor
    alternators: int
    held: tuple[tuple[float, float], ...]  # rad/s from and to which the engine holds an alternator back
    why: Why

    @property
    def heaviest(self) -> LoadPoint:
        """Where the belts take most."""
        return max(self.points, key=lambda point: point.belts)


def engine_loads(
    specification: Specification, sheets: Sequence[RegulatorSheet], basis: Basis
) -> tuple[EngineLoad, ...]:
    """Every engine; `sheets` are those of all regulators aboard, `basis` says where a figure comes from."""
    return tuple(
        _engine_load(engine, [sheet for sheet in sheets if sheet.engine == number], basis)
        for number, engine in enumerate(specification.engines)
    )


def _engine_load(engine: Engine, sheets: Sequence[RegulatorSheet], basis: Basis) -> EngineLoad:
    rows = sorted({row.engine_speed for sheet in sheets for row in sheet.rows})
    even = np.linspace(engine.idle_speed, engine.rated_speed, POINTS)
    # Speeds of the sheet stand for themselves: nothing close beside them, so that what is told of one is a round speed.
    between = [float(speed) for speed in even if all(abs(speed - row) > APART * row for row in rows)]
    speeds = sorted([*rows, *between])
    belts = np.zeros(len(speeds))
    for sheet in sheets:
        machine = engine.alternators[sheet.machine]
        taken = [
            0.0
            if row.set_current <= 0.0
            else shaft_power(
                row.set_current,
                sheet.voltage,
                row.rotor_speed,
                row.hot_winding,
                machine.rated_current,
                machine.efficiency,
            )
            for row in sheet.rows
        ]
        # Read linearly between the rows of the set-up sheet, and never more than the engine leaves.
        belts += np.interp(speeds, [row.engine_speed for row in sheet.rows], taken)
    key = f"charging.engines.{engine.name}"
    return EngineLoad(
        name=engine.name,
        key=key,
        points=tuple(_point(engine, speed, float(load)) for speed, load in zip(speeds, belts, strict=True)),
        margin=engine.margin,
        charging_speed=engine.charging_speed,
        alternators=len(engine.alternators),
        held=_runs(rows, {row.engine_speed for sheet in sheets for row in sheet.rows if row.governs == ENGINE}),
        why=Why(
            "full-load curve less its margin, less the propeller's power by the propeller law; the belts carry the "
            "shaft power of the current that each regulator is set to, windings hot",
            (
                Input("rated power", engine.rated_power, "shaft power", basis(f"{key}.engine.rated_power")),
                Input("rated speed", engine.rated_speed, "rotational speed", basis(f"{key}.engine.rated_speed")),
                Input(
                    "propeller's power at rated speed",
                    engine.propeller_power,
                    "shaft power",
                    basis(f"{key}.propeller_power"),
                ),
                Input("margin never asked for", engine.margin, "share", basis(f"{key}.margin")),
            ),
            "the maker's full-load curve; propeller law, test cycle E3 of the NOx Technical Code 3.2",
            "pulley ratio, current settings, a propeller of less pitch",
        ),
    )


def _runs(speeds: Sequence[float], held: Set[float]) -> tuple[tuple[float, float], ...]:
    """First and last of the speeds that follow one another and are among those held."""
    runs: list[tuple[float, float]] = []
    before = False
    for speed in speeds:
        now = speed in held
        if now:
            runs[-1:] = [(runs[-1][0], speed)] if before else [*runs[-1:], (speed, speed)]
        before = now
    return tuple(runs)


def _point(engine: Engine, speed: float, belts: float) -> LoadPoint:
    gives = full_load_power(speed, engine.rated_speed, engine.rated_power, engine.curve_speeds, engine.curve_powers)
    propeller = propeller_demand(speed, engine.rated_speed, engine.propeller_power, engine.propeller_exponent)
    left = spare_power(gives, propeller, engine.margin)
    return LoadPoint(
        speed=speed,
        gives=gives,
        allowed=(1.0 - engine.margin) * gives,
        propeller=propeller,
        left=left,
        belts=min(belts, left),
    )
