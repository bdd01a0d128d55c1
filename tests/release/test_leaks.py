"""The check before the swap finds what is for subscribers in any public file, however it is wrapped."""

import gzip
import json
import struct
import zlib
from base64 import b64encode
from dataclasses import replace
from hashlib import sha256
from html import escape
from io import BytesIO
from pathlib import Path
from urllib.parse import quote
from zipfile import ZIP_DEFLATED, ZipFile

import pytest
from PIL import Image
from PIL.ImageCms import ImageCmsProfile, createProfile
from PIL.PngImagePlugin import PngInfo

from sitegen.kitchen.recipe import PublicShows
from sitegen.press.card_photos import cut_for_card
from sitegen.press.pictures import cut_picture
from sitegen.release import outputs
from sitegen.release.audience import public_revisions, public_view
from sitegen.release.bare_words import bare_text
from sitegen.release.build import Refused
from sitegen.release.leaks import MOST_FINDS, Leak, leaks_in
from sitegen.release.secrets import RecipeSecrets, Secrets, secrets_of
from sitegen.release.unpacked import notes_in_picture
from sitegen.sheet.values import Sheet, SheetChapter, SheetVideo
from tests.press.sample_sheets import SHEET
from tests.release.small_school import publish_school, tree_hashes, write_recipe

WORDS = "until the goldfinch sings behind the crème"
OPEN = "the goldfinch sings on every page of ours"
SECRET_CUT = b"the cut of a step's photo"
SECRETS = Secrets(
    recipes=(
        RecipeSecrets("finch-buns", (f" {WORDS} ", " finch buns ", " recipes finch buns html "), ()),
        RecipeSecrets("open-buns", (), (f" {OPEN} ",)),
    ),
    bodies=frozenset({sha256(SECRET_CUT).hexdigest()}),
    stems=frozenset({"0123456789abcdef"}),
)
PLAIN = "<!doctype html><p>A page of ours.</p>"


def picture(kind: str, **notes: object) -> bytes:
    out = BytesIO()
    Image.new("RGB", (8, 8), (90, 120, 20)).save(out, kind, **notes)  # type: ignore[arg-type]
    return out.getvalue()


def exif(words: str = WORDS) -> bytes:
    """ImageDescription (0x010E) and the Unicode XPComment (0x9C9C) of the EXIF standard."""
    found = Image.Exif()
    found[0x010E] = words
    found[0x9C9C] = words.encode("utf-16-le")
    return found.tobytes()


def jpeg_segment(marker: int, body: bytes) -> bytes:
    plain = picture("JPEG")
    return plain[:2] + struct.pack(">BBH", 0xFF, marker, len(body) + 2) + body + plain[2:]


def colour_profile() -> bytes:
    """An ICC profile whose description (tag 'desc', UTF-16) bears the words."""
    profile = ImageCmsProfile(createProfile("sRGB")).tobytes()
    return profile + WORDS.encode("utf-16-be")


def png_chunk(kind: bytes, body: bytes) -> bytes:
    plain = picture("PNG")
    chunk = struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body))
    return plain[:33] + chunk + plain[33:]


def png_text() -> bytes:
    info = PngInfo()
    info.add_itxt("Comment", WORDS, zip=True)
    return picture("PNG", pnginfo=info)


def zipped(**files: bytes) -> bytes:
    out = BytesIO()
    with ZipFile(out, "w", ZIP_DEFLATED) as archive:
        for name, body in files.items():
            archive.writestr(name, body)
    return out.getvalue()


def pdf(stream: bytes) -> bytes:
    return b"%PDF-1.7\n1 0 obj\n<</Length 9>>\nstream\n" + stream + b"\nendstream\nendobj\n%%EOF"


def ascii_json(words: str) -> bytes:
    return json.dumps({"@type": "Recipe", "text": words}).encode()


def every_letter_as_entity(words: str) -> str:
    return "".join(f"&#{ord(letter)};" for letter in words)


