"""What each tree of the output holds beside the pages of recipes, as values that know their audience."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field, replace
from functools import cached_property

from sitegen.kitchen.tables import Tables
from sitegen.press.entries import IndexEntry, TutorialEntry
from sitegen.press.find_index import Sought, sought_technique
from sitegen.press.imprint import Imprint
from sitegen.press.leaf import Tree
from sitegen.press.picture import Picture
from sitegen.press.search_words import WordRules
from sitegen.press.theme import Theme
from sitegen.release.commission import Imprints
from sitegen.release.parcel import Listed
from sitegen.sheet.values import SheetPhoto
from sitegen.source.school import Content, School, Tutorial


@dataclass(frozen=True)
class Site:
    """One tree for readers.

    recipes: the newest first. technique_photos: slug of a technique page -> its photos.
    pictures: those that this tree may show, by photo. word_rules: how its search compares words.
    """

    tree: Tree
    imprint: Imprint
    theme: Theme
    recipes: tuple[Listed, ...]
    tutorials: tuple[TutorialEntry, ...]
    word_rules: WordRules = WordRules()
    technique_photos: Mapping[str, tuple[str, ...]] = field(default_factory=dict, hash=False)
    pictures: Mapping[str, Picture] = field(default_factory=dict, hash=False)

    def entries(self) -> tuple[IndexEntry, ...]:
        return tuple(recipe.entry for recipe in self.recipes)

    @cached_property
    def listed_as(self) -> Mapping[str, str]:
        """Slug -> a text of all that lists show of a recipe, which so differs where any of it does."""
        return {entry.slug: repr((entry, self._picture_of(entry))) for entry in self.entries()}

    def _picture_of(self, entry: IndexEntry) -> Picture | None:
        return self.pictures.get(entry.photo.file) if entry.photo else None

    def sought(self) -> tuple[Sought, ...]:
        """What a search may find: the recipes, then the techniques."""
        recipes = (recipe.sought for recipe in self.recipes)
        return (*recipes, *map(sought_technique, self.tutorials))

    def photos(self) -> tuple[str, ...]:
        """Files of all pictures that its pages show."""
        of_recipes = (photo for recipe in self.recipes for photo in recipe.photos)
        of_techniques = (file for tutorial in self.tutorials for file in self.technique_photos[tutorial.slug])
        return tuple(dict.fromkeys([*of_recipes, *of_techniques]))


def site_of(content: Content, school: School, tree: Tree, theme: Theme, recipes: Iterable[Listed]) -> Site:
    """One tree for readers, its pictures still to come.

    content: what all recipes have in common. recipes: that the tree lists, in any order.
    """
    of_both = imprints(school)
    return Site(
        tree=tree,
        imprint=of_both.public if tree is Tree.PUBLIC else of_both.subscribers,
        theme=theme,
        recipes=newest_first(recipes),
        tutorials=tutorial_entries(content.tutorials),
        word_rules=word_rules(content.tables),
        technique_photos=technique_photos(content.tutorials),
    )


def imprints(school: School) -> Imprints:
    """The publisher's block of each tree."""
    in_common = site_imprint(school)
    return Imprints(
        public=replace(in_common, subscribers_address=school.subscribers_address),
        subscribers=replace(in_common, audience="subscribers", address=school.subscribers_address),
    )


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


def newest_first(recipes: Iterable[Listed]) -> tuple[Listed, ...]:
    """By the audience's own release day, those of one day by title."""
    by_title = sorted(recipes, key=lambda recipe: recipe.entry.title)
    return tuple(sorted(by_title, key=lambda recipe: recipe.entry.published, reverse=True))
