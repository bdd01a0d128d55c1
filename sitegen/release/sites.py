"""What goes into each tree of the output, as values that already know their audience.

Everything of the public site comes through `audience.py`; the table of outputs prints what it is given.
"""

from collections.abc import Collection, Iterable, Mapping, Sequence
from dataclasses import dataclass, field, replace
from datetime import date

from sitegen.kitchen.recipe import PublicShows, Recipe
from sitegen.kitchen.tables import Tables
from sitegen.press import addresses
from sitegen.press.choices import CardFile, Choices, choices_of
from sitegen.press.entries import IndexEntry, TutorialEntry, entry_of
from sitegen.press.find_index import Sought, sought_recipe, sought_technique
from sitegen.press.imprint import Imprint
from sitegen.press.leaf import Tree
from sitegen.press.picture import Picture
from sitegen.press.search_words import WordRules
from sitegen.press.theme import Theme
from sitegen.release.audience import photos_in, public_revisions, public_view, with_pages_of
from sitegen.release.days import is_draft, standing
from sitegen.release.sheets import RecipeSheets
from sitegen.sheet.values import Sheet, SheetPhoto, SheetRevision, View
from sitegen.source.school import School, Tutorial

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
    about: slugs of the recipes that it is made of, its own first. papers: of its printed cards.
    """

    rows: tuple[tuple[View, ...], ...]
    about: tuple[str, ...]
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
class Site:
    """One tree for readers.

    recipes: the newest first. technique_photos: slug of a technique page -> its photos.
    pictures: those that this tree may show, by photo. word_rules: how its search compares words.
    """

    tree: Tree
    imprint: Imprint
    theme: Theme
    recipes: tuple[ShownRecipe, ...]
    tutorials: tuple[TutorialEntry, ...]
    word_rules: WordRules = WordRules()
    technique_photos: Mapping[str, tuple[str, ...]] = field(default_factory=dict, hash=False)
    pictures: Mapping[str, Picture] = field(default_factory=dict, hash=False)

    def entries(self) -> tuple[IndexEntry, ...]:
        return tuple(entry_of(recipe.first.head, recipe.revisions) for recipe in self.recipes)

    def sought(self) -> tuple[Sought, ...]:
        """What a search may find: the recipes, then the techniques."""
        recipes = (sought_recipe(recipe.rows[0]) for recipe in self.recipes)
        return (*recipes, *map(sought_technique, self.tutorials))

    def photos(self) -> tuple[str, ...]:
        """Files of all pictures that its pages show."""
        of_recipes = (
            photo for recipe in self.recipes for view in recipe.views() for photo in photos_in(view)
        )
        of_techniques = (file for tutorial in self.tutorials for file in self.technique_photos[tutorial.slug])
        return tuple(dict.fromkeys([*of_recipes, *of_techniques]))


def public_site(school: School, sheets: Sequence[RecipeSheets], day: date, site: Site) -> Site:
    """Everyone's site on a day. site: what both sites have in common."""
    shown = [(each, standing(each.recipe.release, day).public) for each in sheets]
    slugs = {each.recipe.slug for each, shows in shown if shows is not None}
    recipes = [_public(each, shows, slugs) for each, shows in shown if shows is not None]
    imprint = replace(site.imprint, audience="public", subscribers_address=school.subscribers_address)
    return replace(site, tree=Tree.PUBLIC, imprint=imprint, recipes=_newest_first(recipes))


def subscribers_site(school: School, sheets: Sequence[RecipeSheets], day: date, site: Site) -> Site:
    """The subscribers' site on a day: whole sheets, and their cards."""
    out = [each for each in sheets if standing(each.recipe.release, day).subscribers]
    slugs = {each.recipe.slug for each in out}
    recipes = [subscribers_recipe(each, slugs, school.papers) for each in out]
    imprint = replace(site.imprint, audience="subscribers", address=school.subscribers_address)
    return replace(site, tree=Tree.SUBSCRIBERS, imprint=imprint, recipes=_newest_first(recipes))


