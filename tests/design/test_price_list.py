"""Price lists in CSV: what is taken, what is refused, and that nothing is half-taken."""

from __future__ import annotations

from decimal import Decimal
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from anchorwatt import catalogue
from anchorwatt.design.price_list import Taken, catalogue_text, read_price_list
from anchorwatt.design.yard import read_yard
from anchorwatt.errors import BadPrices
from anchorwatt.units import Money

MODULE = "lithium 25.6 V 280 Ah"
HEAD = "kind,name,price,currency,unit,lead_time_days\n"


def listed(folder: Path, text: str | bytes) -> Path:
    path = folder / "list.csv"
    path.write_bytes(text if isinstance(text, bytes) else text.encode("utf-8"))
    return path


def problems(folder: Path, text: str | bytes) -> list[str]:
    with pytest.raises(BadPrices) as refused:
        read_price_list(listed(folder, text))
    return [str(problem) for problem in refused.value.problems]


def test_a_list_is_taken(tmp_path: Path) -> None:
    text = HEAD + f"battery_module,{MODULE},3150.50,USD,each,30\nconductor,70 mm²,11.20,EUR,metre,\n"
    module, cable = read_price_list(listed(tmp_path, text))
    assert (module.price, module.lead_time, module.unit) == (Money(Decimal("3150.50"), "USD"), 30.0, "each")
    assert module.before == catalogue.find("battery_module", MODULE).price
    assert (cable.unit, cable.lead_time) == ("metre", None)


def test_a_supplier_is_taken_and_written(tmp_path: Path) -> None:
    text = f"kind,name,price,currency,supplier\nbattery_module,{MODULE},12,EUR,Ropewalk & Sons: “stores”\n"
    taken = read_price_list(listed(tmp_path, text))
    path = tmp_path / "yard.yaml"
    path.write_text(catalogue_text(taken, "a list"), encoding="utf-8")
    overlay, problems = read_yard([path])
    assert not problems
    assert overlay.records["battery_module", MODULE].supplier == "Ropewalk & Sons: “stores”"


@pytest.mark.parametrize("supplier", ["x" * 81, "a\x07b"])
def test_a_supplier_that_is_no_name_is_told(tmp_path: Path, supplier: str) -> None:
    text = f"kind,name,price,currency,supplier\nbattery_module,{MODULE},12,EUR,{supplier}\n"
    assert ":2: supplier: found" in problems(tmp_path, text)[0]


@pytest.mark.parametrize("delimiter", [",", ";", "\t"])
def test_columns_stand_in_any_order_and_are_set_apart_as_is_usual(tmp_path: Path, delimiter: str) -> None:
    rows = [["currency", "price", "Name", "kind"], ["EUR", "1 450", MODULE, "battery module"]]
    text = "\ufeff" + "\r\n".join(delimiter.join(row) for row in rows) + "\r\n\r\n"
    (module,) = read_price_list(listed(tmp_path, text))
    assert str(module.price) == "1 450 EUR"


@pytest.mark.parametrize(
    ("text", "told"),
    [
        (HEAD + f'battery_module,{MODULE},"1,234",EUR,,\n', ':2: price: found "1,234", where a comma may mean'),
        (HEAD + f"battery_module,{MODULE},12,50,EUR,,\n", ":2: found 7 columns; allowed: 6"),
        (HEAD + f"battery_module,{MODULE},12,,,\n", 'found a price of "12" without a currency'),
        (HEAD + f"battery_module,{MODULE},12,EURO,,\n", ":2: price: found"),
        (HEAD + f"battery_module,{MODULE},,EUR,,\n", ":2: price: found nothing"),
        (HEAD + f"battery_module,{MODULE},0,EUR,,\n", "allowed: more than nothing"),
        (HEAD + f"battery_module,{MODULE},-5,EUR,,\n", ":2: price: found"),
        (HEAD + f"battery_module,{MODULE},12,EUR,metre,\n", ':2: unit: found "metre"; allowed: each'),
        (HEAD + "conductor,70 mm²,12,EUR,each,\n", ':2: unit: found "each"; allowed: metre'),
        (HEAD + f"battery_module,{MODULE},12,EUR,,soon\n", ':2: lead_time_days: found "soon"'),
        (HEAD + f"battery_module,{MODULE},12,EUR,,2000\n", ':2: lead_time_days: found "2000"'),
        (HEAD + "batery_module,x,12,EUR,,\n", ':2: kind: found no kind "batery_module", perhaps “battery_module”'),
        (HEAD + "battery_module,lithium 25.6 V 281 Ah,12,EUR,,\n", f"perhaps “{MODULE}”"),
        (
            HEAD + f"battery_module,{MODULE},12,EUR,,\n" * 2,
            f":3: name: found a second price of battery_module “{MODULE}”; the first is on line 2",
        ),
        ("kind,name,price\n", ":1: found no column currency"),
        ("kind,name,price,currency,colour\n", ":1: colour: found an unknown column"),
        ("kind,name,price,currency,name\n", ":1: name: found a second column"),
        (HEAD, "found no rows"),
        ("", "found no rows"),
        (HEAD + '"battery_module,x\n', "what is not CSV"),
        (HEAD.encode() + b"\xff\n", ":2: found a byte 0xff that is not UTF-8"),
    ],
)
def test_what_is_wrong_is_told_with_line_and_column(tmp_path: Path, text: str | bytes, told: str) -> None:
    assert any(told in one for one in problems(tmp_path, text)), problems(tmp_path, text)


def test_everything_that_is_wrong_is_told_at_once(tmp_path: Path) -> None:
    text = HEAD + f"battery_module,{MODULE},0,EUR,,\nnothing,x,1,EUR,,\nconductor,70 mm²,1,EUR,each,\n"
    assert len(problems(tmp_path, text)) == 3


def test_a_list_that_is_not_there(tmp_path: Path) -> None:
    with pytest.raises(BadPrices, match="no such file"):
        read_price_list(tmp_path / "lost.csv")
    with pytest.raises(BadPrices, match="a folder"):
        read_price_list(tmp_path)


PRICES = st.decimals(min_value=Decimal("0.01"), max_value=Decimal(999_999), places=2)
PARTS = st.sampled_from(
    [(kind, name) for kind in ("battery_module", "belt", "conductor", "inverter") for name in catalogue.names(kind)]
)


@given(st.dictionaries(PARTS, PRICES, min_size=1, max_size=8), st.sampled_from(["EUR", "USD", "JPY"]))
def test_the_file_that_is_written_says_what_was_taken(
    tmp_path_factory: pytest.TempPathFactory, found: dict[tuple[str, str], Decimal], currency: str
) -> None:
    taken = [Taken(*part, Money(amount, currency), 3.0, None) for part, amount in found.items()]
    path = tmp_path_factory.mktemp("yard") / "yard.yaml"
    path.write_text(catalogue_text(taken, "a list"), encoding="utf-8")
    overlay, problems = read_yard([path])
    assert problems == []
    assert {(kind, name) for kind, rows in overlay.rows.items() for name in rows} == found.keys()
    for part, amount in found.items():
        assert overlay.records[part].price == Money(amount, currency)
        assert overlay.records[part].lead_time == 3.0 * 86_400.0
