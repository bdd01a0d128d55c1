"""The live site holds what publish makes, byte for byte, and what is not out yet as well."""

from pathlib import Path

import pytest

from sitegen.desk.live_files import card_asked, printed_card, theme_file
from sitegen.desk.live_pictures import LivePictures
from sitegen.desk.live_site import LiveSite, NotMade
from sitegen.desk.reading import Reading
from sitegen.press.leaf import Tree
from tests.desk.running_desk import read_again, read_all
from tests.release.small_school import NOON, SUMMER, canary, write_recipe, write_school

ONLY_PUBLISHED = ("404.html", "offline.js", "bundles/")
"""What a preview leaves out: pages of a host, what keeps pages on a device, what needs every card printed."""


def read(root: Path) -> Reading:
    reading = Reading(root, lambda: NOON, SUMMER)
    read_all(reading)
    return reading


def site_of(reading: Reading) -> LiveSite:
    return LiveSite(reading, LivePictures(reading.bench.root, reading.bench.cache))


@pytest.fixture(scope="module")
def as_written(tmp_path_factory: pytest.TempPathFactory) -> Reading:
    """The small school as it is written, for tests that save nothing."""
    return read(write_school(tmp_path_factory.mktemp("as-written") / "school"))


@pytest.fixture
def school(tmp_path: Path) -> Path:
    """The same, to write into."""
    return write_school(tmp_path / "school")


def test_all_that_publish_makes_is_there_byte_for_byte(published_school: Path) -> None:
    school = published_school
    reading = read(school)
    pictures = LivePictures(reading.bench.root, reading.bench.cache)
    site = LiveSite(reading, pictures)
    published = {
        path.relative_to(school / "output").as_posix(): path.read_bytes()
        for tree in Tree
        for path in sorted((school / "output" / tree).rglob("*"))
        if path.is_file()
    }
    assert len(published) > 100
    # A browser asks for a page first, and then for its pictures.
    for place in sorted(published, key=lambda each: "/pictures/" in each):
        tree, _, path = place.partition("/")
        if path.startswith(ONLY_PUBLISHED):
            continue
        if path.startswith("theme/"):
            made = theme_file(reading.bench, path)
        elif path.startswith("pictures/"):
            made = pictures.cut(path)
        elif path.startswith("cards/"):
            asked = card_asked(reading, pictures, path)
            made = printed_card(asked) if asked else None
        else:
            page = site.page(Tree(tree), path)
            made = page.body if page else None
        assert made == published[place], place


@pytest.mark.parametrize("slug", ["draft-biscuits", "coming-biscuits"])
def test_what_is_not_out_has_pages_that_no_list_names(as_written: Reading, slug: str) -> None:
    site = site_of(as_written)
    for tree in (Tree.PUBLIC, Tree.SUBSCRIBERS):
        page = site.page(tree, f"recipes/{slug}.html")
        assert page is not None
        assert page.slug == slug
        assert canary(slug, "summary").encode() in page.body
    front = site.page(Tree.PUBLIC, "index.html")
    assert front is not None
    assert slug.encode() not in front.body


def test_a_page_for_everyone_holds_nothing_that_is_for_subscribers(as_written: Reading) -> None:
    page = site_of(as_written).page(Tree.PUBLIC, "recipes/draft-biscuits.html")
    assert page is not None
    assert canary("draft-biscuits", "step").encode() not in page.body


def test_faults_stand_in_the_place_of_one_page_and_the_others_live_on(school: Path) -> None:
    write_recipe(school, "open-biscuits", preparation="soft\n      - 10 g moonflower dust")
    site = site_of(read(school))
    with pytest.raises(NotMade) as problem:
        site.page(Tree.PUBLIC, "recipes/open-biscuits.html")
    assert problem.value.title == "Open biscuits"
    assert [fault.code for fault in problem.value.faults] == ["unknown-ingredient"]
    assert site.page(Tree.PUBLIC, "recipes/teaser-biscuits.html")
    front = site.page(Tree.PUBLIC, "index.html")
    assert front is not None
    assert b"open-biscuits" not in front.body


@pytest.mark.parametrize(
    "path",
    [
        "recipes/nothing.html",
        "recipes/../../content/site.yaml",
        "../content/site.yaml",
        "recipes/open-biscuits/../../../content/site.yaml.html",
        "/etc/passwd",
        "pictures/0000000000000000-480.webp",
        "recipes/.html",
        "",
    ],
)
def test_an_address_of_nothing_leads_nowhere(as_written: Reading, path: str) -> None:
    bench = as_written.bench
    pictures = LivePictures(bench.root, bench.cache)
    assert site_of(as_written).page(Tree.SUBSCRIBERS, path) is None
    assert pictures.cut(path) is None
    assert theme_file(bench, path) is None
    assert card_asked(as_written, pictures, path) is None


def test_without_a_site_file_there_is_no_site_until_it_is_mended(school: Path) -> None:
    site_file = school / "content" / "site.yaml"
    sound = site_file.read_text()
    site_file.write_text("name: [")
    reading = read(school)
    with pytest.raises(NotMade) as problem:
        site_of(reading).page(Tree.PUBLIC, "index.html")
    assert problem.value.faults[0].place.file == "content/site.yaml"
    site_file.write_text(sound)
    read_again(reading)
    assert site_of(reading).page(Tree.PUBLIC, "index.html")


def test_a_theme_that_cannot_print_stops_its_pages_with_a_fault(school: Path) -> None:
    theme = school / "themes" / "shelf"
    (theme / "templates").mkdir(parents=True)
    (theme / "theme.yaml").write_text("name: Shelf\ninherits: oatcloth\n")
    (theme / "templates" / "index.html").write_text("{% for %}")
    site_file = school / "content" / "site.yaml"
    site_file.write_text(site_file.read_text().replace("theme: oatcloth", "theme: shelf"))
    site = site_of(read(school))
    with pytest.raises(NotMade) as problem:
        site.page(Tree.PUBLIC, "index.html")
    (fault,) = problem.value.faults
    assert fault.code == "theme-unusable"
    assert "output" not in fault.way_out, "what is true of a publish alone"
    assert site.page(Tree.PUBLIC, "recipes/open-biscuits.html")
