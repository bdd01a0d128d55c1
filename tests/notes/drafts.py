"""What tests of notes share: a British school's words and tables, and where a draft would lie."""

from pathlib import Path

from sitegen.notes.values import Lore
from sitegen.source.context import Context
from sitegen.source.photos import Folder
from sitegen.source.tables import read_tables

FOLDER = Folder(Path("content/recipes/any"), "content/recipes/any")
TABLES = read_tables()[0]
LORE = Lore(Context(TABLES, recipes=("Base buttercream",)), TABLES.editions["british-metric"])
