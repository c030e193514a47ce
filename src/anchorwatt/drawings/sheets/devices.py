"""How large fuses, breakers and switches are, as they are seen from the front.

Breakers on rails follow the module of DIN 43880, 18 mm a pole, from memory. All other sizes are generic, from memory:
the maker's sheet of what is bought decides.
"""

from __future__ import annotations

from dataclasses import dataclass

MODULE = 0.018
"""m of width of a pole of a device on a rail; DIN 43880, from memory."""

BREAKER_HIGH = 0.085
"""m of height of a device on a rail, of which 45 mm show through a cover. From memory."""

WAY = 2 * MODULE
"""m from way to way at least: two modules, wide enough for a label that can be read. Ours."""

SPARE = 0.20
"""Share of ways kept free for later circuits. From memory."""


@dataclass(frozen=True)
class Face:
    """A device from the front."""

    name: str  # letters, digits and hyphens
    width: float  # m
    height: float  # m


FUSES = {
    "blade": Face("blade-fuse", 0.020, 0.040),
    "MIDI": Face("bolted-fuse-small", 0.025, 0.060),
    "MEGA": Face("bolted-fuse", 0.035, 0.095),
    "ANL": Face("strip-fuse", 0.035, 0.105),
    "battery-post cube": Face("post-fuse", 0.030, 0.050),
    "cylindrical 10 × 38": Face("fuse-carrier-10x38", 0.018, 0.080),
    "cylindrical 22 × 58": Face("fuse-carrier-22x58", 0.036, 0.125),
    "class T": Face("class-t-block", 0.055, 0.130),
    "NH blade": Face("nh-base", 0.060, 0.170),
    "EV bolt-down": Face("bolt-down-fuse", 0.050, 0.120),
    "EV bolt-down 50 kA": Face("bolt-down-fuse-large", 0.060, 0.140),
}
"""Fuses in their holders, by family of the catalogue. Generic, from memory."""

OTHER = Face("fuse", 0.040, 0.110)
"""A fuse of a family that is not listed. Generic, from memory."""

SWITCH = Face("changeover-switch", 4 * MODULE, BREAKER_HIGH)
"""A changeover switch on a rail. Generic, from memory."""


def face(kind: str, family: str, poles: int) -> Face:
    """What a fuse or a breaker looks like from the front.

    Parameters
    ----------
    kind : "fuse" or "breaker"
    family : of the catalogue
    poles : conductors that a breaker opens
    """
    if kind == "breaker":
        return Face(f"breaker-{poles}p", poles * MODULE, BREAKER_HIGH)
    return FUSES.get(family, OTHER)
