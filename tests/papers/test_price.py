"""What the price command shows, and to whom; and what import-prices and catalogue --with do."""

from __future__ import annotations

import csv
import json
from decimal import Decimal
from pathlib import Path
from typing import Any

import pytest
from tests.cli.conftest import Run

ENDS = ("_EUR", "_pct", "_hours", "_days", "_kg", "count", "spares")
ON = ("--today", "2026-11-25")
FOR_THE_YARD_ALONE = ("margin", "commission", "Net", "net_", "an hour")
MODULE = "lithium 25.6 V 280 Ah"


@pytest.fixture(scope="module")
def pages(run: Run, trawler: Path) -> dict[str, str]:
    """The four pages."""
    views: dict[str, tuple[str, ...]] = {"customer": (), "yard": ("--cost",)}
    told = {}
    for name, options in views.items():
        for units in ("si", "us"):
            found = run("price", trawler, *ON, *options, "--units", units)
            assert found.exit_code == 0, found.output
            told[f"{name} {units}"] = found.stdout
    return told


def plain(run: Run, path: Path, *options: str) -> dict[str, Any]:
    found = run("price", path, *ON, "--json", *options)
    assert found.exit_code == 0, found.output
    made: dict[str, Any] = json.loads(found.stdout)
    return made


def test_pages_fit_80_columns_and_carry_the_cautions(pages: dict[str, str]) -> None:
    for page in pages.values():
        assert max(len(line) for line in page.splitlines()) <= 80
        assert "it does not certify" in page


def test_the_customer_sees_no_margin_and_the_yard_does(pages: dict[str, str]) -> None:
    assert not [word for word in FOR_THE_YARD_ALONE if word in pages["customer si"]]
    assert "Margin on labour" in pages["yard si"]
    assert "Broker's commission" in pages["yard si"]


def test_both_views_come_to_the_same_sum(pages: dict[str, str]) -> None:
    def last(page: str, start: str) -> str:
        (line,) = [line for line in page.splitlines() if line.strip().startswith(start)]
        return line.strip().removeprefix(start).removesuffix("EUR").strip()

    assert last(pages["customer si"], "To pay") == last(pages["yard si"], "The customer pays")


def test_json_keeps_them_apart_too(run: Run, trawler: Path) -> None:
    customer = plain(run, trawler)
    assert "cost" not in customer
    assert not [word for word in ("margin", "commission") if word in json.dumps(customer["parts"])]
    cost = plain(run, trawler, "--cost")["cost"]
    assert cost["labour"]
    assert cost["net_EUR"] + cost["commission_EUR"] == pytest.approx(customer["price_EUR"])


def test_figures_sum_to_the_cent_as_they_are_shown(run: Run, trawler: Path) -> None:
    found = plain(run, trawler)
    parts, labour, tax, total = (Decimal(str(found[f"{key}_EUR"])) for key in ("parts", "labour", "tax", "total"))
    assert parts + labour + tax == total


def test_every_key_of_a_figure_ends_in_its_unit(run: Run, trawler: Path) -> None:
    def walk(node: Any) -> None:
        if isinstance(node, dict):
            for key, value in node.items():
                number = isinstance(value, (int, float)) and not isinstance(value, bool)
                assert not number or key.endswith(ENDS), key
                walk(value)
        elif isinstance(node, list):
            for one in node:
                walk(one)

    walk(plain(run, trawler, "--cost"))


def test_what_is_too_late_is_named(run: Run, trawler: Path) -> None:
    assert {one["too_late_days"] for one in plain(run, trawler)["parts"]} == {None}
    late = json.loads(run("price", trawler, "--today", "2027-01-11", "--json").stdout)
    assert {one["name"]: one["too_late_days"] for one in late["parts"] if one["too_late_days"]} == {
        "variable-speed 24 kBtu/h": 14
    }
    assert "too late by 14 d" in run("price", trawler, "--today", "2027-01-11", "--cost").stdout


def test_packages_are_differences(run: Run, trawler: Path) -> None:
    (one,) = plain(run, trawler)["packages"]
    assert one["changes"] == {"dc.bank.parallel": "3"}
    assert one["more_to_pay_EUR"] > 0.0
    assert one["more_hold_hours"] > 0.0


def test_tables_as_csv_keep_cost_for_the_yard(run: Run, trawler: Path, tmp_path: Path) -> None:
    assert run("price", trawler, *ON, "--csv", tmp_path / "customer").exit_code == 0
    assert sorted(path.name for path in (tmp_path / "customer").iterdir()) == ["packages.csv", "parts.csv"]
    assert run("price", trawler, *ON, "--cost", "--csv", tmp_path / "yard").exit_code == 0
    with (tmp_path / "yard" / "bill.csv").open(newline="", encoding="utf-8") as file:
        bill = list(csv.DictReader(file))
    assert {"tags", "name", "count", "cost_EUR", "order_by"} <= bill[0].keys()


