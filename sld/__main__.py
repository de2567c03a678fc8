"""`python -m sld`."""

from sld.cli import main

main()
