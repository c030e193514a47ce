"""Single figures to set in the regulators and the bank's management, each with the calculation behind it."""

from __future__ import annotations

from collections.abc import Callable

from anchorwatt.design.document import dotted
from anchorwatt.design.specification import Specification
from anchorwatt.sizing.regulator import HALF_CHARGED, RegulatorSheet
from anchorwatt.sizing.setting import Input, Setting

START_DELAY, START_RAMP = 30.0, 30.0
"""s after the engine starts until the field comes on, and over which it rises. From memory: 30 s, and 15 to 60 s."""
FIELD_CUT = 5.0
"""s that the field is off before the management system opens. From memory: 1 to 5 s."""

PRACTICE = "common practice, no source"
BASICS = "the limits of the time kernel, settled at that speed; see docs/theory"

Basis = Callable[[str], str]
"""From a key of the design file to "typed", "catalogue" or "estimated"."""


def machine_settings(specification: Specification, sheet: RegulatorSheet, basis: Basis) -> tuple[Setting, ...]:
    """What to set in one alternator's regulator."""
    engine = specification.engines[sheet.engine]
    machine, bank = engine.alternators[sheet.machine], specification.bank
    here = ("charging", "engines", engine.name, "alternators", machine.name)

    def given(name: str, value: float, dimension: str, *key: str) -> Input:
        return Input(name, value, dimension, basis(dotted((*here, *key))))

    def computed(name: str, value: float, dimension: str) -> Input:
        return Input(name, value, dimension, "computed")

    typed_limit = given("current limit of the file", machine.current_limit, "current", "current_limit")
    hold = given("held temperature", machine.hold_temperature, "temperature", "hold_temperature")
    band = given("band", machine.fold_band, "temperature difference", "fold_band")
    air_key = dotted(("charging", "engines", engine.name, "air_temperature"))
    air_basis = "computed" if engine.air_temperature != engine.air_temperature else basis(air_key)
    air = Input("air round the alternator", sheet.air, "temperature", air_basis)
    idle = sheet.rows[0]
    everything = sum(m.rated_current for one in specification.engines for m in one.alternators)
    hottest = max(sheet.rows, key=lambda row: row.hot_winding)
    return (
        Setting(
            "current limit",
            min(machine.current_limit, sheet.highest),
            "current",
            "the lower of the file's limit and the most that any speed of the sheet allows",
            (
                typed_limit,
                given("rated current", machine.rated_current, "current", "alternator", "rated_current"),
                computed("most that any speed allows", sheet.highest, "current"),
            ),
            BASICS,
        ),
        Setting(
            "charge current for the bank",
            sheet.bank_current,
            "current",
            "what the bank takes half charged, shared out by rated current; more is not asked of this machine, loads "
            "that run meanwhile come on top",
            (
                Input(
                    "bank's charging current", bank.charge_current, "current", basis("dc.bank.module.charge_current")
                ),
                Input("bank's absorb voltage", bank.absorb_voltage, "voltage", basis("dc.bank.module.absorb_voltage")),
                computed("bank's resistance", bank.resistance, "resistance"),
                computed("state of charge", HALF_CHARGED, "share"),
                computed("this machine's share", machine.rated_current / everything, "share"),
            ),
            "constant current, then constant voltage; see docs/theory/battery.md",
        ),
        Setting(
            "belt limit at idle",
            idle.belt,
            "current",
            "the current whose shaft power, with the windings hot, is belt power × rotor speed over the belt's "
            "reference speed: a belt's limit is torque, so amperes come down with speed",
            (
                given("belt carries", machine.belt_power, "shaft power", "belt", "power"),
                given("at a rotor speed of", machine.belt_speed, "rotational speed", "belt", "reference_speed"),
                computed("rotor speed at idle", idle.rotor_speed, "rotational speed"),
                computed("belt pull allowed, tight less slack side", sheet.pull.allowed, "force"),
                computed("voltage", sheet.voltage, "voltage"),
                given("efficiency", machine.efficiency, "share", "alternator", "efficiency"),
            ),
            BASICS,
        ),
        Setting(
            "fold-back begins",
            machine.hold_temperature,
            "temperature",
            "temperature of the frame as the file sets it; the probe sits on the case",
            (hold, air),
            "case probes are set to 90 to 110 °C; from memory",
        ),
        Setting(
            "fold-back ends",
            machine.hold_temperature + machine.fold_band,
            "temperature",
            "held temperature and band: there the field is off",
            (hold, band),
            PRACTICE,
        ),
        Setting(
            "winding at the held temperature",
            sheet.hottest_winding,
            "temperature",
            "hottest at which the winding settles at any speed with nothing but the fold-back to look after it; it is "
            "not set, but must stay below the limit of the insulation",
            (
                hold,
                band,
                air,
                computed("at an engine speed of", hottest.engine_speed, "rotational speed"),
                given(
                    "winding to frame",
                    machine.winding_conductance,
                    "thermal conductance",
                    "alternator",
                    "winding_conductance",
                ),
                given(
                    "frame to air", machine.frame_conductance, "thermal conductance", "alternator", "frame_conductance"
                ),
                given(
                    "limit of the insulation", machine.highest_winding, "temperature", "alternator", "highest_winding"
                ),
            ),
            "two nodes, winding and frame; see docs/theory/alternator.md",
            entered=False,
        ),
    )


