"""How much of anything a school's files may hold: values only, which any room but the pure ones may import.

Each is far above what a school needs and low enough that no file can keep a build busy or fill its memory.
The README's table 'Limits' says the same to bakers, and a test holds the two together.
"""

TEXT_BYTES = 1_000_000
"""Of a text file: YAML, Markdown, a part of a theme."""
LINE_CHARACTERS = 60_000
"""Of one line: as much as the longest text, written on one line."""
VALUES = 20_000
"""Keys and values in a YAML file."""
DEPTH = 30
"""Levels in each other in a YAML file."""
KEY_CHARACTERS = 200
SHAPE_FAULTS = 100
"""Faults of shape that are told of one file; a last one says that there are more."""

NOTE_LINES = 1_000
"""Of notes that are to become a recipe file."""
NOTE_STRINGS = 3_000
"""Texts of a recipe in schema.org's vocabulary."""

MARKDOWN_CHARACTERS = 50_000
"""Of the text of a technique page, and of `notes` and `about`."""
PARAGRAPH_MARKS = 1_000
"""`[`, `*`, `_`, backticks and `<` between two empty lines: their time grows with their square."""
MARKDOWN_MARKS = 3_000
"""The same in a whole text."""
MARKDOWN_TAGS = 300
"""`<` in a whole text."""
MARKDOWN_DEPTH = 10
"""Quotes and lists in each other."""

COMPONENTS = 40
LINES = 60
"""Ingredient lines of a component; steps of a component."""
STEPS = 80
"""Of a recipe with the base recipes that are made for it, on one clock."""
BATCHES = 20
ENTRIES = 60
"""Of any other list in a recipe, and of what an order makes."""
PRICES = 3_000

CAPTION_BYTES = 8_000_000
"""Of a file of captions: recognisers write each word with its time, and each line twice."""
CUES = 20_000
"""Of a film's captions: more than ten hours of them have."""
FILM_SECONDS = 6 * 3600

PICTURE_BYTES = 40_000_000
PICTURE_SIDE = 12_000
"""Pixels of the longer side."""
PICTURE_PIXELS = 80_000_000
PICTURE_PARTS = 20_000
"""Chunks or segments that a picture's file is made of."""
PICTURE_SCANS = 100
"""Passes in which a JPEG comes; each costs as much as the whole picture."""
PICTURE_PROFILE_BYTES = 4_000_000
"""Of a colour profile, unpacked."""
PICTURE_EXIF_BYTES = 262_144
"""Of what a camera wrote. Exif 2.3 gives it one segment of a JPEG, 65,536 bytes; some programs write more."""
PICTURE_TEXT_BYTES = 1_000_000
"""Of all words in a PNG, unpacked, and of its profile: Pillow's own limit."""
