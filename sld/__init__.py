"""From one typed text spec of a photovoltaic system to a checked, annotated single-line diagram."""

__version__ = "0.1.0"
