"""Content in; what each audience may have, built whole and swapped in at once.

in:        the folder that holds `content/`, the day
out:       a Proof, or `output/` with its trees and report; sheets, plans, orders and costs that are asked
           for; a new school's folder
imports:   all rooms below, faults
never:     layout, arithmetic of the trade, the terminal
read first: build.py (the trip in numbered steps), then outputs.py (the table of all that is made)
"""
