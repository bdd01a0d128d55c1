"""A row of a larder, the project's own or `content/larder.yaml` -> Ingredient.

A row of a name that is known extends that ingredient by the keys it states; any other row adds one.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from difflib import get_close_matches
from fractions import Fraction
from typing import Literal

from pydantic import Field, RootModel

from sitegen.faults import Fault, FaultCode, Place, Severity
from sitegen.kitchen.allergens import EU_ORDER, US_ORDER
from sitegen.kitchen.larder import Density, Ingredient, Larder, Piece
from sitegen.kitchen.measures import Measures
from sitegen.source.figures import grams_in, millilitres_in
from sitegen.source.models import FileModel, Short, YesNo
from sitegen.source.nodes import Path
from sitegen.source.reader import Document
from sitegen.source.shapes import WRONG_KIND, shaped

LIGHTEST, HEAVIEST = Fraction(1, 20), Fraction(2)
"""Grams a millilitre: dried leaves are heavier than the one, syrups lighter than the other."""

Method = Literal[
    "spooned", "scooped", "sifted", "packed", "level", "liquid", "whole", "chopped", "sliced", "grated",
    "mashed", "crushed", "crumbled",
]  # fmt: skip


class DensityFile(FileModel):
    """What fills a measure."""

    method: Method = Field(description="How the measure is filled.", examples=["spooned"])
    weight: Short = Field(description="What is in it.", examples=["125 g"])
    fills: Short = Field(description="The measure.", examples=["1 us_cup", "1 metric_tablespoon"])
    source: Short = Field(description="A key of sources.yaml, with a number.", examples=["own-scales"])


class PieceFile(FileModel):
    """What one of a counted thing weighs."""

    weight: Short = Field(description="Without what is thrown away.", examples=["118 g"])
    size: Short | None = Field(None, description="Where sizes differ.", examples=["medium"])
    part: Short | None = Field(None, description="Where a part is taken.", examples=["zest", "juice"])
    source: Short = Field(description="A key of sources.yaml, with a number.", examples=["own-scales"])


class AllergensFile(FileModel):
    """What the laws of two regions name."""

    eu: list[Short] | None = Field(None, description="Of the EU and UK fourteen.", examples=[["wheat", "eggs"]])
    us: list[Short] | None = Field(None, description="Of the US nine.", examples=[["wheat", "egg"]])


class LarderRowFile(FileModel):
    """What a baker knows of one ingredient."""

    us: Short | None = Field(None, description="Its name in the United States.")
    au: Short | None = Field(None, description="Its name in Australia.")
    plural: Short | None = Field(None, description="Of what is counted.", examples=["lemons"])
    also: list[Short] = Field(default=[], description="Other spellings that are read as it.")
    density: list[DensityFile] | None = Field(None, description="The usual way of filling first.")
    pieces: list[PieceFile] | None = Field(None, description="What one weighs.")
    allergens: AllergensFile | None = Field(None, description="Empty lists where it has none.")
    roles: list[Short] | None = Field(None, description="What it does in a recipe.", examples=[["flour"]])
    measured_by: Literal["cup", "stick", "spoon", "weight", "piece"] | None = Field(
        None, description="The honest measure of a cup edition."
    )
    label_advice: YesNo | None = Field(None, description="Whether the packet decides what is in it.")


class LarderFile(RootModel[dict[Short, LarderRowFile]]):
    """Ingredients of the school's own: British name -> row."""


def _error(code: str, meaning: str, cure: str, good: str, bad: str) -> FaultCode:
    return FaultCode(code, Severity.ERROR, meaning, cure, good, bad, file="larder.yaml")


_SALT = "smoked salt:\n  allergens: {{eu: [], us: []}}\n  roles: [salt]\n  {0}\n"
_DENSITY = _SALT.format("density:\n    - {{method: {0}, weight: {1}, fills: {2}, source: {3}}}")

