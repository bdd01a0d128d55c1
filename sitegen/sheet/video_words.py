"""The film as a sheet tells it: its address, its day, and where its chapters begin."""

from sitegen.kitchen.filmed import chapter_starts, moment_text
from sitegen.kitchen.recipe import Chapter, Video
from sitegen.sheet.setting import Setting
from sitegen.sheet.values import SheetChapter, SheetMoment, SheetVideo


def video_of(video: Video | None, setting: Setting) -> SheetVideo | None:
    """The film with its chapters in the region's spelling; None for none."""
    if video is None:
        return None
    chapters = video.chapters or tuple(Chapter(*start) for start in chapter_starts(video.film))
    return SheetVideo(
        address=video.address,
        published=video.published.isoformat() if video.published else "",
        chapters=tuple(_chapter(video.address, chapter, setting) for chapter in chapters),
    )


def step_moment(video: Video | None, component: str, step: int) -> SheetMoment | None:
    """Where a step begins on film; None where that is not known. step: its number there, from 1."""
    begins_s = video.film.begins_s(component, step) if video else None
    if video is None or begins_s is None:
        return None
    return SheetMoment(moment_text(begins_s), begins_s, _address(video.address, begins_s))


def _chapter(address: str, chapter: Chapter, setting: Setting) -> SheetChapter:
    return SheetChapter(
        moment=moment_text(chapter.seconds),
        title=setting.respelled(chapter.title),
        begins_s=chapter.seconds,
        address=_address(address, chapter.seconds),
    )


def _address(address: str, seconds: int) -> str:
    """The film from a second on; '' for an address that has a fragment of its own, and no room for one.

    Source: W3C Media Fragments URI 1.0, 4.2.1: '#t=85' is the film from its 85th second on.
    """
    return "" if "#" in address else f"{address}#t={seconds}"
