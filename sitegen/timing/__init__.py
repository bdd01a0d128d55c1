"""The clock: steps in, a work plan out.

in:        made components (kitchen's values), their times in minutes
out:       a graph of tasks, and their shortest plan for so many cooks, an oven and its tools; or why none is
imports:   kitchen's values, faults
never:     the machine's clock, files, text for readers
read first: graph.py, then plan.py
"""
