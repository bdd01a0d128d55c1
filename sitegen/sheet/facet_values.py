"""By what a recipe is found in a list, as frozen values ready for print."""

from dataclasses import dataclass

KIND, TIME, WORK, TIN, WITHOUT = "kind", "time", "work", "tin", "without"
"""Groups of facets. A kind is a tag, which its author named; the others stand in the table, in this order."""


@dataclass(frozen=True, order=True)
class Facet:
    """One thing by which readers choose recipes.

    place: where it stands among all, so that sorting gives the order of the table. group: one of those
    above. key: for addresses, 'nuts'. title: 'in an afternoon', 'loaf tin'; of what a recipe
    does without, the plain name, 'nuts'.
    """

    place: int
    group: str
    key: str
    title: str


@dataclass(frozen=True)
class Facets:
    """Those of one recipe, in the order of the table.

    labels_of: ingredients of which the packet decides what they bring, 'dark chocolate and lemon juice'; ''
    for none. What a recipe is 'without' is said of the ingredients that it names, not of their packets.
    """

    marks: tuple[Facet, ...] = ()
    labels_of: str = ""
