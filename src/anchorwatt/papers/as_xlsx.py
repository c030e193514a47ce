"""Tables as a workbook: one sheet a table, figures as figures, headings that end in their unit."""

from __future__ import annotations

import datetime
import io
from collections.abc import Mapping, Sequence
from typing import Any

# Workbooks of the same design are the same bytes: the date in them is not that of the day.
_DATE = datetime.datetime(2000, 1, 1)
_WIDEST = 40


def workbook(title: str, sheets: Mapping[str, Sequence[Mapping[str, Any]]]) -> bytes:
    """The bytes of a workbook with a sheet for each table of rows."""
    import xlsxwriter

    content = io.BytesIO()
    with xlsxwriter.Workbook(content, {"in_memory": True, "strings_to_formulas": False}) as book:
        book.set_properties({"title": title, "created": _DATE})
        bold = book.add_format({"bold": True})
        for name, rows in sheets.items():
            sheet = book.add_worksheet(name)
            heads = list(dict.fromkeys(key for row in rows for key in row))
            for column, head in enumerate(heads):
                cells = [row.get(head) for row in rows]
                sheet.write_string(0, column, head, bold)
                for line, cell in enumerate(cells, 1):
                    if isinstance(cell, bool):
                        sheet.write_boolean(line, column, cell)
                    elif isinstance(cell, int | float):
                        sheet.write_number(line, column, cell)
                    elif cell is not None:
                        sheet.write_string(line, column, str(cell))
                longest = max(len(head), *(len(str(cell)) for cell in cells)) if cells else len(head)
                sheet.set_column(column, column, min(_WIDEST, longest + 2))
            sheet.freeze_panes(1, 1)
    return content.getvalue()
