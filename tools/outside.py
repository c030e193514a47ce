"""The page of outside checks: what others publish, and what the program gives today.

The tests under `tests/published` are run once with every comparison they make noted down: each comparison of
theirs is with a published value and within a tolerance, so the page can never say more than the tests check.
"""

from __future__ import annotations

import json
import math
import os
import subprocess
import sys
import tempfile
from collections.abc import Generator
from pathlib import Path
from typing import Any

from tools.markdown import GENERATED, table

Row = tuple[str, str, str, str]

MOST_VALUES = 6
ACRONYMS = {"ahri", "ashrae", "awg", "cfr", "eu", "iec", "iso", "lfp", "nrel", "rms", "uk"}
INTRODUCTION = (
    "Each row is a value, or a statement, that somebody else published; the tests under `tests/published` "
    "hold the program to it. "
)
READING = (
    "“Within” is what the test allows: the rounding of what was printed, unless its text says more. A row "
    "without values is a statement that the program agrees with. “From memory” and “common practice, no "
    "source” mean just that.\n"
)


class Recorder:
    """A pytest plugin that notes what the tests compare."""

    def __init__(self) -> None:
        self.tests: list[dict[str, Any]] = []
        self.current: list[tuple[float, float, float]] | None = None

    def note(self, published: Any, tolerance: Any, ours: Any) -> None:
        """Keep a comparison of plain numbers."""
        numbers = (int, float)
        if self.current is not None and isinstance(published, numbers) and hasattr(ours, "__float__"):
            self.current.append((float(published), float(tolerance), float(ours)))

    def watch(self) -> None:
        """Have pytest's approx and math's isclose report to this."""
        import pytest

        approximate: Any = type(pytest.approx(1.0))
        recorder, plain, close = self, approximate.__eq__, math.isclose

        def equal(approx: Any, actual: Any) -> Any:
            recorder.note(approx.expected, approx.tolerance, actual)
            return plain(approx, actual)

        def isclose(a: float, b: float, *, rel_tol: float = 1e-9, abs_tol: float = 0.0) -> bool:
            recorder.note(b, max(abs_tol, rel_tol * max(abs(a), abs(b))), a)
            return close(a, b, rel_tol=rel_tol, abs_tol=abs_tol)

        approximate.__eq__ = equal
        math.isclose = isclose  # type: ignore[assignment]

    def pytest_runtest_call(self, item: Any) -> Generator[None]:
        self.current = []
        outcome = yield
        failed = outcome.excinfo is not None  # type: ignore[attr-defined]
        call = getattr(item, "callspec", None)
        # Which points Hypothesis draws depends on constants all over the sources: they would change with any edit.
        drawn = getattr(item.function, "is_hypothesis_test", False)
        self.tests.append(
            {
                "file": item.path.name,
                "about": " ".join((item.module.__doc__ or "").split("\n\n")[0].split()),
                "name": item.originalname.removeprefix("test_").replace("_", " "),
                "doc": " ".join((item.function.__doc__ or "").split()),
                "case": _readable(call.id) if call else "",
                "drawn": drawn,
                "compared": [] if drawn else self.current,
                "failed": failed,
            }
        )
        self.current = None


def _readable(case: str) -> str:
    """A test's case as its author wrote it: pytest escapes what is not ASCII."""
    return case.encode("ascii").decode("unicode_escape") if "\\" in case else case


def record(target: Path) -> None:
    """Run the published tests and write what was compared; in a process of its own."""
    import pytest

    recorder = Recorder()
    Recorder.pytest_runtest_call = pytest.hookimpl(hookwrapper=True)(Recorder.pytest_runtest_call)  # type: ignore[method-assign]
    recorder.watch()
    options = ["tests/published", "-q", "-p", "no:cacheprovider", "-p", "no:xdist"]
    status = pytest.main([*options, "-o", "addopts=--import-mode=importlib"], plugins=[recorder])
    if status not in (pytest.ExitCode.OK, pytest.ExitCode.TESTS_FAILED):
        sys.exit(int(status))
    target.write_text(json.dumps(recorder.tests), encoding="utf-8")


def page(root: Path) -> str:
    """The text of the page."""
    with tempfile.TemporaryDirectory() as folder:
        target = Path(folder) / "compared.json"
        subprocess.run(
            [sys.executable, "-m", "tools.outside", str(target)],
            cwd=root,
            env={**os.environ, "PYTHONPATH": str(root)},
            stdout=subprocess.DEVNULL,
            check=True,
        )
        tests = json.loads(target.read_text("utf-8"))
    return _page(tests)


def _page(tests: list[dict[str, Any]]) -> str:
    values = sum(len(test["compared"]) for test in tests)
    failing = sum(test["failed"] for test in tests)
    counted = f"Today: {len(tests)} checks with {values} values, {failing} failing.\n"
    parts = [GENERATED + "# Checked against the outside\n", INTRODUCTION + counted, READING]
    for file in dict.fromkeys(test["file"] for test in tests):
        some = [test for test in tests if test["file"] == file]
        title = file.removeprefix("test_").removesuffix(".py").replace("_", " ").capitalize()
        parts += [f"## {title}\n", f"{some[0]['about']}\n"]
        rows: list[Row] = []
        for name in dict.fromkeys(test["name"] for test in some):
            rows += _rows([test for test in some if test["name"] == name])
        parts.append(table(("check", "published", "within", "program"), rows))
    return "\n".join(parts)


def _rows(cases: list[dict[str, Any]]) -> list[Row]:
    """One test: a row when it has one case, else a row for its words and one for each case."""
    first = cases[0]
    spoken = [word.upper() if word in ACRONYMS else word for word in first["name"].split()]
    words = " ".join([spoken[0][0].upper() + spoken[0][1:], *spoken[1:]])
    label = f"{words}. {first['doc']}".strip().removesuffix(".")
    if len(cases) == 1:
        return [_row(f"{label}, {first['case']}" if first["case"] else label, first)]
    return [(f"{label}:", "", "", ""), *(_row(test["case"], test) for test in cases)]


def _row(label: str, test: dict[str, Any]) -> Row:
    if test["failed"]:
        label = f"**fails:** {label}"
    # A comparison that allows nothing says that two of our own ways agree.
    compared = [row for row in test["compared"] if row[1] > 1e-9 * abs(row[0])] or test["compared"]
    if not compared:
        agrees = "agrees at points drawn at random" if test["drawn"] else "agrees"
        return label, "", "", "" if test["failed"] else agrees
    some = compared[:MOST_VALUES]
    columns = [
        [_figure(published, within) for published, within, _ in some],
        [f"{within:.2g}" for _, within, _ in some],
        [_figure(ours, within) for _, within, ours in some],
    ]
    more = f"; … {len(compared) - MOST_VALUES} more" if len(compared) > MOST_VALUES else ""
    within = list(dict.fromkeys(columns[1]))
    shown = "; ".join(within if len(within) == 1 else columns[1])
    return label, "; ".join(columns[0]) + more, f"± {shown}", "; ".join(columns[2]) + more


def _figure(value: float, within: float) -> str:
    """A figure to the digit that its tolerance reaches, five digits at least, ten at most."""
    if abs(value) < 1e-12:
        return "0"
    leading = math.floor(math.log10(abs(value)))
    digits = 5 if within <= 0 else leading + 1 - math.floor(math.log10(within))
    return f"{value:.{min(max(digits, 5), 10)}g}"


if __name__ == "__main__":
    record(Path(sys.argv[1]))
