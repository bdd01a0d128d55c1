"""`content/site.yaml` as the school: words that the tables know, and addresses that end in a slash."""

import pytest

from sitegen.source.reader import parse_document
from sitegen.source.school import School
from sitegen.source.site import school_from
from sitegen.source.tables import read_tables

SITE = """\
name: Tansy Row
tagline: One careful step at a time
address: https://tansyrow.example
subscribers-address: https://tansyrow.example/table/
language: en-GB
written-in: british-metric
egg-size: medium
editions: [british-metric, us-cups]
papers: [a4]
time-zone: Europe/London
"""


def read(text: str) -> tuple[School | None, list[tuple[str, int, int, str]]]:
    document, _ = parse_document(text, "content/site.yaml")
    assert document is not None
    school, faults = school_from(document, read_tables()[0])
    return school, [(fault.code, fault.place.line, fault.place.column, fault.way_out) for fault in faults]


def test_a_good_file_is_the_school() -> None:
    school, faults = read(SITE)
    assert faults == []
    assert school is not None
    assert (school.address, school.theme, school.about) == ("https://tansyrow.example/", "oatcloth", "")


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        (
            "in: british-metric",
            "in: british-metrik",
            ("unknown-edition", 6, 13, "did you mean 'british-metric'?"),
        ),
        ("us-cups", "us-cup", ("unknown-edition", 8, 28, "did you mean 'us-cups'?")),
        ("medium", "jumbo", ("unknown-egg-size", 7, 11, "known here: extra large, large, medium, small")),
        ("London", "Londn", ("unknown-time-zone", 10, 12, "did you mean 'Europe/London'?")),
        ("[a4]", "[a4, a4]", ("listed-twice", 9, 14, "delete one of them")),
        ("[a4]", "[leter]", ("unknown-word", 9, 10, "did you mean 'letter'?")),
    ],
)
def test_a_word_that_no_table_knows_is_told_with_a_near_one(
    old: str, new: str, told: tuple[str, int, int, str]
) -> None:
    school, faults = read(SITE.replace(old, new, 1))
    assert school is None
    assert faults == [told]
