"""`assess(design)`: everything that follows from a design, computed once, when first asked for."""

from __future__ import annotations

import math
from collections.abc import Iterator
from functools import cached_property

import numpy as np

from anchorwatt.assessment.ac_side import AcSideStory, ac_side_story
from anchorwatt.assessment.bank import BankStory, bank_story
from anchorwatt.assessment.cabins import cabin_answers
from anchorwatt.assessment.engine_load import EngineLoad, engine_loads
from anchorwatt.assessment.faults import FaultAnswer, fault_answers
from anchorwatt.assessment.fit import FitStory, fit_story
from anchorwatt.assessment.gains import BoatGains, boat_gains
from anchorwatt.assessment.generator import GeneratorStory, generator_story
from anchorwatt.assessment.headline import answers, checks_failed
from anchorwatt.assessment.load_story import LoadStory, load_story
from anchorwatt.assessment.offer import OfferStory, offer_story
from anchorwatt.assessment.places import PlacesStory, places_story
from anchorwatt.assessment.plant import PlantMap, plant_points
from anchorwatt.assessment.recharging import HELD_BY, Recharging, recharging
from anchorwatt.assessment.records import (
    Answer,
    CabinAnswer,
    Column,
    Comparison,
    Input,
    Recharge,
    Table,
    Why,
)
from anchorwatt.assessment.redundancy import RedundancyStory, redundancy_story
from anchorwatt.assessment.regulator import RegulatorSetUp, regulator_set_up
from anchorwatt.assessment.serials import Registered, register
from anchorwatt.assessment.tables import recharge_table, run_table
from anchorwatt.assessment.voltages import VoltageStory, voltage_story
from anchorwatt.assessment.week import WeekAnswer, week_answer
from anchorwatt.assessment.weight import WeightStory, weight_story
from anchorwatt.assessment.wiring import WiringStory, wiring_story
from anchorwatt.cautions import CAUTIONS
from anchorwatt.checks import Evidence, Finding, Verdict, check, found_in_turn, rules
from anchorwatt.design import Design, origin, specify
from anchorwatt.design.specification import Doing, Estimate, Specification
from anchorwatt.physics.engine import DIESEL_DENSITY
from anchorwatt.simulation.forcing import recharge_stretch
from anchorwatt.simulation.runs import Run, Simulation
from anchorwatt.sizing.air_quality import CabinAir
from anchorwatt.sizing.comfort import ComfortHour
from anchorwatt.sizing.condensate import ADVICE, Advice, Condensate
from anchorwatt.sizing.dew import SurfaceDew
from anchorwatt.sizing.ducts import HandlerAir
from anchorwatt.sizing.mass import alternative_mass, chilled_mass, cooling_mass
from anchorwatt.sizing.refrigerant import RefrigerantLimits
from anchorwatt.sizing.seawater import SeawaterFlow
from anchorwatt.sizing.selection import CabinPeak, Selection, select
from anchorwatt.units import show


