"""The faults of stamping: of the list of names, of the register, of the cards."""

from sitegen.faults import FaultCode, Severity

LIST = "subscribers.csv"
"""The file that the examples stand in."""

LIST_UNREADABLE = FaultCode(
    "list-unreadable",
    Severity.ERROR,
    "The list of names is empty, longer than 10 MB, or not plain text in UTF-8, so that no name can be read.",
    "Save the list as CSV in UTF-8; a spreadsheet offers this under 'save as'.",
    file="",
)
NO_NAME_COLUMN = FaultCode(
    "no-name-column",
    Severity.ERROR,
    "A list with several columns needs a first line that says which of them holds the names. "
    "A list with one name a line needs none.",
    "Write a first line in which the column of the names is called 'name'.",
    good="name,town\nAda Marrow,Wells\n",
    bad="subscriber,town\nAda Marrow,Wells\n",
    file=LIST,
)
ROW_NOT_UTF8 = FaultCode(
    "row-not-utf-8",
    Severity.ERROR,
    "A row of the list is not encoded as UTF-8, so that letters such as é or ł cannot be told.",
    "Save the list again with the encoding UTF-8.",
    file="",
)
ROW_QUOTES = FaultCode(
    "row-quotes",
    Severity.ERROR,
    "A quotation mark in a row opens a field and nothing closes it, or a field goes on behind the mark that "
    "closes it.",
    "Close the quotation mark, and write one inside a field twice.",
    good='name,town\n"Marrow, Ada",Wells\n',
    bad='name,town\n"Marrow, Ada,Wells\n',
    file=LIST,
)
ROW_COLUMNS = FaultCode(
    "row-columns",
    Severity.ERROR,
    "A row has more or fewer columns than the first line, so that the name may stand in any of them.",
    "Write every column, and put a name with a comma in quotation marks.",
    good='name,town\n"Marrow, Ada",Wells\n',
    bad="name,town\nMarrow, Ada,Wells\n",
    file=LIST,
)
NAME_MISSING = FaultCode(
    "name-missing",
    Severity.ERROR,
    "A row of the list has no name.",
    "Write the name, or take the row out.",
    good="name,town\nAda Marrow,Wells\n",
    bad="name,town\n,Wells\n",
    file=LIST,
)
NAME_HIDDEN = FaultCode(
    "name-hidden-character",
    Severity.ERROR,
    "A name holds a character that cannot be seen: a line break, a tab, or a mark that turns the direction.",
    "Write the name anew by hand.",
    good="name\nAda Marrow\n",
    bad="name\nAda\u200eMarrow\n",
    file=LIST,
)
NAME_TOO_LONG = FaultCode(
    "name-too-long",
    Severity.ERROR,
    "A name has more than 80 characters, or is wider than the card's margin is high.",
    "Shorten the name.",
    good="name\nAda Marrow\n",
    bad=f"name\nAda {'Marrow ' * 12}\n",
    file=LIST,
)
NAME_TWICE = FaultCode(
    "name-twice",
    Severity.ERROR,
    "A name stands in the list twice, written the same but for capitals. Only the first gets a copy, because "
    "a number goes with a name.",
    "Take one of the rows out or, if these are two people, tell them apart, such as by their town.",
    good="name\nAda Marrow (Wells)\nAda Marrow (Ely)\n",
    bad="name\nAda Marrow\nada marrow\n",
    file=LIST,
)
NAME_UNPRINTABLE = FaultCode(
    "name-unprintable",
    Severity.ERROR,
    "A name holds a letter that the face of the mark has not: it has Latin, Greek and Cyrillic ones.",
    "Write the name in letters that it has.",
    good="name\nŻaneta Łoś\n",
    bad="name\n名無し\n",
    file=LIST,
)
REGISTER_DAMAGED = FaultCode(
    "register-damaged",
    Severity.ERROR,
    "The register of copies cannot be read as it was written. Nothing is stamped, because a number could be "
    "given away twice.",
    "Put the register back from a copy, or mend the line; a row whose name is taken out keeps its number.",
    file="",
)
CARD_NOT_PDF = FaultCode(
    "card-not-pdf",
    Severity.ERROR,
    "A file that was given as a card is no PDF, or a PDF that was cut short.",
    "Take the card from 'output/subscribers/cards' after a publish.",
    file="",
)
CARD_ENCRYPTED = FaultCode(
    "card-encrypted",
    Severity.ERROR,
    "A card is encrypted, so that nothing may be drawn on it.",
    "Take the card from 'output/subscribers/cards', which is not encrypted.",
    file="",
)
CARD_STAMPED = FaultCode(
    "card-stamped",
    Severity.ERROR,
    "A card bears a number already: it is a copy.",
    "Stamp the card itself, from 'output/subscribers/cards'.",
    file="",
)
CARD_WITHOUT_MARGIN = FaultCode(
    "card-without-margin",
    Severity.ERROR,
    "A page of a card prints into both side margins, so that a mark would stand on what it prints.",
    "Leave 6 mm free at the right or at the left in the theme's styles of paper.",
    file="",
)
CARD_TWICE = FaultCode(
    "card-twice",
    Severity.ERROR,
    "Two cards of one run have the same file name, so that their copies would be written over each other.",
    "Give one of the files another name, or stamp them in two runs with two folders.",
    file="",
)
COPY_NOT_WRITTEN = FaultCode(
    "copy-not-written",
    Severity.ERROR,
    "A copy or the register could not be written, because the disk is full or a folder's rights forbid it. "
    "What was made before is whole.",
    "Make room, or give write rights, and stamp again: it goes on where it ended.",
    file="",
)

CODES = (
    LIST_UNREADABLE,
    NO_NAME_COLUMN,
    ROW_NOT_UTF8,
    ROW_QUOTES,
    ROW_COLUMNS,
    NAME_MISSING,
    NAME_HIDDEN,
    NAME_TOO_LONG,
    NAME_TWICE,
    NAME_UNPRINTABLE,
    REGISTER_DAMAGED,
    CARD_NOT_PDF,
    CARD_ENCRYPTED,
    CARD_STAMPED,
    CARD_WITHOUT_MARGIN,
    CARD_TWICE,
    COPY_NOT_WRITTEN,
)
