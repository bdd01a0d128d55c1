"""The front page as a way to a recipe, in a real browser: by words, by the cards of the drawer, by hand.

What is expected was read off the recipe files of the demo, on the day for which it is published: ten recipes
are public then, and the custard tart among them tells everyone neither its ingredients nor its tin.
"""

from collections.abc import Callable, Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.outside.axe import SETTINGS, Setting, faults, with_axe
from tests.outside.demo import Demo

BUTTERCREAM, PASTRY_CREAM = "base-buttercream", "base-pastry-cream"
CUPCAKES, CHOUX, RING = (
    "blackcurrant-and-bay-cupcakes",
    "caramel-choux-buns",
    "coffee-and-orange-marbled-ring",
)
LOAF, LAYER_CAKE, SQUARES = (
    "overnight-honey-and-sesame-loaf",
    "plum-and-cardamom-layer-cake",
    "rhubarb-and-almond-squares",
)
TART, COOKIES = "rye-crust-custard-tart", "stem-ginger-and-pecan-cookies"
PUBLIC = {
    BUTTERCREAM,
    PASTRY_CREAM,
    CUPCAKES,
    CHOUX,
    RING,
    LOAF,
    LAYER_CAKE,
    SQUARES,
    TART,
    COOKIES,
}
WITH_CASTER_SUGAR = {PASTRY_CREAM, CUPCAKES, CHOUX, RING, LAYER_CAKE, SQUARES, COOKIES}
WITHOUT_NUTS = {BUTTERCREAM, PASTRY_CREAM, CUPCAKES, CHOUX, LOAF, TART}
"""The ring is not among them: it is strewn with crystals of which its author says 'read the packet'."""

Open = Callable[..., Page]


@pytest.fixture
def opened(browser: Browser) -> Iterator[Open]:
    """Opens an address in a window of its own."""
    contexts = []

    def open_page(address: str, *, script: bool = True) -> Page:
        context = browser.new_context(
            viewport={"width": 1280, "height": 900}, java_script_enabled=script, service_workers="block"
        )
        contexts.append(context)
        page = context.new_page()
        page.goto(address)
        return page

    yield open_page
    for context in contexts:
        context.close()


@pytest.fixture
def front(opened: Open, served: str) -> Page:
    """The public front page."""
    return opened(f"{served}public/index.html")


@pytest.fixture
def front_in_each_theme(opened: Open, themed_served: str) -> Page:
    """The public front page, in each theme."""
    return opened(f"{themed_served}public/index.html")


def shown(page: Page) -> set[str]:
    """Slugs of the recipes that the list shows."""
    paths = page.locator("[data-number]:visible a").evaluate_all("all => all.map(a => a.pathname)")
    return {Path(path).stem for path in paths if "/recipes/" in path}


def look_for(page: Page, text: str) -> None:
    page.get_by_role("searchbox").fill(text)


def choose(page: Page, group: str, key: str) -> None:
    """Tick a word of a card; the card is opened first, as a reader would."""
    box = page.locator(f"[name={group}][value={key}]")
    if not box.is_visible():
        page.locator("details", has=box).locator("summary").click()
    box.check()


def told(page: Page) -> str:
    return page.locator("[data-told]").inner_text()


def test_everything_is_shown_until_something_is_asked(front: Page) -> None:
    assert shown(front) == PUBLIC
    assert told(front) == ""
    assert not front.get_by_role("link", name="Show all recipes").is_visible()


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("choux", {CHOUX}),
        ("CHOUX", {CHOUX}),
        ("plum compote", {LAYER_CAKE}),
        # Of one and of many; with an accent that the recipe writes without.
        ("egg", {PASTRY_CREAM, CUPCAKES, CHOUX, RING, LOAF, LAYER_CAKE, SQUARES, COOKIES}),
        ("eggs", {PASTRY_CREAM, CUPCAKES, CHOUX, RING, LOAF, LAYER_CAKE, SQUARES, COOKIES}),
        ("purée", {CUPCAKES}),
        # As it is typed, and with words that nobody looks for.
        ("blackcur", {CUPCAKES}),
        ("the ring with orange", {RING}),
        # By what may be taken instead, and by what is optional.
        ("walnuts", {COOKIES}),
        ("demerara", {SQUARES, COOKIES}),
        # Every word must be there.
        ("honey loaf", {LOAF}),
        ("honey ring", set()),
    ],
)
def test_words_find_recipes(front: Page, text: str, found: set[str]) -> None:
    look_for(front, text)
    assert shown(front) == found