def text_briefs(school: School, sheets: Sequence[RecipeSheets]) -> tuple[TextBrief, ...]:
    """For every recipe that is no draft, before its day too, so that the baker has them ready in time."""
    released = [each for each in sheets if not is_draft(each.recipe.release)]
    return tuple(_brief(school, each) for each in released)


def site_imprint(school: School) -> Imprint:
    """The publisher's block that both sites begin with."""
    return Imprint(
        name=school.name,
        tagline=school.tagline,
        address=school.address,
        language=school.language,
        about=school.about,
        copyright=school.copyright,
        audience="public",
    )


def word_rules(tables: Tables) -> WordRules:
    """How a search on either site compares words."""
    words = tables.finding.words
    return WordRules(words.passed_over, words.letters, words.endings)


def tutorial_entries(tutorials: Iterable[Tutorial]) -> tuple[TutorialEntry, ...]:
    """Technique pages, which are everyone's, as lists and pages show them."""
    return tuple(
        TutorialEntry(
            slug=each.slug,
            title=each.title,
            summary=each.summary,
            markdown=each.markdown,
            source=f"content/tutorials/{each.slug}.md",
            photo=SheetPhoto(each.photo.file, each.photo.alt) if each.photo else None,
        )
        for each in tutorials
    )


def technique_photos(tutorials: Iterable[Tutorial]) -> dict[str, tuple[str, ...]]:
    """Slug of a technique page -> the photos that it and the list of techniques show."""
    return {
        each.slug: tuple(photo.file for photo in (each.photo, *each.photos) if photo is not None)
        for each in tutorials
    }


def subscribers_recipe(sheets: RecipeSheets, slugs: Collection[str], papers: tuple[str, ...]) -> ShownRecipe:
    """A recipe in full. slugs: of all recipes of the same tree."""
    rows = tuple(tuple(with_pages_of(sheet, slugs) for sheet in row) for row in sheets.rows)
    return ShownRecipe(rows, _made_of(sheets), sheets.tested[0].revisions, papers)


def _public(sheets: RecipeSheets, shows: PublicShows, slugs: Collection[str]) -> ShownRecipe:
    """A recipe as everyone has it; a teaser has no amounts, and so one page and no choice of batches."""
    rows = tuple(
        tuple(with_pages_of(public_view(sheet, shows, sheets.recipe.release.public), slugs) for sheet in row)
        for row in sheets.rows
    )
    shown = ((rows[0][0],),) if shows is PublicShows.TEASER else rows
    return ShownRecipe(shown, _made_of(sheets), public_revisions(sheets.tested[0], shows))


def _brief(school: School, sheets: RecipeSheets) -> TextBrief:
    shows = sheets.recipe.release.public_shows
    own = sheets.tested[0]
    return TextBrief(
        everyone=tuple(public_view(sheet, shows) for sheet in sheets.tested),
        corrections=public_revisions(own, shows),
        notify=_to_notify(sheets.recipe, own),
        sheets=sheets.tested,
        shown=subscribers_recipe(sheets, (), school.papers),
    )


def _to_notify(recipe: Recipe, sheet: Sheet) -> tuple[SheetRevision, ...]:
    """The printed revisions of those that readers must hear of. Both lists have the same rows."""
    latest_first = sorted(recipe.revisions, key=lambda revision: revision.date, reverse=True)
    pairs = zip(latest_first, sheet.revisions, strict=True)
    return tuple(printed for revision, printed in pairs if revision.notify)


def _made_of(sheets: RecipeSheets) -> tuple[str, ...]:
    slugs = [sheets.recipe.slug, *(part.base_slug for part in sheets.tested[0].components if part.base_slug)]
    return tuple(dict.fromkeys(slugs))


def _newest_first(recipes: Iterable[ShownRecipe]) -> tuple[ShownRecipe, ...]:
    """By the audience's own release day, those of one day by title."""
    by_title = sorted(recipes, key=lambda recipe: recipe.first.head.title)
    return tuple(sorted(by_title, key=lambda recipe: recipe.first.head.published, reverse=True))
