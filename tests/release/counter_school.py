"""A school of three plain recipes that share one base, and an order whose sums can be done by hand."""

from datetime import UTC, datetime
from pathlib import Path

from sitegen.release.orders import AskedOrder, OrderWords, asked_order
from tests.release.small_school import SITE

WEDNESDAY = datetime(2026, 11, 25, 12, tzinfo=UTC)

BASE = """\
title: Base icing
summary: Butter and sugar.
makes: 600 g
components:
  Icing:
    ingredients:
      - 200 g unsalted butter
      - 400 g icing sugar
    method:
      - text: Beat {unsalted butter} and {icing sugar}.
        hands-on: 10 min
    keeps: {fridge: 10 days}
"""
BUNS = """\
title: Iced buns
summary: Small and round.
makes: 12 buns
tin: muffin 12
base-recipes:
  Base icing: {spare: 10 %}
components:
  Batter:
    ingredients:
      - 300 g plain flour
      - 2 medium eggs
      - 3 egg yolks
      - 2 lemons, zest only
      - 100 g sunflower oil or rapeseed oil
      - 20 g demerara sugar, optional
      - unsalted butter, for the tin
    method:
      - text: >-
          Butter the tin with {unsalted butter}. Whisk {plain flour}, {eggs}, {egg yolks},
          {lemons}, {sunflower oil} and {demerara sugar}.
        hands-on: 10 min
      - text: Bake.
        oven: 160 C fan
        wait: 20 min
        until: they spring back
      - text: Cool.
        wait: 30 min
  Finish:
    ingredients:
      - all of Batter
      - 240 g of Base icing
    method:
      - text: Spread {Base icing} on {Batter}.
        hands-on: 12 min
        grows: yes
"""
CAKE = """\
title: Almond cake
summary: Flat and plain.
makes: 1 cake
tin: 20 cm round
components:
  Cake:
    ingredients:
      - 100 g plain flour
      - 150 g ground almonds
      - 4 egg whites
      - 30 g lemon juice
      - 120 g of Base icing
    method:
      - text: Stir {plain flour}, {ground almonds}, {egg whites} and {lemon juice} into {Base icing}.
        hands-on: 15 min
      - text: Bake.
        oven: 180 C fan
        wait: 40 min
        until: it is brown
"""
PRICES = """\
currency: GBP
labour: 12.00 per hour
portion-costs: {box: 0.10}
batch-costs: {oven: 0.50}
prices:
  plain flour: 1.50 per 1.5 kg
  icing sugar: 2.00 per 1 kg
  unsalted butter: 2.00 per 250 g
  eggs: 3.00 per 12
  ground almonds: 2.00 per 200 g
  lemons: 1.00 per 4
  lemon juice: 1.00 per 100 g
  sunflower oil: 2.00 per 1 l
"""
ORDER = """\
title: Market day
ready-by: Saturday 09:00
make:
  iced-buns: 36 buns
  almond-cake: 2 cakes
  base-icing: 300 g
"""


def write_counter(root: Path) -> Path:
    """The school in a folder; its order is `content/orders/market.yaml`."""
    content = root / "content"
    for slug, text in {"base-icing": BASE, "iced-buns": BUNS, "almond-cake": CAKE}.items():
        (content / "recipes" / slug).mkdir(parents=True)
        (content / "recipes" / slug / "recipe.yaml").write_text(text)
    (content / "orders").mkdir()
    (content / "orders" / "market.yaml").write_text(ORDER)
    (content / "site.yaml").write_text(SITE)
    (content / "prices.yaml").write_text(PRICES)
    return root


def asked(root: Path, **words: object) -> AskedOrder:
    """Its market day, asked for on a Wednesday."""
    return asked_order(root, Path("market"), OrderWords(**words), WEDNESDAY)  # type: ignore[arg-type]
