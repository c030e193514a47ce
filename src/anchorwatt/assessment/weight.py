"""Weight, heel and trim: the answers that decide, each with its why, and what to move."""

from __future__ import annotations

import math
from collections.abc import Callable
from dataclasses import dataclass

from anchorwatt.assessment.records import Answer, Input, Why
from anchorwatt.design.specification import Specification
from anchorwatt.sizing.weight import CABLES, LEVEL, Carried, Move, Weight
from anchorwatt.units import System, convert, show

Basis = Callable[[str], str]
"""From a key of the design file to "typed", "catalogue" or "estimated"."""

TEXTBOOK = "public-domain textbook of seamanship, chapters on stability and trim"

CAUTIONS = (
    (
        "Metacentric heights and waterplanes that nobody measured are estimates from proportions: what follows from "
        "them is a first look. An inclining test, or the designer's hydrostatics, make it a figure."
    ),
    (
        "Weight in the wrong place costs stability, and bank and transformer that come adrift maim: a naval architect "
        "decides where margins are small, and every mass is made fast for the sea, by the codes in force."
    ),
)

CENTIMETRES = {"si": 1.0, "us": 2.54}
"""cm of the step of draught that each system counts in."""
MOMENT_UNITS = {"si": "kg·m", "us": "lb·ft"}


@dataclass(frozen=True)
class WeightStory:
    """What the page of weight shows."""

    figures: Weight
    answers: tuple[Answer, ...]
    moves: tuple[Move, ...]  # to a level boat, smallest first, none where it is level
    stiffness_before: float  # m, the metacentric height without the installation
    cautions: tuple[str, ...] = CAUTIONS

    def advice(self, system: System) -> tuple[str, ...]:
        """What to do, in words."""
        found = self.figures
        words = [_level(found, self.moves, system)]
        if found.added > 0.0:
            side = found.centre.up
            where = f"{show(abs(side), 'length', system)} {'over' if side >= 0.0 else 'under'} the waterline"
            words.append(
                f"What is added lies {where} on the whole, and {show(found.radius, 'length', system)} from amidships "
                "(root mean square, in plan). A boat that races wants both small: low, and near the middle."
            )
        return tuple(words)

    def heel(self, system: System) -> str:
        """The heel in words."""
        found = heel_in_words(self.figures.floats.heel, system)
        return "no heel" if found == "none" else f"heels {found}"

    def trim(self, system: System) -> str:
        """The change of trim in words."""
        found = trim_in_words(self.figures.floats.trim, system)
        return "trim as before" if found == "none" else f"trims {found}"

    def finding(self, system: System) -> str:
        """Both in one line, for a title."""
        floats = self.figures.floats
        mass = show(abs(floats.mass), "mass", system)
        words = f"{mass} {'more' if floats.mass >= 0.0 else 'less'} aboard"
        return f"With {words} the boat {self._does(system)}"

    def _does(self, system: System) -> str:
        heel, trim = self.heel(system), self.trim(system)
        if heel == "no heel" and trim == "trim as before":
            return "floats as before"
        if heel == "no heel":
            return f"stays upright and {trim}"
        return f"{heel}, its {trim}" if trim == "trim as before" else f"{heel} and {trim}"

    def level(self, system: System) -> str:
        """The smallest move that levels the boat, in words."""
        return _level(self.figures, self.moves, system)

    def readings(self, system: System) -> tuple[tuple[str, str], ...]:
        """How the boat floats: figure, and what it is of."""
        found, floats = self.figures, self.figures.floats
        return (
            (show(found.added, "mass", system), "is brought aboard"),
            (show(found.taken_out, "mass", system), "is taken ashore"),
            (heel_in_words(floats.heel, system), "heel"),
            (trim_in_words(floats.trim, system), "change of trim, bow and stern together"),
            (depth_in_words(floats.at_bow, system), "at the bow"),
            (depth_in_words(floats.at_stern, system), "at the stern"),
            (depth_in_words(floats.sinkage, system), "all round"),
            (
                show(floats.metacentric_height, "length", system),
                f"metacentric height; {show(self.stiffness_before, 'length', system)} before",
            ),
        )

    def stiffness(self, system: System) -> str:
        """What sinks and what trims the boat by one centimetre or inch, and how sure all of it is."""
        found, one = self.figures, "1 cm" if system == "si" else "1 in"
        step = CENTIMETRES[system]
        trims = moment_in_words(step * found.moment_to_trim, system)
        return (
            f"{show(0.01 * step * found.mass_per_immersion, 'mass', system)} sink this boat by {one}; {trims} about "
            f"its centre of flotation trim it by {one}. {show(found.placed, 'share', system)} of the mass stands "
            "where somebody said."
        )


