"""Speed of the whole hand-over file of the 14 m starter, drawings and manuals too, beside reportlab in the same run.

The design is assessed before, but for "from the design file", which is what somebody waits for who prints it with
nothing worked out yet. "Its plain text by reportlab" is the same words on as many pages, without tables, drawings,
contents, tags or PDF/A: what setting the text alone takes elsewhere. Run with `make bench`.
"""

from __future__ import annotations

import io
import itertools
from dataclasses import replace
from pathlib import Path

import pypdf
import pytest
from pytest_benchmark.fixture import BenchmarkFixture

from anchorwatt import design
from anchorwatt.assessment import Assessment, assess
from anchorwatt.papers.document import House
from anchorwatt.papers.sets.handover import document
from anchorwatt.papers.sets.merged import Manual, merged
from anchorwatt.papers.typeset import pdf

LONGEST = 5.0
"""s that the file of an assessed design may take."""

MANUAL = 40  # pages


def blank_manual() -> Manual:
    writer, content = pypdf.PdfWriter(), io.BytesIO()
    for _ in range(MANUAL):
        writer.add_blank_page(595, 842)
    writer.write(content)
    return Manual("pump.pdf", content.getvalue(), MANUAL)


BEHIND = (blank_manual(),)
_boats = itertools.count()


def handover(assessment: Assessment) -> bytes:
    """The file for a boat of another name each time: Typst keeps what it has set, and would set nothing again."""
    made = replace(document(assessment, "si", BEHIND), boat=f"boat {next(_boats)}")
    return merged(pdf(made, House(name="Heronsgate Boatyard")), BEHIND).file


@pytest.fixture(scope="module")
def trawler() -> Assessment:
    made = assess(design.parse(design.starter_text("trawler-14m")))
    handover(made)  # everything that it shows is worked out, every library loaded
    return made


@pytest.mark.benchmark(group="the hand-over file of the 14 m starter")
def test_whole_file(benchmark: BenchmarkFixture, trawler: Assessment) -> None:
    file = benchmark.pedantic(handover, args=(trawler,), rounds=5, warmup_rounds=1)
    assert len(pypdf.PdfReader(io.BytesIO(file)).pages) > MANUAL
    assert benchmark.stats.stats.min < LONGEST


@pytest.mark.benchmark(group="the hand-over file of the 14 m starter")
def test_from_the_design_file(benchmark: BenchmarkFixture, trawler: Assessment, tmp_path: Path) -> None:
    path = tmp_path / "boat.yaml"
    design.new("trawler-14m", path)
    del trawler  # only that the kernel is compiled and every library loaded
    benchmark.pedantic(lambda: handover(assess(design.read(path))), rounds=2)


@pytest.mark.benchmark(group="the hand-over file of the 14 m starter")
def test_its_plain_text_by_reportlab(benchmark: BenchmarkFixture, trawler: Assessment) -> None:
    read = [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(handover(trawler))).pages]
    benchmark.pedantic(by_reportlab, args=(read,), rounds=5, warmup_rounds=1)


def by_reportlab(pages: list[str]) -> bytes:
    from reportlab.pdfgen.canvas import Canvas

    made = io.BytesIO()
    canvas = Canvas(made, pagesize=(595, 842))
    for page in pages:
        text = canvas.beginText(60, 780)
        text.textLines(page)
        canvas.drawText(text)
        canvas.showPage()
    canvas.save()
    return made.getvalue()
