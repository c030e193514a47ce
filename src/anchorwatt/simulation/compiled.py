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
import tempfile
import time
from collections.abc import Callable
from functools import cache
from importlib import import_module
from importlib.metadata import version
from inspect import getmembers, isfunction
from pathlib import Path
from typing import Any

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
KERNEL_SIMULATION = ("arrays", "plant", "plant_map", "outside", "fabric", "electric", "kernel")
ENTRIES = ("run_cases", "fill_map", "sol_air_series", "window_series")
"""Functions that Python calls; all others are called by these."""
# Not-a-number and infinity keep their meaning; only the order of sums and products is the compiler's.
OPTIONS: dict[str, Any] = {"error_model": "numpy", "fastmath": {"contract", "reassoc", "arcp", "nsz"}}
KEPT_FOR = 30 * 86400.0
"""s for which the compiled code of other versions is kept."""


def _fingerprint() -> str:
    digest = hashlib.sha256()
    for folder, names in (("physics", KERNEL_PHYSICS), ("simulation", KERNEL_SIMULATION)):
        for name in names:
            digest.update((PACKAGE / folder / f"{name}.py").read_bytes())
    for part in (version("numba"), sys.version, platform.machine()):
        digest.update(part.encode())
    return digest.hexdigest()[:16]


@cache
def cache_folder() -> Path:
    """Where the compiled code of exactly these sources lives; made if it is not there.

    `ANCHORWATT_CACHE` names the parent; else the user's cache folder; else, when that cannot be written,
    a folder of this user's own among the temporary files.
    """
    named = os.environ.get("ANCHORWATT_CACHE")
    home = Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache") / "anchorwatt"
    choices = [Path(named)] if named else [home]
    for parent in choices:
        folder = parent / _fingerprint()
        with contextlib.suppress(OSError):
            folder.mkdir(parents=True, exist_ok=True)
            with tempfile.TemporaryFile(dir=folder):
                return folder
    return Path(tempfile.mkdtemp(prefix="anchorwatt-"))


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
def _numba() -> Any:
    numba = import_module("numba")
    numba.config.CACHE_DIR = str(cache_folder())
    extending = import_module("numba.extending")
    names = [f"anchorwatt.physics.{name}" for name in KERNEL_PHYSICS]
    names += [f"anchorwatt.simulation.{name}" for name in KERNEL_SIMULATION]
    for name in names:
        module = import_module(name)
        for _, function in getmembers(module, isfunction):
            if function.__module__ == name and function.__name__ not in ENTRIES:
                extending.register_jitable(**OPTIONS)(function)
    return numba


@cache
def compiled(function: Callable[..., Any]) -> Callable[..., Any]:
    """A function of the kernel's modules, compiled; from the cache on disk when it is there."""
    if needs_compiling():
        _clear_old(cache_folder())
    result: Callable[..., Any] = _numba().njit(cache=True, nogil=True, **OPTIONS)(function)
    return result
