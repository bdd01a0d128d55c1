"""`python -m sitegen` is the command `sitegen`."""

from sitegen.cli.main import main

main()