def moment_in_words(moment: float, system: System) -> str:
    """A moment of masses with its unit."""
    return f"{moment_figure(moment, system)} {MOMENT_UNITS[system]}"


def moment_figure(moment: float, system: System) -> str:
    """A moment of masses in kg·m or in lb·ft, whole."""
    text = f"{moment if system == 'si' else convert(convert(moment, 'lb', 'mass'), 'ft', 'length'):.0f}"
    return text.removeprefix("-") if float(text) == 0.0 else text.replace("-", "−")


def weight_story(specification: Specification, figures: Weight, basis: Basis) -> WeightStory:
    """What the page of weight shows."""
    answers = weight_answers(specification, figures, basis)
    return WeightStory(figures, answers, figures.moves, specification.metacentric_height)


def weight_answers(specification: Specification, figures: Weight, basis: Basis) -> tuple[Answer, ...]:
    """Masses, heel, trim and what else the boat does with them, each with its why."""
    return (*_masses(figures), *_floating(specification, figures, basis))


def heel_in_words(angle: float, system: System) -> str:
    """A heel with its side."""
    if math.isnan(angle):
        return "beyond 10°"
    if abs(angle) < 5e-4:
        return "none"
    return f"{show(abs(angle), 'angle', system)} to {'starboard' if angle > 0.0 else 'port'}"


def trim_in_words(trim: float, system: System) -> str:
    """A change of trim with its end."""
    if abs(trim) < 5e-4:
        return "none"
    return f"{show(abs(trim), 'length', system)} by the {'bow' if trim > 0.0 else 'stern'}"


def depth_in_words(depth: float, system: System) -> str:
    """How much deeper or higher."""
    if abs(depth) < 5e-4:
        return "as before"
    return f"{show(abs(depth), 'length', system)} {'deeper' if depth > 0.0 else 'higher'}"


def _level(found: Weight, moves: tuple[Move, ...], system: System) -> str:
    heel = found.floats.heel
    if not math.isnan(heel) and abs(heel) <= LEVEL:
        return "The boat stays upright: no part needs to move."
    if not moves:
        if not any(one.movable for one in found.carried):
            return "No part that can be moved has a place in the file: name some under places: to be told what to move."
        return _several(found, system)
    first = moves[0]
    side = first.end.starboard - first.start.starboard
    if first.space:
        words = f"put {first.tag} ({first.name}) into {first.space}"
    else:
        words = (
            f"move {first.tag} ({first.name}) {show(abs(side), 'length', system)} to "
            f"{'starboard' if side > 0.0 else 'port'}"
        )
    left = abs(first.heel)
    then = "no heel is left" if left < 5e-4 else f"{heel_in_words(first.heel, system)} is left"
    return f"The smallest move that levels the boat: {words}; {then}."


def _several(found: Weight, system: System) -> str:
    if not found.together:
        return "No part can be moved far enough across its hull to level the boat: move ballast."
    parts = ", ".join(
        f"{move.tag} ({move.name}) {show(abs(move.end.starboard - move.start.starboard), 'length', system)} to "
        f"{'starboard' if move.end.starboard > move.start.starboard else 'port'}"
        for move in found.together
    )
    left = heel_in_words(found.together[-1].heel, system)
    return f"No single move levels the boat within its hull. Together: {parts}; heel left: {left}."


