"""No price reaches the output: with a price list or without one, every byte is the same."""

from pathlib import Path

from sitegen.release.asking import BatchWords
from sitegen.release.costs import asked_cost
from tests.release.conftest import Done
from tests.release.small_school import publish_school, tree_hashes, write_school

PRICES = """\
currency: GBP
margin: 65 %
labour: 71.93 per hour
portion-costs: {zqboxzq: 0.7351}
prices:
  plain flour: 83.17 per 1.5 kg
  caster sugar: 64.29 per 1 kg
  unsalted butter: 59.83 per 250 g
"""


def test_a_price_list_changes_not_one_byte_of_the_output(done: Done, tmp_path: Path) -> None:
    priced = write_school(tmp_path)
    (priced / "content" / "prices.yaml").write_text(PRICES)
    publish_school(priced)
    assert asked_cost(priced, "open-biscuits", BatchWords()).missing == ()
    found = tree_hashes(priced / "output")
    assert len(found) > 20
    assert found == tree_hashes(done.output)
