"""The templates of a theme, which may come from anywhere: they print what they are given, and no more.

Jinja's sandbox keeps them from the program's insides. What it leaves open is closed here: arithmetic and
large numbers (a text repeated a thousand million times), escaping put out of force, loops without end. Bounds
are counted and not timed, so that a template that is refused is refused on every machine.
"""

from collections.abc import Callable, Mapping

from jinja2 import DictLoader, StrictUndefined, TemplateRuntimeError, TemplateSyntaxError, nodes
from jinja2.sandbox import SandboxedEnvironment

MOST_STEPS = 50_000
"""Turns of loops and calls of macros for one page; the longest page of the demo takes under 500."""
MOST_LETTERS = 2_000_000
"""Of what one pair of braces prints."""
LARGEST_NUMBER = 10_000
FILTERS = frozenset(
    {
        "batch",
        "capitalize",
        "default",
        "escape",
        "first",
        "groupby",
        "join",
        "last",
        "length",
        "list",
        "lower",
    }
    | {"map", "reject", "rejectattr", "reverse", "select", "selectattr", "slice", "sort", "string", "title"}
    | {"trim", "truncate", "unique", "upper"}
)
"""Jinja's own that a theme may use. Not among them: `safe` and its like, which switch the escaping off, and
those that make long texts of short ones."""
_ARITHMETIC = (
    nodes.Add, nodes.Concat, nodes.Div, nodes.FloorDiv, nodes.Mod, nodes.Mul, nodes.Pow, nodes.Sub,
)  # fmt: skip
_UNESCAPED = (nodes.EvalContextModifier, nodes.ScopedEvalContextModifier)
_TEXT_MAKERS = frozenset(
    {
        "center",
        "expandtabs",
        "format",
        "format_map",
        "ljust",
        "replace",
        "rjust",
        "translate",
        "unescape",
        "zfill",
    }
)
_STEP = "count_a_step"


class TemplateTooMuch(TemplateRuntimeError):
    """A template that would print for ever, or more than a page can hold."""


class ThemeTemplates(SandboxedEnvironment):
    """Every value is escaped, a name that is missing is an error."""

    def __init__(self, templates: Mapping[str, str], finalize: Callable[[object], object]) -> None:
        """templates: file name -> text. finalize: what becomes of each value as it is printed."""

        def printed(value: object) -> object:
            if isinstance(value, str) and len(value) > MOST_LETTERS:
                raise TemplateTooMuch(f"it prints more than {MOST_LETTERS:,} letters in one place")
            return finalize(value)

        super().__init__(
            loader=DictLoader(dict(templates)),
            autoescape=True,
            undefined=StrictUndefined,
            trim_blocks=True,
            lstrip_blocks=True,
            finalize=printed,
        )
        self._steps = 0
        self.filters = {name: self.filters[name] for name in FILTERS}
        self.globals = {_STEP: self._count_a_step}

    def printed(self, template: str, /, **content: object) -> str:
        """A page, set by the template of that name. Raises TemplateError, whatever the template does."""
        self._steps = 0
        try:
            return self.get_template(template).render(**content)
        except RecursionError as problem:
            raise TemplateTooMuch("templates or macros call themselves without end") from problem
        except (ArithmeticError, AttributeError, LookupError, MemoryError, TypeError, ValueError) as problem:
            raise TemplateRuntimeError(f"{type(problem).__name__}: {problem}") from problem

    def is_safe_attribute(self, obj: object, attr: str, value: object) -> bool:
        """Beside what the sandbox refuses: methods of texts that make long ones of short ones."""
        is_long = isinstance(obj, str) and attr in _TEXT_MAKERS
        return not is_long and super().is_safe_attribute(obj, attr, value)

    def wrap_str_format(self, value: object) -> None:
        """No text is formatted: the sandbox would bound what is named in it, but not how wide it gets."""

    def _parse(self, source: str, name: str | None, filename: str | None) -> nodes.Template:
        """What Jinja reads every template with; here it refuses what no template of a theme needs."""
        tree = super()._parse(source, name, filename)
        _refuse(tree, _ARITHMETIC, "a template prints what it is given, and does no arithmetic", name)
        _refuse(tree, _UNESCAPED, "a template cannot switch the escaping off", name)
        for number in tree.find_all(nodes.Const):
            if isinstance(number.value, int | float) and abs(number.value) > LARGEST_NUMBER:
                raise TemplateSyntaxError(
                    f"no number above {LARGEST_NUMBER:,} is needed", number.lineno, name
                )
        blocks: list[nodes.For | nodes.Macro | nodes.CallBlock] = []
        blocks += [*tree.find_all(nodes.For), *tree.find_all(nodes.Macro), *tree.find_all(nodes.CallBlock)]
        for block in blocks:
            step = nodes.Call(nodes.Name(_STEP, "load"), [], [], None, None)
            block.body.insert(0, nodes.ExprStmt(step).set_lineno(block.lineno, override=True))
        tree.set_environment(self)
        return tree

    def _count_a_step(self) -> None:
        self._steps += 1
        if self._steps > MOST_STEPS:
            raise TemplateTooMuch(f"its loops take more than {MOST_STEPS:,} turns for one page")


def _refuse(
    tree: nodes.Template, kinds: tuple[type[nodes.Node], ...], sentence: str, name: str | None
) -> None:
    for node in tree.find_all(kinds):
        raise TemplateSyntaxError(sentence, node.lineno, name)
