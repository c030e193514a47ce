"""The import-prices command: a price list becomes a catalogue file of the yard."""

from __future__ import annotations

from pathlib import Path
from typing import TYPE_CHECKING, Any

from anchorwatt.errors import CannotWrite
from anchorwatt.papers.page import Content, Paragraph, page, section, table

if TYPE_CHECKING:
    from collections.abc import Sequence

    from anchorwatt.design.price_list import Taken

Plain = dict[str, Any]


def take(path: Path, out: Path, replace: bool) -> tuple[Taken, ...]:
    """Read a price list and write the catalogue file that it makes.

    Raises
    ------
    BadPrices
        Something is wrong in the list; nothing was written.
    CannotWrite
        The file is there already, or the disk refuses; nothing was changed.
    """
    from anchorwatt.cli.files import write_all
    from anchorwatt.design.price_list import catalogue_text, read_price_list

    taken = read_price_list(path)
    if out.exists() and not replace:
        raise CannotWrite(out, "there is a file already; replace it on purpose, or choose another name")
    write_all({out: catalogue_text(taken, path.name)})
    return taken


def screen(taken: Sequence[Taken], out: Path) -> Content:
    """What was taken."""
    rows = [
        (
            one.name,
            one.kind.replace("_", " "),
            "—" if one.before is None else str(one.before),
            str(one.price),
            "—" if one.lead_time is None else f"{one.lead_time:g}",
            one.supplier or "—",
        )
        for one in taken
    ]
    heads = ("part", "kind", "generic", "yours", "lead time\ndays", "supplier")
    words = f"{len(taken)} prices taken into {out}. Name it in a design: catalogue: [{out.name}]"
    return page(section("Prices taken", table(heads, ("<", "<", ">", ">", ">", "<"), rows), Paragraph(words)))


def plain(taken: Sequence[Taken], out: Path) -> Plain:
    """What was taken, as plain data."""
    return {
        "catalogue": str(out),
        "taken": [
            {
                "kind": one.kind,
                "name": one.name,
                "unit": one.unit,
                "price": str(one.price),
                "price_before": None if one.before is None else str(one.before),
                "lead_time_days": one.lead_time,
                "supplier": one.supplier or None,
            }
            for one in taken
        ],
    }
