"""The compiled kernel and its cache on disk.

Numba does not notice a change in a file that a compiled function merely calls, so the cache folder is named
by a hash of every source that goes into the kernel: stale code never runs.
"""

from __future__ import annotations

import contextlib
import hashlib
import os
import platform
import shutil
import sys
import time
from collections.abc import Callable
from functools import cache
from importlib import import_module
from importlib.metadata import version
from inspect import isfunction
from pathlib import Path
from types import FunctionType
from typing import Any

from anchorwatt import stored

PACKAGE = Path(__file__).parent.parent
KERNEL_PHYSICS = (
    "air_handler",
    "alternator",
    "battery",
    "belt",
    "coil",
    "compressor",
    "condenser",
    "engine",
    "envelope",
    "fan",
    "interpolation",
    "inverter",
    "moist_air",
    "people",
    "propeller",
    "solar",
    "sun_and_sky",
    "transformer",
    "window",
)
KERNEL_SIMULATION = (
    "compiled",
    "arrays",
    "plant",
    "outside",
    "fabric",
    "cabins",
    "moisture",
    "cooling",
    "plant_map",
    "electric",
    "supply",
    "waste",
    "kernel",
)
ENTRIES = ("run_cases", "fill_map", "fill_heating_map", "sol_air_series", "window_series")
"""Functions that Python calls; all others are called by these."""
ALLOCATING = ("boat_row", "plant_row", "day_row", "empty_factors", "new_cabins", "new_coils")
"""Functions of the simulation that make arrays. Its others are compiled without reference counts: counting
every array of a group at every call would cost more than the functions' work."""

# Not-a-number and infinity keep their meaning; only the order of sums and products is the compiler's.
OPTIONS: dict[str, Any] = {"error_model": "numpy", "fastmath": {"contract", "reassoc", "arcp", "nsz"}}
ROOM = 140_000
"""Objects that fit into the frame from which compiled code is called, about 1 MB of address space."""
KEPT_FOR = 30 * 86400.0
"""s for which the compiled code of other versions is kept."""


def _fingerprint() -> str:
    digest = hashlib.sha256()
    for folder, names in (("physics", KERNEL_PHYSICS), ("simulation", KERNEL_SIMULATION)):
        for name in names:
            digest.update((PACKAGE / folder / f"{name}.py").read_bytes())
    # Numba keeps its files by the place of the source, so two checkouts do not share them.
    for part in (version("numba"), sys.version, platform.machine(), str(PACKAGE)):
        digest.update(part.encode())
    return digest.hexdigest()[:16]


@cache
def cache_folder() -> Path:
    """Where the compiled code of exactly these sources lives; see `stored.cache_folder`."""
    return stored.cache_folder(_fingerprint())


def _clear_old(folder: Path) -> None:
    for other in folder.parent.iterdir():
        if other != folder and len(other.name) == len(folder.name) and other.is_dir():
            with contextlib.suppress(OSError):
                if time.time() - other.stat().st_mtime > KEPT_FOR:
                    shutil.rmtree(other, ignore_errors=True)


def needs_compiling() -> bool:
    """Whether the next run must compile first, which takes some seconds, once."""
    return not any(cache_folder().glob("**/*run_cases*.nbc"))


@cache
def _compiled_functions() -> dict[Callable[..., Any], Callable[..., Any]]:
    """Every function of the kernel's modules, and its compiled twin.

    The twins are the same code in namespaces of their own, where each name of a kernel function stands for its
    twin: the functions that the docs explain and the tests check stay plain Python, and each is compiled once.
    """
    os.environ.setdefault("NUMBA_OPT", "2")  # faster here than the default level, and sooner ready
    numba = import_module("numba")
    numba.config.CACHE_DIR = str(cache_folder())
    numba.config.LOOP_VECTORIZE = 0  # loops over cabins are too short for it
    names = [f"anchorwatt.physics.{name}" for name in KERNEL_PHYSICS]
    names += [f"anchorwatt.simulation.{name}" for name in KERNEL_SIMULATION[1:]]
    spaces = {name: dict(vars(import_module(name))) for name in names}
    twins: dict[Callable[..., Any], Callable[..., Any]] = {}
    for name, space in spaces.items():
        for function in [value for value in space.values() if isfunction(value) and value.__module__ == name]:
            twin = FunctionType(function.__code__, space, function.__name__)
            twin.__module__, twin.__qualname__ = function.__module__, function.__qualname__
            entry = function.__name__ in ENTRIES
            counted = entry or ".physics." in name or function.__name__ in ALLOCATING
            inner = {} if entry else {"no_cpython_wrapper": True, "no_cfunc_wrapper": True}
            twins[function] = numba.njit(cache=entry, nogil=True, _nrt=counted, **inner, **OPTIONS)(twin)
    for space in spaces.values():
        space.update({key: twins[value] for key, value in space.items() if isfunction(value) and value in twins})
    return twins


def _with_room(function: Callable[..., Any]) -> Callable[..., Any]:
    """The same function, called from a frame so large that all frames above it find room beside it.

    Python gives frames memory in pieces of 16 KiB and hands a piece back as soon as its last frame is left.
    Compiling goes up and down over the edge of a piece half a million times, which took a third of its time.
    """

    def call(*arguments: Any) -> Any:
        return function(*arguments)

    call.__code__ = call.__code__.replace(co_stacksize=ROOM)
    return call


@cache
def compiled(function: Callable[..., Any]) -> Callable[..., Any]:
    """A function of the kernel's modules, compiled; from the cache on disk when it is there."""
    if needs_compiling():
        _clear_old(cache_folder())
    return _with_room(_compiled_functions()[function])
