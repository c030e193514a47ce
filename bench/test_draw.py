"""Speed of the whole set of drawings of the 14 m starter, beside one sheet of it and beside ezdxf's own picture of it.

The design is assessed before: what is measured is laying out and writing. "Picture by ezdxf" is what a set of SVG files
would take from the DXF files by ezdxf's drawing add-on, text as outlines. Run with `make bench`.
"""

from __future__ import annotations

import io
from collections.abc import Callable

import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from anchorwatt import design
from anchorwatt.assessment import Assessment, assess
from anchorwatt.drawings.as_dxf import dxf
from anchorwatt.drawings.sheet import Sheet
from anchorwatt.drawings.sheets.sheet_set import sheet_set
from anchorwatt.papers.drawn import files

FORMATS = ("dxf", "svg", "pdf")


@pytest.fixture(scope="module")
def trawler() -> Assessment:
    made = assess(design.parse(design.starter_text("trawler-14m")))
    files(sheet_set(made, "A3", "si"), FORMATS)  # everything that sheets show is worked out, every library loaded
    return made


@pytest.fixture(scope="module")
def sheets(trawler: Assessment) -> tuple[Sheet, ...]:
    return sheet_set(trawler, "A3", "si")


@pytest.mark.benchmark(group="the set of the 14 m starter")
def test_lay_out(benchmark: BenchmarkFixture, trawler: Assessment) -> None:
    benchmark(sheet_set, trawler, "A3", "si")


@pytest.mark.benchmark(group="the set of the 14 m starter")
@pytest.mark.parametrize("form", FORMATS)
def test_write(benchmark: BenchmarkFixture, sheets: tuple[Sheet, ...], form: str) -> None:
    benchmark(files, sheets, [form])


@pytest.mark.benchmark(group="the set of the 14 m starter")
def test_lay_out_and_write_all_three(benchmark: BenchmarkFixture, trawler: Assessment) -> None:
    benchmark(lambda: files(sheet_set(trawler, "A3", "si"), FORMATS))


@pytest.mark.benchmark(group="the set of the 14 m starter")
def test_picture_by_ezdxf(benchmark: BenchmarkFixture, sheets: tuple[Sheet, ...]) -> None:
    draw = by_ezdxf([dxf(sheet) for sheet in sheets])
    draw()
    benchmark.pedantic(draw, rounds=3)


def by_ezdxf(written: list[bytes]) -> Callable[[], list[str]]:
    from ezdxf.addons.drawing import layout, svg
    from ezdxf.addons.drawing.frontend import Frontend
    from ezdxf.addons.drawing.properties import RenderContext
    from ezdxf.filemanagement import read

    files_read = [read(io.StringIO(one.decode("utf-8"))) for one in written]

    def draw() -> list[str]:
        pictures = []
        for file in files_read:
            backend = svg.SVGBackend()
            Frontend(RenderContext(file), backend).draw_layout(file.modelspace())
            pictures.append(backend.get_string(layout.Page(420, 297)))
        return pictures

    return draw
