"""Which finding an entry under `said-otherwise` settles, and how a finding is told."""

import pytest

from sitegen.kitchen.filmed import Finding, FindingKind, SaidOtherwise
from sitegen.source.checks.film import finding_text, settles

SUGAR = Finding(FindingKind.AMOUNT, "caster sugar", 151, "180 g", "170 g", certain=True)
SALT = Finding(FindingKind.UNSAID, "fine salt", None, "", "1/4 tsp fine salt", certain=True)
ADDED = Finding(FindingKind.ADDED, "cinnamon", 190, "1 tsp cinnamon", "", certain=False)


@pytest.mark.parametrize(
    ("entry", "finding", "is_settled"),
    [
        (SaidOtherwise("caster sugar", "So.", 151), SUGAR, True),
        (SaidOtherwise("sugar", "So.", 145), SUGAR, True),
        (SaidOtherwise("180 g caster sugar", "So."), SUGAR, True),
        (SaidOtherwise("caster sugar", "So.", 190), SUGAR, False),
        (SaidOtherwise("icing sugar", "So.", 151), SUGAR, False),
        (SaidOtherwise("fine salt", "So."), SALT, True),
        (SaidOtherwise("fine salt", "So.", 151), SALT, False),
        (SaidOtherwise("cinnamon", "So.", 192), ADDED, True),
    ],
)
def test_an_entry_settles_what_its_words_and_its_moment_are_of(
    entry: SaidOtherwise, finding: Finding, is_settled: bool
) -> None:
    assert settles(entry, finding) is is_settled


@pytest.mark.parametrize(
    ("finding", "text"),
    [
        (SUGAR, "at 2:31 the film says 180 g (caster sugar), and here it is 170 g"),
        (SALT, "the film never names fine salt"),
        (ADDED, "at 3:10 the film may add 1 tsp cinnamon, which stands in no line"),
    ],
)
def test_a_finding_is_told_with_both_figures_and_its_moment(finding: Finding, text: str) -> None:
    assert finding_text(finding) == text
