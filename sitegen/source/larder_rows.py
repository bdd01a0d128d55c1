"""A row of a larder, the project's own or `content/larder.yaml` -> Ingredient.

A row of a name that is known extends that ingredient by the keys it states; any other row adds one.
"""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field, replace
from difflib import get_close_matches
from fractions import Fraction

from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.allergens import ORDERS, Regime, australian
from sitegen.kitchen.larder import Composition, Density, Ingredient, Larder, Piece
from sitegen.kitchen.measures import Measures
from sitegen.source.figures import grams_in, millilitres_in
from sitegen.source.label_figures import label_figures
from sitegen.source.larder_faults import (
    ALLERGENS_UNSAID,
    BAD_MEASURE,
    BAD_WEIGHT,
    IMPROBABLE_DENSITY,
    NAME_TAKEN,
    UNKNOWN_ALLERGEN,
    UNKNOWN_ROLE,
    UNKNOWN_SOURCE,
)
from sitegen.source.larder_file import CompositionFile, DensityFile, LarderRowFile, PieceFile
from sitegen.source.nodes import Path
from sitegen.source.reader import Document
from sitegen.source.shapes import WRONG_KIND, shaped

LIGHTEST, HEAVIEST = Fraction(1, 20), Fraction(2)
"""Grams a millilitre: dried leaves are heavier than the one, syrups lighter than the other."""


@dataclass(frozen=True)
class LarderReading:
    """What rows are read against.

    sources: keys of the table of sources. roles: those that rules know; None where any role may stand.
    strict: whether names must be free, and a new ingredient must say its allergens.
    is_recipe: whether a recipe declares the rows: no name may be known then, and allergens may stay unsaid.
    """

    measures: Measures
    sources: Mapping[str, str]
    roles: frozenset[str] | None = None
    strict: bool = True
    is_recipe: bool = False

    def extended(self, larder: Larder, document: Document) -> tuple[Larder, tuple[Fault, ...]]:
        """The larder with the document's rows, and every fault; a row at fault changes nothing."""
        if not isinstance(document.data, dict):
            return larder, _not_a_mapping(document)
        rows = {row.key: row for row in larder.ingredients}
        faults: list[Fault] = []
        for name in document.data:
            found = _Row(self, larder, part_of(document, name), name, document.key_place((name,)))
            ingredient = found.ingredient()
            faults += found.faults
            if ingredient is not None:
                rows[ingredient.key] = ingredient
        return Larder.of(tuple(rows.values())), tuple(faults)


def _not_a_mapping(document: Document) -> tuple[Fault, ...]:
    if document.data is None:
        return ()
    return (WRONG_KIND.fault(document.place(()), "a larder is a set of names, each with its keys"),)


def part_of(document: Document, key: str) -> Document:
    """What lies under a top key, as a document of its own whose paths begin there."""
    data = document.data[key] if isinstance(document.data, dict) else None
    return replace(
        document,
        data=data,
        places={path[1:]: place for path, place in document.places.items() if path[:1] == (key,)},
        key_places={path[1:]: place for path, place in document.key_places.items() if path[:1] == (key,)},
        scalars={path[1:]: scalar for path, scalar in document.scalars.items() if path[:1] == (key,)},
        braced=frozenset(path[1:] for path in document.braced if path[:1] == (key,)),
    )


