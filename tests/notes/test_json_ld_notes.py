"""A recipe in schema.org's vocabulary, alone or in a page: schema.org/Recipe, HowToStep, HowToSection."""

import json
from typing import Any

import pytest

from sitegen.notes.json_ld import duration_words
from sitegen.notes.proofing import proofed
from sitegen.notes.reading import draft_of
from sitegen.notes.values import Draft, Lore
from tests.notes.drafts import FOLDER

RECIPE: dict[str, Any] = {
    "@context": "https://schema.org",
    "@type": "Recipe",
    "name": "Seed &amp; honey bars",
    "description": "Chewy, and gone by noon.",
    "recipeYield": ["12 bars", "12"],
    "totalTime": "PT1H20M",
    "author": {"@type": "Person", "name": "A baker"},
    "recipeIngredient": [
        "150g porridge oats",
        "100 g butter",
        "3 tbsp honey",
        "\u00bd tsp salt",
        "80g light brown sugar",
    ],
    "recipeInstructions": [
        {"@type": "HowToStep", "text": "Heat the oven to 180C (160C fan)."},
        {"@type": "HowToStep", "text": "Melt the butter, honey and sugar, then stir in the oats and salt."},
        {"@type": "HowToStep", "text": "Press into a 20cm square tin and bake for 25 minutes until golden."},
    ],
}


def drafted(value: Any, lore: Lore, name: str = "a.json") -> Draft:
    text = value if isinstance(value, str) else json.dumps(value, indent=1)
    draft, faults = draft_of(text, name, name, lore)
    assert faults == ()
    assert draft is not None
    return draft


def test_a_recipe_becomes_a_draft_that_proofs(lore: Lore) -> None:
    draft = drafted(RECIPE, lore)
    found = proofed(draft.text, "recipe.yaml", FOLDER, lore)
    assert (found.errors, draft.missing, draft.slug) == ((), (), "seed-honey-bars")
    assert found.recipe is not None
    recipe = found.recipe
    assert (recipe.title, recipe.summary) == ("Seed & honey bars", "Chewy, and gone by noon.")
    assert (recipe.makes.count, recipe.makes.noun, recipe.serves) == (12, "bars", None)
    (part,) = recipe.components
    assert [line.text for line in part.lines][:2] == ["150 g porridge oats", "100 g butter"]
    assert [step.oven.degrees for step in part.steps if step.oven] == [160]
    assert "# 1 h 20 min (times are worked out from the steps)" in draft.text


@pytest.mark.parametrize(
    "wrapped",
    [
        [RECIPE],
        {"@graph": [{"@type": "WebPage"}, RECIPE]},
        {"@type": "Article", "mainEntity": RECIPE},
        RECIPE | {"@type": ["Recipe", "NewsArticle"]},
        RECIPE | {"@type": "https://schema.org/Recipe"},
    ],
)
def test_the_recipe_is_found_wherever_it_lies(wrapped: Any, lore: Lore) -> None:
    assert drafted(wrapped, lore).text == drafted(RECIPE, lore).text


def test_the_script_of_a_page_is_found(lore: Lore) -> None:
    script = f'<script type="application/ld+json">{json.dumps(RECIPE)}</script>'
    head = f'<script>let a = "<p>";</script>{script}'
    page = f"<!doctype html><html><head>{head}</head><body><p>Bars</p></body></html>"
    assert drafted(page, lore, "a.html").text == drafted(RECIPE, lore).text


INSTRUCTIONS = {
    "text": "Melt the butter.\nStir in the oats.",
    "texts": ["Melt the butter.", "Stir in the oats."],
    "html": "<ol><li>Melt the butter.</li><li>Stir in the oats.</li></ol>",
    "steps": [
        {"@type": "HowToStep", "name": "Melt the butter."},
        {"@type": "HowToStep", "text": "Stir in the oats."},
    ],
}


@pytest.mark.parametrize("kind", INSTRUCTIONS)
def test_instructions_of_any_form_are_steps(kind: str, lore: Lore) -> None:
    draft = drafted(RECIPE | {"recipeInstructions": INSTRUCTIONS[kind]}, lore)
    assert "- text: Melt the {butter}." in draft.text
    assert "- text: Stir in the {oats}." in draft.text


SECTIONS = [
    {
        "@type": "HowToSection",
        "name": "Base",
        "itemListElement": [{"@type": "HowToStep", "text": "Melt it."}],
    },
    {
        "@type": "HowToSection",
        "name": "Topping",
        "itemListElement": [{"@type": "HowToStep", "text": "Scatter."}],
    },
]


