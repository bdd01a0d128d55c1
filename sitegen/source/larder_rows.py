"""A row of a larder, the project's own or `content/larder.yaml` -> Ingredient.

A row of a name that is known extends that ingredient by the keys it states; any other row adds one.
"""

from collections.abc import Collection, Mapping
from dataclasses import dataclass, field, replace
from difflib import get_close_matches
from fractions import Fraction

from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.allergens import ORDERS, Regime
from sitegen.kitchen.larder import Density, Ingredient, Larder, Piece
from sitegen.kitchen.measures import Measures
from sitegen.source.figures import grams_in, millilitres_in
from sitegen.source.larder_file import DensityFile, LarderRowFile, PieceFile
from sitegen.source.nodes import Path
from sitegen.source.reader import Document
from sitegen.source.shapes import WRONG_KIND, shaped

LIGHTEST, HEAVIEST = Fraction(1, 20), Fraction(2)
"""Grams a millilitre: dried leaves are heavier than the one, syrups lighter than the other."""


def _error(code: str, meaning: str, cure: str, good: str, bad: str) -> FaultCode:
    return FaultCode(code, Severity.ERROR, meaning, cure, good, bad, file="larder.yaml")


def _sample(weight: str = "5 g", fills: str = "1 metric_teaspoon", source: str = "own-scales") -> str:
    density = f"{{method: level, weight: {weight}, fills: {fills}, source: {source}}}"
    return f"smoked salt:\n  allergens: {{eu: [], us: []}}\n  roles: [salt]\n  density:\n    - {density}\n"


UNKNOWN_SOURCE = _error(
    "unknown-source",
    "A figure names a source that the table of sources has not, so that nobody could look it up.",
    "Name a known source, such as own-scales for what was weighed in the school's kitchen.",
    _sample(),
    _sample(source="own-scale"),
)
BAD_WEIGHT = _error(
    "bad-weight",
    "A weight in the larder is a number over 0 and a unit of weight.",
    "Write it as 125 g.",
    _sample(),
    _sample(weight="5 grms"),
)
BAD_MEASURE = _error(
    "bad-measure",
    "A density says which measure is filled, and a bare cup or spoon differs from country to country.",
    "Write it as 1 us_cup, 1 metric_cup, 1 metric_tablespoon, 1 metric_teaspoon or 100 ml.",
    _sample(),
    _sample(fills="1 tsp"),
)
UNKNOWN_ALLERGEN = _error(
    "unknown-allergen",
    "A word under 'allergens' is none of those that the region's law names: it would print a wrong label.",
    "Use the law's word: cereals and nuts by their own names.",
    "celery salt:\n  allergens: {eu: [celery], us: []}\n",
    "celery salt:\n  allergens: {eu: [celeri], us: []}\n",
)
ALLERGENS_UNSAID = _error(
    "allergens-unsaid",
    "A new ingredient does not say which allergens it has, and silence would be read as none.",
    "Write allergens: {eu: [...], us: [...]}, with empty lists where it has none.",
    "smoked salt:\n  allergens: {eu: [], us: []}\n",
    "smoked salt:\n  roles: [salt]\n",
)
UNKNOWN_ROLE = _error(
    "unknown-role",
    "A role that no rule knows: rounding, balance and cautions would pass the ingredient by.",
    "Use a role that other ingredients have.",
    "smoked salt:\n  allergens: {eu: [], us: []}\n  roles: [salt]\n",
    "smoked salt:\n  allergens: {eu: [], us: []}\n  roles: [slat]\n",
)
NAME_TAKEN = _error(
    "name-taken",
    "A name or spelling already means another ingredient, so that recipes would be read as that one.",
    "Write the row under the ingredient's own name, or choose another spelling.",
    "unsalted butter:\n  also: [baker's butter]\n",
    "butter:\n  also: [baker's butter]\n",
)
IMPROBABLE_DENSITY = FaultCode(
    "improbable-density",
    Severity.ADVICE,
    "A measure of this ingredient would be lighter than dried leaves or heavier than any syrup.",
    "Weigh it again, and look at the unit and the measure.",
    good=_sample(),
    bad=_sample(weight="5 kg"),
    file="larder.yaml",
)


@dataclass(frozen=True)
class LarderReading:
    """What rows are read against.

    sources: keys of the table of sources. roles: those that rules know; None where any role may stand.
    strict: whether names must be free, and a new ingredient must say its allergens.
    """

    measures: Measures
    sources: Mapping[str, str]
    roles: frozenset[str] | None = None
    strict: bool = True

    def extended(self, larder: Larder, document: Document) -> tuple[Larder, tuple[Fault, ...]]:
        """The larder with the document's rows, and every fault; a row at fault changes nothing."""
        if not isinstance(document.data, dict):
            return larder, _not_a_mapping(document)
        rows = {row.key: row for row in larder.ingredients}
        faults: list[Fault] = []
        for name in document.data:
            found = _Row(self, larder, _part_of(document, name), name, document.key_place((name,)))
            ingredient = found.ingredient()
            faults += found.faults
            if ingredient is not None:
                rows[ingredient.key] = ingredient
        return Larder.of(tuple(rows.values())), tuple(faults)


def _not_a_mapping(document: Document) -> tuple[Fault, ...]:
    if document.data is None:
        return ()
    return (WRONG_KIND.fault(document.place(()), "a larder is a set of names, each with its keys"),)


def _part_of(document: Document, key: str) -> Document:
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
        )

    def _check_names(self, file: LarderRowFile) -> None:
        other = self.larder.find(self.name)
        if other is not None and not self._is_own(other):
            sentence = f"'{self.name}' is another name of '{other.key}'"
            self.faults.append(NAME_TAKEN.fault(self.at, sentence, f"write the row under '{other.key}'"))
        elif other is None and (file.allergens is None or None in (file.allergens.eu, file.allergens.us)):
            sentence = f"'{self.name}' does not say its allergens"
            self.faults.append(ALLERGENS_UNSAID.fault(self.at, sentence, ALLERGENS_UNSAID.cure))
        for index, word in enumerate(file.also):
            owner = self.larder.find(word)
            if owner is not None and not self._is_own(owner):
                place = self.document.place(("also", index))
                self.faults.append(NAME_TAKEN.fault(place, f"'{word}' means '{owner.key}' already"))

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


CODES: tuple[FaultCode, ...] = (
    UNKNOWN_SOURCE, BAD_WEIGHT, BAD_MEASURE, UNKNOWN_ALLERGEN, ALLERGENS_UNSAID, UNKNOWN_ROLE, NAME_TAKEN,
    IMPROBABLE_DENSITY,
)  # fmt: skip
