"""Recipe + edition + batch -> Sheet, the one thing that is printed.

in:        a Recipe, its base recipes, the tables, an edition and a batch
out:       a Sheet: everything that a reader sees, computed and written out; or faults. For the kitchen's own
           eyes also a DayPlan, an OrderSheet, a CostSheet
imports:   kitchen, timing, faults
never:     files, templates, HTML, the clock
read first: values.py, then making.py and build.py
"""
