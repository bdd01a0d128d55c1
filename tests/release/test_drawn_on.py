"""What a recipe may draw on, told from the bare text of its file."""

import re

from hypothesis import given
from hypothesis import strategies as st

from sitegen.release.drawn_on import Titles, with_drawn_on

TITLES = Titles.of(
    [("curd", "Sharp curd"), ("base", "Base buttercream"), ("salt", "Salt & caramel"), ("odd", "½")]
)


def test_a_title_in_a_line_is_found_whatever_its_capitals_and_blanks() -> None:
    assert TITLES.named_in("- 100 g of SHARP\n    curd, cold") == ("curd",)


def test_a_title_may_stand_beside_any_mark() -> None:
    assert TITLES.named_in('["half of Base buttercream"]') == ("base",)
    assert TITLES.named_in("text: Spread {Salt & caramel}.") == ("salt",)


def test_a_title_without_a_letter_is_found_too() -> None:
    assert TITLES.named_in("2 of ½") == ("odd",)


def test_words_of_a_title_apart_are_none() -> None:
    assert TITLES.named_in("A curd that is sharp. Buttercream, and a base.") == ()


def test_what_is_drawn_on_draws_on_others_and_may_go_in_a_circle() -> None:
    named = {"tart": ("curd",), "curd": ("base", "curd"), "base": ("tart",), "bun": ()}
    assert with_drawn_on("tart", named) == ("base", "curd", "tart")
    assert with_drawn_on("bun", named) == ("bun",)


@given(st.data())
def test_no_title_is_missed(data: st.DataObject) -> None:
    """The filing by rarest words finds what a search for every title finds, between any but letters."""
    words = st.text("abé -&½", min_size=1, max_size=6)
    titles = data.draw(st.dictionaries(st.sampled_from("uvwxyz"), words, max_size=5))
    pieces = data.draw(st.lists(st.sampled_from([*titles.values(), "a", " ", "- b", "É"]), max_size=6))
    text = data.draw(st.sampled_from(["", "'", " ", "\n"])).join(pieces)
    folded = " ".join(text.casefold().split())
    found = set(Titles.of(titles.items()).named_in(text))
    for slug, title in titles.items():
        wanted = re.escape(" ".join(title.casefold().split()))
        assert slug in found or not re.search(rf"(?<!\w){wanted}(?!\w)", folded)
        assert slug not in found or re.search(wanted, folded)
