"""The project's own tables but the larder: rows as written in `data/` -> the kitchen's frozen values.

These rows are ours: a wrong one raises at once (pydantic's ValidationError, or BrokenTable).
"""

from collections.abc import Mapping
from fractions import Fraction

from sitegen.kitchen.editions import Edition
from sitegen.kitchen.eggs import EggRow, EggTable
from sitegen.kitchen.measures import Measures
from sitegen.kitchen.ovens import GasMark, OvenTable, PrintedRow
from sitegen.kitchen.recipe import Tin
from sitegen.kitchen.tins import NamedTin, NominalLength, TinShape, TinTable, TinWords
from sitegen.source.figures import centimetres_in, grams_in, number_in
from sitegen.source.table_files import (
    EditionsFile,
    EggsFile,
    NamedTinFile,
    OvensFile,
    SourcesFile,
    TinsFile,
    TinShapeFile,
)


class BrokenTable(ValueError):
    """A figure of our own tables that cannot be read. text: as written."""

    def __init__(self, text: str) -> None:
        super().__init__(text)
        self.text = text


def figure(text: str) -> Fraction:
    """An exact number. Raises BrokenTable."""
    return _known(number_in(text), text)


def _known(value: Fraction | None, text: str) -> Fraction:
    if value is None:
        raise BrokenTable(text)
    return value


def egg_table(file: EggsFile, measures: Measures) -> EggTable:
    """Rows of eggs, in the file's order."""

    def grams(text: str) -> Fraction:
        return _known(grams_in(text, measures), text)

    return EggTable(
        tuple(
            EggRow(
                region=region,
                size=size,
                whole_g=grams(row.edible),
                white_g=grams(row.white),
                yolk_g=grams(row.yolk),
                source=row.source,
                shell_from_g=grams(row.shell_from),
            )
            for region, sizes in file.root.items()
            for size, row in sizes.items()
        )
    )


def oven_table(file: OvensFile) -> OvenTable:
    """Marks, the charts' lines, offsets and steps."""
    return OvenTable(
        gas_marks=tuple(
            GasMark(mark, figure(degrees)) for mark, degrees in file.gas_marks.fahrenheit.items()
        ),
        printed=tuple(
            PrintedRow(figure(row.celsius), figure(row.fahrenheit), row.gas) for row in file.printed.rows
        ),
        fan_offset_c=figure(file.fan_lower_by.celsius),
        fan_offset_f=figure(file.fan_lower_by.fahrenheit),
        lowest_c=figure(file.possible.lowest),
        highest_c=figure(file.possible.highest),
        step_c=figure(file.steps.celsius),
        step_f=figure(file.steps.fahrenheit),
    )


def tin_table(file: TinsFile, measures: Measures) -> TinTable:
    """Shapes, tins known by name, and sizes printed in round inches."""
    return TinTable(
        shapes=tuple(_shape(key, row, measures) for key, row in file.shapes.items()),
        named=tuple(
            NamedTin(name, _tin(name, row, measures), row.source, row.also)
            for name, row in file.named.items()
        ),
        nominal=tuple(
            NominalLength(figure(cm), figure(inches)) for cm, inches in file.nominal_inches.sizes.items()
        ),
        sold_cm=tuple(map(figure, file.sold_widths.cm)),
        sold_inches=tuple(map(figure, file.sold_widths.inches)),
    )


def _shape(key: str, row: TinShapeFile, measures: Measures) -> TinShape:
    return TinShape(
        key=key,
        solid=row.solid,
        words=tuple(row.words),
        names={
            region: TinWords(words.one, words.many, words.one_with_holes, words.many_with_holes)
            for region, words in row.names.items()
        },
        depth_cm=_known(centimetres_in(row.depth, measures), row.depth),
        source=row.source,
        taper_cm=_known(centimetres_in(row.taper, measures), row.taper),
        core_share=figure(row.core_share),
        depth_share=figure(row.depth_share),
        holds=figure(row.holds),
        keeps=row.keeps,
        family=row.family,
    )


def _tin(name: str, row: NamedTinFile, measures: Measures) -> Tin:
    """Straight sides where no base is given; as long as wide where no length is."""

    def cm(text: str) -> Fraction:
        return _known(centimetres_in(text, measures), text)

    length = row.length or row.width
    base_width = row.base_width or row.width
    return Tin(
        shape=row.shape,
        width_cm=cm(row.width),
        length_cm=cm(length),
        depth_cm=cm(row.depth),
        base_width_cm=cm(base_width),
        base_length_cm=cm(row.base_length or (length if row.length else base_width)),
        holes=row.holes,
        name=name,
    )


def editions(file: EditionsFile) -> Mapping[str, Edition]:
    """Key -> edition."""
    return {
        key: Edition(
            key=key,
            title=row.title,
            language=row.language,
            region=row.region,
            measuring=row.measuring,
            teaspoon=row.teaspoon,
            tablespoon=row.tablespoon,
            cup=row.cup,
            oven_scales=tuple(row.oven_scales),
            lengths=row.lengths,
            egg_region=row.egg_region,
            egg_size=row.egg_size,
            paper=row.paper,
            has_sticks=row.sticks,
            has_ounces=row.ounces,
            cup_fill=row.cup_fill,
        )
        for key, row in file.root.items()
    }


def source_words(file: SourcesFile) -> tuple[Mapping[str, str], Mapping[str, str]]:
    """Key -> source in full, and key -> the few words that a sheet prints, where there are any."""
    rows = file.root
    full = {key: row if isinstance(row, str) else row.full for key, row in rows.items()}
    return full, {key: row.short for key, row in rows.items() if not isinstance(row, str)}


def longest_first(words: Mapping[str, str]) -> Mapping[str, str]:
    """The same words, the longest phrase first, as the spelling of a region is applied."""
    return dict(sorted(words.items(), key=lambda pair: -len(pair[0])))
