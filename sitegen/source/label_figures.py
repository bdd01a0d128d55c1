"""What a packet says of 100 g, as a baker copies it into a larder -> Composition."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from sitegen.faults import Fault, FaultCode, Severity
from sitegen.kitchen.larder import Composition
from sitegen.source.figures import number_in
from sitegen.source.larder_file import CompositionFile
from sitegen.source.nodes import Path
from sitegen.source.reader import Document

PATH: Path = ("composition",)
MOST_IN_100_G = 101
"""Grams: labels round each figure to the gram, so that all of them may come to a little over 100."""


def _sample(fat: str = "0.2", saturates: str = "0.1") -> str:
    rest = "carbohydrate: 1.4, sugars: 0.8, fibre: 0.3, protein: 0.5, salt: 96, source: packet"
    figures = f"fat: {fat}, saturates: {saturates}, {rest}"
    return f"  composition: {{{figures}}}\n"


LABEL_FIGURE = FaultCode(
    "label-figure",
    Severity.ERROR,
    "A figure of a composition is the grams in 100 g, as the packet prints them.",
    "Write the number alone, such as 1.2, or <0.5 where the packet says so.",
    _sample(),
    _sample(fat="little"),
    file="larder.yaml",
)
IMPOSSIBLE_COMPOSITION = FaultCode(
    "impossible-composition",
    Severity.ERROR,
    "No food holds more than 100 g in 100 g, more saturates than fat, or more sugars than carbohydrate.",
    "Copy the packet's column for 100 g once more.",
    _sample(),
    _sample(saturates="2"),
    file="larder.yaml",
)
CODES = (LABEL_FIGURE, IMPOSSIBLE_COMPOSITION)


def label_figures(file: CompositionFile, document: Document) -> tuple[Composition | None, tuple[Fault, ...]]:
    """The composition of a larder's row, and the faults in its figures.

    document: the row's own part of the file. None where a figure cannot be read or is impossible.
    """
    figures = {name: _grams(text) for name, text in _texts(file)}
    faults = [
        LABEL_FIGURE.fault(document.place((*PATH, name)), f"'{text}' is no number of grams")
        for name, text in _texts(file)
        if figures[name] is None
    ]
    if faults:
        return None, tuple(faults)
    known = {name: grams for name, grams in figures.items() if grams is not None}
    composition = Composition(**({"fibre": Fraction(0)} | known), source=file.source)
    impossible = tuple(_impossible(composition, document))
    return (None if impossible else composition), impossible


def _texts(file: CompositionFile) -> Iterator[tuple[str, str]]:
    """Each figure that is written, by its key; what a packet may leave out counts as none."""
    for name in type(file).model_fields:
        text = getattr(file, name)
        if name != "source" and text is not None:
            yield name, text


def _grams(text: str) -> Fraction | None:
    """'1.2' -> 6/5; '<0.5', as packets print what is too little to tell, counts as half of that."""
    number = number_in(text.removeprefix("<").removesuffix(" g"))
    return number / 2 if number is not None and text.startswith("<") else number


def _impossible(food: Composition, document: Document) -> Iterator[Fault]:
    whole = replace(food, saturates=Fraction(0), sugars=Fraction(0))
    total = sum((value for value in vars(whole).values() if isinstance(value, Fraction)), Fraction(0))
    if total > MOST_IN_100_G:
        sentence = f"100 g would hold {float(total):.4g} g"
        yield IMPOSSIBLE_COMPOSITION.fault(document.key_place(PATH), sentence)
    for part, whole_name in (("saturates", "fat"), ("sugars", "carbohydrate")):
        if getattr(food, part) > getattr(food, whole_name):
            sentence = f"more {part} than {whole_name}"
            yield IMPOSSIBLE_COMPOSITION.fault(document.place((*PATH, part)), sentence)
