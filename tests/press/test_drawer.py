"""The words of the drawer: what readers choose by."""

from dataclasses import replace

from sitegen.press.drawer import drawer
from sitegen.press.entries import IndexEntry, entry_of
from sitegen.sheet.facet_values import Facet, Facets
from sitegen.sheet.values import SheetRevision
from tests.press.sample_sheets import HEAD, SHEET

HOUR = Facet(0, "time", "hour", "in an hour")
DAY = Facet(2, "time", "day", "in a day")
NO_EGG = Facet(9, "without", "egg", "egg")


def entry(title: str, *marks: Facet, tags: tuple[str, ...] = ()) -> IndexEntry:
    return entry_of(replace(HEAD, title=title, tags=tags, facets=Facets(marks)))


def test_a_word_leads_to_the_recipes_that_have_it_in_the_order_of_the_list() -> None:
    entries = [entry("Zebra cake", DAY), entry("Apple cake", HOUR, DAY), entry("Moon cake")]
    words = drawer(entries)["time"]
    assert [(word.title, word.number) for word in words] == [("in an hour", "1"), ("in a day", "2")]
    assert [each.title for each in words[1].entries] == ["Zebra cake", "Apple cake"]


def test_a_word_that_no_recipe_has_is_not_offered() -> None:
    assert drawer([entry("Moon cake")]) == {"kind": (), "time": (), "work": (), "tin": (), "without": ()}


def test_kinds_go_by_the_alphabet_and_those_of_one_address_are_one() -> None:
    entries = [entry("A", tags=("soft fruit", "Bread")), entry("B", tags=("Soft fruit", "almonds"))]
    kinds = drawer(entries)["kind"]
    assert [(word.title, word.number) for word in kinds] == [
        ("almonds", "1"),
        ("Bread", "1"),
        ("Soft fruit", "2"),
    ]
    assert [word.path for word in kinds][2] == "tags/soft-fruit.html"


def test_what_is_left_out_is_said_so_where_its_word_stands_alone() -> None:
    (word,) = drawer([entry("Moon cake", NO_EGG)])["without"]
    assert (word.title, word.says, word.path) == ("egg", "without egg", "contents.html#without-egg")


def test_a_correction_is_news_to_those_who_could_read_what_it_corrects() -> None:
    old = SheetRevision("2026-10-01", "1 October 2026", "Before its day.")
    assert HEAD.published == "2026-10-09"
    assert entry_of(HEAD, SHEET.revisions).revised == "20 October 2026"
    assert entry_of(HEAD, (old,)).revised == ""
    assert entry_of(HEAD, (*SHEET.revisions, old)).revised == "20 October 2026"
