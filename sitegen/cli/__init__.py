"""Words on a command line in, an exit code out.

in:        arguments, the folder one stands in
out:       faults, progress and tables at the terminal, files that were named; exit codes 0, 1, 2, 3
imports:   release and what it hands out (sheet, press, source's schemas), faults
never:     anything worth testing without a terminal
read first: main.py, then one file a command
"""