UTF8 = WORDS.encode()
PLANTED: dict[str, tuple[str, bytes]] = {
    "HTML": ("page.html", f"<p>{WORDS}.</p>".encode()),
    "HTML, in print's marks": ("page.html", "<p>Until\u00a0the goldfinch sings—behind the ‘crème’".encode()),
    "HTML, a word in bold": ("page.html", b"<p>until the <b>goldfinch</b> sings behind the cr&egrave;me"),
    "HTML, an attribute": ("page.html", f'<img alt="{WORDS}">'.encode()),
    "HTML, entities": ("page.html", f"<p>{every_letter_as_entity(WORDS)}".encode()),
    "HTML, a comment": ("page.html", f"<!-- {WORDS} -->".encode()),
    "HTML, a soft hyphen": ("page.html", WORDS.replace("finch", "\u00adfinch").encode()),
    "JSON-LD": ("page.html", b'<script type="application/ld+json">' + ascii_json(WORDS) + b"</script>"),
    "search index": ("index.html", b"<script data-index>" + ascii_json(WORDS) + b"</script>"),
    "feed, escaped HTML": ("feed.xml", f"<content>{escape(escape(f'<p>{WORDS}</p>'))}</content>".encode()),
    "feed, CDATA": ("feed.xml", f"<summary><![CDATA[{WORDS}]]></summary>".encode()),
    "sitemap": ("sitemap.xml", b"<loc>https://tansyrow.example/recipes/finch-buns.html</loc>"),
    "manifest": ("site.webmanifest", ascii_json(WORDS)),
    "worker": ("offline.js", b"const PUBLISHED = " + ascii_json(WORDS)),
    "script": ("theme/page.js", f"// {WORDS}".encode()),
    "style": ("theme/page.css", f"/* {WORDS} */".encode()),
    "SVG": ("theme/mark.svg", f"<svg><title>{WORDS}</title></svg>".encode()),
    "plain text": ("robots.txt", UTF8.upper().replace("È".encode(), "è".encode())),
    "UTF-16": ("words.txt", WORDS.encode("utf-16")),
    "UTF-16 in the middle": ("words.bin", b"\1\0\2\0" + "finch buns".encode("utf-16-le") + b"\0\0\0"),
    "an address": ("page.html", f'<a href="?find={quote(WORDS)}">'.encode()),
    "base64": ("page.css", b"url(data:text/plain;base64," + b64encode(UTF8) + b")"),
    "ZIP": ("bundle.zip", zipped(readme=UTF8)),
    "ZIP, a name in it": ("bundle.zip", zipped(**{"finch buns.txt": b"."})),
    "ZIP in a ZIP": ("bundle.zip", zipped(inner=zipped(readme=UTF8))),
    "ZIP, a picture in it": ("bundle.zip", zipped(photo=picture("JPEG", exif=exif()))),
    "ZIP, a card in it": ("bundle.zip", zipped(card=pdf(b"."))),
    "ZIP behind a picture": ("photo.jpg", picture("JPEG") + zipped(readme=UTF8)),
    "ZIP, locked": ("bundle.zip", zipped(a=UTF8).replace(b"PK\1\2\x14\3\x14\0\0", b"PK\1\2\x14\3\x14\0\1")),
    "ZIP, cut short": ("bundle.zip", zipped(a=UTF8, b=UTF8)[60:]),
    "gzip": ("feed.xml.gz", gzip.compress(UTF8)),
    "gzip, cut short": ("feed.xml.gz", gzip.compress(UTF8)[:12] + b"....."),
    "PDF": ("card.pdf", pdf(b"(nothing of ours)")),
    "PDF, a stream": ("card.bin", pdf(zlib.compress(UTF8))),
    "JPEG, EXIF": ("photo.jpg", picture("JPEG", exif=exif())),
    "JPEG, XMP": ("photo.jpg", picture("JPEG", xmp=f"<x:xmpmeta>{WORDS}</x:xmpmeta>".encode())),
    "JPEG, IPTC": ("photo.jpg", jpeg_segment(0xED, b"Photoshop 3.0\0" + UTF8)),
    "JPEG, ICC": ("photo.jpg", picture("JPEG", icc_profile=colour_profile())),
    "JPEG, a comment": ("photo.jpg", picture("JPEG", comment=UTF8)),
    "JPEG, behind the end": ("photo.jpg", picture("JPEG") + UTF8),
    "WebP, EXIF": ("photo.webp", picture("WEBP", exif=exif())),
    "WebP, XMP": ("photo.webp", picture("WEBP", xmp=UTF8)),
    "WebP, ICC": ("photo.webp", picture("WEBP", icc_profile=colour_profile())),
    "PNG, EXIF": ("photo.png", picture("PNG", exif=exif())),
    "PNG, text": ("photo.png", png_chunk(b"tEXt", b"Comment\0" + UTF8)),
    "PNG, compressed text": ("photo.png", png_text()),
    "PNG, ICC": ("photo.png", picture("PNG", icc_profile=colour_profile())),
    "a camera's notes": ("photo.jpg", picture("JPEG", exif=exif("a plain bun"))),
    "a subscribers' cut": ("pictures/fedcba98-480.webp", SECRET_CUT),
    "a subscribers' cut, its name": ("pictures/0123456789abcdef-480.webp", picture("WEBP")),
    "a file's name": ("pictures/finch-buns.webp", picture("WEBP")),
    "a folder's name": ("recipes/finch-buns/us-cups.html", PLAIN.encode()),
}
"""What is planted -> (file, bytes)."""
BY_THEIR_WORDS = {
    name
    for name in PLANTED
    if name
    not in {
        "ZIP, a card in it",
        "ZIP, locked",
        "ZIP, cut short",
        "gzip, cut short",
        "PDF",
        "a camera's notes",
        "a subscribers' cut",
        "a subscribers' cut, its name",
    }
}


