"""One recipe as each audience has it on the day, made of its sheets.

Everything of the public tree comes through `audience.py`; what these values are printed by knows no more.
"""

from collections.abc import Collection, Iterator
from dataclasses import dataclass
from hashlib import sha256

from sitegen.kitchen.recipe import PublicShows, Recipe
from sitegen.press import addresses
from sitegen.press.card import photos_on
from sitegen.press.choices import CardFile, Choices, choices_of
from sitegen.press.entries import entry_of
from sitegen.press.find_index import sought_recipe
from sitegen.press.imprint import Imprint
from sitegen.release.audience import photos_in, public_revisions, public_view, with_pages_of
from sitegen.release.days import Standing, is_draft
from sitegen.release.parcel import CardRow, Listed
from sitegen.release.sheets import RecipeSheets
from sitegen.sheet.values import Sheet, SheetRevision, View

PAPER_TITLES = {
    "a4": "A4",
    "letter": "US Letter",
    "a5": "Kitchen card, A5",
    "half-letter": "Kitchen card, half US Letter",
}


@dataclass(frozen=True)
class ShownRecipe:
    """A recipe as one audience has it.

    rows: one a batch, the tested one first, each with one view an edition, the school's own first.
    papers: of its printed cards.
    """

    rows: tuple[tuple[View, ...], ...]
    revisions: tuple[SheetRevision, ...] = ()
    papers: tuple[str, ...] = ()

    @property
    def first(self) -> View:
        """The page that lists lead to."""
        return self.rows[0][0]

    @property
    def slug(self) -> str:
        return self.first.head.slug

    def views(self) -> tuple[View, ...]:
        return tuple(view for row in self.rows for view in row)

    def path(self, view: View) -> str:
        """Where a view's page lies; that of the first has the short address."""
        head = view.head
        if head.batch.is_tested and head.edition.key == self.first.head.edition.key:
            return addresses.recipe_page(head.slug)
        return addresses.choice_page(head.slug, head.edition.key, head.batch.key)

    def choices(self, here: View) -> Choices:
        """The batches, tins and editions as the page of one view offers them."""
        return choices_of(self.rows, here, self.path, self.cards(here.head.edition.key))

    def cards(self, edition: str) -> tuple[CardFile, ...]:
        """The printed cards in one edition."""
        return tuple(
            CardFile(PAPER_TITLES[paper], addresses.card(self.slug, edition, paper)) for paper in self.papers
        )

    def photos(self) -> tuple[str, ...]:
        """Files of the pictures that its pages show."""
        return tuple(dict.fromkeys(photo for view in self.views() for photo in photos_in(view)))


@dataclass(frozen=True)
class TextBrief:
    """What a recipe's plain texts are made of.

    everyone: what everyone will see of it, in each edition. corrections: that everyone hears of.
    notify: revisions that holders of an earlier card must hear of. shown: as subscribers have it.
    """

    everyone: tuple[View, ...]
    corrections: tuple[SheetRevision, ...]
    notify: tuple[SheetRevision, ...]
    sheets: tuple[Sheet, ...]
    shown: ShownRecipe


@dataclass(frozen=True)
class Shown:
    """A recipe for all who may have something of it. public, subscribers: None where that is nothing.

    brief: None for a draft; made before the release day too, so that the baker has the texts ready in time.
    """

    public: ShownRecipe | None
    subscribers: ShownRecipe | None
    brief: TextBrief | None
    revisions: tuple[SheetRevision, ...]
    about: tuple[str, ...]

    def photos(self) -> tuple[str, ...]:
        """Files of the pictures that pages of either tree show."""
        trees = (tree for tree in (self.public, self.subscribers) if tree is not None)
        return tuple(dict.fromkeys(photo for tree in trees for photo in tree.photos()))


