"""The lead-acid bank that the lithium one replaces, every gap filled."""

from __future__ import annotations

import math

from anchorwatt.design.ledger import Ledger
from anchorwatt.design.power import DirectSide
from anchorwatt.design.specification import LeadAcidBank


def fill_lead_acid(dc: DirectSide, ledger: Ledger) -> LeadAcidBank | None:
    """All batteries of the replaced bank taken together; None where the design names none or an impossible one."""
    replaced, key = dc.replaced_bank, ("dc", "replaced_bank")
    if replaced is None:
        return None
    battery, series, parallel = replaced.battery, replaced.series, replaced.parallel
    told = len(ledger.problems)
    made = battery.nominal_voltage * series
    if not math.isclose(made, dc.nominal_voltage):
        fitting = round(dc.nominal_voltage / battery.nominal_voltage)
        fits = fitting >= 1 and math.isclose(fitting * battery.nominal_voltage, dc.nominal_voltage)
        hint = f"{fitting} in series" if fits else "batteries whose voltage divides it"
        ledger.refuse(
            (*key, "series"),
            f"{series} in series of {battery.nominal_voltage.text}, which make {made:g} V",
            f"{hint}, for {dc.nominal_voltage.text} nominal",
        )
    if parallel > battery.highest_parallel:
        ledger.refuse(
            (*key, "parallel"),
            f"{parallel} in parallel",
            f"at most {battery.highest_parallel} in parallel of {battery.name or 'this battery'}; larger batteries",
        )
    if len(ledger.problems) > told:
        return None
    return LeadAcidBank(
        battery=battery.name,
        series=series,
        parallel=parallel,
        nominal_voltage=made,
        capacity=battery.capacity * parallel,
        peukert=battery.peukert,
        usable_share=float(battery.usable_share),
        resistance=battery.resistance * series / parallel,
        full_voltage=battery.full_voltage * series,
        empty_voltage=battery.empty_voltage * series,
        absorb_voltage=battery.absorb_voltage * series,
        charge_rate=battery.charge_rate / 3600.0,
        charge_efficiency=float(battery.charge_efficiency),
        cycle_life=battery.cycle_life,
        mass=battery.mass * series * parallel,
    )