@pytest.mark.parametrize("name", ["caster sugar", "superfine sugar"])
def test_an_ingredient_is_found_by_its_name_in_either_edition_and_the_recipe_says_which(
    front: Page, name: str
) -> None:
    look_for(front, name)
    assert shown(front) == WITH_CASTER_SUGAR
    assert told(front).startswith("7 recipes")
    entry = front.locator("[data-number]", has=front.locator(f"a[href*={CHOUX}]"))
    assert f"Contains {name}" in entry.inner_text()


def test_a_word_of_the_title_needs_no_telling_where_it_was_found(front: Page) -> None:
    look_for(front, "blackcurrant")
    assert shown(front) == {CUPCAKES}
    assert front.get_by_text("Contains").count() == 0


def test_techniques_are_found_too_in_a_list_of_their_own(front: Page) -> None:
    look_for(front, "lining")
    assert shown(front) == set()
    assert told(front).startswith("1 technique:")
    expect(front.locator("[data-number] a[href*='tutorials/lining-tins']")).to_be_visible()
    expect(front.get_by_role("heading", name="Techniques")).to_be_visible()


@pytest.mark.parametrize(
    ("group", "key", "found"),
    [
        ("kind", "custard", {PASTRY_CREAM, TART}),
        ("time", "hour", {BUTTERCREAM}),
        ("time", "day-before", {LOAF}),
        ("work", "half-hour", {BUTTERCREAM, PASTRY_CREAM, COOKIES}),
        ("tin", "loaf", {LOAF}),
        ("tin", "none", {BUTTERCREAM, PASTRY_CREAM}),
        ("without", "egg", {BUTTERCREAM}),
        ("without", "cereals", {BUTTERCREAM, PASTRY_CREAM}),
        ("without", "nuts", WITHOUT_NUTS),
        ("without", "sesame", PUBLIC - {LOAF, RING}),
    ],
)
def test_a_word_of_a_card_narrows_the_list_to_as_many_as_it_says(
    front: Page, group: str, key: str, found: set[str]
) -> None:
    number = front.locator("label", has=front.locator(f"[name={group}][value={key}]")).locator("[data-count]")
    assert number.text_content() == str(len(found))
    choose(front, group, key)
    assert shown(front) == found


def test_words_and_cards_narrow_together_and_each_number_is_kept_up_to_date(front: Page) -> None:
    choose(front, "without", "nuts")
    choose(front, "kind", "custard")
    assert shown(front) == {PASTRY_CREAM, TART}
    look_for(front, "butter")
    assert shown(front) == {PASTRY_CREAM}
    assert "without nuts" in told(front)
    count = front.locator("label", has=front.locator("[name=time][value=hour]")).locator("[data-count]")
    assert count.text_content() == "0"


def test_one_time_takes_the_place_of_another(front: Page) -> None:
    choose(front, "time", "hour")
    choose(front, "time", "day-before")
    assert shown(front) == {LOAF}


def test_labels_to_read_are_named_where_something_is_to_be_left_out(opened: Open, served: str) -> None:
    page = opened(f"{served}subscribers/index.html")
    choose(page, "without", "sulphites")
    cake = page.locator("[data-number]", has=page.locator(f"a[href*={LAYER_CAKE}]"))
    expect(cake.get_by_text("Read the label of the lemon juice.")).to_be_visible()


def test_an_address_that_is_shared_shows_the_same(front: Page, opened: Open) -> None:
    choose(front, "without", "nuts")
    look_for(front, "caster sugar")
    expected = shown(front)
    assert expected == WITH_CASTER_SUGAR & WITHOUT_NUTS
    other = opened(front.url)
    assert shown(other) == expected
    assert told(other) == told(front)
    assert other.get_by_role("searchbox").input_value() == "caster sugar"
    assert other.locator("[name=without][value=nuts]").is_checked()


def test_back_undoes_all_that_was_typed_and_then_each_choice(front: Page) -> None:
    choose(front, "without", "nuts")
    front.get_by_role("searchbox").press_sequentially("choux")
    assert shown(front) == {CHOUX}
    front.go_back()
    assert shown(front) == WITHOUT_NUTS
    assert front.get_by_role("searchbox").input_value() == ""
    front.go_back()
    assert shown(front) == PUBLIC
    front.go_forward()
    assert shown(front) == WITHOUT_NUTS


def test_one_link_asks_for_everything_again(front: Page) -> None:
    choose(front, "kind", "custard")
    look_for(front, "milk")
    front.get_by_role("link", name="Show all recipes").click()
    assert shown(front) == PUBLIC
    assert told(front) == ""
    assert front.get_by_role("searchbox").input_value() == ""
    assert not front.locator("[name=kind][value=custard]").is_checked()


