"""A production day as a PDF in the school's theme: what the terminal does not need and so does not load."""

from pathlib import Path

from jinja2 import TemplateError

from sitegen.press.order_page import NoOrderTemplate, print_order
from sitegen.press.theme import load_theme
from sitegen.press.theme_folder import find_theme
from sitegen.press.tokens import ThemeUnusable
from sitegen.release.asking import NotAsked
from sitegen.release.card_work import MachineLacks
from sitegen.release.orders import AskedOrder
from sitegen.release.sites import site_imprint


def order_pdf(root: Path, asked: AskedOrder, paper: str) -> bytes:
    """The production day on paper. paper: 'a4', 'letter', '' for the usual one of the school.

    Raises NotAsked where the theme cannot be used, MachineLacks where nothing can print.
    """
    school = asked.school
    try:
        theme = load_theme(find_theme(root, school.theme))
        return print_order(theme, asked.sheet, site_imprint(school), paper or school.whole_paper)
    except ThemeUnusable as problem:
        raise NotAsked(
            f"the theme '{school.theme}' cannot be used: {'; '.join(problem.reasons)}"
        ) from problem
    except NoOrderTemplate as problem:
        raise NotAsked(
            f"the theme '{school.theme}' lays out no production day: it has no {problem.missing}"
        ) from problem
    except TemplateError as problem:
        raise NotAsked(f"the theme '{school.theme}' cannot be used: {problem.message}") from problem
    except (ImportError, OSError) as problem:
        raise MachineLacks(str(problem)) from problem
