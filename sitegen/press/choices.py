"""The batches, tins and editions that a recipe page offers, as values: the page's own place in each list."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from sitegen.press.shared import Translation, translations_of
from sitegen.sheet.values import View


@dataclass(frozen=True)
class CardFile:
    """title: 'A4'; path: relative to the tree."""

    title: str
    path: str


@dataclass(frozen=True)
class Choice:
    """One page that a list leads to.

    title: '24 cupcakes', 'two 18 cm round cake tins', 'US cups'. path: relative to the tree.
    is_here: the page that shows the list. is_tested: the batch as written.
    """

    title: str
    path: str
    is_here: bool
    is_tested: bool = False


@dataclass(frozen=True)
class Choices:
    """Three lists, each changing one thing and keeping the others; () where there is nothing to choose.

    batches: by count or share; tins: by the tin that is filled; both begin with the tested batch.
    chosen: the page's own in words, '24 cupcakes, US cups'. tested: path of the tested batch in the page's
    edition, '' unknown. translations: that batch in each language. cards: those printed of it in that
    edition, for subscribers.
    """

    batches: tuple[Choice, ...] = ()
    tins: tuple[Choice, ...] = ()
    editions: tuple[Choice, ...] = ()
    chosen: str = ""
    tested: str = ""
    translations: tuple[Translation, ...] = ()
    cards: tuple[CardFile, ...] = ()


def choices_of(
    rows: Sequence[Sequence[View]],
    here: View,
    path: Callable[[View], str],
    cards: tuple[CardFile, ...] = (),
) -> Choices:
    """What the page of one view offers.

    rows: one a batch, the tested one first, each with a view in every edition. path: of a view's page.
    """
    row = next(row for row in rows if here in row)
    same_edition = [each[row.index(here)] for each in rows]
    tested, *others = same_edition
    batches = [tested, *(view for view in others if not view.head.batch.tin)]
    tins = [tested, *(view for view in others if view.head.batch.tin)]

    def listed(views: Sequence[View], title: Callable[[View], str]) -> tuple[Choice, ...]:
        choices = (Choice(title(view), path(view), view == here, view.head.batch.is_tested) for view in views)
        return tuple(choices) if len(views) > 1 else ()

    return Choices(
        batches=listed(batches, lambda view: view.head.batch.title),
        tins=listed(tins, lambda view: view.head.batch.tin or view.head.batch.title),
        editions=listed(row, lambda view: view.head.edition.title),
        chosen=f"{here.head.batch.title}, {here.head.edition.title}",
        tested=path(tested),
        translations=translations_of(rows[0], path),
        cards=cards,
    )
