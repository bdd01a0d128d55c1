"""What of a recipe is only for subscribers: every text of its sheets that its public view has not.

Nothing is listed by hand. The texts are gathered by walking over the values that the press prints from, so a
field that is added to a sheet is guarded from its first day; what of it is public is decided in `audience.py`
alone, and followed here.
"""

from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass, fields, is_dataclass
from itertools import chain
from posixpath import basename

from pydantic import TypeAdapter

from sitegen.press import addresses
from sitegen.release.bare_words import bare_text, phrases
from sitegen.release.cache import Cache
from sitegen.sheet.values import Head, SheetChapter, SheetLine, SheetPhoto, View

LEAST_TITLE_LETTERS = 5


@dataclass(frozen=True)
class RecipeSecrets:
    """What is kept back of one recipe, and what of it everyone may read; texts as bare words.

    phrases: that only subscribers may read. open_texts: that everyone may. A recipe of which nothing is
    public has its title and the address of its page among the phrases.
    """

    slug: str
    phrases: tuple[str, ...]
    open_texts: tuple[str, ...]


@dataclass(frozen=True)
class Secrets:
    """What no file of the public tree may hold.

    recipes: all of them, drafts too. open_texts: of everything else that is public: technique pages, the
    school's own words, the theme; as they are written. bodies: hashes (SHA-256) of files that are for
    subscribers only, such as cuts of step photos. stems: of these pictures (`stem_of`).
    """

    recipes: Collection[RecipeSecrets]
    open_texts: Iterable[str] = ()
    bodies: frozenset[str] = frozenset()
    stems: frozenset[str] = frozenset()


@dataclass(frozen=True)
class KeptSecrets(Collection[RecipeSecrets]):
    """Those of many recipes, read one by one from the cache as often as they are wanted. keys: of each."""

    cache: Cache
    keys: tuple[str, ...]

    def __iter__(self) -> Iterator[RecipeSecrets]:
        """Raises NotKept."""
        return (_SECRETS.validate_json(self.cache.fetch(key)) for key in self.keys)

    def __len__(self) -> int:
        return len(self.keys)

    def __contains__(self, one: object) -> bool:
        return any(one == each for each in self)


_SECRETS = TypeAdapter(RecipeSecrets)


def secrets_json(secrets: RecipeSecrets) -> bytes:
    """As `KeptSecrets` reads them back."""
    return _SECRETS.dump_json(secrets)


def stem_of(path: str) -> str:
    """What the names of all cuts of one photo begin with, and no other's."""
    return basename(path).partition("-")[0]


def secrets_of(slug: str, sheets: Iterable[View], public: Iterable[View], *told: object) -> RecipeSecrets:
    """What is kept back of a recipe.

    sheets: in every batch and edition, whole. public: what everyone may see of them today, () for nothing.
    told: what else everyone is told of it, such as corrections.
    """
    everyone = (*public, *told)
    open_texts = dict.fromkeys(bare_text(text) for text in _texts(everyone))
    whole = tuple(sheets)
    found = dict.fromkeys(chain.from_iterable(phrases(text) for text in _texts(whole)))
    if not everyone:
        found |= dict.fromkeys(_names(slug, [sheet.head for sheet in whole]))
    own = "\n".join(open_texts)
    return RecipeSecrets(
        slug=slug,
        phrases=tuple(phrase for phrase in found if phrase not in own),
        open_texts=tuple(text for text in open_texts if not text.isspace()),
    )


def _names(slug: str, heads: Sequence[Head]) -> Iterator[str]:
    """The titles of a recipe that nobody may know of yet, and the address that its page will have."""
    for title in dict.fromkeys(head.title for head in heads):
        words = bare_text(title)
        if len(words) - words.count(" ") >= LEAST_TITLE_LETTERS:
            yield words
    yield bare_text(addresses.recipe_page(slug))
    for edition in dict.fromkeys(head.edition.key for head in heads):
        yield bare_text(addresses.choice_page(slug, edition, "").removesuffix(".html"))


def _texts(value: object) -> Iterator[str]:
    """Every text in a value, however deep; lines and chapters also as the list that is printed."""
    match value:
        case str():
            yield value
        case SheetPhoto():
            yield value.alt
            yield basename(value.file)
        case tuple() | list():
            if value and isinstance(value[0], SheetLine):
                yield " ".join(map(_printed, value))
            if value and isinstance(value[0], SheetChapter):
                yield " ".join(chapter.title for chapter in value)
            for each in value:
                yield from _texts(each)
        case _ if is_dataclass(value):
            for field in fields(value):
                yield from _texts(getattr(value, field.name))


def _printed(line: SheetLine) -> str:
    """A line in the order in which pages, data for search engines and plain texts all set it."""
    return " ".join((line.amount, line.beside, line.name, line.alternatives, line.extra))