def test_steps_in_list_items_are_found_and_tips_are_notes(lore: Lore) -> None:
    """schema.org/ListItem (`item`), schema.org/HowToTip."""
    steps = [
        {"@type": "ListItem", "position": 1, "item": {"@type": "HowToStep", "text": "Melt the butter."}},
        {"@type": "ListItem", "position": 2, "item": {"@type": "HowToTip", "text": "Cool it first."}},
    ]
    section = {"@type": "HowToSection", "itemListElement": {"@type": "ItemList", "itemListElement": steps}}
    text = drafted(RECIPE | {"recipeInstructions": [section]}, lore).text
    assert "- text: Melt the {butter}." in text
    assert "notes: Cool it first." in text


@pytest.mark.parametrize(
    "given", [["12", "12 bars"], {"@type": "QuantitativeValue", "value": 12, "unitText": "bars"}]
)
def test_a_yield_is_told_once_whatever_its_form(given: Any, lore: Lore) -> None:
    text = drafted(RECIPE | {"recipeYield": given}, lore).text
    assert "makes: 12 bars" in text
    assert "serves:" not in text


def test_sections_over_one_list_of_ingredients_are_stages_of_one_component(lore: Lore) -> None:
    text = drafted(RECIPE | {"recipeInstructions": SECTIONS}, lore).text
    assert text.count("method:") == 1
    assert text.index("# in the notes: Base") < text.index("Melt it.")
    assert text.index("Melt it.") < text.index("# in the notes: Topping") < text.index("Scatter.")


def test_sections_over_lists_of_their_own_are_components(lore: Lore) -> None:
    listed = ["For the base:", "100 g butter", "For the topping:", "80g light brown sugar"]
    text = drafted(RECIPE | {"recipeInstructions": SECTIONS, "recipeIngredient": listed}, lore).text
    assert text.index("Melt it.") < text.index("opping:") < text.index("Scatter.")
    assert text.count("method:") == 2


@pytest.mark.parametrize(("given", "key"), [("Oat bars", "makes: 12 bars"), ("Oat cake", "serves: 12")])
def test_a_yield_of_a_bare_figure_counts_what_the_title_names(given: str, key: str, lore: Lore) -> None:
    assert key in drafted(RECIPE | {"name": given, "recipeYield": "12"}, lore).text


@pytest.mark.parametrize(
    ("iso", "words"),
    [
        ("PT1H20M", "1 h 20 min"),
        ("PT45M", "45 min"),
        ("P1DT2H", "1 days 2 h"),
        ("P", ""),
        ("soon", ""),
        ("PT90S", "90 s"),
    ],
)
def test_durations_of_iso_8601(iso: str, words: str) -> None:
    assert duration_words(iso) == words


BAD = {
    "no json": ("{", "not-json"),
    "deep": ("[" * 50_000, "not-json"),
    "deep object": ('{"a":' * 20_000 + "1" + "}" * 20_000, "not-json"),
    "no recipe": ('{"@type": "Person"}', "no-recipe-found"),
    "a number": ("12", "no-recipe-found"),
    "empty recipe": ('{"@type": "Recipe"}', "no-recipe-found"),
    "wrong kinds": (
        '{"@type": "Recipe", "recipeIngredient": {"a": [1]}, "recipeInstructions": 5}',
        "no-recipe-found",
    ),
    "nulls": ('{"@type": null, "@graph": [null, 1, true]}', "no-recipe-found"),
}


@pytest.mark.parametrize("name", BAD)
def test_json_that_is_no_recipe_is_told(name: str, lore: Lore) -> None:
    text, code = BAD[name]
    draft, faults = draft_of(text, "a.json", "a.json", lore)
    assert draft is None
    assert [fault.code for fault in faults] == [code]


def test_a_page_without_a_recipe_is_told(lore: Lore) -> None:
    for page in (
        "<html>",
        "<html><script type='application/ld+json'>{</script>",
        "<script type=application/ld+json>[]",
    ):
        draft, faults = draft_of(page, "a.html", "a.html", lore)
        assert draft is None
        assert [fault.code for fault in faults] == ["no-recipe-found"]


def test_a_line_that_is_told_stands_where_the_file_has_it(lore: Lore) -> None:
    text = json.dumps(
        RECIPE | {"recipeIngredient": ["150g porridge oats", "what the larder holds"]}, indent=1
    )
    draft, _ = draft_of(text, "a.json", "a.json", lore)
    assert draft is not None
    (lost,) = [one for one in draft.fates if one.fate == "not understood"]
    assert "what the larder holds" in text.splitlines()[lost.number - 1]
