"""Writes everything that is generated. Run by `make docs`.

These are the reference and theory pages, the shipped schema, the outside checks, the outputs that README, tour
and how-tos show, and the README's picture.
"""

from __future__ import annotations

import sys
from pathlib import Path

ROOT = Path(__file__).resolve().parent.parent
sys.path.insert(0, str(ROOT))

from tools import outside, reference, shown, theory  # noqa: E402

PICTURE = Path("docs/night-trawler-14m.svg")


def quick() -> dict[Path, str]:
    """Pages that follow from the sources alone, by path."""
    from anchorwatt.design.file_schema import schema_text

    schema = {Path("src/anchorwatt/design/anchorwatt.schema.json"): schema_text()}
    return {**schema, **reference.pages(), **theory.pages(ROOT)}


def picture() -> str:
    """The night of the default starter, as the README shows it."""
    import anchorwatt
    from anchorwatt.design import parse, starter_text
    from anchorwatt.drawings import night_picture

    return night_picture(anchorwatt.assess(parse(starter_text("trawler-14m"))), "us")


def write(path: Path, text: str) -> None:
    """Write a file when it is not the same already, and say so."""
    target = ROOT / path
    if not target.exists() or target.read_text("utf-8") != text:
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, encoding="utf-8")
        print(f"wrote {path}")


def main() -> None:
    """Write all, what needs no run of the kernel first."""
    for path, text in quick().items():
        write(path, text)
    write(Path("docs/outside-checks.md"), outside.page(ROOT))
    write(PICTURE, picture())
    for name in shown.PAGES:
        write(Path(name), shown.page((ROOT / name).read_text("utf-8")))


if __name__ == "__main__":
    main()
