"""What every page shares: its links, its security policy, its head and its frame."""

from collections.abc import Callable, Mapping
from dataclasses import dataclass

from markupsafe import Markup, escape

from sitegen.press.addresses import link
from sitegen.press.imprint import Imprint
from sitegen.press.shared import SharedPicture, Translation, locale_of
from sitegen.press.theme import Theme

CONTENT_POLICY = Markup(
    "default-src 'none'; img-src 'self'; style-src 'self'; script-src 'self'; font-src 'self'; "
    "connect-src 'self'; worker-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'"
)


@dataclass(frozen=True)
class Page:
    """What the frame of a page prints.

    here: its path in the tree. title: of the page, without the school's name; '' for the front page.
    description: plain text. language: BCP 47 tag of the text. data: blocks of JSON-LD for search engines.
    picture: for a link that is shared. canonical: path of the page that search engines should list, '' for
    this one. translations: the page in other languages and its own, () where it is in one only.
    published, modified: ISO dates of an article, '' for a page that is none. is_absolute: True where a host
    serves the page at any depth, so that links need the full address. is_listed: False to keep it out of
    search engines.
    """

    here: str
    title: str
    description: str
    language: str
    data: tuple[Markup, ...] = ()
    picture: SharedPicture | None = None
    canonical: str = ""
    translations: tuple[Translation, ...] = ()
    published: str = ""
    modified: str = ""
    is_absolute: bool = False
    is_listed: bool = True


def page_bytes(
    theme: Theme, imprint: Imprint, template: str, page: Page, content: Mapping[str, object]
) -> bytes:
    """The page set by a template of the theme, UTF-8."""
    to = _linker(imprint, page)
    text = theme.environment.printed(
        template,
        page=page,
        imprint=imprint,
        policy=CONTENT_POLICY,
        to=to,
        address_of=lambda path: Markup(escape(imprint.address_of(path))),
        locale_of=locale_of,
        colours={"light": theme.tokens.light.paper, "dark": theme.tokens.dark.paper},
        **content,
    )
    return text.encode()


def _linker(imprint: Imprint, page: Page) -> Callable[[str], Markup]:
    """Addresses as this page writes them, ready for an attribute."""
    if page.is_absolute:
        return lambda target: Markup(escape(imprint.address + target))
    return lambda target: Markup(escape(link(page.here, target)))
