"""The catalogue's files, read fast and read by the letter of YAML 1.2."""

from __future__ import annotations

from importlib import resources
from typing import Any

import pytest
import yaml
from ruamel.yaml import YAML

FILES = sorted(
    entry.name for entry in resources.files("anchorwatt.catalogue").iterdir() if entry.name.endswith(".yaml")
)


def with_types(value: Any) -> Any:
    if isinstance(value, dict):
        return {key: with_types(one) for key, one in value.items()}
    if isinstance(value, list):
        return [with_types(one) for one in value]
    return type(value).__name__, value


@pytest.mark.parametrize("name", FILES)
def test_both_readers_read_the_same(name: str) -> None:
    text = resources.files("anchorwatt.catalogue").joinpath(name).read_text(encoding="utf-8")
    by_the_letter = YAML(typ="safe", pure=True).load(text)
    assert with_types(yaml.load(text, Loader=yaml.SafeLoader)) == with_types(by_the_letter)
