"""What kind of file each output is, told from where it lies."""

_BY_FOLDER = {
    "cards": "cards",
    "bundles": "bundles",
    "pictures": "pictures",
    "theme": "theme",
}
"""First folder below a readers' tree -> kind."""

_PAGES = ".html"
PAGES, TEXTS, FOR_PROGRAMS = "pages", "texts", "for programs"
KINDS = (PAGES, *_BY_FOLDER.values(), TEXTS, FOR_PROGRAMS)
"""In the order in which a table lists them."""


def kind_of(path: str) -> str:
    """One of KINDS. path: below `output/`. What is no page and lies in no folder of its own is for programs:
    the feed, the map, the manifest."""
    tree, _, below = path.partition("/")
    if tree == "texts":
        return TEXTS
    kind = _BY_FOLDER.get(below.partition("/")[0])
    return kind or (PAGES if below.endswith(_PAGES) else FOR_PROGRAMS)
