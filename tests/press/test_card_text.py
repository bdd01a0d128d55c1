"""Markdown as a card prints it."""

import pytest

from sitegen.press.card_text import card_prose


@pytest.mark.parametrize(
    ("markdown", "html"),
    [
        ("Stir *gently*.", "<p>Stir <em>gently</em>.</p>"),
        ("**Hot** sugar", "<p><strong>Hot</strong> sugar</p>"),
        ("- one\n- two", "<ul>\n<li>one</li>\n<li>two</li>\n</ul>"),
        ("## Before\n\nChill.", "<p><strong>Before</strong></p>\n<p>Chill.</p>"),
        ("[film](https://video.example/a)", '<p><a href="https://video.example/a">film</a></p>'),
        ("![a bowl](bowl.jpg)", "<p></p>"),
        ("<script>alert(1)</script>", ""),
        ("[press](javascript:alert(1))", "<p><a>press</a></p>"),
    ],
)
def test_prose_keeps_its_shape_and_loses_what_paper_cannot_carry(markdown: str, html: str) -> None:
    assert card_prose(markdown).strip() == html
