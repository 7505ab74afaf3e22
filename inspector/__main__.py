"""`python -m inspector` is the same as the command `inspector`."""

from inspector.cli import main

main()
