"""Sheet + theme -> leaves: pages, cards, pictures, feeds, calendars and plain texts.

in:        what the sheet room made (`sheet/*values.py`), a theme, pictures as bytes, an imprint
out:       bytes with the path that they belong to; nothing is written here
imports:   sheet's values, faults
never:     arithmetic, rounding, dates of its own, who may see what
read first: recipe_page.py, then page.py (what all pages share) and theme.py
"""
