"""A recipe as schema.org data (https://schema.org/Recipe), from whichever view the page prints."""

from collections.abc import Mapping, Sequence

from markupsafe import Markup

from sitegen.press.imprint import Imprint
from sitegen.press.json_ld_text import CONTEXT, Json, block, school_object
from sitegen.press.picture import Picture
from sitegen.press.prose import to_plain
from sitegen.sheet.panel_values import Nutrition
from sitegen.sheet.values import (
    Head,
    IngredientSide,
    PublicComponent,
    Sheet,
    SheetComponent,
    SheetLine,
    SheetPhoto,
    SheetStep,
    SheetVideo,
    View,
)

_NO_BREAK = "\u00a0"
_LOCKED = ".for-subscribers"
_NUTRIENTS = {
    "fat": "fatContent",
    "saturates": "saturatedFatContent",
    "carbohydrate": "carbohydrateContent",
    "sugars": "sugarContent",
    "fibre": "fiberContent",
    "protein": "proteinContent",
    "sodium": "sodiumContent",
}
"""Key of a line -> property of https://schema.org/NutritionInformation, which has none for salt."""


def recipe_data(imprint: Imprint, view: View, pictures: Mapping[str, Picture], here: str) -> Markup:
    """The block of a recipe's page."""
    return block(recipe_object(imprint, view, pictures, here))


def recipe_object(
    imprint: Imprint, view: View, pictures: Mapping[str, Picture], here: str
) -> dict[str, Json]:
    """The recipe as an object of JSON; what the view lacks or leaves empty is left out.

    A view for everyone says so (`isAccessibleForFree`); what stands in the subscribers' tree alone,
    method or more, is not free.
    """
    found: dict[str, Json] = {
        "@context": CONTEXT,
        "@type": "Recipe",
        **_head(imprint, view.head, pictures, here),
        **_times(view.head),
        **_access(imprint, view),
        "video": _video(imprint, view, pictures),
    }
    if isinstance(view, Sheet | IngredientSide):
        found["recipeIngredient"] = [_line(line) for part in view.components for line in _bought(part)]
        found["tool"] = view.tin
    if isinstance(view, Sheet):
        found["recipeInstructions"] = _method(imprint, view, pictures, here)
        found["nutrition"] = _nutrition(view.nutrition)
    return {key: value for key, value in found.items() if value not in ("", [], {})}


def _head(imprint: Imprint, head: Head, pictures: Mapping[str, Picture], here: str) -> dict[str, Json]:
    school = school_object(imprint)
    return {
        "name": head.title,
        "description": head.summary,
        "url": imprint.address + here,
        "image": _images(imprint, head.photo, pictures),
        "author": school,
        "publisher": school,
        "datePublished": head.published,
        "dateModified": head.modified,
        "inLanguage": head.edition.language,
        "recipeYield": head.makes,
        "keywords": ", ".join(head.tags),
    }


def _times(head: Head) -> dict[str, Json]:
    times = head.times
    return {"prepTime": times.hands_on_iso, "cookTime": times.cook_iso, "totalTime": times.total_iso}


def _access(imprint: Imprint, view: View) -> dict[str, Json]:
    if isinstance(view, Sheet):
        return {"isAccessibleForFree": imprint.audience == "public"}
    return {
        "isAccessibleForFree": False,
        "hasPart": {"@type": "WebPageElement", "isAccessibleForFree": False, "cssSelector": _LOCKED},
    }


def _images(imprint: Imprint, photo: SheetPhoto | None, pictures: Mapping[str, Picture]) -> list[Json]:
    picture = pictures.get(photo.file) if photo else None
    return [imprint.address + cut.path for cut in reversed(picture.jpeg)] if picture else []


def _bought(part: SheetComponent | PublicComponent) -> Sequence[SheetLine]:
    """Lines that are bought or weighed out; a component that is made here is no ingredient of the whole."""
    return [line for line in part.lines if not line.is_part]


def _line(line: SheetLine) -> str:
    beside = f"({line.beside})" if line.beside else ""
    words = " ".join(part for part in (line.amount, beside, line.name, line.alternatives) if part)
    return f"{words}, {line.extra}" if line.extra else words


def _method(imprint: Imprint, sheet: Sheet, pictures: Mapping[str, Picture], here: str) -> list[Json]:
    return [
        {
            "@type": "HowToSection",
            "name": part.title,
            "itemListElement": [_step(imprint, step, pictures, here) for step in part.steps],
        }
        for part in sheet.components
        if part.steps
    ]


def _video(imprint: Imprint, view: View, pictures: Mapping[str, Picture]) -> dict[str, Json]:
    """The film, where all is known that a search engine asks of one: its day and a picture; its chapters."""
    images = _images(imprint, view.head.photo, pictures)
    if view.video is None or not view.video.published or not images:
        return {}
    return {
        "@type": "VideoObject",
        "name": view.head.title,
        "description": view.head.summary,
        "url": view.video.address,
        "uploadDate": view.video.published,
        "thumbnailUrl": images[0],
        **_chapters(view.video),
    }


def _chapters(video: SheetVideo) -> dict[str, Json]:
    """Each as https://schema.org/Clip, which needs an address of its own."""
    clips: list[Json] = [
        _clip(chapter.title, chapter.begins_s, chapter.address)
        for chapter in video.chapters
        if chapter.address
    ]
    return {"hasPart": clips} if clips else {}


def _clip(name: str, begins_s: int, address: str) -> Json:
    return {"@type": "Clip", "name": name, "startOffset": begins_s, "url": address}


def _nutrition(nutrition: Nutrition | None) -> dict[str, Json]:
    """The portion's figures, or those of 100 g where there is no portion.

    A figure in words ('less than 1 g') is left out, since https://schema.org/Mass wants a number.
    """
    if nutrition is None:
        return {}
    figures = {
        _NUTRIENTS[row.key]: (row.per_portion if nutrition.portion else row.per_100g).replace(_NO_BREAK, " ")
        for row in nutrition.rows
        if row.key in _NUTRIENTS
    }
    return {
        "@type": "NutritionInformation",
        "servingSize": (nutrition.portion or "100 g").replace(_NO_BREAK, " "),
        "calories": nutrition.energy.replace(_NO_BREAK, " "),
        **{name: text for name, text in figures.items() if text[:1].isdigit()},
    }


def _step(imprint: Imprint, step: SheetStep, pictures: Mapping[str, Picture], here: str) -> dict[str, Json]:
    found: dict[str, Json] = {
        "@type": "HowToStep",
        "position": step.number,
        "text": to_plain(step.text),
        "url": f"{imprint.address}{here}#step-{step.number}",
    }
    images = _images(imprint, step.photo, pictures)
    if images:
        found["image"] = images[0]
    if step.on_film and step.on_film.address:
        found["video"] = _clip(f"Step {step.number}", step.on_film.begins_s, step.on_film.address)
    return found
