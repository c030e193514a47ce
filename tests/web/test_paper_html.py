from __future__ import annotations

from html.parser import HTMLParser

import pytest

from anchorwatt.papers.page import Content, Drawn, Gap, Paragraph, Title, Words, page, section, table
from anchorwatt.web.paper_html import page_html, paper_html

RTL = "\u202eknurt\u202c"
HOSTILE = (
    "<script>alert(1)</script>",
    '" onmouseover="alert(1)" x=\'',
    "A & B &lt; C",
    RTL,
    "w" * 200,
    "<!--",
    "]]><img src=x onerror=alert(1)>",
)


class Read(HTMLParser):
    """What a browser makes of it: tags with their attributes, and the text."""

    def __init__(self, html: str) -> None:
        super().__init__(convert_charrefs=True)
        self.tags: list[tuple[str, dict[str, str | None]]] = []
        self.open: list[str] = []
        self.words = ""
        self.feed(html)
        self.close()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        self.tags.append((tag, dict(attrs)))
        if tag != "br":
            self.open.append(tag)

    def handle_endtag(self, tag: str) -> None:
        assert self.open.pop() == tag

    def handle_data(self, data: str) -> None:
        self.words += data

    def named(self, tag: str) -> list[dict[str, str | None]]:
        return [attributes for name, attributes in self.tags if name == tag]


def everything(words: str) -> Content:
    """The words in every place that a page has."""
    return page(
        Title(words, words),
        section(
            words,
            Words(words, "subject"),
            Words(words, "strong").then(words, "fails").then(words, "aside"),
            Paragraph(words),
            Gap(),
            table((words, words), ("<", ">"), [(words, Words(words, "near", key=words))], caption=words),
            Drawn(words, words),
        ),
    )


@pytest.mark.parametrize("words", HOSTILE)
def test_hostile_words_are_words(words: str) -> None:
    made = Read(paper_html(everything(words), link=lambda key: f"/design/{key}"))
    harmless = Read(paper_html(everything("x"), link=lambda key: f"/design/{key}"))
    assert [(tag, set(found)) for tag, found in made.tags] == [(tag, set(found)) for tag, found in harmless.tags]
    assert made.words.count(words) == harmless.words.count("x")
    assert made.open == []


@pytest.mark.parametrize("words", HOSTILE)
def test_hostile_words_stay_inside_their_label(words: str) -> None:
    made = Read(paper_html(section(words, table(("a",), ("<",), [("b",)]))))
    assert made.named("div")[0]["aria-label"] == words


def test_nothing_brings_a_style_or_a_script_along() -> None:
    made = Read(paper_html(everything("x")))
    assert not {tag for tag, _ in made.tags} & {"script", "style"}
    assert not {name for _, found in made.tags for name in found} & {"style", "onclick"}


def test_headings_begin_where_they_are_told_and_go_down_by_one() -> None:
    made = Read(paper_html(section("a", section("b", section("c"))), level=3))
    assert [tag for tag, _ in made.tags if tag != "section"] == ["h3", "h4", "h5"]


def test_no_heading_is_lower_than_html_has() -> None:
    made = Read(paper_html(section("a", section("b", section("c"))), level=5))
    assert [tag for tag, _ in made.tags if tag != "section"] == ["h5", "h6", "h6"]


def test_a_subject_is_a_heading_below_that_of_its_section() -> None:
    made = Read(paper_html(section("Fails: 1", Words("bank", "subject"))))
    assert [tag for tag, _ in made.tags] == ["section", "h2", "h3"]


def test_a_wide_table_is_reached_by_keyboard_and_has_a_name() -> None:
    made = Read(paper_html(section("The night", table(("at",), ("<",), [("20:00",)]))))
    assert made.named("div") == [{"class": "wide", "tabindex": "0", "role": "region", "aria-label": "The night"}]


def test_the_caption_names_its_table() -> None:
    made = Read(paper_html(section("The night", table(("at",), ("<",), [("20:00",)], caption="Port alternator"))))
    assert made.named("div")[0]["aria-label"] == "Port alternator"
    assert made.named("caption") == [{}]


def test_figures_go_to_the_right_in_head_and_body() -> None:
    made = Read(paper_html(table(("cabin", "A"), ("<", ">"), [("saloon", "3")])))
    assert [found.get("class") for found in made.named("th") + made.named("td")] == [None, "figure", None, "figure"]


def test_a_row_is_headed_by_its_words_even_behind_a_figure() -> None:
    made = Read(paper_html(table(("", ""), (">", "<"), [("3 A", "in the bank")])))
    assert [tag for tag, _ in made.tags if tag in ("td", "th")] == ["td", "th"]
    assert made.named("th") == [{"scope": "row"}]


def test_a_table_without_headings_has_no_heading_row() -> None:
    assert "thead" not in paper_html(table(("", ""), (">", "<"), [("3 A", "in the bank")]))


def test_lines_stay_lines() -> None:
    assert paper_html(Words("a\nb")) == "<p>a<br>b</p>"


def test_emphasis_on_a_further_line_begins_there() -> None:
    assert paper_html(Words("a").then("\nb", "aside")) == "<p>a<br><em>b</em></p>"


def test_a_figure_keeps_its_unit() -> None:
    assert "5\u00a0A" in paper_html(Paragraph("It takes 5\u00a0A."))


@pytest.mark.parametrize(("meaning", "sign"), [("fails", "✗"), ("cannot_tell", "?"), ("near", "≈"), ("holds", "✓")])
def test_a_verdict_is_told_by_more_than_colour(meaning: str, sign: str) -> None:
    made = Read(paper_html(Words("so", meaning)))  # type: ignore[arg-type]
    assert made.named("strong") == [{"class": f"word {meaning}"}]
    assert made.words == f"{sign} so"


def test_a_screen_reader_is_told_the_word_and_not_the_sign() -> None:
    assert Read(paper_html(Words("holds", "holds"))).named("span") == [{"aria-hidden": "true"}]


def test_what_can_be_typed_is_a_link_to_where() -> None:
    made = paper_html(Words("bank", key="dc.bank"), link={"dc.bank": "/d#dc.bank"}.get)
    assert made == '<p><a href="/d#dc.bank">bank</a></p>'


def test_what_cannot_be_typed_is_no_link() -> None:
    assert paper_html(Words("bank", key="dc.bank"), link={"ac": "/d"}.get) == "<p>bank</p>"


def test_a_page_below_the_name_of_its_boat_does_not_repeat_it() -> None:
    assert page_html(page(Title("Boat", "Weather: fair"), Words("a"))) == "<p>a</p>"