def test_a_day_that_is_none_is_refused(run: Run, trawler: Path) -> None:
    found = run("price", trawler, "--today", "tomorrow")
    assert found.exit_code == 2
    assert "year first" in found.output


def test_a_list_is_taken_and_a_design_uses_it(run: Run, trawler: Path, tmp_path: Path) -> None:
    (tmp_path / "list.csv").write_text(f"kind,name,price,currency\nbattery_module,{MODULE},9000,EUR\n")
    yard = trawler.parent / "yard.yaml"
    found = run("import-prices", tmp_path / "list.csv", "--out", yard)
    assert found.exit_code == 0, found.output
    assert "9 000 EUR" in found.stdout
    design = trawler.parent / "with-yard.yaml"
    design.write_text(trawler.read_text(encoding="utf-8") + "\ncatalogue: [yard.yaml]\n", encoding="utf-8")
    bill = {one["name"]: one for one in plain(run, design, "--cost")["cost"]["bill"]}
    assert bill[MODULE]["unit_cost_EUR"] == 9000.0
    generic = {one["name"]: one for one in plain(run, trawler, "--cost")["cost"]["bill"]}
    assert generic[MODULE]["unit_cost_EUR"] == 3650.0


def test_only_the_yards_view_names_who_sells_a_part(run: Run, trawler: Path) -> None:
    text = f"battery_module:\n  {MODULE}: {{like: {MODULE}, supplier: Ropewalk}}\n"
    (trawler.parent / "sellers.yaml").write_text(text, encoding="utf-8")
    design = trawler.parent / "with-sellers.yaml"
    design.write_text(trawler.read_text(encoding="utf-8") + "\ncatalogue: [sellers.yaml]\n", encoding="utf-8")
    bill = {one["name"]: one["supplier"] for one in plain(run, design, "--cost")["cost"]["bill"]}
    assert bill[MODULE] == "Ropewalk"
    assert "Ropewalk" not in json.dumps(plain(run, design)["parts"])


def test_the_yards_cable_price_counts_too(run: Run, trawler: Path) -> None:
    (trawler.parent / "cable.yaml").write_text("conductor:\n  16 AWG: {like: 16 AWG, price: 100 EUR}\n")
    design = trawler.parent / "with-cable.yaml"
    design.write_text(trawler.read_text(encoding="utf-8") + "\ncatalogue: [cable.yaml]\n", encoding="utf-8")
    bill = {one["name"]: one for one in plain(run, design, "--cost")["cost"]["bill"]}
    assert bill["16 AWG"]["unit_cost_EUR"] == 100.0
    generic = {one["name"]: one for one in plain(run, trawler, "--cost")["cost"]["bill"]}
    assert generic["16 AWG"]["unit_cost_EUR"] < 1.0


def test_a_faulty_list_writes_nothing(run: Run, tmp_path: Path) -> None:
    (tmp_path / "list.csv").write_text(
        f"kind,name,price,currency\nbattery_module,{MODULE},9000,EUR\nbattery_module,{MODULE},9000,EUR\n"
    )
    found = run("import-prices", tmp_path / "list.csv", "--out", tmp_path / "yard.yaml")
    assert found.exit_code == 2
    assert "the first is on line 2" in found.output
    assert not (tmp_path / "yard.yaml").exists()


def test_a_file_that_is_there_is_kept_unless_asked(run: Run, tmp_path: Path) -> None:
    (tmp_path / "list.csv").write_text(f"kind,name,price,currency\nbattery_module,{MODULE},9000,EUR\n")
    out = tmp_path / "yard.yaml"
    out.write_text("mine")
    assert run("import-prices", tmp_path / "list.csv", "--out", out).exit_code == 2
    assert out.read_text() == "mine"
    assert run("import-prices", tmp_path / "list.csv", "--out", out, "--replace", "--json").exit_code == 0
    assert "9 000 EUR" in out.read_text()


def test_the_catalogue_can_be_seen_with_a_file_over_it(run: Run, tmp_path: Path) -> None:
    yard = tmp_path / "yard.yaml"
    yard.write_text(f"battery_module:\n  ours: {{like: {MODULE}, price: 1 EUR}}\n")
    assert "ours" in run("catalogue", "battery_module", "--with", yard).stdout
    assert "ours" not in run("catalogue", "battery_module").stdout
    yard.write_text("battery_module:\n  ours: {}\n")
    found = run("catalogue", "--with", yard)
    assert found.exit_code == 2
    assert "yard.yaml:2: battery_module.ours" in found.output
