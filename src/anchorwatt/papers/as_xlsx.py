"""Tables as a workbook: one sheet a table, figures as figures, headings that end in their unit."""

from __future__ import annotations

import datetime
import io
import re
from collections.abc import Mapping, Sequence
from typing import Any

from anchorwatt.languages import ENGLISH, language, said

# Workbooks of the same design are the same bytes: the date in them is not that of the day.
_DATE = datetime.datetime(2000, 1, 1)
_WIDEST = 40
_KEY = re.compile(r"\w+(?:_\w+)+")
_LONGEST_NAME = 31  # of a sheet, as the format has it


def workbook(title: str, sheets: Mapping[str, Sequence[Mapping[str, Any]]]) -> bytes:
    """The bytes of a workbook with a sheet for each table of rows, its words in the language that is spoken.

    Headings are the keys of the rows; in another language than English they are words, for people alone.
    """
    import xlsxwriter

    content = io.BytesIO()
    with xlsxwriter.Workbook(content, {"in_memory": True, "strings_to_formulas": False}) as book:
        book.set_properties({"title": title, "created": _DATE})
        bold = book.add_format({"bold": True})
        for name, rows in sheets.items():
            sheet = book.add_worksheet(said(name)[:_LONGEST_NAME])
            keys = list(dict.fromkeys(key for row in rows for key in row))
            for column, key in enumerate(keys):
                cells = [_shown(row.get(key)) for row in rows]
                head = _shown(key)
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


def _shown(cell: Any) -> Any:
    """A cell as it is, in another language than English a key as its words."""
    if not isinstance(cell, str) or language() == ENGLISH:
        return cell
    return said(cell.replace("_", " ") if _KEY.fullmatch(cell) else cell)
