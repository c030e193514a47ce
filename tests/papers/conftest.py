"""The program and the default starter, for tests of pages that are told by a real run."""

from __future__ import annotations

from tests.cli.conftest import run, trawler

__all__ = ["run", "trawler"]
