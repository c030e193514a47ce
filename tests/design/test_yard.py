"""The yard's own catalogue files: what they lay over the generic one, for whom, and what is refused."""

from __future__ import annotations

from pathlib import Path

import pytest
from tests.design.sample import SAMPLE

from anchorwatt import catalogue, design
from anchorwatt.catalogue.overlay import NOTHING, current
from anchorwatt.errors import BadDesign

MODULE = "lithium 12.8 V 200 Ah"
YARD = f"""battery_module:
  {MODULE}: {{like: {MODULE}, price: 1 234.50 USD, lead_time: 5 d}}
"""


def boat(folder: Path, *yards: str, names: list[str] | None = None) -> Path:
    """A design beside its catalogue files."""
    for number, text in enumerate(yards):
        (folder / f"yard{number}.yaml").write_text(text, encoding="utf-8")
    listed = ", ".join(names or [f"yard{number}.yaml" for number in range(len(yards))])
    path = folder / "boat.yaml"
    path.write_text(f"{SAMPLE}\ncatalogue: [{listed}]\n", encoding="utf-8")
    return path


def problems(path: Path) -> list[str]:
    with pytest.raises(BadDesign) as refused:
        design.read(path)
    return [str(problem) for problem in refused.value.problems]


def price_of_module(made: design.Design) -> tuple[float, str]:
    (item,) = [item for item in design.specify(made).items if item.kind == "battery_module"]
    return item.price, item.currency


def test_the_yards_price_is_the_designs(tmp_path: Path) -> None:
    made = design.read(boat(tmp_path, YARD))
    assert price_of_module(made) == (1234.5, "USD")
    (item,) = [item for item in design.specify(made).items if item.kind == "battery_module"]
    assert item.lead_time == 5 * 86_400.0


def test_a_design_read_afterwards_does_not_see_it(tmp_path: Path) -> None:
    before = price_of_module(design.parse(SAMPLE))
    generic = catalogue.find("battery_module", MODULE)
    with_yard = design.read(boat(tmp_path, YARD))
    assert price_of_module(design.parse(SAMPLE)) == before
    assert price_of_module(with_yard) == (1234.5, "USD")  # and keeps it
    assert catalogue.find("battery_module", MODULE) is generic
    assert current() is NOTHING


def test_a_file_that_is_refused_leaves_nothing_behind(tmp_path: Path) -> None:
    problems(boat(tmp_path, YARD.replace("1 234.50 USD", "1234.50")))
    assert current() is NOTHING


def test_an_edit_keeps_it(tmp_path: Path) -> None:
    made = design.edit(design.read(boat(tmp_path, YARD)), "dc.bank.parallel", 3)
    assert price_of_module(made) == (1234.5, "USD")


def test_its_source_says_what_it_changed_and_where(tmp_path: Path) -> None:
    made = design.read(boat(tmp_path, YARD))
    assert made.dc.bank.module.source.startswith("invented; price, lead_time from yard0.yaml")


def test_two_designs_with_different_yards_differ(tmp_path: Path) -> None:
    cheap = design.read(boat(tmp_path, YARD))
    dear = design.read(boat(tmp_path, YARD.replace("1 234.50", "2 234.50")))
    assert cheap.document.data == dear.document.data
    assert cheap != dear


def test_a_row_of_its_own_may_be_like_another_of_the_files(tmp_path: Path) -> None:
    first = "battery_module:\n  ours: {like: theirs, mass: 20 kg}\n"
    second = f"battery_module:\n  theirs: {{like: {MODULE}, price: 900 EUR}}\n"
    path = boat(tmp_path, first, second)
    path.write_text(path.read_text().replace(MODULE, "ours"), encoding="utf-8")
    module = design.read(path).dc.bank.module
    assert (module.name, float(module.mass), str(module.price)) == ("ours", 20.0, "900 EUR")


def test_a_nested_part_is_taken_from_the_file_too(tmp_path: Path) -> None:
    name = "lithium iron phosphate"
    yard = f"cell:\n  {name}: {{like: {name}, nominal_voltage: 3.21 V}}\n"
    assert float(design.read(boat(tmp_path, yard)).dc.bank.module.cell.nominal_voltage) == 3.21


@pytest.mark.parametrize(
    ("yard", "told"),
    [
        pytest.param("batery_module: {}\n", "yard0.yaml:1: batery_module: found an unknown kind", id="unknown kind"),
        pytest.param("batery_module: {}\n", "perhaps “battery_module”", id="nearest kind"),
        pytest.param(
            f"battery_module:\n  ours: {{like: {MODULE}, colour: red}}\n",
            "yard0.yaml:2: battery_module.ours.colour: found an unknown key “colour”",
            id="unknown field",
        ),
        pytest.param(
            f"battery_module:\n  ours:\n    like: {MODULE}\n    mass: 20 ohm\n",
            "yard0.yaml:4: battery_module.ours.mass: found",
            id="bad unit",
        ),
        pytest.param(
            f"battery_module:\n  ours: {{like: {MODULE}, price: 900}}\n",
            "battery_module.ours.price: found the bare number 900 without a currency",
            id="price without a currency",
        ),
        pytest.param(
            f"battery_module:\n  ours: {{like: {MODULE}}}\n  ours: {{like: {MODULE}}}\n",
            "yard0.yaml:3: battery_module.ours: found a second “ours”; the first is on line 2",
            id="the same row twice in a file",
        ),
        pytest.param("battery_module:\n  ours: {like: nothing}\n", "found no battery module “nothing”", id="like what"),
        pytest.param("battery_module:\n  ours: {like: 7}\n", "ours.like: found the bare number 7", id="like a number"),
        pytest.param(
            "battery_module:\n  a: {like: b}\n  b: {like: a}\n", "found a circle: a → b → a", id="likes in a circle"
        ),
        pytest.param("battery_module:\n  ours: 7\n", "ours: found the bare number 7", id="no row"),
        pytest.param("battery_module: 7\n", "battery_module: found the bare number 7", id="no rows"),
        pytest.param(
            f"battery_module:\n  ours: {{like: {MODULE}, name: x}}\n", "found a name inside a row", id="a name inside"
        ),
        pytest.param("", "allowed: a mapping of kinds", id="nothing"),
    ],
)
def test_what_is_wrong_is_told_with_file_line_and_key(tmp_path: Path, yard: str, told: str) -> None:
    assert any(told in one for one in problems(boat(tmp_path, yard))), problems(boat(tmp_path, yard))


def test_the_same_row_in_two_files_is_a_clash(tmp_path: Path) -> None:
    (told,) = problems(boat(tmp_path, YARD, YARD))
    assert "yard1.yaml:2" in told
    assert "the first is at" in told
    assert "yard0.yaml:2" in told


def test_a_file_that_is_not_there_is_told_at_the_designs_line(tmp_path: Path) -> None:
    (told,) = problems(boat(tmp_path, names=["lost.yaml"]))
    assert "boat.yaml:" in told
    assert "catalogue.0: found no such file: lost.yaml" in told


def test_a_file_named_twice_is_refused(tmp_path: Path) -> None:
    (told,) = problems(boat(tmp_path, YARD, names=["yard0.yaml", "yard0.yaml"]))
    assert "a second time" in told