def test_where_nothing_is_found_it_says_what_to_ask_less_of(front: Page) -> None:
    choose(front, "without", "egg")
    look_for(front, "choux")
    assert shown(front) == set()
    assert told(front).startswith("Nothing has all of it")
    ways = front.locator("[data-ways] a")
    assert ways.all_inner_texts() == ["Drop ‘choux’: 1", "Drop without egg: 1"]
    ways.nth(1).click()
    assert shown(front) == {CHOUX}
    assert not front.locator("[name=without][value=egg]").is_checked()


def test_how_many_were_found_is_announced(front: Page) -> None:
    status = front.get_by_role("status").filter(has=front.locator("xpath=self::*[@data-told]"))
    look_for(front, "rhubarb")
    expect(status).to_have_text("1 recipe: ‘rhubarb’")


def test_it_works_from_a_disk(demo: Demo, opened: Open) -> None:
    page = opened((demo.public / "index.html").as_uri())
    choose(page, "without", "nuts")
    look_for(page, "caster sugar")
    assert shown(page) == WITH_CASTER_SUGAR & WITHOUT_NUTS
    page.reload()
    assert shown(page) == WITH_CASTER_SUGAR & WITHOUT_NUTS
    page.go_back()
    assert shown(page) == WITHOUT_NUTS


def test_skipping_to_the_text_changes_nothing_of_what_was_asked(front: Page) -> None:
    look_for(front, "choux")
    front.evaluate("location.hash = 'main'")
    assert shown(front) == {CHOUX}


def test_without_a_script_everything_is_listed_by_every_word(opened: Open, served: str) -> None:
    page = opened(f"{served}public/index.html", script=False)
    assert shown(page) == PUBLIC
    assert page.get_by_role("searchbox").count() == 0
    assert page.locator("[type=checkbox]:visible").count() == 0
    page.get_by_role("link", name="Contents").click()
    for place, found in [("without-nuts", WITHOUT_NUTS), ("tin-loaf", {LOAF}), ("time-hour", {BUTTERCREAM})]:
        paths = page.locator(f"#{place} a").evaluate_all("all => all.map(a => a.pathname)")
        assert {Path(path).stem for path in paths} == found
    titles = page.locator("#kind-custard a").all_inner_texts()
    assert titles == ["Base pastry cream", "Rye-crust custard tart"]


def test_the_keyboard_alone_is_enough(front: Page) -> None:
    def tab_to(selector: str) -> None:
        for _ in range(80):
            front.keyboard.press("Tab")
            if front.evaluate("selector => document.activeElement.matches(selector)", selector):
                return
        raise AssertionError(f"no Tab leads to {selector}")

    tab_to("[name=words]")
    front.keyboard.type("milk")
    front.keyboard.press("Enter")
    tab_to("summary:has(+ * [name=time])")
    front.keyboard.press("Enter")
    tab_to("[name=time]")
    front.keyboard.press("ArrowDown")
    assert shown(front) == {BUTTERCREAM}
    tab_to("summary:has(+ * [name=without])")
    front.keyboard.press("Enter")
    tab_to("[name=without][value=egg]")
    front.keyboard.press("Space")
    assert told(front) == "1 recipe: ‘milk’, in an hour, without egg"
    tab_to("a[href='#drawer']")
    front.keyboard.press("Enter")
    assert shown(front) == PUBLIC


@pytest.mark.parametrize("text", ["double cream", "nutmeg ground", "brandy", "meringue"])
def test_what_is_for_subscribers_finds_nothing_in_public(opened: Open, served: str, text: str) -> None:
    """Everyone sees a teaser of the tart, and nothing yet of the brownies and the meringue bites."""
    page = opened(f"{served}public/index.html")
    look_for(page, text)
    assert shown(page) == set()


def test_subscribers_find_the_same_by_all_that_they_may_read(opened: Open, served: str) -> None:
    page = opened(f"{served}subscribers/index.html")
    look_for(page, "double cream")
    assert shown(page) == {TART}
    look_for(page, "")
    choose(page, "tin", "tart")
    assert shown(page) == {TART}


def test_no_tin_of_a_teaser_is_offered_to_everyone(front: Page) -> None:
    assert front.locator("[name=tin][value=tart]").count() == 0


@pytest.mark.parametrize("setting", SETTINGS, ids=str)
def test_open_cards_and_answers_break_no_rule(
    front_in_each_theme: Page, checkers: Path, setting: Setting
) -> None:
    page = with_axe(front_in_each_theme, checkers)
    page.reload()
    for card in page.locator("summary").all():
        card.click()
        assert faults(page, setting) == []
    for text in ("sugar", "moonstones rye"):
        look_for(page, text)
        assert faults(page, setting) == []
