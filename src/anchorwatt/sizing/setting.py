"""What is to be set somewhere, and the calculation behind it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Input:
    """One figure that an answer rests on."""

    name: str
    value: float
    dimension: str
    basis: str  # "typed", "catalogue", "estimated" or "computed"


@dataclass(frozen=True)
class Setting:
    """A figure to set."""

    name: str
    value: float  # SI, nan = cannot tell
    dimension: str
    formula: str  # in words
    inputs: tuple[Input, ...]
    source: str
    entered: bool = True  # into the regulator; else it is only looked at