class Assessment:
    """All answers of one design. Attributes are computed when first read and then kept."""

    cautions: tuple[str, ...] = CAUTIONS
    drain_advice: tuple[Advice, ...] = ADVICE

    def __init__(self, design: Design) -> None:
        self.design = design

    @cached_property
    def specification(self) -> Specification:
        """The design with every name looked up and every gap filled."""
        return specify(self.design)

    @cached_property
    def simulation(self) -> Simulation:
        """The runs behind the answers."""
        return Simulation(self.specification)

    @property
    def estimates(self) -> tuple[Estimate, ...]:
        """Every figure that nobody typed."""
        return self.specification.estimates

    @property
    def weather_source(self) -> str:
        """Where the weather comes from, in words."""
        return self.simulation.weather.source

    @cached_property
    def evidence(self) -> Evidence:
        """What the checks look at, worked out once for them and for the screens."""
        return Evidence(self.specification, self.simulation)

    @cached_property
    def checks(self) -> tuple[Finding, ...]:
        """What every rule found."""
        return check(self.evidence)

    @property
    def checked(self) -> bool:
        """Whether the checks are done already."""
        return "checks" in self.__dict__

    def check_in_turn(self) -> Iterator[tuple[int, int]]:
        """Do the checks one after the other, so that one can watch or stop; yields how many are done, and of how many.

        When the last is done, `checks` holds what they found.
        """
        found = []
        for done, finding in enumerate(found_in_turn(self.evidence), 1):
            found.append(finding)
            yield done, len(rules())
        self.__dict__["checks"] = tuple(finding for finding in found if finding is not None)

    @cached_property
    def answers(self) -> tuple[Answer, ...]:
        """The answers that decide the job, without how many checks fail: no check is run for them."""
        return answers(self.evidence, self._basis)

    @cached_property
    def headline(self) -> tuple[Answer, ...]:
        """The answers that decide the job, and how many checks fail."""
        return (*self.answers, checks_failed(self.checks))

    def answer(self, key: str) -> Answer:
        """The headline answer of that key.

        Raises
        ------
        KeyError
            no such answer; the text lists those that there are.
        """
        known = {answer.key: answer for answer in self.answers}
        if key not in known:
            known = {answer.key: answer for answer in self.headline}
        if key not in known:
            raise KeyError(f"no answer {key}; there are {', '.join(known)}")
        return known[key]

    @cached_property
    def cabins(self) -> tuple[CabinAnswer, ...]:
        """Load, and the night's warmest and dampest, cabin by cabin."""
        return cabin_answers(self.specification, self.simulation, self.gains)

    @cached_property
    def ac_side(self) -> AcSideStory:
        """Inverter, transformer, shore power and the small converters."""
        return ac_side_story(self.specification, self.evidence.ac_side, self._basis)

    @property
    def comfort(self) -> tuple[ComfortHour, ...]:
        """What people in each cabin feel, hour by hour of the night."""
        return self.evidence.comfort

    @property
    def cabin_air(self) -> tuple[CabinAir, ...]:
        """Carbon dioxide and outdoor air where people are by night."""
        return self.evidence.cabin_air

    @property
    def condensate(self) -> Condensate:
        """Water out of the coils."""
        return self.evidence.condensate

    @property
    def surface_dew(self) -> tuple[SurfaceDew, ...]:
        """How near the coldest inside surface of each cabin comes to dew."""
        return self.evidence.surface_dew

    @property
    def handlers_air(self) -> tuple[HandlerAir, ...]:
        """Ducts, grilles and fans of the shared plant."""
        return self.evidence.handlers_air

    @property
    def refrigerant(self) -> RefrigerantLimits | None:
        """The charge against the limits of the smallest occupied cabin; None when the plant reaches none."""
        return self.evidence.refrigerant

    @property
    def seawater(self) -> SeawaterFlow:
        """The seawater circuit at full load."""
        return self.evidence.seawater

    @cached_property
    def night(self) -> Table:
        """The night, minute by minute."""
        return run_table(self.specification, self.simulation.night)

    @cached_property
    def day(self) -> Table:
        """From dawn to where the next night begins, by the plan."""
        return run_table(self.specification, self.simulation.day)

    @cached_property
    def recharge(self) -> Recharge | None:
        """How the engines put the night back; None without an alternator."""
        run = self.simulation.recharge
        stretch = recharge_stretch(self.specification, self.simulation.dawn)
        if run is None or stretch is None:
            return None
        if stretch.period.doing is Doing.MOTORING:
            doing = f"motoring at {show(stretch.period.boat_speed, 'speed', 'si')}"
        else:
            doing = "at anchor, engines at their charging speed"
        total = run.held[0].sum()
        held = run.held[0].sum(axis=0) / total if total > 0.0 else np.zeros(len(HELD_BY))
        reached = float(run.summary.full_at[0])
        return Recharge(
            doing=doing,
            engine_time=reached,
            fuel_added=self.answer("recharge_fuel_L").value,
            fuel_burnt=math.nan if math.isnan(reached) else float(run.summary.fuel[0]) / DIESEL_DENSITY,
            mean_alternator_current=float(run.series.alternator_current[0].sum(axis=0).mean()),
            highest_winding=float(run.summary.hottest_winding[0]),
            held_by=tuple((name, float(share)) for name, share in zip(HELD_BY, held, strict=True) if share > 0.0),
            table=recharge_table(self.specification, run),
        )

    @cached_property
    def recharging(self) -> Recharging | None:
        """The night put back at each engine speed, and with an alternator lost; None without an alternator."""
        return recharging(self.specification, self.simulation, self._basis)

    @cached_property
    def voltages(self) -> VoltageStory:
        """The same boat at 12, 24 and 48 V."""
        return voltage_story(self.specification, self.simulation)

    @cached_property
    def gains(self) -> BoatGains:
        """Where the load comes from: every cabin that is ever cooled, by cause and hour."""
        return boat_gains(self.specification, self.simulation)

    @cached_property
    def load_story(self) -> LoadStory | None:
        """The computed peak beside the trade's rules; None when nothing is ever cooled."""
        return load_story(self.specification, self.simulation, self.gains)

    @cached_property
    def selection(self) -> Selection:
        """Air handlers and condensing unit that the catalogue would give for the computed peaks."""
        peaks = {
            cabin.cabin: CabinPeak(
                cabin.peak,
                float(cabin.sensible[cabin.peak_hour]),
                float(cabin.air[cabin.peak_hour]),
                float(cabin.humidity[cabin.peak_hour]),
            )
            for cabin in self.gains.cabins
        }
        sea = float(np.max(self.simulation.weather.sea_temperature))
        return select(self.specification.plant, peaks, self.gains.peak, sea)

    @cached_property
    def bank(self) -> BankStory:
        """The bank: its build, its limits, its temperature, its years, and the lead-acid bank that it replaces."""
        return bank_story(self.specification, self.simulation, self.evidence)

    @cached_property
    def plant(self) -> PlantMap:
        """What the shared plant gives and draws over the sea and the load."""
        boat = self.simulation.boat
        return plant_points(self.specification.plant, boat.plant, boat.heating)

    @cached_property
    def week(self) -> WeekAnswer:
        """The week of the design file, and the shortest engine time a day at anchor that keeps the boat going."""
        return week_answer(self.evidence.week, self.evidence.shortest_engine_time)

    @cached_property
    def wiring(self) -> WiringStory:
        """The wire schedule.

        Raises
        ------
        BadDesign
            the file says something of a circuit that there is not.
        """
        return wiring_story(self.design, self.specification, self.evidence.wiring)

    @cached_property
    def weight(self) -> WeightStory:
        """What the installation weighs, and how the boat floats with it."""
        return weight_story(self.specification, self.evidence.weight, self._basis)

    @cached_property
    def places(self) -> PlacesStory:
        """Where every mass lies, and the centre of gravity before and after."""
        return places_story(self.specification, self.evidence.weight, self.design.places, self._basis)

    @cached_property
    def engine_loads(self) -> tuple[EngineLoad, ...]:
        """Each engine's power over its speed, with what propeller and belts take of it."""
        return engine_loads(self.specification, self.evidence.regulators, self._basis)

    @cached_property
    def register(self) -> tuple[Registered, ...]:
        """Every part with its place and its serial number.

        Raises
        ------
        BadDesign
            the file has a serial number for a part that there is not.
        """
        return register(self.design, self.specification)

    @cached_property
    def fit(self) -> FitStory:
        """Whether parts go into the spaces where they are put, and where else they would."""
        return fit_story(self.evidence.fit, tuple(cabin.name for cabin in self.specification.cabins))

    @cached_property
    def faults(self) -> tuple[FaultAnswer, ...]:
        """What happens, minute by minute, when something fails."""
        return fault_answers(self.evidence.faults.every)

    @cached_property
    def redundancy(self) -> RedundancyStory:
        """What the loss of each single part leaves."""
        return redundancy_story(self.evidence.redundancy)

    @cached_property
    def generator(self) -> GeneratorStory | None:
        """The design beside a generating set; None where no set of the catalogue is large enough."""
        return generator_story(self.specification, self.simulation)

    @cached_property
    def offer(self) -> OfferStory:
        """What the job costs, when its parts must be ordered, and the packages beside it."""
        return offer_story(self.design, self.evidence)

    @cached_property
    def regulator(self) -> RegulatorSetUp:
        """What to set in every regulator aboard, with the calculation behind each figure."""
        return regulator_set_up(self.evidence, self._basis)

    @cached_property
    def comparisons(self) -> tuple[Comparison, ...]:
        """The night on the shared plant and, where the design names them, on chilled water and self-contained units."""
        specification = self.specification
        rows = [
            _comparison(
                "shared variable-speed plant",
                self.simulation.night,
                "starts from rest without a surge",
                cooling_mass(specification),
            )
        ]
        chilled = self.simulation.chilled_night
        if chilled is not None and specification.chilled is not None:
            rows.append(
                _comparison(
                    "chilled water",
                    chilled,
                    "its water pump runs all night"
                    + ("" if specification.chilled.circuit.turn_down < 1.0 else ", its compressor starts and stops"),
                    chilled_mass(specification),
                )
            )
        other = self.simulation.alternative_night
        if other is not None and specification.alternative is not None:
            ratio = max(unit.starting_ratio for unit in specification.alternative.units)
            rows.append(
                _comparison(
                    "self-contained units",
                    other,
                    f"each start draws up to {ratio:g} times its running current",
                    alternative_mass(specification),
                )
            )
        return tuple(rows)

    def _basis(self, key: str) -> str:
        return origin(self.design, key)


def _comparison(plant: str, run: Run, starting: str, mass: float) -> Comparison:
    interrupted = float(run.summary.unserved_energy[0]) > 0.0
    points = run.forcing.set_point[0, :, 0]
    cooled = ~np.isnan(points)
    over = run.summary.highest_air[0] - points
    return Comparison(
        plant=plant,
        night_energy=float(run.summary.bank_out[0]),
        peak_plant_power=float(run.summary.peak_plant_power[0]),
        starting_current_note=f"{starting}; the night is interrupted" if interrupted else starting,
        charge_at_dawn=float(run.end.charge[0]),
        mass=mass,
        warmest=float(np.max(over[cooled])) if cooled.any() else math.nan,
        dampest=float(np.max(run.summary.highest_relative_humidity[0][cooled])) if cooled.any() else math.nan,
    )


def assess(design: Design) -> Assessment:
    """Everything that follows from a design."""
    return Assessment(design)


__all__ = [
    "Answer",
    "Assessment",
    "CabinAnswer",
    "Column",
    "Comparison",
    "Estimate",
    "Finding",
    "Input",
    "Recharge",
    "Table",
    "Verdict",
    "Why",
    "assess",
]
