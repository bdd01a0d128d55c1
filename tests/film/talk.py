"""A film of the sample school's cupcakes, line by line, with other lines in the place of some."""

from functools import cache
from pathlib import Path

from sitegen.film.values import Cue, FilmReading
from sitegen.kitchen.recipe import Recipe
from sitegen.source.films import FilmReader
from sitegen.source.library import read_content
from sitegen.source.school import Content

SAMPLE = Path(__file__).parents[1] / "source" / "sample_school"
SLUG = "blackcurrant-and-bay-cupcakes"
EACH_S, PAUSE_S = 8, 1
LINES = {
    "start": "hello and welcome",
    "whisk": "whisk two eggs and a hundred and twenty grams of buttermilk and a hundred of oil until smooth",
    "sift": "now sift in a hundred and fifty grams of plain flour and a hundred and sixty of caster sugar",
    "soda": "and half a teaspoon of bicarbonate of soda and stop when no streaks remain",
    "fill": "then fill each case two thirds full",
    "bake": "and bake at a hundred and fifty fan for twenty two to twenty four minutes until it springs",
    "cool": "cool them on a rack for an hour until no warmth is left",
    "milk": "now the custard bring a hundred and sixty grams of whole milk to a simmer",
    "yolks": "now whisk two egg yolks half the caster sugar and thirteen grams of cornflour into it and boil",
    "chill": "and chill that for two hours",
    "beat": "next beat eighty grams of blackcurrant puree into the base buttercream a spoonful at a time",
    "core": "now core each cake of the sponge and fill it with custard and pipe the buttercream on top",
    "end": "and that is that",
}


@cache
def sample() -> Content:
    return read_content(SAMPLE)


def cupcakes() -> Recipe:
    return next(recipe for recipe in sample().recipes if recipe.slug == SLUG)


def film(**others: str) -> FilmReading:
    """The film with other words in the lines that are named; a line of no words is left out."""
    return film_of([line for line in (LINES | others).values() if line])


def film_of(lines: list[str]) -> FilmReading:
    content = sample()
    assert content.school is not None
    titles = [*(recipe.title for recipe in content.recipes), "Plum and almond cake"]
    reader = FilmReader(content.recipes, titles, content.tables, content.school.written_in)
    step_s = EACH_S + PAUSE_S
    cues = [Cue(number * step_s, number * step_s + EACH_S, line) for number, line in enumerate(lines)]
    return reader.reading(cupcakes(), cues)


def told(reading: FilmReading) -> list[tuple[str, str, str, str]]:
    return [(each.kind.value, each.about, each.said, each.written) for each in reading.findings]