UNKNOWN_SOURCE = _error(
    "unknown-source",
    "A figure names a source that the table of sources has not, so that nobody could look it up.",
    "Name a known source, such as own-scales for what was weighed in the school's kitchen.",
    _DENSITY.format("level", "5 g", "1 metric_teaspoon", "own-scales"),
    _DENSITY.format("level", "5 g", "1 metric_teaspoon", "own-scale"),
)
BAD_WEIGHT = _error(
    "bad-weight",
    "A weight in the larder is a number over 0 and a unit of weight.",
    "Write it as 125 g.",
    _DENSITY.format("level", "5 g", "1 metric_teaspoon", "own-scales"),
    _DENSITY.format("level", "5 grms", "1 metric_teaspoon", "own-scales"),
)
BAD_MEASURE = _error(
    "bad-measure",
    "A density says which measure is filled, and a bare cup or spoon differs from country to country.",
    "Write it as 1 us_cup, 1 metric_cup, 1 metric_tablespoon, 1 metric_teaspoon or 100 ml.",
    _DENSITY.format("level", "5 g", "1 metric_teaspoon", "own-scales"),
    _DENSITY.format("level", "5 g", "1 tsp", "own-scales"),
)
UNKNOWN_ALLERGEN = _error(
    "unknown-allergen",
    "A word under 'allergens' is none of those that the region's law names: it would print a wrong label.",
    "Use the law's word: cereals and nuts by their own names.",
    "smoked salt:\n  allergens: {eu: [celery], us: []}\n",
    "smoked salt:\n  allergens: {eu: [celeri], us: []}\n",
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
    good=_DENSITY.format("level", "5 g", "1 metric_teaspoon", "own-scales"),
    bad=_DENSITY.format("level", "5 kg", "1 metric_teaspoon", "own-scales"),
    file="larder.yaml",
)


