"""The clock: steps in, a work plan out.

in:        made components (kitchen's values), their times in minutes
out:       a graph of tasks, and a plan of them for one cook and one oven
imports:   kitchen's values, faults
never:     the machine's clock, files, text for readers
read first: graph.py
"""
