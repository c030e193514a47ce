"""Drawings that a yard builds from: what stands on each sheet, laid out from the assessment alone."""
