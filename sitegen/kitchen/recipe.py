"""A recipe as the baker means it, free of files and text layout: frozen values, exact amounts.

Every value carries `at`, its place in the file. It is left out of equality and hash, so that a
blank line added to a file changes nothing that was computed from it.
"""

from dataclasses import dataclass
from datetime import date
from enum import StrEnum
from fractions import Fraction

from sitegen.faults import Place
from sitegen.kitchen.amounts import Amount, Span, at_place
from sitegen.kitchen.filmed import FilmReading, SaidOtherwise
from sitegen.kitchen.larder import Ingredient
from sitegen.kitchen.method import Photo, Step


@dataclass(frozen=True)
class Choice:
    """One ingredient that an ingredient line names.

    name: as written, without size and preparation ('sunflower oil', 'eggs', 'egg yolks').
    ingredient: its key in the larder (the British name); '' where the larder has none.
    size: 'medium', 'large', ...; '' where none is written.
    part: what is taken of a counted thing: 'zest', 'juice', 'white', 'yolk', or ''.
    amount: its own amount where an alternative states one ('10 g fresh yeast or 5 g dried').
    """

    name: str
    ingredient: str
    size: str = ""
    part: str = ""
    amount: Amount | None = None


@dataclass(frozen=True)
class IngredientLine:
    """What a baker writes: `140 g plain flour, sifted`.

    amount: None for what is not measured ('flour, for dusting').
    choices: the ingredient, then its alternatives ('or'); at least one.
    preparation: what follows the comma; note: what stands in brackets; '' for neither.
    """

    text: str
    amount: Amount | None
    choices: tuple[Choice, ...]
    preparation: str = ""
    note: str = ""
    optional: bool = False
    at: Place = at_place()

    @property
    def chosen(self) -> Choice:
        """The ingredient that the amounts are computed for: the first named."""
        return self.choices[0]


@dataclass(frozen=True)
class PartLine:
    """A part of a component or of a base recipe: `half of Vanilla dough`, `500 g of Base buttercream`.

    source: the title of the component or base recipe.
    share: an exact share of the whole ('half of' is 1/2, 'all of' is 1); None where an amount is given.
    amount: a weight; None where a share is given.
    from_base: True where `source` is another recipe.
    """

    text: str
    source: str
    share: Fraction | None
    amount: Amount | None
    from_base: bool
    preparation: str = ""
    note: str = ""
    at: Place = at_place()


Line = IngredientLine | PartLine


@dataclass(frozen=True)
class Keeps:
    """How long something keeps in one place.

    place: 'room', 'fridge' or 'freezer'. hours: exact; a single span for a single figure.
    """

    place: str
    hours: Span


@dataclass(frozen=True)
class DoughAim:
    """What a baker wants of a dough, degrees C (friction: degrees C that mixing adds); None where unsaid.

    temperature: of the mixed dough. room, flour, preferment: what they usually have.
    """

    temperature: Fraction
    room: Fraction | None = None
    flour: Fraction | None = None
    preferment: Fraction | None = None
    friction: Fraction | None = None


@dataclass(frozen=True)
class Component:
    """A part made on its own: sponge, filling, buttercream.

    kind: what it is by trade, a row of `data/balances.yaml` ('creamed cake', 'brioche'), or ''.
    bake_loss: share of its weight that goes off in baking or boiling (1/10), or None.
    keeps: as the baker wrote it; keeping: the same by place, empty where only words are given.
    """

    title: str
    lines: tuple[Line, ...]
    steps: tuple[Step, ...]
    keeps: str = ""
    keeping: tuple[Keeps, ...] = ()
    kind: str = ""
    bake_loss: Fraction | None = None
    dough: DoughAim | None = None
    at: Place = at_place()


@dataclass(frozen=True)
class PieceWeight:
    """What one piece weighs, grams. weighed: as 'dough', once 'baked', or '' where nothing is said."""

    grams: Fraction
    weighed: str = ""


@dataclass(frozen=True)
class Makes:
    """The yield: how many of what, or what weight.

    count: exact; for a yield by weight the weight in grams.
    noun: 'cupcakes', 'loaf'; '' for a yield by weight.
    grams: the weight of the whole yield where it is written ('12 rolls of 85 g', '900 g'), or None.
    weighed: when a piece has that weight: as 'dough', once 'baked', or '' where nothing is said.
    """

    count: Fraction
    noun: str
    grams: Fraction | None = None
    weighed: str = ""
    at: Place = at_place()

    @property
    def piece(self) -> PieceWeight | None:
        """What one piece weighs; None where the yield names no weight of pieces."""
        return PieceWeight(self.grams / self.count, self.weighed) if self.noun and self.grams else None


