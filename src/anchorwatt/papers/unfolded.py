"""Plain data, which may be nested, as flat tables for spreadsheets."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Any

Plain = dict[str, Any]
_Lists = list[tuple[str, Sequence[Mapping[str, Any]]]]


def unfolded(name: str, plain: Mapping[str, Any]) -> dict[str, list[Plain]]:
    """Single values as rows of key and value under the name; each list of mappings as a table of its own.

    A list within a row of a list becomes a further table, whose rows begin with the first column of what they are of.

    Example
    -------
    >>> unfolded("bank", {"cells": 8, "years": [{"year": 1, "nights": [{"kWh": 2.0}]}]})
    {'bank': [{'key': 'cells', 'value': 8}],
     'bank_years': [{'year': 1}],
     'bank_years_nights': [{'of.year': 1, 'kWh': 2.0}]}
    """
    single, lists = _flat(plain)
    tables = {name: [{"key": key, "value": value} for key, value in single.items()]} if single else {}
    for path, rows in lists:
        _add(tables, f"{name}_{path}", rows, {})
    return tables


def _add(tables: dict[str, list[Plain]], name: str, rows: Sequence[Mapping[str, Any]], of: Plain) -> None:
    for row in rows:
        single, lists = _flat(row)
        tables.setdefault(name, []).append(of | single)
        first = {f"of.{key}": value for key, value in list(single.items())[:1]}
        for path, inner in lists:
            _add(tables, f"{name}_{path}", inner, of | first)


def _flat(plain: Mapping[str, Any]) -> tuple[Plain, _Lists]:
    """Single values under dotted keys, and the lists of mappings by their names."""
    single: Plain = {}
    lists: _Lists = []
    for key, value in plain.items():
        if isinstance(value, Mapping):
            inner, further = _flat(value)
            single |= {f"{key}.{path}": one for path, one in inner.items()}
            lists += [(f"{key}_{path}", rows) for path, rows in further]
        elif isinstance(value, (list, tuple)) and value and isinstance(value[0], Mapping):
            lists.append((key, value))
        elif isinstance(value, (list, tuple)):
            single[key] = "; ".join(str(one) for one in value)
        else:
            single[key] = value
    return single, lists