def bank_settings(specification: Specification, basis: Basis) -> tuple[Setting, ...]:
    """What all regulators share, and what the management system must do first."""
    bank = specification.bank
    module = "dc.bank.module"
    series = Input("modules in series", float(bank.series), "count", basis("dc.bank.series"))
    over = [cut_off.limit for cut_off in bank.management if cut_off.name == "overvoltage"]
    return (
        Setting(
            "absorb voltage",
            bank.absorb_voltage,
            "voltage",
            "the module's absorb voltage times the modules in series, sensed at the bank's posts",
            (
                Input(
                    "of one module",
                    bank.absorb_voltage / bank.series,
                    "voltage",
                    basis(f"{module}.absorb_voltage"),
                ),
                series,
                *(Input("management opens at", limit, "voltage", "computed") for limit in over),
            ),
            "the module's record",
        ),
        Setting(
            "float voltage",
            bank.float_voltage,
            "voltage",
            "the module's float voltage times the modules in series; or no charging at all once full",
            (
                Input("of one module", bank.float_voltage / bank.series, "voltage", basis(f"{module}.float_voltage")),
                series,
            ),
            "the module's record; lithium iron phosphate 3.35 to 3.40 V a cell, from memory",
        ),
        Setting(
            "tail current",
            bank.tail_current,
            "current",
            "charging current at the absorb voltage at which the bank counts as full, all machines together",
            (
                Input("bank's capacity", bank.capacity, "charge", basis(f"{module}.capacity")),
                Input(
                    "share of the capacity in an hour",
                    bank.tail_current * 3600.0 / bank.capacity,
                    "share",
                    basis(f"{module}.tail"),
                ),
            ),
            "3 to 5 % of the capacity in an hour, from memory",
        ),
        Setting(
            "delay after the engine starts",
            START_DELAY,
            "time",
            "so that the engine runs round and its oil is up before the belts pull",
            (),
            "from memory of practice",
        ),
        Setting(
            "soft start",
            START_RAMP,
            "time",
            "over which the field rises, so that belts and engine are not struck",
            (),
            "15 to 60 s, from memory of practice",
        ),
        Setting(
            "field cut before the management system opens",
            FIELD_CUT,
            "time",
            "from the management system's signal that charging must stop until it opens: the field must have died away "
            "by then",
            (),
            "1 to 5 s, from memory of practice; the longest load dump of ISO 16750-2 lasts 0.4 s",
        ),
    )
