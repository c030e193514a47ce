"""What the docs say can be done can be done."""

from __future__ import annotations

import contextlib
import io
import re
import shlex
from pathlib import Path
from typing import Any

import pytest
import typer

from anchorwatt.cli import app
from anchorwatt.design import new, parse, read, specify, starters

ROOT = Path(__file__).parent.parent
PAGES = sorted([ROOT / "README.md", ROOT / "CONTRIBUTING.md", ROOT / "CHANGELOG.md", *(ROOT / "docs").rglob("*.md")])
BY_HAND = [page for page in PAGES if "Written by `make docs`" not in page.read_text("utf-8")]
GROUP: Any = typer.main.get_command(app)


def named(pages: list[Path]) -> list[str]:
    return [str(page.relative_to(ROOT)) for page in pages]


def blocks(page: Path, language: str) -> list[str]:
    return re.findall(rf"^```{language}\n(.*?)^```", page.read_text("utf-8"), re.MULTILINE | re.DOTALL)


def commands(page: Path) -> list[str]:
    """Every command line of the program that a page shows: in a block, or between backticks."""
    text = page.read_text("utf-8")
    found = re.findall(r"^\$? ?(anchorwatt .+)$", "\n".join(blocks(page, "(?:console|sh)")), re.MULTILINE)
    return found + [one for one in re.findall(r"`(anchorwatt [^`]+)`", text) if one.split()[1].islower()]


SHOWN = [(f"{page.relative_to(ROOT)}: {line}", line) for page in BY_HAND for line in commands(page)]


@pytest.mark.parametrize("line", [line for _, line in SHOWN], ids=[name for name, _ in SHOWN])
def test_every_command_shown_exists_with_its_options(line: str) -> None:
    _, name, *rest = shlex.split(line.split(">")[0])
    if name.startswith("-"):
        return
    known = {option for one in GROUP.commands[name].params for option in one.opts}
    assert {word for word in rest if word.startswith("--")} <= known


@pytest.mark.parametrize("name", sorted(GROUP.commands))
def test_every_command_is_in_the_readme_and_the_reference(name: str) -> None:
    for page in ("README.md", "docs/reference/command-line.md", "CHANGELOG.md"):
        assert name in (ROOT / page).read_text("utf-8")


@pytest.mark.parametrize("name", starters())
def test_every_starter_is_in_the_readme(name: str) -> None:
    assert name in (ROOT / "README.md").read_text("utf-8")


@pytest.mark.parametrize("page", PAGES, ids=named(PAGES))
def test_links_lead_somewhere(page: Path) -> None:
    for target in re.findall(r"\]\(([^)]+)\)", page.read_text("utf-8")):
        if target.startswith("https://"):
            continue
        file, _, anchor = target.partition("#")
        found = (page.parent / file).resolve() if file else page
        assert found.exists(), target
        if anchor:
            heads = re.findall(r"^#+ (.+)$", found.read_text("utf-8"), re.MULTILINE)
            assert anchor in {head.lower().replace(" ", "-") for head in heads}, target


@pytest.mark.parametrize("page", PAGES, ids=named(PAGES))
def test_no_page_names_a_path_of_a_machine(page: Path) -> None:
    assert not re.search(r"/(work|tmp|home|root|Users)/", page.read_text("utf-8"))


def test_the_first_design_of_the_how_to_is_sound() -> None:
    (text,) = blocks(ROOT / "docs/how-to/start-from-what-you-know.md", "yaml")
    assert len(specify(parse(text)).estimates) > 20


def replaced(text: str, section: str) -> str:
    """The design of the how-to with one of its top sections, or a part of it, put in another's place."""
    key = section.split(":")[0]
    return re.sub(rf"^{key}:\n(?: .*\n)+", section, text, flags=re.MULTILINE)


@pytest.mark.parametrize("number", [0, 1])
def test_the_places_of_the_weather_how_to_are_read(number: int, tmp_path: Path) -> None:
    (text,) = blocks(ROOT / "docs/how-to/start-from-what-you-know.md", "yaml")
    place = blocks(ROOT / "docs/how-to/bring-your-own-weather.md", "yaml")[number]
    (tmp_path / "my-station.epw").touch()
    (tmp_path / "boat.yaml").write_text(replaced(text, place), "utf-8")
    assert read(tmp_path / "boat.yaml").place.sea is not None


def test_the_part_of_the_parts_how_to_is_read() -> None:
    (text,) = blocks(ROOT / "docs/how-to/start-from-what-you-know.md", "yaml")
    (part,) = blocks(ROOT / "docs/how-to/use-your-own-parts.md", "yaml")
    whole = part.replace("dc:\n", "dc:\n  nominal_voltage: 24 V\n") + "    series: 2\n    parallel: 2\n"
    assert specify(parse(replaced(text, whole))).bank.mass == pytest.approx(4 * 21.0)


PYTHON = [(f"{page.relative_to(ROOT)} {n}", code) for page in BY_HAND for n, code in enumerate(blocks(page, "python"))]


@pytest.mark.parametrize("code", [code for _, code in PYTHON], ids=[name for name, _ in PYTHON])
def test_python_of_the_docs_runs(code: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    new("trawler-14m", tmp_path / "boat.yaml")
    monkeypatch.chdir(tmp_path)
    with contextlib.redirect_stdout(io.StringIO()):
        exec(code, {})
