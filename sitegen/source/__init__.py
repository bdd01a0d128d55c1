"""The baker's text files: read with their places, checked, turned into the kitchen's values.

in:        a folder that holds `content/`; the project's own tables in `data/`
out:       Content: School, Recipes, Tutorials, prices, orders, Tables, and every Fault with its place
imports:   kitchen, timing's graph, faults
never:     text for readers of the site, or a word to the output folder
read first: library.py
"""
