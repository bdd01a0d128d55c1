"""The trade's arithmetic: amounts, tins, eggs, ovens, shares, scaling, rounding, cautions.

in:        frozen values (recipes, tables) and numbers
out:       frozen values and exact Fractions; or a small error with fields
imports:   faults (for Place)
never:     files, clock, HTML, sentences for readers, rounding midway
read first: recipe.py, then measures.py and scaling.py
"""
