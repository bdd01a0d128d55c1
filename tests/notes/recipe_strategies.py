"""Random recipe files, as values of JSON: every key that a file may have, and texts full of YAML's traps."""

import string

from hypothesis import strategies as st

LETTERS = string.ascii_letters + "éß½ "
words = st.text(
    st.sampled_from(LETTERS + "'\"&#:,.%!?()[]*-@|>`~^=+\\/0123456789"), min_size=1, max_size=40
).filter(lambda text: bool(text.strip()) and "{" not in text)
titles = st.text(st.sampled_from(string.ascii_letters + " '&-é#:"), min_size=1, max_size=30).filter(str.strip)
minutes = st.sampled_from(
    ["3 min", "22-24 min", "1 h 30 min", "8-12 h", "2 days", "90 s", "45 min-1 h 15 min", "1 1/3 min"]
)
lines = st.sampled_from(
    [
        "150 g plain flour, sifted",
        "1 1/2 tbsp caster sugar",
        "2 medium eggs",
        "1 lemon, zest only",
        "a pinch of salt",
        "120 g buttermilk (shaken), at room temperature, optional",
        "100 g sunflower oil or rapeseed oil",
        "1/3 cup honey",
        "500 g of Base buttercream",
        "walnuts, for the top",
        "15 g fresh yeast, or 5 g instant yeast",
        "10-12 pecans",
    ]
)
ovens = st.sampled_from(["150 C fan", "170 C conventional", "350 F", "gas 4", "gas 1/2"])


def plain(text: str) -> str:
    """Words without an amount that would have to stand in braces."""
    return "".join(" " if letter.isdigit() or letter in "½" else letter for letter in text).strip() or "Go on"


steps = st.fixed_dictionaries(
    {"text": words.map(plain).map(lambda text: f"{text} {{118 C}} on {{2 cm}} {{160 C fan}}")},
    optional={
        "hands-on": minutes,
        "wait": minutes,
        "oven": ovens,
        "until": words.map(plain),
        "fill": st.sampled_from(["2/3", "1/2", "3/4", "1"]),
        "within": st.sampled_from(["10 min", "2 h", "90 s"]),
        "holds": st.sampled_from(["2 days chilled", "8 h", "30 min, covered"]),
        "tools": st.lists(titles, min_size=1, max_size=2),
        "waits-in": titles,
        "heat": st.sampled_from(["hob", "fridge", "freezer"]),
        "grows": st.sampled_from(["yes", "no"]),
        "after": st.lists(titles, min_size=1, max_size=2),
        "tutorial": st.sampled_from(["lining-tins", "a1"]),
    },
)
parts = st.fixed_dictionaries(
    {"method": st.lists(steps, min_size=1, max_size=3)},
    optional={
        "ingredients": st.lists(lines, max_size=5),
        "kind": st.sampled_from(["creamed cake", "oil cake", "enriched bun"]),
        "bake-loss": st.sampled_from(["10 %", "12.5 %", "0.3 %"]),
        "dough": st.fixed_dictionaries(
            {"temperature": st.sampled_from(["26 C", "77 F", "24.5 C"])},
            optional={
                "room": st.just("70 F"),
                "flour": st.just("20 C"),
                "friction": st.sampled_from(["9 C", "stand mixer", "16 F"]),
            },
        ),
        "keeps": words
        | st.fixed_dictionaries(
            {"room": st.sampled_from(["2 days", "no", "12 h"])},
            optional={"fridge": st.just("1-2 weeks"), "freezer": st.just("3 months"), "note": words},
        ),
    },
)
larder_rows = st.fixed_dictionaries(
    {},
    optional={
        "us": titles,
        "plural": titles,
        "also": st.lists(titles, min_size=1, max_size=2),
        "roles": st.lists(st.sampled_from(["sugar", "fat"]), min_size=1, max_size=2),
        "allergens": st.sampled_from(
            [{"eu": ["wheat"], "us": []}, {"eu": []}, {"eu": [], "us": [], "au": ["wheat"]}]
        ),
        "label-advice": st.sampled_from(["yes", "no"]),
        "measured-by": st.sampled_from(["spoon", "weight", "cup"]),
        "density": st.just(
            [{"method": "level", "weight": "196 g", "fills": "1 metric_cup", "source": "own-scales"}]
        ),
        "pieces": st.just([{"weight": "2 oz", "size": "large", "source": "own-scales"}]),
        "composition": st.just(
            {
                "fat": "<0.5",
                "saturates": "0",
                "carbohydrate": "99",
                "sugars": "99",
                "protein": "0.1",
                "salt": "0.01",
                "source": "packet",
            }
        ),
    },
)
recipes = st.fixed_dictionaries(
    {
        "title": titles,
        "summary": words,
        "makes": st.sampled_from(
            ["12 cupcakes", "12 rolls of 85 g dough", "900 g", "1 loaf", "6 bars of 2 oz", "10 1/2 pies"]
        ),
        "components": st.dictionaries(titles.map(str.strip), parts, min_size=1, max_size=3),
    },
    optional={
        "serves": st.sampled_from(["8", "8-10"]),
        "tin": st.sampled_from(
            ["muffin 12", "two 20 cm round", "900 g loaf", "30 x 20 cm rectangle, 5 cm deep"]
        ),
        "tags": st.lists(words, min_size=1, max_size=3),
        "release": st.fixed_dictionaries(
            {},
            optional={
                "subscribers": st.just("2026-07-03"),
                "public": st.just("2026-07-10"),
                "public-shows": st.just("everything"),
            },
        ).filter(bool),
        "video": st.fixed_dictionaries(
            {"address": st.just("https://video.example/a?b=c#d")},
            optional={
                "published": st.just("2026-07-11"),
                "chapters": st.just(["0:00 What we make", "1:25 The: dough", "61:05 End"]),
            },
        ),
        "swaps": st.just(["buttermilk", "something else"]),
        "base-recipes": st.sampled_from(
            [
                {"Base buttercream": {"made": "for each", "spare": "5 %"}},
                {"Base buttercream": {"spare": "2.5 %"}},
            ]
        ),
        "larder": st.dictionaries(st.sampled_from(["zorb sugar", "Quill's crumbs"]), larder_rows, max_size=2),
        "notes": st.lists(words, min_size=1, max_size=4).map("\n\n".join),
        "revisions": st.just(
            [
                {"date": "2026-07-20", "note": "Oil: 100 g.", "notify": "yes"},
                {"date": "2026-08-01", "note": "# two"},
            ]
        ),
        "said-otherwise": st.just(
            [{"at": "2:31", "about": "oven", "because": "Meant: so."}, {"about": "salt", "because": "Yes."}]
        ),
        "settled": st.just({"balance-unusual": "It's meant: dense."}),
    },
)
