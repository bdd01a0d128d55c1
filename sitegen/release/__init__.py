"""Content in; what each audience may have, built whole and swapped in at once.

in:        the folder that holds `content/`, the day
out:       a Proof, or `output/` with its trees and report; one-off sheets; a new school's folder
imports:   source, sheet, press, kitchen's values, faults
never:     layout, arithmetic of the trade, the terminal
read first: build.py (the trip in numbered steps), then outputs.py (the table of all that is made)
"""
