"""What is said on a film, held against a recipe.

in:        cues (when, and what was said), a checked recipe
out:       where each step begins, and what is said otherwise than it is written
imports:   kitchen, faults
never:     files, the clock, text for readers of a sheet
read first: values.py, then alignment.py
"""
