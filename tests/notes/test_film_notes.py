"""Captions into a draft: moments beside the steps of notes, and a skeleton from captions alone."""

from pathlib import Path

from sitegen.film.values import Cue
from sitegen.notes.reading import draft_of, read_notes
from sitegen.notes.values import Lore

NOTES = """Honey oat bars

Chewy and quick.
Makes 12 bars

150g porridge oats
100g butter
60g honey

Melt the butter and honey in a pan.
Stir in the oats and press into a 20cm square tin.
Bake at 160C fan for 25 minutes until golden.
"""
SPOKEN = (
    (2, "hello everybody today we make honey oat bars"),
    (8, "so first melt a hundred grams of butter and sixty grams of honey in a pan over a low heat"),
    (31, "now stir in a hundred and fifty grams of porridge oats and press it all into the tin"),
    (60, "last year i used two hundred grams of sugar for a wedding"),
    (75, "now bake that at a hundred and sixty fan for twenty five minutes until it is golden"),
)
CUES = tuple(Cue(at, at + 6, text) for at, text in SPOKEN)


def captions(folder: Path) -> Path:
    path = folder / "honey-oat-bars.vtt"
    cues = "\n".join(
        f"00:{at // 60:02}:{at % 60:02}.000 --> 00:{at // 60:02}:{at % 60 + 4:02}.000\n{text}\n"
        for at, text in SPOKEN
    )
    path.write_text(f"WEBVTT\n\n{cues}", encoding="utf-8")
    return path


def test_the_moments_of_a_film_stand_above_the_steps(lore: Lore) -> None:
    draft, faults = draft_of(NOTES, "bars.txt", "bars.txt", lore, CUES)
    assert faults == ()
    assert draft is not None
    comments = [line.strip() for line in draft.text.splitlines() if line.strip().endswith("in the film")]
    assert comments == ["# 0:08 in the film", "# 0:31 in the film", "# 1:15 in the film"]


def test_without_captions_no_moment_is_told(lore: Lore) -> None:
    draft, _ = draft_of(NOTES, "bars.txt", "bars.txt", lore)
    assert draft is not None
    assert "in the film" not in draft.text


def test_captions_alone_give_a_skeleton(tmp_path: Path, lore: Lore) -> None:
    draft, faults, _ = read_notes(captions(tmp_path), "honey-oat-bars.vtt", lore)
    assert faults == ()
    assert draft is not None
    for line in ("title: Honey oat bars", "- 100 g unsalted butter", "- 60 g honey", "- 150 g porridge oats"):
        assert line in draft.text
    assert "sugar" not in draft.text, "an aside is no ingredient"
    assert "oven: 160 C fan\n        wait: 25 min" in draft.text
    assert "# 0:08 in the film" in draft.text
    assert any("summary" in words for words in draft.missing)


def test_a_film_that_speaks_of_no_bake_and_broken_captions_are_told(tmp_path: Path, lore: Lore) -> None:
    path = tmp_path / "a.vtt"
    path.write_text("WEBVTT\n\n00:01.000 --> 00:04.000\ngood morning and how are you\n")
    assert [one.code for one in read_notes(path, "a.vtt", lore)[1]] == ["no-recipe-found"]
    path.write_text("no captions at all\n")
    assert [one.code for one in read_notes(path, "a.vtt", lore)[1]] == ["not-captions"]