@dataclass(frozen=True)
class Tin:
    """A vessel by shape and inside measure.

    shape: a row of `data/tins.yaml` ('round', 'square', 'rectangle', 'loaf', 'muffin', 'tart',
    'ring', 'tray').
    width_cm, length_cm, depth_cm: inside, of one tin or of one hole at its top; length_cm equals
    width_cm for round shapes.
    base_cm: the width at the base of one with sloping sides; equal to width_cm where sides are straight.
    holes: in one tin (12 for a 12-hole tin, 1 for a plain one). number: how many tins.
    """

    shape: str
    width_cm: Fraction
    length_cm: Fraction
    depth_cm: Fraction
    base_width_cm: Fraction
    base_length_cm: Fraction
    holes: int = 1
    number: int = 1
    name: str = ""
    at: Place = at_place()


class PublicShows(StrEnum):
    """What everyone may see of a recipe once its public date has come."""

    TEASER = "teaser"
    INGREDIENTS = "ingredients"
    EVERYTHING = "everything"


@dataclass(frozen=True)
class Release:
    """Release days in the school's time zone; None for never."""

    subscribers: date | None
    public: date | None
    public_shows: PublicShows
    at: Place = at_place()


@dataclass(frozen=True)
class Chapter:
    """A stretch of the film. seconds: from the film's start to its own."""

    seconds: int
    title: str
    at: Place = at_place()


@dataclass(frozen=True)
class Video:
    """published: the day on which the film came out, None unknown. chapters: as written, from its start.

    captions: path of their file below the folder that holds `content/`, '' for none; captions_at: where the
    recipe names it. film: what was read from them.
    """

    address: str
    captions: str = ""
    published: date | None = None
    chapters: tuple[Chapter, ...] = ()
    film: FilmReading = FilmReading()
    captions_at: Place = at_place()
    at: Place = at_place()


@dataclass(frozen=True)
class Revision:
    """A dated change that readers of an earlier card must hear of."""

    date: date
    note: str
    notify: bool
    at: Place = at_place()


class BatchKind(StrEnum):
    """The ways to say how much is made."""

    MAKES = "makes"
    TIN = "tin"
    TIMES = "times"
    USING = "using"


@dataclass(frozen=True)
class BatchAsk:
    """How much of a recipe is wanted, in one of four ways; the others are None.

    makes: a count of the recipe's own noun (or grams for a recipe that makes a weight).
    each: what one piece is to weigh, where another weight than the recipe's own is asked for.
    tin: the reader's tin. times: a factor. using: an ingredient in hand, as an ingredient line.
    """

    kind: BatchKind
    makes: Fraction | None = None
    tin: Tin | None = None
    times: Fraction | None = None
    using: IngredientLine | None = None
    each: PieceWeight | None = None


@dataclass(frozen=True)
class BaseUse:
    """How a recipe uses a base recipe.

    made_once: one making for all components that take of it, else a making for each.
    spare: how much more than is needed is made, as a share (1/20 for 5 %).
    """

    title: str
    made_once: bool = True
    spare: Fraction = Fraction(0)
    at: Place = at_place()


@dataclass(frozen=True)
class SettledAdvice:
    """Advice that the baker has read and decided against. code: of the fault; reason: in words."""

    code: str
    reason: str
    at: Place = at_place()


@dataclass(frozen=True)
class OfferedSwap:
    """A swap that the baker lets her sheets offer. ingredient: its key in the larder, else as written."""

    ingredient: str
    at: Place = at_place()


@dataclass(frozen=True)
class Recipe:
    """One folder under `content/recipes/`.

    serves: portions that a reader is told of, or None where one piece is a portion.
    declared: ingredients that the file itself declares, known to this recipe only.
    swaps: ingredients for which all sheets that take its lines offer a substitute.
    said_otherwise: what its film says otherwise, and the baker lets stand.
    """

    slug: str
    title: str
    summary: str
    makes: Makes
    components: tuple[Component, ...]
    tin: Tin | None = None
    tags: tuple[str, ...] = ()
    photo: Photo | None = None
    release: Release = Release(None, None, PublicShows.TEASER)
    video: Video | None = None
    batches: tuple[BatchAsk, ...] = ()
    notes: str = ""
    revisions: tuple[Revision, ...] = ()
    serves: Span | None = None
    declared: tuple[Ingredient, ...] = ()
    base_uses: tuple[BaseUse, ...] = ()
    settled: tuple[SettledAdvice, ...] = ()
    swaps: tuple[OfferedSwap, ...] = ()
    said_otherwise: tuple[SaidOtherwise, ...] = ()
    at: Place = at_place()

    def component(self, title: str) -> Component | None:
        """The component of that title, or None."""
        return next((part for part in self.components if part.title == title), None)
