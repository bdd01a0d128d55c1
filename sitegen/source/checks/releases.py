"""Release days and revisions that contradict each other."""

from collections.abc import Iterator
from itertools import pairwise

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.recipe import PublicShows, Recipe
from sitegen.kitchen.tables import Tables

PUBLIC_FIRST = FaultCode(
    "public-before-subscribers",
    Severity.ERROR,
    "Everyone would see the recipe before the subscribers do, who pay for it.",
    "Give subscribers the same day or an earlier one.",
    good="subscribers: 2026-07-03",
    bad="subscribers: 2026-07-13",
)
NEVER_PUBLIC = FaultCode(
    "public-shows-unused",
    Severity.ADVICE,
    "`public-shows` is set, but without a public day nobody will ever see it.",
    "Write a public day, or delete the key.",
    good="public: 2026-07-10, public-shows",
    bad="public-shows",
)
REVISIONS_ORDER = FaultCode(
    "revisions-out-of-order",
    Severity.ERROR,
    "Revisions are printed as written, oldest first; one is dated before the one above it.",
    "Sort them by date.",
    good="    note: Oil corrected from 150 g to 100 g.\n    notify: yes\n",
    bad="    note: Oil corrected.\n    notify: yes\n  - date: 2026-07-19\n    note: Wording.\n",
)
REVISED_BEFORE_RELEASE = FaultCode(
    "revised-before-release",
    Severity.ADVICE,
    "A revision is dated before the recipe is released, so that no reader has the earlier card.",
    "Delete it, or mend its date.",
    good="date: 2026-07-20",
    bad="date: 2025-07-20",
)

CODES = (PUBLIC_FIRST, NEVER_PUBLIC, REVISIONS_ORDER, REVISED_BEFORE_RELEASE)


def public_not_first(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """Subscribers see a recipe on the public day at the latest."""
    days = recipe.release
    if days.public is None:
        return
    if days.subscribers is None:
        sentence = "the recipe has a public day and none for subscribers"
    elif days.subscribers > days.public:
        sentence = f"everyone sees it on {days.public}, subscribers on {days.subscribers}"
    else:
        return
    yield PUBLIC_FIRST.fault(days.at, sentence)


def public_part_is_seen(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """`public-shows` needs a public day."""
    days = recipe.release
    if days.public is None and days.public_shows is not PublicShows.TEASER:
        sentence = f"'{days.public_shows}' is never shown without a public day"
        yield NEVER_PUBLIC.fault(days.at, sentence)


def revisions_in_order(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """Oldest first."""
    for earlier, later in pairwise(recipe.revisions):
        if later.date < earlier.date:
            sentence = f"{later.date} stands below {earlier.date}"
            yield REVISIONS_ORDER.fault(later.at, sentence, "sort the revisions by date, oldest first")


def revisions_after_release(recipe: Recipe, _tables: Tables) -> Iterator[Fault]:
    """A revision speaks to readers of an earlier card."""
    first = recipe.release.subscribers
    for revision in recipe.revisions:
        if first is not None and revision.date < first:
            sentence = f"a revision of {revision.date}, but the recipe is released on {first}"
            yield REVISED_BEFORE_RELEASE.fault(revision.at, sentence)


CHECKS = (public_not_first, public_part_is_seen, revisions_in_order, revisions_after_release)
