"""Whatever is said, a reading comes to its end, and its values hold together."""

from hypothesis import given, settings
from hypothesis import strategies as st

from tests.film.talk import LINES, film_of

ODD = (
    "no sorry i mean half a of the two hundred 1/2 1/0 ½ and a half point to or between fan gas mark four "
    "degrees f minutes hours teaspoons grams kilo flour sugar eggs cream butter custard sponge buttercream "
    "puree cinnamon bake oven fridge full each of them it if not last year wedding then now okay - £ ° % "
    "99999999999 dozen cups"
)
WORD = st.sampled_from([*ODD.split(), *" ".join(LINES.values()).split()])
LINE = st.lists(WORD, max_size=25).map(" ".join)


@settings(max_examples=150)
@given(st.lists(LINE, max_size=12))
def test_no_talk_is_too_odd(lines: list[str]) -> None:
    reading = film_of(lines)
    assert len({(moment.component, moment.step) for moment in reading.moments}) == len(reading.moments)
    begins = [moment.begins_s for moment in reading.moments]
    assert begins == sorted(begins)
    for component in {moment.component for moment in reading.moments}:
        steps = [moment.step for moment in reading.moments if moment.component == component]
        assert steps == sorted(steps)
    certain = [finding.certain for finding in reading.findings]
    assert certain == sorted(certain, reverse=True)
    for finding in reading.findings:
        assert finding.at.line > 0
        assert bool(finding.said) == (finding.kind != "unsaid")
        assert (finding.moment_s is None) == (finding.kind == "unsaid")


@settings(max_examples=50)
@given(st.permutations(list(LINES.values())))
def test_lines_in_any_order_are_read(lines: list[str]) -> None:
    film_of(lines)