@dataclass
class _Row:
    """One row while it is read; `faults` grows as its keys are read.

    document: the row's own part of the file. at: the place of its name.
    """

    reading: LarderReading
    larder: Larder
    document: Document
    name: str
    at: Place
    faults: list[Fault] = field(default_factory=list)

    def ingredient(self) -> Ingredient | None:
        """The ingredient, new or extended; None where an error stands in the row."""
        if not isinstance(self.document.data, dict):
            sentence = f"'{self.name}' has no keys under it"
            self.faults.append(WRONG_KIND.fault(self.at, sentence, "write its keys, indented"))
            return None
        file, faults = shaped(self.document, LarderRowFile)
        self.faults += faults
        if file is None:
            return None
        if self.reading.strict:
            self._check_names(file)
        ingredient = self._built(file)
        is_bad = any(fault.severity is Severity.ERROR for fault in self.faults)
        return None if is_bad else ingredient

    @property
    def _known(self) -> Ingredient | None:
        """The ingredient of exactly this name; one that merely bears it as an alias is another."""
        found = self.larder.find(self.name)
        return found if found and self._is_own(found) else None

    def _is_own(self, other: Ingredient) -> bool:
        return other.key.casefold() == self.name.casefold()

    def _built(self, file: LarderRowFile) -> Ingredient:
        """The known ingredient with what the row states in its place; other spellings are added."""
        base = self._known or Ingredient(self.name, {"uk": self.name})
        regional = {region: name for region, name in (("us", file.us), ("au", file.au)) if name}
        eu, us = (file.allergens.eu, file.allergens.us) if file.allergens else (None, None)
        return Ingredient(
            key=base.key,
            names={**base.names, **regional},
            aliases=(*base.aliases, *file.also),
            plural=file.plural or base.plural,
            densities=base.densities if file.density is None else self._densities(file.density),
            pieces=base.pieces if file.pieces is None else self._pieces(file.pieces),
            allergens_eu=base.allergens_eu if eu is None else self._allergens("eu", eu),
            allergens_us=base.allergens_us if us is None else self._allergens("us", us),
            roles=base.roles if file.roles is None else self._roles(file.roles),
            measured_by=file.measured_by or base.measured_by,
            label_advice=base.label_advice if file.label_advice is None else file.label_advice,
            plurals={**base.plurals, **_plurals(file)},
            allergens_unsaid=self._unsaid(file),
            allergens_au=self._australian(file, base),
            packet_may_hold=self._packet_may_hold(file, base),
            composition=base.composition if file.composition is None else self._composition(file.composition),
        )

    def _composition(self, file: CompositionFile) -> Composition | None:
        self._check_source(("composition", "source"), file.source)
        composition, faults = label_figures(file, self.document)
        self.faults += faults
        return composition

    def _australian(self, file: LarderRowFile, base: Ingredient) -> tuple[str, ...]:
        """What the row says, else what follows from its words for the two other laws."""
        said = file.allergens
        if said is None:
            return base.allergens_au
        if said.au is not None:
            return self._allergens("au", said.au)
        eu = base.allergens_eu if said.eu is None else said.eu
        return australian(eu, base.allergens_us if said.us is None else said.us)

    def _packet_may_hold(self, file: LarderRowFile, base: Ingredient) -> tuple[str, ...]:
        words = file.packet_may_hold
        if words is None:
            return base.packet_may_hold
        for index, word in enumerate(words):
            self._check_word(UNKNOWN_ALLERGEN, ("packet-may-hold", index), word, ORDERS["eu"])
        return tuple(words)

    def _unsaid(self, file: LarderRowFile) -> frozenset[str]:
        """The laws of which a recipe's own row leaves open what they would name."""
        if not self.reading.is_recipe:
            return frozenset()
        said = file.allergens
        if said is None:
            return frozenset(ORDERS)
        by_law = (("eu", said.eu), ("us", said.us), ("au", said.eu if said.au is None else said.au))
        return frozenset(regime for regime, words in by_law if words is None)

    def _check_names(self, file: LarderRowFile) -> None:
        other = self.larder.find(self.name)
        if other is not None:
            self._check_owner(other)
        elif self._must_say_allergens(file):
            sentence = f"'{self.name}' does not say its allergens"
            self.faults.append(ALLERGENS_UNSAID.fault(self.at, sentence, ALLERGENS_UNSAID.cure))
        for index, word in enumerate(file.also):
            owner = self.larder.find(word)
            if owner is not None and not self._is_own(owner):
                place = self.document.place(("also", index))
                self.faults.append(NAME_TAKEN.fault(place, f"'{word}' means '{owner.key}' already"))

    def _check_owner(self, other: Ingredient) -> None:
        """A school's row may extend the ingredient of its name; a recipe's row may not."""
        if self.reading.is_recipe:
            sentence = f"the larder has '{other.key}' already"
            self.faults.append(NAME_TAKEN.fault(self.at, sentence, "give this one a name of its own"))
        elif not self._is_own(other):
            sentence = f"'{self.name}' is another name of '{other.key}'"
            self.faults.append(NAME_TAKEN.fault(self.at, sentence, f"write the row under '{other.key}'"))

    def _must_say_allergens(self, file: LarderRowFile) -> bool:
        said = file.allergens
        return not self.reading.is_recipe and (said is None or None in (said.eu, said.us))

    def _densities(self, files: list[DensityFile]) -> tuple[Density, ...]:
        """Those that could be read."""
        found = (self._density(("density", index), file) for index, file in enumerate(files))
        return tuple(density for density in found if density is not None)

    def _density(self, path: Path, file: DensityFile) -> Density | None:
        self._check_source((*path, "source"), file.source)
        grams = self._grams((*path, "weight"), file.weight)
        millilitres = millilitres_in(file.fills, self.reading.measures)
        if not millilitres:
            place = self.document.place((*path, "fills"))
            self.faults.append(
                BAD_MEASURE.fault(place, f"'{file.fills}' is no known measure", BAD_MEASURE.cure)
            )
        if not grams or not millilitres:
            return None
        if not LIGHTEST <= grams / millilitres <= HEAVIEST:
            place = self.document.place((*path, "weight"))
            sentence = f"{file.weight} in {file.fills} is {float(grams / millilitres):.3g} g a millilitre"
            self.faults.append(IMPROBABLE_DENSITY.fault(place, sentence, IMPROBABLE_DENSITY.cure))
        return Density(file.method, grams, millilitres, file.source)

    def _pieces(self, files: list[PieceFile]) -> tuple[Piece, ...]:
        """Those that could be read."""
        found = (self._piece(("pieces", index), file) for index, file in enumerate(files))
        return tuple(piece for piece in found if piece is not None)

    def _piece(self, path: Path, file: PieceFile) -> Piece | None:
        self._check_source((*path, "source"), file.source)
        grams = self._grams((*path, "weight"), file.weight)
        return Piece(grams, file.source, file.size or "", file.part or "") if grams else None

    def _grams(self, path: Path, text: str) -> Fraction | None:
        grams = grams_in(text, self.reading.measures)
        if not grams:
            self.faults.append(
                BAD_WEIGHT.fault(self.document.place(path), f"'{text}' is no weight", BAD_WEIGHT.cure)
            )
        return grams

    def _check_source(self, path: Path, text: str) -> None:
        self._check_word(UNKNOWN_SOURCE, path, text.split(" ")[0], self.reading.sources)

    def _allergens(self, regime: Regime, words: list[str]) -> tuple[str, ...]:
        for index, word in enumerate(words):
            self._check_word(UNKNOWN_ALLERGEN, ("allergens", regime, index), word, ORDERS[regime])
        return tuple(words)

    def _roles(self, words: list[str]) -> frozenset[str]:
        if self.reading.roles is not None:
            for index, word in enumerate(words):
                self._check_word(UNKNOWN_ROLE, ("roles", index), word, self.reading.roles)
        return frozenset(words)

    def _check_word(self, code: FaultCode, path: Path, word: str, known: Collection[str]) -> None:
        if word in known:
            return
        near = get_close_matches(word, sorted(known), n=1, cutoff=0.6)
        way_out = f"did you mean '{near[0]}'?" if near else code.cure
        self.faults.append(code.fault(self.document.place(path), f"'{word}' is not known", way_out))


def _plurals(file: LarderRowFile) -> dict[str, str]:
    if file.plurals is None:
        return {}
    return {region: word for region, word in (("us", file.plurals.us), ("au", file.plurals.au)) if word}
