"""Markdown as safe HTML and as plain words."""

import pytest

from sitegen.press.prose import ProsePicture, curled, prose_parts, to_html, to_inline_html, to_plain


def test_prose_keeps_paragraphs_stress_lists_and_tables() -> None:
    html = to_html("## Heat\n\nWarm, *not* hot.\n\n- milk\n- cream\n\n| a | b |\n| --- | ---: |\n| 1 | 2 |\n")
    for part in ("<h2>Heat</h2>", "<em>not</em>", "<li>milk</li>", "<th>a</th>", "<td>2</td>"):
        assert part in html
    assert "style" not in html


@pytest.mark.parametrize(
    "bad",
    [
        "<script>alert(1)</script>",
        '<img src="x" onerror="alert(1)">',
        '<b onclick="alert(1)" style="color:red">b</b>',
        "[x](javascript:alert(1))",
        "[x](data:text/html,hello)",
        "[x](http://plain.example/)",
        '<iframe src="https://other.example/"></iframe>',
        "<style>p{display:none}</style>",
        "<svg onload=alert(1)>",
        '<a href="https://ok.example" onmouseover="alert(1)">x</a>',
        "# One",
    ],
)
def test_what_a_page_must_not_carry_is_taken_out(bad: str) -> None:
    html = to_html(bad)
    for trace in (
        "<script",
        "alert(1)",
        "javascript:",
        "data:",
        "http:",
        "<iframe",
        "<style",
        "style=",
        "<svg",
        "<h1",
    ):
        assert trace not in html.replace("&", "")


def test_links_lead_by_https_or_within_the_site() -> None:
    html = to_html("[a](https://ok.example/x) [b](../tutorials/c.html)")
    assert 'href="https://ok.example/x"' in html
    assert 'href="../tutorials/c.html"' in html


def test_a_step_has_no_blocks_around_it() -> None:
    assert to_inline_html("Beat until **pale**.\n\nFold.") == "Beat until <strong>pale</strong>. Fold."


@pytest.mark.parametrize("figure", ["118 °C", "60 %", "4 ×", "250 g", "20 min", "22 degrees", "70 to 77 °C"])
def test_a_figure_keeps_its_unit_on_its_line(figure: str) -> None:
    tied = figure.replace(" ", "\N{NO-BREAK SPACE}")
    assert to_inline_html(f"Take {figure} now, 2 more than 1 good one.") == (
        f"Take {tied} now, 2 more than 1 good one."
    )


def test_plain_words_have_neither_marks_nor_entities() -> None:
    assert to_plain("Butter & *sugar*,\n[beaten](x.html) <b>well</b>") == "Butter & sugar, beaten well"


def test_a_figure_stays_with_its_unit() -> None:
    assert to_plain("until it reads\n92\u00a0°C") == "until it reads 92\u00a0°C"


def test_notes_have_no_pictures_and_techniques_none_from_elsewhere() -> None:
    assert "<img" not in to_html("See ![x](a.jpg) and ![y](https://elsewhere.invalid/y.png).")
    for address in ("https://elsewhere.invalid/y.png", "//elsewhere.invalid/y.png", "/y.png"):
        parts = prose_parts(f"Then\n\n![y]({address})\n\nand ![y]({address})")
        assert "y.png" not in str(parts)


def test_a_picture_alone_in_its_paragraph_is_cut_out_of_the_prose() -> None:
    before, picture, after = prose_parts(
        'One.\n\n![Drops "of" sugar](sugar colours.jpg)\n\nTwo.'.replace(" colours", "-c")
    )
    assert (before.strip(), after.strip()) == ("<p>One.</p>", "<p>Two.</p>")
    assert picture == ProsePicture("sugar-c.jpg", 'Drops "of" sugar')


@pytest.mark.parametrize(
    ("typed", "printed"),
    [
        ("the baker's own", "the baker’s own"),
        ("'soft' peaks", "‘soft’ peaks"),
        ('say "stop" (or "wait")', "say “stop” (or “wait”)"),
        ('an 8" tin', "an 8″ tin"),
        ("rock 'n' roll", "rock ‘n’ roll"),
    ],
)
def test_quotes_are_set_as_print_sets_them(typed: str, printed: str) -> None:
    assert curled(typed) == printed
