"""Help answers at once: it loads nothing heavy."""

from __future__ import annotations

import subprocess
import sys

import pytest

HEAVY = {
    "numpy",
    "numba",
    "pandas",
    "pvlib",
    "scipy",
    "CoolProp",
    "pydantic",
    "ruamel",
    "ezdxf",
    "reportlab",
    "fontTools",
}
BY_TYPER = {"pydantic"}
"""What Typer itself loads once it reads a command's arguments."""
PROBE = """
import sys
from anchorwatt.cli import main
sys.argv = ["anchorwatt", *{arguments}]
try:
    main()
except SystemExit:
    pass
print("loaded", *sorted({{name.split(".")[0] for name in sys.modules}}))
"""


@pytest.mark.parametrize(
    ("arguments", "allowed"), [(["--help"], set()), (["--version"], set()), (["assess", "--help"], BY_TYPER)]
)
def test_help_loads_nothing_heavy(arguments: list[str], allowed: set[str]) -> None:
    probe = PROBE.format(arguments=arguments)
    found = subprocess.run([sys.executable, "-c", probe], capture_output=True, text=True, check=True)
    loaded = set(found.stdout.splitlines()[-1].split())
    assert "typer" in loaded
    assert not loaded & (HEAVY - allowed)


def test_python_m_runs_the_program() -> None:
    asked = [sys.executable, "-m", "anchorwatt", "--version"]
    found = subprocess.run(asked, capture_output=True, text=True, check=True)
    assert found.stdout.startswith("anchorwatt ")
