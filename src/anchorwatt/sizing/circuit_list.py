"""A list of circuits while it is made: tags, lengths, surroundings and bundles."""

from __future__ import annotations

import math

from anchorwatt.design.fill_power import HIGHEST_OF_60_HZ, VOLTAGE_WITHOUT_SHORE
from anchorwatt.design.specification import CircuitWish, Specification
from anchorwatt.physics.conductor import RATED_AMBIENT
from anchorwatt.simulation.runs import Simulation
from anchorwatt.sizing.circuits import ORDINARY_DROP, Circuit
from anchorwatt.sizing.conductors import ENGINE_SPACE
from anchorwatt.sizing.design_currents import DesignCurrents
from anchorwatt.sizing.ends import End, Ends, along_axes
from anchorwatt.sizing.setting import Input


class CircuitList:
    """Circuits so far, with what all of them are made from."""

    def __init__(self, specification: Specification, simulation: Simulation) -> None:
        self.specification = specification
        self.ends = Ends(specification)
        self.currents = DesignCurrents(specification, simulation)
        self.circuits: list[Circuit] = []
        self._wishes = {wish.tag: wish for wish in specification.wiring.wishes}
        self._hot = {engine.cabin for engine in specification.engines if engine.cabin >= 0}

    @property
    def nominal(self) -> float:
        """V of the bank."""
        return self.specification.bank.nominal_voltage

    @property
    def shore_voltage(self) -> float:
        """V of the shore service, between both legs where there are two."""
        shore = self.specification.shore
        return self.supply_voltage if shore is None else shore.voltage * shore.legs

    @property
    def supply_voltage(self) -> float:
        """V that inverter and shore give to transformer or loads."""
        shore, transformer = self.specification.shore, self.specification.transformer
        if transformer is not None:
            return transformer.primary_voltage
        return VOLTAGE_WITHOUT_SHORE if shore is None else shore.voltage

    @property
    def load_voltage(self) -> float:
        """V of plant and AC loads."""
        transformer = self.specification.transformer
        return self.supply_voltage if transformer is None else transformer.secondary_voltage

    @property
    def frequency(self) -> float:
        """Hz on the AC side."""
        shore = self.specification.shore
        if shore is not None:
            return shore.frequency
        return 60.0 if self.supply_voltage <= HIGHEST_OF_60_HZ else 50.0

    def add(
        self,
        start: End,
        end: End,
        function: str,
        *,
        system: str,
        voltage: float,
        continuous: float,
        formula: str,
        inputs: tuple[Input, ...] = (),
        peak: float = math.nan,
        mean_square: float = 0.0,
        highest_drop: float = ORDINARY_DROP,
        source: str = "bus",
        poles: int = 2,
        bundled: int = 0,
    ) -> None:
        """Put a circuit on the list; what the design says of its tag comes first."""
        wiring = self.specification.wiring
        tag = f"W{len(self.circuits) + 1}"
        wish = self._wishes.get(tag, NO_WISH)
        apart = along_axes(start.position, end.position)
        length, typed = wiring.routing_factor * apart + wiring.slack, False
        if not math.isnan(wish.length):
            length, typed = wish.length, True
        usual = bundled or (1 if system == "bonding" else wiring.bundled)
        ambient, basis = self._ambient(start, end)
        found = (
            Input("length, one way", length, "length", "typed" if typed else "computed"),
            *(
                ()
                if typed
                else (
                    Input("between its ends, along the boat's axes", apart, "length", "computed"),
                    Input("routing factor", wiring.routing_factor, "ratio", "typed or estimated"),
                    Input("slack", wiring.slack, "length", "typed or estimated"),
                )
            ),
            Input("air round it", ambient, "temperature", basis),
        )
        self.circuits.append(
            Circuit(
                tag=tag,
                start=start.tag,
                end=end.tag,
                function=function,
                system=system,
                voltage=voltage,
                frequency=self.frequency if system == "ac" else 0.0,
                poles=poles,
                continuous=continuous,
                peak=continuous if math.isnan(peak) else max(peak, continuous),
                length=length,
                length_typed=typed,
                ambient=ambient,
                bundled=wish.bundled or usual,
                insulation=wiring.insulation,
                highest_drop=highest_drop if math.isnan(wish.highest_drop) else wish.highest_drop,
                source=source,
                start_name=start.name,
                end_name=end.name,
                cores=poles + 1 if system == "ac" else poles,
                mean_square=mean_square,
                current_formula=formula,
                inputs=(*inputs, *found),
                places=(start.position, end.position),
            )
        )

    def _ambient(self, start: End, end: End) -> tuple[float, str]:
        """°C round a circuit: that of an engine space, or of the hottest compartment that it touches."""
        touched = [one.cabin for one in (start, end) if one.cabin >= 0]
        rule = ENGINE_SPACE if any(cabin in self._hot for cabin in touched) else RATED_AMBIENT
        hottest = max((self.currents.hottest[cabin] for cabin in touched), default=rule)
        if hottest > rule:
            return hottest, "computed: the hottest of its compartments in the runs"
        return rule, "an engine space" if rule > RATED_AMBIENT else "the tables' own"


NO_WISH = CircuitWish("", math.nan, "", 0, math.nan, "", 0, math.nan)
"""What the design says of a circuit that it does not name."""