def _masses(found: Weight) -> list[Answer]:
    return [
        Answer(
            "mass_added_kg",
            "What does the installation weigh?",
            found.added,
            "mass",
            "kg",
            f"not counted: {found.uncounted}",
            Why(
                "sum of the parts' masses, and of the cables as they are sized",
                tuple(_input(one) for one in found.carried if one.mass > 0.0),
                "the catalogue; cables from their sizes",
                "fewer or lighter modules, fewer air handlers, shorter or thinner cables",
            ),
        ),
        Answer(
            "taken_ashore_kg",
            "What is taken out for it?",
            found.taken_out,
            "mass",
            "kg",
            "" if found.taken_out else "nothing: the file names nothing under boat.removed",
            Why(
                "sum of what the refit removes",
                tuple(_input(one) for one in found.carried if one.mass < 0.0),
                "the catalogue",
                "boat.removed in the file",
            ),
        ),
    ]


def _input(one: Carried) -> Input:
    return Input(f"{one.tag} {one.name}".strip(), one.mass, "mass", "computed" if one.tag == CABLES else "catalogue")


def _floating(specification: Specification, found: Weight, basis: Basis) -> list[Answer]:
    floats = found.floats
    displacement = Input("displacement before", specification.displacement, "mass", basis("boat.displacement"))
    net = Input("added less taken out", floats.mass, "mass", "computed")
    stiffness = Input(
        "metacentric height before", specification.metacentric_height, "length", basis("boat.metacentric_height")
    )
    plane = Input("waterplane", specification.waterplane, "area", basis("boat.waterplane"))
    placed = Input("mass whose place is typed", found.placed, "share", "computed")
    unsure = "" if found.placed >= 1.0 else f"; {show(found.placed, 'share', 'si')} of the mass has a place in the file"
    over = math.isnan(floats.heel)
    return [
        Answer(
            "heel_deg",
            "How does the boat heel with it?",
            floats.heel,
            "angle",
            "°",
            "beyond 10°, where the formula ends" if over else f"to starboard positive{unsure}",
            Why(
                "tangent of heel: sum of mass by distance to starboard, over displacement times metacentric height; "
                "to starboard positive",
                (displacement, net, stiffness, placed, _offset(found)),
                TEXTBOOK,
                "where the heaviest parts stand; the metacentric height, best from an inclining test",
            ),
        ),
        Answer(
            "trim_cm",
            "How does the trim change?",
            floats.trim,
            "length",
            "cm",
            f"by the bow positive, bow and stern together{unsure}",
            Why(
                "sum of mass by distance forward of the centre of flotation, over the moment that trims 1 cm, which is "
                "displacement times longitudinal metacentric height over the waterline",
                (
                    displacement,
                    net,
                    Input(
                        "longitudinal metacentric height",
                        specification.longitudinal_metacentric_height,
                        "length",
                        basis("boat.longitudinal_metacentric_height"),
                    ),
                    Input("waterline", specification.waterline, "length", basis("boat.waterline")),
                    Input("centre of flotation", specification.flotation, "length", basis("boat.flotation")),
                    placed,
                ),
                f"{TEXTBOOK}; public teaching notes",
                "where the heaviest parts stand along the boat",
            ),
        ),
        Answer(
            "sinkage_cm",
            "How much deeper does the boat lie?",
            floats.sinkage,
            "length",
            "cm",
            "",
            Why(
                "mass over the tonnes per centimetre, which is 1.025 t/m³ times the waterplane",
                (net, plane, Input("for 1 cm", 0.01 * found.mass_per_immersion, "mass", "computed")),
                "public teaching notes of seamanship",
                "the mass, and what is taken ashore for it",
            ),
        ),
        Answer(
            "metacentric_height_m",
            "What metacentric height is left?",
            floats.metacentric_height,
            "length",
            "m",
            f"{show(specification.metacentric_height, 'length', 'si')} before",
            Why(
                "a layer of displacement over an unchanged waterplane: height before times displacement, with the "
                "layer's half depth by its mass, less the sum of mass by height, over the displacement after",
                (
                    displacement,
                    net,
                    stiffness,
                    plane,
                    Input("height of what is added", found.centre.up, "length", "computed"),
                    Input("centre of gravity before", specification.gravity_up, "length", basis("boat.gravity_height")),
                    Input("centre of gravity after", floats.gravity_up, "length", "computed"),
                ),
                "from memory; any text of ship stability on adding a weight",
                "how low the heaviest parts stand",
            ),
        ),
    ]


def _offset(found: Weight) -> Input:
    """How far off the centreline the sum of what is added lies."""
    return Input("centre of what is added, to starboard", found.centre.starboard, "length", "computed")
