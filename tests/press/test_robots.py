"""The rules for crawlers, read by two independent readers of RFC 9309."""

from urllib.robotparser import RobotFileParser

from protego import Protego

from sitegen.press.robots import robots
from tests.press.sample_parts import IMPRINT, TABLE_IMPRINT

PAGE = "https://tansyrow.example/recipes/quince-and-hazelnut-slices.html"


def standard(body: bytes) -> RobotFileParser:
    parser = RobotFileParser()
    parser.parse(body.decode().splitlines())
    return parser


def test_everyones_pages_may_be_read_and_the_map_is_named() -> None:
    body = robots(IMPRINT)
    assert standard(body).can_fetch("any", PAGE)
    assert standard(body).site_maps() == ["https://tansyrow.example/sitemap.xml"]
    assert Protego.parse(body.decode()).can_fetch(PAGE, "any")


def test_nothing_of_the_subscribers_may_be_read() -> None:
    body = robots(TABLE_IMPRINT)
    assert not standard(body).can_fetch("any", PAGE)
    assert not Protego.parse(body.decode()).can_fetch(PAGE, "any")
    assert standard(body).site_maps() is None


def test_the_public_rules_do_not_tell_where_the_subscribers_are() -> None:
    assert b"table" not in robots(IMPRINT)
