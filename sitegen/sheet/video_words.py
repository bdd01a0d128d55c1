"""The film as a sheet tells it: its address, its day, and where its chapters begin."""

from sitegen.kitchen.recipe import Chapter, Video
from sitegen.sheet.setting import Setting
from sitegen.sheet.values import SheetChapter, SheetVideo


def video_of(video: Video | None, setting: Setting) -> SheetVideo | None:
    """The film with its chapters in the region's spelling; None for none."""
    if video is None:
        return None
    return SheetVideo(
        address=video.address,
        published=video.published.isoformat() if video.published else "",
        chapters=tuple(_chapter(video.address, chapter, setting) for chapter in video.chapters),
    )


def moment_text(seconds: int) -> str:
    """As players show it: '0:00', '12:05', '1:02:30'."""
    minutes, seconds = divmod(seconds, 60)
    hours, minutes = divmod(minutes, 60)
    return f"{hours}:{minutes:02}:{seconds:02}" if hours else f"{minutes}:{seconds:02}"


def _chapter(address: str, chapter: Chapter, setting: Setting) -> SheetChapter:
    """Source of the address: W3C Media Fragments URI 1.0, 4.2.1: '#t=85' is the film from its 85th second on.

    An address that has a fragment of its own has no room for one.
    """
    return SheetChapter(
        moment=moment_text(chapter.seconds),
        title=setting.respelled(chapter.title),
        begins_s=chapter.seconds,
        address="" if "#" in address else f"{address}#t={chapter.seconds}",
    )
