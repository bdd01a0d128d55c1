"""What the desk lists first, and what its templates may not do."""

from dataclasses import replace
from pathlib import Path

import jinja2
import pytest
from jinja2 import nodes

import sitegen.desk
from sitegen.desk.groups import Found, grouped
from sitegen.desk.looks import desk_page, not_made_page
from sitegen.desk.values import Desk, DeskRow, ReleaseRow, ShownFault, Stands

ERROR = ShownFault(
    code="unknown-ingredient",
    sentence="'castor <sugar>' is not in the larder",
    way_out="did you mean 'caster sugar'? write `160 g caster sugar`",
    place="content/recipes/bay/recipe.yaml, line 14",
    line=14,
    before="      - 160 g ",
    marked="castor <sugar>",
    after=", 'sifted'",
)
ADVICE = replace(ERROR, code="balance-unusual", sentence="there is much sugar", marked="sugar")


def day(iso: str, is_past: bool) -> ReleaseRow:
    return ReleaseRow("everyone", iso, iso, "a teaser", is_past)


OUT = DeskRow("plain-loaf", "Plain loaf", Stands.OUT, "Out.", releases=(day("2026-05-01", True),))
ROWS = (
    OUT,
    replace(
        OUT, slug="later-tart", title="Later tart", stands=Stands.COMING, releases=(day("2027-01-09", False),)
    ),
    replace(OUT, slug="half-out", title="Half out", releases=(*OUT.releases, day("2026-12-30", False))),
    replace(OUT, slug="sweet-buns", title="Sweet buns", advice=(ADVICE, ADVICE)),
    replace(OUT, slug="new-loaf", title="New loaf", is_changed=True, published="New since the last publish."),
    replace(
        OUT,
        slug="sooner-tart",
        title="Sooner tart",
        stands=Stands.COMING,
        releases=(day("2026-12-24", False),),
    ),
    replace(OUT, slug="idea", title="Idea", stands=Stands.DRAFT, releases=()),
    replace(OUT, slug="bay", title="Bay buns", stands=Stands.FAULTY, errors=(ERROR,) * 6, advice=(ADVICE,)),
    replace(OUT, slug="held-cake", title="Held cake", stands=Stands.FAULTY),
    replace(OUT, slug="filmed", title="Filmed buns", film=(replace(ADVICE, code="film-amount"),)),
)
DESK = Desk("Tansy Row", "1 July 2026", "10 recipes: 6 errors", ROWS, (), (), "Never published.")


def listed(found: Found) -> list[tuple[str, list[str]]]:
    return [(group.key, [work.row.slug for work in group.works]) for group in found.groups]


def test_what_needs_doing_first_comes_first_and_each_recipe_stands_once() -> None:
    assert listed(grouped(DESK, "")) == [
        ("mend", ["bay"]),
        ("held", ["held-cake"]),
        ("coming", ["sooner-tart", "half-out", "later-tart"]),
        ("look", ["sweet-buns", "filmed"]),
        ("drafts", ["idea"]),
        ("changed", ["new-loaf"]),
        ("out", ["plain-loaf"]),
    ]


@pytest.mark.parametrize(
    ("find", "slugs"),
    [
        ("tart", {"sooner-tart", "later-tart"}),
        ("LATER tart", {"later-tart"}),
        ("castor", {"bay"}),
        ("balance-unusual buns", {"sweet-buns", "bay"}),
        ("2026-12-24", {"sooner-tart"}),
        ("quince", set()),
    ],
)
def test_a_search_looks_in_titles_days_and_faults(find: str, slugs: set[str]) -> None:
    found = grouped(DESK, find)
    assert {slug for _, own in listed(found) for slug in own} == slugs
    assert found.told == f"{len(slugs)} of 10 recipes have '{find}'."


def test_a_fault_is_shown_as_the_line_stands_in_the_file() -> None:
    text = desk_page(DESK)
    assert "      - 160 g <mark>castor &lt;sugar&gt;</mark>, &#39;sifted&#39;" in text
    assert "‘castor &lt;sugar&gt;’ is not in the larder." in text
    assert "<code>160 g caster sugar</code>" in text
    assert "2 more errors" in text
    assert text.count("<script") == 1
    assert "style=" not in text


def test_a_page_that_cannot_be_made_tells_what_must_be_mended() -> None:
    text = not_made_page("Bay buns", "It appears here once this is mended.", (ERROR,), "../../")
    assert 'href="../../looks/desk.css"' in text
    assert "castor &lt;sugar&gt;" in text


def test_the_templates_do_no_arithmetic() -> None:
    sums = (nodes.Add, nodes.Sub, nodes.Mul, nodes.Div, nodes.FloorDiv, nodes.Mod, nodes.Pow, nodes.Concat)
    folder = Path(sitegen.desk.__file__).parent / "templates"
    environment = jinja2.Environment(autoescape=True)
    templates = sorted(folder.glob("*.html"))
    assert len(templates) > 5
    for template in templates:
        tree = environment.parse(template.read_text(encoding="utf-8"))
        assert list(tree.find_all(sums)) == [], template.name
