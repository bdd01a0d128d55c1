"""The addresses of what-if pages, their cards, and the files that these load: they only read."""

from collections.abc import Callable, Iterator, Sequence
from datetime import datetime

from starlette.requests import Request
from starlette.responses import HTMLResponse, PlainTextResponse, Response
from starlette.routing import Route

from sitegen.desk.bench import Bench
from sitegen.desk.looks import DESK_POLICY, page
from sitegen.desk.shown_faults import shown_faults
from sitegen.desk.values import ShownFault
from sitegen.desk.what_if import Answer, RecipeFaulty, answered
from sitegen.desk.what_if_card import (
    PAPERS,
    card_file_name,
    card_mark,
    card_page,
    card_style,
    face,
    face_name,
    one_off_card,
    photo,
    photo_files,
)
from sitegen.desk.what_if_form import form_of
from sitegen.desk.what_if_shown import shown_answer
from sitegen.desk.what_if_words import words_of
from sitegen.faults import Fault
from sitegen.press.picture import PictureUnreadable
from sitegen.press.theme import Theme
from sitegen.release.asking import AtFault
from sitegen.release.cache import NotKept
from sitegen.release.card_work import CardFailed, MachineLacks
from sitegen.release.photo_work import ChangedMeanwhile
from sitegen.source.school import School

CARD_POLICY = (
    "default-src 'none'; img-src 'self'; style-src 'self'; font-src 'self'; base-uri 'self'; "
    "form-action 'none'; frame-ancestors 'self'"
)
_KEEP = {"Cache-Control": "max-age=86400"}
_PAPER_TITLES = {"a4": "A4", "letter": "US Letter"}
_NOT_READ = "It is being read. This page goes on by itself."
_FAULTY = "It, or a recipe that it draws on, has errors. What-if works again once they are mended."


class _StillToBeRead(Exception):
    """The recipe has not been read yet."""


class _NothingThere(Exception):
    """An address of no recipe, or of a school that cannot be read."""


_NO_ANSWER = (_NothingThere, _StillToBeRead, AtFault, RecipeFaulty)
_NO_PHOTO = (PictureUnreadable, ChangedMeanwhile, NotKept, OSError)


