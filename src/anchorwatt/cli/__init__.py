"""The command line: shows one assessment. It reads, asks, formats and writes; it computes nothing."""

from __future__ import annotations

from anchorwatt.cli.app import app, main

__all__ = ["app", "main"]
