"""What the weight command shows."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from pathlib import Path

import pytest
from tests.cli.conftest import Run
from tests.papers import fake
from tests.simulation import boats

from anchorwatt.assessment.weight import WeightStory, weight_story
from anchorwatt.cli.terminal import show
from anchorwatt.design.specification import Point, TakenOut
from anchorwatt.papers import weight as pages
from anchorwatt.sizing.weight import weight
from anchorwatt.units import System

ENDS = ("_deg", "_cm", "_m", "_kg", "_pct")


def story() -> WeightStory:
    bank = boats.item(
        "dc.bank.module", "battery_module", "an invented module of some length", 2, 60.0, 1.0, "EUR", tag="G1"
    )
    charger = boats.item("ac.charger.unit", "charger", "an invented charger", 1, 13.0, 1.0, "EUR", tag="T1")
    items = (replace(bank, position=Point(6.0, 0.6, -0.2), placed=True), charger)
    old = TakenOut("replaced bank: an invented battery", 300.0, Point(3.0, -0.4, -0.2), True)
    boat = boats.boat(1, items=items, removed=(old,))
    return weight_story(boat, weight(boat), lambda _: "typed")


MADE = fake.assessment(weight=story())


@pytest.mark.parametrize("system", ["si", "us"])
def test_the_page_fits_80_columns(
    system: System, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    show(pages.screen(MADE, system))
    lines = capsys.readouterr().out.splitlines()
    assert max(len(line) for line in lines) <= 80
    text = " ".join(" ".join(lines).split())
    for words in ("is brought aboard", "is taken ashore", "heel", "at the bow", "metacentric height"):
        assert words in text
    assert "6.50*" not in text
    assert all(caution in text for caution in story().cautions)


def test_a_place_that_nobody_typed_has_a_star(capsys: pytest.CaptureFixture[str]) -> None:
    show(pages.screen(MADE, "si"))
    rows = {line.split()[0]: line for line in capsys.readouterr().out.splitlines() if line.strip()[:2] in ("G1", "T1")}
    assert "*" in rows["T1"]
    assert "*" not in rows["G1"]


def test_keys_end_in_their_unit() -> None:
    found = pages.plain(MADE)
    figures = {key for key, value in found.items() if isinstance(value, float)}
    assert all(key.endswith(ENDS) for key in figures)
    assert all(key.endswith(ENDS) for part in found["parts"] for key, value in part.items() if isinstance(value, float))


def test_moments_add_up_to_the_heel() -> None:
    found, boat = pages.plain(MADE), boats.boat(1)
    across = sum(part["moment_to_starboard_kg_m"] for part in found["parts"])
    stiff = found["displacement_kg"] * found["metacentric_height_m"]
    assert math.tan(math.radians(found["heel_deg"])) == pytest.approx(across / stiff, rel=1e-4)
    along = sum(part["moment_forward_of_flotation_kg_m"] for part in found["parts"])
    assert found["trim_cm"] == pytest.approx(along / found["moment_to_trim_one_centimetre_kg_m"], rel=1e-4)
    assert found["at_bow_cm"] - found["at_stern_cm"] == pytest.approx(found["trim_cm"], rel=1e-4)
    assert boat.flotation > 0.0


def test_the_command(run: Run, trawler: Path, tmp_path: Path) -> None:
    picture = tmp_path / "floats.svg"
    done = run("weight", trawler, "--json", "--csv", tmp_path, "--plot", picture)
    assert done.exit_code == 0, done.output
    assert "heel_deg" in json.loads(done.stdout)
    assert (tmp_path / "weight.csv").read_text().startswith("tag,name,mass_kg,forward_m")
    assert picture.read_text().startswith("<svg")


def test_one_answer(run: Run, trawler: Path) -> None:
    done = run("weight", trawler, "--why", "heel_deg")
    assert done.exit_code == 0, done.output
    assert "metacentric height before" in done.stdout
