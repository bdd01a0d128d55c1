"""What a caution hangs on: rows of `data/cautions.yaml`, and the facts of a component that they ask for.

`caution_calls.py` says which rows the facts call for.
"""

from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property


@dataclass(frozen=True)
class Trigger:
    """One thing that calls for a caution: it fires where ALL conditions that it states hold.

    Of a line of the component:
    roles: it has any of these. line_words: its text has any of these. unless_line_words: none of these
    ('ground' for nuts). at_least_g: it weighs that or more in this batch, grams; at_least_portion_g: so
    much of it, or more, is in one portion.
    with_roles: another line has any of these. unless_roles: no line has any of these.
    titled: any of these words stands in the component's title.

    Of one step:
    words: any of these stands in its text; unless_step_words: none of these. at_least_c: it has an exact
    temperature of that or more, C. in_oven: it bakes, or it does not. same_step: it takes the line itself
    (and one of `with_roles`).

    Of what becomes of it, from the first step that takes the line (without a line, of all steps):
    unless_words: none of these is said. unless_c: no exact temperature of that or more, C.
    baked: True where it is baked, False where it is not, None for either.
    Words are those of `word_marks.has_word`.

    at_lines: it is told at the steps that take the line, though others call for it.
    """

    roles: frozenset[str] = frozenset()
    line_words: tuple[str, ...] = ()
    unless_line_words: tuple[str, ...] = ()
    at_least_g: Fraction | None = None
    at_least_portion_g: Fraction | None = None
    with_roles: frozenset[str] = frozenset()
    unless_roles: frozenset[str] = frozenset()
    titled: tuple[str, ...] = ()
    words: tuple[str, ...] = ()
    unless_step_words: tuple[str, ...] = ()
    at_least_c: Fraction | None = None
    in_oven: bool | None = None
    same_step: bool = False
    unless_words: tuple[str, ...] = ()
    unless_c: Fraction | None = None
    baked: bool | None = None
    at_lines: bool = False

    @property
    def asks_a_line(self) -> bool:
        """Whether it fires only where a line of the component is what it asks for."""
        weighs = self.at_least_g is not None or self.at_least_portion_g is not None
        return bool(self.roles or self.line_words or weighs)

    @property
    def asks_a_step(self) -> bool:
        """Whether it fires at a step of its own: by its words or its heat."""
        return bool(self.words) or self.at_least_c is not None


@dataclass(frozen=True)
class PassesOn:
    """A danger that a component hands to those that take it, as a role of their line.

    role: 'hot sugar'. unless_words: what ends it, said at the dangerous step or after it ('leave to cool').
    """

    role: str
    unless_words: tuple[str, ...]


@dataclass(frozen=True)
class CautionRow:
    """A row of `data/cautions.yaml`: it is printed where ANY of its triggers fires.

    level: 'red' (can hurt someone today) or 'amber'. source: a key of `data/sources.yaml`.
    """

    key: str
    level: str
    title: str
    text: str
    source: str
    triggers: tuple[Trigger, ...]
    passes_on: PassesOn | None = None


@dataclass(frozen=True)
class LineFacts:
    """A line: its text as written, and the roles of all the ingredients that it names.

    grams: in this batch; portion_grams: in one portion; None where unknown. part: the title of the
    component that the line takes, '' for an ingredient.
    """

    text: str
    roles: frozenset[str]
    grams: Fraction | None = None
    portion_grams: Fraction | None = None
    part: str = ""


@dataclass(frozen=True)
class StepFacts:
    """A step: its plain text, its exact temperatures in C, the lines that it uses (indices), its oven."""

    text: str
    celsius: tuple[Fraction, ...] = ()
    uses: tuple[int, ...] = ()
    in_oven: bool = False


@dataclass(frozen=True)
class ComponentFacts:
    """What the cautions of a component hang on.

    baked: whether it goes into the oven as a whole, inside a component that it becomes part of.
    """

    title: str
    lines: tuple[LineFacts, ...]
    steps: tuple[StepFacts, ...]
    baked: bool

    @cached_property
    def roles(self) -> frozenset[str]:
        """Those of all its lines."""
        return frozenset().union(*(line.roles for line in self.lines))
