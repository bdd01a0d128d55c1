"""Captions: WebVTT and SRT, whole or broken, and never an error that is not told."""

from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from sitegen import limits
from sitegen.faults import Place, Severity
from sitegen.film.values import Cue
from sitegen.source.captions import NoCaptions, cues_of, read_captions

AT = Place("recipe.yaml", 3, 5, 10)


def test_webvtt_is_read_without_its_markup() -> None:
    """W3C WebVTT: 1.3 (comments), 1.2 (voices), 4.2.2 (times within a cue)."""
    text = (
        "WEBVTT - the film\n\nNOTE nobody hears this\n\nSTYLE\n::cue { color: red }\n\n"
        "intro\n00:01.000 --> 00:04.000 align:start\n<v Bo>Whisk <i>two</i>\n<c.loud>eggs</c> &amp; oil\n\n"
        "01:02:03.500 --> 01:02:05.000\nnow <01:02:04.250>the flour\n"
    )
    assert cues_of(text) == (
        Cue(1.0, 4.0, "Whisk two eggs & oil"),
        Cue(3723.5, 3724.25, "now"),
        Cue(3724.25, 3725.0, "the flour"),
    )


def test_srt_is_read_as_well() -> None:
    text = (
        "1\n00:00:01,000 --> 00:00:04,500\n<b>Whisk</b> two\neggs\n\n2\n00:00:05,000 --> 00:00:06,000\nnow\n"
    )
    assert cues_of(text) == (Cue(1.0, 4.5, "Whisk two eggs"), Cue(5.0, 6.0, "now"))


def test_broken_cues_are_passed_over_and_the_rest_put_in_order() -> None:
    text = (
        "WEBVTT\n\n00:09.000 --> 00:10.000\nlater\n\nwhen --> then\nnobody\n\n"
        "00:01.000 --> 00:00.500\nbackwards\n\n00:03.000 --> 00:04.000\n\n"
    )
    assert [(cue.begins_s, cue.ends_s, cue.text) for cue in cues_of(text)] == [
        (1.0, 1.0, "backwards"),
        (9.0, 10.0, "later"),
    ]


@pytest.mark.parametrize(
    ("text", "reason"),
    [
        ("", "begins neither with WEBVTT nor as an SRT file does"),
        ("WEBVTTX\n", "begins neither"),
        ("Dear diary, 00:01 --> 00:02", "begins neither"),
        ("WEBVTT\n\nwhen --> then\n", "has no cue that can be read"),
        ("WEBVTT\n\n99:00:01.000 --> 99:00:02.000\nhm\n", "goes on for more than 6 hours"),
        ("WEBVTT\n\n" + "00:01.000 --> 00:02.000\n" * (limits.CUES + 1), "has more than 20,000 cues"),
    ],
)
def test_what_is_no_captions_is_told_so(text: str, reason: str) -> None:
    with pytest.raises(NoCaptions) as problem:
        cues_of(text)
    assert reason in problem.value.reason


def test_captions_without_a_cue_are_captions() -> None:
    assert cues_of("WEBVTT\n") == ()


@pytest.mark.parametrize(
    "body", [b"\x89PNG\r\n\0\0", b"caf\xe9", b"nothing", b"x" * (limits.CAPTION_BYTES + 1)]
)
def test_a_file_of_something_else_is_advice(tmp_path: Path, body: bytes) -> None:
    (tmp_path / "film.vtt").write_bytes(body)
    cues, faults = read_captions(tmp_path / "film.vtt", "film.vtt", tmp_path, AT)
    assert cues == ()
    assert [(fault.code, fault.severity, fault.place) for fault in faults] == [
        ("not-captions", Severity.ADVICE, AT)
    ]


@given(st.lists(st.sampled_from("0123:59.,-> \nWEBVTT<c>&amp;a[]\t\ufeff"), max_size=120).map("".join))
def test_no_text_is_too_odd(text: str) -> None:
    for whole in (f"WEBVTT\n\n00:01.000 --> 00:02.000\n{text}", f"WEBVTT\n{text}", text):
        try:
            cues = cues_of(whole)
        except NoCaptions:
            continue
        assert all(0 <= cue.begins_s <= cue.ends_s and cue.text for cue in cues)
