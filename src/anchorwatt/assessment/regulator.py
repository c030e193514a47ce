"""The regulators' set-up sheet with its reasons, and an hour of charging held and hot."""

from __future__ import annotations

from dataclasses import dataclass

from anchorwatt.checks import Evidence
from anchorwatt.sizing.charging_hour import ChargingHour, charging_hours
from anchorwatt.sizing.load_dump import LoadDump
from anchorwatt.sizing.regulator import RegulatorSheet, SideLoad
from anchorwatt.sizing.regulator_settings import Basis, bank_settings, machine_settings
from anchorwatt.sizing.setting import Setting

CAUTIONS = (
    (
        "Turning belts, pulleys and fans take fingers, hair and sleeves: work on them with the engine stopped, its key "
        "in your pocket and the alternators' cables off the bank."
    ),
    (
        "Never take the bank off a running alternator: its load dump destroys diodes, regulator and electronics. Let "
        "the management system cut the field first, and fit a clamp at each output post."
    ),
    (
        "Only the engine's maker can say what the front of the crankshaft bears, and at which place round it: ask "
        "before a bracket is made."
    ),
    (
        "Set a current limit in every regulator before the first start, and measure current, belt and case temperature "
        "through the first hour. A belt that squeals or smokes is slipping: stop."
    ),
)


@dataclass(frozen=True)
class MachineSetUp:
    """One alternator's sheet and its single settings."""

    name: str
    engine: str
    sheet: RegulatorSheet
    settings: tuple[Setting, ...]


@dataclass(frozen=True)
class RegulatorSetUp:
    """Everything that is set where the engines charge."""

    machines: tuple[MachineSetUp, ...]  # none where no engine carries an alternator
    bank: tuple[Setting, ...]
    side_loads: tuple[SideLoad, ...]
    engines: tuple[str, ...]  # names, as `side_loads` counts them
    hours: tuple[ChargingHour, ...]  # as the night is put back, and at anchor
    load_dump: LoadDump | None
    cautions: tuple[str, ...] = CAUTIONS


def regulator_set_up(evidence: Evidence, basis: Basis) -> RegulatorSetUp:
    """The set-up of every regulator aboard, `basis` saying where a figure of the design comes from."""
    specification = evidence.specification
    machines = []
    for sheet in evidence.regulators:
        engine = specification.engines[sheet.engine]
        machines.append(
            MachineSetUp(
                engine.alternators[sheet.machine].name,
                engine.name,
                sheet,
                machine_settings(specification, sheet, basis),
            )
        )
    return RegulatorSetUp(
        machines=tuple(machines),
        bank=bank_settings(specification, basis),
        side_loads=evidence.side_loads,
        engines=tuple(engine.name for engine in specification.engines),
        hours=charging_hours(specification, evidence.simulation),
        load_dump=evidence.load_dump,
    )