def tree(root: Path, files: dict[str, bytes]) -> Path:
    for name, body in files.items():
        path = root / name
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(body)
    return root


@pytest.mark.parametrize("kind", PLANTED)
def test_a_planted_leak_is_found(tmp_path: Path, kind: str) -> None:
    name, body = PLANTED[kind]
    found = leaks_in(tree(tmp_path, {"about.html": PLAIN.encode(), name: body}), SECRETS)
    assert {leak.file for leak in found} == {name}
    if kind in BY_THEIR_WORDS:
        assert "finch-buns" in {leak.slug for leak in found}


def test_what_is_for_everyone_is_no_leak(tmp_path: Path) -> None:
    files = {
        "page.html": f"<p>{OPEN}. The goldfinch sings behind. Finch or buns?</p>".encode(),
        "recipes/open-buns.html": b'<a href="finch-bunshop.html">50%</a> \\u00e8 &amp; &#8217;',
        "photo.jpg": picture("JPEG"),
        "photo.webp": picture("WEBP"),
        "photo.png": picture("PNG"),
        "bundle.zip": zipped(photo=picture("JPEG"), readme=OPEN.encode()),
        "feed.xml.gz": gzip.compress(OPEN.encode()),
    }
    assert leaks_in(tree(tmp_path, files), SECRETS) == ()


def test_what_everyone_may_read_elsewhere_is_no_secret(tmp_path: Path) -> None:
    told = RecipeSecrets("finch-buns", (" the goldfinch sings on every page ", f" {WORDS} "), ())
    page = tree(tmp_path, {"page.html": f"{OPEN}. {WORDS}".encode()})
    with_open = Secrets((told, *SECRETS.recipes[1:]), open_texts=(f"We say: *{WORDS}*, and more.",))
    assert len(leaks_in(page, Secrets((told,)))) == 2
    assert leaks_in(page, with_open) == ()


def test_a_link_in_the_tree_is_refused(tmp_path: Path) -> None:
    (tmp_path / "away").symlink_to("/")
    (tmp_path / "page.html").symlink_to(tmp_path / "other.html")
    assert {leak.file for leak in leaks_in(tmp_path, SECRETS)} == {"away", "page.html"}


def test_an_archive_that_grows_without_end_is_refused(tmp_path: Path) -> None:
    bomb = zipped(a=bytes(30_000_000))
    for _ in range(6):
        bomb = zipped(a=bomb, b=bomb)
    (found,) = leaks_in(tree(tmp_path, {"bomb.zip": bomb}), SECRETS)
    assert found.what.startswith(("it holds archives in archives", "it unpacks to more"))


def test_twenty_finds_are_enough(tmp_path: Path) -> None:
    pages = {f"page-{number}.html": UTF8 for number in range(40)}
    assert len(leaks_in(tree(tmp_path, pages), SECRETS)) == MOST_FINDS


def told(shows: PublicShows, sheet: Sheet = SHEET) -> RecipeSecrets:
    return secrets_of("quince", [sheet], [public_view(sheet, shows)], public_revisions(sheet, shows))


def text_of(phrases: RecipeSecrets) -> str:
    return "|".join(phrases.phrases)


def test_a_recipe_that_everyone_sees_has_no_secrets() -> None:
    assert told(PublicShows.EVERYTHING).phrases == ()


@pytest.mark.parametrize("shows", [PublicShows.TEASER, PublicShows.INGREDIENTS])
@pytest.mark.parametrize(
    "words",
    [
        "rub the butter into the flour",
        "no lump is larger than a lentil",
        "coarse brown crumbs in a wide bowl",
    ],
)
def test_steps_cues_and_what_their_photos_show_are_secrets(shows: PublicShows, words: str) -> None:
    assert words in text_of(told(shows))


