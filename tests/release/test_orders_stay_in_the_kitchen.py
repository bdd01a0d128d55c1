"""No order reaches the output: with an order file or without one, every byte is the same."""

from pathlib import Path

from sitegen.source.library import read_content
from tests.release.conftest import Done
from tests.release.small_school import publish_school, tree_hashes, write_school


def test_an_order_changes_not_one_byte_of_the_output(done: Done, tmp_path: Path) -> None:
    ordering = write_school(tmp_path)
    (ordering / "content" / "orders").mkdir()
    (ordering / "content" / "orders" / "zqmarketzq.yaml").write_text(
        "title: Zqmarketzq\nmake: {open-biscuits: 48 squares}\n"
    )
    assert [order.title for order in read_content(ordering).orders] == ["Zqmarketzq"]
    publish_school(ordering)
    found = tree_hashes(ordering / "output")
    assert len(found) > 20
    assert found == tree_hashes(done.output)