@dataclass(frozen=True)
class LarderReading:
    """What rows are read against.

    sources: keys of the table of sources. roles: those that rules know; None where any role may stand.
    strict: whether a new ingredient must say its allergens, and names must be free.
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
            ingredient, more = found.read()
            faults += more
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


@dataclass(frozen=True)
class _Row:
    """One row while it is read. document: its own part; at: the place of its name."""

    reading: LarderReading
    larder: Larder
    document: Document
    name: str
    at: Place

    def read(self) -> tuple[Ingredient | None, tuple[Fault, ...]]:
        """The ingredient, new or extended; None where an error stands in the row."""
        if not isinstance(self.document.data, dict):
            fault = WRONG_KIND.fault(self.at, f"'{self.name}' has no keys under it", "write its keys, indented")
            return None, (fault,)
        file, shape_faults = shaped(self.document, LarderRowFile)
        if file is None:
            return None, shape_faults
        faults = tuple(self._faults(file))
        is_bad = any(fault.severity is Severity.ERROR for fault in faults)
        return (None if is_bad else self._ingredient(file)), faults

    @property
    def _known(self) -> Ingredient | None:
        """The ingredient of exactly this name; one that merely bears it as an alias is another."""
        found = self.larder.find(self.name)
        return found if found and found.key.casefold() == self.name.casefold() else None

    def _faults(self, file: LarderRowFile) -> Iterator[Fault]:
        if self.reading.strict:
            yield from self._name_faults(file)
        for index, density in enumerate(file.density or ()):
            yield from self._density_faults(("density", index), density)
        for index, piece in enumerate(file.pieces or ()):
            yield from self._weight_faults(("pieces", index, "weight"), piece.weight)
            yield from self._source_faults(("pieces", index, "source"), piece.source)
        for regime, order in (("eu", EU_ORDER), ("us", US_ORDER)):
            words = getattr(file.allergens, regime, None) or ()
            yield from self._unknown(UNKNOWN_ALLERGEN, ("allergens", regime), words, order)
        if self.reading.roles is not None:
            yield from self._unknown(UNKNOWN_ROLE, ("roles",), file.roles or (), sorted(self.reading.roles))

    def _name_faults(self, file: LarderRowFile) -> Iterator[Fault]:
        other = self.larder.find(self.name)
        if other is not None and self._known is None:
            yield NAME_TAKEN.fault(
                self.at, f"'{self.name}' is another name of '{other.key}'", f"write the row under '{other.key}'"
            )
        elif other is None and (file.allergens is None or None in (file.allergens.eu, file.allergens.us)):
            yield ALLERGENS_UNSAID.fault(self.at, f"'{self.name}' does not say its allergens", ALLERGENS_UNSAID.cure)
        for index, word in enumerate(file.also):
            owner = self.larder.find(word)
            if owner is not None and owner.key.casefold() != self.name.casefold():
                yield NAME_TAKEN.fault(self.document.place(("also", index)), f"'{word}' means '{owner.key}' already")

    def _density_faults(self, path: Path, file: DensityFile) -> Iterator[Fault]:
        yield from self._source_faults((*path, "source"), file.source)
        faults = [*self._weight_faults((*path, "weight"), file.weight), *self._measure_faults((*path, "fills"), file.fills)]
        yield from faults
        if not faults:
            grams_per_ml = self._density(file).grams_per_ml
            if not LIGHTEST <= grams_per_ml <= HEAVIEST:
                place = self.document.place((*path, "weight"))
                sentence = f"{file.weight} in {file.fills} is {float(grams_per_ml):.3g} g a millilitre"
                yield IMPROBABLE_DENSITY.fault(place, sentence, IMPROBABLE_DENSITY.cure)

    def _weight_faults(self, path: Path, text: str) -> Iterator[Fault]:
        if self._grams(text) is None:
            yield BAD_WEIGHT.fault(self.document.place(path), f"'{text}' is no weight", BAD_WEIGHT.cure)

    def _measure_faults(self, path: Path, text: str) -> Iterator[Fault]:
        if self._millilitres(text) is None:
            yield BAD_MEASURE.fault(self.document.place(path), f"'{text}' is no known measure", BAD_MEASURE.cure)

    def _source_faults(self, path: Path, text: str) -> Iterator[Fault]:
        yield from self._unknown(UNKNOWN_SOURCE, path, (text.split(" ")[0],), self.reading.sources)

    def _unknown(
        self, code: FaultCode, path: Path, words: "list[str] | tuple[str, ...]", known: "Mapping[str, str] | list[str] | tuple[str, ...]"
    ) -> Iterator[Fault]:
        for index, word in enumerate(words):
            if word not in known:
                near = get_close_matches(word, known, n=1, cutoff=0.6)
                place = self.document.place((*path, index) if isinstance(words, list) else path)
                yield code.fault(place, f"'{word}' is not known", f"did you mean '{near[0]}'?" if near else code.cure)

    def _grams(self, text: str) -> Fraction | None:
        """The weight where it is one, and over 0."""
        return grams_in(text, self.reading.measures) or None

    def _millilitres(self, text: str) -> Fraction | None:
        return millilitres_in(text, self.reading.measures) or None

    def _density(self, file: DensityFile) -> Density:
        grams, millilitres = self._grams(file.weight), self._millilitres(file.fills)
        return Density(file.method, grams or Fraction(0), millilitres or Fraction(0), file.source)

    def _piece(self, file: PieceFile) -> Piece:
        return Piece(self._grams(file.weight) or Fraction(0), file.source, file.size or "", file.part or "")

    def _ingredient(self, file: LarderRowFile) -> Ingredient:
        """The known ingredient with what the row states in its place; other spellings are added."""
        base = self._known or Ingredient(self.name, {"uk": self.name})
        regional = {region: name for region, name in (("us", file.us), ("au", file.au)) if name}
        stated = {
            "plural": file.plural,
            "densities": None if file.density is None else tuple(map(self._density, file.density)),
            "pieces": None if file.pieces is None else tuple(map(self._piece, file.pieces)),
            "allergens_eu": _tuple(file.allergens and file.allergens.eu),
            "allergens_us": _tuple(file.allergens and file.allergens.us),
            "roles": None if file.roles is None else frozenset(file.roles),
            "measured_by": file.measured_by,
            "label_advice": file.label_advice,
        }
        changes = {key: value for key, value in stated.items() if value is not None}
        return replace(
            base, names={**base.names, **regional}, aliases=(*base.aliases, *file.also), **changes  # type: ignore[arg-type]
        )


def _tuple(words: list[str] | None) -> tuple[str, ...] | None:
    return None if words is None else tuple(words)


CODES: tuple[FaultCode, ...] = (
    UNKNOWN_SOURCE, BAD_WEIGHT, BAD_MEASURE, UNKNOWN_ALLERGEN, ALLERGENS_UNSAID, UNKNOWN_ROLE, NAME_TAKEN,
    IMPROBABLE_DENSITY,
)  # fmt: skip