def shown_of(
    sheets: RecipeSheets,
    stands: Standing,
    papers: tuple[str, ...],
    public_slugs: Collection[str],
    subscribers_slugs: Collection[str],
) -> Shown:
    """A recipe without errors. public_slugs, subscribers_slugs: of all recipes with a page in that tree."""
    recipe = sheets.recipe
    shows = stands.public
    return Shown(
        public=_public(sheets, shows, public_slugs) if shows is not None else None,
        subscribers=_subscribers(sheets, subscribers_slugs, papers) if stands.subscribers else None,
        brief=None if is_draft(recipe.release) else _brief(sheets, papers),
        revisions=sheets.tested[0].revisions,
        about=_made_of(sheets),
    )


def listed(shown: ShownRecipe | None) -> Listed | None:
    """What lists show of it."""
    if shown is None:
        return None
    return Listed(
        entry=entry_of(shown.first.head, shown.revisions),
        sought=sought_recipe(shown.rows[0]),
        mapped=tuple((shown.path(view), view.head.modified) for view in shown.rows[0]),
        photos=shown.photos(),
    )


def card_rows(shown: ShownRecipe | None, imprint: Imprint) -> Iterator[CardRow]:
    """The cards to print of the tested batch. imprint: of the subscribers' tree."""
    if shown is None:
        return
    for sheet in shown.rows[0]:
        if isinstance(sheet, Sheet):
            for paper in shown.papers:
                page = shown.path(sheet)
                edition = sheet.head.edition
                yield CardRow(
                    edition=edition.key,
                    edition_title=edition.title,
                    paper=paper,
                    path=addresses.card(shown.slug, edition.key, paper),
                    page=page,
                    steps=sum(len(part.steps) for part in sheet.components),
                    photos=tuple(photos_on(sheet, paper).items()),
                    made_of=sha256(repr((sheet, imprint, paper, page)).encode()).hexdigest(),
                )


def _subscribers(sheets: RecipeSheets, slugs: Collection[str], papers: tuple[str, ...]) -> ShownRecipe:
    """A recipe in full. slugs: of all recipes of the same tree."""
    rows = tuple(tuple(with_pages_of(sheet, slugs) for sheet in row) for row in sheets.rows)
    return ShownRecipe(rows, sheets.tested[0].revisions, papers)


def _public(sheets: RecipeSheets, shows: PublicShows, slugs: Collection[str]) -> ShownRecipe:
    """A recipe as everyone has it; a teaser has no amounts, and so one page and no choice of batches."""
    rows = tuple(
        tuple(with_pages_of(public_view(sheet, shows, sheets.recipe.release.public), slugs) for sheet in row)
        for row in sheets.rows
    )
    shown = ((rows[0][0],),) if shows is PublicShows.TEASER else rows
    return ShownRecipe(shown, public_revisions(sheets.tested[0], shows))


def _brief(sheets: RecipeSheets, papers: tuple[str, ...]) -> TextBrief:
    shows = sheets.recipe.release.public_shows
    own = sheets.tested[0]
    return TextBrief(
        everyone=tuple(public_view(sheet, shows) for sheet in sheets.tested),
        corrections=public_revisions(own, shows),
        notify=_to_notify(sheets.recipe, own),
        sheets=sheets.tested,
        shown=_subscribers(sheets, (), papers),
    )


def _to_notify(recipe: Recipe, sheet: Sheet) -> tuple[SheetRevision, ...]:
    """The printed revisions of those that readers must hear of. Both lists have the same rows."""
    latest_first = sorted(recipe.revisions, key=lambda revision: revision.date, reverse=True)
    pairs = zip(latest_first, sheet.revisions, strict=True)
    return tuple(printed for revision, printed in pairs if revision.notify)


def _made_of(sheets: RecipeSheets) -> tuple[str, ...]:
    slugs = [sheets.recipe.slug, *(part.base_slug for part in sheets.tested[0].components if part.base_slug)]
    return tuple(dict.fromkeys(slugs))