class WhatIfPages:
    """bench: what was read last. now: the clock, aware."""

    def __init__(self, bench: Callable[[], Bench], now: Callable[[], datetime]) -> None:
        self._bench = bench
        self._now = now

    def routes(self) -> Iterator[Route]:
        yield Route("/what-if/{slug}", self.page)
        yield Route("/what-if/{slug}/card.html", self.card)
        yield Route("/what-if/{slug}/card.css", self.style)
        yield Route("/what-if/{slug}/card.pdf", self.pdf)
        yield Route("/what-if/{slug}/faces/{name}", self.face)
        yield Route("/what-if/{slug}/photos/{number:int}.jpg", self.photo)

    def page(self, request: Request) -> Response:
        bench, slug = self._bench(), request.path_params["slug"]
        try:
            answer, school = self._answered(bench, request)
        except _NothingThere:
            return _none(slug, f"There is no recipe '{slug}'.", status=404)
        except _StillToBeRead:
            return _none(_title(bench, slug), _NOT_READ)
        except AtFault as problem:
            return _none(_title(bench, slug), _FAULTY, shown_faults(problem.faults, problem.texts))
        except RecipeFaulty:
            return _none(
                _title(bench, slug), _FAULTY, shown_faults(_errors(bench, slug), bench.content.texts)
            )
        text = page(
            "what-if.html",
            home="../",
            slug=slug,
            answer=answer,
            sheet=answer.sheet,
            head=answer.sheet.head,
            plan=answer.plan,
            shown=shown_answer(answer),
            form=form_of(answer, bench.content, school),
            query=answer.words.query,
            papers=[(paper, _PAPER_TITLES[paper]) for paper in PAPERS],
            paper_title=_PAPER_TITLES[school.whole_paper],
            has_card=bench.theme is not None,
            card_mark=card_mark(bench.theme, answer.sheet, bench.marks) if bench.theme else "",
        )
        return _html(text)

    def card(self, request: Request) -> Response:
        """The card on the screen. A batch that cannot be made is told of on the page round it."""
        try:
            bench = self._bench()
            answer, school = self._answered(bench, request)
            theme = _theme(bench)
        except _NO_ANSWER:
            return _not_there()
        photos = {file: f"photos/{number}.jpg" for number, file in enumerate(photo_files(answer.sheet))}
        text = card_page(theme, school, answer.sheet, photos, "card.css")
        return HTMLResponse(text, headers={"Content-Security-Policy": CARD_POLICY})

    def style(self, _request: Request) -> Response:
        bench = self._bench()
        if bench.theme is None or bench.school is None:
            return _not_there()
        addresses = {font: f"faces/{face_name(font)}" for font in bench.theme.fonts}
        style = card_style(bench.theme, bench.school.whole_paper, addresses)
        return Response(style, media_type="text/css")

    def face(self, request: Request) -> Response:
        bench = self._bench()
        fonts = bench.theme.fonts if bench.theme else ()
        found = next((font for font in fonts if face_name(font) == request.path_params["name"]), None)
        if found is None:
            return _not_there()
        return Response(face(found, bench.cache), media_type="font/ttf", headers=_KEEP)

    def photo(self, request: Request) -> Response:
        try:
            bench = self._bench()
            sheet = self._answered(bench, request)[0].sheet
            file = photo_files(sheet)[request.path_params["number"]]
            body = photo(bench.root, sheet, file, bench.cache)
        except (*_NO_ANSWER, IndexError, *_NO_PHOTO):
            return _not_there()
        return Response(body, media_type="image/jpeg")

    def pdf(self, request: Request) -> Response:
        """The card to download; never of another batch than the one that is asked for."""
        paper = request.query_params.get("paper", "a4")
        try:
            bench = self._bench()
            answer, school = self._answered(bench, request)
            theme = _theme(bench)
        except _NO_ANSWER:
            return _not_there()
        if paper not in PAPERS:
            return _refused(f"there is no paper '{paper}': write a4 or letter")
        if answer.batch_fault is not None:
            return _refused(answer.batch_fault.sentence)
        try:
            body = one_off_card(
                bench.root, bench.content, school, theme, answer.sheet, paper, bench.cache, self._now()
            )
        except MachineLacks as lack:
            return _refused(f"the machine lacks a library that prints: {lack.library}", 503)
        except (CardFailed, *_NO_PHOTO) as problem:
            return _refused(f"the card could not be printed: {problem}", 503)
        name = card_file_name(answer.sheet, paper)
        headers = {"Content-Disposition": f'inline; filename="{name}"'}
        return Response(body, media_type="application/pdf", headers=headers)

    def _answered(self, bench: Bench, request: Request) -> tuple[Answer, School]:
        slug = request.path_params["slug"]
        recipe = next((each for each in bench.content.recipes if each.slug == slug), None)
        if (recipe is None and slug not in bench.slugs) or bench.school is None or bench.setter is None:
            raise _NothingThere
        if recipe is None:
            raise _StillToBeRead if bench.pending else RecipeFaulty(slug)
        words = words_of(request.query_params)
        try:
            answer = answered(bench.content, bench.setter, recipe, words, self._now())
        except RecipeFaulty as problem:
            if bench.pending:  # perhaps it draws on a recipe that is not read yet
                raise _StillToBeRead from problem
            raise
        return answer, bench.school


def what_if_routes(bench: Callable[[], Bench], now: Callable[[], datetime]) -> list[Route]:
    """Routes below the token. bench: what was read last. now: the clock, aware."""
    return list(WhatIfPages(bench, now).routes())


def _theme(bench: Bench) -> Theme:
    if bench.theme is None:
        raise _NothingThere
    return bench.theme


def _errors(bench: Bench, slug: str) -> list[Fault]:
    """Those of a recipe, then those of the recipes that it may draw on."""
    drawn_on = bench.survey.drawn_on(slug) if bench.survey else ()
    states = (bench.states.get(each) for each in dict.fromkeys((slug, *drawn_on)))
    return [error for state in states if state is not None for error in state.errors]


def _title(bench: Bench, slug: str) -> str:
    return next((heading.title for heading in bench.headings if heading.slug == slug), slug)


def _none(title: str, told: str, faults: Sequence[ShownFault] = (), status: int = 200) -> Response:
    """The page that stands in the place of an answer. told: why there is none."""
    return _html(page("what-if-none.html", home="../", title=title, told=told, faults_shown=faults), status)


def _html(text: str, status: int = 200) -> Response:
    return HTMLResponse(text, status, {"Content-Security-Policy": DESK_POLICY})


def _not_there() -> Response:
    return PlainTextResponse("There is no such page.\n", 404)


def _refused(sentence: str, status: int = 400) -> Response:
    return PlainTextResponse(f"{sentence[:1].upper()}{sentence[1:]}.\n", status)
