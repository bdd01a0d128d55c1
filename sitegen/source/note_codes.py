"""The faults of notes that are to become a recipe file: their rows in the catalogue."""

from sitegen import limits
from sitegen.faults import FaultCode, Severity

NOT_NOTES = FaultCode(
    "not-notes",
    Severity.ERROR,
    "The file holds bytes that no text has: a picture, a document of an office program, or a packed file.",
    "Open it in the program that wrote it, and save it as plain text.",
    file="",
)
TOO_MANY_LINES = FaultCode(
    "too-many-lines",
    Severity.ERROR,
    f"Notes of more than {limits.NOTE_LINES:,} lines are no recipe: most likely a whole book was pasted.",
    "Put each recipe into a file of its own.",
    file="",
)
NO_RECIPE = FaultCode(
    "no-recipe-found",
    Severity.ERROR,
    "Nothing in the notes reads like a recipe: no ingredient with its amount, and no step.",
    "Look whether it is the right file; write each ingredient on a line of its own, with its amount.",
    file="",
)
NOT_JSON = FaultCode(
    "not-json",
    Severity.ERROR,
    "The file ends in .json and cannot be read as JSON, or its values lie in each other too deep.",
    "Save the page's recipe data once more, or paste its words as plain text.",
    file="",
)
NOT_UNDERSTOOD = FaultCode(
    "not-understood",
    Severity.ADVICE,
    "A line of the notes that could not be told: it stands in the draft as a comment, where it belongs.",
    "Write it as an ingredient line or a step, or delete the comment.",
    file="",
)
SET_ASIDE = FaultCode(
    "set-aside",
    Severity.ADVICE,
    "A line of the notes that says what no key of a recipe file holds: it stands in the draft as a comment.",
    "Delete the comment once you have read it.",
    file="",
)
CODES = (NOT_NOTES, TOO_MANY_LINES, NO_RECIPE, NOT_JSON, NOT_UNDERSTOOD, SET_ASIDE)
