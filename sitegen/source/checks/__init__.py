"""The tables of checks: each a function from values to faults, gathered here and run by `library.py`.

in:        a Recipe with the Tables of the trade, a Content with all that its recipes draw on, or all headings
out:       faults, each with its place
imports:   kitchen's values and rules, faults, source's school
never:     raises, prints, reads a file, or stops another check
read first: titles.py
"""

from collections.abc import Callable, Iterable, Sequence
from importlib import import_module
from itertools import chain
from pkgutil import iter_modules

from sitegen.faults import Fault
from sitegen.kitchen.recipe import Recipe
from sitegen.kitchen.tables import Tables
from sitegen.source.headings import Heading
from sitegen.source.school import Content

RecipeCheck = Callable[[Recipe, Tables], Iterable[Fault]]
SchoolCheck = Callable[[Content], Iterable[Fault]]
HeadingCheck = Callable[[Sequence[Heading]], Iterable[Fault]]

# A new file of checks needs no entry anywhere: it brings CHECKS, SCHOOL_CHECKS, HEADING_CHECKS or several.
_SUBJECTS = tuple(import_module(f"{__name__}.{found.name}") for found in iter_modules(__path__))

CHECKS: tuple[RecipeCheck, ...] = tuple(chain(*(getattr(subject, "CHECKS", ()) for subject in _SUBJECTS)))
SCHOOL_CHECKS: tuple[SchoolCheck, ...] = tuple(
    chain(*(getattr(subject, "SCHOOL_CHECKS", ()) for subject in _SUBJECTS))
)
HEADING_CHECKS: tuple[HeadingCheck, ...] = tuple(
    chain(*(getattr(subject, "HEADING_CHECKS", ()) for subject in _SUBJECTS))
)
