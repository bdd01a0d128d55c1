"""A school whose theme means harm: its publish ends in a fault, and the old output stays."""

from pathlib import Path

import pytest

from sitegen.release.build import Refused
from tests.release.small_school import publish_school, tree_hashes


def dress(root: Path, name: str, text: str) -> None:
    folder = root / "themes" / "own"
    (folder / name).parent.mkdir(parents=True, exist_ok=True)
    (folder / "theme.yaml").write_text("name: Own\ninherits: oatcloth\n")
    (folder / name).write_text(text)
    site = root / "content" / "site.yaml"
    site.write_text(site.read_text().replace("theme: oatcloth", "theme: own"))


@pytest.mark.parametrize(
    ("name", "text", "words"),
    [
        ("templates/not-found.html", "{{ ''.__class__.__mro__ }}", "__class__"),
        ("templates/not-found.html", "{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}", "without end"),
        ("styles/card.css", "a{background:url(file:///etc/passwd)}", "file:///etc/passwd"),
        ("styles/9-own.css", "@import 'https://elsewhere.invalid/a.css';", "@import"),
        ("theme.yaml", "name: Own\ninherits: ../../content\n", "../../content"),
    ],
)
def test_a_hostile_theme_is_a_fault_and_the_output_stays(
    again: Path, name: str, text: str, words: str
) -> None:
    before = tree_hashes(again / "output")
    dress(again, name, text)
    with pytest.raises(Refused) as refused:
        publish_school(again)
    assert {fault.code for fault in refused.value.faults} == {"theme-unusable"}
    assert words in str(refused.value.faults)
    assert tree_hashes(again / "output") == before


def test_a_card_that_asks_for_a_file_is_a_fault(again: Path) -> None:
    dress(again, "templates/card.html", "<html lang=en><title>x</title><img src='file:///etc/passwd' alt=x>")
    with pytest.raises(Refused) as refused:
        publish_school(again)
    (fault,) = refused.value.faults
    assert fault.code == "theme-unusable"
    assert "file:///etc/passwd" in fault.sentence