def test_a_list_of_ingredients_is_a_teasers_secret_and_no_other(tmp_path: Path) -> None:
    """Its lines are short and everybody's; one after another they are the recipe's own."""
    page = tree(
        tmp_path, {"a.txt": b"180 g plain flour, 90 g hazelnuts, toasted and ground, 110 g light brown"}
    )
    assert leaks_in(page, Secrets((told(PublicShows.TEASER),)))
    assert leaks_in(page, Secrets((told(PublicShows.INGREDIENTS),))) == ()


def test_of_a_recipe_that_nobody_knows_of_the_title_is_a_secret_too() -> None:
    title = f" {SHEET.head.title.lower()} "
    assert title in secrets_of("quince-bars", [SHEET], ()).phrases
    assert " recipes quince bars html " in secrets_of("quince-bars", [SHEET], ()).phrases
    assert title not in told(PublicShows.TEASER).phrases


def test_chapters_that_are_read_in_a_row_are_no_secret_even_where_the_plan_names_the_parts_so() -> None:
    chapters = tuple(
        SheetChapter(f"{minute}:00", title, 60 * minute)
        for minute, title in enumerate(("Hazelnut crumb", "Quince caramel"))
    )
    in_a_row = "Hazelnut crumb, Quince caramel"
    sheet = replace(SHEET, video=SheetVideo("https://video.example/q", "", chapters), plan_notes=(in_a_row,))
    shows = public_view(sheet, PublicShows.TEASER)
    told = secrets_of("quince", [sheet], [shows]).phrases
    assert bare_text(in_a_row) not in told
    without = replace(shows, video=None)
    assert bare_text(in_a_row) in secrets_of("quince", [sheet], [without]).phrases


def test_a_short_instruction_is_nobodys_own() -> None:
    assert not [phrase for phrase in secrets_of("q", [SHEET], ()).phrases if phrase.strip() == "bake"]


def test_a_leak_names_the_file_the_recipe_and_the_words(tmp_path: Path) -> None:
    (found,) = leaks_in(tree(tmp_path, {"a/page.html": UTF8}), SECRETS)
    assert found == Leak("a/page.html", "finch-buns", f"'{WORDS}'")


def test_a_publish_with_a_leak_in_it_is_refused_and_the_old_output_stays(
    again: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Whatever the press prints by mistake; here into the rules for crawlers, in every build anew."""
    step = "Beat unsalted butter and caster sugar, zqingredientstepzq."
    before = tree_hashes(again / "output")
    write_recipe(again, "open-biscuits", summary="Thinner than before")
    monkeypatch.setattr(outputs, "robots", lambda _: f"# {step}\n".encode())
    with pytest.raises(Refused) as refused:
        publish_school(again)
    (fault,) = refused.value.faults
    assert (fault.code, fault.place.file) == ("leak", "output/public/robots.txt")
    assert "of 'ingredient-biscuits', only for subscribers" in fault.sentence
    assert tree_hashes(again / "output") == before


@pytest.mark.parametrize("kept", ["pictures", "cards"])
def test_a_file_for_subscribers_among_public_files_is_refused(
    again: Path, kept: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    public = {path.name for path in (again / "output/public" / kept).glob("*")}
    secret = next(path for path in (again / "output/subscribers" / kept).iterdir() if path.name not in public)
    monkeypatch.setattr(outputs, "robots", lambda _: secret.read_bytes())
    write_recipe(again, "open-biscuits", summary="Thinner than before")
    with pytest.raises(Refused) as refused:
        publish_school(again)
    assert {fault.code for fault in refused.value.faults} == {"leak"}


@pytest.mark.parametrize("kind", ["JPEG", "PNG", "WEBP"])
def test_nothing_of_a_photos_notes_is_in_its_cuts(kind: str) -> None:
    """So that they are for everyone, whatever a camera or a hand wrote beside the pixels."""
    noted = picture(kind, exif=exif("finch buns"), icc_profile=colour_profile(), xmp=UTF8)
    assert notes_in_picture(noted)
    _, leaves = cut_picture(noted, "photo")
    for body in (*(body for _, body in leaves), cut_for_card(noted, (40.0, 30.0))):
        assert notes_in_picture(body) == ()
        assert b"finch" not in body
