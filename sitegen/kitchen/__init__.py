"""The trade's arithmetic: measures, tins, eggs, ovens, shares, doughs, nutrition, keeping, cautions, cost.

in:        frozen values (recipes, tables) and numbers
out:       frozen values and exact Fractions; or a small error with fields
imports:   faults (for Place)
never:     files, clock, HTML, sentences for readers, rounding midway
read first: recipe.py, then measures.py and scaling.py
"""
