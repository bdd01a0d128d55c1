"""The method of a component: steps, with what their prose points at. Frozen values, exact amounts."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from sitegen.faults import Place
from sitegen.kitchen.amounts import Amount, Span, at_place


class RefKind(StrEnum):
    """What a reference in braces points at."""

    INGREDIENT = "ingredient"
    COMPONENT = "component"
    TEMPERATURE = "temperature"
    OVEN = "oven"
    LENGTH = "length"


@dataclass(frozen=True)
class Words:
    """A run of plain prose (Markdown) inside a step."""

    text: str


@dataclass(frozen=True)
class Reference:
    """What stood in braces: `{caster sugar}`, `{half of caster sugar}`, `{118 C}`, `{150 C fan}`, `{2 cm}`.

    text: as written inside the braces.
    target: for an ingredient or component, the place in `Component.lines` (an index) as `line`, and
    the component's title as `target`; for a temperature, oven or length '' and `amount` holds it.
    share: 1 for all of it, else the share named ('half of' is 1/2; 'the rest of' is resolved).
    amount: temperature ('celsius' or 'fahrenheit'), length ('cm', 'mm', 'in'), or the part taken
    in a measure (`{50 g of caster sugar}`); None else.
    oven: the setting, for a reference to an oven. short: the ingredient's name as the baker wrote it
    in the braces ('flour' for a line of plain flour).
    """

    text: str
    kind: RefKind
    target: str = ""
    line: int | None = None
    share: Fraction = Fraction(1)
    amount: Amount | None = None
    oven: "OvenSetting | None" = None
    short: str = ""
    at: Place = at_place()


Prose = tuple[Words | Reference, ...]


@dataclass(frozen=True)
class Photo:
    """A picture beside a recipe file.

    file: path relative to the folder that holds `content/`, checked to lie inside it.
    """

    file: str
    alt: str
    at: Place = at_place()


@dataclass(frozen=True)
class OvenSetting:
    """An oven as written: degrees C or F, fan or conventional, or a gas mark.

    scale: 'celsius', 'fahrenheit' or 'gas'; fan is False for gas.
    """

    degrees: Fraction
    scale: str
    fan: bool


@dataclass(frozen=True)
class Step:
    """One instruction.

    hands_on_min, wait_min: minutes, exact; None where the baker gave none.
    fill: how full the tin is, as a share of its depth (2/3), or None.
    after: titles of components that must be done before this step, beside those that it uses.
    tutorial: the slug of a technique page, or ''.
    within_min: minutes after its end within which what follows must begin (syrup, whipped cream).
    holds_min: minutes that what it made may wait; holds_how: 'chilled', in the baker's words, or ''.
    tools: what its hands-on time keeps busy ('mixer'). waits_in: what its wait keeps busy ('proofing box'),
    or ''. heat: 'hob' where it is worked there, 'fridge' or 'freezer' where it waits there, or ''.
    grows: whether its hands-on time grows with the batch (piping), or stays (one mix in a larger bowl).
    loads: how often its wait in the oven is gone through, one load after another. tins: in all loads.
    oven_at, wait_at, fill_at: the places of these keys, for what is found wrong with one of them.
    """

    prose: Prose
    hands_on_min: Span | None = None
    wait_min: Span | None = None
    oven: OvenSetting | None = None
    fill: Fraction | None = None
    until: str = ""
    photo: Photo | None = None
    after: tuple[str, ...] = ()
    tutorial: str = ""
    within_min: Fraction | None = None
    holds_min: Fraction | None = None
    holds_how: str = ""
    tools: tuple[str, ...] = ()
    waits_in: str = ""
    heat: str = ""
    grows: bool = False
    loads: int = 1
    tins: int = 1
    oven_at: Place = at_place()
    wait_at: Place = at_place()
    fill_at: Place = at_place()
    at: Place = at_place()

    @property
    def references(self) -> Iterator[Reference]:
        return (part for part in self.prose if isinstance(part, Reference))
