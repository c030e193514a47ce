"""Generated files are as fresh as what they are generated from; `make docs` writes them again."""

from __future__ import annotations

import functools
import re
import sys
from pathlib import Path

import pytest

ROOT = Path(__file__).parent.parent
sys.path.insert(0, str(ROOT))

from tools import outside, shown, write_generated  # noqa: E402

quick = functools.cache(write_generated.quick)
FOLDERS = ("docs/theory", "docs/reference", "docs/reference/catalogue")
SCHEMA = Path("src/anchorwatt/design/anchorwatt.schema.json")
NUMBER = re.compile(r"\d+(?:\.\d+)?")


def there(folder: str) -> list[Path]:
    return sorted(path.relative_to(ROOT) for path in (ROOT / folder).glob("*") if path.is_file())


@pytest.mark.parametrize("path", [SCHEMA, *(path for folder in FOLDERS for path in there(folder))], ids=str)
def test_page_is_fresh(path: Path) -> None:
    assert (ROOT / path).read_text("utf-8") == quick().get(path, "left over"), "run: make docs"


def test_no_page_is_missing() -> None:
    assert [path for path in quick() if not (ROOT / path).exists()] == [], "run: make docs"


@pytest.mark.parametrize("folder", FOLDERS)
def test_no_page_is_left_over(folder: str) -> None:
    assert set(there(folder)) <= quick().keys()


def close(one: str, other: str) -> bool:
    """Whether two texts say the same: equal words, and figures that a machine may round otherwise."""
    if NUMBER.sub("#", " ".join(one.split())) != NUMBER.sub("#", " ".join(other.split())):
        return False
    pairs = zip(NUMBER.findall(one), NUMBER.findall(other), strict=True)
    return all(float(a) == pytest.approx(float(b), rel=0.02, abs=1.0) for a, b in pairs)


def test_outside_checks_are_fresh() -> None:
    assert close((ROOT / "docs/outside-checks.md").read_text("utf-8"), outside.page(ROOT)), "run: make docs"


@pytest.mark.parametrize("name", shown.PAGES)
def test_what_is_shown_is_what_is_printed(name: str) -> None:
    text = (ROOT / name).read_text("utf-8")
    assert close(text, shown.page(text)), "run: make docs"


def test_the_picture_of_the_readme_is_there() -> None:
    """Not drawn again here; `make docs` does."""
    assert "The bank" in (ROOT / write_generated.PICTURE).read_text("utf-8")


def test_close_sees_a_changed_word_and_a_changed_figure() -> None:
    assert close("holds 10.01 h", "holds   10.00 h")
    assert not close("holds 10 h", "fails 10 h")
    assert not close("holds 10 h", "holds 14 h")
