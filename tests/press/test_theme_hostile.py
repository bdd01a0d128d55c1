"""A theme that means harm ends in a fault, at once: it reads nothing, loads nothing and prints no end."""

from pathlib import Path

import pytest
from jinja2 import TemplateError
from jinja2.exceptions import SecurityError, UndefinedError

from sitegen.press.theme import load_theme
from sitegen.press.theme_styles import loads_from_elsewhere
from sitegen.press.theme_templates import MOST_STEPS, TemplateTooMuch, ThemeTemplates
from sitegen.press.tokens import ThemeUnusable

TEN = "{% for a in x %}"
HOSTILE = {
    "its class": "{{ ''.__class__.__mro__ }}",
    "its class, by filter": "{{ x | attr('__class__') }}",
    "globals of a helper": "{{ cycler.__init__.__globals__ }}",
    "globals of a function": "{{ step.__globals__ }}",
    "globals of the counter": "{{ count_a_step.__self__ }}",
    "code of a macro": "{% macro m() %}{% endmacro %}{{ m.__call__.__func__.__globals__ }}",
    "itself": "{{ self._TemplateReference__context.environment }}",
    "a file": "{% include '../../etc/passwd' %}",
    "a file, absolute": "{% extends '/etc/passwd' %}",
    "a file, by import": "{% import '../theme.yaml' as y %}",
    "a long range": "{% for a in range(999999999) %}x{% endfor %}",
    "a long text": "{{ 'a' * 10**9 }}",
    "a great number": "{{ 'a'.center(9999999999) }}",
    "a wide format": "{{ '%999999999d' % 1 }}",
    "a wide format, by method": "{{ '{:999999999}'.format(1) }}",
    "a wide format, by filter": "{{ '%999999999d' | format(1) }}",
    "much latin": "{{ lipsum(n=9999) }}",
    "a batch": "{{ x | batch(999999999, 'a') | list }}",
    "joined without end": "{% set n = namespace(a='x') %}{% set n.a = n.a ~ n.a %}",
    "loops in loops": TEN * 9 + "x" + "{% endfor %}" * 9,
    "empty loops in loops": TEN * 9 + "{% endfor %}" * 9,
    "macros that double": "".join(
        f"{{% macro m{n}() %}}{f'{{{{ m{n - 1}() }}}}' * 2 if n else 'x' * 9}{{% endmacro %}}"
        for n in range(40)
    )
    + "{{ m39() }}",
    "texts that double": "{% set a0 %}xxxxxxxx{% endset %}"
    + "".join(f"{{% set a{n} %}}{f'{{{{ a{n - 1} }}}}' * 2}{{% endset %}}" for n in range(1, 40)),
    "a macro that calls itself": "{% macro m() %}{{ m() }}{% endmacro %}{{ m() }}",
    "a template that includes itself": "{% include 'page.html' %}",
    "no escaping": "{{ x | safe }}",
    "no escaping, by block": "{% autoescape false %}{{ x }}{% endautoescape %}",
    "a wrong type": "{{ x | length | join }}",
    "no such key": "{{ x[99].y }}",
    "a tag without end": "{% for a in x %}",
}


def printed(text: str) -> str:
    return ThemeTemplates({"page.html": text}, lambda value: value).printed(
        "page.html", x=list(range(30)), step=len
    )


@pytest.mark.parametrize("kind", HOSTILE)
def test_what_a_hostile_template_wants_is_refused(kind: str) -> None:
    with pytest.raises(TemplateError):
        printed(HOSTILE[kind])


@pytest.mark.parametrize(
    ("kind", "error"),
    [
        ("its class", SecurityError),
        ("much latin", UndefinedError),
        ("loops in loops", TemplateTooMuch),
        ("empty loops in loops", TemplateTooMuch),
        ("macros that double", TemplateTooMuch),
        ("texts that double", TemplateTooMuch),
        ("a macro that calls itself", TemplateTooMuch),
        ("a template that includes itself", TemplateTooMuch),
    ],
)
def test_it_is_refused_for_what_it_is(kind: str, error: type[TemplateError]) -> None:
    with pytest.raises(error):
        printed(HOSTILE[kind])


def test_each_page_has_all_its_steps() -> None:
    templates = ThemeTemplates({"page.html": "{% for a in x %}{% endfor %}ok"}, lambda value: value)
    many = range(MOST_STEPS - 1)
    assert [templates.printed("page.html", x=many) for _ in range(2)] == ["ok", "ok"]
    with pytest.raises(TemplateTooMuch):
        templates.printed("page.html", x=range(MOST_STEPS + 1))


@pytest.mark.parametrize(
    "style",
    [
        "a{background:url(https://elsewhere.invalid/a.png)}",
        "a{background:url( 'http://elsewhere.invalid/a.png' )}",
        "a{background:URL(//elsewhere.invalid/a.svg)}",
        "a{background:u\\72l(file:///etc/passwd)}",
        "a{background:\\75\\52L(file:///etc/passwd)}",
        "a{background:url(data:image/svg+xml,x.svg)}",
        "a{background:url(../../content/a.svg)}",
        "a{background:url(/etc/passwd.svg)}",
        "a{background:image-set('https://elsewhere.invalid/a.png' 1x)}",
        "@import 'https://elsewhere.invalid/a.css';",
        "@IMPORT url(other.css);",
        "@\\69mport 'a.css';",
        "@font-face{src:url(http://elsewhere.invalid/a.woff2)}",
    ],
)
def test_a_style_loads_nothing_from_elsewhere(style: str, tmp_path: Path) -> None:
    assert list(loads_from_elsewhere({"1.css": style}))
    folder = tmp_path / "own"
    (folder / "styles").mkdir(parents=True)
    (folder / "theme.yaml").write_text("name: Own\ninherits: oatcloth\n")
    (folder / "styles" / "card.css").write_text(style)
    with pytest.raises(ThemeUnusable, match=r"card\.css") as refused:
        load_theme(folder)
    assert "would load" in refused.value.reasons[0]


@pytest.mark.parametrize(
    "style",
    [
        "a{background:url(fonts/a-1.woff2)}",
        "a{fill:url(#hatch)}",
        'a::before{content:"\\2014 url"}',
        "a{--curl:1}",
    ],
)
def test_a_style_may_name_files_beside_it(style: str) -> None:
    assert list(loads_from_elsewhere({"1.css": style})) == []
