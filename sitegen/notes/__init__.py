"""Old notes in, a recipe file of ours out.

in:        untidy text, schema.org's Recipe as JSON-LD, the cues of a film
out:       the text of a recipe.yaml, every line of the notes kept in it; what became of each
imports:   source, film, kitchen, faults
never:     sheets, what is printed, the terminal
read first: draft.py
"""
