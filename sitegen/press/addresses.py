"""Where each page of the site lies, as paths relative to its tree; links between them are relative too.

Relative links with file names keep the site whole when it is opened from a disk.
"""

from posixpath import dirname, relpath

INDEX = "index.html"
CONTENTS = "contents.html"
TUTORIALS = "tutorials/index.html"
BUNDLES = "bundles/index.html"
NOT_FOUND = "404.html"
FEED = "feed.xml"
SITEMAP = "sitemap.xml"
ROBOTS = "robots.txt"
WEB_MANIFEST = "site.webmanifest"
WORKER = "offline.js"
NOT_KEPT = "not-kept.html"


def recipe_page(slug: str) -> str:
    """The recipe in the site's own edition, at the tested batch."""
    return f"recipes/{slug}.html"


def choice_page(slug: str, edition: str, batch: str) -> str:
    """The recipe in another edition or at another batch."""
    return f"recipes/{slug}/{edition}-{batch}.html"


def tutorial_page(slug: str) -> str:
    return f"tutorials/{slug}.html"


def tag_page(slug: str) -> str:
    return f"tags/{slug}.html"


def card(slug: str, edition: str, paper: str) -> str:
    """The printed card, in the subscribers' tree only."""
    return f"cards/{slug}-{edition}-{paper}.pdf"


def bundle(name: str) -> str:
    """A bundle of cards, in the subscribers' tree only."""
    return f"bundles/{name}.zip"


def link(source: str, target: str) -> str:
    """The relative address of `target` as written on the page `source`."""
    return relpath(target, dirname(source) or ".")
