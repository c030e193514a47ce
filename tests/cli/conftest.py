"""The default starter, written and assessed once for the tests that need a real run."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path
from unittest import mock

import pytest
from tests.starters import assess_once
from typer.testing import CliRunner, Result

import anchorwatt
from anchorwatt.cli import app

Run = Callable[..., Result]


@pytest.fixture(scope="session")
def run() -> Run:
    """Run the program in this process, 80 columns wide; commands on equal designs share an assessment."""

    def invoke(*arguments: object) -> Result:
        with mock.patch.object(anchorwatt, "assess", assess_once):
            return CliRunner().invoke(app, [str(one) for one in arguments], env={"COLUMNS": "80"})

    return invoke


@pytest.fixture(scope="session")
def trawler(run: Run, tmp_path_factory: pytest.TempPathFactory) -> Path:
    """The design file of the default starter."""
    path = tmp_path_factory.mktemp("boat") / "trawler.yaml"
    assert run("new", "trawler-14m", path).exit_code == 0
    return path
